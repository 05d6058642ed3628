"""A template: one region of a part at full size, its angles, and the sheets it takes.

Frame: true mm, (u, v) of PART_FACE.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import partial

import numpy as np
import shapely

from geometry.bench.bench import Bench
from geometry.design.part import Part
from geometry.dimensioning.placed import DimensionStyle, Placed, around
from geometry.dimensioning.placement import place
from geometry.drawing.cropping import cropped
from geometry.sheets.part_dimensions import part_dimensions
from geometry.sheets.part_names import group_title
from geometry.sheets.part_sheets import part_groups
from geometry.sheets.printer import Edges
from geometry.sheets.tiles import Box, Tiling, tilings
from geometry.sheets.tracing import Tracing, tracings
from geometry.sheets.trim import proud_ends
from geometry.solids.solid import Floats
from geometry.views.view import PART_FACE
from shared.paper import Paper
from shared.units import in_units, length_mark

_NEAR = 0.5  # mm
_AIR = 4.0  # mm round the drawing
_CLOSE = 2.0  # mm above it where there is little room, and then no numbers
_FAR = 1e6  # mm
LABEL_ROOM = 6.0  # mm above the drawing, for the numbers of the stations


@dataclass(frozen=True, slots=True, eq=False)
class Template:
    """``title`` and ``count`` are what it is and how many to make from it.

    ``start`` is the u of the finished left end, from which stations count; ``placed`` holds the
    angles, at scale 1.  ``ways`` are those in which paper may lie, the fewest sheets first.
    """

    title: str
    count: int
    material: str
    grain: bool
    grain_across: bool
    tracing: Tracing
    placed: Placed
    start: float
    ways: tuple[Tiling, ...]

    @property
    def content(self) -> Box:
        return content_box(self.tracing, self.placed)


def templates_of(
    bench: Bench, paper: Paper, correction: Edges, style: DimensionStyle
) -> tuple[Template, ...]:
    """A template for every region worth tracing; parts that trace alike share one."""
    found: dict[object, list[tuple[tuple[Part, ...], Tracing]]] = {}
    for group in part_groups(bench):
        for one in tracings(group[0]):
            key = (_fingerprint(one), _where(one, group[0]))
            found.setdefault(key, []).append((group, one))
    templates: list[Template] = []
    for alike in found.values():
        group, tracing = alike[0]
        parts = [part for parts, _ in alike for part in parts]
        part = group[0]
        placed = _angles(part, tracing, style)
        lines = np.concatenate([tracing.cut, tracing.joint, tracing.reverse, tracing.trim])
        ways = tilings(
            content_box(tracing, placed),
            paper,
            correction,
            lambda box, lines=lines: len(cropped(lines, box)) > 0,  # type: ignore[misc]
            [
                partial(_top, lines, placed, _AIR + LABEL_ROOM),
                partial(_top, lines, placed, _CLOSE),
            ],
        )
        templates.append(
            Template(
                _common_title(parts) + in_units(_where(tracing, part), style.shown),
                len(parts),
                part.material,
                part.solid_timber,
                part.grain_across,
                tracing,
                placed,
                proud_ends(part)[0],
                ways,
            )
        )
    return tuple(templates)


def content_box(tracing: Tracing, placed: Placed) -> Box:
    """All that is drawn, with some air and the room for the numbers of the stations."""
    left, low, right, high = tracing.box
    a, b, c, d = placed.extent
    return (
        min(left, a) - _AIR,
        min(low, b) - _AIR,
        max(right, c) + _AIR,
        max(high, d) + _AIR + LABEL_ROOM,
    )


def _top(lines: Floats, placed: Placed, air: float, left: float, right: float) -> float:
    """How high a template with some air above reaches between two places along it."""
    reaches = [
        around((one.box.x, one.box.y, one.box.x, one.box.y), one) for one in placed.dimensions
    ]
    tops = [top for start, _, end, top in reaches if start < right and end > left]
    inside = cropped(lines, (left, -_FAR, right, _FAR))
    return max([*tops, *inside[:, (1, 3)].ravel().tolist()], default=-_FAR) + air


def _angles(part: Part, tracing: Tracing, style: DimensionStyle) -> Placed:
    """The angles of the face that have their corner in the region."""
    left, low, right, high = tracing.box
    angles = [
        one
        for one in part_dimensions(part.shape)
        if one.view == PART_FACE.name
        and one.apex is not None
        and left <= one.apex[0] <= right
        and low <= one.apex[1] <= high
    ]
    lines = np.concatenate([tracing.cut, tracing.joint, tracing.reverse, tracing.trim])
    return place(angles, lines, 1.0, replace(style, brackets=False))


def _fingerprint(tracing: Tracing) -> object:
    """Equal for tracings that look alike, wherever they lie along the part."""
    u, v = tracing.box[0], tracing.box[1]
    key: list[object] = []
    for lines in (tracing.cut, tracing.joint, tracing.reverse, tracing.trim):
        moved = np.round(lines - np.array((u, v, u, v)), 2) + 0.0
        key.append(tuple(sorted(tuple(sorted([(a, b), (c, d)])) for a, b, c, d in moved.tolist())))
    return tuple(key)


def _where(tracing: Tracing, part: Part) -> str:
    """Which region of a part, empty for the whole of it."""
    if tracing.whole:
        return ""
    left, right = tracing.box[0], tracing.box[2]
    at_left, at_right = left < _NEAR, right > part.shape.blank.length - _NEAR
    if at_left and at_right:
        return ""
    if at_left or at_right:
        return ", left end" if at_left else ", right end"
    return f", {length_mark(round(left, 1))} to {length_mark(round(right, 1))} from the left end"


def _common_title(parts: Sequence[Part]) -> str:
    titles = {group_title([part]) for part in parts}
    if len(titles) == 1:
        return titles.pop()
    return " / ".join(sorted({title.split(",")[0] for title in titles}))


def wood_in(template: Template, box: Box) -> shapely.Geometry:
    """The region of the part on one sheet."""
    return template.tracing.wood.intersection(shapely.box(*box))
