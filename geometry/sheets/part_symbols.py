"""The marks that a maker pencils on a part: face side, face edge and the way of the grain.

Frame: sheet mm.  The face mark is the old loop whose tail runs to the face edge; the edge mark is
a V that points at the face side.  Common practice, no source.
"""

from __future__ import annotations

import numpy as np

from geometry.drawing.marks import Arc, Fill, Mark, Role, Strokes
from geometry.primitives.frame import Vec2

_LOOP = 1.4  # mm, radius of the face mark's loop
_HEAD = 2.2


def face_side_mark(edge_point: Vec2, *, down: bool) -> tuple[Mark, ...]:
    """A loop with its tail on the face edge at ``edge_point``; ``down`` for a face below it."""
    x, y = edge_point
    way = -1.0 if down else 1.0
    centre = (x + _LOOP, y + way * (3.2 + _LOOP))
    start = (0.0, 270.0) if down else (90.0, 360.0)
    tail = np.array([(x + 0.2, y, x, y + way * 3.2), (x, y + way * 3.2, x, centre[1])])
    return (
        Strokes(Role.TEXT, tail),
        Arc(Role.TEXT, centre, _LOOP, 180.0 - start[1] + 90.0, 180.0 - start[0] + 90.0),
    )


def face_edge_mark(foot: Vec2, *, down: bool) -> tuple[Mark, ...]:
    """A V whose point stands at ``foot``, on the face side's arris; ``down`` when it opens down."""
    x, y = foot
    rise = -3.0 if down else 3.0
    strokes = np.array([(x, y, x - 1.5, y + rise), (x, y, x + 1.5, y + rise)])
    return (Strokes(Role.TEXT, strokes),)


def grain_arrow(middle: Vec2, length: float, *, turn: bool = False) -> tuple[Mark, ...]:
    """A two-headed arrow along the grain; upright with ``turn``."""
    x, y = middle
    half = length / 2.0
    dx, dy = (0.0, half) if turn else (half, 0.0)
    marks: list[Mark] = [Strokes(Role.TEXT, np.array([(x - dx, y - dy, x + dx, y + dy)]))]
    for way in (1.0, -1.0):
        tip = (x + way * dx, y + way * dy)
        ux, uy = (0.0, way) if turn else (way, 0.0)
        back = (tip[0] - ux * _HEAD, tip[1] - uy * _HEAD)
        marks.append(
            Fill(
                Role.TEXT,
                (
                    tip,
                    (back[0] - uy * 0.7, back[1] + ux * 0.7),
                    (back[0] + ux * 0.6, back[1] + uy * 0.6),
                ),
            )
        )
    return tuple(marks)
