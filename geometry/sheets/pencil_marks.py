"""What a maker has pencilled on one part, seen in a view of the bench: grain, face side, face edge.

Frame: sheet mm.  The marks are those of ``part_symbols``, turned as the part lies in the view.  A
face that looks away from the viewer has its mark dashed.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from geometry.design.part import Part
from geometry.drawing.marks import Arc, Fill, Mark, Role, Strokes
from geometry.drawing.text_box import TextBox, broken_around
from geometry.primitives.frame import Vec2, Vec3, dot
from geometry.sheets.part_symbols import face_edge_mark, face_side_mark, grain_arrow
from geometry.views.view import View

_LONGEST_ARROW, _SHORTEST_ARROW = 26.0, 8.0  # mm
_ARROW_SHARE = 0.6  # of the part along its grain
_NARROWEST = 4.0  # mm on the sheet, of a part with an arrow on it
_FACING = 0.7  # cosine of the lean up to which a face is seen
_FULL_FACE, _FULL_EDGE = 7.5, 3.5  # mm of a face that its whole mark needs
_SMALLEST = 0.45  # of a mark: smaller than that it is left out
_ALONG = (0.5, 0.35, 0.65, 0.2, 0.8)  # of the part, where to look for room
_ACROSS = (0.5, 0.3, 0.7)
_MARKS_ALONG = (0.3, 0.2, 0.4, 0.6, 0.7, 0.8)  # not where the arrow is
_AIR = 1.0  # mm between a mark and a text
_CHORDS = 12


@dataclass(frozen=True, slots=True)
class _Seen:
    """A part in a view at a scale about an origin, among texts to keep clear of."""

    part: Part
    view: View
    scale: float
    origin: Vec2
    texts: Sequence[TextBox]

    def flat(self, direction: Vec3) -> Vec2:
        """A direction of the bench as it lies on the sheet; shorter the more it is seen end on."""
        return self.view.project(direction)

    def spot(self, along: float, across: float, through: float = 0.0) -> Vec2:
        """Where a point of the blank is, given in shares of its sizes."""
        blank = self.part.shape.blank
        local = (along * blank.length, across * blank.width, through * blank.thickness)
        u, v = self.view.project(self.part.frame.to_bench(local))
        return (self.origin[0] + u * self.scale, self.origin[1] + v * self.scale)

    def free(self, start: Vec2, end: Vec2) -> bool:
        line = (*start, *end)
        return broken_around(line, self.texts, _AIR) == [line]


def pencil_marks(
    part: Part, view: View, scale: float, origin: Vec2, texts: Sequence[TextBox] = ()
) -> list[Mark]:
    """The grain and the reference faces of a part, where the view and the scale show them."""
    seen = _Seen(part, view, scale, origin, texts)
    blank, frame = part.shape.blank, part.frame
    marks = _grain(seen) if part.solid_timber else []
    loop = face_side_mark((0.0, 0.0), down=True)
    vee = face_edge_mark((0.0, 0.0), down=True)
    marks += _reference(seen, loop, frame.z_axis, frame.y_axis, (_FULL_FACE, blank.width))
    marks += _reference(seen, vee, frame.y_axis, frame.z_axis, (_FULL_EDGE, blank.thickness))
    return marks


def _grain(seen: _Seen) -> list[Mark]:
    du, dv = seen.flat(seen.part.grain)
    share = math.hypot(du, dv)
    length = min(_LONGEST_ARROW, _ARROW_SHARE * share * seen.part.along_grain * seen.scale)
    if length < _SHORTEST_ARROW or _breadth(seen) < _NARROWEST:
        return []
    along = (du / share, dv / share)
    half = (along[0] * length / 2.0, along[1] * length / 2.0)
    spots = [seen.spot(x, y, 0.5) for y in _ACROSS for x in _ALONG]
    middle = next(
        (s for s in spots if seen.free(_less(s, half), (s[0] + half[0], s[1] + half[1]))),
        spots[0],
    )
    # Barbs on both sides: what is lit is heavy, and would hide a single one.
    sides = ((-along[1], along[0]), (along[1], -along[0]))
    arrow = grain_arrow((0.0, 0.0), length)
    return [_laid(mark, middle, along, side) for side in sides for mark in arrow]


def _breadth(seen: _Seen) -> float:
    """How broad the part looks on the sheet across its grain, mm."""
    part = seen.part
    across = part.frame.x_axis if part.grain_across else part.frame.y_axis
    thick = part.shape.blank.thickness
    shares = (math.hypot(*seen.flat(each)) for each in (across, part.frame.z_axis))
    sizes = (part.across_grain, thick)
    return seen.scale * max(s * size for s, size in zip(shares, sizes, strict=True))


def _reference(
    seen: _Seen, symbol: tuple[Mark, ...], inward: Vec3, across: Vec3, room: tuple[float, float]
) -> list[Mark]:
    """A face's mark on the arris of face side and face edge, reaching ``across`` the face.

    ``inward`` points from the face into the wood; ``room``: what the whole mark needs on the
    sheet, and how wide the face is.
    """
    looks = -dot(inward, seen.view.toward)
    wide, along = seen.flat(across), seen.flat(seen.part.frame.x_axis)
    share, long = math.hypot(*wide), math.hypot(*along)
    if abs(looks) < _FACING or min(share, long) < 1.0 - _FACING:
        return []
    size = min(1.0, room[1] * share * seen.scale / room[0])
    if size < _SMALLEST:
        return []
    x = (along[0] / long * size, along[1] / long * size)
    down = (wide[0] / share * size, wide[1] / share * size)
    tall = room[0] * 0.8
    spots = [seen.spot(share_along, 0.0) for share_along in _MARKS_ALONG]
    foot = next(
        (s for s in spots if seen.free(s, (s[0] + down[0] * tall, s[1] + down[1] * tall))),
        spots[0],
    )
    marks = [_laid(mark, foot, x, (-down[0], -down[1])) for mark in symbol]
    return marks if looks > 0.0 else [replace(mark, role=Role.HIDDEN) for mark in marks]


def _less(a: Vec2, b: Vec2) -> Vec2:
    return (a[0] - b[0], a[1] - b[1])


def _laid(mark: Mark, at: Vec2, x: Vec2, y: Vec2) -> Mark:
    """A mark about (0, 0) put at a point, its axes along two directions; arcs as chords."""
    way = np.array((x, y))

    def moved(points: np.ndarray) -> np.ndarray:
        laid: np.ndarray = points @ way + np.array(at)
        return laid

    match mark:
        case Arc():
            turns = np.radians(np.linspace(mark.start_deg, mark.end_deg, _CHORDS + 1))
            round_it = np.column_stack((np.cos(turns), np.sin(turns)))
            points = moved(np.array(mark.centre) + mark.radius * round_it)
            return Strokes(mark.role, np.hstack((points[:-1], points[1:])))
        case Strokes():
            ends = moved(mark.segments.reshape(-1, 2))
            return replace(mark, segments=ends.reshape(-1, 4))
        case Fill():
            corners = moved(np.array(mark.points))
            return replace(mark, points=tuple((float(u), float(v)) for u, v in corners))
        case _:
            raise AssertionError(mark)
