"""What is left on round a piece until it is fitted, and then planed or trimmed off."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from geometry.cuts.contour import Contour
from geometry.cuts.cut import Blank, Cut
from geometry.cuts.removal import HalfSpace, Removal


@dataclass(frozen=True, slots=True)
class Trim:
    """The finished rectangle x_low..x_high, y_low..y_high of a larger blank, in mm."""

    x_low: float
    x_high: float
    y_low: float
    y_high: float

    @property
    def title(self) -> str:
        return "trim to fit"

    def removals(self, blank: Blank) -> tuple[Removal, ...]:
        sides = (
            (self.x_low > 0.0, (self.x_low, 0.0, 0.0), (-1.0, 0.0, 0.0)),
            (self.x_high < blank.length, (self.x_high, 0.0, 0.0), (1.0, 0.0, 0.0)),
            (self.y_low > 0.0, (0.0, self.y_low, 0.0), (0.0, -1.0, 0.0)),
            (self.y_high < blank.width, (0.0, self.y_high, 0.0), (0.0, 1.0, 0.0)),
        )
        return tuple(HalfSpace(point, outward) for needed, point, outward in sides if needed)

    def contours(self, blank: Blank) -> tuple[Contour, ...]:  # noqa: ARG002
        """None: a machine cuts the blank, the maker trims it."""
        return ()


def finished(blank: Blank, cuts: Iterable[Cut]) -> Trim:
    """The rectangle that sizes and places count from: that of the piece once it is fitted."""
    whole = Trim(0.0, blank.length, 0.0, blank.width)
    return next((cut for cut in cuts if isinstance(cut, Trim)), whole)
