"""Spoiled benches for the check of sizes as they are read off the drawings.

What a maker reads is taken from the printed text, read back; amounts are worked by hand in parts of
an inch.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest

from exporters.project_file import load
from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.checks.all_checks import findings, judged
from geometry.design.finding import Finding, Level
from geometry.design.judging import AS_FOUND
from geometry.design.parameter import Value
from geometry.design.spec import BenchSpec
from geometry.dimensioning.sums import as_read, sums
from shared.units import (
    MM_PER_INCH,
    SHOWN_IN16,
    SHOWN_IN32,
    SHOWN_IN64,
    SHOWN_MM,
    Shown,
    format_length,
    in_units,
    read_length,
)

SAMPLES = sorted((Path(__file__).parents[3] / "sample_projects").glob("*.settle"))
SIXTEENTH = MM_PER_INCH / 16.0


def _found(spec: BenchSpec, shown: Shown) -> list[Finding]:
    found = judged(build(spec), AS_FOUND, shown=shown)
    return [one for one in found if one.check.startswith("sum_of_")]


def _in_inches() -> BenchSpec:
    """A bench with two mitred ends and a partition, drawn in whole sixteenths throughout.

    Length 48, boards and partition 3/4, case 12 high, 6 up: openings of 22 7/8 each.
    """
    inches: dict[str, Value] = {
        "right_end": "mitred",
        "flare": 0.0,
        "length": 48.0 * MM_PER_INCH,
        "board_thickness": 0.75 * MM_PER_INCH,
        "partition_thickness": 0.75 * MM_PER_INCH,
        "case_height": 12.0 * MM_PER_INCH,
        "base_height": 6.0 * MM_PER_INCH,
        "housing_depth": 0.25 * MM_PER_INCH,
        "partition_1": 24.0 * MM_PER_INCH,
    }
    return set_values(default_spec(), inches)


def test_a_bench_in_whole_sixteenths_adds_up() -> None:
    assert _found(_in_inches(), SHOWN_IN16) == []


def test_a_partition_half_a_sixteenth_aside_is_caught_and_mended() -> None:
    """22 29/32 and 22 27/32 are written 22 15/16 and 22 7/8: a sixteenth more than 48 in all."""
    spoiled = set_values(_in_inches(), {"partition_1": (24.0 + 1.0 / 32.0) * MM_PER_INCH})
    (found,) = _found(spoiled, SHOWN_IN16)
    assert found.check == "sum_of_length"
    assert found.level is Level.THINK_AGAIN
    assert found.amount == pytest.approx(SIXTEENTH)
    assert "partition_1" in found.parts
    said = in_units(found.message, SHOWN_IN16)
    assert said.startswith(
        "As they are written, 3 × ¾ in + 22 ¹⁵⁄₁₆ in + 22 ⅞ in come to 48 ¹⁄₁₆ in, and the length "
        "is written 48 in: ¹⁄₁₆ in apart."
    )
    assert found.mend is not None
    assert _found(set_values(spoiled, dict(found.mend.values)), SHOWN_IN16) == []
    # Thirty-seconds show it as it is.
    assert _found(spoiled, SHOWN_IN32) == []


def test_what_is_good_in_millimetres_may_not_add_up_in_sixteenths() -> None:
    """Boards of 20 mm are 12.6 sixteenths: written 13; the case of 300 mm is 188.98: 189."""
    spec = default_spec()
    assert _found(spec, SHOWN_MM) == []
    found = {one.check: one for one in _found(spec, SHOWN_IN16)}
    high = found["sum_of_case_height"]
    # Inside, 260 mm are 163.78 sixteenths, written 164: 13 + 164 + 13 = 190, one more than 189.
    assert high.amount == pytest.approx(SIXTEENTH)
    assert Fraction(189, 16) == Fraction(11) + Fraction(13, 16)
    assert "11 ¹³⁄₁₆ in" in in_units(high.message, SHOWN_IN16)


def test_places_from_one_end_are_read_against_what_lies_between_them() -> None:
    """At 16 and 32 1/32 there are 15 9/32 between, written 15 5/16; 16 + 3/4 + 15 5/16 is 32 1/16,
    as the second place is written.  At 16 1/32 and 32 1/64 the places are written 16 1/16 and 32,
    and 15 15/64 between them 15 1/4: a sixteenth too much.
    """
    two = set_values(_in_inches(), {"partition_count": 2.0})

    def at(first: float, second: float) -> BenchSpec:
        places = {"partition_1": first * MM_PER_INCH, "partition_2": second * MM_PER_INCH}
        return set_values(two, dict(places))

    sound = _found(at(16.0, 32.0 + 1.0 / 32.0), SHOWN_IN16)
    assert "sum_of_partition_places" not in {one.check for one in sound}
    spec = at(16.0 + 1.0 / 32.0, 32.0 + 1.0 / 64.0)
    (found,) = (one for one in _found(spec, SHOWN_IN16) if one.check == "sum_of_partition_places")
    assert found.amount == pytest.approx(SIXTEENTH)
    assert found.parts == ("partition_1", "partition_2")
    assert found.mend is not None
    assert _found(set_values(spec, dict(found.mend.values)), SHOWN_IN16) == []


def test_three_equal_fronts_that_share_what_is_left_are_mended_by_the_height() -> None:
    """In the boat club three fronts of 92.667 mm share 286 less 4 gaps of 2 mm."""
    spec = load(SAMPLES[0].with_name("boat_club_bench.settle")).spec
    (found,) = (one for one in _found(spec, SHOWN_IN16) if one.check == "sum_of_front_heights_3")
    # 4 gaps of 1/16 (2 mm are 1.26) and 3 fronts of 58/16 (58.37) are 178/16; 286 mm are 180.16.
    assert found.amount == pytest.approx(2.0 * SIXTEENTH)
    assert set(found.parts) == {f"drawer_3_{k}_front" for k in (1, 2, 3)}
    assert found.mend is not None
    mended = set_values(spec, dict(found.mend.values))
    assert "sum_of_front_heights_3" not in {one.check for one in _found(mended, SHOWN_IN16)}


@pytest.mark.parametrize("shown", [SHOWN_MM, SHOWN_IN16, SHOWN_IN32, SHOWN_IN64])
@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_sums_are_true_and_read_as_the_printed_text_reads(path: Path, shown: Shown) -> None:
    for one in sums(build(load(path).spec)):
        assert sum(one.terms) == pytest.approx(one.total, abs=1e-6), one.name
        texts = [format_length(size, shown, with_unit=True) for size in (*one.terms, one.total)]
        sizes = [read_length(text, shown) for text in texts]
        read, total = as_read(one, shown)
        assert read == pytest.approx(sum(sizes[:-1]), abs=1e-6)
        assert total == pytest.approx(sizes[-1], abs=1e-6)
        # Set to whole steps, they add up however they are read.
        whole = one.whole(shown.printed_step)
        assert all(
            value
            == pytest.approx(round(value / shown.printed_step * 2.0) * shown.printed_step / 2.0)
            for value in whole.values()
        )


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_sound_samples_add_up_in_millimetres(path: Path) -> None:
    bench: Bench = build(load(path).spec)
    assert not [one for one in findings(bench) if one.check.startswith("sum_of_")]


def test_findings_in_another_unit_are_other_findings() -> None:
    bench = build(default_spec())
    assert findings(bench) != findings(replace(bench, shown=SHOWN_IN16))
