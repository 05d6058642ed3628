"""How a sheet is laid out: its paper, its scale, and what stands round the views."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from geometry.dimensioning.placed import DimensionStyle
from geometry.drawing.marks import Mark, Role, Strokes
from geometry.sheets.title_block import (
    TITLE_BLOCK_HEIGHT,
    Reading,
    TitleBlock,
    title_block_marks,
)
from shared.paper import SCALES, Paper
from shared.units import SHOWN_MM, Shown
from shared.words import Words, in_words

Room = tuple[float, float, float, float]  # left, bottom, right, top, in sheet mm
_SMALL_PAPER = 300.0  # mm wide; a narrower sheet is crowded
_AIR = 6.0  # mm between the border and the nearest mark


@dataclass(frozen=True, slots=True)
class Layout:
    """What the maker chooses about a sheet.

    ``scale`` is sheet mm for one real mm, or None for the largest step of ISO 5455 that fits.
    ``text_height`` None takes 3.5 mm, or 2.5 mm on a sheet as small as A4.  ``title`` None leaves
    the title block out; ``frame`` False leaves the border out, as on the screen.  ``close`` puts
    the rows of dimensions close together, as in a low window.
    """

    paper: Paper
    scale: float | None = None
    third_angle: bool = True
    text_height: float | None = None
    shown: Shown = SHOWN_MM
    words: Words = Words.BRITISH
    frame: bool = True
    title: TitleBlock | None = None
    close: bool = False

    @property
    def lettering(self) -> float:
        """Capital height of dimensions and captions in mm."""
        if self.text_height is not None:
            return self.text_height
        return 2.5 if self.paper.width < _SMALL_PAPER else 3.5

    @property
    def style(self) -> DimensionStyle:
        return DimensionStyle(self.lettering, self.shown, close=self.close)

    @property
    def border(self) -> Room:
        """The rectangle of the border."""
        paper = self.paper
        return (paper.filing, paper.border, paper.width - paper.border, paper.height - paper.border)

    @property
    def room(self) -> Room:
        """Where views may stand: inside the border and above the title block."""
        left, bottom, right, top = self.border
        foot = TITLE_BLOCK_HEIGHT if self.title else 0.0
        return (left + _AIR, bottom + foot + _AIR, right - _AIR, top - _AIR)


def furniture(layout: Layout, scale: float | None) -> tuple[Mark, ...]:
    """The border and the title block; ``scale`` is what the block states, None for 'as shown'."""
    left, bottom, right, top = layout.border
    marks: list[Mark] = []
    if layout.frame:
        marks.append(Strokes(Role.FRAME, box_lines(left, bottom, right, top)))
    if layout.title:
        unit = layout.shown.unit
        text = scale_text(scale) if scale is not None else in_words("as shown", layout.words)
        reading = Reading(text, unit, layout.third_angle, layout.words)
        marks.extend(title_block_marks(layout.title, reading, (right, bottom)))
    return tuple(marks)


def scale_text(scale: float) -> str:
    """A scale as it is written: 1:10, or 1:7.5 for one that is no standard step.

    >>> scale_text(0.1)
    '1:10'
    """
    for step in SCALES:
        if abs(step.factor - scale) < 1e-9:
            return step.text
    return f"1:{1.0 / scale:.3g}" if scale < 1.0 else f"{scale:.3g}:1"


def box_lines(
    left: float, bottom: float, right: float, top: float
) -> np.ndarray[tuple[int, int], np.dtype[np.float64]]:
    """The four sides of a rectangle."""
    return np.array(
        [
            (left, bottom, right, bottom),
            (right, bottom, right, top),
            (right, top, left, top),
            (left, top, left, bottom),
        ]
    )
