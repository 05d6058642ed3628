"""The base: two stretchers crossed from corner to corner, a splayed leg at each end.

Each stretcher runs between two tips: the points, at the height of the case's underside and on the
stretcher's middle plane, where the outer edges of its two legs begin.  Everything about a leg
happens in the vertical plane of its stretcher.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache

from geometry.bench.constraint import Constraint, rule
from geometry.cuts.cut import Blank
from geometry.cuts.saw import SawCut
from geometry.design.joint import Joint
from geometry.design.parameter import Parameter, angle, choice, length
from geometry.design.part import Part, Shape
from geometry.design.spec import BenchSpec
from geometry.joints.angled_lap import LapNumbers, angled_lap
from geometry.joints.bridle import BridleNumbers, bridle
from geometry.primitives.frame import Frame, Vec2, Vec3, add, cross, scale

INSIDE, OUTSIDE = "inside", "outside"
THIRD, OWN = "third", "own"

# Each stretcher by the corners it joins; the first is notched from above.
DIAGONALS = (("back_left", "front_right"), ("front_left", "back_right"))


def _inset(name: str, title: str, default: float, description: str) -> Parameter:
    return length(name, title, "Base", default, -200, 1500, description)


PARAMETERS: tuple[Parameter, ...] = (
    length(
        "base_height",
        "Base height",
        "Base",
        150,
        60,
        700,
        "From the floor to the case's underside.",
    ),
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


@dataclass(frozen=True, slots=True)
class BaseNumbers:
    """All in mm and degrees; ``tips`` in plan (X, Y) by corner."""

    height: float
    splay_deg: float
    tips: tuple[tuple[str, Vec2], ...]
    thickness: float
    stretcher_height: float
    leg_top: float
    leg_foot: float
    tapered_inside: bool
    taper_start: float
    tenon: float
    proud: float
    bridle_fit: float
    lap_fit: float

    def tip(self, corner: str) -> Vec2:
        return dict(self.tips)[corner]

    @property
    def sine(self) -> float:
        return math.sin(math.radians(self.splay_deg))

    @property
    def cosine(self) -> float:
        return math.cos(math.radians(self.splay_deg))

    @property
    def tangent(self) -> float:
        return math.tan(math.radians(self.splay_deg))

    @property
    def leg_edge(self) -> float:
        """Length of the leg's straight edge."""
        return self.height / self.cosine

    @property
    def mortise_wall(self) -> float:
        return (self.thickness - self.tenon - self.bridle_fit) / 2.0

    @property
    def foot_out(self) -> float:
        """How far a leg's outer edge travels outward from the case to the floor."""
        if self.tapered_inside:
            return self.height * self.tangent
        return self.height * self.tangent - (self.leg_top - self.leg_foot) / self.cosine

    @property
    def drop(self) -> float:
        """How far down its straight edge a leg's taper begins, from that edge's top."""
        lean = self.leg_top * self.sine
        return (
            self.stretcher_height + self.taper_start + (-lean if self.tapered_inside else lean)
        ) / self.cosine


@lru_cache(maxsize=512)
def base_numbers(spec: BenchSpec) -> BaseNumbers:
    """Read the base from a spec."""
    n = {name: value for name, value in spec.entries if not isinstance(value, str)}
    x_left, x_right = n["inset_left"], n["length"] - n["inset_right"]
    thickness = n["base_thickness"]
    return BaseNumbers(
        height=n["base_height"],
        splay_deg=n["splay"],
        tips=(
            ("back_left", (x_left, -n["inset_back_left"])),
            ("back_right", (x_right, -n["inset_back_right"])),
            ("front_left", (x_left, -n["depth"] + n["inset_front_left"])),
            ("front_right", (x_right, -n["depth"] + n["inset_front_right"])),
        ),
        thickness=thickness,
        stretcher_height=n["stretcher_height"],
        leg_top=n["leg_top_width"],
        leg_foot=n["leg_foot_width"],
        tapered_inside=spec.word("taper_side") == INSIDE,
        taper_start=n["taper_start"],
        tenon=thickness / 3.0 if spec.word("tenon_rule") == THIRD else n["tenon_thickness"],
        proud=n["proud"],
        bridle_fit=n["bridle_fit"],
        lap_fit=n["lap_fit"],
    )


def outward(b: BaseNumbers, corner: str) -> Vec3:
    """The level unit direction along the stretcher toward a corner."""
    other = _across(corner)
    (x0, y0), (x1, y1) = b.tip(other), b.tip(corner)
    run = math.hypot(x1 - x0, y1 - y0)
    return ((x1 - x0) / run, (y1 - y0) / run, 0.0)


def _across(corner: str) -> str:
    for first, second in DIAGONALS:
        if corner == first:
            return second
        if corner == second:
            return first
    raise AssertionError(corner)


def crossing(b: BaseNumbers) -> Vec2 | None:
    """Where the two stretchers' middle planes cross in plan; None when they do not."""
    (p, q), (r, s) = ((b.tip(a), b.tip(z)) for a, z in DIAGONALS)
    ux, uy = q[0] - p[0], q[1] - p[1]
    vx, vy = s[0] - r[0], s[1] - r[1]
    turn = ux * vy - uy * vx
    if abs(turn) < 1e-9:
        return None
    t = ((r[0] - p[0]) * vy - (r[1] - p[1]) * vx) / turn
    return (p[0] + t * ux, p[1] + t * uy)


def straight_edge(b: BaseNumbers, corner: str) -> tuple[Vec3, Vec3]:
    """The leg's straight edge on its middle plane, from the case to the floor."""
    out = outward(b, corner)
    start = 0.0 if b.tapered_inside else -b.leg_top / b.cosine
    top = add((*b.tip(corner), b.height), scale(out, start))
    return top, add(top, (*scale(out, b.height * b.tangent)[:2], -b.height))


def base_parts(b: BaseNumbers, timber: str) -> tuple[Part, ...]:
    """Two stretchers and four legs, with their own cuts but no joints."""
    stretchers = tuple(_stretcher(b, a, z, timber) for a, z in DIAGONALS)
    legs = tuple(_leg(b, corner, timber) for corner, _ in b.tips)
    return (*stretchers, *legs)


def base_joints(b: BaseNumbers, parts: dict[str, Part]) -> tuple[Joint, ...]:
    """The lap in the middle and a bridle joint at each leg."""
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


_TIPS = (
    "length depth inset_left inset_right inset_back_left inset_back_right inset_front_left "
    "inset_front_right"
)


def _spread(spec: BenchSpec) -> float:
    """Least distance between the tips at one end, or one side, less what legs need."""
    b = base_numbers(spec)
    (bl, br, fl, fr) = (b.tip(k) for k in ("back_left", "back_right", "front_left", "front_right"))
    least = b.thickness * 1.5 + 10.0
    return min(bl[1] - fl[1], br[1] - fr[1], br[0] - bl[0], fr[0] - fl[0]) - least


def _lap_room(spec: BenchSpec) -> float:
    """What is left of the stretcher between the lap and the nearest shoulder."""
    b = base_numbers(spec)
    place = crossing(b)
    if place is None or _spread(spec) < 0.0:
        return -1.0
    u, v = outward(b, DIAGONALS[0][1]), outward(b, DIAGONALS[1][1])
    sine = abs(u[0] * v[1] - u[1] * v[0])
    cosine = abs(u[0] * v[0] + u[1] * v[1])
    half = (b.thickness + b.lap_fit) / 2.0 / sine + b.thickness / 2.0 * cosine / sine
    nearest = min(math.dist(place, b.tip(corner)) for pair in DIAGONALS for corner in pair)
    return nearest - half - b.leg_top / b.cosine - 15.0


def _crossing_angle(spec: BenchSpec) -> float:
    b = base_numbers(spec)
    u, v = outward(b, DIAGONALS[0][1]), outward(b, DIAGONALS[1][1])
    return math.degrees(math.asin(min(1.0, abs(u[0] * v[1] - u[1] * v[0])))) - 5.0


_TAPER = "base_height splay stretcher_height taper_start leg_top_width leg_foot_width taper_side"

CONSTRAINTS: tuple[Constraint, ...] = (
    rule("spread", f"{_TIPS} base_thickness", _spread, "the legs would run into each other"),
    rule(
        "lap_room",
        f"{_TIPS} base_thickness lap_fit leg_top_width splay",
        _lap_room,
        "the lap would come within {15 mm} of a leg",
    ),
    rule(
        "lap_angle",
        _TIPS,
        _crossing_angle,
        "the stretchers would cross at less than {5 deg}",
    ),
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
    b = base_numbers(spec)
    slope = -b.tangent if b.tapered_inside else b.tangent
    return b.leg_edge + slope * b.leg_foot - b.drop
