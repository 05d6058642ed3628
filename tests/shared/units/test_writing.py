"""Writing lengths, angles and weights: by hand, and against exact fractions."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shared.units import (
    DENOMINATORS,
    SHOWN_IN16,
    SHOWN_IN32,
    SHOWN_IN64,
    SHOWN_MM,
    Shown,
    angle_mark,
    format_angle,
    format_length,
    format_weight,
    in_units,
    length_mark,
    printed_error,
    prints_exactly,
    read_length,
)
from shared.units.fractions import fraction_glyphs, plain_fractions

lengths = st.floats(-10_000.0, 10_000.0)
any_shown = st.sampled_from((SHOWN_MM, SHOWN_IN16, SHOWN_IN32, SHOWN_IN64))


@pytest.mark.parametrize(
    ("over", "under", "glyphs"),
    [
        (1, 2, "½"),
        (8, 16, "½"),
        (1, 4, "¼"),
        (48, 64, "¾"),
        (1, 8, "⅛"),
        (3, 8, "⅜"),
        (10, 16, "⅝"),
        (7, 8, "⅞"),
        (3, 16, "³⁄₁₆"),
        (11, 16, "¹¹⁄₁₆"),
        (31, 32, "³¹⁄₃₂"),
        (63, 64, "⁶³⁄₆₄"),
    ],
)
def test_fractions_are_real_characters_in_lowest_terms(over: int, under: int, glyphs: str) -> None:
    assert fraction_glyphs(over, under) == glyphs


def test_every_division_of_a_rule_reads_back_exactly() -> None:
    for under in DENOMINATORS:
        for over in range(1, under):
            plain = plain_fractions(fraction_glyphs(over, under))
            assert Fraction(plain.strip()) == Fraction(over, under)


@pytest.mark.parametrize(
    ("inches", "shown", "text"),
    [
        (36.5, SHOWN_IN16, "36 ½"),
        (36.0, SHOWN_IN16, "36"),
        (0.6875, SHOWN_IN16, "¹¹⁄₁₆"),
        (35.999, SHOWN_IN16, "36"),  # carries
        (35.999, SHOWN_IN64, "36"),
        (0.9999, SHOWN_IN64, "1"),
        (11.97, SHOWN_IN16, "12"),
        (11.96, SHOWN_IN16, "11 ¹⁵⁄₁₆"),
        (11.96, SHOWN_IN64, "11 ⁶¹⁄₆₄"),
        (1 / 32, SHOWN_IN16, "¹⁄₁₆"),  # half a step, away from zero
        (1 / 32, SHOWN_IN32, "¹⁄₃₂"),
        (0.0, SHOWN_IN16, "0"),
        (-0.0, SHOWN_IN16, "0"),
        (-0.0001, SHOWN_IN16, "0"),
        (0.008, SHOWN_IN16, "0.008"),  # a fit: too small for the rule
        (-0.031, SHOWN_IN16, "−0.031"),
        (-0.5, SHOWN_IN16, "−½"),
        (-2.5, SHOWN_IN16, "−2 ½"),
        (100.25, SHOWN_IN16, "100 ¼"),  # no feet unless asked for
    ],
)
def test_inches_by_hand(inches: float, shown: Shown, text: str) -> None:
    assert format_length(inches * 25.4, shown) == text
    assert format_length(inches * 25.4, shown, with_unit=True) == text + " in"


@pytest.mark.parametrize(
    ("mm", "text"),
    [
        (927.0, "927"),
        (927.1, "927.1"),
        (927.04, "927"),
        (927.96, "928"),
        (12.25, "12.3"),
        (12.2499999999, "12.3"),  # what 12.25 may look like after some arithmetic
        (-12.25, "−12.3"),
        (0.15, "0.15"),
        (0.1, "0.1"),
        (0.004, "0"),
        (-0.004, "0"),
        (-0.0, "0"),
        (0.999, "1"),
        (1.04, "1"),
        (1000.0, "1000"),
    ],
)
def test_millimetres_by_hand(mm: float, text: str) -> None:
    assert format_length(mm, SHOWN_MM) == text
    assert format_length(mm, SHOWN_MM, with_unit=True) == text + " mm"


@given(lengths, st.sampled_from((SHOWN_IN16, SHOWN_IN32, SHOWN_IN64)))
def test_inches_are_the_nearest_division_by_exact_arithmetic(mm: float, shown: Shown) -> None:
    printed = sum(
        (Fraction(piece) for piece in plain_fractions(format_length(abs(mm), shown)).split()),
        Fraction(0),
    )
    true = Fraction(abs(mm)) * 5 / 127  # 25.4 is 127/5
    if true < Fraction(1, 2 * shown.denominator) - Fraction(1, 10**5):
        assert abs(printed - true) <= Fraction(1, 2000) + Fraction(1, 10**8)  # thousandths
        return
    assert printed.denominator in (1, 2, 4, 8, 16, 32, 64)
    assert printed.denominator <= shown.denominator
    assert abs(printed - true) <= Fraction(1, 2 * shown.denominator) + Fraction(1, 10**6)


@given(lengths, any_shown)
def test_printed_error_is_the_difference_of_printed_and_true(mm: float, shown: Shown) -> None:
    error = printed_error(mm, shown)
    assert abs(error) <= shown.printed_step / 2 + 1e-5
    assert format_length(mm + error, shown) == format_length(mm, shown)
    assert abs(printed_error(mm + error, shown)) < 1e-6  # the printed size prints exactly


def test_a_maker_is_told_when_the_fraction_is_not_exact() -> None:
    assert prints_exactly(927.1, SHOWN_IN16)
    assert not prints_exactly(927.0, SHOWN_IN16)  # prints 36 1/2, which is 927.1
    assert printed_error(927.0, SHOWN_IN16) == pytest.approx(0.1)
    assert prints_exactly(927.04, SHOWN_MM)
    assert prints_exactly(25.4 * 3 / 64, SHOWN_IN64)
    assert not prints_exactly(25.4 * 3 / 64, SHOWN_IN16)


@pytest.mark.parametrize(
    ("deg", "text"),
    [
        (15.0, "15°"),
        (14.0362, "14.04°"),
        (7.5, "7.5°"),
        (0.004, "0°"),
        (-0.001, "0°"),
        (-5.25, "−5.25°"),
        (89.999, "90°"),
    ],
)
def test_angles_by_hand(deg: float, text: str) -> None:
    assert format_angle(deg) == text


def test_weights_by_hand() -> None:
    assert format_weight(12.34, SHOWN_MM) == "12.3 kg"
    assert format_weight(10.0, SHOWN_IN16) == "22 lb"  # 22.046
    assert format_weight(1.0, SHOWN_IN16) == "2.2 lb"


@pytest.mark.parametrize(
    ("text", "shown", "rendered"),
    [
        ("The cutter is {12.7 mm} wide.", SHOWN_IN16, "The cutter is ½ in wide."),
        ("The cutter is {12.7 mm} wide.", SHOWN_MM, "The cutter is 12.7 mm wide."),
        ("{927.1 mm} and {15 deg}", SHOWN_IN16, "36 ½ in and 15°"),
        ("{-5 mm}, {1e-05 mm}, {14.0362 deg}", SHOWN_MM, "−5 mm, 0 mm, 14.04°"),
        ("{600 N}, {37.5:1 N m}, {181.44:0 kg}", SHOWN_MM, "600 N, 37.5 N m, 181 kg"),
        ("{600 N}, {37.5:1 N m}, {181.44:0 kg}", SHOWN_IN16, "135 lb, 27.7 ft-lb, 400 lb"),
        ("{20 °C}, {330 kg/m³}, {16.387064 cm³}", SHOWN_IN16, "68 °F, 21 lb/ft³, 1 in³"),
        ("no marks", SHOWN_MM, "no marks"),
        ("{nan mm} {1e999 mm} {x mm} {5 oz} {5mm} {}", SHOWN_MM, None),
    ],
)
def test_sentences_by_hand(text: str, shown: Shown, rendered: str | None) -> None:
    assert in_units(text, shown) == (text if rendered is None else rendered)


@given(lengths, st.floats(-360.0, 360.0), any_shown)
def test_marks_of_the_engine_are_rendered(mm: float, deg: float, shown: Shown) -> None:
    sentence = in_units(f"{length_mark(mm)} at {angle_mark(deg)}", shown)
    assert sentence == f"{format_length(mm, shown, with_unit=True)} at {format_angle(deg)}"


def test_a_drag_snaps_to_a_millimetre_or_to_the_finest_fraction_shown() -> None:
    assert SHOWN_MM.drag_step == 1.0
    assert SHOWN_IN16.drag_step == pytest.approx(1.5875)
    assert SHOWN_IN64.drag_step == pytest.approx(0.396875)


def test_inches_too_small_for_the_rule_print_in_thousandths():
    """0.2 mm / 25.4 = 0.00787 in; 0.79 mm is nearer to 1/32 in (0.794 mm) than to nothing."""
    assert format_length(0.2, Shown("in", 16)) == "0.008"
    assert format_length(-0.2, Shown("in", 16)) == "−0.008"
    assert format_length(0.0, Shown("in", 16)) == "0"
    assert format_length(1e-9, Shown("in", 16)) == "0"
    assert format_length(0.79, Shown("in", 32)) == "¹⁄₃₂"
    assert printed_error(0.2, Shown("in", 16)) == pytest.approx(0.008 * 25.4 - 0.2)
    assert read_length("0.008", Shown("in", 16)) == pytest.approx(0.2032)
