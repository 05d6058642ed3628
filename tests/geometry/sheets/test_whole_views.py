"""Pictorial, exploded and cut-through pages: every name in its place and no other's."""

from __future__ import annotations

from datetime import date
from itertools import combinations
from pathlib import Path

import numpy as np
import pytest
import shapely

from exporters.project_file import load
from geometry.bench.build import build
from geometry.drawing.marks import Label, Role, Sheet, Strokes
from geometry.sheets.cross_sections import best_plane, cross_section_leaf, cross_sections
from geometry.sheets.layout import Layout, furniture
from geometry.sheets.part_labels import named, spots_of
from geometry.sheets.title_block import title_block_of
from geometry.sheets.whole_views import exploded_leaf, pictorial, pictorial_leaf, taken_apart
from geometry.solids.cutting import placed
from geometry.solids.measure import bounding_box
from geometry.views.pictorial import FROM_LEFT, FROM_RIGHT
from geometry.views.view import END_RIGHT, FRONT, PLAN
from shared.paper import PAPERS
from shared.words import Words
from tests.geometry.sheets.on_sheet import ink, off_the_sheet, overlapping_texts, words
from tests.random_assemblies import box
from tests.random_benches import random_spec

SAMPLES = sorted((Path(__file__).parents[3] / "sample_projects").glob("*.settle"))
LEAVES = (pictorial_leaf, exploded_leaf, cross_section_leaf)


def sheet_of(leaf) -> Sheet:
    paper = leaf.layout.paper
    marks = (*furniture(leaf.layout, leaf.scale), *leaf.marks)
    return Sheet(leaf.title, paper.width, paper.height, marks)


def names_on_lines(marks) -> list[str]:
    """Brute force: every name against every line but hatching."""
    drawn = [m.segments for m in marks if isinstance(m, Strokes) and m.role is not Role.HATCH]
    strokes = shapely.linestrings(np.concatenate(drawn).reshape(-1, 2, 2))
    labels = [m for m in marks if isinstance(m, Label) and m.role is Role.TEXT]
    return [m.text for m in labels if shapely.intersects(ink(m), strokes).any()]


@pytest.mark.parametrize("sample", SAMPLES, ids=lambda path: path.stem)
@pytest.mark.parametrize("leaf_of", LEAVES, ids=lambda f: f.__name__)
def test_no_name_touches_a_name_a_line_or_the_frame(sample, leaf_of):
    project = load(sample)
    layout = Layout(PAPERS["A4"], title=title_block_of(project, date(2025, 3, 4)))
    leaf = leaf_of(build(project.spec), layout)
    assert overlapping_texts(sheet_of(leaf)) == []
    assert off_the_sheet(sheet_of(leaf)) == []
    assert names_on_lines(leaf.marks) == []


@pytest.mark.parametrize(("seed", "paper"), [(0, "A4"), (2, "Letter"), (5, "A3")])
def test_odd_benches_and_papers(seed, paper):
    bench = build(random_spec(seed))
    for leaf_of in LEAVES:
        leaf = leaf_of(bench, Layout(PAPERS[paper], words=Words.AMERICAN))
        sheet = sheet_of(leaf)
        assert overlapping_texts(sheet) == []
        assert off_the_sheet(sheet) == []


@pytest.mark.parametrize("sample", SAMPLES, ids=lambda path: path.stem)
def test_taken_apart_every_part_has_its_name_or_number(sample):
    bench = build(load(sample).spec)
    texts = words(sheet_of(exploded_leaf(bench, Layout(PAPERS["A4"]))))
    for index, part in enumerate(bench.parts, start=1):
        assert part.title in texts or str(index) in texts, part.title
        assert part.title in texts


def test_a_leader_ends_on_its_own_part():
    """Seen from the front corner, each spot lies in the part's region and in no nearer part's."""
    bench = build(load(SAMPLES[-1]).spec)
    for view in (FROM_RIGHT, FROM_LEFT):
        figure = taken_apart(bench, view)
        flat = np.array((view.right, view.up)).T
        for spot in figure.spots:
            hull = shapely.MultiPoint(placed(figure.parts[spot.index]).vertices @ flat).convex_hull
            assert hull.contains(shapely.Point(spot.point))


def test_what_is_covered_has_no_spot():
    front = box("front", (0.0, -50.0, 0.0), (100.0, -40.0, 100.0))
    behind = box("behind", (20.0, 0.0, 20.0), (80.0, 10.0, 80.0))
    spots = spots_of((front, behind), FRONT, np.array([(0.0, 0.0, 100.0, 0.0)]))
    assert [spot.index for spot in spots] == [0]


def test_leaders_do_not_cross():
    bench = build(load(SAMPLES[0]).spec)
    figure = pictorial(bench.parts, FROM_RIGHT)
    lines = figure.linework.segments * 0.1
    spots = [type(s)(s.index, (s.point[0] * 0.1, s.point[1] * 0.1), s.clear) for s in figure.spots]
    texts = [part.title for part in bench.parts]
    labels = named(texts, spots, lines, 2.5, (-200.0, -200.0, 400.0, 200.0))
    assert len(labels) == len(spots)
    leaders = [shapely.LineString([one.leader[:2], one.leader[2:]]) for one in labels]
    assert not any(a.intersects(b) for a, b in combinations(leaders, 2))


def test_a_plane_is_put_where_it_cuts_most():
    """Of three boxes in a row two overlap between x = 50 and 100."""
    parts = (
        box("a", (0.0, 0.0, 0.0), (100.0, 10.0, 10.0)),
        box("b", (50.0, 20.0, 0.0), (180.0, 30.0, 10.0)),
        box("c", (150.0, 40.0, 0.0), (170.0, 50.0, 10.0)),
    )
    assert best_plane(parts, END_RIGHT) == pytest.approx(75.0)
    assert best_plane(parts, PLAN) == pytest.approx(5.0)


def test_the_two_sections_show_each_other():
    bench = build(load(SAMPLES[0]).spec)
    along, end = cross_sections(bench)
    x = along.trace
    assert x == pytest.approx(end.section.at * end.section.view.toward[0])
    low = min(bounding_box(part)[0][0] for part in bench.parts)
    assert f"{{{x - low:g} mm}}" in end.place
    # The plane A looks against the way its viewer stands.
    assert along.sight == -end.section.view.toward[0]


def test_a_plane_behind_the_back_edge_is_said_to_be_there():
    """Through the slats of a rest that stands behind the box: not a distance less than nothing."""
    samples = Path(__file__).parents[3] / "sample_projects"
    bench = build(load(samples / "lock_keepers_bench.settle").spec)
    along, _ = cross_sections(bench)
    assert along.place == "{42 mm} behind the back edge"
