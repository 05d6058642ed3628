"""Gaps sawn into the end of a piece, right through its thickness: between tails, or fingers."""

from __future__ import annotations

from dataclasses import dataclass

from geometry.cuts.contour import Contour
from geometry.cuts.cut import Blank
from geometry.cuts.overrun import OVERRUN
from geometry.cuts.removal import Prism, Removal
from geometry.primitives.frame import Vec2
from geometry.primitives.path import Path
from shared.tolerances import COPLANAR


@dataclass(frozen=True, slots=True)
class Gap:
    """One gap across the width: where its sides meet the end, and the base line.  mm of y."""

    end_low: float
    end_high: float
    base_low: float
    base_high: float


@dataclass(frozen=True, slots=True)
class EndGaps:
    """Gaps from the end at x = ``x_end`` to the base line at ``x_base``, in mm.

    A gap that reaches an edge of the blank is open there.
    """

    title: str
    x_end: float
    x_base: float
    gaps: tuple[Gap, ...]

    def removals(self, blank: Blank) -> tuple[Removal, ...]:
        return tuple(
            Prism(self._outline(gap, blank), -OVERRUN, blank.thickness + OVERRUN)
            for gap in self.gaps
        )

    def contours(self, blank: Blank) -> tuple[Contour, ...]:  # noqa: ARG002
        """None of their own: the gaps are part of the outline."""
        return ()

    def _outline(self, gap: Gap, blank: Blank) -> Path:
        low = self._side(gap.end_low, gap.base_low)
        if max(gap.end_low, gap.base_low) <= COPLANAR:
            low = self._side(-OVERRUN, -OVERRUN)
        high = self._side(gap.end_high, gap.base_high)
        if min(gap.end_high, gap.base_high) >= blank.width - COPLANAR:
            high = self._side(blank.width + OVERRUN, blank.width + OVERRUN)
        return Path.polygon((*low, *high[::-1]))

    def _side(self, end: float, base: float) -> tuple[Vec2, Vec2]:
        """One side of a gap, carried on past the end into the air."""
        run = self.x_end - self.x_base
        air = self.x_end + (OVERRUN if run > 0.0 else -OVERRUN)
        rise = (end - base) / run
        return (air, base + rise * (air - self.x_base)), (self.x_base, base)
