"""Both edges of a slip rounded to half circles, to fill a mortise with round ends."""

from __future__ import annotations

from dataclasses import dataclass

from geometry.cuts.contour import Contour
from geometry.cuts.cut import Blank
from geometry.cuts.overrun import OVERRUN
from geometry.cuts.removal import SECTION_FRAME, Prism, Removal
from geometry.primitives.path import QUARTER_TURN_BULGE, Path


@dataclass(frozen=True, slots=True)
class RoundedEdges:
    """Face edge and far edge, with half the blank's thickness as their radius."""

    @property
    def title(self) -> str:
        return "rounded edges"

    def removals(self, blank: Blank) -> tuple[Removal, ...]:
        t, w = blank.thickness, blank.width
        r = t / 2.0
        low = Path(
            (
                (-OVERRUN, -OVERRUN, 0.0),
                (r, -OVERRUN, 0.0),
                (r, 0.0, -QUARTER_TURN_BULGE),
                (0.0, r, -QUARTER_TURN_BULGE),
                (r, t, 0.0),
                (r, t + OVERRUN, 0.0),
                (-OVERRUN, t + OVERRUN, 0.0),
            )
        )
        high = Path(
            (
                (w + OVERRUN, t + OVERRUN, 0.0),
                (w - r, t + OVERRUN, 0.0),
                (w - r, t, -QUARTER_TURN_BULGE),
                (w, r, -QUARTER_TURN_BULGE),
                (w - r, 0.0, 0.0),
                (w - r, -OVERRUN, 0.0),
                (w + OVERRUN, -OVERRUN, 0.0),
            )
        )
        return tuple(
            Prism(path, -OVERRUN, blank.length + OVERRUN, SECTION_FRAME) for path in (low, high)
        )

    def contours(self, blank: Blank) -> tuple[Contour, ...]:  # noqa: ARG002
        """None: they are planed or moulded along the whole slip."""
        return ()
