"""Where a slanted length, or one inside the drawing, can stand: candidates, the best first.

Frame: sheet mm with the view's origin at (0, 0).
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from geometry.dimensioning.free_dimension import FreeDimension
from geometry.dimensioning.placed import Arrow, DimensionStyle, Extent, PlacedDimension
from geometry.drawing.text_box import HALF_BOX, Line, TextBox
from geometry.primitives.frame import Vec2

TEXT_ROOM = 1.0  # mm that a span must be longer than the text it holds
_OFFSETS = (8.0, 12.0, 17.0, 23.0, 30.0, 38.0, 48.0, 60.0)


def slanted_places(
    wanted: FreeDimension, outline: Extent, style: DimensionStyle
) -> Iterator[PlacedDimension]:
    tx, ty = wanted.along
    nx, ny = -ty, tx
    if ny < -1e-9 or (abs(ny) <= 1e-9 and nx < 0.0):
        nx, ny = -nx, -ny
    start_off = wanted.start[0] * nx + wanted.start[1] * ny
    end_off = wanted.end[0] * nx + wanted.end[1] * ny
    if wanted.side == 0:
        between = (start_off + end_off) / 2.0
        offsets = [between, *(between + w * o for o in _OFFSETS for w in (1.0, -1.0))]
    else:
        edge = wanted.side * max(wanted.side * start_off, wanted.side * end_off)
        left, bottom, right, top = outline
        corners = [x * nx + y * ny for x in (left, right) for y in (bottom, top)]
        beyond = wanted.side * max(wanted.side * c for c in corners) + wanted.side * style.first_row
        offsets = [*(edge + wanted.side * o for o in _OFFSETS), beyond]
    if wanted.room is not None:
        least = wanted.room - style.clearance - 2.0 * HALF_BOX * style.text_height
        offsets = [o for o in offsets if abs(o - (start_off + end_off) / 2.0) <= least]
    for offset in offsets:
        yield from _on_a_line(wanted, (nx, ny), offset, style)


def _on_a_line(
    wanted: FreeDimension, normal: Vec2, offset: float, style: DimensionStyle
) -> Iterator[PlacedDimension]:
    (tx, ty), (nx, ny) = wanted.along, normal
    s0 = wanted.start[0] * tx + wanted.start[1] * ty
    s1 = wanted.end[0] * tx + wanted.end[1] * ty
    low, high = min(s0, s1), max(s0, s1)
    span = high - low
    inside = span >= 2.0 * style.arrow_length + 2.0
    tail = 0.0 if inside else style.tail
    turn = math.degrees(math.atan2(ty, tx))
    turn = turn - 180.0 if turn > 90.0 + 1e-9 else turn + 180.0 if turn <= -90.0 + 1e-9 else turn
    up_x, up_y = -math.sin(math.radians(turn)), math.cos(math.radians(turn))
    raised = style.clearance + HALF_BOX * style.text_height

    def point(s: float, o: float) -> Vec2:
        return (s * tx + o * nx, s * ty + o * ny)

    if span >= wanted.width + TEXT_ROOM:
        free = (span - wanted.width - TEXT_ROOM) / 2.0
        spots = [(low + high) / 2.0 + free * f for f in (0.0, 0.5, -0.5, 1.0, -1.0)]
    else:
        out = style.gap + wanted.width / 2.0
        spots = [high + out, low - out]
    way = -1.0 if inside else 1.0
    arrows = (
        Arrow(point(low, offset), (tx * way, ty * way)),
        Arrow(point(high, offset), (-tx * way, -ty * way)),
    )
    extensions: list[Line] = []
    for x, y in (wanted.start, wanted.end):
        s, o = x * tx + y * ty, x * nx + y * ny
        away = math.copysign(1.0, offset - o)
        if abs(offset - o) > style.gap:
            extensions.append(
                (*point(s, o + away * style.gap), *point(s, offset + away * style.overshoot))
            )
    for spot in spots:
        reach = (wanted.width / 2.0 + style.clearance) if not low <= spot <= high else 0.0
        line = (
            *point(min(low - tail, spot - reach), offset),
            *point(max(high + tail, spot + reach), offset),
        )
        x, y = point(spot, offset)
        middle = (x + up_x * raised, y + up_y * raised)
        box = TextBox.about(middle, wanted.width, style.text_height, turn)
        yield PlacedDimension(
            wanted.name, wanted.role, wanted.text, box, line, (line, *extensions), arrows
        )
