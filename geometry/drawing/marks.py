"""Marks on a sheet: what a pen draws, in sheet millimetres, by role and never by colour.

Sheet coordinates: x to the right, y up, origin at the lower left corner of the paper.  Screen,
PDF and tests all read the same marks; one table (shared.line_styles) turns a role into a width
and a dash.  Every mark names its owner, so that picking, lighting up and asking "why is this
line here?" come for free.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

import numpy as np
from numpy.typing import NDArray

from geometry.primitives.frame import Vec2


class Role(Enum):
    """What a line or a text is for."""

    VISIBLE = "visible"
    HIDDEN = "hidden"
    CENTRE = "centre"
    DIMENSION = "dimension"  # dimension and extension lines, arrowheads, their texts
    DERIVED = "derived"  # the same for dimensions that follow from others
    TRIM = "trim"  # a line left proud, to be trimmed to later
    PHANTOM = "phantom"  # where a piece that moves stands too: a lid when it is open
    CUT = "cut"  # full-size template outlines
    SCRIBE = "scribe"  # full-size lines to mark through, not to cut
    GRID = "grid"  # faint stations on templates
    HATCH = "hatch"  # what a section cuts through
    BREAK = "break"  # where a detail leaves off and the piece goes on
    FRAME = "frame"  # border and title block
    TEXT = "text"  # notes and title block words
    TITLE = "title"


class Anchor(Enum):
    """Which point of a text its x is; y is always the baseline."""

    START = "start"
    MIDDLE = "middle"
    END = "end"


@dataclass(frozen=True, slots=True, eq=False)
class Strokes:
    """Straight segments of one role; ``segments`` (n, 4) x0 y0 x1 y1 in mm.

    Either all belong to ``owner``, or, when many owners share one mark because that is faster to
    make and to paint, ``owners`` names them and ``owner_of`` (n,) says for each segment which.
    """

    role: Role
    segments: NDArray[np.float64]
    owner: str = ""
    owners: tuple[str, ...] = ()
    owner_of: NDArray[np.intp] | None = None


@dataclass(frozen=True, slots=True)
class Arc:
    """A circular arc, counter-clockwise from ``start_deg`` to ``end_deg``; a circle spans 360."""

    role: Role
    centre: Vec2
    radius: float
    start_deg: float
    end_deg: float
    owner: str = ""


@dataclass(frozen=True, slots=True)
class Fill:
    """A filled polygon, such as an arrowhead."""

    role: Role
    points: tuple[Vec2, ...]
    owner: str = ""


@dataclass(frozen=True, slots=True)
class Label:
    """One line of text; ``height`` is the capital height in mm, turned about its anchor point."""

    role: Role
    text: str
    at: Vec2
    height: float
    anchor: Anchor = Anchor.START
    turn_deg: float = 0.0
    bold: bool = False
    owner: str = ""


Mark = Strokes | Arc | Fill | Label


@dataclass(frozen=True, slots=True, eq=False)
class Sheet:
    """A page: its size in mm, its marks in drawing order, and a title for bookmarks."""

    title: str
    width: float
    height: float
    marks: tuple[Mark, ...]
