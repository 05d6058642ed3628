"""Dimensions that have found their place round a view, before the view has found its own.

Frame: the view's (u, v) times the scale, in sheet mm, with the view's origin at (0, 0).  Adding
the sheet point of the view's origin gives sheet coordinates, so a view can be moved on the sheet
without placing anything again.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from geometry.drawing.marks import Role
from geometry.drawing.text_box import Line, TextBox
from geometry.primitives.frame import Vec2
from shared.units import SHOWN_MM, Shown

Extent = tuple[float, float, float, float]  # left, bottom, right, top


@dataclass(frozen=True, slots=True)
class DimensionStyle:
    """Sizes on the sheet in mm.

    ``first_row`` is the distance of the nearest dimension line from the outline, 10 mm for the
    usual lettering (ASME Y14.5, from memory); the rows beyond it are ``pitch`` apart, at least
    6 mm, which leaves room for the text between two lines.  ``gap`` and ``overshoot`` are those
    of extension lines.  ``close`` rows, for a window too low for that, have no more air than their
    texts need.  ``brackets`` marks dimensions without a parameter as derived; on a part's own sheet
    all stand alike.
    """

    text_height: float = 3.5
    shown: Shown = SHOWN_MM
    gap: float = 1.5
    overshoot: float = 1.5
    arrow_length: float = 3.0
    clearance: float = 0.5
    brackets: bool = True
    close: bool = False

    @property
    def first_row(self) -> float:
        return self.text_height + (3.5 if self.close else 6.5)

    @property
    def pitch(self) -> float:
        return self.text_height + (2.3 if self.close else 3.5)

    @property
    def tail(self) -> float:
        """How far a dimension line runs on behind an arrowhead that stands outside."""
        return 2.0 * self.arrow_length


@dataclass(frozen=True, slots=True)
class Arrow:
    """An arrowhead: its tip and the unit direction it points in."""

    tip: Vec2
    pointing: Vec2


@dataclass(frozen=True, slots=True)
class Sweep:
    """A dimension arc, counter-clockwise from ``start_deg`` to ``end_deg``."""

    centre: Vec2
    radius: float
    start_deg: float
    end_deg: float


@dataclass(frozen=True, slots=True)
class PlacedDimension:
    """One dimension's lines, arcs, arrowheads and text.

    ``line`` is the dimension line itself (the chord of the arc for an angle), for pointing at;
    ``lines`` holds it, for a linear dimension, and the extension lines and leaders.
    """

    name: str
    role: Role
    text: str
    box: TextBox
    line: Line
    lines: tuple[Line, ...]
    arrows: tuple[Arrow, ...]
    sweeps: tuple[Sweep, ...] = ()


@dataclass(frozen=True, slots=True)
class Placed:
    """All dimensions of a view and the room that the view takes with them."""

    dimensions: tuple[PlacedDimension, ...]
    extent: Extent
    text_height: float


def around(extent: Extent, dimension: PlacedDimension) -> Extent:
    """``extent`` grown to hold a dimension's text and lines."""
    left, bottom, right, top = extent
    reach_x, reach_y = dimension.box.reach()
    x, y = dimension.box.x, dimension.box.y
    xs = [left, right, x - reach_x, x + reach_x]
    ys = [bottom, top, y - reach_y, y + reach_y]
    for x0, y0, x1, y1 in dimension.lines:
        xs += (x0, x1)
        ys += (y0, y1)
    for sweep in dimension.sweeps:
        for x, y in _farthest(sweep):
            xs.append(x)
            ys.append(y)
    return (min(xs), min(ys), max(xs), max(ys))


def _farthest(sweep: Sweep) -> list[Vec2]:
    """The arc's ends, and the points where it runs level or upright: its box touches no others."""
    start, end = sweep.start_deg, sweep.end_deg
    quarters = range(math.ceil(start / 90.0), math.floor(end / 90.0) + 1)
    return [
        (
            sweep.centre[0] + sweep.radius * math.cos(math.radians(angle)),
            sweep.centre[1] + sweep.radius * math.sin(math.radians(angle)),
        )
        for angle in (start, end, *(90.0 * quarter for quarter in quarters))
    ]
