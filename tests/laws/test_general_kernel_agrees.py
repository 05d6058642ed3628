"""Every part cut a second time by a general B-rep kernel, from the same blanks and wastes.

Judge: build123d on OCC, which shares no code with our kernel and keeps arcs true.  It is an extra
of the benchmarks; without it there is nothing to judge with.
"""

from __future__ import annotations

import math

import pytest

from geometry.bench.bench import Bench
from geometry.cuts.removal import Prism
from geometry.design.part import Part
from geometry.primitives.path import Path, arc_centre
from geometry.solids.cutting import removals_of
from geometry.solids.measure import volume_of
from shared.tolerances import CHORD_ERROR


@pytest.mark.sweep
@pytest.mark.filterwarnings("ignore::DeprecationWarning")
def test_volumes_are_those_of_a_general_kernel(bench: Bench) -> None:
    pytest.importorskip("build123d")
    from tests.benchmarks import general_kernel

    bodies = general_kernel.solids(bench.parts, one_by_one=True)
    for part, body in zip(bench.parts, bodies, strict=True):
        ours, theirs = volume_of(part.shape), float(body.volume)
        assert abs(ours - theirs) <= rounding(part) + 1e-6 * theirs, part.name


def rounding(part: Part) -> float:
    """mm³ that chords may be off: 2/3 of the chord error for each mm of arc, over its depth."""
    total = 0.0
    for removal in removals_of(part.shape):
        if isinstance(removal, Prism):
            high = min(removal.z_high - removal.z_low, part.shape.blank.length)
            total += 2.0 / 3.0 * CHORD_ERROR * arc_length(removal.path) * high
    return total


def arc_length(path: Path) -> float:
    total = 0.0
    count = len(path.vertices)
    for i, (x0, y0, bulge) in enumerate(path.vertices):
        x1, y1, _ = path.vertices[(i + 1) % count]
        if bulge:
            _, radius = arc_centre((x0, y0), (x1, y1), bulge)
            total += radius * 4.0 * abs(math.atan(bulge))
    return total
