"""A finger groove: a cove along the arris between the reverse and the near or the far edge.

The cove is a quarter of a round whose middle is the arris itself, so it is as deep as it is high.
"""

from __future__ import annotations

from dataclasses import dataclass

from geometry.cuts.contour import Contour, Face, Operation
from geometry.cuts.cut import Blank
from geometry.cuts.overrun import OVERRUN
from geometry.cuts.removal import Prism, Removal
from geometry.primitives.frame import Frame
from geometry.primitives.path import QUARTER_TURN_BULGE, Path


@dataclass(frozen=True, slots=True)
class FingerGroove:
    """Right along the piece; ``y`` is that of the finished edge, ``inward`` whether the wood lies
    on its far side (the face edge) or on its near side; mm."""

    y: float
    radius: float
    inward: bool

    @property
    def title(self) -> str:
        return "finger groove"

    def removals(self, blank: Blank) -> tuple[Removal, ...]:
        r = self.radius
        quarters = ((r, 0.0), (0.0, r), (-r, 0.0), (0.0, -r))
        path = Path(tuple((u, v, QUARTER_TURN_BULGE) for u, v in quarters))
        along = Frame.of((0.0, self.y, blank.thickness), (0, 1, 0), (0, 0, 1))
        return (Prism(path, -OVERRUN, blank.length + OVERRUN, along),)

    def contours(self, blank: Blank) -> tuple[Contour, ...]:
        """The line on the reverse at which the cove ends."""
        y = self.y + (self.radius if self.inward else -self.radius)
        line = Path.line((0.0, y), (blank.length, y))
        return (Contour(Operation.SCRIBE, Face.REVERSE, line),)
