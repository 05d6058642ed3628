"""The sample projects, sound as they are, and what checks find on one once it is spoiled."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from functools import lru_cache
from pathlib import Path

import numpy as np

from exporters.project_file import load
from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.limits import set_values
from geometry.checks.all_checks import findings
from geometry.checks.offers import bench_with
from geometry.design.brief import Brief
from geometry.design.finding import Finding
from geometry.design.parameter import Value
from geometry.design.project import Project
from geometry.solids.measure import bounding_box

NEAR = 600.0  # mm
FOLDER = Path(__file__).parents[1] / "sample_projects"
NAMES = tuple(path.stem for path in sorted(FOLDER.glob("*.settle")))


@lru_cache(maxsize=32)
def sample(name: str) -> Project:
    """``bakehouse`` for the project in bakehouse_bench.settle."""
    return load(FOLDER / f"{name.removesuffix('_bench')}_bench.settle")


def spoiled(
    name: str,
    changes: Mapping[str, Value],
    *,
    brief: Brief | None = None,
    limits: tuple[tuple[str, float], ...] = (),
) -> Bench:
    """A sample with these values changed, in another brief, judged by other limits."""
    project = sample(name)
    return replace(
        build(set_values(project.spec, changes)),
        brief=project.brief if brief is None else brief,
        judged_by=limits,
    )


def plain(name: str, *steps: Mapping[str, Value]) -> Bench:
    """A sample without its brief, with values changed one step after another."""
    spec = sample(name).spec
    for step in steps:
        spec = set_values(spec, step)
    return build(spec)


def of_check(bench: Bench, check: str) -> list[Finding]:
    """The findings of this name, of all that is found."""
    return [one for one in findings(bench) if one.check == check]


def assert_cured(bench: Bench, finding: Finding) -> None:
    """The mend can be built, and nothing of the finding's name is left."""
    assert finding.mend is not None
    better = bench_with(bench, finding.mend)
    assert better is not None
    assert not of_check(better, finding.check)


def found(bench: Bench, check: str) -> tuple[Finding, ...]:
    """What the check of this name finds; each says which pieces of the bench, and where."""
    told = tuple(one for one in findings(bench) if one.check == check)
    names = {part.name for part in bench.parts}
    for one in told:
        assert one.parts
        assert names.issuperset(one.parts)
        assert one.place is not None
        _is_on(bench, one)
    return told


def _is_on(bench: Bench, finding: Finding) -> None:
    """The place is on the bench or by it, no farther off than a drawer opens."""
    boxes = np.array([bounding_box(part) for part in bench.parts])
    low, high = boxes[:, 0].min(axis=0) - NEAR, boxes[:, 1].max(axis=0) + NEAR
    assert finding.place is not None
    assert (low <= finding.place).all(), finding
    assert (finding.place <= high).all(), finding


def mended(bench: Bench, finding: Finding) -> Bench:
    """The bench that the finding's mend makes."""
    assert finding.mend is not None
    spec = set_values(bench.spec, dict(finding.mend.values))
    return replace(build(spec), brief=bench.brief, judged_by=bench.judged_by)
