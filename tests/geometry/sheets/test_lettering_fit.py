"""Wrapping: nothing wider than it may be, and a size is never torn apart."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from geometry.sheets.lettering_fit import wrapped
from geometry.sheets.text_block import table
from shared.lettering import text_width

HEIGHT = 2.5


def test_a_whole_number_stays_with_its_fraction_and_its_unit():
    for text, size in (
        ("Partition 2: 2 ¹⁵⁄₁₆ in; Partition 3", "2 ¹⁵⁄₁₆ in;"),
        ("stop from the back edge 15 ½", "15 ½"),
        ("the back is 278 mm high", "278 mm"),
        ("on the middle; Partition 4: 18 mm", "Partition 4:"),
    ):
        lines = [wrapped(text, width / 2.0, HEIGHT) for width in range(10, 120)]
        assert all(any(size in line for line in found) for found in lines)
        assert len({len(found) for found in lines}) > 1


def test_a_word_that_is_no_unit_may_begin_a_line():
    narrow = text_width("cut 12", HEIGHT)
    assert wrapped("cut 12 into", narrow, HEIGHT) == ["cut 12", "into"]


@given(st.lists(st.text("abc½19 ", min_size=1), max_size=6).map(" ".join))
def test_wrapping_keeps_the_words(text):
    assert " ".join(wrapped(text, 20.0, HEIGHT)) == " ".join(text.split())


def test_a_column_holds_the_widest_size_in_one_line():
    for size in ("15 ⁷⁄₁₆", "93 ¹¹⁄₁₆", "2380.5", "1 ½"):
        block = table(("in", "Measures"), [(size, "Stop from the back edge")], 84.0, HEIGHT)
        assert size in [line.text for line in block.lines]


@given(st.lists(st.sampled_from(["Mortise", "width", "from", "face", "edge"]), min_size=2))
def test_bold_words_stay_in_their_column(words):
    """Bold letters are wider: measured as thin ones a head runs over its cell's rule."""
    width = 30.0
    for line in wrapped(" ".join(words), width, HEIGHT, bold=True):
        assert text_width(line, HEIGHT, bold=True) <= width + 1e-6


def test_the_head_of_a_table_stays_in_its_cells():
    head = ("Measured from the face side upward", "Measured from the face edge inward")
    block = table(head, [("1", "2")], 120.0, HEIGHT)
    bold = [line for line in block.lines if line.bold]
    edges = sorted({x for x, _, again, _ in block.rules if x == again})
    for line in bold:
        end = min(edge for edge in edges if edge > line.x)
        assert line.x + text_width(line.text, HEIGHT, bold=True) <= end
