"""Text widths, held against fontTools reading the same font files."""

from __future__ import annotations

from functools import lru_cache
from typing import Any

import pytest
from fontTools.pens.boundsPen import BoundsPen
from fontTools.ttLib import TTFont
from hypothesis import given
from hypothesis import strategies as st

from shared.lettering import (
    ASCENT_RATIO,
    CAP_HEIGHT_RATIO,
    DESCENT_RATIO,
    em_size,
    font_name,
    font_path,
    text_width,
)
from shared.units import DENOMINATORS
from shared.units.fractions import fraction_glyphs
from tests.glyphs import missing_glyphs

PRINTED = (
    "".join(chr(code) for code in range(32, 127))
    + "°×÷±−–—…‘’“”′″⌀Ø≤≥≈·½"
    + "".join(fraction_glyphs(over, 64) for over in range(1, 64))
)


@lru_cache
def judge(bold: bool) -> TTFont:
    return TTFont(font_path(bold), lazy=False)


def bounds(character: str, bold: bool) -> tuple[float, float, float, float]:
    font = judge(bold)
    glyphs: Any = font.getGlyphSet()
    pen = BoundsPen(glyphs)
    glyphs[font.getBestCmap()[ord(character)]].draw(pen)
    return pen.bounds or (0.0, 0.0, 0.0, 0.0)


both = pytest.mark.parametrize("bold", [False, True], ids=["regular", "bold"])


@both
def test_every_character_of_the_font_is_as_wide_as_the_judge_says(bold: bool) -> None:
    font = judge(bold)
    for code, glyph in font.getBestCmap().items():
        expected = font["hmtx"][glyph][0] / font["head"].unitsPerEm
        assert text_width(chr(code), CAP_HEIGHT_RATIO, bold) == pytest.approx(expected, abs=1e-9)


@given(st.text(PRINTED, max_size=40), st.floats(0.5, 30.0), st.booleans())
def test_a_line_of_text_is_the_sum_of_its_advances(text: str, height: float, bold: bool) -> None:
    font = judge(bold)
    advances = sum(font["hmtx"][font.getBestCmap()[ord(character)]][0] for character in text)
    em = height / (1493 / 2048)
    assert text_width(text, height, bold) == pytest.approx(advances / 2048 * em, rel=1e-9)


@both
def test_capitals_are_as_high_as_they_are_said_to_be(bold: bool) -> None:
    _, low, _, high = bounds("H", bold)
    assert low == 0
    assert high / judge(bold)["head"].unitsPerEm == pytest.approx(CAP_HEIGHT_RATIO, abs=1e-12)
    assert em_size(2.5) * CAP_HEIGHT_RATIO == pytest.approx(2.5)


@both
def test_no_ink_of_what_is_printed_leaves_the_line(bold: bool) -> None:
    cap = bounds("H", bold)[3]
    assert max(bounds(character, bold)[3] for character in PRINTED) / cap <= ASCENT_RATIO
    assert -min(bounds(character, bold)[1] for character in PRINTED) / cap <= DESCENT_RATIO


@both
def test_figures_are_tabular(bold: bool) -> None:
    assert len({text_width(figure, 2.5, bold) for figure in "0123456789"}) == 1
    assert len({text_width(figure, 2.5, bold) for figure in "⁰¹²³⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉"}) == 1


@both
def test_every_length_angle_and_sign_has_its_glyphs(bold: bool) -> None:
    fractions = (fraction_glyphs(o, u) for u in DENOMINATORS for o in range(1, u))
    assert missing_glyphs("".join(fractions) + PRINTED, bold) == ""


@both
def test_what_the_font_lacks_is_named_once_and_is_as_wide_as_the_empty_box(bold: bool) -> None:
    assert missing_glyphs("a\U0001f6cbb漢\U0001f6cb", bold) == "\U0001f6cb漢"
    box = judge(bold)["hmtx"][".notdef"][0] / 2048
    assert text_width("漢", CAP_HEIGHT_RATIO, bold) == pytest.approx(box)


@both
def test_the_font_may_be_embedded_and_has_its_licence_beside_it(bold: bool) -> None:
    font = judge(bold)
    assert font["OS/2"].fsType == 0  # installable embedding, no restriction
    assert font["name"].getDebugName(6) == font_name(bold)
    licence = next(font_path(bold).parent.glob("*LICENCE*")).read_text("utf-8")
    assert "Bitstream Vera Fonts Copyright" in licence
    assert "Permission is hereby granted" in licence
