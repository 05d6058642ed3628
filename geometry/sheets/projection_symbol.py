"""The symbol that says how the views are arranged: a truncated cone from the side and the end.

Method: ISO 5456-2 (from memory): the ends are h and 2 h in diameter, the cone 2 h long.  Both
circles are drawn full, so the small end faces the viewer of the circles: in third angle the view
from the left stands on the left, in first angle on the right.
"""

from __future__ import annotations

import numpy as np

from geometry.drawing.marks import Arc, Mark, Role, Strokes
from geometry.primitives.frame import Vec2


def projection_symbol(middle: Vec2, h: float, *, third_angle: bool) -> tuple[Mark, ...]:
    """The symbol centred on ``middle``, 5 h wide and 3 h high with its centre lines; sheet mm."""
    x, y = middle
    shift = 1.25 * h
    circles, cone = (x - shift, x + shift) if third_angle else (x + shift, x - shift)
    left, right = cone - h, cone + h
    outline = np.array(
        [
            (left, y - h / 2.0, left, y + h / 2.0),
            (left, y + h / 2.0, right, y + h),
            (right, y + h, right, y - h),
            (right, y - h, left, y - h / 2.0),
        ]
    )
    reach = 1.4 * h
    axes = np.array(
        [
            (cone - reach, y, cone + reach, y),
            (circles - reach, y, circles + reach, y),
            (circles, y - reach, circles, y + reach),
        ]
    )
    return (
        Strokes(Role.TEXT, outline),
        Arc(Role.TEXT, (circles, y), h / 2.0, 0.0, 360.0),
        Arc(Role.TEXT, (circles, y), h, 0.0, 360.0),
        Strokes(Role.GRID, axes),
    )
