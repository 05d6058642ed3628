"""Blocks of text: a table or a few lines, measured before they are placed.

Frame: sheet mm, from the block's upper left corner downward.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from geometry.drawing.marks import Label, Mark, Role, Strokes
from geometry.primitives.frame import Vec2
from geometry.sheets.lettering_fit import wrapped
from shared.lettering import text_width

PITCH = 1.75  # of the capital height, from baseline to baseline
PAD = 1.4  # mm inside a table's rules
_MOST = 0.3  # of a table's width, for any column but the last


@dataclass(frozen=True, slots=True)
class TextLine:
    """Words at a place below and right of the block's upper left corner."""

    text: str
    x: float
    y: float
    height: float
    bold: bool = False


@dataclass(frozen=True, slots=True)
class TextBlock:
    """Lines of words and rules, and the room they take."""

    lines: tuple[TextLine, ...]
    rules: tuple[tuple[float, float, float, float], ...]
    width: float
    height: float

    def marks(self, corner: Vec2) -> tuple[Mark, ...]:
        """The block with its upper left corner at ``corner``."""
        x, y = corner
        marks: list[Mark] = []
        if self.rules:
            rules = np.array(self.rules) * np.array((1.0, -1.0, 1.0, -1.0))
            marks.append(Strokes(Role.TEXT, rules + np.array((x, y) * 2)))
        marks += [
            Label(Role.TEXT, line.text, (x + line.x, y - line.y), line.height, bold=line.bold)
            for line in self.lines
        ]
        return tuple(marks)


NO_TEXT = TextBlock((), (), 0.0, 0.0)


def paragraph(sentences: Sequence[str], width: float, height: float) -> TextBlock:
    """Sentences, each on lines of its own, no wider than ``width``."""
    lines: list[TextLine] = []
    y = 0.0
    for sentence in sentences:
        for text in wrapped(sentence, width, height):
            lines.append(TextLine(text, 0.0, y + height, height))
            y += PITCH * height
    widest = max((text_width(line.text, height) for line in lines), default=0.0)
    return TextBlock(tuple(lines), (), widest, y)


def table(
    head: Sequence[str], rows: Sequence[Sequence[str]], width: float, height: float
) -> TextBlock:
    """A table with wrapped cells; the last column takes what the others leave of ``width``."""
    texts = [head, *rows]
    own = [
        _column([(row[i], row is head) for row in texts], _MOST * width, height)
        for i in range(len(head) - 1)
    ]
    columns = [*own, max(width - sum(own), 20.0)]
    total = sum(columns)
    lines: list[TextLine] = []
    rules = [(0.0, 0.0, total, 0.0)]
    y = 0.0
    for row in texts:
        x, deepest = 0.0, y + PAD + height
        for text, column in zip(row, columns, strict=True):
            for k, words in enumerate(wrapped(text, column - 2.0 * PAD, height, row is head)):
                down = y + PAD + height + k * PITCH * height
                lines.append(TextLine(words, x + PAD, down, height, row is head))
                deepest = max(deepest, down)
            x += column
        y = deepest + PAD
        rules.append((0.0, y, total, y))
    for x in (0.0, *np.cumsum(columns).tolist()):
        rules.append((x, 0.0, x, y))
    return TextBlock(tuple(lines), tuple(rules), total, y)


def _column(texts: Sequence[tuple[str, bool]], most: float, height: float) -> float:
    """How wide a column of texts, some bold, is: as they are, or ``most`` if no word is wider."""

    def widest(some: Sequence[tuple[str, bool]]) -> float:
        return max(text_width(text, height, bold) for text, bold in some) + 2.0 * PAD

    words = [(word, bold) for text, bold in texts for word in wrapped(text, 0.0, height)]
    return min(widest(texts), max(most, widest(words or texts)))
