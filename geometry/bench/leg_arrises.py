"""The arrises of a leg, found from its own saw cuts, and the mouldings along them.

Frame: the leg's own, x down the grain; mm.  A leg has four long sides, y and z low and high.  Where
a taper is sawn the side is the taper's plane from where it begins; those planes hold y or z as a
straight line of x, so an arris is where two such lines meet, and it ends where the level foot cuts
it.
"""

from __future__ import annotations

from dataclasses import dataclass

from geometry.bench.arris_rows import LEAST_RUN
from geometry.cuts.edge_moulding import EdgeMoulding, along_arris
from geometry.cuts.saw import SawCut
from geometry.design.part import Part
from geometry.primitives.frame import Vec3, dot, subtract

_FLAT = 1e-9


@dataclass(frozen=True, slots=True)
class Side:
    """A long side: its plane, from x ``begins`` on, and whether it faces along y (1) or z (2)."""

    axis: int
    point: Vec3
    outward: Vec3
    begins: float

    def at(self, x: float) -> float:
        """The side's y or z."""
        lean = self.outward[0] / self.outward[self.axis]
        return self.point[self.axis] - (x - self.point[0]) * lean

    @property
    def fall(self) -> float:
        """How much its y or z grows for each mm of x."""
        return -self.outward[0] / self.outward[self.axis]


def sides(part: Part) -> tuple[Side, Side, Side, Side]:
    """The sides below the tapers' beginnings: y low, z low, y high, z high, in order round."""
    blank = part.shape.blank
    bare = {
        (1, -1.0): Side(1, (0.0, 0.0, 0.0), (0.0, -1.0, 0.0), 0.0),
        (2, -1.0): Side(2, (0.0, 0.0, 0.0), (0.0, 0.0, -1.0), 0.0),
        (1, 1.0): Side(1, (0.0, blank.width, 0.0), (0.0, 1.0, 0.0), 0.0),
        (2, 1.0): Side(2, (0.0, 0.0, blank.thickness), (0.0, 0.0, 1.0), 0.0),
    }
    for cut in part.shape.cuts:
        if isinstance(cut, SawCut) and cut.title == "taper":
            axis = 1 if abs(cut.outward[1]) > abs(cut.outward[2]) else 2
            sign = 1.0 if cut.outward[axis] > 0.0 else -1.0
            bare[(axis, sign)] = Side(axis, cut.point, cut.outward, cut.point[0])
    return bare[(1, -1.0)], bare[(2, -1.0)], bare[(1, 1.0)], bare[(2, 1.0)]


def long_mouldings(part: Part, form: str, size: float, start: float) -> tuple[EdgeMoulding, ...]:
    """Along the four long arrises, stopped at x ``start`` and out through the foot."""
    found = []
    for first, second in _pairs(part):
        begins = max(start, first.begins, second.begins)
        end = _foot_on(part, first, second)
        if end[0] - begins < LEAST_RUN * size:
            continue
        last = part.shape.blank.length
        ends = (_on(first, second, begins), _on(first, second, last))
        normals = (first.outward, second.outward)
        found.append(along_arris(form, size, ends, normals, stopped=(True, False)))
    return tuple(found)


def end_mouldings(part: Part, form: str, size: float) -> tuple[EdgeMoulding, ...]:
    """Along the four arrises of the level foot."""
    foot = _foot(part)
    corners = [_foot_on(part, first, second) for first, second in _pairs(part)]
    around = sides(part)
    return tuple(
        along_arris(
            form,
            size,
            (corners[k - 1], corners[k]),
            (foot.outward, around[k].outward),
        )
        for k in range(4)
    )


def _pairs(part: Part) -> list[tuple[Side, Side]]:
    around = sides(part)
    return [(around[k], around[(k + 1) % 4]) for k in range(4)]


def _foot(part: Part) -> SawCut:
    return next(
        cut for cut in part.shape.cuts if isinstance(cut, SawCut) and cut.title == "level foot"
    )


def _on(first: Side, second: Side, x: float) -> Vec3:
    """Where two sides' arris is at x."""
    y, z = (first, second) if first.axis == 1 else (second, first)
    return (x, y.at(x), z.at(x))


def _foot_on(part: Part, first: Side, second: Side) -> Vec3:
    """Where an arris meets the level foot."""
    foot = _foot(part)
    start = _on(first, second, 0.0)
    y, z = (first, second) if first.axis == 1 else (second, first)
    run: Vec3 = (1.0, y.fall, z.fall)
    along = dot(foot.outward, run)
    assert abs(along) > _FLAT, "a leg's arris runs level"
    x = -dot(subtract(start, foot.point), foot.outward) / along
    return _on(first, second, x)
