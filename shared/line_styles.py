"""How wide and how dashed each role of a line is drawn, and the layer it stands on.

One table for screen, PDF and DXF drawings.  Widths and dashes in mm on the sheet; a dash pattern
is pen down, pen up, pen down …; an empty one is a continuous line.  ``line_type`` is the number of
the line type in ISO 128.

Sources, from memory unless said: ISO 128-24 line group 0.5 (wide 0.5, narrow 0.25), which lines
are wide and which narrow; ISO 128-20 table 3: dash 12 d, long dash 24 d, gap 3 d, dot at most
0.5 d, d being the line's width; ISO 5457:1999 frame of 0.7.  The series of widths is quoted by
teaching pages after ISO 128-20 clause 4.  Rows marked ``our choice`` are for lines that no
drawing standard knows.
"""

from __future__ import annotations

from dataclasses import dataclass

WIDE = 0.5
NARROW = 0.25


@dataclass(frozen=True, slots=True)
class LineStyle:
    """One row; ``role`` is the value of a Role of the marks, ``layer`` fits any DXF version."""

    role: str
    width: float
    dashes: tuple[float, ...]
    layer: str
    line_type: str
    source: str

    @property
    def period(self) -> float:
        """Length of one repeat of the dash pattern in mm, 0 for a continuous line."""
        return sum(self.dashes)


def _dashed(d: float) -> tuple[float, ...]:
    return (12 * d, 3 * d)


def _long_dashed_dotted(d: float) -> tuple[float, ...]:
    return (24 * d, 3 * d, 0.5 * d, 3 * d)


def _long_dashed_double_dotted(d: float) -> tuple[float, ...]:
    return (24 * d, 3 * d, 0.5 * d, 3 * d, 0.5 * d, 3 * d)


_ISO = "ISO 128-24, from memory"
_OURS = "our choice"

_ROWS = (
    # role, width mm, dashes mm, layer, ISO 128 type, source
    LineStyle("visible", WIDE, (), "VISIBLE", "01.2", _ISO),
    LineStyle("hidden", NARROW, _dashed(NARROW), "HIDDEN", "02.1", _ISO),
    LineStyle("centre", NARROW, _long_dashed_dotted(NARROW), "CENTRE", "04.1", _ISO),
    LineStyle("dimension", NARROW, (), "DIMENSION", "01.1", _ISO),
    LineStyle("derived", NARROW, (), "DERIVED", "01.1", _ISO),
    LineStyle("trim", NARROW, _long_dashed_double_dotted(NARROW), "TRIM", "05.1", _ISO),
    LineStyle("phantom", NARROW, _long_dashed_double_dotted(NARROW), "PHANTOM", "05.1", _ISO),
    LineStyle("cut", NARROW, (), "TEMPLATE_CUT", "01.1", _OURS),  # narrow: a saw follows it
    LineStyle("scribe", 0.18, _dashed(0.18), "TEMPLATE_SCRIBE", "02.1", _OURS),
    LineStyle("grid", 0.13, (), "GRID", "01.1", _OURS),
    LineStyle("hatch", 0.18, (), "HATCH", "01.1", _OURS),  # finer than narrow: outlines lead
    LineStyle("break", NARROW, (), "BREAK", "01.1", _ISO),
    LineStyle("frame", 0.7, (), "FRAME", "01.2", "ISO 5457:1999, from memory"),
    LineStyle("text", NARROW, (), "TEXT", "01.1", "ISO 3098-0:1997 type B, h = 2.5"),
    LineStyle("title", 0.35, (), "TITLE", "01.1", "ISO 3098-0:1997 type B, h = 3.5"),
)

LINE_STYLES: dict[str, LineStyle] = {row.role: row for row in _ROWS}

LETTERING_HEIGHTS = (1.8, 2.5, 3.5, 5.0, 7.0, 10.0, 14.0, 20.0)
"""Nominal heights of capitals in mm, ISO 3098-0:1997 (read in a page that tabulates it)."""
