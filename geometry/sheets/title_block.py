"""The title block: the data fields of ISO 7200:2004, with scale, unit and projection beside them.

Frame: sheet mm.  The block is 180 mm wide and stands in the lower right corner of the border.
A text too long for its cell is lettered smaller, then set in two lines, and cut short only beyond
that.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date

import numpy as np

from geometry.design.project import Project
from geometry.drawing.marks import Label, Mark, Role, Strokes
from geometry.primitives.frame import Vec2
from geometry.sheets.lettering_fit import fitted, fitted_lines
from geometry.sheets.projection_symbol import projection_symbol
from shared.paper import TITLE_BLOCK_WIDTH
from shared.words import Words, in_words

TITLE_BLOCK_HEIGHT = 32.0
_ROW = 8.0
_CAPTION_HEIGHT = 1.8
_VALUE_HEIGHT = 2.5
_NAME_HEIGHT = 3.5
_PAD = 1.5
_LINE = 2.25  # mm from one line of the smallest lettering to the next
_APART = 2.7  # the same below the title, where there is more room
_TITLE_X, _TITLE_WIDTH = 60.0, 70.0
_NOTHING = "–"


@dataclass(frozen=True, slots=True)
class TitleBlock:
    """The words in the block, named as in ISO 7200; empty ones show a dash."""

    legal_owner: str
    identification_number: str
    date_of_issue: str
    title: str
    creator: str
    approval_person: str = ""
    document_type: str = ""
    sheet_number: int = 1
    number_of_sheets: int = 1  # 0: not known yet
    revision_index: str = ""
    language_code: str = "en"
    supplementary_title: str = ""
    responsible_department: str = ""
    technical_reference: str = ""
    document_status: str = ""

    def on_sheet(self, number: int, of: int) -> TitleBlock:
        return replace(self, sheet_number=number, number_of_sheets=of)

    def about(self, document_type: str, supplementary_title: str | None = None) -> TitleBlock:
        """The block of another sheet of the same design; None keeps the supplementary title."""
        if supplementary_title is None:
            return replace(self, document_type=document_type)
        return replace(self, document_type=document_type, supplementary_title=supplementary_title)


@dataclass(frozen=True, slots=True)
class Reading:
    """How the sheet is to be read: its scale in words, its unit, and the arrangement of views."""

    scale_text: str
    unit_text: str
    third_angle: bool
    words: Words = Words.BRITISH


def title_block_of(project: Project, on: date) -> TitleBlock:
    """The block of a project's drawings, issued on a date."""
    return TitleBlock(
        legal_owner=project.owner or project.designer,
        identification_number=project.number,
        date_of_issue=on.isoformat(),
        title=project.title,
        creator=project.designer,
        approval_person=project.owner,
        revision_index=project.revision,
        supplementary_title=project.place,
        responsible_department="workshop",
        document_status="for making",
    )


@dataclass(frozen=True, slots=True)
class _Cell:
    """A field: its caption, its words, and its rectangle from the block's lower left corner."""

    caption: str
    value: str
    x: float
    y: float
    width: float
    height: float = _ROW
    size: float = _VALUE_HEIGHT
    bold: bool = False
    role: Role = Role.TEXT
    raised: float = 0.0  # above the middle of a cell of two rows


def title_block_marks(block: TitleBlock, reading: Reading, corner: Vec2) -> tuple[Mark, ...]:
    """The block with its lower right corner at ``corner``."""
    x0, y0 = corner[0] - TITLE_BLOCK_WIDTH, corner[1]
    cells = _cells(block, reading)
    marks: list[Mark] = [
        Strokes(Role.TEXT, _grid(cells) + np.array((x0, y0) * 2)),
        Strokes(Role.FRAME, _outer(x0, y0)),
    ]
    for cell in cells:
        marks.extend(_lettered(cell, x0, y0, reading.words))
    marks.extend(projection_symbol((x0 + 47.0, y0 + 4.0), 2.2, third_angle=reading.third_angle))
    lines, size = _supplement(block)
    for line, foot in zip(reversed(lines), (_foot(lines), _foot(lines) + _APART), strict=False):
        marks.append(Label(Role.TEXT, line, (x0 + _TITLE_X + _PAD, y0 + foot), size))
    return tuple(marks)


def _supplement(block: TitleBlock) -> tuple[tuple[str, ...], float]:
    """The lines below the title and their lettering; none where nothing is to be said there."""
    if not block.supplementary_title:
        return (), _VALUE_HEIGHT
    return fitted_lines(block.supplementary_title, _TITLE_WIDTH - 2 * _PAD, _VALUE_HEIGHT)


def _foot(lines: tuple[str, ...]) -> float:
    """The baseline of the last of some lines in their cell: two stand closer to its foot."""
    return 2.0 if len(lines) < 2 else 0.9


def _cells(block: TitleBlock, reading: Reading) -> tuple[_Cell, ...]:
    sheet = f"{block.sheet_number}"
    if block.number_of_sheets:
        sheet += f" / {block.number_of_sheets}"
    words = reading.words
    top, third, second, first = 24.0, 16.0, 8.0, 0.0
    return (
        # caption, words, x, y, width, height, letters
        _Cell("Responsible department", in_words(block.responsible_department, words), 0, top, 34),
        _Cell("Technical reference", block.technical_reference, 34, top, 38),
        _Cell("Created by", block.creator, 72, top, 38),
        _Cell("Approved by", block.approval_person, 110, top, 38),
        _Cell("Document status", in_words(block.document_status, words), 148, top, 32),
        _Cell("Legal owner", block.legal_owner, 0, second, 60, 16, _NAME_HEIGHT),
        _Cell("Scale", reading.scale_text, 0, first, 18),
        _Cell("Unit", reading.unit_text, 18, first, 16),
        _Cell("", " ", 34, first, 26),
        _Cell("Document type", in_words(block.document_type, words), _TITLE_X, third, _TITLE_WIDTH),
        _Cell(
            "Title",
            block.title,
            _TITLE_X,
            first,
            _TITLE_WIDTH,
            16,
            _NAME_HEIGHT,
            True,
            Role.TITLE,
            raised=1.6 if len(_supplement(block)[0]) > 1 else 0.0,
        ),
        _Cell("Identification number", block.identification_number, 130, third, 50),
        _Cell("Revision", block.revision_index, 130, second, 18),
        _Cell("Date of issue", block.date_of_issue, 148, second, 32),
        _Cell("Language", block.language_code, 130, first, 18),
        _Cell("Sheet", sheet, 148, first, 32),
    )


def _lettered(cell: _Cell, x0: float, y0: float, words: Words) -> list[Mark]:
    x, y = x0 + cell.x + _PAD, y0 + cell.y
    room = cell.width - 2 * _PAD
    lines, size = fitted_lines(cell.value or _NOTHING, room, cell.size, cell.bold)
    if cell.height == _ROW:
        foot = 1.5 if len(lines) < 2 else 0.6
    else:
        foot = cell.height / 2.0 - size / 2.0 - 0.5 - (len(lines) - 1) * _LINE / 2.0 + cell.raised
    caption, caption_size = fitted(in_words(cell.caption, words), room, _CAPTION_HEIGHT)
    above = y + cell.height - _CAPTION_HEIGHT - 0.9
    marks: list[Mark] = []
    if cell.caption:
        marks.append(Label(Role.TEXT, caption, (x, above), caption_size * 0.85))
    if cell.value.strip() or not cell.value:
        for up, line in enumerate(reversed(lines)):
            marks.append(Label(cell.role, line, (x, y + foot + up * _LINE), size, bold=cell.bold))
    return marks


def _grid(cells: tuple[_Cell, ...]) -> np.ndarray[tuple[int, int], np.dtype[np.float64]]:
    """The lines between cells, each once."""
    lines = set()
    for c in cells:
        if c.x > 0.0:
            lines.add((c.x, c.y, c.x, c.y + c.height))
        if c.y > 0.0:
            lines.add((c.x, c.y, c.x + c.width, c.y))
    return np.array(sorted(lines), dtype=np.float64)


def _outer(x0: float, y0: float) -> np.ndarray[tuple[int, int], np.dtype[np.float64]]:
    """The block's own left and upper border; the sheet's border closes it."""
    x1, y1 = x0 + TITLE_BLOCK_WIDTH, y0 + TITLE_BLOCK_HEIGHT
    return np.array([(x0, y0, x0, y1), (x0, y1, x1, y1)])
