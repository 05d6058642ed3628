"""What the joints of a base bear, as shares of the timber's strength.  N, mm, MPa.

A bridle: the board lies on the leg's top and on the stretcher alike, so half of the force comes
through the tenon (common practice, no source), which it may dent (across the grain) and shear off;
the lean turns the tenon between the two cheeks, where glue holds grain across grain.  An apron's
tenon: the same turning, and under a slab the shear of what the apron carries.

Glued cheeks: the joint opens about a corner of its shoulder, and before it breaks the glue is
strained alike all over: M = 2 s S, with S the sum of the distances of a cheek's area from that
corner.  (Its elastic corner alone would break at half of what such joints are known to stand; both
from memory.)

A round tenon: bent where it enters the board, and pressed against the wall of its bore, whose
pressure runs evenly from one way to the other over the board's thickness, p = 6 M / (d T²).  The
leg's shoulder, pressed against the board by the same force, takes its part first: that force times
a third of the leg's size, as far as its pressure can move aside (a triangle of pressure).
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from geometry.bench.above import above
from geometry.bench.apron_numbers import ENDS, apron_numbers, tenon_at
from geometry.bench.base_numbers import base_numbers
from geometry.bench.bridled_legs import stretcher_words
from geometry.bench.four_leg_numbers import APRONS
from geometry.bench.overall import FOUR_LEGS, base_is
from geometry.design.spec import BenchSpec
from geometry.strength.legs import Leg, moment_at_joint
from geometry.strength.stuff import SHEAR_PEAK, Stuff, stuff_of

DENT, CUT, GLUE, BENT, BORE = (
    "denting the wood under its tenon",
    "shearing its tenon",
    "opening the glued cheeks of its joint",
    "bending its round tenon",
    "denting the wall of its bore",
)
_CHEEKS = 2.0
_THROUGH = 0.5  # of the force on a bridled leg, through the stretcher's tenon


@dataclass(frozen=True, slots=True)
class Held:
    """A joint at the top of a leg: its two parts, the way it fails first, its share in %."""

    parts: tuple[str, str]
    way: str
    share: float


def opened_glue(moment: float, height: float, length: float) -> float:
    """Shear in MPa in a tenon's two glued cheeks, each ``height`` by ``length``, as it breaks.

    >>> round(opened_glue(50_000.0, 60.0, 40.0), 3)
    0.269
    """
    far = math.hypot(height, length)
    distances = (
        2.0 * height * length * far
        + height**3 * math.log((length + far) / height)
        + length**3 * math.log((height + far) / length)
    ) / 6.0
    return moment / distances / _CHEEKS


def round_modulus(diameter: float) -> float:
    """π d³ / 32, mm³."""
    return math.pi * diameter**3 / 32.0


def joints_at(
    spec: BenchSpec, leg: Leg, force: float, grip: float, shears: dict[str, float]
) -> tuple[Held, ...]:
    """The joints at the top of a leg under ``force``; ``shears`` by apron what it carries at its
    end."""
    if not base_is(FOUR_LEGS, spec):
        return (_bridle(spec, leg, force, grip),)
    if spec.value("leg_joint") == APRONS:
        return _aprons(spec, leg, force, grip, shears)
    return (_round(spec, leg, force, grip),)


def _known(stuff: Stuff) -> tuple[float, float, float]:
    """Denting, shear along the grain and rolling shear; a base is timber, whose table has them."""
    assert stuff.denting is not None
    assert stuff.shear is not None
    assert stuff.rolling is not None
    return stuff.denting, stuff.shear, stuff.rolling


def _worst(parts: tuple[str, str], shares: dict[str, float]) -> Held:
    way = max(shares, key=lambda name: shares[name])
    return Held(parts, way, 100.0 * shares[way])


def _bridle(spec: BenchSpec, leg: Leg, force: float, grip: float) -> Held:
    b, stuff = base_numbers(spec), stuff_of(spec.word("timber"))
    denting, shear, rolling = _known(stuff)
    corner = leg.part.removeprefix("leg_")
    stretcher = next(stretcher_words(b, *pair)[0] for pair in b.pairs if corner in pair)
    wide = b.leg_top / b.cosine
    turning, _ = moment_at_joint(leg, force, grip)
    through = _THROUGH * force
    shares = {
        DENT: through / (b.tenon * wide) / denting,
        CUT: SHEAR_PEAK * through / (b.tenon * b.stretcher_height) / shear,
        GLUE: opened_glue(turning, b.stretcher_height, wide) / rolling,
    }
    return _worst((stretcher, leg.part), shares)


def _aprons(
    spec: BenchSpec, leg: Leg, force: float, grip: float, shears: dict[str, float]
) -> tuple[Held, ...]:
    a, stuff = apron_numbers(spec), stuff_of(spec.word("timber"))
    _, shear, rolling = _known(stuff)
    corner = leg.part.removeprefix("leg_")
    moments = moment_at_joint(leg, force, grip)
    found = []
    for side, corners in ENDS.items():
        if corner not in corners:
            continue
        at, part = tenon_at(a, side, corner), f"apron_{side}"
        high = at.y_high - at.y_low
        turning = moments[0] if side in ("front", "back") else moments[1]
        cut = SHEAR_PEAK * shears.get(part, 0.0) / (high * a.tenon)
        shares = {
            CUT: cut / shear,
            GLUE: opened_glue(turning, high, a.tenon_length) / rolling,
        }
        found.append(_worst((part, leg.part), shares))
    return tuple(found)


def _round(spec: BenchSpec, leg: Leg, force: float, grip: float) -> Held:
    stuff, board = stuff_of(spec.word("timber")), above(spec)
    denting, _, _ = _known(stuff)
    diameter = spec.number("leg_tenon")
    shoulder = force * spec.number("leg_size") / 3.0
    first, second = moment_at_joint(leg, force, grip)
    turning = max(0.0, math.hypot(first, second) - shoulder)
    shares = {
        BENT: turning / round_modulus(diameter) / stuff.rupture,
        BORE: 6.0 * turning / (diameter * board.thickness**2) / denting,
    }
    return _worst((leg.part, board.part), shares)
