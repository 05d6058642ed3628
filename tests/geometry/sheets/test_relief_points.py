"""The page of a carved front: every point numbered and tabled, where and how deep."""

from __future__ import annotations

import math
import re

import numpy as np
import pytest

from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.drawing.marks import Label, Role
from geometry.sheets.layout import Layout
from geometry.sheets.part_sheets import part_leaves
from geometry.sheets.relief_points import relief_points
from geometry.views.look import look_at_part
from geometry.views.view import PART_FACE
from shared.paper import PAPERS

# One front 1096 x 256; its corners, one point on a border and one in the middle.
MOVED = "1 0 0 0; 2 100 0 10; 3 100 100 20; 4 0 100 30; 5 50 0 40; 6 50 50 100"
SPEC = set_values(
    set_values(default_spec(), {"partition_count": 0.0, "opening_1_fill": "drawers"}),
    {"carving": "faceted", "carving_points": 6.0, "carving_moved": MOVED,
     "finger_groove": "top edge"},
)  # fmt: skip
FRONT = build(SPEC).part("drawer_1_1_front")


def test_points_are_measured_from_the_fitted_edges_row_by_row() -> None:
    """Depth 6: 30 % is 1.8 at the upper left, 100 % in the middle, nothing at the lower left."""
    points = [(p.across, p.down, p.deep) for p in relief_points(FRONT.shape)]
    rounded = [tuple(round(value, 6) for value in point) for point in points]
    assert rounded[0] == (0.0, 0.0, 1.8)
    assert (1096.0, 0.0, 1.2) in rounded
    assert (548.0, 128.0, 6.0) in rounded
    assert (0.0, 256.0, 0.0) in rounded
    assert (1096.0, 256.0, 0.6) in rounded
    assert len(rounded) == 6


def test_a_plain_front_has_no_points() -> None:
    plain = build(set_values(SPEC, {"carving": "plain"})).part("drawer_1_1_front")
    assert relief_points(plain.shape) == ()


def test_the_page_has_each_number_in_the_view_and_in_the_table() -> None:
    pages = part_leaves([FRONT], Layout(PAPERS["A3"]))
    labels = [mark for page in pages for mark in page.marks if isinstance(mark, Label)]
    words = [label.text for label in labels]
    assert "From left" in words
    assert "548" in words
    assert any("cove R 6.4" in text for text in words)
    for number in range(1, 7):
        assert words.count(str(number)) >= 2
    small = [label for label in labels if label.role is Role.TEXT and label.height == 2.0]
    assert sorted(int(label.text) for label in small if re.fullmatch(r"\d+", label.text)) == [
        1, 2, 3, 4, 5, 6,
    ]  # fmt: skip


def test_the_arrises_are_drawn_however_flat_they_are() -> None:
    """From the middle to the corners run two diagonals, of two arrises each, 1125.5 long; their
    facets lean by little more than a degree."""
    face = look_at_part(FRONT, PART_FACE)
    run = face.segments[face.visible][:, 2:] - face.segments[face.visible][:, :2]
    slanting = run[(np.abs(run) > 1.0).all(axis=1)]
    assert np.hypot(*slanting.T).tolist() == pytest.approx([math.hypot(1096.0, 256.0)] * 2)
