"""Checks of where a base stands: under the outline of what it carries, above and on the floor."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from geometry.bench.base_numbers import base_numbers
from geometry.bench.bench import Bench
from geometry.bench.catalogue import broken_rules
from geometry.bench.feet_numbers import ground
from geometry.bench.four_leg_numbers import CORNERS, four_legs, stand
from geometry.bench.members import has
from geometry.checks.check import Check
from geometry.checks.limits_of_handling import MOST_FOOT_OUT, MOST_LEG_OUT
from geometry.design.finding import Finding, Level, Mend
from geometry.design.spec import BenchSpec
from geometry.primitives.frame import Vec2
from geometry.solids.cutting import placed
from shared.units import angle_mark, length_mark

_NONE = 1e-6  # mm: what rounding makes of nothing
_LEVEL = 1e-3  # mm: corners this near the lowest are the foot's own


@dataclass(frozen=True, slots=True)
class _Piece:
    """A piece of the base with the points at which it could stand out, in plan."""

    name: str
    words: str
    points: tuple[Vec2, ...]

    def out(self, length: float, depth: float) -> tuple[float, Vec2]:
        """How far it stands out at most (less than 0: how far in), and where."""
        return max((max(-x, x - length, y, -y - depth), (x, y)) for x, y in self.points)


def _tops(bench: Bench) -> tuple[_Piece, ...]:
    """The pieces of the base where they carry the bench."""
    spec = bench.spec
    if has(spec, "bridled legs"):
        b = base_numbers(spec)
        half = 0.0 if b.crossed else b.thickness / 2.0
        return tuple(_leg(corner, ((x - half, y), (x + half, y))) for corner, (x, y) in b.tips)
    if has(spec, "four legs"):
        n = four_legs(spec)
        found = []
        for corner in CORNERS:
            at = stand(n, corner)
            frame = at.frame(0.0)
            points = [
                frame.to_bench((at.station(y, z, n.height), y, z))
                for y in (0.0, n.size)
                for z in (0.0, n.size)
            ]
            found.append(_leg(corner, tuple((x, y) for x, y, _ in points)))
        return tuple(found)
    left, right = spec.number("inset_left"), spec.number("length") - spec.number("inset_right")
    back, front = -spec.number("inset_back"), spec.number("inset_front") - spec.number("depth")
    if has(spec, "plinth"):
        middle = ((left + right) / 2.0, (back + front) / 2.0)
        sides: dict[str, Vec2] = {
            "left": (left, middle[1]),
            "front": (middle[0], front),
            "right": (right, middle[1]),
            "back": (middle[0], back),
        }
        return tuple(
            _Piece(f"plinth_{side}", f"the plinth's {side}", (at,)) for side, at in sides.items()
        )
    return tuple(
        _Piece(f"panel_foot_{side}", f"the {side} panel foot", ((x, back), (x, front)))
        for side, x in (("left", left), ("right", right))
    )


def _leg(corner: str, points: tuple[Vec2, ...]) -> _Piece:
    return _Piece(f"leg_{corner}", f"the {corner.replace('_', ' ')} leg", points)


def _feet(bench: Bench) -> tuple[_Piece, ...]:
    """The legs where they end, on the floor or on feet; none of a base without legs."""
    found = []
    for corner in CORNERS if _has_legs(bench.spec) else ():
        corners = placed(bench.part(f"leg_{corner}")).vertices
        low = corners[corners[:, 2] < corners[:, 2].min() + _LEVEL]
        found.append(_leg(corner, tuple((x, y) for x, y, _ in low.tolist())))
    return tuple(found)


def _has_legs(spec: BenchSpec) -> bool:
    return has(spec, "bridled legs") or has(spec, "four legs")


def _outside(bench: Bench) -> Iterator[Finding]:
    length, depth = bench.spec.number("length"), bench.spec.number("depth")
    height, most = bench.spec.number("base_height"), MOST_LEG_OUT.of(bench)
    for piece in _tops(bench):
        out, place = piece.out(length, depth)
        if out <= most + _NONE:
            continue
        yield Finding(
            check="leg_outside",
            level=Level.THINK_AGAIN,
            message=(
                f"{piece.words[0].upper()}{piece.words[1:]} stands {length_mark(out)} out from "
                "under the bench: its top and joint show, and a foot can catch on it."
            ),
            parts=(piece.name,),
            place=(*place, height),
            amount=out,
            limit=most,
        )


def _trips(bench: Bench) -> Iterator[Finding]:
    length, depth = bench.spec.number("length"), bench.spec.number("depth")
    most = MOST_FOOT_OUT.of(bench)
    for piece in _feet(bench):
        out, place = piece.out(length, depth)
        if out <= most + _NONE:
            continue
        yield Finding(
            check="foot_beyond",
            level=Level.GOOD_TO_KNOW,
            message=(
                f"On the floor {piece.words} stands {length_mark(out)} beyond the bench's outline, "
                "where one can trip on it."
            ),
            parts=(piece.name,),
            place=(*place, ground(bench.spec)),
            amount=out,
            limit=most,
            mend=_less_lean(bench),
        )


def _less_lean(bench: Bench) -> Mend | None:
    """The greatest whole degrees with which the feet of four legs stay under the bench."""
    spec = bench.spec
    if not has(spec, "aprons"):
        return None
    height = spec.number("base_height") - ground(spec)
    changes: list[tuple[str, float | str]] = []
    for name, sides in (("splay", ("left", "right")), ("rake", ("back", "front"))):
        room = min(spec.number(f"inset_{side}") for side in sides)
        if room < 0.0:
            return None
        most = float(math.floor(math.degrees(math.atan(room / height))))
        if most < spec.number(name):
            changes.append((name, most))
    if not changes or not _buildable(spec, changes):
        return None
    words = " and ".join(f"{name} {angle_mark(float(value))}" for name, value in changes)
    return Mend(f"Lean the legs less: {words}.", tuple(changes))


def _buildable(spec: BenchSpec, changes: list[tuple[str, float | str]]) -> bool:
    return not broken_rules(spec.changed(dict(changes)))


CHECKS: tuple[Check, ...] = (
    Check(
        "leg_outside",
        "Base standing out from under the bench",
        "Compares the top of each leg, plinth board or panel foot with the outline of the bench's "
        "underside. What stands out is not held there and is in the way of feet. The limit is the "
        "outline itself.",
        _outside,
        ("base place",),
        limits=(MOST_LEG_OUT,),
    ),
    Check(
        "foot_beyond",
        "Foot beyond the bench's outline",
        "Compares each leg where it meets the floor with the outline of the bench. A foot that "
        "stands farther out steadies the bench, and is there for people to trip on. The limit is "
        "the outline itself.",
        _trips,
        ("base place",),
        limits=(MOST_FOOT_OUT,),
    ),
)
