"""Sheets, scales and title block fields against the standards."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shared.paper import PAPERS, SCALES, TITLE_BLOCK_WIDTH, largest_scale


@pytest.mark.parametrize(
    ("name", "width", "height"),
    [
        ("A4", 297.0, 210.0),  # ISO 216, read at tasstudent.com/2019/05/30/drawing-sheet-sizes
        ("A3", 420.0, 297.0),
        ("Letter", 11 * 25.4, 8.5 * 25.4),  # ASME Y14.1 size A, en.wikipedia.org
        ("Tabloid", 17 * 25.4, 11 * 25.4),  # size B
    ],
)
def test_trimmed_sizes(name: str, width: float, height: float) -> None:
    paper = PAPERS[name]
    assert (paper.width, paper.height) == pytest.approx((width, height))


def test_a_sizes_halve_a_square_metre_at_one_to_root_two() -> None:
    # the definition in ISO 216; sizes are rounded to whole millimetres
    assert PAPERS["A4"].width == PAPERS["A3"].height
    for name, halvings in (("A4", 4), ("A3", 3)):
        paper = PAPERS[name]
        assert paper.width / paper.height == pytest.approx(math.sqrt(2), abs=0.01)
        assert paper.width * paper.height == pytest.approx(1e6 / 2**halvings, rel=0.003)


def test_borders_leave_the_drawing_space_of_the_standard() -> None:
    # ISO 5457:1999 from memory: A3 has a drawing space of 390 by 277
    a3 = PAPERS["A3"]
    assert a3.width - a3.filing - a3.border == 390.0
    assert a3.height - 2 * a3.border == 277.0
    for paper in PAPERS.values():
        assert paper.filing == 20.0
        assert paper.border == 10.0
        assert paper.width - paper.filing - paper.border >= TITLE_BLOCK_WIDTH


def test_scales_are_the_steps_of_the_standard() -> None:
    # ISO 5455:1979 from memory; 1:4 and 1:8 are inch architects' scales and not among them
    assert [scale.text for scale in SCALES] == [
        *("50:1", "20:1", "10:1", "5:1", "2:1", "1:1"),
        *("1:2", "1:5", "1:10", "1:20", "1:50", "1:100"),
    ]
    assert all(a.factor > b.factor for a, b in pairwise(SCALES))


@given(st.floats(0.01, 60.0))
def test_the_largest_scale_fits_and_the_next_larger_does_not(factor: float) -> None:
    chosen = largest_scale(factor)
    assert chosen.factor <= factor
    larger = [scale for scale in SCALES if scale.factor > chosen.factor]
    assert all(scale.factor > factor for scale in larger)


def test_a_bench_on_a4_by_hand() -> None:
    # 1600 mm in 250 mm of paper: 1:6.4, so the standard step is 1:10
    assert largest_scale(250 / 1600).text == "1:10"
    assert largest_scale(1.0).text == "1:1"
    assert largest_scale(1e-9).text == "1:100"  # nothing smaller to offer
