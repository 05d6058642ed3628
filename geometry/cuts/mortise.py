"""A mortise with flat sides: square to its face or at a slant, blind, through or flared."""

from __future__ import annotations

import math
from dataclasses import dataclass

from geometry.cuts.contour import Contour, Face, Operation
from geometry.cuts.cut import Blank
from geometry.cuts.overrun import OVERRUN
from geometry.cuts.removal import Hull, Removal
from geometry.primitives.frame import Vec3, add, cross, dot, scale, subtract, unit
from geometry.primitives.path import Path

Corners = tuple[Vec3, Vec3, Vec3, Vec3]

_SAME = 1e-6  # mm


@dataclass(frozen=True, slots=True)
class Mortise:
    """From the four corners of its mouth to those of its floor, in the same order.

    Both are parallelograms or rectangles, the mouth on the surface of the piece.  Of a ``through``
    mortise the floor is the mouth on the other side.
    """

    mouth: Corners
    floor: Corners
    through: bool

    @property
    def title(self) -> str:
        return "mortise"

    @property
    def depth(self) -> float:
        """From the mouth's plane to the floor's, square to the mouth; mm."""
        a, b, _, d = self.mouth
        normal = unit(cross(subtract(b, a), subtract(d, a)))
        return abs(dot(subtract(self.floor[0], a), normal))

    @property
    def slant_deg(self) -> float:
        """Of its run from square to the mouth."""
        run = subtract(_middle(self.floor), _middle(self.mouth))
        return math.degrees(math.acos(min(1.0, self.depth / math.sqrt(dot(run, run)))))

    def removals(self, blank: Blank) -> tuple[Removal, ...]:  # noqa: ARG002
        outside = _carried_on(self.floor, self.mouth)
        inside = _carried_on(self.mouth, self.floor) if self.through else self.floor
        return (Hull((*outside, *inside)),)

    def contours(self, blank: Blank) -> tuple[Contour, ...]:
        """What is seen of it on the face side or the reverse; none for one in an edge."""
        found = []
        for corners, other in ((self.mouth, self.floor), (self.floor, self.mouth)):
            face = _face_of(corners, blank)
            if face is None or (corners is self.floor and not self.through):
                continue
            outline = tuple((x, y) for x, y, _ in corners)
            depth = abs(other[0][2] - corners[0][2])
            square = all(
                math.dist(a[:2], b[:2]) < _SAME for a, b in zip(corners, other, strict=True)
            )
            if square and not self.through:
                found.append(Contour(Operation.POCKET, face, Path.polygon(outline), depth))
            elif square:
                found.append(Contour(Operation.INSIDE, face, Path.polygon(outline)))
            else:
                closed = tuple((x, y, 0.0) for x, y in (*outline, outline[0]))
                found.append(Contour(Operation.SCRIBE, face, Path(closed, closed=False)))
        return tuple(found)


def _middle(corners: Corners) -> Vec3:
    (a, b, c), (d, e, f) = corners[0], corners[2]
    return ((a + d) / 2.0, (b + e) / 2.0, (c + f) / 2.0)


def _carried_on(start: Corners, end: Corners) -> Corners:
    """``end``, moved on into the air along the mortise's edges."""
    shortest = min(math.dist(a, b) for a, b in zip(start, end, strict=True))
    share = OVERRUN / shortest
    a, b, c, d = (add(q, scale(subtract(q, p), share)) for p, q in zip(start, end, strict=True))
    return (a, b, c, d)


def _face_of(corners: Corners, blank: Blank) -> Face | None:
    if all(abs(z) < _SAME for _, _, z in corners):
        return Face.FACE_SIDE
    if all(abs(z - blank.thickness) < _SAME for _, _, z in corners):
        return Face.REVERSE
    return None
