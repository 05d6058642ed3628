"""Leaning legs bridled to the ends of stretchers: what crossed stretchers and trestles share.

Two stretchers, top edges at the underside of what the base carries; a leg at each end of either.
"""

from __future__ import annotations

import math
from collections.abc import Mapping

from geometry.bench import feet_numbers
from geometry.bench.base_numbers import (
    INSIDE,
    OUTSIDE,
    OWN,
    THIRD,
    BaseNumbers,
    base_numbers,
    outward,
)
from geometry.bench.constraint import Constraint, rule
from geometry.bench.derived import Derived, derived_angle, derived_length
from geometry.bench.member import THE_BASE, Member
from geometry.bench.overall import CROSSED, TRESTLES, base_is
from geometry.cuts.cut import Blank
from geometry.cuts.saw import SawCut
from geometry.design.joint import Joint
from geometry.design.parameter import Parameter, choice, length
from geometry.design.part import Part, Shape
from geometry.design.spec import BenchSpec
from geometry.joints.bridle import BridleNumbers, bridle
from geometry.primitives.frame import Frame, Vec3, add, cross, scale

PARAMETERS: tuple[Parameter, ...] = (
    length(
        "base_thickness",
        "Stretcher and leg thickness",
        "Base",
        40,
        15,
        100,
        "Thickness of stretchers and legs.",
        step=0.5,
    ),
    length(
        "stretcher_height", "Stretcher height", "Base", 60, 25, 250, "Height of the stretchers."
    ),
    length(
        "leg_top_width",
        "Leg width at the top",
        "Base",
        76.2,
        20,
        200,
        "Square to the straight edge, down to below the joint.",
        step=0.5,
    ),
    length(
        "leg_foot_width",
        "Leg width at the foot",
        "Base",
        25.4,
        10,
        200,
        "Square to the straight edge, where the tapered edge meets the floor.",
        step=0.5,
    ),
    choice(
        "taper_side",
        "Tapered edge",
        "Base",
        INSIDE,
        (INSIDE, OUTSIDE),
        "The edge that is tapered; the other is straight and is the face edge.",
    ),
    length(
        "taper_start",
        "Taper starts below joint",
        "Base",
        6,
        0,
        400,
        "Height between the stretcher's underside and the start of the taper.",
    ),
    choice(
        "tenon_rule",
        "Tenon",
        "Base",
        THIRD,
        (THIRD, OWN),
        "A third of the thickness (common practice, no source), or a size of its own.",
    ),
    length(
        "tenon_thickness",
        "Tenon thickness",
        "Base",
        13,
        4,
        80,
        "Thickness of the stretchers' tenons.",
        step=0.5,
        applies=lambda spec: spec.word("tenon_rule") == OWN,
    ),
    length(
        "proud",
        "Left proud",
        "Base",
        0,
        0,
        15,
        "Extra length on stretcher ends and leg tops, trimmed flush after the glue-up.",
        step=0.5,
    ),
    length(
        "bridle_fit",
        "Bridle fit",
        "Base",
        0.2,
        0,
        2,
        "Clearance of a tenon in its open mortise, both cheeks together.",
        step=0.05,
    ),
)

_TAPER = (
    "base_height splay stretcher_height taper_start leg_top_width leg_foot_width taper_side "
    f"{feet_numbers.READS}"
)

CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "taper_room",
        _TAPER,
        lambda s: _taper_run(s) - 20.0,
        "the taper needs at least {20 mm} between the joint and the floor",
    ),
    rule(
        "leg_order",
        "leg_top_width leg_foot_width",
        lambda s: s.number("leg_top_width") - s.number("leg_foot_width"),
        "the foot would be wider than the top",
    ),
    rule(
        "tenon_walls",
        "tenon_rule tenon_thickness base_thickness bridle_fit",
        lambda s: base_numbers(s).mortise_wall - 3.0,
        "the mortise would leave walls under {3 mm}",
    ),
    rule(
        "tenon_least",
        "tenon_rule tenon_thickness base_thickness",
        lambda s: base_numbers(s).tenon - 4.0,
        "the tenon would be thinner than {4 mm}",
    ),
)


def _taper_run(spec: BenchSpec) -> float:
    """How far the taper runs, along the leg or in height, whichever is less.

    A taper that fell less than the level foot rises would cut the foot away from under the leg.
    """
    b = base_numbers(spec)
    slope = -b.tangent if b.tapered_inside else b.tangent
    along = b.leg_edge + slope * b.leg_foot - b.drop
    return min(along, b.rise - b.stretcher_height - b.taper_start)


# Numbers that fit under the smallest bench.
SNUG_LEGS = {
    "splay": 0.0,
    "base_thickness": 15.0,
    "stretcher_height": 25.0,
    "leg_top_width": 20.0,
    "leg_foot_width": 20.0,
    "taper_start": 0.0,
    "tenon_thickness": 5.0,
    "bridle_fit": 0.2,
}


def words(corner: str) -> str:
    """A corner as it is said: ``back left``."""
    return corner.replace("_", " ")


def stretcher_words(b: BaseNumbers, start: str, end: str) -> tuple[str, str]:
    """Name and title of a stretcher."""
    if b.crossed:
        return f"stretcher_{start}", f"Stretcher, {words(start)} to {words(end)}"
    side = start.split("_")[1]
    return f"stretcher_{side}", f"Stretcher, {side} trestle"


def _parts(spec: BenchSpec) -> tuple[Part, ...]:
    """Two stretchers and four legs."""
    b, timber = base_numbers(spec), spec.word("timber")
    stretchers = tuple(_stretcher(b, a, z, timber) for a, z in b.pairs)
    legs = tuple(_leg(b, corner, timber) for corner, _ in b.tips)
    return (*stretchers, *legs)


def _joints(spec: BenchSpec, parts: Mapping[str, Part]) -> tuple[Joint, ...]:
    """A bridle joint at each leg."""
    b = base_numbers(spec)
    joints = []
    for a, z in b.pairs:
        stretcher = parts[stretcher_words(b, a, z)[0]]
        for corner in (a, z):
            numbers = BridleNumbers(
                tip=(*b.tip(corner), b.height),
                outward=outward(b, corner),
                splay_deg=b.splay_deg,
                height=b.stretcher_height,
                leg_width=b.leg_top,
                thickness=b.thickness,
                tenon=b.tenon,
                fit=b.bridle_fit,
            )
            joints.append(bridle(f"bridle_{corner}", stretcher, parts[f"leg_{corner}"], numbers))
    return tuple(joints)


def _stretcher(b: BaseNumbers, start: str, end: str, timber: str) -> Part:
    """x runs from the first corner to the second, y down from the top edge."""
    name, title = stretcher_words(b, start, end)
    along = outward(b, end)
    beyond = b.stretcher_height * b.tangent + b.proud
    run = math.dist(b.tip(start), b.tip(end))
    across = cross(along, (0.0, 0.0, -1.0))
    tip: Vec3 = (*b.tip(start), b.height)
    origin = add(add(tip, scale(along, -beyond)), scale(across, -b.thickness / 2.0))
    return Part(
        name=name,
        title=title,
        kind="stretcher",
        material=timber,
        shape=Shape(Blank(run + 2.0 * beyond, b.stretcher_height, b.thickness), ()),
        frame=Frame.of(origin, along, (0.0, 0.0, -1.0)),
        allowance=2.0 * b.proud,
    )


def _leg(b: BaseNumbers, corner: str, timber: str) -> Part:
    """x runs down the straight edge from the top, y across from that edge."""
    out = outward(b, corner)
    down = add(scale(out, b.sine), (0.0, 0.0, -b.cosine))
    inward = add(scale(out, -b.cosine), (0.0, 0.0, -b.sine))
    tip: Vec3 = (*b.tip(corner), b.height)
    if b.tapered_inside:
        across, edge_top = inward, tip
        head, tail = b.leg_top * b.tangent, 0.0
    else:
        across = scale(inward, -1.0)
        edge_top = add(tip, scale(out, -b.leg_top / b.cosine))
        head, tail = 0.0, b.leg_foot * b.tangent
    head += b.proud
    through = cross(down, across)
    origin = add(add(edge_top, scale(down, -head)), scale(through, -b.thickness / 2.0))
    frame = Frame.of(origin, down, across)
    blank = Blank(head + b.leg_edge + tail, b.leg_top, b.thickness)
    return Part(
        name=f"leg_{corner}",
        title=f"Leg, {words(corner)}",
        kind="leg",
        material=timber,
        shape=Shape(blank, _leg_cuts(b, frame, head)),
        frame=frame,
        allowance=b.proud,
    )


def _leg_cuts(b: BaseNumbers, frame: Frame, head: float) -> tuple[SawCut, ...]:
    """Both ends level, and the taper."""
    up, down = frame.turn_to_local((0.0, 0.0, 1.0)), frame.turn_to_local((0.0, 0.0, -1.0))
    slope = -b.tangent if b.tapered_inside else b.tangent
    start = (head + b.drop, b.leg_top)
    foot = (head + b.leg_edge + slope * b.leg_foot, b.leg_foot)
    run, fall = foot[0] - start[0], start[1] - foot[1]
    size = math.hypot(run, fall)
    cuts = [
        SawCut("level top", (head, 0.0, 0.0), up),
        SawCut("level foot", (head + b.leg_edge, 0.0, 0.0), down),
    ]
    if fall > 0.0:
        cuts.append(SawCut("taper", (*start, 0.0), (fall / size, run / size, 0.0)))
    return tuple(cuts)


def _derived(spec: BenchSpec) -> tuple[Derived, ...]:
    b = base_numbers(spec)
    rows = [
        derived_length(
            "leg_length",
            "Leg length",
            "Base",
            b.leg_edge,
            f"{_height_words(b)} / cos(splay), along the straight edge",
        ),
        derived_angle("leg_end_cut", "Leg-end cut", "Base", b.splay_deg, "the splay, from square"),
        derived_length("tenon_size", "Tenon", "Base", b.tenon, "tenon rule and thickness"),
        derived_length(
            "foot_out",
            "Foot stands out",
            "Base",
            b.foot_out,
            f"{_height_words(b)} × tan(splay)" + ("" if b.tapered_inside else ", less the taper"),
        ),
    ]
    for start, end in b.pairs:
        name, title = stretcher_words(b, start, end)
        run = math.dist(b.tip(start), b.tip(end))
        rows.append(
            derived_length(
                f"{name}_length",
                title,
                "Base",
                run + 2.0 * b.stretcher_height * b.tangent,
                "leg places, stretcher height × tan(splay)",
            )
        )
    return tuple(rows)


def _height_words(b: BaseNumbers) -> str:
    return "(base height − feet)" if b.ground > 0.0 else "base height"


def has_bridled_legs(spec: BenchSpec) -> bool:
    return base_is(CROSSED, spec) or base_is(TRESTLES, spec)


MEMBER = Member(
    "bridled legs",
    PARAMETERS,
    CONSTRAINTS,
    _parts,
    _joints,
    derived=_derived,
    present=has_bridled_legs,
    made_into=THE_BASE,
)
