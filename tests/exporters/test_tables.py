"""The cut list, read back by the csv module."""

from __future__ import annotations

import csv
import io
from dataclasses import replace

import pytest

from exporters.tables import COLUMNS, cut_list_bytes
from geometry.bench.bench import Bench
from geometry.cuts.trim import Trim
from geometry.design.part import Part
from shared.units import SHOWN_IN16, SHOWN_MM, Shown
from shared.words import Words


def rows_of(
    parts: tuple[Part, ...], shown: Shown = SHOWN_MM, words: Words = Words.BRITISH
) -> list[dict[str, str]]:
    data = cut_list_bytes(parts, shown, words)
    return list(csv.DictReader(io.StringIO(data.decode("utf-8"), newline="")))


def test_one_row_a_shape_with_all_its_names(bench: Bench) -> None:
    rows = rows_of(bench.parts)
    assert sum(int(row["Quantity"]) for row in rows) == len(bench.parts)
    names = [name for row in rows for name in row["Names"].split("; ")]
    assert names == [part.name for part in bench.parts]
    (legs,) = [row for row in rows if row["Names"].startswith("leg")]
    assert legs["Quantity"] == "4"


def test_sizes_by_hand(bench: Bench) -> None:
    """A partition is inside height + two housing depths: 300 - 2 x 20 + 2 x 7 = 274."""
    row = next(row for row in rows_of(bench.parts) if row["Names"] == "partition_1")
    assert row["Finished length"] == "274 mm"
    assert row["Finished length mm"] == "274"
    assert row["Blank thickness mm"] == "20"
    assert row["Material"] == "white oak"
    assert row["Grain"] == "along the length"


def test_inches_stand_beside_exact_millimetres(leg: Part, plain: Part) -> None:
    """76.2 mm is 3 in and 38.1 mm 1 1/2 in exactly; 450 mm is 17.717 in, nearest 17 11/16."""
    row, other = rows_of((leg, plain), SHOWN_IN16)
    assert row["Finished width"] == "3 in"
    assert row["Finished thickness"] == "1 ½ in"
    assert row["Finished length"] == "≈ 17 ¹¹⁄₁₆ in"
    assert row["Finished length mm"] == "450"
    assert other["Blank thickness"] == "≈ ¹³⁄₁₆ in"


def test_numbers_are_exact_to_a_ten_thousandth(bench: Bench) -> None:
    for row, group in zip(rows_of(bench.parts), _groups(bench), strict=True):
        assert float(row["Blank length mm"]) == pytest.approx(
            group.shape.blank.length, abs=0.5000001e-4
        )


def _groups(bench: Bench) -> list[Part]:
    return [part for part in bench.parts if part.name not in _LATER_LEGS]


_LATER_LEGS = {"leg_back_right", "leg_front_left", "leg_front_right"}


def test_what_is_left_proud_is_said(stretcher: Part) -> None:
    (row,) = rows_of((replace(stretcher, allowance=6.0),))
    assert "6 mm left proud" in row["Notes"]


def test_final_size_stands_beside_cut_size(plain: Part) -> None:
    """300 x 200 with 3 left on each edge: 294 x 194 when fitted."""
    shape = replace(plain.shape, cuts=(Trim(3.0, 297.0, 3.0, 197.0),))
    (row,) = rows_of((replace(plain, shape=shape, allowance=6.0, allowance_across=6.0),))
    assert (row["Blank length mm"], row["Blank width mm"]) == ("300", "200")
    assert (row["Finished length mm"], row["Finished width mm"]) == ("294", "194")
    assert "6 mm left on the length and 6 mm on the width" in row["Notes"]


@pytest.mark.parametrize("start", ["=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1"])
def test_no_cell_is_a_formula(plain: Part, start: str) -> None:
    """What a spreadsheet evaluates: OWASP, 'CSV injection', from memory."""
    (row,) = rows_of((replace(plain, title=start, notes=(start, 'quote " and, comma')),))
    assert all(not cell.startswith(tuple("=+-@\t\r")) for cell in row.values())
    assert start in row["Piece"]
    assert row["Notes"].endswith('quote " and, comma')


def test_the_form_of_the_file(bench: Bench) -> None:
    """RFC 4180: CRLF line ends, one header line, equal numbers of fields."""
    data = cut_list_bytes(bench.parts, SHOWN_MM, Words.BRITISH)
    assert data.count(b"\r\n") == data.count(b"\n")
    lines = list(csv.reader(io.StringIO(data.decode("utf-8"), newline="")))
    assert tuple(lines[0]) == COLUMNS
    assert {len(line) for line in lines} == {len(COLUMNS)}
    assert not data.startswith(b"\xef\xbb\xbf")
    assert data == cut_list_bytes(bench.parts, SHOWN_MM, Words.BRITISH)


def test_american_words(plain: Part) -> None:
    (row,) = rows_of((replace(plain, title="Mitred rebate"),), words=Words.AMERICAN)
    assert row["Piece"] == "Mitered rabbet"
