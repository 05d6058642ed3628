"""The corner of a box where a side meets an end piece, front or back, as its joints see it.

The pieces of a drawer stand on edge: their y runs up from the lower edges.  A bench's seat meets
its ends in such a corner too, one that lies over: there y runs forward from the back edges.  The
end piece's face side looks into the box.  Places in the corner are given by how far they are from
its outer arris: along the side, along the end piece, and up, which is to say along y.
"""

from __future__ import annotations

from dataclasses import dataclass

from geometry.design.part import Part
from geometry.primitives.frame import Z_AXIS, Vec2, Vec3, add, scale


@dataclass(frozen=True, slots=True)
class Corner:
    """mm; ``arris`` is the lower end of the outer arris, where the joint's parts stand.

    ``along_side`` and ``along_end`` are unit directions from it along the two pieces, ``up`` the
    one square to both, in which they have their ``height``; ``edge`` is the maker's word for the
    edge that the corner starts from.
    ``groove`` is how far the groove for the bottom cuts into both from the inside corner.
    Contacts keep clear of it, and of what is below ``clear``, where runners may need a notch.
    """

    arris: Vec3
    along_side: Vec3
    along_end: Vec3
    height: float
    side_thickness: float
    end_thickness: float
    fit: float
    groove: float
    clear: float
    up: Vec3 = Z_AXIS
    edge: str = "lower edge"

    def point(self, side: float, end: float, up: float) -> Vec3:
        """A point so far along the side, along the end piece and up."""
        level = add(scale(self.along_side, side), scale(self.along_end, end))
        return add(add(self.arris, level), scale(self.up, up))

    def across_side(self, side: float, end: Vec2, up: Vec2) -> tuple[Vec3, Vec3, Vec3, Vec3]:
        """The corners of a rectangle square to the side, ``side`` along it."""
        return (
            self.point(side, end[0], up[0]),
            self.point(side, end[1], up[0]),
            self.point(side, end[1], up[1]),
            self.point(side, end[0], up[1]),
        )

    def across_end(self, end: float, side: Vec2, up: Vec2) -> tuple[Vec3, Vec3, Vec3, Vec3]:
        """The corners of a rectangle square to the end piece, ``end`` along it."""
        return (
            self.point(side[0], end, up[0]),
            self.point(side[1], end, up[0]),
            self.point(side[1], end, up[1]),
            self.point(side[0], end, up[1]),
        )

    def level(self, up: float, side: Vec2, end: Vec2) -> tuple[Vec3, Vec3, Vec3, Vec3]:
        """The corners of a level rectangle."""
        return (
            self.point(side[0], end[0], up),
            self.point(side[1], end[0], up),
            self.point(side[1], end[1], up),
            self.point(side[0], end[1], up),
        )

    def on_side(self, piece: Part, reach: float) -> float:
        """x on the side, ``reach`` along it from the outer arris."""
        return _rounded(piece.frame.to_local(self.point(reach, 0.0, 0.0))[0])

    def on_end(self, piece: Part, reach: float) -> float:
        """x on the end piece, ``reach`` along it from the outer arris."""
        return _rounded(piece.frame.to_local(self.point(0.0, reach, 0.0))[0])


def _rounded(x: float) -> float:
    """Far below anything that can be marked, so that like corners come out equal."""
    return round(x, 9)
