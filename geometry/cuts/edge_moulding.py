"""A chamfer, a round-over or a cove along one straight stretch of any arris.

Frame: the part's own, mm.  The profile lies square to the arris.  Its size is measured on both
faces from the arris: a chamfer's flat and a round-over's arc begin there, the arc tangent to both
faces (its radius is the size where they meet at a right angle); a cove is hollowed round the arris
itself, with the size as its radius.  A stopped end runs out at 45 degrees (common practice, no
source).
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from geometry.cuts.contour import Contour, Face, Operation
from geometry.cuts.cut import Blank
from geometry.cuts.overrun import OVERRUN
from geometry.cuts.removal import HalfSpace, Prism, Removal
from geometry.primitives.frame import (
    Frame,
    Vec3,
    add,
    cross,
    dot,
    norm,
    rounded,
    scale,
    subtract,
    unit,
)
from geometry.primitives.path import Path

CHAMFER, ROUND_OVER, COVE = "chamfer", "round-over", "cove"
FORMS = (CHAMFER, ROUND_OVER, COVE)

_FLAT = 1e-6


@dataclass(frozen=True, slots=True)
class EdgeMoulding:
    """Along the arris from ``start`` to ``end``.

    ``on_first`` and ``on_second`` are unit directions square to the arris, from it across the two
    faces that meet in it.  An end is stopped, runs ``past`` the point in the air, or is cut by one
    of the planes ``ends``, beyond which nothing is taken away.
    """

    form: str
    size: float
    start: Vec3
    end: Vec3
    on_first: Vec3
    on_second: Vec3
    stopped_start: bool = False
    stopped_end: bool = False
    past: float = OVERRUN
    ends: tuple[HalfSpace, ...] = ()

    @property
    def title(self) -> str:
        return self.form

    @property
    def stopped(self) -> bool:
        return self.stopped_start or self.stopped_end

    @property
    def length(self) -> float:
        return norm(subtract(self.end, self.start))

    @property
    def corner(self) -> float:
        """The angle between the two faces, in the wood; radians."""
        return math.acos(max(-1.0, min(1.0, dot(self.on_first, self.on_second))))

    @property
    def radius(self) -> float:
        """Of a round-over's or a cove's arc."""
        return self.size * math.tan(self.corner / 2.0) if self.form == ROUND_OVER else self.size

    def profile(self) -> Path:
        """What is taken away, in a plane square to the arris: x along the first face, the arris in
        the origin, the second face at the corner's angle to it."""
        corner, s = self.corner, self.size
        bulge = {
            CHAMFER: 0.0,
            ROUND_OVER: -math.tan((math.pi - corner) / 4.0),
            COVE: math.tan(corner / 4.0),
        }[self.form]
        cosine, sine = math.cos(corner), math.sin(corner)
        out = OVERRUN
        return Path(
            (
                (s, -out, 0.0),
                (s, 0.0, bulge),
                (s * cosine, s * sine, 0.0),
                (s * cosine - out * sine, s * sine + out * cosine, 0.0),
                (-out * (1.0 + cosine) / sine, -out, 0.0),
            )
        )

    def removals(self, blank: Blank) -> tuple[Removal, ...]:  # noqa: ARG002
        along = unit(subtract(self.end, self.start))
        x = self.on_first
        y = cross(along, x)
        first, start_stop, end_stop = self.start, self.stopped_start, self.stopped_end
        ends = [*self.ends]
        if dot(y, self.on_second) < 0.0:
            # Seen from the other end, so that the second face lies on the positive side.
            along, y = scale(along, -1.0), scale(y, -1.0)
            first, start_stop, end_stop = self.end, end_stop, start_stop
        inward = unit(add(self.on_first, self.on_second))
        if start_stop:
            ends.append(HalfSpace(first, unit(subtract(inward, along))))
        if end_stop:
            last = add(first, scale(along, self.length))
            ends.append(HalfSpace(last, unit(add(inward, along))))
        low = -OVERRUN if start_stop else -self.past
        high = self.length + (OVERRUN if end_stop else self.past)
        frame = Frame(first, x, y, along)
        return (Prism(self.profile(), low, high, frame, tuple(ends)),)

    def contours(self, blank: Blank) -> tuple[Contour, ...]:
        """The line on the face side or the reverse that the profile begins at."""
        found = []
        for direction in (self.on_first, self.on_second):
            points = [add(point, scale(direction, self.size)) for point in (self.start, self.end)]
            for z, face in ((0.0, Face.FACE_SIDE), (blank.thickness, Face.REVERSE)):
                if all(abs(point[2] - z) < _FLAT for point in points):
                    line = Path.line(points[0][:2], points[1][:2])
                    found.append(Contour(Operation.SCRIBE, face, line))
        return tuple(found)


def along_arris(
    form: str,
    size: float,
    ends: tuple[Vec3, Vec3],
    normals: tuple[Vec3, Vec3],
    *,
    stopped: tuple[bool, bool] = (False, False),
    past: float = OVERRUN,
    planes: tuple[HalfSpace, ...] = (),
) -> EdgeMoulding:
    """The moulding on the arris between two faces with these outward unit normals."""
    along = unit(subtract(ends[1], ends[0]))
    across = []
    for own, other in (normals, normals[::-1]):
        way = unit(cross(own, along))
        across.append(scale(way, -1.0) if dot(way, other) > 0.0 else way)
    first, last, on_first, on_second = (rounded(one) for one in (*ends, *across))
    return EdgeMoulding(
        form, size, first, last, on_first, on_second, stopped[0], stopped[1], past, planes
    )
