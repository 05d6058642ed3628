"""The squares that prove a full-size sheet: 100 mm and 4 in, with rulers on two sides of each.

Frame: true mm from the lower left corner of the block; the sheet scales them as it scales the
part, so they show what the printer does to the part.

The two squares stand a little apart on every side, so that a rule laid on one cannot be read on
the other.  4 in are 101.6 mm (exact).
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from geometry.drawing.marks import Anchor, Label, Mark, Role, Strokes
from geometry.primitives.frame import Vec2
from shared.units import MM_PER_INCH

MM_SQUARE = 100.0
INCH_SQUARE = 4.0 * MM_PER_INCH
_TICK = 2.5  # mm, the long ticks
_APART = 4.0  # mm from the sides of one square to those of the other
_START = 3.0  # mm from the block's corner to the millimetre square, for its ticks
BLOCK = _START + _APART + INCH_SQUARE + _TICK + 0.5
_TEXT = 2.5

Lines = NDArray[np.float64]


def check_squares(corner: Vec2) -> tuple[Mark, ...]:
    """Both squares with their rulers and words; the block's lower left corner at ``corner``."""
    x, y = corner[0] + _START, corner[1] + _START
    ix, iy = x + _APART, y + _APART
    return (
        Strokes(Role.TEXT, _square(x, y, MM_SQUARE), owner="check 100 mm"),
        Strokes(Role.TEXT, _square(ix, iy, INCH_SQUARE), owner="check 4 in"),
        Strokes(Role.TEXT, _millimetre_ticks(x, y)),
        Strokes(Role.TEXT, _inch_ticks(ix, iy)),
        Label(Role.TEXT, "100 mm", (x + MM_SQUARE / 2.0, y + 0.9), _TEXT, Anchor.MIDDLE),
        Label(
            Role.TEXT,
            "4 in",
            (ix + INCH_SQUARE / 2.0, iy + INCH_SQUARE - 1.0 - _TEXT),
            _TEXT,
            Anchor.MIDDLE,
        ),
    )


def _square(x: float, y: float, side: float) -> Lines:
    return np.array(
        [
            (x, y, x + side, y),
            (x + side, y, x + side, y + side),
            (x + side, y + side, x, y + side),
            (x, y + side, x, y),
        ]
    )


def _millimetre_ticks(x: float, y: float) -> Lines:
    """Outward ticks on the lower and the left side: each 5 mm, longer each 10 mm."""
    lines = []
    for k in range(21):
        at, tick = 5.0 * k, _TICK if k % 2 == 0 else _TICK / 2.0
        lines.append((x + at, y - tick, x + at, y - 0.4))
        lines.append((x - tick, y + at, x - 0.4, y + at))
    return np.array(lines)


def _inch_ticks(x: float, y: float) -> Lines:
    """Outward ticks on the upper and the right side: each quarter of an inch, longer each inch."""
    lines = []
    for k in range(17):
        at, tick = MM_PER_INCH * k / 4.0, _TICK if k % 4 == 0 else _TICK / 2.0
        far_x, far_y = x + INCH_SQUARE, y + INCH_SQUARE
        lines.append((x + at, far_y + 0.4, x + at, far_y + tick))
        lines.append((far_x + 0.4, y + at, far_x + tick, y + at))
    return np.array(lines)
