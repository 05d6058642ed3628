"""A section as marks: its lines, and the hatching of what it cuts.

Frame: sheet mm; the view's (0, 0) stands at ``origin``.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np
import shapely
from shapely import affinity

from geometry.design.part import Part
from geometry.drawing.hatching import hatched
from geometry.drawing.marks import Mark, Role, Strokes
from geometry.drawing.text_box import TextBox
from geometry.primitives.frame import Vec2
from geometry.sheets.arrangement import linework_marks
from geometry.views.grain import manners
from geometry.views.linework import Linework
from geometry.views.sections import Section

_AIR = 0.5  # mm between a text and the hatching round it


def section_marks(
    section: Section,
    parts: Sequence[Part],
    scale: float,
    origin: Vec2,
    keep_off: Sequence[TextBox] = (),
) -> list[Mark]:
    """The hatching first and then the lines that are seen (ISO 128-3, from memory, leaves the
    hidden ones out).

    Hatching is interrupted at the texts in ``keep_off``, given about the view's origin.
    """
    marks: list[Mark] = []
    texts = shapely.union_all([shapely.Polygon(box.corners()).buffer(_AIR) for box in keep_off])
    for face, manner in zip(section.faces, manners(parts, section), strict=True):
        region = affinity.scale(face.region, scale, scale, origin=(0.0, 0.0))
        low, high = manner.plies
        if keep_off:
            region = region.difference(texts)
        strokes = hatched(region, replace(manner, plies=(low * scale, high * scale)))
        if len(strokes):
            strokes += np.array(origin * 2)
            marks.append(Strokes(Role.HATCH, strokes, owner=f"part:{parts[face.owner].name}"))
    owners = tuple(f"part:{part.name}" for part in parts)
    return marks + linework_marks(visible_lines(section.linework), scale, origin, owners)


def visible_lines(linework: Linework) -> Linework:
    """The lines of a view that are seen."""
    seen = linework.visible
    return Linework(linework.view, linework.segments[seen], seen[seen], linework.owner[seen])
