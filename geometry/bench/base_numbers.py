"""The numbers of bridled legs, read once from a spec, and the places that follow from them.

Each stretcher runs between two tips: the points, at the height of the case's underside and on the
stretcher's middle plane, where the outer edges of its two legs begin.  Everything about a leg
happens in the vertical plane of its stretcher.  Crossed stretchers run from corner to corner,
those of trestles straight across the depth.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache

from geometry.bench.feet_numbers import ground
from geometry.bench.overall import CROSSED
from geometry.design.spec import BenchSpec
from geometry.primitives.frame import Vec2, Vec3, add, scale

INSIDE, OUTSIDE = "inside", "outside"
THIRD, OWN = "third", "own"

Pairs = tuple[tuple[str, str], tuple[str, str]]

# Each stretcher by the corners it joins; of crossed ones the first is notched from above, those of
# trestles run so that their face sides are the outsides.
DIAGONALS: Pairs = (("back_left", "front_right"), ("front_left", "back_right"))
ACROSS: Pairs = (("back_left", "front_left"), ("front_right", "back_right"))


@dataclass(frozen=True, slots=True)
class BaseNumbers:
    """All in mm and degrees; ``tips`` in plan (X, Y) by corner, ``pairs`` those joined.

    The legs end at the height ``ground``, on the floor or on feet."""

    crossed: bool
    height: float
    ground: float
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

    @property
    def pairs(self) -> Pairs:
        return DIAGONALS if self.crossed else ACROSS

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
    def rise(self) -> float:
        """From the legs' ends to the underside of what the base carries."""
        return self.height - self.ground

    @property
    def leg_edge(self) -> float:
        """Length of the leg's straight edge."""
        return self.rise / self.cosine

    @property
    def mortise_wall(self) -> float:
        return (self.thickness - self.tenon - self.bridle_fit) / 2.0

    @property
    def foot_out(self) -> float:
        """How far a leg's outer edge travels outward from the case to its lower end."""
        if self.tapered_inside:
            return self.rise * self.tangent
        return self.rise * self.tangent - (self.leg_top - self.leg_foot) / self.cosine

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
    n = spec.number
    thickness = n("base_thickness")
    crossed = spec.value("base") == CROSSED
    # A trestle's inset is to its outside, half its thickness from its middle plane.
    middle = 0.0 if crossed else thickness / 2.0
    x_left, x_right = n("inset_left") + middle, n("length") - n("inset_right") - middle
    return BaseNumbers(
        crossed=crossed,
        height=n("base_height"),
        ground=ground(spec),
        splay_deg=n("splay"),
        tips=(
            ("back_left", (x_left, -n("inset_back_left"))),
            ("back_right", (x_right, -n("inset_back_right"))),
            ("front_left", (x_left, -n("depth") + n("inset_front_left"))),
            ("front_right", (x_right, -n("depth") + n("inset_front_right"))),
        ),
        thickness=thickness,
        stretcher_height=n("stretcher_height"),
        leg_top=n("leg_top_width"),
        leg_foot=n("leg_foot_width"),
        tapered_inside=spec.word("taper_side") == INSIDE,
        taper_start=n("taper_start"),
        tenon=thickness / 3.0 if spec.word("tenon_rule") == THIRD else n("tenon_thickness"),
        proud=n("proud"),
        bridle_fit=n("bridle_fit"),
        lap_fit=n("lap_fit"),
    )


def outward(b: BaseNumbers, corner: str) -> Vec3:
    """The level unit direction along the stretcher toward a corner."""
    other = _across(b, corner)
    (x0, y0), (x1, y1) = b.tip(other), b.tip(corner)
    run = math.hypot(x1 - x0, y1 - y0)
    return ((x1 - x0) / run, (y1 - y0) / run, 0.0)


def _across(b: BaseNumbers, corner: str) -> str:
    for first, second in b.pairs:
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
    """The leg's straight edge on its middle plane, from the case to its lower end."""
    out = outward(b, corner)
    start = 0.0 if b.tapered_inside else -b.leg_top / b.cosine
    top = add((*b.tip(corner), b.height), scale(out, start))
    return top, add(top, (*scale(out, b.rise * b.tangent)[:2], -b.rise))
