"""Enlarged details: a circle is no larger than what it shows, and its letter stands beside it."""

from __future__ import annotations

import math
from datetime import date

import numpy as np
import pytest

from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.design.part import Part
from geometry.dimensioning.dimension import Dimension
from geometry.dimensioning.placed import DimensionStyle
from geometry.drawing.marks import Arc, Label, Role
from geometry.sheets.details import DIAMETERS, details, too_small
from geometry.sheets.layout import Layout
from geometry.sheets.part_dimensions import part_dimensions
from geometry.sheets.part_sheets import part_groups, part_leaves
from geometry.sheets.title_block import title_block_of
from geometry.views.linework import Linework
from geometry.views.look import look_at_part
from geometry.views.view import PART_EDGE, PART_END, PART_FACE
from shared.paper import PAPERS

SCALE = 1.0 / 20.0


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
