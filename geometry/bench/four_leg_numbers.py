"""The numbers of four raking and splaying legs, and how each stands.

Splay is the lean seen from the front, rake the lean seen from the side; each leg leans outward by
both.  A leg square to the length keeps its front (or back) face parallel to the bench's length; a
leg turned on its sightline has two faces parallel to the upright plane in which it leans.

A leg's own frame has x down along the grain.  Held by aprons, y = z = 0 is its outer arris, which
stays straight: only the two inside faces are tapered.  With round tenons y = z = half its size is
its axis, and all four faces are tapered alike.  Bench coordinates, mm.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache

from geometry.bench.feet_numbers import ground
from geometry.design.spec import BenchSpec
from geometry.primitives.frame import Frame, Vec2, Vec3, add, cross, scale, unit

APRONS, ROUND = "aprons", "round tenons"
SQUARE, TURNED = "square to the length", "on the sightline"

CORNERS = ("back_left", "back_right", "front_left", "front_right")


@dataclass(frozen=True, slots=True)
class FourLegs:
    """mm and degrees.  ``left`` to ``front`` are X and Y of the outer arrises (of the axes with
    round tenons) at the height of the underside; ``joint_depth`` is how far below it the leg must
    keep its full size on its outer arris."""

    height: float
    ground: float
    rake_deg: float
    splay_deg: float
    left: float
    right: float
    back: float
    front: float
    size: float
    foot: float
    round: bool
    turned: bool
    taper_start: float
    joint_depth: float

    @property
    def rise(self) -> float:
        """From the legs' ends to the underside of what the base carries."""
        return self.height - self.ground

    @property
    def tangents(self) -> Vec2:
        """How far a leg leans outward for each mm of height: along the length, across it."""
        return math.tan(math.radians(self.splay_deg)), math.tan(math.radians(self.rake_deg))

    def place(self, corner: str) -> Vec2:
        """X and Y of a leg's outer arris, or of its axis, at the height of the underside."""
        fore, side = corner.split("_")
        return (
            self.left if side == "left" else self.right,
            self.back if fore == "back" else self.front,
        )


def outward_signs(corner: str) -> Vec2:
    """Which way X and Y a corner faces."""
    fore, side = corner.split("_")
    return (-1.0 if side == "left" else 1.0, 1.0 if fore == "back" else -1.0)


@dataclass(frozen=True, slots=True)
class Stand:
    """How a leg stands.

    ``down`` is its grain; ``beside`` square to it in the front (back) face, inward along the
    length; ``behind`` square to both, inward across the depth.  Of a turned leg ``beside`` lies in
    the plane of the lean, inward, and ``behind`` is level.  ``origin`` is where the own frame's
    y = z = 0 line starts, a point that the frame of the piece only moves along ``down``.
    """

    corner: str
    origin: Vec3
    down: Vec3
    beside: Vec3
    behind: Vec3

    @property
    def swapped(self) -> bool:
        """Whether y runs along ``behind``: it keeps both outer faces as references."""
        turn = cross(self.down, self.beside)
        return turn[0] * self.behind[0] + turn[1] * self.behind[1] + turn[2] * self.behind[2] < 0.0

    @property
    def across(self) -> tuple[Vec3, Vec3]:
        """The y and z directions of the leg's own frame."""
        return (self.behind, self.beside) if self.swapped else (self.beside, self.behind)

    def station(self, y: float, z: float, height: float) -> float:
        """How far down the grain from ``origin`` the line at (y, z) is at a height."""
        first, second = self.across
        level = self.origin[2] + y * first[2] + z * second[2]
        return (level - height) / -self.down[2]

    def frame(self, start: float) -> Frame:
        """The frame of a blank that starts at a station."""
        first, second = self.across
        return Frame(add(self.origin, scale(self.down, start)), self.down, first, second)


@lru_cache(maxsize=512)
def four_legs(spec: BenchSpec) -> FourLegs:
    """Read the legs from a spec."""
    round_ = spec.value("leg_joint") == ROUND
    return FourLegs(
        height=spec.number("base_height"),
        ground=ground(spec),
        rake_deg=spec.number("rake"),
        splay_deg=spec.number("splay"),
        left=spec.number("inset_left"),
        right=spec.number("length") - spec.number("inset_right"),
        back=-spec.number("inset_back"),
        front=spec.number("inset_front") - spec.number("depth"),
        size=spec.number("leg_size"),
        foot=spec.number("leg_foot"),
        round=round_,
        turned=round_ and spec.value("leg_turn") == TURNED,
        taper_start=spec.number("leg_taper_start"),
        joint_depth=0.0 if round_ else spec.number("apron_height"),
    )


@lru_cache(maxsize=2048)
def stand(n: FourLegs, corner: str) -> Stand:
    """How the leg at a corner stands."""
    sx, sy = outward_signs(corner)
    lean_x, lean_y = n.tangents
    down = unit((sx * lean_x, sy * lean_y, -1.0))
    lean = math.hypot(lean_x, lean_y)
    if n.turned and lean > 0.0:
        level = (sx * lean_x / lean, sy * lean_y / lean, 0.0)
        cosine, sine = -down[2], lean * -down[2]
        beside = add(scale(level, -cosine), (0.0, 0.0, -sine))
        behind = cross(down, beside)
    else:
        behind = unit((0.0, -sy, -lean_y))
        along = (-sx, 0.0, 0.0)
        beside = unit(add(along, scale(down, lean_x * -down[2])))
    x, y = n.place(corner)
    origin: Vec3 = (x, y, n.height)
    if n.round:
        origin = add(origin, scale(add(beside, behind), -n.size / 2.0))
    return Stand(corner, origin, down, beside, behind)


def taper_stations(n: FourLegs, at: Stand) -> tuple[float, float]:
    """Where down the grain the taper starts, and where the foot's size is measured."""
    if n.round:
        half = n.size / 2.0
        tops = [at.station(y, z, n.height) for y in (0.0, n.size) for z in (0.0, n.size)]
        return max(tops) + n.taper_start, at.station(half, half, n.ground)
    start = at.station(0.0, 0.0, n.height - n.joint_depth - n.taper_start)
    return start, at.station(0.0, 0.0, n.ground)


def foot_low(n: FourLegs) -> float:
    """The low side of the foot's section in y and z, where its size is measured."""
    return (n.size - n.foot) / 2.0 if n.round else 0.0


def foot_stations(n: FourLegs, at: Stand) -> tuple[float, ...]:
    """How far down the grain each of the four arrises ends, on the floor or on a foot."""
    start, end = taper_stations(n, at)
    low = foot_low(n)
    first, second = at.across
    found = []
    for y in (0.0, 1.0):
        for z in (0.0, 1.0):
            wide = (y * n.size, z * n.size)
            narrow = (low + y * n.foot, low + z * n.foot)
            # Height falls in a straight line along the arris from the taper's start to its end.
            rise = [
                at.origin[2] + x * at.down[2] + v * first[2] + w * second[2] - n.ground
                for x, (v, w) in ((start, wide), (end, narrow))
            ]
            share = rise[0] / (rise[0] - rise[1])
            found.append(start + share * (end - start))
    return tuple(found)
