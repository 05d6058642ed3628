"""A page with one figure of the whole bench, as large as it goes, every part with its name.

Frame: sheet mm; labels about the figure's own origin until they are placed.

Of several figures, and of a sheet lying or upright, the one is taken that shows the most parts, and
those largest.  Where there is no room for so many names near their parts, these have numbers and
the names stand in a list.  What the figure does not show is told in a sentence under it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from geometry.design.part import Part
from geometry.drawing.marks import Mark, Role, Strokes
from geometry.primitives.frame import Vec2, Vec3
from geometry.sheets.arrangement import linework_marks
from geometry.sheets.filling import centred, largest_in
from geometry.sheets.label_spots import Spot
from geometry.sheets.layout import Layout, Room
from geometry.sheets.name_list import name_list, not_seen, under
from geometry.sheets.numbering import Numbering
from geometry.sheets.part_labels import Named, label_marks, named
from geometry.sheets.picked_place import ring
from geometry.sheets.text_block import TextBlock
from geometry.solids.solid import Floats
from geometry.views.linework import Linework
from shared.words import in_words

_BESIDE = 26.0  # mm of the sheet beside a figure, for names
_ABOVE = 7.0
_SMALLER = (1.0, 0.92, 0.84, 0.76)
_MANY = 24  # parts: more names than this would hide the drawing
_FAR, _TOO_FAR = 45.0, 65.0  # mm: a longer leader loses the eye, and is worse than a number


@dataclass(frozen=True, slots=True, eq=False)
class Figure:
    """Parts as they stand, the lines seen of them, and others that tie them together; ``picked``
    are points that are ringed."""

    parts: tuple[Part, ...]
    linework: Linework
    ties: Floats
    spots: tuple[Spot, ...]
    picked: tuple[Vec3, ...] = ()

    @property
    def lines(self) -> Floats:
        return np.concatenate([self.linework.segments, self.ties])


@dataclass(frozen=True, slots=True, eq=False)
class WholeSheet:
    """The marks, and the figure with the scale and the origin at which it is drawn and its labels
    about that; ``layout`` is the way its sheet lies."""

    marks: tuple[Mark, ...]
    figure: Figure
    scale: float
    origin: Vec2
    labels: tuple[Named, ...]
    layout: Layout


@dataclass(frozen=True, slots=True, eq=False)
class _Placed:
    """A figure at a scale with its labels about its own origin, and the list of names if any."""

    scale: float
    origin: Vec2
    labels: tuple[Named, ...]
    key: TextBlock | None


def whole_sheet(figures: Sequence[Figure], layouts: Sequence[Layout]) -> WholeSheet:
    """The figure that shows most, on the sheet that lies the way for it."""
    ways = [(figure, way) for way in layouts for figure in figures]
    air = (_BESIDE, _ABOVE)
    rooms = [largest_in(figure.linework.bounds(), way.room, air) for figure, way in ways]
    least = _SMALLER[-1] * min(rooms)
    frames = [_Frame(figure, way, least) for figure, way in ways]
    frame = max(frames, key=_Frame.worth)
    figure, layout = frame.figure, frame.layout
    shown = frame.placed()
    scale, origin = shown.scale, shown.origin
    marks: list[Mark] = []
    if len(figure.ties):
        marks.append(Strokes(Role.CENTRE, figure.ties * scale + np.array(origin * 2)))
    owners = tuple(f"part:{part.name}" for part in figure.parts)
    marks += linework_marks(figure.linework, scale, origin, owners)
    marks += label_marks(shown.labels, origin, layout.lettering)
    if shown.key is not None:
        _, _, right, top = frame.room
        marks += shown.key.marks((right - shown.key.width, top))
    marks += frame.sentence.marks(frame.corner)
    marks += [ring(point, figure.linework.view, scale, origin) for point in figure.picked]
    return WholeSheet(tuple(marks), figure, scale, origin, shown.labels, layout)


class _Frame:
    """A figure and the sheet that it may stand on; ``least`` is the least scale."""

    def __init__(self, figure: Figure, layout: Layout, least: float) -> None:
        self.figure, self.layout = figure, layout
        self.spots = [one for one in figure.spots if one.shows(least)]
        seen = [one.index for one in self.spots]
        words = not_seen(figure.parts, seen, layout.words)
        self.sentence, self.corner, self.room = under(words, layout)
        self.numbering = Numbering(figure.parts)
        rows = self.numbering.rows(seen, layout.words)
        self.key = name_list(rows, layout, self.room[3] - self.room[1])

    def worth(self) -> tuple[int, float]:
        """How many parts it shows, and how large."""
        return len(self.spots), self._fill(many=len(self.spots) > _MANY)

    def placed(self) -> _Placed:
        """The figure with names; with numbers where there are too many for them."""
        names = [in_words(part.title, self.layout.words) for part in self.figure.parts]
        tries: list[_Placed] = []
        if len(self.spots) <= _MANY:
            for smaller in _SMALLER:
                tries.append(self._labelled(names, smaller, numbers=False))
                if self._all_near(tries[-1]):
                    return tries[-1]
        whole = [one for one in tries if len(one.labels) == len(self.spots)]
        nearest = min(whole, key=_longest, default=None)
        if nearest is not None and _longest(nearest) <= _TOO_FAR:
            return nearest
        numbers = self.numbering.texts
        for smaller in _SMALLER:
            tries.append(self._labelled(numbers, smaller, numbers=True))
            if self._all_near(tries[-1]):
                return tries[-1]
        return max(tries, key=lambda one: (len(one.labels), -_longest(one)))

    def _all_near(self, shown: _Placed) -> bool:
        """Whether each part has its label, and none so far off that its leader runs over others."""
        wanted = self._to_label(numbers=shown.key is not None)
        return len(shown.labels) == len(wanted) and _longest(shown) <= _FAR

    def _to_label(self, *, numbers: bool) -> Sequence[Spot]:
        return self.numbering.to_label(self.spots) if numbers else self.spots

    def _labelled(self, texts: Sequence[str], smaller: float, *, numbers: bool) -> _Placed:
        scale = smaller * self._fill(many=numbers)
        left, bottom, right, top = room = self._beside(many=numbers)
        x, y = origin = centred(self.figure.linework.bounds(), scale, room)
        spots = [one.scaled(scale) for one in self._to_label(numbers=numbers)]
        about = (left - x, bottom - y, right - x, top - y)
        lines = self.figure.lines * scale
        labels = named(texts, spots, lines, self.layout.lettering, about)
        return _Placed(scale, origin, labels, self.key if numbers else None)

    def _fill(self, *, many: bool) -> float:
        air = (_ABOVE if many else _BESIDE, _ABOVE)
        return largest_in(self.figure.linework.bounds(), self._beside(many=many), air)

    def _beside(self, *, many: bool) -> Room:
        """The room, less the list of names if there are so many."""
        left, bottom, right, top = self.room
        return (left, bottom, right - (self.key.width + _ABOVE if many else 0.0), top)


def _longest(shown: _Placed) -> float:
    return max((label.length for label in shown.labels), default=0.0)
