"""Mouldings along the long arrises of a rail, from joint to joint.

Frame: the rail's own, x along the grain; mm.  A shoulder is a plane that holds x as a straight line
of y and z.  A stopped run begins where the whole of its profile is so far from the shoulder; one
that runs through ends at the shoulder, and beyond it the tenon is narrower than the profile goes.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from geometry.bench.arris_rows import FACE_EDGE, FACE_SIDE, FAR_EDGE, LEAST_RUN, REVERSE
from geometry.cuts.cut import Blank
from geometry.cuts.edge_moulding import EdgeMoulding, along_arris
from geometry.cuts.overrun import OVERRUN
from geometry.design.part import Part
from geometry.joints.leaning_tenon import LeaningTenon
from geometry.primitives.frame import Vec3

# Common practice, no source, these:
LEAST_STOP = 3.0  # mm before a joint that a moulding must not reach
CLEAR = 2.0  # mm of shoulder between a moulding that runs through and the mortise


@dataclass(frozen=True, slots=True)
class Shoulder:
    """Where a rail's free stretch ends: x = ``x`` + ``slope_y`` y + ``slope_z`` z."""

    x: float
    slope_y: float = 0.0
    slope_z: float = 0.0

    def at(self, y: float, z: float) -> float:
        return self.x + self.slope_y * y + self.slope_z * z

    @property
    def slant(self) -> float:
        """How much x changes at most for each mm across both faces."""
        return abs(self.slope_y) + abs(self.slope_z)


Stretch = tuple[Shoulder, Shoulder]


@dataclass(frozen=True, slots=True)
class Arris:
    """A long arris: where it is, and the outward normals of the edge and the face it parts."""

    y: float
    z: float
    edge: Vec3
    face: Vec3


def face_edge_arrises(blank: Blank) -> tuple[Arris, Arris]:
    """Those of the face edge, first at the face side."""
    return (
        Arris(0.0, 0.0, FACE_EDGE, FACE_SIDE),
        Arris(0.0, blank.thickness, FACE_EDGE, REVERSE),
    )


def far_edge_arrises(blank: Blank) -> tuple[Arris, Arris]:
    """Those of the far edge, first at the face side."""
    return (
        Arris(blank.width, 0.0, FAR_EDGE, FACE_SIDE),
        Arris(blank.width, blank.thickness, FAR_EDGE, REVERSE),
    )


def face_side_arrises(blank: Blank) -> tuple[Arris, Arris]:
    """Those of the face side, first at the face edge."""
    return face_edge_arrises(blank)[0], far_edge_arrises(blank)[0]


def reverse_arrises(blank: Blank) -> tuple[Arris, Arris]:
    """Those of the reverse, first at the face edge."""
    return face_edge_arrises(blank)[1], far_edge_arrises(blank)[1]


def tenon_shoulder(part: Part, at: LeaningTenon) -> Shoulder:
    """Of a leaning tenon, on the tenoned part."""
    shift = part.frame.to_local(at.frame.origin)[0]
    i, j, k = at.into
    return Shoulder(shift + at.face, -j / i, -k / i)


def along_stretches(
    form: str, size: float, stop: float, arrises: Iterable[Arris], stretches: Iterable[Stretch]
) -> tuple[EdgeMoulding, ...]:
    """The mouldings on these arrises in each stretch; one that is too short is left sharp."""
    pairs = tuple(stretches)
    found = []
    for arris in arrises:
        for start, end in pairs:
            run = _run(size, stop, arris, start, end)
            if run is not None:
                found.append(_moulding(form, size, arris, run, max(start.slant, end.slant), stop))
    return tuple(found)


def _run(
    size: float, stop: float, arris: Arris, start: Shoulder, end: Shoulder
) -> tuple[float, float] | None:
    """From which x to which a run goes along an arris."""
    near = [(arris.y, arris.z)]
    if stop > 0.0:
        inward = (-size * arris.edge[1], -size * arris.face[2])
        near += [(arris.y + inward[0], arris.z), (arris.y, arris.z + inward[1])]
    low = max(start.at(*point) for point in near) + stop
    high = min(end.at(*point) for point in near) - stop
    return (low, high) if high - low >= LEAST_RUN * size else None


def _moulding(
    form: str, size: float, arris: Arris, run: tuple[float, float], slant: float, stop: float
) -> EdgeMoulding:
    stopped = stop > 0.0
    return along_arris(
        form,
        size,
        ((run[0], arris.y, arris.z), (run[1], arris.y, arris.z)),
        (arris.edge, arris.face),
        stopped=(stopped, stopped),
        past=size * slant + OVERRUN,
    )
