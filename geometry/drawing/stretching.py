"""Marks moved and stretched, each axis by its own factor: a printer's correction."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

import numpy as np

from geometry.drawing.marks import Arc, Fill, Label, Mark, Strokes
from geometry.primitives.frame import Vec2

_CHORDS_PER_TURN = 96


@dataclass(frozen=True, slots=True)
class Stretch:
    """Takes the point ``origin`` to ``to`` and stretches by ``factors`` about it."""

    origin: Vec2
    to: Vec2
    factors: tuple[float, float]

    def point(self, point: Vec2) -> Vec2:
        return (
            self.to[0] + (point[0] - self.origin[0]) * self.factors[0],
            self.to[1] + (point[1] - self.origin[1]) * self.factors[1],
        )

    def mark(self, mark: Mark) -> Mark:
        """The mark stretched; lettering keeps its size, and an arc becomes chords."""
        match mark:
            case Strokes():
                scale = np.array(self.factors * 2)
                shifted = mark.segments - np.array(self.origin * 2)
                return replace(mark, segments=shifted * scale + np.array(self.to * 2))
            case Arc():
                return self.mark(_chords(mark))
            case Fill():
                return replace(mark, points=tuple(self.point(p) for p in mark.points))
            case Label():
                return replace(mark, at=self.point(mark.at))


def _chords(arc: Arc) -> Strokes:
    sweep = arc.end_deg - arc.start_deg
    steps = max(4, math.ceil(_CHORDS_PER_TURN * sweep / 360.0))
    turns = np.radians(np.linspace(arc.start_deg, arc.end_deg, steps + 1))
    points = np.array(arc.centre) + arc.radius * np.column_stack([np.cos(turns), np.sin(turns)])
    return Strokes(arc.role, np.hstack([points[:-1], points[1:]]), arc.owner)
