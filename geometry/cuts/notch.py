"""A notch: a rectangle taken out of a corner or an edge, right through the thickness."""

from __future__ import annotations

from dataclasses import dataclass

from geometry.cuts.contour import Contour
from geometry.cuts.cut import Blank
from geometry.cuts.overrun import OVERRUN, past
from geometry.cuts.removal import Prism, Removal
from geometry.primitives.path import Path


@dataclass(frozen=True, slots=True)
class Notch:
    """The rectangle x_low..x_high, y_low..y_high of the face, in mm."""

    x_low: float
    x_high: float
    y_low: float
    y_high: float

    @property
    def title(self) -> str:
        return "notch"

    def removals(self, blank: Blank) -> tuple[Removal, ...]:
        path = Path.rectangle(
            past(self.x_low, 0.0, blank.length),
            past(self.y_low, 0.0, blank.width),
            past(self.x_high, 0.0, blank.length),
            past(self.y_high, 0.0, blank.width),
        )
        return (Prism(path, -OVERRUN, blank.thickness + OVERRUN),)

    def contours(self, blank: Blank) -> tuple[Contour, ...]:  # noqa: ARG002
        """None of its own: a notch is part of the outline."""
        return ()
