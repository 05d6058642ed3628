"""Views of whole benches: hidden lines before rays, no line drawn twice, same bench same lines."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

from exporters.project_file import load
from geometry.bench.build import build
from geometry.solids import cutting
from geometry.views.look import look_all
from geometry.views.pictorial import FROM_LEFT, FROM_RIGHT
from geometry.views.view import END_LEFT, END_RIGHT, FRONT, PLAN
from tests.judges.rays import RayJudge

SAMPLES = sorted((Path(__file__).parents[3] / "sample_projects").glob("*.settle"))
VIEWS = (FRONT, PLAN, END_RIGHT, END_LEFT, FROM_LEFT, FROM_RIGHT)


@pytest.mark.parametrize("sample", SAMPLES, ids=lambda path: path.stem)
def test_every_stretch_of_a_sample_is_seen_or_hidden_as_rays_find_it(sample):
    """Of each sample three of the views, of its neighbour by name the three others."""
    parts = build(load(sample).spec).parts
    views = VIEWS[SAMPLES.index(sample) % 2 :: 2]
    for view, linework in zip(views, look_all(parts, views), strict=True):
        verdict = RayJudge(parts, view).judge(linework)
        assert verdict.wrong == [], view.name
        assert verdict.judged > 15  # a bare panel bench has few lines in its plan
        assert verdict.unclear <= 0.1 * verdict.judged


@pytest.mark.parametrize("sample", SAMPLES[:1], ids=lambda path: path.stem)
def test_the_same_bench_gives_the_same_lines_whatever_was_drawn_before(sample):
    parts = build(load(sample).spec).parts
    first = look_all(parts, VIEWS)
    for kept in (cutting.body_of, cutting.solid_of, cutting.placed_shape):
        kept.cache_clear()
    for one, other in zip(first, look_all(parts, VIEWS), strict=True):
        for name in ("segments", "visible", "owner"):
            assert np.array_equal(getattr(one, name), getattr(other, name))
