"""A section as marks: its lines, and the hatching of what it cuts.

Frame: sheet mm; the view's (0, 0) stands at ``origin``.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np
from shapely import affinity

from geometry.design.part import Part
from geometry.drawing.hatching import hatched
from geometry.drawing.marks import Mark, Role, Strokes
from geometry.primitives.frame import Vec2
from geometry.sheets.arrangement import linework_marks
from geometry.views.grain import manners
from geometry.views.linework import Linework
from geometry.views.sections import Section


def section_marks(
    section: Section, parts: Sequence[Part], scale: float, origin: Vec2, *, hidden: bool = False
) -> list[Mark]:
    """The hatching first and then the lines; hidden ones only when asked for (ISO 128-40, from
    memory, leaves them out)."""
    marks: list[Mark] = []
    for face, manner in zip(section.faces, manners(parts, section), strict=True):
        region = affinity.scale(face.region, scale, scale, origin=(0.0, 0.0))
        low, high = manner.plies
        strokes = hatched(region, replace(manner, plies=(low * scale, high * scale)))
        if len(strokes):
            strokes += np.array(origin * 2)
            marks.append(Strokes(Role.HATCH, strokes, owner=f"part:{parts[face.owner].name}"))
    owners = tuple(f"part:{part.name}" for part in parts)
    lines = section.linework if hidden else visible_lines(section.linework)
    return marks + linework_marks(lines, scale, origin, owners)


def visible_lines(linework: Linework) -> Linework:
    """The lines of a view that are seen."""
    seen = linework.visible
    return Linework(linework.view, linework.segments[seen], seen[seen], linework.owner[seen])
