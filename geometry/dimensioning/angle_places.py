"""Where an angle's arc and text can stand: candidates, the best first.

Frame: sheet mm with the view's origin at (0, 0).  Directions in degrees, counter-clockwise from
the right.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from geometry.dimensioning.free_dimension import FreeDimension
from geometry.dimensioning.placed import Arrow, DimensionStyle, PlacedDimension, Sweep
from geometry.drawing.text_box import HALF_BOX, Line, TextBox
from geometry.primitives.frame import Vec2

_RADII = (10.0, 14.0, 19.0, 25.0, 32.0, 40.0, 50.0)
_LARGE = 25.0  # a larger arc is used only where no smaller one finds room
_CHORDS = 8  # an arc is tested against texts as so many chords
_OFF_THE_ARC = 1.2  # mm between an arc and a text beside it


@dataclass(frozen=True, slots=True)
class _Corner:
    """The angle: its apex, the direction of its first side, its size, and its sides' lengths."""

    apex: Vec2
    first_deg: float
    sweep_deg: float
    first_length: float
    last_length: float

    @property
    def last_deg(self) -> float:
        return self.first_deg + self.sweep_deg

    def point(self, radius: float, deg: float) -> Vec2:
        turn = math.radians(deg)
        return (
            self.apex[0] + radius * math.cos(turn),
            self.apex[1] + radius * math.sin(turn),
        )


def angle_places(wanted: FreeDimension, style: DimensionStyle) -> Iterator[PlacedDimension]:
    """The dimension on arcs of growing radius; ``wanted.apex`` must be given."""
    corner = _corner(wanted)
    for radius in sorted(_RADII, key=lambda r: (r > _LARGE or not _has_room(corner, r, style), r)):
        yield from _on_an_arc(wanted, corner, radius, style)


def chords(sweeps: Sequence[Sweep]) -> list[Line]:
    """Arcs as short straight lines, near enough to test against text."""
    lines: list[Line] = []
    for sweep in sweeps:
        step = (sweep.end_deg - sweep.start_deg) / _CHORDS
        corner = _Corner(sweep.centre, 0.0, 0.0, 0.0, 0.0)
        points = [
            corner.point(sweep.radius, sweep.start_deg + step * i) for i in range(_CHORDS + 1)
        ]
        lines += [(*a, *b) for a, b in pairwise(points)]
    return lines


def _corner(wanted: FreeDimension) -> _Corner:
    apex = wanted.apex
    assert apex is not None, wanted.name
    first, last = (
        math.degrees(math.atan2(p[1] - apex[1], p[0] - apex[0])) for p in (wanted.start, wanted.end)
    )
    lengths = (math.dist(apex, wanted.start), math.dist(apex, wanted.end))
    sweep_deg = (last - first) % 360.0
    if sweep_deg > 180.0:
        return _Corner(apex, last, 360.0 - sweep_deg, lengths[1], lengths[0])
    return _Corner(apex, first, sweep_deg, *lengths)


def _has_room(corner: _Corner, radius: float, style: DimensionStyle) -> bool:
    """Whether both arrowheads fit inside the angle."""
    return math.radians(corner.sweep_deg) * radius >= 2.0 * style.arrow_length + 1.0


def _on_an_arc(
    wanted: FreeDimension, corner: _Corner, radius: float, style: DimensionStyle
) -> Iterator[PlacedDimension]:
    first, last = corner.first_deg, corner.last_deg
    inside = _has_room(corner, radius, style)
    tail_deg = 0.0 if inside else math.degrees(style.tail / radius)
    extensions = [
        _ray(corner, deg, length, radius, style)
        for deg, length in ((first, corner.first_length), (last, corner.last_length))
        if radius + style.overshoot > length + style.gap
    ]
    sweep = Sweep(corner.apex, radius, first - tail_deg, last + tail_deg)
    arrows = (
        _arrow(corner, radius, first, clockwise=inside, length=style.arrow_length),
        _arrow(corner, radius, last, clockwise=not inside, length=style.arrow_length),
    )
    chord = (*corner.point(radius, first), *corner.point(radius, last))
    half = (wanted.width / 2.0, HALF_BOX * style.text_height)
    middle = first + corner.sweep_deg / 2.0
    if inside:
        spots = [_beside(corner, middle, radius, half), _within(corner, middle, radius, half)]
    else:
        ends = (last + tail_deg, first - tail_deg)
        spots = [
            _past_the_end(corner, ends[0], radius, half, counter_clockwise=True),
            _past_the_end(corner, ends[1], radius, half, counter_clockwise=False),
            *(_beside(corner, deg, radius, half) for deg in (middle, *ends)),
        ]
    for spot in spots:
        box = TextBox(*spot, *half)
        yield PlacedDimension(
            wanted.name, wanted.role, wanted.text, box, chord, tuple(extensions), arrows, (sweep,)
        )


def _beside(corner: _Corner, deg: float, radius: float, half: Vec2) -> Vec2:
    """The middle of a level box just outside the arc."""
    cos, sin = math.cos(math.radians(deg)), math.sin(math.radians(deg))
    return corner.point(radius + _OFF_THE_ARC + half[0] * abs(cos) + half[1] * abs(sin), deg)


def _within(corner: _Corner, deg: float, radius: float, half: Vec2) -> Vec2:
    """The middle of a level box just inside the arc."""
    cos, sin = math.cos(math.radians(deg)), math.sin(math.radians(deg))
    return corner.point(radius - _OFF_THE_ARC - half[0] * abs(cos) - half[1] * abs(sin), deg)


def _past_the_end(
    corner: _Corner, deg: float, radius: float, half: Vec2, *, counter_clockwise: bool
) -> Vec2:
    """The middle of a level box just past the end of an arc, where the arc is heading."""
    x, y = corner.point(radius, deg)
    heading = math.radians(deg + (90.0 if counter_clockwise else -90.0))
    cos, sin = math.cos(heading), math.sin(heading)
    away = 1.0 + min(half[0] / max(abs(cos), 1e-9), half[1] / max(abs(sin), 1e-9))
    return (x + away * cos, y + away * sin)


def _arrow(corner: _Corner, radius: float, deg: float, *, clockwise: bool, length: float) -> Arrow:
    """An arrowhead on an arc, leaning a little inward as the arc does behind it."""
    lean = math.degrees(length / (2.0 * radius))
    heading = math.radians(deg - 90.0 + lean if clockwise else deg + 90.0 - lean)
    return Arrow(corner.point(radius, deg), (math.cos(heading), math.sin(heading)))


def _ray(corner: _Corner, deg: float, length: float, radius: float, style: DimensionStyle) -> Line:
    """A side drawn on to just past the arc, with a gap where a drawn edge ends."""
    begin = length + style.gap if length > 1.0 else length
    return (*corner.point(begin, deg), *corner.point(radius + style.overshoot, deg))
