"""Checks of the fronts of drawers in their openings: the gap asked for, and as they are cut.

Frame and units: bench frame, mm; a drawer opens toward the maker, along -Y.

Method: beside, above and below each front, as far as the least gap goes, over its whole height or
width and all the way that it comes out, whatever else of the bench lies there is cut out of its
solid; how near that comes is the gap at the tightest place.  Boxes round the solids tell first
whether there is anything: on a sound bench there is nothing.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from geometry.bench.bench import Bench
from geometry.bench.drawer_numbers import Drawer, drawers, fronts_of
from geometry.checks.check import Check
from geometry.checks.drawer_motion import boxes_of, opens_by
from geometry.checks.limits_of_drawers import LEAST_GAP
from geometry.design.finding import Finding, Level, Mend
from geometry.design.part import Part
from geometry.primitives.frame import Vec3
from geometry.solids.cutting import body_of, placed
from geometry.solids.kernel.between import box_within
from geometry.solids.sweeping import SLIDING
from shared.units import length_mark

_NEAR = 1e-6  # mm

_SIDES = (
    ("at its left", 0, -1.0),
    ("at its right", 0, 1.0),
    ("below it", 2, -1.0),
    ("above it", 2, 1.0),
)


@dataclass(frozen=True, slots=True)
class _Gap:
    """The room beside a front at its tightest place: at which side, how much, where, to what."""

    side: str
    room: float
    place: Vec3
    part: Part


def _front_binds(bench: Bench) -> Iterator[Finding]:
    gap, least = fronts_of(bench.spec).gap, LEAST_GAP.of(bench)
    if gap >= least - _NEAR:
        return
    first = drawers(bench.spec)[0]
    yield Finding(
        check="front_binds",
        level=Level.THINK_AGAIN,
        message=(
            f"Gaps of {length_mark(gap)} round the fronts close when the timber swells, and the "
            "drawers cannot be opened."
        ),
        parts=tuple(f"{drawer.name}_front" for drawer in drawers(bench.spec)),
        place=(first.x_low, -first.face, first.z_low),
        amount=gap,
        limit=least,
        mend=Mend(f"Leave {length_mark(least)}.", (("drawer_gap", least),)),
    )


def _front_tight(bench: Bench) -> Iterator[Finding]:
    """Fronts whose gap is less somewhere than was asked for all of them: each at its worst."""
    gap, least = fronts_of(bench.spec).gap, LEAST_GAP.of(bench)
    if gap < least - _NEAR:
        return
    for drawer in drawers(bench.spec):
        found = list(_gaps(bench, drawer, least))
        if not found:
            continue
        worst = min(found, key=lambda one: one.room)
        yield Finding(
            check="front_tight",
            level=Level.THINK_AGAIN,
            message=(
                f"The front of {drawer.title[0].lower()}{drawer.title[1:]} has only "
                f"{length_mark(round(worst.room, 2))} {worst.side} at the tightest place, to "
                f"“{worst.part.title}”, and not the {length_mark(gap)} that was asked for: it "
                "binds there."
            ),
            parts=(f"{drawer.name}_front", worst.part.name),
            place=worst.place,
            amount=worst.room,
            limit=least,
        )


def _gaps(bench: Bench, drawer: Drawer, least: float) -> Iterator[_Gap]:
    """What comes nearer to a front than ``least``, on its way out too."""
    front = placed(bench.part(f"{drawer.name}_front"))
    names, lows, highs = boxes_of(bench.parts)
    others = np.array([not name.startswith(f"{drawer.name}_") for name in names])
    for side, axis, sign in _SIDES:
        low, high = front.low + SLIDING, front.high - SLIDING
        low[1] = front.low[1] - opens_by(bench, drawer)
        face = float(front.high[axis] if sign > 0.0 else front.low[axis])
        low[axis], high[axis] = sorted((face, face + sign * (least - _NEAR)))
        near = (lows < high).all(axis=1) & (highs > low).all(axis=1) & others
        for k in np.flatnonzero(near):
            part = bench.parts[k]
            met = box_within(body_of(part.shape), part.frame, _point(low), _point(high))
            if met is None:
                continue
            nearest = met[0][axis] if sign > 0.0 else met[1][axis]
            x, y, z = ((a + b) / 2.0 for a, b in zip(*met, strict=True))
            place = (nearest, y, z) if axis == 0 else (x, y, nearest)
            yield _Gap(side, sign * (nearest - face), place, part)


def _point(corner: np.ndarray) -> Vec3:
    x, y, z = corner.tolist()
    return x, y, z


CHECKS: tuple[Check, ...] = (
    Check(
        "front_binds",
        "Fronts with hardly a gap",
        "Timber swells across its grain in a damp season, and a front with no room round it then "
        "binds. The limit of {1 mm} is common practice for small fronts, no source; a tall solid "
        "front may want more.",
        _front_binds,
        ("drawers",),
        limits=(LEAST_GAP,),
    ),
    Check(
        "front_tight",
        "Front that is tight in its opening",
        "Measures each front as it is cut against whatever stands beside, above and below it, at "
        "the tightest place and all its way out: an upright that leans, a leg, another front. "
        "Where the gaps that were asked for are large enough, one that is not shows a part that "
        "stands or is cut otherwise. The limit is that of the gaps: {1 mm}, common practice for "
        "small fronts, no source.",
        _front_tight,
        ("drawers",),
        limits=(LEAST_GAP,),
        quick=False,
    ),
)
