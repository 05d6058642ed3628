"""The numbers of aprons between four legs, and the places that follow from them."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache

from geometry.bench.four_leg_numbers import FourLegs, four_legs, stand
from geometry.design.spec import BenchSpec
from geometry.joints.leaning_tenon import LeaningTenon
from geometry.primitives.frame import Frame, Vec3, add, dot, scale

# Each apron with the corners at the start and the end of its grain.
ENDS = {
    "front": ("front_left", "front_right"),
    "back": ("back_right", "back_left"),
    "left": ("back_left", "front_left"),
    "right": ("front_right", "back_right"),
}


@dataclass(frozen=True, slots=True)
class ApronNumbers:
    """mm, in the apron's own frame but for the height."""

    legs: FourLegs
    height: float
    thickness: float
    reveal: float
    tenon: float
    tenon_length: float
    shoulder: float
    fit: float

    def lean_deg(self, side: str) -> float:
        """How far an apron leans from the vertical."""
        return self.legs.rake_deg if side in ("front", "back") else self.legs.splay_deg

    def top(self, side: str) -> float:
        """y of the outer upper arris: the bevel's share of the blank's width."""
        return self.thickness * math.tan(math.radians(self.lean_deg(side)))

    def width(self, side: str) -> float:
        """Of the blank."""
        return self.top(side) + self.height / math.cos(math.radians(self.lean_deg(side)))

    @property
    def cheeks(self) -> tuple[float, float]:
        """z of the tenon's two cheeks, in the middle of the thickness."""
        low = (self.thickness - self.tenon) / 2.0
        return low, low + self.tenon


@lru_cache(maxsize=512)
def apron_numbers(spec: BenchSpec) -> ApronNumbers:
    """Read the aprons from a spec."""
    return ApronNumbers(
        legs=four_legs(spec),
        height=spec.number("apron_height"),
        thickness=spec.number("apron_thickness"),
        reveal=spec.number("apron_reveal"),
        tenon=spec.number("apron_tenon"),
        tenon_length=spec.number("apron_tenon_length"),
        shoulder=spec.number("apron_shoulder"),
        fit=spec.number("apron_fit"),
    )


@lru_cache(maxsize=2048)
def apron_frame(a: ApronNumbers, side: str) -> Frame:
    """Face side out, y down from the upper edge, x from its first leg toward its second."""
    n = a.legs
    lean = math.radians(a.lean_deg(side))
    cosine, sine = math.cos(lean), math.sin(lean)
    out: Vec3 = {
        "front": (0.0, -1.0, 0.0),
        "back": (0.0, 1.0, 0.0),
        "left": (-1.0, 0.0, 0.0),
        "right": (1.0, 0.0, 0.0),
    }[side]
    down = add(scale(out, sine), (0.0, 0.0, -cosine))
    along: Vec3 = (-out[1], out[0], 0.0)
    # The outer upper arris lies level, the reveal behind the legs' own.
    x, y = n.place(ENDS[side][0])
    arris = add((x, y, n.height), scale(out, -a.reveal / cosine))
    return Frame.of(add(arris, scale(down, -a.top(side))), along, down)


@lru_cache(maxsize=4096)
def tenon_at(a: ApronNumbers, side: str, corner: str) -> LeaningTenon:
    """An apron's tenon in the leg at one of its ends."""
    n = a.legs
    at, frame = stand(n, corner), apron_frame(a, side)
    inward = at.beside if side in ("front", "back") else at.behind
    into = frame.turn_to_local(scale(inward, -1.0))
    on_face = frame.to_local(add(at.origin, scale(inward, n.size)))
    low, high = a.cheeks
    top = a.top(side)
    return LeaningTenon(
        frame=frame,
        into=into,
        face=dot(on_face, into) / into[0],
        length=a.tenon_length,
        y_low=top + a.shoulder,
        y_high=a.width(side) - a.shoulder,
        z_low=low,
        z_high=high,
        top=top,
        fit=a.fit,
    )


def section(a: ApronNumbers, side: str) -> tuple[tuple[float, float], ...]:
    """The corners (y, z) of an apron's section, its upper edge bevelled."""
    t, w = a.thickness, a.width(side)
    return ((a.top(side), 0.0), (w, 0.0), (w, t), (0.0, t))


def reach(a: ApronNumbers, side: str, corner: str) -> tuple[float, float]:
    """Least and greatest x of an apron's end in one leg: shoulder and tenon."""
    at = tenon_at(a, side, corner)
    points = [at.point(y, z, 0.0) for y, z in section(a, side)]
    points += [
        at.point(y, z, at.length) for y in (at.y_low, at.y_high) for z in (at.z_low, at.z_high)
    ]
    xs = [x for x, _, _ in points]
    return min(xs), max(xs)
