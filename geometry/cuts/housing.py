"""A housing across a board, open at the face edge and stopped short of the far edge.

A router leaves the corners of the stopped end rounded to the cutter's radius; the arcs are kept
true in the drawing and in the DXF.
"""

from __future__ import annotations

from dataclasses import dataclass

from geometry.cuts.contour import Contour, Face, Operation
from geometry.cuts.cut import Blank
from geometry.cuts.overrun import OVERRUN
from geometry.cuts.removal import Prism, Removal
from geometry.primitives.path import HALF_TURN_BULGE, QUARTER_TURN_BULGE, BulgedVertex, Path
from shared.tolerances import COPLANAR

_HAIR = 0.001  # mm


@dataclass(frozen=True, slots=True)
class StoppedHousing:
    """Between ``x_low`` and ``x_high``, from y = 0 to ``stop``, ``depth`` deep; all in mm.

    ``corner_radius`` is the cutter's; at most half the housing's width.
    """

    x_low: float
    x_high: float
    stop: float
    depth: float
    corner_radius: float
    face: Face = Face.FACE_SIDE

    @property
    def title(self) -> str:
        return "stopped housing"

    @property
    def width(self) -> float:
        return self.x_high - self.x_low

    def path(self, y_open: float = 0.0, beyond: float = 0.0) -> Path:
        """The outline, counter-clockwise, opened at ``y_open``; ``beyond`` is added to its stop."""
        r = min(self.corner_radius, self.width / 2.0)
        low, high, stop = self.x_low, self.x_high, self.stop + beyond
        vertices: list[BulgedVertex] = [(low, y_open, 0.0), (high, y_open, 0.0)]
        if r <= 0.0:
            vertices += [(high, stop, 0.0), (low, stop, 0.0)]
        elif self.width - 2.0 * r < 1e-9:
            vertices += [(high, stop - r, HALF_TURN_BULGE), (low, stop - r, 0.0)]
        else:
            vertices += [
                (high, stop - r, QUARTER_TURN_BULGE),
                (high - r, stop, 0.0),
                (low + r, stop, QUARTER_TURN_BULGE),
                (low, stop - r, 0.0),
            ]
        return Path(tuple(vertices))

    def removals(self, blank: Blank) -> tuple[Removal, ...]:
        # One that stops at the joint of a lipping leaves no skin of sheet before that.
        path = self.path(-OVERRUN, _HAIR if abs(self.stop - blank.width) <= COPLANAR else 0.0)
        if self.face is Face.FACE_SIDE:
            return (Prism(path, -OVERRUN, self.depth),)
        return (Prism(path, blank.thickness - self.depth, blank.thickness + OVERRUN),)

    def contours(self, blank: Blank) -> tuple[Contour, ...]:  # noqa: ARG002
        return (Contour(Operation.POCKET, self.face, self.path(), self.depth, runs_out=True),)
