"""Hidden lines held against ray casting by trimesh, over random assemblies of touching parts."""

from __future__ import annotations

import pytest

from geometry.views.look import look_all
from geometry.views.view import END_LEFT, END_RIGHT, FRONT, PLAN
from tests.judges.rays import RayJudge
from tests.random_assemblies import bars, blocks

VIEWS = (FRONT, PLAN, END_RIGHT, END_LEFT)


@pytest.mark.parametrize("seed", range(12))
@pytest.mark.parametrize("assembly", [blocks, bars])
def test_every_stretch_is_seen_or_hidden_as_rays_find_it(assembly, seed):
    parts = assembly(seed)
    for view, linework in zip(VIEWS, look_all(parts, VIEWS), strict=True):
        judge = RayJudge(parts, view, seed)
        verdict = judge.judge(linework)
        assert verdict.wrong == [], view.name
        assert verdict.judged > 10
        assert verdict.unclear <= 0.1 * verdict.judged
        assert judge.missing(linework, least_turn_deg=12.0) == []
