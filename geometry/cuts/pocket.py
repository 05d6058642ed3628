"""A rectangular hollow in a face, the removal that rebates and grooves have in common."""

from __future__ import annotations

from geometry.cuts.contour import Face
from geometry.cuts.cut import Blank
from geometry.cuts.overrun import OVERRUN, past
from geometry.cuts.removal import Prism
from geometry.primitives.frame import Vec2
from geometry.primitives.path import Path


def pocket(blank: Blank, face: Face, depth: float, x: Vec2, y: Vec2) -> Prism:
    """Over x[0]..x[1], y[0]..y[1] of a face, ``depth`` mm deep, past any edge it reaches."""
    path = Path.rectangle(
        past(x[0], 0.0, blank.length),
        past(y[0], 0.0, blank.width),
        past(x[1], 0.0, blank.length),
        past(y[1], 0.0, blank.width),
    )
    if face is Face.FACE_SIDE:
        return Prism(path, -OVERRUN, depth)
    return Prism(path, blank.thickness - depth, blank.thickness + OVERRUN)
