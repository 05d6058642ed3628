"""Centre lines of what is round, on a sheet: a cross where it is seen end on, else its axis.

Frame: sheet mm about the origin of a view.  Far out they thin themselves: what is too small on the
sheet for a round to be told from a dot has none.  Long-dashed dotted narrow lines that stand out a
little (line 04.1 of ISO 128-24, from memory; how far is our choice).
"""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np

from geometry.design.part import Part
from geometry.drawing.marks import Role, Strokes
from geometry.drawing.text_box import Line, TextBox, broken_around
from geometry.primitives.frame import Vec2, dot, norm, subtract
from geometry.views.round_axes import RoundAxis, round_axes
from geometry.views.view import View

_SMALLEST = 2.5  # mm across on the sheet
_OUT = 1.5  # mm that a centre line stands out at each end
_END_ON = 0.999  # cosine of the lean at which an axis counts as seen end on
_AIR = 0.6  # mm between a text and what is left of a line on either side of it
_IN_PLANE = 0.01  # mm
_DECIMALS = 2


def centre_lines(
    parts: Sequence[Part],
    view: View,
    scale: float,
    texts: Sequence[TextBox] = (),
    cut_at: float | None = None,
) -> list[Strokes]:
    """One mark, or none where nothing round is large enough; interrupted at ``texts``.

    In a section, ``cut_at`` that height of the view, what the plane meets: end on or all along.
    """
    found: dict[Line, int] = {}
    for place, part in enumerate(parts):
        for axis in round_axes(part.shape, round(_SMALLEST / (2.0 * scale), 6)):
            if _met(axis, part, view, cut_at):
                # A tenon and its hole are one round: the first of them has the line.
                for line in _lines(axis, part, view, scale):
                    found.setdefault(line, place)
    if not found:
        return []
    pieces = [(p, place) for line, place in found.items() for p in broken_around(line, texts, _AIR)]
    owners = tuple(f"part:{part.name}" for part in parts)
    owner_of = np.array([place for _, place in pieces], dtype=np.intp)
    segments = np.array([piece for piece, _ in pieces], dtype=np.float64).reshape(-1, 4)
    return [Strokes(Role.CENTRE, segments, owners=owners, owner_of=owner_of)]


def _met(axis: RoundAxis, part: Part, view: View, cut_at: float | None) -> bool:
    """Whether a plane goes through an axis, or contains it."""
    if cut_at is None:
        return True
    heights = [dot(part.frame.to_bench(end), view.toward) for end in (axis.start, axis.end)]
    low, high = min(heights), max(heights)
    end_on = high - low > _END_ON * norm(subtract(axis.end, axis.start))
    return low <= cut_at <= high if end_on else max(high - cut_at, cut_at - low) < _IN_PLANE


def _lines(axis: RoundAxis, part: Part, view: View, scale: float) -> tuple[Line, ...]:
    start, end = part.frame.to_bench(axis.start), part.frame.to_bench(axis.end)
    (u0, v0), (u1, v1) = (_on_sheet(view.project(point), scale) for point in (start, end))
    way = subtract(end, start)
    if abs(dot(way, view.toward)) > _END_ON * norm(way):
        out = round(axis.radius * scale + _OUT, _DECIMALS)
        return (u0 - out, v0, u0 + out, v0), (u0, v0 - out, u0, v0 + out)
    long = math.hypot(u1 - u0, v1 - v0)
    du, dv = (u1 - u0) / long * _OUT, (v1 - v0) / long * _OUT
    return ((u0 - du, v0 - dv, u1 + du, v1 + dv),)


def _on_sheet(point: Vec2, scale: float) -> Vec2:
    return round(point[0] * scale, _DECIMALS), round(point[1] * scale, _DECIMALS)
