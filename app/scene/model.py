"""From a spec to all that the screen shows of it and that does not depend on the sheet's scale."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from app.scene.joint_seams import Seams
from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.design.spec import BenchSpec
from geometry.dimensioning.bench_dimensions import dimensions
from geometry.dimensioning.dimension import Dimension
from geometry.dimensioning.handholds import handholds
from geometry.dimensioning.pull import Handhold
from geometry.primitives.frame import Vec2
from geometry.solids.standing import Standing, stand
from geometry.views.bench_views import bench_views
from geometry.views.linework import Linework
from geometry.views.look import look_at_solids


@dataclass(frozen=True, eq=False)
class Model:
    """A bench that can be built, seen from its three sides."""

    bench: Bench
    standing: Standing
    lineworks: tuple[Linework, ...]
    dimensions: tuple[Dimension, ...]

    @property
    def spec(self) -> BenchSpec:
        return self.bench.spec

    @cached_property
    def size(self) -> Vec2:
        """Width and height in mm of the views without anything between them."""
        front, plan, end = (linework.bounds() for linework in self.lineworks)
        wide = max(front[2] - front[0], plan[2] - plan[0]) + end[2] - end[0]
        high = max(front[3] - front[1], end[3] - end[1]) + plan[3] - plan[1]
        return (wide, high)

    @cached_property
    def seams(self) -> Seams:
        return Seams(self.bench.joints, self.bench.parts)

    @cached_property
    def handholds(self) -> tuple[Handhold, ...]:
        return handholds(self.bench)

    @cached_property
    def dimension_named(self) -> dict[str, Dimension]:
        return {dimension.name: dimension for dimension in self.dimensions}


def build_model(spec: BenchSpec, near: Model | None = None) -> Model:
    """Lay out, cut, look and dimension; raises MakerError for numbers that make no bench.

    Under the hand ``near`` is the bench of the step before, whose solids are not cut anew where
    they can follow.
    """
    bench = build(spec)
    standing = stand(bench.parts, near.standing if near else None)
    lineworks = look_at_solids(standing.solids, bench_views(bench))
    return Model(bench, standing, lineworks, dimensions(bench))
