"""Places for dimensions that stand in or close to the drawing: angles, slanted and inner ones.

Frame: sheet mm with the view's origin at (0, 0).

Method: each dimension offers candidates, the best first, and the first whose text touches nothing
is taken, if its line does not lie on another line either; one that must is the second choice, and
so is one among the nearer on whose text an extension line is yet to come.  When
the drawing is too full for all of them the text goes outside the drawing on a leader, where there
is always room.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace
from itertools import islice

from geometry.dimensioning.angle_places import angle_places, chords
from geometry.dimensioning.free_dimension import FreeDimension
from geometry.dimensioning.placed import DimensionStyle, Extent, PlacedDimension
from geometry.dimensioning.slanted_places import TEXT_ROOM, slanted_places
from geometry.drawing.text_box import Ground, Line, TextBox, broken_around
from geometry.primitives.frame import Vec2

_RINGS = 20  # of spots outside the drawing, 4 mm each
_FEET = (0.5, 0.35, 0.65, 0.2, 0.8, 0.05, 0.95)  # of a line, where a leader may end
_FIRST_LOOK = 6  # most dimensions find their place among the first few
_NEAR = 20  # candidates, that lines to come are looked at for: better broken than far away


def place_free(
    wanted: FreeDimension, ground: Ground, outline: Extent, style: DimensionStyle
) -> PlacedDimension | None:
    """The dimension in the first place where its text touches nothing; put on the ground.

    Lines that are yet to come will be interrupted at it if they must.  None for one that must keep
    within its room, and has none.
    """
    if wanted.room is not None and not _text_between(wanted):
        return None
    found = _first_clear(_candidates(wanted, outline, style), ground, style)
    if found is None:
        if wanted.room is not None:
            return None
        found = _led_outside(wanted, ground, outline, style)
    kept: list[Line] = []
    for line in found.lines:
        kept += broken_around(line, ground.boxes, style.clearance)
    placed = replace(found, lines=tuple(kept)) if kept != list(found.lines) else found
    ground.add([*placed.lines, *chords(placed.sweeps)], [placed.box])
    return placed


def _text_between(wanted: FreeDimension) -> bool:
    """Whether the text of a length is shorter than the length on the sheet."""
    (x0, y0), (x1, y1), (tx, ty) = wanted.start, wanted.end, wanted.along
    return abs((x1 - x0) * tx + (y1 - y0) * ty) >= wanted.width + TEXT_ROOM


def _first_clear(
    candidates: Iterator[PlacedDimension], ground: Ground, style: DimensionStyle
) -> PlacedDimension | None:
    broken: PlacedDimension | None = None
    second: PlacedDimension | None = None
    looked_at = 0
    some = list(islice(candidates, _FIRST_LOOK))
    while some:
        boxes = [one.box for one in some]
        free, unbroken = ground.clear_now_and_later(boxes, style.clearance)
        for one, is_free, stays in zip(some, free.tolist(), unbroken.tolist(), strict=True):
            looked_at += 1
            if is_free and _fits(one, ground, style):
                if not one.sweeps and ground.runs_along(one.line):
                    second = second or one
                elif stays:
                    return one
                else:
                    broken = broken or one
            if broken is not None and looked_at >= _NEAR:
                return broken
        some = list(islice(candidates, 4 * looked_at))
    return broken or second


def _fits(one: PlacedDimension, ground: Ground, style: DimensionStyle) -> bool:
    """Whether its own lines keep out of its text, and its dimension line out of other texts."""
    arcs = chords(one.sweeps)
    if any(one.box.stretch_of(line, 0.0) is not None for line in (*one.lines, *arcs)):
        return False
    main = arcs or [one.line]
    return not ground.crosses_text(main, style.clearance)


def _candidates(
    wanted: FreeDimension, outline: Extent, style: DimensionStyle
) -> Iterator[PlacedDimension]:
    if wanted.apex is not None:
        return angle_places(wanted, style)
    return slanted_places(wanted, outline, style)


def _led_outside(
    wanted: FreeDimension, ground: Ground, outline: Extent, style: DimensionStyle
) -> PlacedDimension:
    """The dimension with its text outside the drawing and a leader to it."""
    one = next(_candidates(wanted, outline, style))
    for candidate in _candidates(wanted, outline, style):
        if not ground.crosses_text(chords(candidate.sweeps) or [candidate.line], style.clearance):
            one = candidate
            break
    else:
        one = replace(one, sweeps=(), arrows=())  # every arc would run through a text
    own = [*one.lines, *chords(one.sweeps)]
    bare: TextBox | None = None
    for ring in range(1, _RINGS):
        spots = list(_spots_outside(_along(one.line, 0.5), one.box, outline, ring))
        for box, clear in zip(spots, ground.clear(spots, style.clearance), strict=True):
            if not clear or any(box.stretch_of(line, 0.0) is not None for line in own):
                continue
            bare = bare or box
            # The middle of the line may lie under another text, where no leader comes to it.
            for share in _FEET:
                leader = _leader(_along(one.line, share), box, style)
                if not ground.crosses_text([leader], 0.0):
                    return replace(one, box=box, lines=(*one.lines, leader))
    assert bare is not None, "there is always room somewhere outside a drawing"
    return replace(one, box=bare)  # rather without a leader than with one through a text


def _along(line: Line, share: float) -> Vec2:
    return (line[0] + share * (line[2] - line[0]), line[1] + share * (line[3] - line[1]))


def _spots_outside(foot: Vec2, box: TextBox, outline: Extent, ring: int) -> Iterator[TextBox]:
    """Level boxes outside the outline on all four sides, in the so manieth ring round it."""
    left, bottom, right, top = outline
    half_w, half_h = box.half_width, box.half_height
    away = 4.0 * ring
    for slide in (0.0, *(w * k * 3.0 for k in range(1, 3 * ring) for w in (1.0, -1.0))):
        x, y = foot[0] + slide, foot[1] + slide
        yield TextBox(x, top + away + half_h, half_w, half_h)
        yield TextBox(x, bottom - away - half_h, half_w, half_h)
        yield TextBox(right + away + half_w, y, half_w, half_h)
        yield TextBox(left - away - half_w, y, half_w, half_h)


def _leader(foot: Vec2, box: TextBox, style: DimensionStyle) -> Line:
    """From the foot to just short of the nearest point of a level box."""
    x = min(max(foot[0], box.x - box.half_width), box.x + box.half_width)
    y = min(max(foot[1], box.y - box.half_height), box.y + box.half_height)
    length = max(math.dist(foot, (x, y)), 1e-9)
    part = max(0.0, 1.0 - style.clearance / length)
    return (*foot, foot[0] + (x - foot[0]) * part, foot[1] + (y - foot[1]) * part)
