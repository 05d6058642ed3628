"""Reading lengths, angles and counts: by hand, by law, and against hostile text."""

from __future__ import annotations

import math
import time

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shared.errors import UnreadableValue
from shared.units import (
    LONGEST_MM,
    SHOWN_IN16,
    SHOWN_IN32,
    SHOWN_IN64,
    SHOWN_MM,
    Shown,
    format_angle,
    format_length,
    read_angle,
    read_count,
    read_length,
)

SHOWNS = (SHOWN_MM, SHOWN_IN16, SHOWN_IN32, SHOWN_IN64)
any_shown = st.sampled_from(SHOWNS)
lengths = st.floats(0.0, 10_000.0)

# Worked by hand with 1 in = 25.4 mm and 1 ft = 12 in (International Yard and Pound agreement).
IN_EITHER_UNIT = (
    ("36 1/2", 927.1),
    ("36-1/2", 927.1),
    ("36½", 927.1),
    ("36 ½", 927.1),
    ("36 1/2 in", 927.1),
    ('36 1/2"', 927.1),
    ("36 1/2″", 927.1),
    ("36 1/2''", 927.1),
    ("36.5 in", 927.1),
    ("36.5in.", 927.1),
    ("36,5 inches", 927.1),
    ("36.5 INCH", 927.1),
    ("3' 1/2\"", 927.1),
    ("3 ft 1/2 in", 927.1),
    ("3' 0 1/2", 927.1),
    ("3′ ½″", 927.1),
    ("3'-0 1/2\"", 927.1),
    ("3 feet 0.5 inch", 927.1),
    ("3.5'", 1066.8),
    ("6 ft", 1828.8),
    ("927 mm", 927.0),
    ("92.7 cm", 927.0),
    ("92,7 cm", 927.0),
    ("0.927 m", 927.0),
    ("927 millimetres", 927.0),
    ("927 Millimeters", 927.0),
    ("1 metre", 1000.0),
    ("  927   mm  ", 927.0),
    ("927\u00a0mm", 927.0),
    ("1/2 m", 500.0),
    ("1/2", 12.7),
    ("5/8", 15.875),
    ("⅝", 15.875),
    ("¹¹⁄₁₆", 17.4625),
    ("11⁄16", 17.4625),
    ("1 ³⁄₁₆", 30.1625),
    ("19/16", 30.1625),
    (".5 in", 12.7),
    ("0,125 in", 3.175),
    ("0 mm", 0.0),
)


@pytest.mark.parametrize("shown", SHOWNS, ids=str)
@pytest.mark.parametrize(("length_text", "mm"), IN_EITHER_UNIT)
def test_text_that_names_its_unit_reads_alike_whichever_unit_is_shown(
    length_text: str, mm: float, shown: Shown
) -> None:
    assert read_length(length_text, shown) == pytest.approx(mm, abs=1e-9)


@pytest.mark.parametrize("number", ["36", "36.5", "36,5", "36.", ".5", "0"])
def test_a_bare_number_is_in_the_unit_shown(number: str) -> None:
    value = float(number.replace(",", "."))
    assert read_length(number, SHOWN_MM) == pytest.approx(value)
    assert read_length(number, SHOWN_IN16) == pytest.approx(value * 25.4)


@given(lengths, any_shown)
def test_what_is_printed_reads_back_within_half_a_printed_step(mm: float, shown: Shown) -> None:
    back = read_length(format_length(mm, shown), shown)
    assert abs(back - mm) <= shown.printed_step / 2 + 1e-5
    assert format_length(back, shown) == format_length(mm, shown)


@given(lengths, any_shown, any_shown)
def test_what_is_printed_with_its_unit_reads_back_in_any_unit(
    mm: float, printed: Shown, shown: Shown
) -> None:
    back = read_length(format_length(mm, printed, with_unit=True), shown)
    assert abs(back - mm) <= printed.printed_step / 2 + 1e-5


@given(st.floats(-360.0, 360.0))
def test_a_printed_angle_reads_back_within_half_a_hundredth(deg: float) -> None:
    assert abs(read_angle(format_angle(deg)) - deg) <= 0.005 + 1e-6


HOSTILE = (
    *("", " ", "\t\n", "nan", "NaN mm", "inf", "-inf", "Infinity", "1e999", "1e3", "0x10", "1_000"),
    *("9" * 39, "9" * 400, "9" * 100_000, "1" + " " * 100_000 + "mm", "1/" * 50_000),
    *("-5", "−5 mm", "-0", "+5", "--5", "5 5", "5 mm mm", "mm", '"', "'", "1/", "/2", "1//2", "½½"),
    *("3/0", "0/0", "5 9/4", "1 1/1", "3' 6 mm", "3' 6'", "3 ft 2 ft", "1.2.3", "1,2,3", "1.5 1/2"),
    *("٣ mm", "३६", "３６", "²", "Ⅷ", "x²", "3²", "1\x00", "\ud800", "12 K", "5 ſt", "five", "{}"),
    *("1 km", "1001 m", "3 lb", "15°", "=1+1", "__import__('os')", "%s", "\u202e36"),
)


@pytest.mark.parametrize("text", HOSTILE, ids=lambda text: ascii(text[:20]))
@pytest.mark.parametrize("shown", [SHOWN_MM, SHOWN_IN16], ids=["mm", "in"])
def test_hostile_text_is_no_length_and_is_refused_at_once(text: str, shown: Shown) -> None:
    start = time.process_time()
    with pytest.raises(UnreadableValue) as caught:
        read_length(text, shown)
    assert time.process_time() - start < 5.0  # read over again from each character: minutes
    assert caught.value.remedy
    assert len(str(caught.value)) < 200
    assert str(caught.value).isprintable()


@given(st.text("0123456789 -/.,'\"½inmft", max_size=60), any_shown)
def test_any_text_is_a_finite_length_or_refused(text: str, shown: Shown) -> None:
    try:
        mm = read_length(text, shown)
    except UnreadableValue:
        return
    assert math.isfinite(mm)
    assert 0.0 <= mm <= LONGEST_MM


def test_a_comma_that_could_set_off_thousands_is_not_guessed_at() -> None:
    with pytest.raises(UnreadableValue, match=r"1200 or 1\.200"):
        read_length("1,200 mm", SHOWN_MM)


@pytest.mark.parametrize(
    ("text", "deg"),
    [
        ("15", 15.0),
        ("15°", 15.0),
        ("15 deg", 15.0),
        ("14.5 degrees", 14.5),
        ("14,5", 14.5),
        ("7 1/2", 7.5),
        ("7½°", 7.5),
        ("14° 30'", 14.5),
        ("14° 15′", 14.25),
        ("-15", -15.0),
        ("−15°", -15.0),
        ("0", 0.0),
    ],
)
def test_angles_by_hand(text: str, deg: float) -> None:
    assert read_angle(text) == pytest.approx(deg, abs=1e-12)


@pytest.mark.parametrize(
    "text",
    ["", "nan", "inf", "1e999", "9" * 30, "361", "14° 60'", "٣", "15 mm", "15 30'", "°", "--5"],
)
def test_what_is_no_angle(text: str) -> None:
    with pytest.raises(UnreadableValue) as caught:
        read_angle(text)
    assert caught.value.remedy


def test_minus_nothing_is_nothing() -> None:
    assert math.copysign(1.0, read_angle("-0")) == 1.0


@pytest.mark.parametrize(("text", "number"), [("3", 3), (" 12 ", 12), ("0", 0), ("9999", 9999)])
def test_counts_by_hand(text: str, number: int) -> None:
    assert read_count(text) == number


@pytest.mark.parametrize("text", ["", "3.5", "-1", "three", "1e3", "9" * 50, "٣", "3 mm", "½"])
def test_what_is_no_count(text: str) -> None:
    with pytest.raises(UnreadableValue):
        read_count(text)
