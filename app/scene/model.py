"""From a spec to all that the screen shows of it and that does not depend on the sheet's scale."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.design.spec import BenchSpec
from geometry.dimensioning.bench_dimensions import dimensions
from geometry.dimensioning.dimension import Dimension
from geometry.dimensioning.grips import grips
from geometry.dimensioning.pull import Grip
from geometry.views.bench_views import bench_views
from geometry.views.linework import Linework
from geometry.views.look import look_all



@dataclass(frozen=True, eq=False)
class Model:
    """A bench that can be built, seen from its three sides."""

    bench: Bench
    lineworks: tuple[Linework, ...]
    dimensions: tuple[Dimension, ...]

    @property
    def spec(self) -> BenchSpec:
        return self.bench.spec

    @cached_property
    def grips(self) -> tuple[Grip, ...]:
        return grips(self.bench)

    @cached_property
    def dimension_named(self) -> dict[str, Dimension]:
        return {dimension.name: dimension for dimension in self.dimensions}


def build_model(spec: BenchSpec) -> Model:
    """Lay out, cut, look and dimension; raises MakerError for numbers that make no bench."""
    bench = build(spec)
    return Model(bench, look_all(bench.parts, bench_views(bench)), dimensions(bench))
