"""What stands on each sheet of a template: its name, which face is up, and the grain.

Frame: true mm (u, v) of the part's face.  On the wood where there is room, along it or up it; else
beside it, with a line to the wood, as on a wedge narrower than letters.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import shapely
from numpy.typing import NDArray

from geometry.drawing.marks import Anchor, Arc, Label, Mark, Role, Strokes
from geometry.drawing.text_box import Ground, TextBox
from geometry.primitives.frame import Vec2
from geometry.sheets.part_symbols import grain_arrow
from geometry.sheets.template import Template, wood_in
from geometry.sheets.tiles import Box
from shared.lettering import text_width

NAME = "name of the template"
_FACE = "face side up"
_LARGE, _TEXT, _SMALL = 3.5, 2.5, 1.8  # mm, capitals
_GRAINS = (40.0, 20.0, 12.0)  # mm, the longest that finds room
_AWAY = (4.0, 6.0, 9.0, 13.0, 18.0, 25.0)  # mm between the wood and a name beside it
_DOT = 0.5  # mm, radius, where its line ends
_AIR = 1.0  # mm round a name


def names(template: Template, box: Box, ground: Ground) -> list[Mark]:
    """The name with the side that is up, and the grain, of what one sheet shows."""
    wood = wood_in(template, box)
    if wood.is_empty:
        return []
    marks = _name(template, wood, box, ground)
    if template.part.solid_timber:
        turn = template.part.grain_across
        for long in _GRAINS:
            half = (2.0, long / 2.0 + 1.0) if turn else (long / 2.0 + 1.0, 2.0)
            spot = _on_wood(wood, ground, half, box)
            if spot is not None:
                return [*marks, *grain_arrow((spot.x, spot.y), long, turn=turn)]
    return marks


def _name(template: Template, wood: shapely.Geometry, box: Box, ground: Ground) -> list[Mark]:
    long, short = f"{template.name} {template.title}, {_FACE}", f"{template.name}, {_FACE}"
    for text, height, turn_deg in (
        *((long, _LARGE, 0.0), (long, _TEXT, 0.0), (short, _TEXT, 0.0), (short, _TEXT, 90.0)),
        *((short, _SMALL, 0.0), (short, _SMALL, 90.0)),
    ):
        wide = text_width(text, height, bold=True) / 2.0 + 1.0
        half = (height, wide) if turn_deg else (wide, height)
        spot = _on_wood(wood, ground, half, box)
        if spot is not None:
            at = (spot.x + height / 2.0, spot.y) if turn_deg else (spot.x, spot.y - height / 2.0)
            return [_label(text, at, height, turn_deg)]
    return _beside(short, wood, box, ground)


def _label(text: str, at: Vec2, height: float, turn_deg: float = 0.0) -> Label:
    return Label(Role.TITLE, text, at, height, Anchor.MIDDLE, turn_deg, bold=True, owner=NAME)


def _beside(text: str, wood: shapely.Geometry, box: Box, ground: Ground) -> list[Mark]:
    """The name in the nearest free place off the wood, with a line that ends on it."""
    half = (text_width(text, _TEXT, bold=True) / 2.0 + 1.0, _TEXT)
    foot = wood.representative_point()
    left, low, right, high = wood.bounds
    spots = [
        TextBox(x, y, *half)
        for away in _AWAY
        for x, y in (
            *((x, high + away + half[1]) for x in (foot.x, left + half[0], right - half[0])),
            *((x, low - away - half[1]) for x in (foot.x, left + half[0], right - half[0])),
            (right + away + half[0], foot.y),
            (left - away - half[0], foot.y),
        )
        if box[0] + half[0] <= x <= box[2] - half[0] and box[1] + half[1] <= y <= box[3] - half[1]
    ]
    free = [s for s, ok in zip(spots, ground.clear(spots, _AIR), strict=True) if ok]
    ways = [(s, _line_to(s, (foot.x, foot.y))) for s in free]
    spot, line = next(
        ((s, line) for s, line in ways if not ground.crosses_text([line], _AIR)), (None, None)
    )
    if spot is None or line is None:
        return []
    ground.add([line], [spot])
    return [
        _label(text, (spot.x, spot.y - _TEXT / 2.0), _TEXT),
        Strokes(Role.TEXT, np.array([line])),
        Arc(Role.TEXT, (foot.x, foot.y), _DOT, 0.0, 360.0),
    ]


def _line_to(spot: TextBox, foot: Vec2) -> tuple[float, float, float, float]:
    """From the side of a box that is nearest to a point to that."""
    x = min(max(foot[0], spot.x - spot.half_width), spot.x + spot.half_width)
    y = min(max(foot[1], spot.y - spot.half_height), spot.y + spot.half_height)
    return (x, y, *foot)


def _on_wood(wood: shapely.Geometry, ground: Ground, half: Vec2, box: Box) -> TextBox | None:
    """A free box on the wood, near the middle of what this sheet shows of it."""
    left, low, right, high = wood.bounds
    middle = ((left + right) / 2.0, (low + high) / 2.0)
    spots = [
        TextBox(float(x), float(y), *half)
        for y in np.linspace(low + half[1], high - half[1], 12)
        for x in np.linspace(left + half[0], right - half[0], 9)
        if box[0] + half[0] <= x <= box[2] - half[0]
    ]
    if not spots or right - left < 2.0 * half[0] or high - low < 2.0 * half[1]:
        return None
    good = ground.clear(spots, _AIR) & shapely.contains(wood, _areas(spots))
    chosen = [s for s, ok in zip(spots, good, strict=True) if ok]
    if not chosen:
        return None
    best = min(chosen, key=lambda s: abs(s.x - middle[0]) + abs(s.y - middle[1]))
    ground.add([], [best])
    return best


def _areas(spots: Sequence[TextBox]) -> NDArray[np.object_]:
    """Level boxes as polygons."""
    sides = [
        (s.x - s.half_width, s.y - s.half_height, s.x + s.half_width, s.y + s.half_height)
        for s in spots
    ]
    areas: NDArray[np.object_] = shapely.box(*np.array(sides).T)
    return areas
