"""Line widths and dashes against the ISO 128 series."""

from __future__ import annotations

import re

import pytest

from geometry.drawing.marks import Role
from shared.line_styles import LETTERING_HEIGHTS, LINE_STYLES, NARROW, WIDE


def test_every_role_of_a_mark_has_a_style_and_no_style_is_left_over() -> None:
    assert set(LINE_STYLES) == {role.value for role in Role}


def test_widths_are_the_series_of_the_standard() -> None:
    # ISO 128-20:1996 clause 4, quoted by a drawing teacher's page (2009)
    widths = (0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1.0, 1.4, 2.0)
    assert {style.width for style in LINE_STYLES.values()} <= set(widths)


def test_wide_is_twice_narrow() -> None:
    # ISO 128-24, quoted by a drawing teacher's page
    assert WIDE == 2 * NARROW
    assert LINE_STYLES["visible"].width == WIDE
    for role in ("hidden", "centre", "dimension", "derived", "trim"):
        assert LINE_STYLES[role].width == NARROW


@pytest.mark.parametrize(
    ("role", "line_type", "dashes"),
    [
        # in line widths, ISO 128-20 table 3 from memory: dash 12, long dash 24, gap 3, dot 0.5
        ("visible", "01.2", ()),
        ("dimension", "01.1", ()),
        ("hidden", "02.1", (12, 3)),
        ("centre", "04.1", (24, 3, 0.5, 3)),
        ("trim", "05.1", (24, 3, 0.5, 3, 0.5, 3)),
    ],
)
def test_dashes_are_counted_in_line_widths(
    role: str, line_type: str, dashes: tuple[float, ...]
) -> None:
    style = LINE_STYLES[role]
    assert style.line_type == line_type
    assert [dash / style.width for dash in style.dashes] == pytest.approx(dashes)


def test_a_hidden_line_by_hand() -> None:
    assert LINE_STYLES["hidden"].dashes == pytest.approx((3.0, 0.75))
    assert LINE_STYLES["hidden"].period == pytest.approx(3.75)


def test_dash_patterns_are_pairs_of_pen_down_and_pen_up() -> None:
    for style in LINE_STYLES.values():
        assert len(style.dashes) % 2 == 0
        assert all(dash > 0 for dash in style.dashes)


def test_layer_names_fit_the_oldest_dxf_and_are_all_different() -> None:
    # R12: at most 31 of A-Z, 0-9, $, _ and - (documentation of ezdxf's r12strict add-on)
    layers = [style.layer for style in LINE_STYLES.values()]
    assert all(re.fullmatch(r"[A-Z0-9$_-]{1,31}", layer) for layer in layers)
    assert len(set(layers)) == len(layers)


def test_lettering_is_ten_times_as_high_as_its_line_is_wide() -> None:
    # ISO 3098-0:1997 type B, d = h/10, as a page that tabulates it prints it
    assert LETTERING_HEIGHTS == (1.8, 2.5, 3.5, 5.0, 7.0, 10.0, 14.0, 20.0)
    for role in ("text", "title"):
        assert LINE_STYLES[role].width * 10 in LETTERING_HEIGHTS
