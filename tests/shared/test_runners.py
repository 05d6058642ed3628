"""The table of runners, and a maker's own rows read from text."""

from __future__ import annotations

from dataclasses import fields

import pytest

from shared.errors import UnreadableValue
from shared.runner_rows import read_runner_rows
from shared.runners import RUNNER_KINDS, RUNNERS, UNDER, WOODEN, Runner, generic

HEAD = "name,kind,side,below,above,shortest,longest"


def test_every_kind_has_a_generic_row_that_says_what_it_is() -> None:
    assert {row.kind for row in RUNNERS} == set(RUNNER_KINDS)
    assert len({row.name for row in RUNNERS}) == len(RUNNERS)
    for row in RUNNERS:
        assert "check your runner's sheet" in row.source
        assert 0.0 < row.shortest < row.longest
        assert (row.notch_width > 0.0) == (row.kind == UNDER)
        assert (row.strip_width > row.side) == (row.kind == WOODEN)
    assert [generic(kind).kind for kind in RUNNER_KINDS] == list(RUNNER_KINDS)


def test_a_table_of_all_columns_reads_back_the_same_rows() -> None:
    names = [field.name for field in fields(Runner)]
    lines = [",".join(names)]
    lines += [",".join(f'"{getattr(row, name)}"' for name in names) for row in RUNNERS]
    assert read_runner_rows("\n".join(lines)) == RUNNERS


def test_lengths_in_any_unit_and_empty_cells() -> None:
    """1/2 in = 12.7 mm, 30 cm = 300 mm; what is not said is nothing."""
    text = f"# ours\n{HEAD},step,load\n\nshop,Side-Mounted,1/2 in,6,6,30 cm,22 in,5 cm,\n"
    (row,) = read_runner_rows("\ufeff" + text)
    assert (row.kind, row.side, row.shortest, row.step) == ("side-mounted", 12.7, 300.0, 50.0)
    assert row.longest == pytest.approx(558.8)
    assert (row.load, row.notch_width, row.side_to) == (0.0, 0.0, "outside")
    assert row.source == "the maker's own table"


@pytest.mark.parametrize(
    ("text", "where", "what"),
    [
        ("", "", "empty"),
        (HEAD + '\n"' + "x" * 200_000, "", "no table"),
        ("name,kind\n", "line 1", "column side is missing"),
        (f"{HEAD},colour\n", "line 1", "no column called 'colour'"),
        (f"{HEAD},side\n", "line 1", "side is there twice"),
        (f"{HEAD}\na,side-mounted,12,6,6,250\n", "line 2", "6 cells under 7 columns"),
        (f"{HEAD}\na,hinged,12,6,6,250,600\n", "line 2, kind", "'hinged' is not one"),
        (f"{HEAD}\na,side-mounted,wide,6,6,250,600\n", "line 2, side", "'wide' cannot be read"),
        (f"{HEAD}\na,side-mounted,,6,6,250,600\n", "line 2, side", "empty"),
        (f"{HEAD}\n,side-mounted,12,6,6,250,600\n", "line 2, name", "name"),
        (f"{HEAD}\na,side-mounted,12,6,6,600,250\n", "line 2, shortest", "600 mm"),
        (f"{HEAD},recess\na,side-mounted,12,6,6,250,600,3\n", "line 2, recess", "Only an under"),
        (f"{HEAD},load\na,side-mounted,12,6,6,250,600,-4\n", "line 2, load", "no possible load"),
        (f"{HEAD},load\na,side-mounted,12,6,6,250,600,nan\n", "line 2, load", "no possible load"),
        (f"{HEAD}\na,wooden,1,6,6,250,600\n", "line 2, strip_width", "carries nothing"),
        (f"{HEAD}\na,side-mounted,1,6,6,2,6\n\na,side-mounted,1,6,6,2,6\n", "line 4", "line 2"),
    ],
)
def test_a_bad_table_is_refused_with_its_place(text: str, where: str, what: str) -> None:
    with pytest.raises(UnreadableValue) as caught:
        read_runner_rows(text)
    assert caught.value.where == where
    assert what in caught.value.what
