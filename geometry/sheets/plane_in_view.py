"""The line of a section's plane in a view that has its dimensions about it.

Frame: sheet mm.

Method: each end of the line is put as little farther out as lets its letter and its arrow stand on
nothing else; where the line would run through a number or a word, it leaves that out.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np
import shapely

from geometry.dimensioning.dimension_marks import ARROW_LENGTH
from geometry.drawing.marks import Anchor, Label, Mark, Role, Strokes
from geometry.drawing.text_box import DESCENT, RISE
from geometry.primitives.frame import Vec2
from geometry.sheets.plane_line import KNOB, SHAFT, Letter, line_marks, on_line
from geometry.sheets.section_key import SectionKey
from shared.lettering import text_width

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Objects = NDArray[np.object_]

_STEP, _TRIES, _AT_ONCE = 1.5, 48, 12  # mm from place to place, and how many are tried
_ON_A_TEXT = 3
_BESIDE = 0.7  # mm between a letter and all else, and between the line and a number
_SPECK = 1.0  # mm: a shorter piece of the line between two numbers looks like dirt


@dataclass(frozen=True, slots=True, eq=False)
class About:
    """What stands in and about the views of a sheet: words and numbers, and dimensions' lines."""

    texts: shapely.STRtree
    lines: shapely.STRtree


def about(marks: Iterable[Mark]) -> About:
    """The same of the marks of a sheet."""
    there = tuple(marks)
    texts = [_corners(mark) for mark in there if isinstance(mark, Label)]
    rows = [
        mark.segments
        for mark in there
        if isinstance(mark, Strokes) and mark.role in (Role.DIMENSION, Role.DERIVED)
    ]
    lines = np.concatenate(rows) if rows else np.empty((0, 4))
    return About(
        shapely.STRtree(shapely.polygons(np.array(texts).reshape(-1, 4, 2))),
        shapely.STRtree(shapely.linestrings(lines.reshape(-1, 2, 2))),
    )


def plane_in_view(
    key: SectionKey, letter: Letter, there: About
) -> tuple[SectionKey, tuple[Mark, ...]]:
    """The line as it is drawn on a screen, with its ends clear of what is there, and its marks."""
    (x0, y0), (x1, y1) = key.ends
    long = math.dist(*key.ends)
    run = ((x1 - x0) / long, (y1 - y0) / long)
    first = _end(key, letter, (key.ends[0], (-run[0], -run[1])), there)
    last = _end(key, letter, (key.ends[1], run), there)
    shown = replace(key, ends=(first, last))
    marks = line_marks(shown.ends, key.sight, letter, key.box, by_hand=True)
    return shown, tuple(_interrupted(mark, there.texts) for mark in marks)


def _end(key: SectionKey, letter: Letter, at: tuple[Vec2, Vec2], there: About) -> Vec2:
    """Where an end of the line stands, ``at`` being where it would and the way out from there: best
    on nothing at all, or else with its letter clear, or no text on another."""
    end, out = at
    tries = [on_line(end, out, _STEP * k) for k in range(_TRIES)]
    worse: dict[int, Vec2] = {}
    for start in range(0, _TRIES, _AT_ONCE):
        some = tries[start : start + _AT_ONCE]
        for one, bad in zip(some, _badness(key, letter, (some, out), there), strict=True):
            if bad == 0:
                return one
            worse.setdefault(bad, one)
    return worse[min(worse)] if min(worse) < _ON_A_TEXT else end


def _badness(
    key: SectionKey, letter: Letter, at: tuple[Sequence[Vec2], Vec2], there: About
) -> list[int]:
    """Of some places of an end: what would be the worst there."""
    tries, out = at
    ways = ((-key.sight[0], -key.sight[1]), out)
    labels = [letter.beside(one, ways, key.box) for one in tries]
    letters = shapely.buffer(shapely.polygons([_corners(one) for one in labels]), _BESIDE)
    tips = [on_line(one, key.sight, SHAFT + ARROW_LENGTH) for one in tries]
    arrows = shapely.linestrings(np.stack([np.array(tries), np.array(tips)], axis=1))
    hands = shapely.buffer(arrows, KNOB)
    on_text = _meets(letters, there.texts) | _meets(hands, there.texts)
    letter_on_line, hand_on_line = _meets(letters, there.lines), _meets(hands, there.lines)
    found = np.select([on_text, letter_on_line, hand_on_line], [_ON_A_TEXT, 2, 1], 0)
    return [int(one) for one in found]


def _meets(shapes: Objects, others: shapely.STRtree) -> NDArray[np.bool_]:
    """Which of some shapes meet any of the others."""
    met = np.zeros(len(shapes), dtype=np.bool_)
    met[others.query(shapes, predicate="intersects")[0]] = True
    return met


def _corners(label: Label) -> list[Vec2]:
    """Of the room of a line of text."""
    wide, high = text_width(label.text, label.height, bold=label.bold), label.height
    start = {Anchor.START: 0.0, Anchor.MIDDLE: wide / 2.0, Anchor.END: wide}[label.anchor]
    turn = math.radians(label.turn_deg)
    cos, sin = math.cos(turn), math.sin(turn)
    low, top = -DESCENT * high, RISE * high
    x, y = label.at
    return [
        (x + u * cos - v * sin, y + u * sin + v * cos)
        for u, v in ((-start, low), (wide - start, low), (wide - start, top), (-start, top))
    ]


def _interrupted(mark: Mark, texts: shapely.STRtree) -> Mark:
    """A mark of the line without what of it runs through a text."""
    if not isinstance(mark, Strokes) or mark.role is not Role.CENTRE:
        return mark
    lines = shapely.linestrings(mark.segments.reshape(-1, 2, 2))
    met = texts.geometries.take(np.unique(texts.query(lines, "dwithin", _BESIDE)[1]))
    if not len(met):
        return mark
    left = shapely.difference(lines, shapely.union_all(shapely.buffer(met, _BESIDE)))
    pieces = shapely.get_parts(left)
    pieces = pieces[shapely.length(pieces) > _SPECK]
    return Strokes(mark.role, shapely.get_coordinates(pieces).reshape(-1, 4))
