"""Estimates of legs and of their joints under those who sit.  N, mm, MPa.

Method: ``geometry.strength.legs`` and ``geometry.strength.joints``.
"""

from __future__ import annotations

from collections.abc import Iterator

from geometry.bench.base_numbers import OWN
from geometry.bench.bench import Bench
from geometry.bench.overall import FOUR_LEGS, base_is
from geometry.bench.seat_board import has_seat_board
from geometry.checks.check import Check
from geometry.checks.limits_of_loads import MOST_OF_STRENGTH, SEAT_LOAD
from geometry.checks.limits_of_strength import FLOOR_GRIP, HEAVY_SITTER, SITTERS_APART
from geometry.checks.strength import level_of
from geometry.checks.strengthening import (
    Size,
    Told,
    Way,
    loads_on,
    own_weight,
    share_told,
    with_mends,
)
from geometry.design.finding import Level
from geometry.design.spec import BenchSpec
from geometry.primitives.frame import Vec3
from geometry.strength import joints
from geometry.strength.joints import Held, joints_at
from geometry.strength.legs import Leg, Stress, greatest_forces, has_legs, leg_stress, legs
from geometry.strength.line import strained
from geometry.strength.loads import Case
from geometry.strength.seats import seat_lines
from shared.units import quantity_mark

_MOST = 999.0  # %: beyond it only 'far too weak' is meant
_LARGEST = 2.0  # times as large is the most that is tried at once


def _loaded(bench: Bench) -> Iterator[tuple[Leg, float, Case]]:
    """Each leg with the greatest force on it."""
    if not has_legs(bench.spec):
        return
    forces = greatest_forces(bench.spec, loads_on(bench), own_weight(bench))
    for leg in legs(bench.spec):
        yield (leg, *forces[leg.part])


def _legs(bench: Bench) -> Iterator[Told]:
    grip, limit = FLOOR_GRIP.of(bench) / 100.0, MOST_OF_STRENGTH.of(bench)
    found: list[tuple[Leg, Stress]] = []
    for leg, force, case in _loaded(bench):
        stress = leg_stress(leg, bench.part(leg.part).material, force, case, grip)
        if stress.share > limit + 1e-9:
            found.append((leg, stress))
    if not found:
        return
    leg, worst = max(found, key=lambda row: row[1].share)
    share = min(worst.share, _MOST)
    yield share_told(
        "leg_strength",
        level_of(share),
        f"With {worst.case.words} where it bears most, “{bench.part(leg.part).title}” carries "
        f"about {quantity_mark(worst.force, 'N')} and is pressed and bent to about {share:.0f} % "
        "of its strength",
        tuple(one.part for one, _ in found),
        (*leg.foot, worst.height),
        share,
        limit,
        _ways(bench.spec, _LEGS, (share / limit) ** (1.0 / 3.0)),
    )


def _joints(bench: Bench) -> Iterator[Told]:
    spec = bench.spec
    grip, limit = FLOOR_GRIP.of(bench) / 100.0, MOST_OF_STRENGTH.of(bench)
    shears = _shears(bench) if has_legs(spec) and has_seat_board(spec) else {}
    found: list[tuple[Leg, float, Case, Held]] = []
    for leg, force, case in _loaded(bench):
        held = joints_at(spec, leg, force, grip, shears)
        found += [(leg, force, case, one) for one in held if one.share > limit + 1e-9]
    if not found:
        return
    leg, force, case, worst = max(found, key=lambda row: row[3].share)
    share = min(worst.share, _MOST)
    first, second = (bench.part(part).title for part in worst.parts)
    yield share_told(
        "leg_joint_strength",
        Level.THINK_AGAIN,  # how joints break is too rough a guess to forbid one
        f"With {case.words} where it bears most, about {quantity_mark(force, 'N')} go through the "
        f"joint of “{first}” and “{second}”: {worst.way} uses about {share:.0f} % of its strength",
        tuple(dict.fromkeys(part for row in found for part in row[3].parts)),
        _top_of(bench, leg),
        share,
        limit,
        (*_ways(spec, _JOINTS[worst.way], share / limit), *_thicker(worst, share / limit)),
    )


def _shears(bench: Bench) -> dict[str, float]:
    """By piece of what is sat on, the greatest force across it in N."""
    loads = loads_on(bench)
    return {
        piece.part: shear
        for line in seat_lines(bench.spec)
        for piece, shear in zip(line.pieces, strained(line, loads).shears, strict=True)
    }


def _top_of(bench: Bench, leg: Leg) -> Vec3:
    return (*leg.foot, bench.spec.number("base_height"))


_BRIDLED, _FOUR = False, True
_LEG_SIZE = Size("leg_size", "Make the legs")
_LEG_TOP = Size("leg_top_width", "Make the legs' tops", "wide")
_LEG_FOOT = Size("leg_foot_width", "Make the legs' feet", "wide")
_BASE_THICKNESS = Size("base_thickness", "Make legs and stretchers")
_STRETCHER = Size("stretcher_height", "Make the stretchers", "high")
_TENON = Size("tenon_thickness", "Make the tenons")
_APRON = Size("apron_height", "Make the aprons", "high")
_ROUND = Size("leg_tenon", "Make the tenons")

Sizes = dict[bool, tuple[Size, ...]]

# What to make larger, of bridled legs and of four legs, for each way to fail.
_LEGS: Sizes = {
    _BRIDLED: (_LEG_FOOT, _BASE_THICKNESS, _LEG_TOP),
    _FOUR: (Size("leg_foot", "Make the legs' feet"), _LEG_SIZE),
}
_JOINTS: dict[str, Sizes] = {
    joints.DENT: {_BRIDLED: (_TENON, _BASE_THICKNESS, _LEG_TOP)},
    joints.CUT: {
        _BRIDLED: (_TENON, _BASE_THICKNESS, _STRETCHER),
        _FOUR: (Size("apron_tenon", "Make the tenons"), _APRON),
    },
    joints.GLUE: {
        _BRIDLED: (_STRETCHER, _LEG_TOP),
        _FOUR: (_APRON, Size("apron_tenon_length", "Make the tenons", "long")),
    },
    joints.BENT: {_FOUR: (_ROUND, _LEG_SIZE)},
    joints.BORE: {_FOUR: (_ROUND, _LEG_SIZE)},
}
BORED = {
    "bottom": Size("board_thickness", "Make the case's boards"),
    "seat": Size("seat_thickness", "Make the seat"),
    "box_bottom": Size("box_bottom_thickness", "Make the box's bottom"),
}


def _thicker(worst: Held, factor: float) -> tuple[Way, ...]:
    """The board that is bored, whose thickness counts by its square."""
    if worst.way != joints.BORE:
        return ()
    return (BORED[worst.parts[1]].grown(factor**0.5),)


def _ways(spec: BenchSpec, sizes: Sizes, factor: float) -> tuple[Way, ...]:
    """Each size that this bench has, larger by the factor."""
    found = sizes[base_is(FOUR_LEGS, spec)]
    own_tenon = spec.word("tenon_rule") == OWN
    return tuple(
        size.grown(min(factor, _LARGEST)) for size in found if size.name != _TENON.name or own_tenon
    )


CHECKS: tuple[Check, ...] = (
    Check(
        "leg_strength",
        "Legs under those who sit",
        "Puts those who sit where each leg bears most, reckons the force on it by the lever, and "
        "from its lean, its taper and its length how it is pressed and bent, as a share of the "
        "timber's strength in the Wood Handbook. A leg that leans is bent by as much as the floor "
        "does not hold its foot; a slender one gives way sideways (Euler). A third of the strength "
        "is the most to be used: common practice, no source. Knocks and pushes are not reckoned. "
        "An estimate.",
        with_mends(_legs),
        limits=(SEAT_LOAD, HEAVY_SITTER, SITTERS_APART, FLOOR_GRIP, MOST_OF_STRENGTH),
        quick=False,
    ),
    Check(
        "leg_joint_strength",
        "Joints of the legs under those who sit",
        "Reckons what the joint at the top of each leg bears under the same loads: bridle joints "
        "by the dent and the shear of the stretcher's tenon and by the glue on its cheeks, aprons "
        "by the shear of their tenons and by the glue, round tenons by their bending and by the "
        "pressure on the bore. Strengths are those of the Wood Handbook, from memory; how joints "
        "break is simplified. An estimate.",
        with_mends(_joints),
        limits=(SEAT_LOAD, HEAVY_SITTER, SITTERS_APART, FLOOR_GRIP, MOST_OF_STRENGTH),
        quick=False,
    ),
)
