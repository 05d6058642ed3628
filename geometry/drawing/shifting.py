"""Moving marks on a sheet."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from geometry.drawing.marks import Arc, Fill, Label, Mark, Strokes
from geometry.primitives.frame import Vec2


def shifted(mark: Mark, by: Vec2) -> Mark:
    """The mark moved by ``by``, in sheet mm."""
    dx, dy = by
    match mark:
        case Strokes():
            return replace(mark, segments=mark.segments + np.array((dx, dy, dx, dy)))
        case Arc():
            return replace(mark, centre=(mark.centre[0] + dx, mark.centre[1] + dy))
        case Fill():
            return replace(mark, points=tuple((x + dx, y + dy) for x, y in mark.points))
        case Label():
            return replace(mark, at=(mark.at[0] + dx, mark.at[1] + dy))
