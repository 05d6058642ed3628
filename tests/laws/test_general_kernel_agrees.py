"""Every part cut a second time by a general B-rep kernel, from the same blanks and wastes.

Judge: build123d on OCC, which shares no code with our kernel and keeps arcs true.  It is an extra
of the benchmarks; without it there is nothing to judge with.  Moulded edges, fixings and feet are
left out: at their rounds the judge now and then cuts nothing, or all.  Their volumes are held
against closed forms elsewhere.
"""

from __future__ import annotations

import contextlib
import math

import pytest

from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.limits import set_values
from geometry.cuts.removal import Prism
from geometry.design.part import Part
from geometry.design.spec import BenchSpec
from geometry.primitives.path import Path, arc_centre
from geometry.solids.cutting import removals_of
from geometry.solids.measure import volume_of
from shared.errors import MakerError
from shared.tolerances import CHORD_ERROR
from tests.reference.benches import BARE


@pytest.mark.sweep
@pytest.mark.filterwarnings("ignore::DeprecationWarning")
def test_volumes_are_those_of_a_general_kernel(bench: Bench) -> None:
    pytest.importorskip("build123d")
    from tests.benchmarks import general_kernel

    parts = build(bare(bench.spec)).parts
    bodies = general_kernel.solids(parts, one_by_one=True)
    for part, body in zip(parts, bodies, strict=True):
        ours, theirs = volume_of(part.shape), float(body.volume)
        assert abs(ours - theirs) <= rounding(part) + 1e-6 * theirs, part.name


def bare(spec: BenchSpec) -> BenchSpec:
    """The bench without what the judge cannot cut, as far as it can be built so."""
    for name, value in BARE.items():
        with contextlib.suppress(MakerError):
            spec = set_values(spec, {name: value})
    return spec


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
