"""One sheet of a template, drawn: what is traced, and what proves and joins the sheets.

Frame: true mm (u, v) of the part's face while drawing; the printer's correction is put on at the
end, on everything but the words along the foot.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
import shapely
from numpy.typing import NDArray

from geometry.dimensioning.angle_places import chords
from geometry.dimensioning.dimension_marks import dimension_marks
from geometry.drawing.cropping import cropped
from geometry.drawing.marks import Anchor, Arc, Label, Mark, Role, Strokes
from geometry.drawing.stretching import Stretch
from geometry.drawing.text_box import Ground, Line, TextBox, broken_around
from geometry.primitives.frame import Vec2
from geometry.sheets.check_square import BLOCK, check_squares
from geometry.sheets.template import LABEL_ROOM, Template, wood_in
from geometry.sheets.template_names import names
from geometry.sheets.tiles import OVERLAP, Box, Tile, Tiling, printable
from shared.lettering import text_width
from shared.units import MM_PER_INCH, Shown, format_length

_STATION_MM = 50.0
_STATION_IN = 2.0 * MM_PER_INCH
_CROSS = 5.0  # mm, half of a registration cross
_RING = 2.5
_EDGE = 6.0  # mm from the edge of the printable room to a cross
_SEARCH = 9.0  # mm, step of the search for the squares' place
_TEXT = 2.5
_ON_WOOD = 3.0  # mm from its edge to a station's number
_SEEN = 1e-3  # mm
_AROUND = 3.0  # mm of air round the squares, so that no tick of theirs is taken for a line

Lines = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Seam:
    """Where two sheets join: its letter, and the crosses both of them show, in true mm."""

    letter: str
    crosses: tuple[Vec2, ...]
    line: Line


def seams(template: Template, tiles: Tiling, letters: Iterator[str]) -> dict[Tile, list[Seam]]:
    """The seams of every sheet; neighbours share a seam and so its crosses."""
    found: dict[Tile, list[Seam]] = {tile: [] for tile in tiles.tiles}
    ground = Ground(_all_lines(template))
    for tile in tiles.tiles:
        u0, v0, u1, v1 = tile.box
        right, below = tiles.neighbour(tile, 1, 0), tiles.neighbour(tile, 0, 1)
        if right is not None:
            u = u1 - OVERLAP / 2.0
            low, high = max(v0, right.box[1]), min(v1, right.box[3])
            line = (u, low, u, high)
            spots = [(u, low + (high - low) * f) for f in _FRACTIONS]
            seam = Seam(next(letters), _clear_pair(spots, ground), line)
            found[tile].append(seam)
            found[right].append(seam)
        if below is not None:
            v = v0 + OVERLAP / 2.0
            line = (u0, v, u1, v)
            spots = [(u0 + (u1 - u0) * f, v) for f in _FRACTIONS]
            seam = Seam(next(letters), _clear_pair(spots, ground), line)
            found[tile].append(seam)
            found[below].append(seam)
    return found


def tile_marks(
    template: Template, tiles: Tiling, tile: Tile, joins: list[Seam], shown: Shown
) -> tuple[Mark, ...]:
    """All marks of a sheet but the words along its foot, in sheet mm."""
    box = tile.box
    ground = _ground(template, box)
    marks = [*_traced(template, box), *_angle_marks(template, box)]
    for seam in joins:
        marks += _seam_marks(seam, ground, box)
    corner = square_place(template, box, ground)
    half = BLOCK / 2.0
    middle = (corner[0] + half, corner[1] + half)
    ground.add([], [TextBox(*middle, half, half)])
    marks += check_squares(corner)
    marks += names(template, box, ground)
    marks += _stations(template, box, ground, shown)
    left, bottom, _, _ = printable(tiles.width, tiles.height)
    stretch = Stretch((box[0], box[1]), (left, bottom), tiles.correction)
    return tuple(stretch.mark(mark) for mark in marks)


def _ground(template: Template, box: Box) -> Ground:
    """The traced lines and the angles on one sheet."""
    ground = Ground(cropped(_all_lines(template), box))
    for one in template.placed.dimensions:
        if _inside(one.box, box):
            ground.add([*one.lines, *chords(one.sweeps)], [one.box])
    return ground


def square_place(template: Template, box: Box, ground: Ground) -> Vec2:
    """Where the check squares disturb least: off the lines first, then off the wood."""
    return _best_corner(template, box, ground)[1]


def square_cost(template: Template, tiles: Tiling) -> float:
    """How much the squares are in the way, the worst of all sheets."""
    costs = [
        _best_corner(template, tile.box, _ground(template, tile.box))[0] for tile in tiles.tiles
    ]
    return max(costs, default=0.0)


_FRACTIONS = (0.2, 0.8, 0.3, 0.7, 0.12, 0.88, 0.4, 0.6, 0.5)


def _all_lines(template: Template) -> Lines:
    tracing = template.tracing
    return np.concatenate([tracing.cut, tracing.joint, tracing.reverse, tracing.trim])


def _best_corner(template: Template, box: Box, ground: Ground) -> tuple[float, Vec2]:
    wood = wood_in(template, box)
    spots: list[TextBox] = []
    half = BLOCK / 2.0
    for y in np.arange(box[1] + half, box[3] - half + 1e-6, _SEARCH):
        for x in np.arange(box[2] - half, box[0] + half - 1e-6, -_SEARCH):
            spots.append(TextBox(float(x), float(y), half, half))
    if not spots:
        return (float("inf"), (box[0], box[1]))
    free = ground.clear(spots, _AROUND)
    if not free.any():
        free = ground.clear(spots, 1.0)
    squares = shapely.box(
        *np.array([(s.x - half, s.y - half, s.x + half, s.y + half) for s in spots]).T
    )
    on_wood = shapely.area(shapely.intersection(squares, wood))
    lines = _all_lines(template)
    cost = on_wood / BLOCK**2 + np.where(free, 0.0, 10.0)
    for index in () if free.any() else range(len(spots)):
        s = spots[index]
        inside = cropped(lines, (s.x - half, s.y - half, s.x + half, s.y + half))
        cost[index] += np.hypot(*(inside[:, 2:] - inside[:, :2]).T).sum() / BLOCK
        cost[index] += 2.0 * sum(s.holds((text.x, text.y), _CROSS) for text in ground.boxes)
    best = int(np.argmin(cost))
    return (float(cost[best]), (spots[best].x - half, spots[best].y - half))


def _traced(template: Template, box: Box) -> list[Mark]:
    tracing = template.tracing
    marks: list[Mark] = []
    for role, lines in (
        (Role.GRID, tracing.broken),
        (Role.HIDDEN, tracing.reverse),
        (Role.SCRIBE, tracing.joint),
        (Role.TRIM, tracing.trim),
        (Role.CUT, tracing.cut),
    ):
        kept = cropped(lines, box)
        if len(kept):
            marks.append(Strokes(role, kept))
    return marks


def _angle_marks(template: Template, box: Box) -> list[Mark]:
    """Angles whose text stands on this sheet, and the part of their lines that does."""
    kept = [one for one in template.placed.dimensions if _inside(one.box, box)]
    owners = {f"dimension:{one.name}" for one in kept}
    marks: list[Mark] = []
    for mark in dimension_marks(template.placed, (0.0, 0.0)):
        if isinstance(mark, Strokes):
            assert mark.owner_of is not None
            own = np.array([mark.owners[i] in owners for i in mark.owner_of])
            lines = cropped(mark.segments[own], box)
            if len(lines):
                marks.append(Strokes(mark.role, lines))
        elif mark.owner in owners:
            marks.append(mark)
    return marks


def _inside(text: TextBox, box: Box) -> bool:
    return box[0] + 8.0 < text.x < box[2] - 8.0 and box[1] + 4.0 < text.y < box[3] - 4.0


def _seam_marks(seam: Seam, ground: Ground, box: Box) -> list[Mark]:
    marks: list[Mark] = []
    for number, (u, v) in enumerate(seam.crosses, start=1):
        arms = np.array([(u - _CROSS, v, u + _CROSS, v), (u, v - _CROSS, u, v + _CROSS)])
        name = f"{seam.letter}{number}"
        marks += [
            Strokes(Role.TEXT, arms, owner=f"cross {name}"),
            Arc(Role.TEXT, (u, v), _RING, 0.0, 360.0),
        ]
        spot = TextBox(u, v, _CROSS, _CROSS)
        ground.add([], [spot])
        at = (u + 1.2, v + _RING + 0.6)
        marks.append(Label(Role.TEXT, name, at, _TEXT, Anchor.START, bold=True))
    ground.add([seam.line], [])
    line = np.array([seam.line])
    marks.append(Strokes(Role.GRID, cropped(line, box)))
    return marks


def _clear_pair(spots: list[Vec2], ground: Ground) -> tuple[Vec2, ...]:
    """Two spots for crosses, far apart, off the lines where there are such places."""
    boxes = [TextBox(u, v, _CROSS + 1.0, _CROSS + 1.0) for u, v in spots]
    free = ground.clear(boxes, 0.5)
    clear = sorted(spot for spot, ok in zip(spots, free, strict=True) if ok)
    if len(clear) < 2:
        clear = sorted(spots)
    return (clear[0], clear[-1])


def _reach(template: Template, box: Box, u: float) -> Vec2:
    """From where to where a line across the wood runs.

    On a sheet of its own height that is over the wood there, else over the whole drawing.
    """
    _, low, _, high = template.tracing.box
    if box[3] > template.content[3] - _SEEN or box[1] > low:
        return (low, high)
    line = shapely.LineString([(u, low - 1.0), (u, high + 1.0)])
    there = template.tracing.wood.intersection(line)
    return (low, high) if there.is_empty else (there.bounds[1], there.bounds[3])


def _stations(template: Template, box: Box, ground: Ground, shown: Shown) -> list[Mark]:
    """Faint lines across the wood at even distances from the finished left end, numbered above it,
    below it, or on it just inside its edges."""
    step = _STATION_IN if shown.unit == "in" else _STATION_MM
    left, _, right, _ = template.tracing.box
    first = int(np.ceil((left - template.start) / step - 1e-9))
    last = int(np.floor((right - template.start) / step + 1e-9))
    kept: list[Line] = []
    marks: list[Mark] = []
    for k in range(first, last + 1):
        u = template.start + k * step
        if not box[0] <= u <= box[2]:
            continue
        low, high = _reach(template, box, u)
        line = (u, max(low - 3.0, box[1]), u, min(high + 3.0, box[3]))
        text = format_length(k * step, shown)
        spots = [
            TextBox(u, v + _TEXT / 2.0, text_width(text, _TEXT) / 2.0, _TEXT / 2.0)
            for v in (
                high + LABEL_ROOM - _TEXT,
                high + LABEL_ROOM,
                line[1] - _TEXT - 1.0,
                high - _TEXT - _ON_WOOD,
                low + _ON_WOOD,
            )
        ]
        clear = ground.clear(spots, 0.8)
        free = (s for s, ok in zip(spots, clear, strict=True) if ok and _inside(s, box))
        spot = next(free, None)
        if spot is None or line[3] - line[1] <= 1.0:
            continue  # a line without its number tells nothing
        kept += broken_around(line, [*ground.boxes, spot], 0.8)
        at = (u, spot.y - _TEXT / 2.0)
        marks.append(Label(Role.TEXT, text, at, _TEXT, Anchor.MIDDLE))
    if kept:
        marks.append(Strokes(Role.GRID, np.array(kept)))
    return marks
