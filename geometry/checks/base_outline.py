"""Checks of where a base stands: under the outline of what it carries, above and on the floor."""

from __future__ import annotations

import math
from collections.abc import Iterator

from geometry.bench.bases import standing
from geometry.bench.bench import Bench
from geometry.bench.catalogue import broken_rules
from geometry.bench.feet_numbers import ground
from geometry.bench.four_leg_numbers import CORNERS
from geometry.bench.members import has
from geometry.bench.overall import base_form
from geometry.bench.standing import Top, leg_top
from geometry.checks.check import Check
from geometry.checks.limits_of_handling import MOST_FOOT_OUT, MOST_LEG_OUT
from geometry.design.finding import Finding, Level, Mend
from geometry.design.spec import BenchSpec
from geometry.primitives.frame import Vec2
from geometry.solids.cutting import placed
from shared.units import angle_mark, length_mark

_NONE = 1e-6  # mm: what rounding makes of nothing
_LEVEL = 1e-3  # mm: corners this near the lowest are the foot's own


def _out(piece: Top, length: float, depth: float) -> tuple[float, Vec2]:
    """How far it stands out at most (less than 0: how far in), and where."""
    return max((max(-x, x - length, y, -y - depth), (x, y)) for x, y in piece.points)


def _feet(bench: Bench) -> tuple[Top, ...]:
    """The legs where they end, on the floor or on feet; none of a base without legs."""
    found = []
    for corner in CORNERS if base_form(bench.spec).legs else ():
        corners = placed(bench.part(f"leg_{corner}")).vertices
        low = corners[corners[:, 2] < corners[:, 2].min() + _LEVEL]
        found.append(leg_top(corner, tuple((x, y) for x, y, _ in low.tolist())))
    return tuple(found)


def _outside(bench: Bench) -> Iterator[Finding]:
    length, depth = bench.spec.number("length"), bench.spec.number("depth")
    height, most = bench.spec.number("base_height"), MOST_LEG_OUT.of(bench)
    for piece in standing(bench.spec).tops(bench.spec):
        out, place = _out(piece, length, depth)
        if out <= most + _NONE:
            continue
        yield Finding(
            check="leg_outside",
            level=Level.THINK_AGAIN,
            message=(
                f"{piece.words[0].upper()}{piece.words[1:]} stands {length_mark(out)} out from "
                "under the bench: its top and joint show, and a foot can catch on it."
            ),
            parts=(piece.part,),
            place=(*place, height),
            amount=out,
            limit=most,
        )


def _trips(bench: Bench) -> Iterator[Finding]:
    length, depth = bench.spec.number("length"), bench.spec.number("depth")
    most = MOST_FOOT_OUT.of(bench)
    for piece in _feet(bench):
        out, place = _out(piece, length, depth)
        if out <= most + _NONE:
            continue
        yield Finding(
            check="foot_beyond",
            level=Level.GOOD_TO_KNOW,
            message=(
                f"On the floor {piece.words} stands {length_mark(out)} beyond the bench's outline, "
                "where one can trip on it."
            ),
            parts=(piece.part,),
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
