"""The last check of all: no two parts in the same place, tried on the solids themselves."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from geometry.bench.bench import Bench
from geometry.checks.check import Check
from geometry.design.finding import Finding, Level
from geometry.design.part import Part
from geometry.solids.cutting import placed
from geometry.solids.measure import bounding_box, shared_volume
from shared.tolerances import COPLANAR, SHARED_VOLUME
from shared.units import amount_mark


def _collisions(bench: Bench) -> Iterator[Finding]:
    for first, second in _meeting(bench):
        volume = shared_volume(first, second)
        if volume <= SHARED_VOLUME:
            continue
        (low_a, high_a), (low_b, high_b) = bounding_box(first), bounding_box(second)
        x, y, z = (
            (max(a, b) + min(c, d)) / 2.0
            for a, b, c, d in zip(low_a, low_b, high_a, high_b, strict=True)
        )
        yield Finding(
            check="collision",
            level=Level.DO_NOT_CUT,
            message=(
                f"{first.title} and {second.title} run into each other: they share "
                f"{amount_mark(volume, 'mm³')}."
            ),
            parts=(first.name, second.name),
            place=(x, y, z),
            amount=volume,
            limit=0.0,
            unit="mm³",
        )


def _meeting(bench: Bench) -> Iterator[tuple[Part, Part]]:
    """The pairs whose boxes share room; the others need no look at the solids."""
    low = np.array([placed(part).low for part in bench.parts])
    high = np.array([placed(part).high for part in bench.parts])
    below = (low[:, None] < high[None] - COPLANAR).all(axis=2)
    for i, j in np.argwhere(np.triu(below & below.T, 1)).tolist():
        yield bench.parts[i], bench.parts[j]


CHECKS: tuple[Check, ...] = (
    Check(
        "collision",
        "Parts running into each other",
        "Tries every pair of finished parts for wood that both would fill. Nothing that fits "
        "together shares any; the limit is what rounding in the computation may leave.",
        _collisions,
        quick=False,
    ),
)
