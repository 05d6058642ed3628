"""Names beside a figure: the list of those that stand as numbers in it, and what it does not show.

Frame: sheet mm.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Collection, Sequence

from geometry.design.part import Part
from geometry.primitives.frame import Vec2
from geometry.sheets.layout import Layout, Room
from geometry.sheets.text_block import NO_TEXT, TextBlock, TextLine, paragraph
from geometry.sheets.title_block import TITLE_BLOCK_HEIGHT
from shared.lettering import text_width
from shared.paper import TITLE_BLOCK_WIDTH
from shared.words import Words, in_words

_PITCH = 1.6  # of the letters, from line to line of the list
_SMALLEST = 1.8  # mm, letters of a long list; the least of ISO 3098
_COLUMN_AIR = 5.0
_AIR = 4.0  # mm between a figure and the sentence under it
_LEAST = 50.0  # mm: a sentence in a narrower column is hard to read
_FOOT = 3.0  # mm between it and the border, beside the title block
_EACH = 2  # so many of a kind are told by their names
_HAIR = 1e-6


Rows = Sequence[tuple[str, str]]  # numbers and names


def name_list(rows: Rows, layout: Layout, high: float) -> TextBlock:
    """Numbers and names in as many columns as ``high`` mm ask."""
    height = min(layout.lettering, max(_SMALLEST, high / (_PITCH * max(1, len(rows)))))
    most = max(1, int(high / (_PITCH * height) + _HAIR))
    return _in_columns(rows, height, math.ceil(len(rows) / most))


def name_band(rows: Rows, layout: Layout, wide: float) -> TextBlock:
    """The same in as many columns as ``wide`` mm hold."""
    height = layout.lettering
    best = _in_columns(rows, height, 1)
    for columns in range(2, len(rows) + 1):
        more = _in_columns(rows, height, columns)
        if more.width > wide:
            break
        best = more
    return best


def name_block(rows: Rows, layout: Layout, room: tuple[float, float]) -> TextBlock:
    """The same in letters as large as they can be in a room so wide and high; in one column, too
    wide or too high, if in no way."""
    wide, high = room
    best = _in_columns(rows, _SMALLEST, 1)
    largest = 0.0
    for columns in range(1, max(2, len(rows))):
        each = math.ceil(len(rows) / columns)
        height = min(layout.lettering, high / (_PITCH * max(1, each)))
        if height < _SMALLEST or height <= largest:
            continue
        tried = _in_columns(rows, height, columns)
        if tried.width <= wide:
            best, largest = tried, height
    return best


def _in_columns(rows: Rows, height: float, columns: int) -> TextBlock:
    """Numbers and names in letters of a height and in so many columns."""
    if not rows:
        return NO_TEXT
    step = _PITCH * height
    each = math.ceil(len(rows) / columns)
    number = max(text_width(digits, height, bold=True) for digits, _ in rows) + 2.0
    lines: list[TextLine] = []
    x = 0.0
    for start in range(0, len(rows), each):
        here = rows[start : start + each]
        for k, (digits, name) in enumerate(here):
            y = k * step + height
            lines.append(TextLine(digits, x, y, height, bold=True))
            lines.append(TextLine(name, x + number, y, height))
        x += number + max(text_width(name, height) for _, name in here) + _COLUMN_AIR
    return TextBlock(tuple(lines), (), x - _COLUMN_AIR, each * step)


def not_seen(
    parts: Sequence[Part],
    shown: Collection[int],
    words: Words,
    listed: Collection[int] = (),
) -> str:
    """A sentence with the parts that are not ``shown``, empty if there are none.

    Those ``listed`` on the page are told by their numbers, others by their names, many of one kind
    by how many they are.
    """
    hidden = [index for index in range(len(parts)) if index not in shown]
    told = _runs([index for index in hidden if index in listed])
    named = [parts[index] for index in hidden if index not in listed]
    counts, every = Counter(one.kind for one in named), Counter(one.kind for one in parts)
    for part in named:
        count, of = counts[part.kind], every[part.kind]
        if count <= _EACH:
            told.append(part.title)
        else:
            which = f"all {of}" if count == of else f"{count} of {of}"
            told.append(f"{part.kind[0].upper()}{part.kind[1:]} ({which})")
    return in_words(f"Not seen here: {'; '.join(dict.fromkeys(told))}.", words) if told else ""


def _runs(indices: Sequence[int]) -> list[str]:
    """Numbers, those that follow one another as from one to the last: 2, 5–8 as one text."""
    runs: list[tuple[int, int]] = []
    for index in indices:
        if runs and runs[-1][1] == index - 1:
            runs[-1] = (runs[-1][0], index)
        else:
            runs.append((index, index))
    texts = [
        f"{a + 1}" if a == b else f"{a + 1}{'–' if b > a + 1 else ', '}{b + 1}" for a, b in runs
    ]
    return [", ".join(texts)] if texts else []


def under(sentence: str, layout: Layout) -> tuple[TextBlock, Vec2, Room]:
    """A sentence at the foot of a page, its upper left corner, and the room that it leaves.

    It stands beside the title block where it fits, else above it.
    """
    left, bottom, right, top = layout.room
    if not sentence:
        return NO_TEXT, (left, bottom), layout.room
    if layout.title is not None:
        wide = layout.border[2] - TITLE_BLOCK_WIDTH - _AIR - left
        text = paragraph([sentence], wide, layout.lettering)
        if wide > _LEAST and text.height <= TITLE_BLOCK_HEIGHT:
            return text, (left, layout.border[1] + _FOOT + text.height), layout.room
    text = paragraph([sentence], right - left, layout.lettering)
    foot = bottom + text.height
    return text, (left, foot), (left, foot + _AIR, right, top)
