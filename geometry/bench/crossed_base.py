"""The base: two stretchers crossed from corner to corner, a splayed leg at each end."""

from __future__ import annotations

import math
from collections.abc import Mapping

from geometry.bench.base_numbers import (
    DIAGONALS,
    INSIDE,
    OUTSIDE,
    OWN,
    THIRD,
    BaseNumbers,
    base_numbers,
    crossing,
    outward,
)
from geometry.bench.base_rules import CONSTRAINTS
from geometry.bench.derived import Derived, derived_angle, derived_length
from geometry.bench.member import Member
from geometry.bench.overall import CROSSED, base_is
from geometry.cuts.cut import Blank
from geometry.cuts.saw import SawCut
from geometry.design.joint import Joint
from geometry.design.parameter import Parameter, angle, choice, length
from geometry.design.part import Part, Shape
from geometry.design.spec import BenchSpec
from geometry.joints.angled_lap import LapNumbers, angled_lap
from geometry.joints.bridle import BridleNumbers, bridle
from geometry.primitives.frame import Frame, Vec3, add, cross, scale


def _inset(name: str, title: str, default: float, description: str) -> Parameter:
    return length(name, title, "Base", default, -200, 1500, description)


PARAMETERS: tuple[Parameter, ...] = (
    angle("splay", "Splay", "Base", 15, 0, 30, "How far the legs lean out from the vertical."),
    _inset("inset_left", "Legs in, left", 70, "From the left end to the left legs' outer tops."),
    _inset(
        "inset_right", "Legs in, right", 70, "From the right end to the right legs' outer tops."
    ),
    _inset("inset_back_left", "Back left leg in", 60, "From the back edge to the leg's outer top."),
    _inset(
        "inset_back_right", "Back right leg in", 60, "From the back edge to the leg's outer top."
    ),
    _inset(
        "inset_front_left",
        "Front left leg in",
        60,
        "From the bottom's front edge to the leg's outer top; less than 0 stands forward.",
    ),
    _inset(
        "inset_front_right",
        "Front right leg in",
        60,
        "From the bottom's front edge to the leg's outer top; less than 0 stands forward.",
    ),
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
    length(
        "lap_fit",
        "Lap fit",
        "Base",
        0.2,
        0,
        2,
        "Clearance of a stretcher in the lap's notch, both sides together.",
        step=0.05,
    ),
)


def _parts(spec: BenchSpec) -> tuple[Part, ...]:
    """Two stretchers and four legs."""
    b, timber = base_numbers(spec), spec.word("timber")
    stretchers = tuple(_stretcher(b, a, z, timber) for a, z in DIAGONALS)
    legs = tuple(_leg(b, corner, timber) for corner, _ in b.tips)
    return (*stretchers, *legs)


def _joints(spec: BenchSpec, parts: Mapping[str, Part]) -> tuple[Joint, ...]:
    """The lap in the middle and a bridle joint at each leg."""
    b = base_numbers(spec)
    place = crossing(b)
    assert place is not None, "the constraints keep the stretchers crossed"
    lap = LapNumbers((place[0], place[1], b.height), b.stretcher_height, b.thickness, b.lap_fit)
    names = tuple(f"stretcher_{a}" for a, _ in DIAGONALS)
    joints = [angled_lap("lap", parts[names[0]], parts[names[1]], lap)]
    for a, z in DIAGONALS:
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
            joints.append(
                bridle(f"bridle_{corner}", parts[f"stretcher_{a}"], parts[f"leg_{corner}"], numbers)
            )
    return tuple(joints)


def _words(corner: str) -> str:
    return corner.replace("_", " ")


def _stretcher(b: BaseNumbers, start: str, end: str, timber: str) -> Part:
    """x runs from the first corner to the second, y down from the top edge."""
    along = outward(b, end)
    beyond = b.stretcher_height * b.tangent + b.proud
    run = math.dist(b.tip(start), b.tip(end))
    across = cross(along, (0.0, 0.0, -1.0))
    tip: Vec3 = (*b.tip(start), b.height)
    origin = add(add(tip, scale(along, -beyond)), scale(across, -b.thickness / 2.0))
    return Part(
        name=f"stretcher_{start}",
        title=f"Stretcher, {_words(start)} to {_words(end)}",
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
        title=f"Leg, {_words(corner)}",
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
            "base height / cos(splay), along the straight edge",
        ),
        derived_angle("leg_end_cut", "Leg-end cut", "Base", b.splay_deg, "the splay, from square"),
        derived_length("tenon_size", "Tenon", "Base", b.tenon, "tenon rule and thickness"),
        derived_length(
            "foot_out", "Foot stands out", "Base", b.foot_out, "base height × tan(splay)"
        ),
    ]
    place = crossing(b)
    assert place is not None, "the constraints keep the stretchers crossed"
    for start, end in DIAGONALS:
        run = math.dist(b.tip(start), b.tip(end))
        rows += [
            derived_length(
                f"stretcher_{start}_length",
                f"Stretcher, {_words(start)} to {_words(end)}",
                "Base",
                run + 2.0 * b.stretcher_height * b.tangent,
                "leg places, stretcher height × tan(splay)",
            ),
            derived_length(
                f"lap_from_{start}",
                f"Lap from {_words(start)}",
                "Base",
                math.dist(b.tip(start), place),
                "where the stretchers cross, along the top edge from the tip",
            ),
        ]
    u, v = outward(b, DIAGONALS[0][1]), outward(b, DIAGONALS[1][1])
    between = math.degrees(math.acos(min(1.0, abs(u[0] * v[0] + u[1] * v[1]))))
    rows += [
        derived_angle("lap_angle", "Lap angle", "Base", between, "leg places"),
        derived_length(
            "lap_depth", "Lap depth", "Base", b.stretcher_height / 2.0, "half stretcher height"
        ),
    ]
    return tuple(rows)


def has_crossed_base(spec: BenchSpec) -> bool:
    return base_is(CROSSED, spec)


MEMBER = Member(
    "crossed base",
    PARAMETERS,
    CONSTRAINTS,
    _parts,
    _joints,
    derived=_derived,
    present=has_crossed_base,
)
