"""Pictures of one detail, drawn at scales until they fit a page, and kept for when they are asked
for again.

Frame: sheet mm about a picture's own origin.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from geometry.drawing.marks import Mark
from geometry.primitives.frame import Vec2
from geometry.sheets.layout import Room
from shared.paper import SCALES

LARGEST_ROOM = (95.0, 75.0)  # mm, width and height that an object may take
_SMALL = 42.0  # mm
_BESIDE = 0.8  # of the room, for what is not to scale
_HAIR = 1e-6
_GROWTH = 1.15  # of a picture that needs no standard scale, at a time
_UNMEASURED = 0.25  # of what a size counts, for a picture that nobody measures


@dataclass(frozen=True, slots=True, eq=False)
class Drawn:
    """A picture at a scale: what it takes, and its marks, made when the page is sure of it."""

    extent: Room
    marks: Callable[[], Sequence[Mark]]

    @property
    def width(self) -> float:
        return self.extent[2] - self.extent[0]

    @property
    def height(self) -> float:
        return self.extent[3] - self.extent[1]

    @property
    def size(self) -> Vec2:
        return (self.width, self.height)


@dataclass(frozen=True, slots=True, eq=False)
class Picture:
    """The object's size in mm and how it is drawn at a scale.

    ``to_scale`` pictures take a standard scale; others, that nobody measures, any.  One that is
    slow to draw tells at once what it takes ``at_least`` at a scale, width and height.
    """

    size: Vec2
    draw: Callable[[float], Drawn]
    to_scale: bool = True
    at_least: Callable[[float], Vec2] | None = None

    @property
    def largest(self) -> float:
        """True size, or double for what is small."""
        return 1.0 if max(self.size) > _SMALL else 2.0

    def scale_in(self, room: Vec2) -> float:
        """The largest scale at which the object takes no more than ``room`` on paper."""
        wide, high = (max(size, 1e-6) for size in self.size)
        most = min(room[0] / wide, room[1] / high, self.largest)
        if not self.to_scale:
            return _BESIDE * most
        fitting = [step.factor for step in SCALES if step.factor <= most + 1e-9]
        return fitting[0] if fitting else SCALES[-1].factor


class Easel:
    """Pictures drawn at scales, each kept for when it is asked for again."""

    def __init__(self, pictures: Sequence[Picture]) -> None:
        self.pictures = pictures
        self._kept: dict[tuple[int, float], Drawn] = {}

    def drawn(self, scales: Sequence[float]) -> list[Drawn]:
        return [self._at(index, scale) for index, scale in enumerate(scales)]

    def least_sizes(self, scales: Sequence[float]) -> list[Vec2] | None:
        """What the pictures take at the least, of those that are slow to draw as far as they tell;
        None where all are drawn, or drawn at once, so that there is nothing to spare."""
        slow = [
            self.pictures[index].at_least if (index, scale) not in self._kept else None
            for index, scale in enumerate(scales)
        ]
        if not any(slow):
            return None
        return [
            self._at(index, scale).size if at_least is None else at_least(scale)
            for index, (scale, at_least) in enumerate(zip(scales, slow, strict=True))
        ]

    def _at(self, index: int, scale: float) -> Drawn:
        if (index, scale) not in self._kept:
            self._kept[index, scale] = self.pictures[index].draw(scale)
        return self._kept[index, scale]

    def larger(self, index: int, scale: float) -> float | None:
        """The next larger scale of a picture, None when it is large enough."""
        picture = self.pictures[index]
        wide, high = picture.size
        if picture.to_scale:
            scale = min((s.factor for s in SCALES if s.factor > scale + 1e-9), default=scale)
        else:
            scale *= _GROWTH
        most_wide, most_high = LARGEST_ROOM
        if scale > picture.largest or wide * scale > most_wide or high * scale > most_high:
            return None
        return scale

    def smaller(self, index: int, scale: float) -> float:
        """The next smaller scale of a picture."""
        if not self.pictures[index].to_scale:
            return scale / _GROWTH**2
        return max((s.factor for s in SCALES if s.factor < scale - 1e-9), default=scale)

    def drawn_size(self, index: int, scale: float) -> float:
        """The larger side of a picture's object on paper, mm."""
        return scale * max(self.pictures[index].size)

    def filled(self, scales: Sequence[float]) -> float:
        """How large the pictures came out: the sum of the logarithms of their sizes, so that one
        that is too small to read is not made up for by another; those that carry dimensions
        count most."""
        found = 0.0
        for picture, scale in zip(self.pictures, scales, strict=True):
            wide, high = picture.size
            size = math.log(scale * math.sqrt(max(wide * high, _HAIR)))
            found += size if picture.to_scale else _UNMEASURED * size
        return found
