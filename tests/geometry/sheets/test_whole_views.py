"""Pictorial, exploded and cut-through pages: every name in its place and no other's."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from pathlib import Path

import numpy as np
import pytest
import shapely

from exporters.project_file import load
from geometry.bench.build import build
from geometry.drawing.marks import Label, Role, Sheet, Strokes
from geometry.sheets.cross_sections import best_plane, cross_sections
from geometry.sheets.layout import Layout, furniture
from geometry.sheets.part_labels import named
from geometry.sheets.section_page import cross_section_leaf
from geometry.sheets.title_block import title_block_of
from geometry.sheets.whole_views import exploded_leaf, pictorial, pictorial_leaf
from geometry.solids.measure import bounding_box
from geometry.views.pictorial import FROM_RIGHT
from geometry.views.view import END_RIGHT, FRONT, PLAN
from shared.paper import PAPERS
from shared.words import Words
from tests.geometry.sheets.on_sheet import ink, off_the_sheet, overlapping_texts
from tests.judges.labels import crossing
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


def test_what_is_covered_has_no_spot():
    front = box("front", (0.0, -50.0, 0.0), (100.0, -40.0, 100.0))
    behind = box("behind", (20.0, 0.0, 20.0), (80.0, 10.0, 80.0))
    spots = pictorial((front, behind), FRONT).spots
    assert [(spot.index, spot.share) for spot in spots] == [(0, pytest.approx(1.0))]


def test_of_what_shows_in_a_gap_the_share_is_told():
    """Of 100 by 100 a gap of 10 leaves a tenth; its middle is 5 from either side."""
    boards = [
        box(f"board_{k}", (x, -50.0, 0.0), (x + 95.0, -40.0, 100.0))
        for k, x in ((1, 0.0), (2, 105.0))
    ]
    behind = box("behind", (50.0, 0.0, 0.0), (150.0, 10.0, 100.0))
    spots = {spot.index: spot for spot in pictorial((*boards, behind), FRONT).spots}
    assert spots[2].share == pytest.approx(0.1)
    assert spots[2].clear == pytest.approx(5.0)
    assert spots[2].shows(0.1)  # half a millimetre on the sheet
    assert not spots[2].shows(0.02)
    assert ((spots[2].points[:, 0] > 95.0) & (spots[2].points[:, 0] < 105.0)).all()


def test_leaders_do_not_cross():
    bench = build(load(SAMPLES[0]).spec)
    figure = pictorial(bench.parts, FROM_RIGHT)
    spots = [one.scaled(0.1) for one in figure.spots]
    texts = [part.title for part in bench.parts]
    room = (-200.0, -200.0, 400.0, 200.0)
    labels = named(texts, spots, figure.linework.segments * 0.1, 2.5, room)
    assert len(labels) == len(spots)
    assert crossing(labels) == []


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
    rest = tuple(p for p in bench.parts if p.kind in ("post", "slat", "rest rail"))
    along, _ = cross_sections(replace(bench, parts=rest))
    assert along.place == "{42 mm} behind the back edge"


def test_a_row_of_slats_is_not_taken_for_the_bench():
    """A back rest of nine slats has more parts than the box in front of it, but fewer kinds."""
    bench = build(load(next(p for p in SAMPLES if p.stem == "lock_keepers_bench")).spec)
    along, _ = cross_sections(bench)
    cut = {bench.parts[owner].kind for owner, _ in along.section.left}
    assert "in front of" in along.place
    assert any(kind.startswith("box") for kind in cut), cut
