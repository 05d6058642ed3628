"""The page with the section of a maker's own: what it says, and where its plane is marked."""

from __future__ import annotations

import math
from datetime import date
from pathlib import Path

import numpy as np
import pytest

from exporters.project_file import load
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.design.cutting_plane import FIRST_TURN, Plane, Way
from geometry.drawing.marks import Arc, Fill, Label, Role, Sheet, Strokes
from geometry.sheets.layout import Layout, furniture
from geometry.sheets.section_key import Marked
from geometry.sheets.section_plane import reach_of
from geometry.sheets.section_sheet import section_leaf, section_sheet
from geometry.sheets.title_block import title_block_of
from shared.paper import PAPERS, SCALES
from tests.geometry.sheets.on_sheet import ink, off_the_sheet, overlapping_texts, words

SAMPLES = sorted((Path(__file__).parents[3] / "sample_projects").glob("*.settle"))
SCREEN = Layout(PAPERS["A4"], frame=False)


def page_of(leaf) -> Sheet:
    paper = leaf.layout.paper
    marks = (*furniture(leaf.layout, leaf.scale), *leaf.marks)
    return Sheet(leaf.title, paper.width, paper.height, marks)


@pytest.mark.parametrize("sample", SAMPLES[::4], ids=lambda path: path.stem)
@pytest.mark.parametrize("way", Way)
def test_no_text_touches_another_or_the_frame(sample, way):
    project = load(sample)
    bench = build(project.spec)
    layout = Layout(PAPERS["A4"], title=title_block_of(project, date(2026, 1, 2)))
    for turn, share in ((FIRST_TURN[way], 0.5), (-35.0, 0.35)):
        low, high = reach_of(bench, way, turn)
        leaf = section_leaf(bench, Plane(way, low + share * (high - low), turn), layout, "Q")
        page = page_of(leaf)
        assert overlapping_texts(page) == []
        assert off_the_sheet(page) == []
        texts = words(page)
        assert texts.count("Q") == 2
        assert texts.count("Q–Q") == 1
        names = [m for m in leaf.marks if isinstance(m, Label) and m.role is Role.TEXT]
        assert len(names) > 1


@pytest.mark.parametrize("way", Way)
@pytest.mark.parametrize("turn", [0.0, 28.0, 45.0, -70.0, 90.0])
@pytest.mark.parametrize("by_hand", [True, False])
def test_the_letters_stand_at_the_ends_of_the_line_and_touch_nothing(way, turn, by_hand):
    """As do the arrows, which point the way one looks, letters behind them or past the end."""
    bench = build(default_spec())
    low, high = reach_of(bench, way, turn)
    plane = Plane(way, low + 0.45 * (high - low), turn)
    found = section_sheet(bench, plane, SCREEN, marked=Marked("K", by_hand=by_hand))
    letters = [m for m in found.marks if isinstance(m, Label) and m.text == "K"]
    assert len(letters) == 2
    heads = [m for m in found.marks if isinstance(m, Fill) and len(m.points) == 3][:2]
    view, cut = found.key.view, found.cut.view
    sight = np.array([-float(np.dot(cut.toward, way)) for way in (view.right, view.up)])
    for end, letter, head in zip(found.key.ends, letters, heads, strict=True):
        middle = np.array((letter.at[0], letter.at[1] + letter.height / 2.0))
        assert math.dist(middle, end) < 6.5
        assert float((middle - np.array(end)) @ sight) < 1e-6
        assert float((np.array(head.points[0]) - np.array(end)) @ sight) > 0.0
    drawn = np.concatenate(
        [m.segments for m in found.marks if isinstance(m, Strokes) and m.role is not Role.HATCH]
    )
    shapely = pytest.importorskip("shapely")
    lines = shapely.linestrings(drawn.reshape(-1, 2, 2))
    for letter in letters:
        assert not shapely.intersects(ink(letter), lines).any()
    rounds = [m for m in found.marks if isinstance(m, Arc) and m.role is Role.VISIBLE]
    assert len(rounds) == (2 if by_hand else 0)


def test_a_page_is_drawn_to_scales_of_the_standard_and_says_which():
    bench = build(default_spec())
    leaf = section_leaf(bench, Plane(Way.ACROSS, 400.0), Layout(PAPERS["A4"]), "A")
    steps = {step.text for step in SCALES}
    told = [text.rsplit(", ", 1)[1] for text in words(page_of(leaf)) if ", 1:" in text]
    assert len(told) == 2
    assert set(told) <= steps


def test_a_plane_beside_the_bench_gives_no_page():
    bench = build(default_spec())
    low, high = reach_of(bench, Way.ACROSS)
    for at in (low - 1.0, low, high, high + 300.0):
        assert section_leaf(bench, Plane(Way.ACROSS, at), Layout(PAPERS["A4"]), "A") is None
