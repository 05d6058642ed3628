"""From where a joint is pictured: either part is seen, and what the joint makes of it."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
import shapely

from exporters.project_file import load
from geometry.bench.build import build
from geometry.sheets.joint_groups import joint_groups
from geometry.sheets.joint_outlines import shown_edges
from geometry.sheets.joint_pictorial import joint_pictorial
from geometry.solids.cutting import placed
from geometry.views.joint_scene import joint_scene
from geometry.views.pictorial import CORNERS
from geometry.views.seen import nearest

SAMPLES = sorted((Path(__file__).parents[3] / "sample_projects").glob("*.settle"))
# Blocks glued into corners; partitions housed into a top from below; a lid over its box.
QUICK = ("bowling_green_bench", "rehearsal_room_bench", "lock_keepers_bench")
_GRID = 15  # points across a part at which it is looked for


def samples() -> list[object]:
    return [
        pytest.param(path, id=path.stem, marks=() if path.stem in QUICK else pytest.mark.sweep)
        for path in SAMPLES
    ]


def pictured(path: Path):
    """Each kind of joint of a sample with what it is pictured as."""
    bench = build(load(path).spec)
    parts = {part.name: part for part in bench.parts}
    for group in joint_groups(bench.joints, parts):
        scene = joint_scene(group[0], parts)
        yield scene, joint_pictorial(scene, parts)


def least_seen(parts, view) -> float:
    """Of what either part would show by itself, the share that the other leaves of it."""
    shares = []
    for index, part in enumerate(parts):
        points = grid_over(part, view)
        together = (nearest(parts, view, points) == index).sum()
        shares.append(together / max((nearest((part,), view, points) == 0).sum(), 1))
    return min(shares)


def grid_over(part, view):
    """Points over the box round a part in a view, (n, 2)."""
    flat = placed(part).vertices @ np.array((view.right, view.up)).T
    low, high = flat.min(axis=0), flat.max(axis=0)
    steps = (np.arange(_GRID) + 0.5) / _GRID
    return low + (high - low) * np.stack(np.meshgrid(steps, steps), axis=-1).reshape(-1, 2)


@pytest.mark.parametrize("path", samples())
def test_neither_part_hides_behind_the_other(path):
    """Drawn apart nearly all of both is seen; put together, some of both, where that can be."""
    for scene, picture in pictured(path):
        name = scene.joint.name
        assert least_seen(picture.parts, picture.apart.linework.view) > 0.7, name
        joined = least_seen(scene.parts, picture.together.linework.view)
        if joined < 0.1:
            assert max(least_seen(scene.parts, view) for view in CORNERS) < 0.2, name
        if scene.joint.kind == "glued and screwed block":
            assert joined > 0.4, name


@pytest.mark.parametrize("path", samples())
def test_what_a_joint_makes_of_either_part_is_seen(path):
    """On each of the parts drawn apart some of the edges that the joint makes are drawn as seen."""
    for scene, picture in pictured(path):
        lines = picture.apart.linework
        flat = np.array((lines.view.right, lines.view.up)).T
        drawn = shapely.multilinestrings(
            shapely.linestrings(lines.segments[lines.visible].reshape(-1, 2, 2))
        )
        for one, apart in zip(scene.both, picture.parts, strict=True):
            if not len(one.edges):
                continue
            by = np.array(apart.frame.origin) - np.array(one.part.frame.origin)
            edges = (shown_edges(one.edges, (one,)) + by) @ flat
            seen = shapely.distance(shapely.points(edges.mean(axis=1)), drawn) < 2e-3
            assert seen.mean() > 0.05, (scene.joint.name, one.part.name)
