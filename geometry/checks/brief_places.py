"""What checks by the brief share: sentences, sizes and places of the whole bench."""

from __future__ import annotations

from collections.abc import Callable, Iterable

import numpy as np

from geometry.advice.standing import ON_FLOOR
from geometry.advice.taking import for_value
from geometry.bench.bench import Bench
from geometry.bench.overall import seat_height
from geometry.design.brief import Brief
from geometry.design.finding import Finding, Mend
from geometry.primitives.frame import Vec3
from geometry.solids.cutting import placed
from geometry.solids.solid import Floats
from shared.units import length_mark

Run = Callable[[Bench, Brief], Iterable[Finding]]


def said(value: float) -> str:
    """A computed length in a sentence, to the tenth that anybody can measure."""
    return length_mark(round(value, 1))


def points_of(bench: Bench, *, seat_only: bool = False) -> Floats:
    """Every corner of the bench, or of what stands above its base."""
    solids = [placed(part) for part in bench.parts]
    if seat_only:
        floor = bench.spec.number("base_height")
        solids = [solid for solid in solids if float(solid.low[2]) >= floor - 0.5] or solids
    return np.vstack([solid.vertices for solid in solids])


def size_of(points: Floats) -> tuple[float, float, float]:
    x, y, z = (float(size) for size in points.max(axis=0) - points.min(axis=0))
    return x, y, z


def seat_parts(bench: Bench) -> tuple[str, ...]:
    """The names of what is sat on."""
    level = seat_height(bench.spec)
    return tuple(
        part.name for part in bench.parts if abs(float(placed(part).high[2]) - level) < ON_FLOOR
    )


def front_of_seat(bench: Bench) -> Vec3:
    spec = bench.spec
    return (spec.number("length") / 2.0, -spec.number("depth"), seat_height(spec))


def by_brief(run: Run) -> Callable[[Bench], Iterable[Finding]]:
    """A check that finds nothing while the brief is blank."""
    return lambda bench: () if bench.brief.blank else run(bench, bench.brief)


def lessened(bench: Bench, name: str, wanted: float) -> Mend | None:
    changes, _ = for_value(bench.spec, name, wanted)
    words = {"length": "Length", "depth": "Depth", "base_height": "Base height"}
    return Mend(f"{words[name]} {said(wanted)}.", changes) if changes else None
