"""Enlarged details: a circle is no larger than what it shows, and its letter stands beside it."""

from __future__ import annotations

import math
from datetime import date
from pathlib import Path

import numpy as np
import pytest

from exporters.project_file import load
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.glue_ups import boards_of
from geometry.bench.limits import set_values
from geometry.design.part import Part
from geometry.dimensioning.dimension import Dimension
from geometry.dimensioning.placed import DimensionStyle
from geometry.drawing.marks import Arc, Label, Role
from geometry.sheets.cut_table import cut_table
from geometry.sheets.cut_words import cut_lines
from geometry.sheets.details import DIAMETERS, details, too_small
from geometry.sheets.layout import Layout
from geometry.sheets.page_plan import planned
from geometry.sheets.part_dimensions import part_dimensions
from geometry.sheets.part_sheets import drawn_part, part_groups, part_leaves
from geometry.sheets.title_block import title_block_of
from geometry.views.linework import Linework
from geometry.views.look import look_at_part
from geometry.views.view import PART_EDGE, PART_END, PART_FACE
from shared.paper import PAPERS, SCALES
from shared.units import in_units

SCALE = 1.0 / 20.0
SAMPLES = Path(__file__).parents[3] / "sample_projects"


@pytest.fixture(scope="module")
def long_bench():
    return build(set_values(default_spec(), {"length": 2400.0}))


@pytest.fixture(scope="module")
def stretcher(long_bench) -> Part:
    return next(part for part in long_bench.parts if part.kind == "stretcher")


def test_a_depth_in_the_middle_of_a_long_piece_has_a_small_circle(stretcher):
    """The lap's depth is drawn from the outline in the whole view and at its wall in the detail."""
    lineworks = [look_at_part(stretcher, view) for view in (PART_FACE, PART_EDGE, PART_END)]
    small = [one for one in part_dimensions(stretcher.shape) if too_small(one, SCALE)]
    depth = stretcher.shape.blank.width / 2.0
    assert any(one.value == pytest.approx(depth) for one in small)
    found = details(lineworks, small, SCALE, 45.0, (DIAMETERS[0], DimensionStyle()))
    assert found
    for detail in found:
        assert detail.scale > SCALE
        assert 2.0 * detail.radius * detail.scale <= DIAMETERS[0]


def test_a_letter_stands_outside_its_ring_on_any_side(long_bench, project):
    layout = Layout(PAPERS["A4"], title=title_block_of(project, date(2025, 3, 4)))
    sides = set()
    for group in part_groups(long_bench):
        marks = [mark for page in part_leaves(group, layout) for mark in page.marks]
        whole = [m for m in marks if isinstance(m, Arc) and m.end_deg - m.start_deg == 360.0]
        letters = [
            m for m in marks if isinstance(m, Label) and m.role is Role.TITLE and len(m.text) == 1
        ]
        for letter in letters:
            at = (letter.at[0], letter.at[1] + letter.height / 2.0)
            ring = min(whole, key=lambda r: math.dist(r.centre, at) - r.radius)
            assert math.dist(ring.centre, at) > ring.radius
            sides.add((at[0] > ring.centre[0], at[1] > ring.centre[1]))
    assert len(sides) > 2


def test_what_would_not_be_enlarged_together_is_drawn_apart():
    """Two sizes of 1.4, 50 apart, on a piece 22 thick at 1:2: one circle round both would be over
    50 at 1:1, one round either is 2 x 0.8 x 22 = 35.2, which the largest of 36 holds."""
    dimensions = [
        Dimension(f"d{k}", "", "face", 1.4, "mm", (u, 0.0), (u + 1.4, 0.0), (1.0, 0.0), -1, 0)
        for k, u in enumerate((0.0, 50.0))
    ]
    lines = np.array([(-50.0, 0.0, 100.0, 0.0), (-50.0, -60.0, 100.0, -60.0)])
    linework = Linework(PART_FACE, lines, np.ones(2, dtype=bool), np.zeros(2, dtype=np.intp))
    style = DimensionStyle()
    one = details([linework], dimensions[:1], 0.5, 22.0, (DIAMETERS[0], style))
    both = details([linework], dimensions, 0.5, 22.0, (DIAMETERS[0], style))
    assert [detail.scale for detail in one] == [1.0]
    assert {detail.scale for detail in both} == {1.0}
    assert all(2.0 * detail.radius <= DIAMETERS[0] for detail in both)


RAKED = ("bowling_green", "choir_loft", "porch", "stitching_room", "weigh_house")


@pytest.mark.parametrize("name", RAKED)
def test_a_detail_is_larger_than_its_view(name):
    """Each ring is drawn larger than the view that it stands in, unless its own sizes lie so far
    apart that not even the least circle round them would be a usual one at the next scale."""
    bench = build(load(SAMPLES / f"{name}_bench.settle").spec)
    for group in part_groups(bench):
        if group[0].kind not in ("leg", "post", "apron", "stretcher"):
            continue
        maker = cut_table(group[0], Layout(PAPERS["A4"]))
        pages = planned(drawn_part(group[0]), maker, 20.0, Layout(PAPERS["A4"]))
        view = pages[0].scale
        nearest = min(step.factor for step in SCALES if step.factor > view)
        for detail in pages[0].rings:
            wide = detail.scale > view or 2.0 * detail.radius * nearest > min(DIAMETERS)
            assert wide, (group[0].title, detail.letter)
            if detail.scale <= view:
                assert len(detail.placed.dimensions) > 1, (group[0].title, detail.letter)


def test_details_grow_where_the_page_has_room():
    """A leg of the apiary's, alone on its page: its detail at full size, not at 1:2 in a usual one
    (it is 0.8 x 42 = 33.6 round, 67 across)."""
    bench = build(load(SAMPLES / "apiary_bench.settle").spec)
    legs = next(group for group in part_groups(bench) if group[0].kind == "leg")
    layout = Layout(PAPERS["A4"])
    (page,) = planned(drawn_part(legs[0]), cut_table(legs[0], layout), 20.0, layout)
    assert page.rings
    assert all(detail.scale >= 1.0 for detail in page.rings)


@pytest.mark.parametrize("name", ["stitching_room", "sail_loft", "bakehouse", "boat_club"])
def test_every_cut_is_told_on_some_page(name):
    """However long the table is: what has no room on one page goes on to the next."""
    project = load(SAMPLES / f"{name}_bench.settle")
    bench = build(project.spec)
    layout = Layout(PAPERS["A4"], title=title_block_of(project, date(2024, 1, 2)))
    for whole in (bench, boards_of(bench)):
        for group in part_groups(whole):
            marks = [mark for leaf in part_leaves(group, layout) for mark in leaf.marks]
            said = "".join(mark.text for mark in marks if isinstance(mark, Label)).replace(" ", "")
            for line in cut_lines(group[0].shape):
                words = in_units(line.words, layout.shown).replace(" ", "")
                assert words in said, (group[0].name, line.number_text)
