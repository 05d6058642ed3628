"""A joint holds the cuts it gives to both of its parts, and the numbers they came from."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from geometry.cuts.cut import Cut
from geometry.primitives.frame import Vec3
from shared.fixings import WoodScrew

FIRST, SECOND, BOTH = (0,), (1,), (0, 1)
"""On which of a joint's parts a measure is found."""


@dataclass(frozen=True, slots=True)
class Measure:
    """A number a maker marks or sets: mm or degrees, and what it is measured from.

    ``found_on`` tells on which of the joint's two parts, 0 and 1, it can be measured; on neither
    if it is no size of theirs, but one to work to.  A length may tell the unit direction ``along``
    which it is measured, and the points ``at`` which it ends and ``start`` from which it goes, all
    in bench coordinates: a length that happens to be as large is then not taken for it.  Of an
    angle ``along`` is the axis that it turns about.
    """

    name: str
    value: float
    unit: str  # "mm" or "deg"
    meaning: str
    found_on: tuple[int, ...] = BOTH
    along: Vec3 | None = None
    at: Vec3 | None = None
    start: Vec3 | None = None


@dataclass(frozen=True, slots=True)
class Contact:
    """A flat face where two parts should meet.

    ``corners`` in bench coordinates; ``normal`` points from the first part of the joint into
    the second; ``gap`` is the clearance between them, in mm, 0 for faces that touch.  The
    corners lie on the first part's face.
    """

    corners: tuple[Vec3, ...]
    normal: Vec3
    gap: float


@dataclass(frozen=True, slots=True)
class Screws:
    """Like screws that go from one of a joint's parts into the other.

    ``heads`` tells which part the heads are in, 0 or 1; ``at`` where each passes from that into the
    other, and ``into`` the unit direction in which it is driven, in bench coordinates; ``bite`` how
    deep its thread is in the other, mm.  Where the joint has found no place for them ``at`` is
    empty, and ``screw`` the one to be tried by hand.
    """

    heads: int
    screw: WoodScrew
    bite: float
    into: Vec3
    at: tuple[Vec3, ...]


@dataclass(frozen=True, slots=True)
class Joint:
    """Two parts, their cuts and their meeting faces.

    ``parts`` are part names.  ``fit`` is the clearance in mm.  ``cuts_first`` and
    ``cuts_second`` are in the frames of the first and the second part.  ``screws`` are those that
    hold its two faces together, if any do.
    What cuts nothing, ``measures`` and ``contacts``, is a tuple or comes ``Later``.
    """

    name: str
    kind: str  # "mitre", "stopped housing", "rebate", "bridle joint", "angled lap"
    parts: tuple[str, str]
    fit: float
    cuts_first: tuple[Cut, ...]
    cuts_second: tuple[Cut, ...]
    measures: Sequence[Measure]
    contacts: Sequence[Contact]
    screws: Screws | None = None
