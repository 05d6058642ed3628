"""Where the sheet lies in the window: between sheet millimetres and window pixels.

Sheet coordinates run up from the lower left corner in mm, window coordinates down from the
upper left in logical pixels.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from geometry.primitives.frame import Vec2

SMALLEST_SCALE = 1.0 / 100.0
LARGEST_SCALE = 5.0


@dataclass(frozen=True, slots=True)
class SheetPlace:
    """``density`` pixels to the sheet mm; the sheet's origin stands at (``left``, ``bottom``)."""

    density: float
    left: float
    bottom: float

    def to_window(self, at: Vec2) -> Vec2:
        return (self.left + at[0] * self.density, self.bottom - at[1] * self.density)

    def to_sheet(self, at: Vec2) -> Vec2:
        return ((at[0] - self.left) / self.density, (self.bottom - at[1]) / self.density)

    def moved(self, by: Vec2) -> SheetPlace:
        """The sheet slid by so many pixels."""
        return replace(self, left=self.left + by[0], bottom=self.bottom + by[1])

    def holding(self, sheet_point: Vec2, at: Vec2) -> SheetPlace:
        """The same density with ``sheet_point`` under the pixel ``at``."""
        return SheetPlace(
            self.density,
            at[0] - sheet_point[0] * self.density,
            at[1] + sheet_point[1] * self.density,
        )


def zoomed(scale: float, notches: float) -> float:
    """The drawing scale after turning the wheel: a notch is 15 %, within sensible ends."""
    return float(min(LARGEST_SCALE, max(SMALLEST_SCALE, scale * 1.15**notches)))
