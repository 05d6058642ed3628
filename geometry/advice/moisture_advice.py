"""Advice on moisture: how dry the timber should be when it is cut, and how much the boards move.

Moisture content in %, lengths in mm.  From the driest and the dampest air of the brief (see
``shared.moisture`` and ``shared.movement`` for the formulas and their sources).
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from geometry.advice.advised import Advice
from geometry.advice.taking import for_moisture
from geometry.bench.bench import Bench
from geometry.design.brief import Brief
from geometry.design.spec import BenchSpec
from shared.moisture import equilibrium_moisture
from shared.movement import DAMPEST, DRIEST, FLAT_SAWN, movement
from shared.timber import TIMBERS
from shared.units import length_mark, quantity_mark

SOURCE = "Wood Handbook, FPL-GTR-190, eq. 4-5 and 13-2"

_MOVING = ("top", "seat", "lid", "bottom")  # kinds of parts, those that one sees first


def moisture_range(brief: Brief) -> tuple[float, float] | None:
    """What timber comes to in the driest and the dampest air, in %; None if that is not said."""
    if not brief.humidity_low or not brief.humidity_high:
        return None
    low, high = (
        equilibrium_moisture(humidity, brief.temperature)
        for humidity in (brief.humidity_low, brief.humidity_high)
    )
    return low, high


def moisture_advice(bench: Bench, brief: Brief) -> tuple[Advice, ...]:
    """The timber's moisture, then each broad board's movement; none where the air is not said."""
    between = moisture_range(brief)
    if between is None:
        return ()
    return (_when_cut(bench.spec, brief, *between), *_movements(bench, *between))


def _when_cut(spec: BenchSpec, brief: Brief, low: float, high: float) -> Advice:
    middle = (low + high) / 2.0
    changes, hindrance = for_moisture(spec, math.floor(low), round(middle), math.ceil(high))
    return Advice(
        "moisture",
        "Timber when it is cut",
        "%",
        f"Air from {brief.humidity_low:g} to {brief.humidity_high:g} % humid at "
        f"{quantity_mark(brief.temperature, '°C')} brings timber to {low:.1f} to {high:.1f} %: cut "
        f"it at about {middle:.1f} %, so that it moves as much one way as the other.",
        SOURCE,
        low=low,
        high=high,
        wanted=middle,
        changes=changes,
        hindrance=hindrance,
    )


def _movements(bench: Bench, low: float, high: float) -> Iterator[Advice]:
    """The largest board of each kind that lies across the bench."""
    valid = low >= DRIEST and high <= DAMPEST
    note = "" if valid else ", an estimate, as the rule is good from 6 to 14 % only"
    for kind in _MOVING:
        parts = [part for part in bench.parts if part.kind == kind and part.material in TIMBERS]
        if not parts:
            continue
        part = max(parts, key=lambda one: one.across_grain)
        wide = part.across_grain
        moves = movement(wide, part.material, FLAT_SAWN, low, high)
        yield Advice(
            f"movement_{part.name}",
            f"{part.title}, movement",
            "mm",
            f"{part.material[0].upper()}{part.material[1:]} sawn on the flat moves "
            f"{length_mark(round(moves, 1))} over {length_mark(round(wide, 1))} between those "
            f"two{note}: fix it so that it can.",
            SOURCE,
            now=moves,
        )
