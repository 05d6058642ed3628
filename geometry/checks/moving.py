"""How far pieces move on each other as the air dries and dampens: shared by checks of movement.

Bench coordinates, mm, % of moisture.  Wood Handbook, FPL-GTR-190, equation 13-2: a size across the
grain changes by itself times the timber's coefficient times the change of moisture.  Taken as flat
sawn, the coefficient is that along the rings, C_T; along the grain nothing moves.  In a direction
that leans from the grain by an angle a the share is sin² a of it, as for any strain of which one
direction is free of it.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import combinations

from geometry.advice.moisture_advice import moisture_range
from geometry.bench.bench import Bench
from geometry.checks.limits_of_timber import DAMPEST, DRIEST
from geometry.design.part import Part
from geometry.primitives.frame import Vec3, dot, subtract
from shared.movement import coefficients
from shared.timber import TIMBERS

_NEAR = 1e-6  # mm: two corners nearer than this are one


@dataclass(frozen=True, slots=True)
class Air:
    """What timber comes to in the driest and the dampest air, in %."""

    driest: float
    dampest: float

    @property
    def change(self) -> float:
        return self.dampest - self.driest

    @property
    def words(self) -> str:
        return f"between {self.driest:.1f} and {self.dampest:.1f} % moisture"


def air_of(bench: Bench) -> Air:
    """From the humidities of the brief, or as the limits say where it has none."""
    between = moisture_range(bench.brief)
    if between is None:
        driest, dampest = DRIEST.of(bench), DAMPEST.of(bench)
        return Air(min(driest, dampest), max(driest, dampest))
    return Air(*between)


def coefficient(part: Part) -> float:
    """The change across the grain for each % of moisture; 0 for sheets and metal."""
    if not part.solid_timber or part.material not in TIMBERS:
        return 0.0
    return coefficients(part.material)[1]


def across(part: Part, air: Air) -> float:
    """How far a piece moves over its width across the grain, driest to dampest."""
    return part.across_grain * coefficient(part) * air.change


@dataclass(frozen=True, slots=True)
class Apart:
    """The two places that move most on each other, how far they lie apart and how much that is."""

    moves: float
    width: float
    place: Vec3


def moved_apart(first: Part, second: Part, held: Sequence[Vec3], air: Air) -> Apart:
    """The most that two pieces move on each other between any two places at which they meet."""
    share_first, share_second = coefficient(first), coefficient(second)
    best = Apart(0.0, 0.0, held[0])
    for near, far in combinations(held, 2):
        run = subtract(far, near)
        long = math.sqrt(dot(run, run))
        if long < _NEAR:
            continue
        strain = share_first * _off_grain(first, run, long) - share_second * _off_grain(
            second, run, long
        )
        moves = abs(strain) * long * air.change
        if moves > best.moves:
            x, y, z = ((a + b) / 2.0 for a, b in zip(near, far, strict=True))
            best = Apart(moves, long, (x, y, z))
    return best


def _off_grain(part: Part, run: Vec3, long: float) -> float:
    """sin² of the angle between a direction and the grain."""
    along = dot(run, part.grain) / long
    return max(0.0, 1.0 - along * along)


def distinct(points: Iterable[Vec3]) -> tuple[Vec3, ...]:
    """Each place once, to a thousandth of a millimetre."""
    found = {tuple(round(c, 3) for c in point): point for point in points}
    return tuple(found.values())
