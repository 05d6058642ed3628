"""A dimension that is placed by looking for room, in and close to the drawing."""

from __future__ import annotations

from dataclasses import dataclass

from geometry.drawing.marks import Role
from geometry.primitives.frame import Vec2


@dataclass(frozen=True, slots=True)
class FreeDimension:
    """A dimension to be placed by looking for room; points in sheet mm.

    ``along`` is the unit direction of measuring; for an angle ``apex`` is given instead.
    ``side`` is +1 or -1, or 0 for a line that stands between its points.  One with a
    ``room`` (sheet mm) keeps within that of its points, or is not drawn.
    """

    name: str
    role: Role
    text: str
    width: float
    start: Vec2
    end: Vec2
    along: Vec2
    side: int
    apex: Vec2 | None = None
    room: float | None = None
