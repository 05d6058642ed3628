"""A round tenon at the start of a piece, along its grain, with a flat shoulder that may slant."""

from __future__ import annotations

import math
from dataclasses import dataclass

from geometry.cuts.contour import Contour
from geometry.cuts.cut import Blank
from geometry.cuts.overrun import OVERRUN
from geometry.cuts.removal import HalfSpace, Prism, Removal
from geometry.primitives.frame import X_AXIS, Frame, Vec2, Vec3
from geometry.primitives.path import HALF_TURN_BULGE, Path

_LAP = 1.0  # mm by which the halves overlap away from the tenon, so that no skin is left between


@dataclass(frozen=True, slots=True)
class RoundTenon:
    """Round (``axis_y``, ``axis_z``) everything but ``radius`` is taken off above the shoulder.

    The shoulder is the plane through ``shoulder`` with the unit normal ``outward``, which points
    toward the tenon.  ``steepest`` is the direction in the y, z plane in which the plane's edge
    rises toward the start; the flattened circle has a corner there and opposite, so that an end
    sawn parallel to the shoulder is as long as the true one.  All in mm.
    """

    axis_y: float
    axis_z: float
    radius: float
    shoulder: Vec3
    outward: Vec3
    steepest: Vec2

    @property
    def title(self) -> str:
        return "round tenon"

    def removals(self, blank: Blank) -> tuple[Removal, ...]:
        """Two halves round the tenon, each from the start of the blank to the shoulder."""
        u, v = self.steepest
        # A frame whose z runs down the grain and whose x is the steepest direction.
        frame = Frame((0.0, self.axis_y, self.axis_z), (0.0, u, v), (0.0, -v, u), X_AXIS)
        far = math.hypot(blank.width, blank.thickness) + OVERRUN
        r = self.radius
        end = HalfSpace(self.shoulder, (-self.outward[0], -self.outward[1], -self.outward[2]))
        halves = (
            ((far, -_LAP, 0.0), (far, far, 0.0), (-far, far, 0.0), (-far, -_LAP, 0.0)),
            ((-far, _LAP, 0.0), (-far, -far, 0.0), (far, -far, 0.0), (far, _LAP, 0.0)),
        )
        sides = (1.0, -1.0)
        return tuple(
            Prism(
                Path((*outer, (-r * side, 0.0, -HALF_TURN_BULGE), (r * side, 0.0, 0.0))),
                -OVERRUN,
                blank.length + OVERRUN,
                frame,
                (end,),
            )
            for outer, side in zip(halves, sides, strict=True)
        )

    def contours(self, blank: Blank) -> tuple[Contour, ...]:  # noqa: ARG002
        """None: it is turned or shaped round its axis."""
        return ()
