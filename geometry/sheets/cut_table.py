"""A part's table of cuts, and of a carved front's points below it, whole or some rows of it.

A row longer than a page could take is told in several, the number and the name of the cut on the
first.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from geometry.design.part import Part
from geometry.sheets.cut_words import cut_lines
from geometry.sheets.layout import Layout
from geometry.sheets.page_plan import ALL_ROWS
from geometry.sheets.relief_points import point_texts, with_points
from geometry.sheets.text_block import NO_TEXT, TextBlock, table
from shared.units import in_units
from shared.words import in_words

_HEAD = ("No.", "Cut", "Size and place")
_SMALL = 2.5
_LONGEST = 400  # letters in a cell: in the narrowest table two dozen lines, half of a sheet of A4
_STOP = re.compile(r"(?<=[,;]) ")

Row = tuple[str, ...]


@dataclass(frozen=True, slots=True)
class CutTable:
    """``cuts`` are the rows of the cuts, ``points`` those of a relief's points; called for a width
    it makes the table of all or some of them, an empty block where there are none."""

    cuts: tuple[Row, ...]
    points: tuple[Row, ...]
    layout: Layout

    def __len__(self) -> int:
        return len(self.cuts) + len(self.points)

    def __call__(self, width: float, some: slice = ALL_ROWS) -> TextBlock:
        start, stop, _ = some.indices(len(self))
        count = len(self.cuts)
        cuts = self.cuts[start:stop]
        points = self.points[max(start - count, 0) : max(stop - count, 0)]
        words = self.layout.words
        head = tuple(in_words(word, words) for word in _HEAD)
        block = table(head, cuts, width, _SMALL) if cuts else NO_TEXT
        return with_points(block, points, width, words)


def cut_table(part: Part, layout: Layout) -> CutTable:
    """The table of a part's cuts in the maker's units and words."""
    words, shown = layout.words, layout.shown
    rows: list[Row] = []
    for line in cut_lines(part.shape):
        told = in_words(in_units(line.words, shown), words)
        first, *others = divided(told, _LONGEST)
        rows.append((line.number_text, in_words(line.title, words), first))
        rows += [("", "", other) for other in others]
    return CutTable(tuple(rows), point_texts(part.shape, shown), layout)


def divided(text: str, longest: int) -> list[str]:
    """The text in pieces of at most so many letters, each ending at a comma or a semicolon; what
    has none stays whole."""
    pieces: list[str] = []
    for clause in _STOP.split(text):
        if pieces and len(pieces[-1]) + 1 + len(clause) <= longest:
            pieces[-1] = f"{pieces[-1]} {clause}"
        else:
            pieces.append(clause)
    return pieces
