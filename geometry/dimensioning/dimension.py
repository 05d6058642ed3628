"""A dimension: a distance or angle seen in one view, bound to the number it shows."""

from __future__ import annotations

from dataclasses import dataclass

from geometry.dimensioning.pull import Pull
from geometry.primitives.frame import Vec2


@dataclass(frozen=True, slots=True)
class Dimension:
    """What is shown, where it is measured, and what it belongs to.

    ``view`` is a view's name.  For a linear dimension ``start`` and ``end`` are the measured points
    (u, v) in mm and ``along`` the unit direction of measuring: (1, 0) horizontal, (0, 1)
    vertical, or aligned with the points.  For an angle, ``apex`` is the corner, ``start`` and
    ``end`` lie on its two sides, and ``along`` is not used.

    ``side`` says where the dimension line wants to stand: +1 above or to the right of the
    object, -1 below or to the left, seen square to ``along``.  ``rank`` orders dimensions outward
    from the object: short ones near, overall ones far.

    ``parameter`` is the name of the value it sets; empty for a derived dimension, which then
    says in ``follows_from`` what it comes from.  ``pull`` tells what a drag of the dimension does
    (it moves the ``end`` point); None for a derived dimension, but for one that is set through
    what it follows from.

    ``note`` is a word written after the value, such as ``true`` for an angle that the view shows
    foreshortened.  ``running`` dimensions of one rank share their start point and one row: each
    has its value at its end's arrowhead (running dimensioning of ISO 129-1, from memory).
    A dimension with a ``room`` (mm of the view) stands no farther than that to either side of its
    points, its text between them, and is left out where it finds no place there.
    """

    name: str
    title: str
    view: str
    value: float
    unit: str  # "mm" or "deg"
    start: Vec2
    end: Vec2
    along: Vec2
    side: int
    rank: int
    parameter: str = ""
    follows_from: str = ""
    apex: Vec2 | None = None
    pull: Pull | None = None
    note: str = ""
    running: bool = False
    room: float | None = None
