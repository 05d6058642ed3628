"""The dimensions of a part by itself, taken from its cuts and checked on its solid.

Frame: the part's own (x along the grain, y from the face edge, z from the face side), mm; the
dimensions are those of the views PART_FACE (x, -y), PART_EDGE (x, z) and PART_END (z, -y).

Method: lengths run from the corner of the edge they are measured along, between slanted shoulders
from those, as a maker marks them; widths from the face edge, depths from the face side; what runs
out at an end is measured from that end.  A slanted wall gets its angle from the nearer of square
and parallel; a rectangle turned from the grain, as in a raked post, is placed by one corner.  A cut
that works along most of the piece is shown in the end view, a tilted one where its slope is seen.
Where one cut makes many slanted gaps in a row, as dovetails do, they are marked where a maker sets
them out, at the end of the piece; of more than would stand beside the piece the places are left to
the table of cuts.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Sequence
from itertools import pairwise

import numpy as np

from geometry.cuts.cut import Cut
from geometry.cuts.edge_moulding import CHAMFER, EdgeMoulding
from geometry.cuts.screw_hole import ScrewHole
from geometry.cuts.screw_slot import ScrewSlot
from geometry.design.part import Shape
from geometry.dimensioning.dimension import Dimension
from geometry.primitives.frame import Vec2
from geometry.sheets.fitting_words import squarest
from geometry.sheets.marked_part import NEAR, MarkedPart, Wall, marked_part
from geometry.sheets.part_sizes import PartSizes, Stand
from geometry.sheets.waste import Waste, inner_sides
from geometry.views.view import PART_EDGE, PART_END, PART_FACE, View

_ABOVE, _BELOW, _RIGHT, _LEFT, _WITHIN = 1, -1, 1, -1, 0
_SQUARE = 1e-3  # cosine: sides nearer to square than this make a rectangle
_FEW = 4  # gaps of one cut; the sides of more are marked at the end alone, not at the base line
_MANY = 12  # gaps or sockets of one cut; the places of more are in the table of cuts
_SIZE, _PLACE, _EDGE, _OVERALL = 0, 1, 5, 9  # ranks, from the part outward


def part_dimensions(shape: Shape) -> tuple[Dimension, ...]:
    """All dimensions of a part in its three views, each size once."""
    part = marked_part(shape)
    sizes = PartSizes(part)
    gaps = Counter(waste.number for waste in part.cuts)
    curved = {number for number, cut in enumerate(shape.cuts, start=1) if _is_curved(cut)}
    _overall(sizes)
    for waste in part.cuts:
        if waste.middle is not None:
            _hole(sizes, waste.middle)
        elif waste.upright:
            _on_the_face(sizes, waste, gaps[waste.number])
            _depths(sizes, waste)
        else:
            few = gaps[waste.number] <= _MANY
            _tilted(sizes, waste, across=few, curved=waste.number in curved)
    for cut in shape.cuts:
        if isinstance(cut, ScrewHole | ScrewSlot):
            _for_a_screw(sizes, cut)
    _edges(sizes)
    return tuple(sizes.found.values())


def _overall(sizes: PartSizes) -> None:
    (x0, y0, z0), (x1, y1, z1) = sizes.part.low, sizes.part.high
    sizes.level(PART_FACE, ((x0, -y1), (x1, -y1)), Stand(_BELOW, _OVERALL))
    sizes.upright(PART_FACE, ((x0, -y1), (x0, -y0)), Stand(_LEFT, _OVERALL))
    sizes.level(PART_END, ((z0, -y1), (z1, -y1)), Stand(_BELOW, _OVERALL))


def _hole(sizes: PartSizes, middle: Vec2) -> None:
    """A hole is marked by its middle, from the left end or its shoulder, and the face edge."""
    part = sizes.part
    x, y = middle
    far = y > (part.low[1] + part.high[1]) / 2.0
    start = (part.low[0], part.high[1] if far else part.low[1])
    if part.slanted_shoulders:
        start, _ = part.shoulders(far)
    sizes.along_the_grain(start, middle, Stand(_BELOW if far else _ABOVE, _PLACE))
    left = x < (part.low[0] + part.high[0]) / 2.0
    edge = (part.low[0] if left else part.high[0], -part.low[1])
    sizes.upright(PART_FACE, ((x, -y), edge), Stand(_LEFT if left else _RIGHT, _PLACE))


def _for_a_screw(sizes: PartSizes, cut: ScrewHole | ScrewSlot) -> None:
    """A hole or a slot in an end or an edge, from the two sides of the part beside it: one in a
    face is marked as a hole there."""
    part = sizes.part
    x, y, z = cut.mouth if isinstance(cut, ScrewHole) else cut.screw
    axis = squarest(cut.into)
    left = x < (part.low[0] + part.high[0]) / 2.0
    if axis == 0:
        edge = (part.low[0] if left else part.high[0], -part.low[1])
        sizes.upright(PART_FACE, ((x, -y), edge), Stand(_LEFT if left else _RIGHT, _PLACE))
    elif axis == 1:
        sizes.level(PART_EDGE, ((part.low[0], part.low[2]), (x, z)), Stand(_BELOW, _PLACE))
    else:
        _hole(sizes, (x, y))
        return
    corner = (part.low[0] if left else part.high[0], part.low[2])
    sizes.upright(PART_EDGE, (corner, (x, z)), Stand(_LEFT if left else _RIGHT, _PLACE))


# --- upright walls, marked on the face -----------------------------------------------------------


def _on_the_face(sizes: PartSizes, waste: Waste, gaps: int) -> None:
    """Positions and widths along the grain, widths across it, and angles; ``gaps`` are all those
    of the same cut."""
    across = gaps <= _MANY
    walls = sizes.part.walls(waste.low, None)
    if _is_askew(sizes.part, walls):
        _askew(sizes, walls)
        return
    for far in (False, True):
        _along(sizes, waste, [s for w in walls for s in _stations(sizes.part, waste, w, far)], far)
    if across and any(wall.along for wall in walls):
        _across(sizes, waste, walls)
    for wall in walls:
        if not wall.across and not wall.along:
            if across and not wall.steep:
                _taper_widths(sizes, wall, at_the_end=gaps > _FEW)
            (x0, y0), (x1, y1) = wall.start, wall.end
            sizes.angle(PART_FACE, (x0, -y0), (x1, -y1))


def _is_askew(part: MarkedPart, walls: Sequence[Wall]) -> bool:
    """Whether the walls are a whole rectangle within the face, turned from the grain."""
    if len(walls) != 4 or any(wall.across or wall.along for wall in walls):
        return False
    corners = [wall.start for wall in walls]
    inside = all(
        part.low[axis] + NEAR < corner[axis] < part.high[axis] - NEAR
        for corner in corners
        for axis in (0, 1)
    )
    runs = [(w.end[0] - w.start[0], w.end[1] - w.start[1]) for w in walls]
    square = all(
        abs(a[0] * b[0] + a[1] * b[1]) < _SQUARE * math.hypot(*a) * math.hypot(*b)
        for a, b in pairwise([*runs, runs[0]])
    )
    return inside and square and len({(round(x, 2), round(y, 2)) for x, y in corners}) == 4


def _askew(sizes: PartSizes, walls: Sequence[Wall]) -> None:
    """One corner and the angle tell where it lies, the table how large it is: four corners a hair
    apart could not be told from each other on the drawing."""
    part = sizes.part
    left = sorted(wall.start for wall in walls)[:2]
    x, y = min(left, key=lambda corner: corner[1])
    start, _ = part.edge_ends(far=True)
    sizes.along_the_grain(start, (x, y), Stand(_BELOW, _PLACE))
    at_the_left = x < (part.low[0] + part.high[0]) / 2.0
    limit, side = (part.low[0], _LEFT) if at_the_left else (part.high[0], _RIGHT)
    sizes.upright(PART_FACE, ((x, -y), (limit, -part.low[1])), Stand(side, _PLACE))
    longest = max(walls, key=lambda wall: math.dist(wall.start, wall.end))
    (x0, y0), (x1, y1) = longest.start, longest.end
    sizes.angle(PART_FACE, (x0, -y0), (x1, -y1))


def _stations(part: MarkedPart, waste: Waste, wall: Wall, far: bool) -> list[Vec2]:
    """Where a wall is marked on the near or the far edge, as points (x, y)."""
    if wall.along:
        return []
    if wall.across:
        reached = [
            is_far
            for is_far, edge in ((False, 0.0), (True, part.blank.width))
            if any(abs(y - edge) < NEAR for _, y in wall.drawn)
        ]
        if waste.flat or far not in (reached or [True]):
            return []
        ys = [wall.start[1], wall.end[1]]
        return [(wall.start[0], max(ys) if far else min(ys))]
    edge = part.high[1] if far else part.low[1]
    ends = (wall.start, wall.end)
    points = [] if waste.flat and wall.steep else [p for p in ends if abs(p[1] - edge) < NEAR]
    if far:  # a knee inside the face is marked from the far edge too
        points += [
            (x, y)
            for x, y in ends
            if part.low[1] + NEAR < y < part.high[1] - NEAR
            and part.low[0] + NEAR < x < part.high[0] - NEAR
        ]
    return points


def _along(sizes: PartSizes, waste: Waste, stations: Sequence[Vec2], far: bool) -> None:
    """Lengths along one edge to the stations of one cut."""
    marks = [point for _, point in sorted({round(x, 3): (x, y) for x, y in stations}.items())]
    if not marks:
        return
    start, end = sizes.part.edge_ends(far)
    side = _BELOW if far else _ABOVE
    xs = [x for x, _ in (*waste.low, *waste.high)]
    at_start, at_end = min(xs) < NEAR, max(xs) > sizes.part.blank.length - NEAR
    if not at_start and not at_end and sizes.part.slanted_shoulders:
        start, _ = sizes.part.shoulders(far)
    if len(marks) == 1 and not waste.flat and at_start:
        sizes.along_the_grain(start, marks[0], Stand(side, _SIZE))
    elif len(marks) == 1 and not waste.flat and at_end:
        sizes.along_the_grain(marks[0], end, Stand(side, _SIZE))
    elif len(marks) == 2 and not waste.flat and not at_start:
        sizes.along_the_grain(start, marks[0], Stand(side, _PLACE))
        sizes.along_the_grain(marks[0], marks[1], Stand(side, _SIZE))
    else:
        for mark in marks:
            sizes.along_the_grain(start, mark, Stand(side, _PLACE))


def _across(sizes: PartSizes, waste: Waste, walls: Sequence[Wall]) -> None:
    """Widths from the face edge, or from the far edge for what runs out there."""
    part = sizes.part
    level_walls = [wall for wall in walls if wall.along]
    levels = sorted({round(wall.start[1], 4) for wall in level_walls})
    spans = _spans(levels, [y for _, y in waste.low], (part.low[1], part.high[1]), part.blank.width)
    if len(level_walls) + sum(wall.across for wall in walls) < len(walls):
        spans = [(part.low[1], level) for level in levels]  # with slanted walls, from one edge
    xs = [x for wall in level_walls for x in (wall.start[0], wall.end[0])]
    left = min(xs) + max(xs) < part.low[0] + part.high[0]
    inner, outer = (min(xs), part.low[0]) if left else (max(xs), part.high[0])
    for a, b in spans:
        if part.is_long(waste) and not part.is_through(waste):
            side, z = (_LEFT, part.low[2]) if waste.z_low < NEAR else (_RIGHT, part.high[2])
            sizes.upright(PART_END, ((z, -b), (z, -a)), Stand(side, _SIZE))
            continue
        low, high = ((outer if y in (part.low[1], part.high[1]) else inner, -y) for y in (b, a))
        rank = _SIZE if b - a < part.blank.width / 2.0 else _PLACE
        sizes.upright(PART_FACE, (low, high), Stand(_LEFT if left else _RIGHT, rank))


def _taper_widths(sizes: PartSizes, wall: Wall, *, at_the_end: bool) -> None:
    """The widths that a taper leaves where it runs out at an end, and only there or also inside."""
    part = sizes.part
    middle = (part.low[0] + part.high[0]) / 2.0
    for x, y in (wall.start, wall.end):
        limit, side = (part.low[0], _LEFT) if x < middle else (part.high[0], _RIGHT)
        inside = part.low[1] + NEAR < y < part.high[1] - NEAR
        ends = abs(x - limit) < NEAR and y < part.high[1] - NEAR
        if ends or (inside and not at_the_end):
            top = (limit, -part.low[1])
            sizes.upright(PART_FACE, ((x, -y), top), Stand(side, _PLACE))


# --- walls that lean through the thickness -------------------------------------------------------


def _is_curved(cut: Cut) -> bool:
    """Whether its wall is an arc, of which the table tells the radius: it has no slope."""
    return isinstance(cut, EdgeMoulding) and cut.form != CHAMFER


def _tilted(sizes: PartSizes, waste: Waste, *, across: bool, curved: bool) -> None:
    """A cut whose walls lean: marked on both faces, its slope where it is seen."""
    part = sizes.part
    faces = [part.walls(waste.low, waste.z_low), part.walls(waste.high, waste.z_high)]
    places = [sorted({round(w.start[0], 3) for w in walls if w.across}) for walls in faces]
    levels = [sorted({round(w.start[1], 3) for w in walls if w.along}) for walls in faces]
    if places[0] != places[1]:
        if waste.flat:
            _slope(sizes, waste, 0, PART_EDGE)
        else:
            _slanting_gap(sizes, waste, places)
    elif not waste.flat:
        for far in (False, True):
            stations = [s for w in faces[0] for s in _stations(part, waste, w, far)]
            _along(sizes, waste, stations, far)
    if levels[0] != levels[1]:
        if across:
            _leaning_edge(sizes, waste, levels)
        if not curved:
            _slope(sizes, waste, 1, PART_END)
    elif levels[0]:
        limits = (part.low[1], part.high[1])
        for a, b in _spans(levels[0], [y for _, y in waste.low], limits, part.blank.width):
            x = min(w.start[0] for w in faces[0] if w.along)
            low, high = ((x if y == levels[0][0] else part.low[0], -y) for y in (b, a))
            sizes.upright(PART_FACE, (low, high), Stand(_LEFT, _SIZE))


def _slanting_gap(sizes: PartSizes, waste: Waste, places: Sequence[Sequence[float]]) -> None:
    """Two walls that slant through the thickness, marked on both sides of the edge view."""
    heights = (waste.z_low, waste.z_high)
    for z, xs, side in zip(heights, places, (_BELOW, _ABOVE), strict=True):
        if len(xs) == 2:
            start = (sizes.part.low[0], z)
            sizes.level(PART_EDGE, (start, (xs[0], z)), Stand(side, _PLACE))
            sizes.level(PART_EDGE, ((xs[0], z), (xs[1], z)), Stand(side, _SIZE))
    if all(places):
        (low, *_), (high, *_) = places
        sizes.angle(PART_EDGE, (low, heights[0]), (high, heights[1]))


def _leaning_edge(sizes: PartSizes, waste: Waste, levels: Sequence[Sequence[float]]) -> None:
    """The widths on the face side and on the reverse where an edge leans."""
    part = sizes.part
    heights = (waste.z_low, waste.z_high)
    for z, ys, side in zip(heights, levels, (_LEFT, _RIGHT), strict=True):
        for y in ys:
            if part.low[1] + NEAR < y < part.high[1] - NEAR:
                sizes.upright(PART_END, ((z, -y), (z, -part.low[1])), Stand(side, _PLACE))


def _slope(sizes: PartSizes, waste: Waste, axis: int, view: View) -> None:
    """The angle of a plane through the thickness; ``axis`` is the part's that it varies along."""
    blank = sizes.part.blank
    size = (blank.length, blank.width)[axis]
    found: list[Vec2] = []
    for region, z in ((waste.low, waste.z_low), (waste.high, waste.z_high)):
        walls = [a[axis] for a, b in inner_sides(region, blank) if abs(a[axis] - b[axis]) < NEAR]
        at = [p[axis] for p in (waste.low or waste.high)]
        edge = 0.0 if min(at) < NEAR and max(at) < size / 2.0 else size
        place = walls[0] if walls else edge
        found.append((z, -place) if axis == 1 else (place, z))
    sizes.angle(view, *found)


# --- depths, and the lengths of edges ------------------------------------------------------------


def _depths(sizes: PartSizes, waste: Waste) -> None:
    """How deep a cut goes: in the end view along the piece, else in the edge view."""
    part = sizes.part
    if waste.flat:
        return
    thickness = part.blank.thickness
    heights = [z for z in (waste.z_low, waste.z_high) if NEAR < z < thickness - NEAR]
    limits = (part.low[2], part.high[2])
    xs, ys = [x for x, _ in waste.low], [y for _, y in waste.low]
    at_start, at_end = min(xs) < NEAR, max(xs) > part.blank.length - NEAR
    for a, b in _spans(heights, (waste.z_low, waste.z_high), limits, thickness):
        if part.is_long(waste):
            near = sum(ys) / len(ys) < part.blank.width / 2.0
            y, side = (part.low[1], _ABOVE) if near else (part.high[1], _BELOW)
            sizes.level(PART_END, ((a, -y), (b, -y)), Stand(side, _SIZE))
        elif at_start or at_end:
            x, side = (part.low[0], _LEFT) if at_start else (part.high[0], _RIGHT)
            if a - part.low[2] < NEAR or part.high[2] - b < NEAR:
                x = max(xs) if at_start else min(xs)  # at the shoulder both faces are there
            sizes.upright(PART_EDGE, ((x, a), (x, b)), Stand(side, _SIZE))
        else:
            x = min(xs) + 0.8 * (max(xs) - min(xs))
            sizes.upright(PART_EDGE, ((x, a), (x, b)), Stand(_WITHIN, _SIZE))


def _edges(sizes: PartSizes) -> None:
    """The lengths of the edges where slanted or tilted ends make them differ; between shoulders
    that slant, from shoulder to shoulder."""
    part = sizes.part
    if part.slanted_shoulders:
        for far, side in ((False, _ABOVE), (True, _BELOW)):
            sizes.along_the_grain(*part.shoulders(far), Stand(side, _EDGE))
    planes = [waste for waste in part.cuts if waste.flat]
    if any(plane.upright for plane in planes):
        for far, side in ((False, _ABOVE), (True, _BELOW)):
            sizes.along_the_grain(*part.edge_ends(far), Stand(side, _EDGE))
    if any(not plane.upright for plane in planes):
        for z, side in ((part.low[2], _BELOW), (part.high[2], _ABOVE)):
            xs = part.corners[np.abs(part.corners[:, 2] - z) < NEAR, 0]
            if len(xs):
                ends = ((float(xs.min()), z), (float(xs.max()), z))
                sizes.level(PART_EDGE, ends, Stand(side, _EDGE))


def _spans(
    marks: Sequence[float], reach: Sequence[float], limits: tuple[float, float], size: float
) -> list[tuple[float, float]]:
    """What to measure to fix walls at ``marks``: from the edge that the waste runs out at."""
    low, high = limits
    if not marks:
        return []
    if len(marks) == 1:
        return [(low, marks[0])] if min(reach) < NEAR else [(marks[0], high)]
    if min(reach) < NEAR or max(reach) > size - NEAR:
        return [(low, mark) for mark in marks]
    return [(low, marks[0]), (marks[0], marks[1])]
