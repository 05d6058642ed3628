"""British and American words: the pairs by hand, and the laws of any wording."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shared.words import AMERICAN_FOR, Words, in_words

sentences = st.lists(
    st.sampled_from([*sorted(AMERICAN_FOR), "leg", "seat", "12.7", "a", "the", "—", "(", "."]),
    max_size=8,
).map(" ".join)


@pytest.mark.parametrize(
    ("british", "american"),
    [
        # any dictionary; the trade pairs are common practice
        ("housing", "dado"),
        ("stopped housings", "stopped dadoes"),
        ("housed", "dadoed"),
        ("rebate", "rabbet"),
        ("rebates, rebated, rebating", "rabbets, rabbeted, rabbeting"),
        ("mitre gauge", "miter gauge"),
        ("mitres, mitred, mitring", "miters, mitered, mitering"),
        ("timber", "lumber"),
        ("colour, coloured", "color, colored"),
        ("centre line, centres, centred", "center line, centers, centered"),
        ("metres and millimetres", "meters and millimeters"),
        ("grey", "gray"),
        ("cutter", "bit"),
        ("bevelled and dowelled", "beveled and doweled"),
        ("organise, recognised", "organize, recognized"),
        ("aluminium", "aluminum"),
        ("fibreboard", "fiberboard"),
        ("Housing", "Dado"),
        ("STOPPED HOUSING", "STOPPED DADO"),
        ("Rebate the back.", "Rabbet the back."),
        ("Mitre/rebate", "Miter/rabbet"),
        # what is bought is a slide, a strip of wood stays a runner
        ("Drawer runners", "Drawer slides"),
        ("check your runner's sheet", "check your slide's sheet"),
        ("wide drawer on wooden runners", "wide drawer on wooden runners"),
        ("Drawer runner, left, first in opening 1", "Drawer runner, left, first in opening 1"),
        ("the rebate’s depth", "the rabbet’s depth"),
    ],
)
def test_pairs_by_hand(british: str, american: str) -> None:
    assert in_words(british, Words.AMERICAN) == american
    assert in_words(british, Words.BRITISH) == british


@pytest.mark.parametrize(
    "text",
    ["housing_depth", "rebate2", "timberland", "parameter", "diameter", "perimeter", "concentre"],
)
def test_only_whole_words_change(text: str) -> None:
    assert in_words(text, Words.AMERICAN) == text


@given(sentences)
def test_wording_twice_is_wording_once(text: str) -> None:
    once = in_words(text, Words.AMERICAN)
    assert in_words(once, Words.AMERICAN) == once


@given(sentences)
def test_no_british_word_is_left(text: str) -> None:
    left = in_words(text, Words.AMERICAN).lower().split()
    assert not set(left) & {word for word in AMERICAN_FOR if " " not in word}


@given(st.sampled_from(sorted(AMERICAN_FOR)))
def test_capitals_are_kept(word: str) -> None:
    small = in_words(word, Words.AMERICAN)
    assert in_words(word.upper(), Words.AMERICAN) == small.upper()
    first = in_words(word[0].upper() + word[1:], Words.AMERICAN)
    assert first == small[0].upper() + small[1:]


@given(sentences)
def test_british_is_what_is_written(text: str) -> None:
    assert in_words(text, Words.BRITISH) == text
