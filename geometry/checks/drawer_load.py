"""What a full drawer weighs against what its runners carry: an estimate.

kg, mm.  The room inside a box, above its bottom, is taken as filled to the brim with things of the
density that the limits give; the box and its front weigh what their solids do.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from geometry.bench.bench import Bench
from geometry.bench.drawer_numbers import BoxNumbers, Drawer, drawers
from geometry.bench.runner_numbers import runner_of
from geometry.checks.check import Check
from geometry.checks.drawer_motion import pieces_of
from geometry.checks.limits_of_drawers import DRAWER_FILL, MOST_OF_RUNNER
from geometry.design.finding import Finding, Level, Mend
from geometry.solids.measure import volume_of
from shared.materials import weight_of
from shared.units import quantity_mark

_STEP = 5.0  # kg: runners are sold by such loads; common practice, no source


@dataclass(frozen=True, slots=True)
class Weights:
    """kg of the drawer itself, and of what is in it when it is full."""

    own: float
    inside: float


def room_inside(box: BoxNumbers) -> float:
    """mm³ between the sides, above the bottom, up to the upper edges.

    A box 354.6 x 117 x 300 with sides 12, ends 14 and the bottom's upper side 19.1 up holds
    330.6 x 272 x 97.9 mm, 8.8 litres.
    """
    m = box.making
    return (box.width - 2.0 * m.side) * (box.length - 2.0 * m.end) * (box.height - m.up - m.bottom)


def weights(bench: Bench, drawer: Drawer) -> Weights:
    """What a drawer weighs empty, and what it holds."""
    own = sum(weight_of(volume_of(part.shape), part.material) for part in pieces_of(bench, drawer))
    return Weights(own, room_inside(drawer.box) * 1e-9 * DRAWER_FILL.of(bench))


def _overloaded(bench: Bench) -> Iterator[Finding]:
    carries = runner_of(bench.spec).load
    limit = carries * MOST_OF_RUNNER.of(bench) / 100.0
    found = [(one, weights(bench, one)) for one in drawers(bench.spec)]
    heaviest = max((w.own + w.inside for _, w in found), default=0.0)
    for drawer, weight in found:
        whole = weight.own + weight.inside
        if whole <= limit + 1e-9:
            continue
        stronger = math.ceil(heaviest / (MOST_OF_RUNNER.of(bench) / 100.0) / _STEP) * _STEP
        yield Finding(
            check="runner_overloaded",
            level=Level.THINK_AGAIN,
            message=(
                f"{drawer.title} weighs about {quantity_mark(whole, 'kg')} when it is full, "
                f"{quantity_mark(weight.own, 'kg', 1)} of it its own; its runners carry "
                f"{quantity_mark(carries, 'kg')}. An estimate."
            ),
            parts=tuple(f"{drawer.name}_{piece}" for piece in ("side_left", "side_right")),
            place=(drawer.x_low, -drawer.face, drawer.z_low),
            amount=whole,
            limit=limit,
            unit="kg",
            mend=Mend(
                f"Take runners that carry {quantity_mark(stronger, 'kg')}.",
                (("runner_load", stronger),),
            ),
            estimate=True,
        )


CHECKS: tuple[Check, ...] = (
    Check(
        "runner_overloaded",
        "Drawer too heavy for its runners",
        "Weighs each drawer by its timbers' densities, and with the room inside filled to the brim "
        "with papers, tools or linen: an estimate, by a density that the maker may change. "
        "Overloaded runners sag, run hard and wear out. The limit is what the runner's row says a "
        "pair carries: check your runner's sheet.",
        _overloaded,
        ("drawers",),
        limits=(DRAWER_FILL, MOST_OF_RUNNER),
    ),
)
