"""A template: one region of a part at full size, its angles, and the sheets it takes.

Frame: true mm, (u, v) of PART_FACE.
"""

from __future__ import annotations

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
from geometry.sheets.part_sheets import part_groups
from geometry.sheets.printer import Edges
from geometry.sheets.template_uses import Use, template_name, traced
from geometry.sheets.template_words import template_titles
from geometry.sheets.tiles import Box, Tiling, tilings
from geometry.sheets.tracing import Tracing
from geometry.sheets.trim import proud_ends
from geometry.solids.solid import Floats
from geometry.views.view import PART_FACE
from shared.paper import Paper
from shared.units import in_units

_AIR = 4.0  # mm round the drawing
_CLOSE = 2.0  # mm above it where there is little room, and then no numbers
_FAR = 1e6  # mm
LABEL_ROOM = 6.0  # mm above the drawing, for the numbers of the stations


@dataclass(frozen=True, slots=True, eq=False)
class Template:
    """``name`` is T1, T2 … in their order, ``title`` what it is of, ``uses`` what it serves for and
    how it is laid, as printed first.

    ``start`` is the u of the finished left end, from which stations count; ``placed`` holds the
    angles, at scale 1.  ``ways`` are those in which paper may lie, the fewest sheets first.
    """

    name: str
    title: str
    uses: tuple[Use, ...]
    tracing: Tracing
    placed: Placed
    start: float
    ways: tuple[Tiling, ...]

    @property
    def content(self) -> Box:
        return content_box(self.tracing, self.placed)

    @property
    def part(self) -> Part:
        """The first of the pieces that it serves for as printed."""
        return self.uses[0].parts[0]


def templates_of(
    bench: Bench, paper: Paper, correction: Edges, style: DimensionStyle
) -> tuple[Template, ...]:
    """A template for every region worth tracing; those that one can serve for share it."""
    templates: list[Template] = []
    found = traced(part_groups(bench))
    titles = template_titles([one.uses for one in found])
    for number, (one, title) in enumerate(zip(found, titles, strict=True), start=1):
        tracing, part = one.tracing, one.uses[0].parts[0]
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
        start, told = proud_ends(part)[0], in_units(title, style.shown)
        templates.append(
            Template(template_name(number), told, one.uses, tracing, placed, start, ways)
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


def wood_in(template: Template, box: Box) -> shapely.Geometry:
    """The region of the part on one sheet."""
    return template.tracing.wood.intersection(shapely.box(*box))
