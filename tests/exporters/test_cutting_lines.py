"""Cutting lines of whole benches: the samples, and any bench that can be built."""

from __future__ import annotations

import math
from dataclasses import replace
from itertools import pairwise
from pathlib import Path as File

import numpy as np
import pytest
import trimesh
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry import Polygon

from exporters.cutting_lines import CuttingLine, cutting_lines
from exporters.project_file import load
from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.catalogue import PARAMETERS, default_spec
from geometry.bench.limits import limits, set_values
from geometry.cuts.contour import Operation
from geometry.cuts.trim import Trim
from geometry.design.part import Part
from geometry.design.spec import BenchSpec
from geometry.solids.cutting import solid_of
from shared.errors import MakerError
from shared.tolerances import CHORD_ERROR

RUN_OVER = 7.35
SAMPLES = sorted((File(__file__).parents[2] / "sample_projects").glob("*.settle"))
NUMBERS = [row for row in PARAMETERS if row.unit in ("mm", "deg")]
CHOICES = [row for row in PARAMETERS if row.unit == "choice"]


def sound(part: Part, lines: tuple[CuttingLine, ...]) -> None:
    """Closed, simple, long enough to follow, apart from each other, and inside the blank."""
    by_layer: dict[str, list[Polygon]] = {}
    for line in lines:
        vertices = line.path.vertices
        steps = [math.dist(a[:2], b[:2]) for a, b in pairwise(vertices)]
        assert min(steps) > 0.01, (part.name, line)
        if line.path.closed:
            area = Polygon(line.path.flattened(0.001))
            assert area.is_valid, (part.name, line)
            for other in by_layer.get(line.layer.name, []):
                assert other.distance(area) > 1e-6, (part.name, line)
            by_layer.setdefault(line.layer.name, []).append(area)
    (outline,) = by_layer["CUT_OUT_THRU"]
    low_x, low_y, high_x, high_y = outline.bounds
    blank = part.shape.blank
    assert min(low_x, low_y) > -1e-5
    assert high_x < blank.length + 1e-5
    assert high_y < blank.width + 1e-5


def shadow_area(part: Part) -> float:
    """What trimesh makes of the solid's shadow."""
    solid = solid_of(part.shape)
    mesh = trimesh.Trimesh(solid.vertices, solid.triangles)
    return float(trimesh.path.polygons.projected(mesh, normal=(0, 0, 1), precise=True).area)


def end_width(part: Part) -> float:
    """How wide a part is where it is left proud: of a rail its tenon, of others all of it."""
    if part.kind != "rail":
        return part.shape.blank.width
    vertices = solid_of(part.shape).vertices
    return float(np.ptp(vertices[vertices[:, 0] < vertices[:, 0].min() + 1e-6, 1]))


@pytest.mark.parametrize("file", SAMPLES, ids=lambda file: file.stem)
def test_every_part_of_every_sample(file: File) -> None:
    bench = build(load(file).spec)
    assert bench.parts
    for part in bench.parts:
        lines = cutting_lines(part, RUN_OVER)
        sound(part, lines)
        outline = Polygon(lines[0].path.flattened(0.001))
        holes = [line for line in lines if line.layer.operation is Operation.INSIDE]
        cut_out = [Polygon(hole.path.flattened(0.001)) for hole in holes]
        area = outline.area - sum(hole.area for hole in cut_out)
        # Rounds are true in the file; in the solid they are chords, at most so far inside them.
        chords = 0.05 + CHORD_ERROR * sum(hole.length for hole in cut_out)
        # Chamfers and leaning bores come after the outline; they only take from it, and little.
        later = any(cut.title in ("chamfer", "leaning bore") for cut in part.shape.cuts)
        blank = part.shape.blank
        expected = shadow_area(part) + part.allowance * end_width(part)
        expected += part.allowance_across * (blank.length - part.allowance)
        assert area >= expected - chords
        assert area == pytest.approx(expected, abs=12.0 * outline.length if later else chords)


def test_one_contour_for_each_housing(bench: Bench) -> None:
    """As many housings in top and bottom as uprights that stand in them."""
    uprights = [part for part in bench.parts if part.name.startswith("partition")]
    for board in ("top", "bottom"):
        lines = cutting_lines(bench.part(board), RUN_OVER)
        housings = [line for line in lines if line.layer.name == "POCKET_D070"]
        assert len(housings) == len(uprights)
        assert all(
            sum(bulge != 0.0 for _, _, bulge in line.path.vertices) == 2 for line in housings
        )


@st.composite
def specs(draw: st.DrawFn) -> BenchSpec:
    """A bench that can be built, a dozen of its values anywhere within their limits."""
    spec = default_spec()
    for row in draw(st.lists(st.sampled_from(CHOICES), max_size=3)):
        spec = tried(spec, row.name, draw(st.sampled_from(row.choices)))
    for row in draw(st.lists(st.sampled_from(NUMBERS), max_size=12)):
        now = limits(spec, row.name)
        share = draw(st.floats(0, 1))
        value = round(now.minimum + share * (now.maximum - now.minimum), 3)
        spec = tried(spec, row.name, value)
    return spec


def tried(spec: BenchSpec, name: str, value: float | str) -> BenchSpec:
    try:
        return set_values(spec, {name: value})
    except MakerError:
        return spec


@given(spec=specs())
@settings(max_examples=25, deadline=None)
def test_every_part_of_any_bench(spec: BenchSpec) -> None:
    for part in build(spec).parts:
        sound(part, cutting_lines(part, RUN_OVER))


def test_a_row_of_points_is_straightened() -> None:
    from exporters.shadow import straightened

    ring = [(0, 0), (1, 0), (2, 0), (3, 0), (3, 3), (1.5, 3 + 1e-7), (0, 3)]
    assert straightened(np.array(ring, dtype=float)) == [(0, 0), (3, 0), (3, 3), (0, 3)]


def test_the_machine_cuts_a_front_as_large_as_it_leaves_the_saw(plain: Part) -> None:
    """What is left on until the fitting is still there: 300 x 200, not 294 x 194."""
    shape = replace(plain.shape, cuts=(Trim(3.0, 297.0, 3.0, 197.0),))
    (outline,) = cutting_lines(replace(plain, shape=shape), 5.0)
    xs, ys = zip(*((x, y) for x, y, _ in outline.path.vertices), strict=True)
    assert (min(xs), max(xs), min(ys), max(ys)) == (0.0, 300.0, 0.0, 200.0)


@pytest.mark.parametrize(("name", "ends"), [("stretcher_back_left", 2), ("leg_back_left", 1)])
def test_what_is_left_proud_is_in_the_outline(name: str, ends: int) -> None:
    """By hand: an end moved out by 3 mm adds 3 mm times the width it is sawn across."""
    flush = build(default_spec()).part(name)
    proud = build(set_values(default_spec(), {"proud": 3.0})).part(name)
    areas, widths = [], []
    for part in (flush, proud):
        lines = cutting_lines(part, RUN_OVER)
        sound(part, lines)
        outline = Polygon(lines[0].path.flattened(0.001))
        areas.append(outline.area)
        widths.append(outline.bounds[2] - outline.bounds[0])
    assert widths[1] - widths[0] == pytest.approx(3.0 * ends, abs=1e-4)
    assert areas[1] - areas[0] == pytest.approx(3.0 * ends * flush.shape.blank.width, abs=0.01)


def test_a_leaning_bore_is_marked_and_not_cut() -> None:
    """Its shadow is the lens that two circles share: cut, that would spoil the board."""
    spec = set_values(default_spec(), {"base": "four legs"})
    spec = set_values(spec, {"leg_joint": "round tenons"})
    lines = cutting_lines(build(spec).part("bottom"), RUN_OVER)
    assert not [line for line in lines if line.layer.operation is Operation.INSIDE]
    marks = [line for line in lines if line.layer.name == "REV_SCRIBE_NOCUT"]
    # The chamfer's line, and for each bore a sightline and a line across it that part one another.
    assert len(marks) == 1 + 4 * 4
    upright = set_values(spec, {"rake": 0.0, "splay": 0.0})
    holes = [
        line
        for line in cutting_lines(build(upright).part("bottom"), RUN_OVER)
        if line.layer.operation is Operation.INSIDE
    ]
    assert len(holes) == 4


def test_points_that_crowd_are_left_out() -> None:
    from exporters.shadow import spaced

    ring = [(0.0, 0.0), (3.0, 0.0), (3.0, 0.004), (3.0, 3.0), (0.0, 3.0)]
    assert spaced(ring) == [(0.0, 0.0), (3.0, 0.0), (3.0, 3.0), (0.0, 3.0)]
