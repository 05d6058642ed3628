"""Hinges for a lid: the sizes that its mortises follow from.  Millimetres.

No two makers' hinges are alike: the rows are generic, and the pair in hand decides.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Hinge:
    """A butt hinge: ``length`` along its pin, ``leaf`` from the middle of the pin to a leaf's
    outer edge, ``closed`` the thickness of both leaves lying on each other."""

    name: str
    length: float
    leaf: float
    closed: float
    source: str


_PRACTICE = "common practice, no source: measure your hinge"

HINGES: tuple[Hinge, ...] = (
    # name, length, leaf, closed, source
    Hinge("butt, 50 mm", 50.0, 14.0, 3.2, _PRACTICE),
    Hinge("butt, 63 mm", 63.0, 17.0, 4.0, _PRACTICE),
    Hinge("butt, 75 mm", 75.0, 19.0, 4.8, _PRACTICE),
    Hinge("butt, 2 1/2 in", 63.5, 17.5, 4.0, _PRACTICE),
)


def hinge_row(name: str) -> Hinge:
    """The row of this name; AssertionError for one that is none.

    >>> hinge_row("butt, 63 mm").closed
    4.0
    """
    found = next((row for row in HINGES if row.name == name), None)
    assert found is not None, name
    return found
