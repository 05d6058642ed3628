"""What of a part is worth tracing at full size, and the lines to trace.

Frame: (u, v) of PART_FACE, mm: u from the left end, v upward with the face edge at 0.

Method: the outline is the part's silhouette with what is left proud.  Every wall that stands square
to the face and runs neither along nor across the grain wants tracing: a splayed end, a taper, an
angled shoulder.  The regions round them are joined where they nearly meet or stand at one end, as
dovetails do; when they cover most of the part the whole of it is drawn.  A long wall of a board is
traced at its ends alone.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
import shapely
import shapely.affinity
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from geometry.design.part import Part
from geometry.drawing.cropping import cropped
from geometry.primitives.frame import Vec2
from geometry.sheets.marked_part import marked_part
from geometry.sheets.silhouette import silhouette
from geometry.sheets.trim import proud_regions
from geometry.views.look import look_at_part
from geometry.views.view import PART_FACE, PART_REVERSE, View

Lines = NDArray[np.float64]
Box = tuple[float, float, float, float]  # least u, least v, greatest u, greatest v
_SHORT = 3.0  # mm: a shorter slanted wall is not worth a template
_ALONG, _ACROSS = 25.0, 15.0  # mm of wood round a slanted line, to place the template by
_LONG = 400.0  # mm: between the ends of a longer wall a straightedge is truer than paper
_BOARD = 200.0  # mm wide: what is narrower is traced whole all the same
_AT_AN_END = 60.0  # mm of such a wall that is traced at each end
_NEARLY = 20.0  # mm: regions this near are one
_MOST = 0.6  # of the part's rectangle: from here on the whole part is drawn
_GRID = 1e-6
_SAME = 1e-3  # mm
_FROM_BEHIND = np.array((-1.0, 1.0, -1.0, 1.0))  # what is seen from the reverse, in (u, v)


@dataclass(frozen=True, slots=True, eq=False)
class Tracing:
    """A region of a part at full size.

    ``box`` bounds it; ``whole`` says that it is the whole part.  ``cut`` are the lines to saw to,
    ``joint`` the visible and ``reverse`` the hidden joint lines to scribe, ``trim`` the finished
    ends under wood left proud, ``broken`` where the drawing stops short of the part's end; each
    (n, 4) in (u, v).  ``from_reverse`` are the joint lines that are visible and those that are
    hidden when the piece is turned over, in the same (u, v).  ``wood`` is the region that the part
    covers.
    """

    box: Box
    whole: bool
    cut: Lines
    joint: Lines
    reverse: Lines
    trim: Lines
    broken: Lines
    from_reverse: tuple[Lines, Lines]
    wood: BaseGeometry


def tracings(part: Part) -> tuple[Tracing, ...]:
    """The regions of a part that are worth tracing; none for a part that is square all over."""
    boxes = _regions(part)
    if not boxes:
        return ()
    finished = silhouette(part.shape, PART_FACE)
    wood = shapely.union_all([finished, *proud_regions(part)], grid_size=_GRID).simplify(_SAME)
    border = wood.boundary
    finished_border = finished.simplify(_SAME).boundary
    trim = finished_border.difference(border.buffer(_SAME))
    near = finished_border.buffer(_SAME)
    inner = _joint_lines(part, PART_FACE, near)
    turned = [lines * _FROM_BEHIND for lines in _joint_lines(part, PART_REVERSE, near)]
    cut = _segments(border)
    left, low, right, high = wood.bounds
    covered = sum((b[2] - b[0]) * (b[3] - b[1]) for b in boxes)
    whole = covered > _MOST * (right - left) * (high - low)
    if whole:
        boxes = [(left, low, right, high)]
    found: list[Tracing] = []
    for box in boxes:
        kept = (max(box[0], left), max(box[1], low), min(box[2], right), min(box[3], high))
        window = shapely.box(*kept)
        sawn, joint, reverse, trimmed, behind, before = (
            cropped(group, kept) for group in (cut, *inner, _segments(trim), *turned)
        )
        broken = _segments(window.boundary.intersection(wood).difference(border.buffer(_SAME)))
        region = wood.intersection(window)
        found.append(
            Tracing(kept, whole, sawn, joint, reverse, trimmed, broken, (behind, before), region)
        )
    return tuple(found)


def _joint_lines(part: Part, view: View, near: BaseGeometry) -> list[Lines]:
    """The visible and the hidden lines of a view that do not lie on the outline, which is ``near``
    that of the face."""
    linework = look_at_part(part, view)
    if view == PART_REVERSE:
        near = shapely.affinity.scale(near, -1.0, 1.0, origin=(0.0, 0.0))
    return [_apart(linework.segments[linework.visible == seen], near) for seen in (True, False)]


def _regions(part: Part) -> list[Box]:
    """Rectangles round the slanted walls, joined until none nearly meet or stand at one end."""
    marked = marked_part(part.shape)
    boxes: list[Box] = []
    for waste in marked.cuts:
        if not waste.upright:
            continue
        for wall in marked.walls(waste.low, None):
            length = math.dist(wall.start, wall.end)
            if wall.across or wall.along or length < _SHORT:
                continue
            if length <= _LONG or part.shape.blank.width < _BOARD:
                boxes.append(_round(wall.start, wall.end))
                continue
            part_of = _AT_AN_END / length
            boxes.append(_round(wall.start, _between(wall.start, wall.end, part_of)))
            boxes.append(_round(_between(wall.end, wall.start, part_of), wall.end))
    joined = True
    while joined:
        joined = False
        for i, a in enumerate(boxes):
            for b in boxes[i + 1 :]:
                if _nearly_meet(a, b) or _at_one_end(a, b, part.shape.blank.length):
                    boxes.remove(a)
                    boxes.remove(b)
                    boxes.append(
                        (min(a[0], b[0]), min(a[1], b[1]), max(a[2], b[2]), max(a[3], b[3]))
                    )
                    joined = True
                    break
            if joined:
                break
    return sorted(boxes)


def _round(a: Vec2, b: Vec2) -> Box:
    """The rectangle round a stretch of wall, from points (x, y) of the part, in (u, v)."""
    left, right = sorted((a[0], b[0]))
    low, high = sorted((-a[1], -b[1]))
    return (left - _ALONG, low - _ACROSS, right + _ALONG, high + _ACROSS)


def _between(a: Vec2, b: Vec2, t: float) -> Vec2:
    return (a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]))


def _nearly_meet(a: Box, b: Box) -> bool:
    return all(
        a[axis] - _NEARLY <= b[axis + 2] and b[axis] - _NEARLY <= a[axis + 2] for axis in (0, 1)
    )


def _at_one_end(a: Box, b: Box, length: float) -> bool:
    return max(a[0], b[0]) <= 0.0 or min(a[2], b[2]) >= length


def _apart(segments: Lines, near: BaseGeometry) -> Lines:
    """The segments without what lies on the outline."""
    return _segments(_strings(segments).difference(near)) if len(segments) else segments


def _strings(segments: Lines) -> BaseGeometry:
    return shapely.multilinestrings(shapely.linestrings(segments.reshape(-1, 2, 2)))


def _segments(geometry: BaseGeometry) -> Lines:
    """All straight stretches of the lines in a geometry, (n, 4)."""
    found: list[Lines] = []
    for piece in shapely.get_parts(shapely.get_parts(geometry)):
        if piece.geom_type in ("LineString", "LinearRing") and piece.length > _SAME:
            points = shapely.get_coordinates(piece)
            found.append(np.hstack([points[:-1], points[1:]]))
    return np.concatenate(found) if found else np.zeros((0, 4))
