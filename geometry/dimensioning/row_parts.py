"""A dimension to be put in a row, and the side of the view along which rows run.

Frame: ``s`` runs along the side (to the right, or upward), ``d`` outward from the outline, both in
sheet mm.  One set of rules serves all four sides.
"""

from __future__ import annotations

from dataclasses import dataclass

from geometry.drawing.marks import Role
from geometry.drawing.text_box import Line
from geometry.primitives.frame import Vec2


@dataclass(frozen=True, slots=True)
class RowDimension:
    """A dimension to be put in a row: its ends on ``s``, and how deep its points lie (d <= 0)."""

    name: str
    role: Role
    text: str
    width: float
    low: float
    high: float
    low_depth: float
    high_depth: float
    rank: int


@dataclass(frozen=True, slots=True)
class Margin:
    """A side of the outline: ``base`` is its x or y, ``outward`` +1 or -1 along that axis."""

    horizontal: bool
    base: float
    outward: int
    low: float
    high: float

    def point(self, s: float, d: float) -> Vec2:
        away = self.base + self.outward * d
        return (s, away) if self.horizontal else (away, s)

    def line(self, s0: float, d0: float, s1: float, d1: float) -> Line:
        return (*self.point(s0, d0), *self.point(s1, d1))

    @property
    def text_side(self) -> int:
        """+1 where text, above its line as it is read, stands farther out than the line."""
        return self.outward if self.horizontal else -self.outward
