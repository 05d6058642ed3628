"""Hidden lines held against ray casting by trimesh, over random assemblies of touching parts."""

from __future__ import annotations

import pytest

from geometry.cuts.removal import Prism
from geometry.solids.cutting import removals_of
from geometry.views.look import look_all
from geometry.views.view import END_LEFT, END_RIGHT, FRONT, PLAN
from shared.tolerances import SHARP_EDGE_DEG
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
        assert judge.missing(linework, [least_turn(part) for part in parts]) == []


def least_turn(part):
    """Degrees from which an edge must be drawn: more than a chord turns where there are arcs."""
    removed = removals_of(part.shape)
    rounded = any(
        bulge
        for prism in removed
        if isinstance(prism, Prism)
        for _, _, bulge in prism.path.vertices
    )
    return 35.0 if rounded else SHARP_EDGE_DEG
