"""The line of a section's plane in a view to which it is square.

Frame: sheet mm.

A chain line with wide ends, arrows in the direction of sight, and at either end the capital letter
by which the section goes (ISO 128-3, from memory); on a screen also a round at either end by which
the plane is turned.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from geometry.dimensioning.dimension_marks import ARROW_LENGTH, arrowhead
from geometry.drawing.marks import Anchor, Arc, Fill, Label, Mark, Role, Strokes
from geometry.drawing.text_box import TextBox
from geometry.primitives.frame import Vec2
from geometry.sheets.layout import Room
from shared.lettering import text_width

LARGER = 1.4  # of the lettering about it: the letters that mark a section stand out
_HEAVY = 2.5  # mm of its wide ends
KNOB = 1.1  # mm: the round by which an end is turned
SHAFT = 2.0  # mm of an arrow before its head
_CLEAR = 1.2  # mm between a letter and the line
_OFF_VIEW = 0.8  # mm between a letter and the view


@dataclass(frozen=True, slots=True)
class Letter:
    """The letter of a section and the height of its capitals, mm."""

    text: str
    height: float

    def beside(self, end: Vec2, ways: Sequence[Vec2], view: Room) -> Label:
        """The mark beside an end of the line, in the first of some ways in which it is clear of the
        view, or else the last."""
        tries = [self._at(end, way) for way in ways]
        x, y = next((one for one in tries if self._is_off(one, view)), tries[-1])
        at = (x, y - self.height / 2.0)
        return Label(Role.TITLE, self.text, at, self.height, Anchor.MIDDLE, bold=True)

    def room_of(self, mark: Label) -> TextBox:
        """The room that its mark takes."""
        x, y = mark.at
        return TextBox(x, y + self.height / 2.0, self._wide / 2.0, self.height / 2.0)

    @property
    def _wide(self) -> float:
        return text_width(self.text, self.height, bold=True)

    def _at(self, end: Vec2, way: Vec2) -> Vec2:
        """The middle of the letter that way from an end."""
        reach = (abs(way[0]) * self._wide + abs(way[1]) * self.height) / 2.0
        return on_line(end, way, _CLEAR + reach)

    def _is_off(self, middle: Vec2, view: Room) -> bool:
        left, bottom, right, top = view
        half_w, half_h = self._wide / 2.0 + _OFF_VIEW, self.height / 2.0 + _OFF_VIEW
        x, y = middle
        beside = x + half_w < left or x - half_w > right
        return beside or y + half_h < bottom or y - half_h > top


def on_line(start: Vec2, run: Vec2, far: float) -> Vec2:
    """The point so far along from a start."""
    return (start[0] + far * run[0], start[1] + far * run[1])


def line_marks(
    ends: tuple[Vec2, Vec2], sight: Vec2, letter: Letter, view: Room, *, by_hand: bool
) -> list[Mark]:
    """``sight`` is a unit vector, square to the line, ``view`` the room of what it crosses;
    ``by_hand`` with the rounds to turn it by."""
    (x0, y0), (x1, y1) = ends
    long = math.dist(*ends)
    run = ((x1 - x0) / long, (y1 - y0) / long)
    stations = [on_line(ends[0], run, far) for far in (0.0, _HEAVY, long - _HEAVY, long)]
    runs = np.array([(*a, *b) for a, b in pairwise(stations)])
    tips = [on_line(end, sight, SHAFT + ARROW_LENGTH) for end in ends]
    shafts = np.array([(*end, *tip) for end, tip in zip(ends, tips, strict=True)])
    knobs = [Arc(Role.VISIBLE, end, KNOB, 0.0, 360.0) for end in ends] if by_hand else []
    behind = (-sight[0], -sight[1])
    outward = ((-run[0], -run[1]), run)
    return [
        Strokes(Role.CENTRE, runs[1:2]),
        Strokes(Role.VISIBLE, runs[(0, 2), :]),
        Strokes(Role.DIMENSION, shafts),
        *(Fill(Role.DIMENSION, arrowhead(tip, sight)) for tip in tips),
        *knobs,
        *(letter.beside(end, (behind, out), view) for end, out in zip(ends, outward, strict=True)),
    ]
