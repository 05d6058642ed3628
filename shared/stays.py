"""Lid stays: how far they let a lid open, and how long they are then.  Millimetres, degrees.

The rows are generic, and so each says: the sheet that comes with the stay in hand decides.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Stay:
    """A folding stay that is taut when the lid is open.

    ``reach`` is the length between its two fixings then, ``opening`` the angle to which lids are
    usually opened with it, ``on_lid`` how far from the hinge's pin it is fixed to the lid, and
    ``down`` how far below the rim to the box.
    """

    name: str
    reach: float
    opening: float
    on_lid: float
    down: float
    source: str


_CHECK = "from memory, generic: check your stay's sheet"

STAYS: tuple[Stay, ...] = (
    # name, reach, opening, on the lid, down from the rim, source
    Stay("folding, 180 mm", 180.0, 95.0, 110.0, 35.0, _CHECK),
    Stay("folding, 250 mm", 250.0, 95.0, 160.0, 40.0, _CHECK),
    Stay("folding, 300 mm", 300.0, 95.0, 200.0, 45.0, _CHECK),
    Stay("slowing, 200 mm", 200.0, 100.0, 120.0, 50.0, _CHECK),
)


def stay_row(name: str) -> Stay:
    """The row of this name; AssertionError for one that is none.

    >>> stay_row("folding, 250 mm").reach
    250.0
    """
    found = next((row for row in STAYS if row.name == name), None)
    assert found is not None, name
    return found
