"""Pages of the findings, those set aside with the maker's reason, so that the shop reads them too.

Frame: sheet mm.  A bench with nothing graver than 'good to know', and nothing set aside, has none.
"""

from __future__ import annotations

from collections.abc import Sequence

from geometry.design.finding import Finding, Level
from geometry.drawing.marks import Label, Mark, Role
from geometry.sheets.layout import Layout
from geometry.sheets.leaf import Leaf
from geometry.sheets.text_block import PITCH, TextBlock, paragraph, table
from shared.units import in_units
from shared.words import in_words

_TITLE = 1.5  # of the lettering
_AIR = 3.0  # mm under the heading
_HEAD = ("Level", "Parts", "Finding")
_ESTIMATES = (
    "Strength, sag, tipping and movement are estimates from handbook figures for clear, straight "
    "timber. Local codes, and the word of a licensed engineer, go before them."
)


def findings_leaves(found: Sequence[Finding], layout: Layout) -> tuple[Leaf, ...]:
    """The pages, as many as the findings need; none when there is nothing a shop must know."""
    if not any(one.set_aside or one.level is not Level.GOOD_TO_KNOW for one in found):
        return ()
    left, bottom, right, top = layout.room
    letters = layout.lettering
    width = right - left
    notes = [_ESTIMATES] if any(one.estimate for one in found) else []
    foot = paragraph([in_words(note, layout.words) for note in notes], width, letters)
    high = top - bottom - _TITLE * letters - _AIR - foot.height - _AIR
    rows = [_row(one, layout) for one in found]
    pages: list[TextBlock] = []
    while rows:
        count = _fitting(rows, width, letters, high)
        pages.append(table(_words(_HEAD, layout), rows[:count], width, letters))
        rows = rows[count:]
    title = in_words("Findings", layout.words)
    return tuple(_leaf(title, page, foot, layout) for page in pages)


def _fitting(rows: list[tuple[str, ...]], width: float, letters: float, high: float) -> int:
    """How many of the rows stand on one page; at least one."""
    count = len(rows)
    while count > 1 and table(_HEAD, rows[:count], width, letters).height > high:
        count -= 1
    return count


def _row(one: Finding, layout: Layout) -> tuple[str, ...]:
    message = in_units(one.message, layout.shown)
    level = one.level.value
    if one.set_aside:
        level = f"set aside ({level})"
        message = f"{message} Set aside because: {one.set_aside}"
    if one.worse:
        message = f"{message} {in_units(one.worse, layout.shown)}"
    parts = ", ".join(name.replace("_", " ") for name in one.parts[:6])
    more = f" and {len(one.parts) - 6} more" if len(one.parts) > 6 else ""
    return _words((level, parts + more, message), layout)


def _words(texts: Sequence[str], layout: Layout) -> tuple[str, ...]:
    return tuple(in_words(text, layout.words) for text in texts)


def _leaf(title: str, page: TextBlock, foot: TextBlock, layout: Layout) -> Leaf:
    left, bottom, _, top = layout.room
    letters = layout.lettering
    heading = Label(Role.TITLE, title, (left, top - _TITLE * letters), _TITLE * letters, bold=True)
    marks: list[Mark] = [heading, *page.marks((left, top - _TITLE * letters - _AIR))]
    if foot.lines:
        marks += foot.marks((left, bottom + foot.height - (PITCH - 1.0) * letters))
    return Leaf("Findings", title, None, tuple(marks), layout)
