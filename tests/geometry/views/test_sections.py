"""Section views: what is cut, what lies behind, and how the wood lies in it."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
import shapely

from exporters.project_file import load
from geometry.bench.build import build
from geometry.drawing.hatching import Cut
from geometry.primitives.frame import Frame
from geometry.solids.cutting import placed
from geometry.views.grain import manner_of, manners
from geometry.views.sections import plane_of, section, trimmed
from geometry.views.view import END_RIGHT, FRONT, PLAN
from tests.judges.rays import RayJudge
from tests.random_assemblies import box

SAMPLES = sorted((Path(__file__).parents[3] / "sample_projects").glob("*.settle"))


def test_two_boards_one_cut_one_behind_by_hand():
    near = box("near", (0.0, 0.0, 0.0), (100.0, 20.0, 50.0))
    far = box("far", (0.0, 100.0, 0.0), (150.0, 120.0, 40.0))
    gone = box("gone", (0.0, -100.0, 0.0), (100.0, -80.0, 50.0))
    found = section((gone, near, far), FRONT, -10.0)  # the plane y = 10
    (face,) = found.faces
    assert face.owner == 1
    assert face.region.equals(shapely.box(0.0, 0.0, 100.0, 50.0))
    assert set(found.linework.owner) == {1, 2}
    seen = found.linework.segments[found.linework.visible]
    assert seen[:, 0::2].max() == pytest.approx(150.0)  # the board behind shows beyond the near one
    behind = found.linework.segments[~found.linework.visible]
    assert behind[:, 1::2].max() == pytest.approx(40.0)  # and its far end lies hidden


@pytest.mark.parametrize("sample", SAMPLES, ids=lambda path: path.stem)
@pytest.mark.parametrize(("view", "at"), [(FRONT, 150.0), (PLAN, 300.0), (END_RIGHT, 411.0)])
def test_lines_behind_a_plane_are_as_rays_find_them(sample, view, at):
    parts = build(load(sample).spec).parts
    found = section(parts, view, at)
    assert found.faces
    plane = plane_of(view, at)
    left = []
    for part in parts:
        corners = placed(part).vertices @ np.array(view.toward)
        if corners.min() < at - 1e-6:
            left.append(trimmed(part, plane) if corners.max() > at + 1e-6 else part)
    kept = {part.name: index for index, part in enumerate(left)}
    owner = np.array([kept[parts[one].name] for one in found.linework.owner], dtype=np.intp)
    lines = type(found.linework)(view, found.linework.segments, found.linework.visible, owner)
    verdict = RayJudge(left, view).judge(lines)
    assert verdict.wrong == []
    assert verdict.judged > 8  # behind a level plane of a bare panel bench there is little


def test_the_grain_is_told_by_the_plane():
    """Grain along X: a plane across it shows end grain, one along it long grain."""
    board = box("board", (0.0, 0.0, 0.0), (200.0, 80.0, 20.0))
    assert manner_of(board, END_RIGHT, 100.0).cut is Cut.END_GRAIN
    assert manner_of(board, END_RIGHT, 100.0).along == (0.0, 1.0)  # rings round a pith below
    for view in (FRONT, PLAN):
        manner = manner_of(board, view, 10.0)
        assert manner.cut is Cut.LONG_GRAIN
        assert manner.along == (1.0, 0.0)


def test_the_plies_of_a_sheet_lie_between_its_faces():
    sheet = replace(
        box("sheet", (10.0, 30.0, 40.0), (210.0, 110.0, 46.0)),
        material="birch plywood",
        solid_timber=False,
    )
    manner = manner_of(sheet, FRONT, -50.0)
    assert manner.cut is Cut.PLIES
    assert abs(manner.along[0]) == pytest.approx(1.0)
    assert sorted(abs(one) for one in manner.plies) == pytest.approx([40.0, 46.0])
    assert manner_of(sheet, PLAN, 43.0).cut is Cut.FIBRES  # the plane lies in a ply
    mdf = replace(sheet, material="MDF")
    assert manner_of(mdf, FRONT, -50.0).cut is Cut.FIBRES
    # Standing askew at 30 degrees to the plane, its thickness is seen lengthened to 6 / sin 30.
    half, root = 0.5, 3.0**0.5 / 2.0
    leaning = replace(
        sheet, frame=Frame((0.0, 0.0, 0.0), (1, 0, 0), (0, root, half), (0, -half, root))
    )
    low, high = manner_of(leaning, PLAN, 10.0).plies
    assert high - low == pytest.approx(12.0)


def test_touching_pieces_of_one_kind_are_hatched_differently():
    one = box("one", (0.0, 0.0, 0.0), (200.0, 80.0, 20.0))
    two = box("two", (0.0, 0.0, 20.0), (200.0, 80.0, 40.0))
    three = box("three", (0.0, 0.0, 90.0), (200.0, 80.0, 120.0))
    found = section((one, two, three), FRONT, -40.0)
    assert [manner.turn for manner in manners((one, two, three), found)] == [0, 1, 0]
