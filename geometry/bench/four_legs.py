"""Four legs with rake and splay, held by aprons or by round tenons into the board above."""

from __future__ import annotations

import math

from geometry.bench import feet_numbers
from geometry.bench.constraint import Constraint, rule
from geometry.bench.derived import Derived, derived_angle, derived_length
from geometry.bench.four_leg_numbers import (
    APRONS,
    CORNERS,
    ROUND,
    SQUARE,
    TURNED,
    FourLegs,
    Stand,
    foot_low,
    foot_stations,
    four_legs,
    stand,
    taper_stations,
)
from geometry.bench.member import THE_BASE, Member
from geometry.bench.overall import FOUR_LEGS, base_is
from geometry.bench.round_legs import tenon_numbers, top_station
from geometry.cuts.cut import Blank
from geometry.cuts.saw import SawCut
from geometry.design.parameter import Parameter, angle, choice, length
from geometry.design.part import Part, Shape
from geometry.design.spec import BenchSpec

PARAMETERS: tuple[Parameter, ...] = (
    angle("rake", "Rake", "Base", 8, 0, 30, "How far the legs lean out, as seen from the side."),
    choice(
        "leg_joint",
        "Legs held by",
        "Base",
        APRONS,
        (APRONS, ROUND),
        "Aprons tenoned into the legs, or round wedged tenons through the board above.",
    ),
    choice(
        "leg_turn",
        "Legs stand",
        "Base",
        SQUARE,
        (SQUARE, TURNED),
        "With their front faces parallel to the length, or turned to face along their lean.",
        applies=lambda spec: spec.value("leg_joint") == ROUND,
    ),
    length(
        "leg_size",
        "Leg size",
        "Base",
        45,
        20,
        120,
        "Width and thickness of the legs' square section at the top.",
        step=0.5,
    ),
    length(
        "leg_foot",
        "Leg size at the foot",
        "Base",
        30,
        10,
        120,
        "Width and thickness square to the leg, where it meets the floor.",
        step=0.5,
    ),
    length(
        "leg_taper_start",
        "Taper starts below",
        "Base",
        10,
        0,
        500,
        "From the aprons' lower edge, or from the top of the leg, down to the start of the taper.",
    ),
)


def _foot_room(spec: BenchSpec) -> float:
    """Between the taper's start and the floor on the shortest arris, less the least."""
    n = four_legs(spec)
    at = stand(n, CORNERS[0])
    start, _ = taper_stations(n, at)
    return min(foot_stations(n, at)) - start - 10.0 if _tapers(n, at) else -1.0


def _tapers(n: FourLegs, at: Stand) -> bool:
    start, end = taper_stations(n, at)
    return end > start


CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "leg_foot_order",
        "leg_size leg_foot",
        lambda s: s.number("leg_size") - s.number("leg_foot"),
        "the foot would be larger than the top",
    ),
    rule(
        "leg_foot_room",
        "base_height rake splay leg_size leg_foot leg_taper_start leg_joint leg_turn apron_height "
        f"{feet_numbers.READS}",
        _foot_room,
        "the legs need at least {10 mm} between the taper's start and the floor",
    ),
)


def _parts(spec: BenchSpec) -> tuple[Part, ...]:
    n, timber = four_legs(spec), spec.word("timber")
    return tuple(_leg(spec, n, corner, timber) for corner in CORNERS)


def _leg(spec: BenchSpec, n: FourLegs, corner: str, timber: str) -> Part:
    at = stand(n, corner)
    corners = [(y, z) for y in (0.0, n.size) for z in (0.0, n.size)]
    start = min(at.station(y, z, n.height) for y, z in corners)
    if n.round:
        # Of a large leg the level shoulder may rise beyond the tenon's end at one corner.
        start = min(start, top_station(at, tenon_numbers(spec, corner)))
    end = max(foot_stations(n, at))
    return Part(
        name=f"leg_{corner}",
        title=f"Leg, {corner.replace('_', ' ')}",
        kind="leg",
        material=timber,
        shape=Shape(Blank(end - start, n.size, n.size), _cuts(n, at, start)),
        frame=at.frame(start),
    )


def _cuts(n: FourLegs, at: Stand, start: float) -> tuple[SawCut, ...]:
    """The level ends and the tapered faces."""
    frame = at.frame(start)
    up, down = frame.turn_to_local((0.0, 0.0, 1.0)), frame.turn_to_local((0.0, 0.0, -1.0))
    foot = (at.station(0.0, 0.0, n.ground) - start, 0.0, 0.0)
    cuts = [SawCut("level foot", foot, down)]
    if not n.round:
        top = (at.station(0.0, 0.0, n.height) - start, 0.0, 0.0)
        cuts.insert(0, SawCut("level top", top, up))
    begin, end = (x - start for x in taper_stations(n, at))
    low = foot_low(n)
    for fall, wide, sign in ((n.size - low - n.foot, n.size, 1.0), (low, 0.0, -1.0)):
        if fall <= 0.0:
            continue
        run = math.hypot(fall, end - begin)
        out, over = sign * (end - begin) / run, fall / run
        cuts.append(SawCut("taper", (begin, wide, 0.0), (over, out, 0.0)))
        cuts.append(SawCut("taper", (begin, 0.0, wide), (over, 0.0, out)))
    return tuple(cuts)


def _derived(spec: BenchSpec) -> tuple[Derived, ...]:
    n = four_legs(spec)
    at = stand(n, "front_right")
    down = at.down
    up_beside, up_behind = at.beside[2], at.behind[2]
    tilt = math.degrees(math.asin(min(1.0, abs(up_behind))))
    swing = math.degrees(math.atan2(abs(up_beside), abs(down[2])))
    fore_aft = math.degrees(math.atan2(abs(down[0]), abs(down[1])))
    lean_x, lean_y = n.tangents
    high = "(base height − feet)" if n.ground > 0.0 else "base height"
    return (
        derived_angle(
            "leg_resultant",
            "Resultant",
            "Base",
            math.degrees(math.acos(min(1.0, -down[2]))),
            "√(tan² rake + tan² splay): the leg's lean from the vertical",
        ),
        derived_angle(
            "leg_sightline",
            "Sightline",
            "Base",
            fore_aft,
            "tan splay / tan rake, from square across the bench",
        ),
        derived_angle(
            "leg_sightline_along",
            "Sightline, from the length",
            "Base",
            90.0 - fore_aft,
            "what the sightline leaves of a right angle",
        ),
        derived_length(
            "leg_length",
            "Leg length",
            "Base",
            n.rise / -down[2],
            f"{high} / cos(resultant), from the underside down along the leg",
        ),
        derived_angle(
            "leg_end_mitre",
            "Leg end, mitre",
            "Base",
            swing,
            "across the front face, from square; rake and splay",
        ),
        derived_angle(
            "leg_end_tilt",
            "Leg end, blade tilt",
            "Base",
            tilt,
            "from square with the front face on the saw; the rake",
        ),
        derived_length(
            "foot_out_along",
            "Foot stands out, ends",
            "Base",
            n.rise * lean_x,
            f"{high} × tan(splay)",
        ),
        derived_length(
            "foot_out_across",
            "Foot stands out, edges",
            "Base",
            n.rise * lean_y,
            f"{high} × tan(rake)",
        ),
    )


def has_four_legs(spec: BenchSpec) -> bool:
    return base_is(FOUR_LEGS, spec)


MEMBER = Member(
    "four legs",
    PARAMETERS,
    CONSTRAINTS,
    _parts,
    derived=_derived,
    present=has_four_legs,
    made_into=THE_BASE,
)
