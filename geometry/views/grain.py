"""How the wood of a part lies in a section: end grain, long grain, or the plies of a sheet.

Frame: directions in bench coordinates in, (u, v) of the view out.

A part's grain runs along its x axis, or its y axis if the maker says so; sheet goods lie in their
xy plane.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

import shapely

from geometry.design.part import Part
from geometry.drawing.hatching import Cut, Manner
from geometry.primitives.frame import Vec2, Vec3, cross, dot
from geometry.views.sections import CutFace, Section
from geometry.views.view import View

END_GRAIN_DEG = 45.0
"""A plane whose normal leans less than this from the grain cuts across the fibres; our choice."""

_TOUCHING = 0.5  # mm: faces nearer than this, with their joint's clearance, lie side by side
_EDGE_ON = 0.2  # sine of the least lean of a sheet at which its plies are told
_NOTHING = 1e-9


def manner_of(part: Part, view: View, at: float) -> Manner:
    """How the part is hatched where the plane ``at`` of ``view`` cuts it; ``plies`` in view mm."""
    frame, normal = part.frame, view.toward
    if part.solid_timber:
        lean_deg = math.degrees(math.acos(min(1.0, abs(dot(part.grain, normal)))))
        if lean_deg < END_GRAIN_DEG:
            # Rings as in a board sawn clear of the pith: it lies beyond the face side.
            return Manner(Cut.END_GRAIN, _flat(frame.z_axis, view))
        return Manner(Cut.LONG_GRAIN, _flat(part.grain, view))
    faces = cross(frame.z_axis, normal)
    if "plywood" not in part.material or math.hypot(*faces) < _EDGE_ON:
        return Manner(Cut.FIBRES, (1.0, 0.0))
    along = _flat(faces, view)
    return Manner(Cut.PLIES, along, plies=_plies(part, view, at, along))


def manners(parts: Sequence[Part], section: Section) -> tuple[Manner, ...]:
    """The manner of each cut face, touching pieces of one kind told apart."""
    found: list[Manner] = []
    for index, face in enumerate(section.faces):
        plain = manner_of(parts[face.owner], section.view, section.at)
        taken = {
            other.turn
            for near, other in zip(section.faces[:index], found, strict=True)
            if other.cut is plain.cut and _beside(near, face)
        }
        turn = next(n for n in range(len(taken) + 1) if n not in taken)
        found.append(Manner(plain.cut, plain.along, turn, plain.plies))
    return tuple(found)


def _beside(one: CutFace, other: CutFace) -> bool:
    return bool(shapely.dwithin(one.region, other.region, _TOUCHING))


def _flat(direction: Vec3, view: View) -> Vec2:
    """A direction as it lies in the view, at length 1; up for one that points at the viewer."""
    u, v = dot(direction, view.right), dot(direction, view.up)
    size = math.hypot(u, v)
    return (u / size, v / size) if size > _NOTHING else (0.0, 1.0)


def _plies(part: Part, view: View, at: float, along: Vec2) -> tuple[float, float]:
    """Where a sheet's two faces stand in the section, measured across its plies.

    A plane that cuts the sheet askew sees its thickness lengthened.
    """
    frame = part.frame
    across = (-along[1], along[0])
    lean = dot(frame.z_axis, view.right) * across[0] + dot(frame.z_axis, view.up) * across[1]
    level = dot(frame.z_axis, frame.origin) - at * dot(frame.z_axis, view.toward)
    faces = (level / lean, (level + part.shape.blank.thickness) / lean)
    return (min(faces), max(faces))
