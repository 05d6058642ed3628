"""A ring round a point of the bench that is picked out, in any picture that has a view and a scale.

Frame: sheet mm.  Rings are for the screen: they are drawn where a finding is shown, never printed.
"""

from __future__ import annotations

from geometry.drawing.marks import Arc, Role
from geometry.primitives.frame import Vec2, Vec3
from geometry.views.view import View

PICKED = "picked place"
"""The owner of every ring."""

_RADIUS = 4.0  # mm of the sheet, whatever its scale


def ring(place: Vec3, view: View, scale: float, origin: Vec2 = (0.0, 0.0)) -> Arc:
    """Round a point of the bench, for a picture of that scale about ``origin``."""
    u, v = view.project(place)
    at = (u * scale + origin[0], v * scale + origin[1])
    return Arc(Role.VISIBLE, at, _RADIUS, 0.0, 360.0, PICKED)
