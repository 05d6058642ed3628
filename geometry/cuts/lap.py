"""The notch of an angled lap: a slanting gap across the edge of a piece on edge.

Seen on the edge (the xz plane) the notch is a parallelogram, as wide as the piece that crosses;
it is cut from one edge (y = 0 or y = width) to a depth across the width.
"""

from __future__ import annotations

from dataclasses import dataclass

from geometry.cuts.contour import Contour, Face, Operation
from geometry.cuts.cut import Blank
from geometry.cuts.overrun import OVERRUN
from geometry.cuts.removal import Hull, Removal
from geometry.primitives.path import Path


@dataclass(frozen=True, slots=True)
class AngledLap:
    """``x_face`` and ``x_reverse`` are the middle of the notch on the face side and the reverse.

    ``half_span`` is half its length along the grain, ``depth`` its depth across the width, from
    the face edge when ``from_face_edge``, else from the far edge.  All in mm.
    """

    x_face: float
    x_reverse: float
    half_span: float
    depth: float
    from_face_edge: bool

    @property
    def title(self) -> str:
        return "angled lap"

    def removals(self, blank: Blank) -> tuple[Removal, ...]:
        slope = (self.x_reverse - self.x_face) / blank.thickness
        y_air, y_floor = self._reach(blank, OVERRUN)
        corners = tuple(
            (x + side * self.half_span, y, z)
            for z, x in (
                (-OVERRUN, self.x_face - slope * OVERRUN),
                (blank.thickness + OVERRUN, self.x_reverse + slope * OVERRUN),
            )
            for side in (-1.0, 1.0)
            for y in (y_air, y_floor)
        )
        return (Hull(corners),)

    def contours(self, blank: Blank) -> tuple[Contour, ...]:
        y_edge, y_floor = self._reach(blank, 0.0)
        return tuple(
            Contour(
                Operation.SCRIBE,
                face,
                Path(
                    (
                        (x - self.half_span, y_edge, 0.0),
                        (x - self.half_span, y_floor, 0.0),
                        (x + self.half_span, y_floor, 0.0),
                        (x + self.half_span, y_edge, 0.0),
                    ),
                    closed=False,
                ),
            )
            for face, x in ((Face.FACE_SIDE, self.x_face), (Face.REVERSE, self.x_reverse))
        )

    def _reach(self, blank: Blank, beyond: float) -> tuple[float, float]:
        if self.from_face_edge:
            return -beyond, self.depth
        return blank.width + beyond, blank.width - self.depth
