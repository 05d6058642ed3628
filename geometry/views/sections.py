"""Sections: what a plane cuts through, and what is seen behind it.

Frame and units: (u, v) of the section's view, mm; the plane stands square to the view at the height
``at`` toward the viewer, and everything nearer is taken away.

Method: each part that the plane crosses is trimmed by it like any saw cut, and the trimmed solids
are looked at as any others are; the cut faces come from the whole solids, so that a face which
only lies in the plane is not taken for one.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from shapely.geometry.base import BaseGeometry

from geometry.cuts.saw import SawCut
from geometry.design.part import Part, Shape
from geometry.primitives.frame import Frame, scale
from geometry.solids.cutting import placed
from geometry.solids.section import cut_region
from geometry.views.linework import Linework
from geometry.views.look import look
from geometry.views.view import View
from shared.tolerances import COPLANAR


@dataclass(frozen=True, slots=True, eq=False)
class CutFace:
    """Where the plane goes through one part: its index, and a region of polygons with holes."""

    owner: int
    region: BaseGeometry


@dataclass(frozen=True, slots=True, eq=False)
class Section:
    """A section view; owners of faces and lines are indices into the parts it was made of.

    ``left`` are the parts that are not taken away whole, by index and as the plane leaves them.
    """

    view: View
    at: float
    faces: tuple[CutFace, ...]
    linework: Linework
    left: tuple[tuple[int, Part], ...]


def section(parts: Sequence[Part], view: View, at: float) -> Section:
    """The parts cut by the plane ``at`` mm toward the viewer of ``view``.

    Raises CannotBuild, naming the part, when the cuts of one leave nothing of it.
    """
    plane = plane_of(view, at)
    faces: list[CutFace] = []
    left: list[tuple[int, Part]] = []
    for owner, part in enumerate(parts):
        solid = placed(part)
        height = solid.vertices @ np.array(view.toward)
        if height.min() > at - COPLANAR:
            continue  # wholly in front
        if height.max() > at + COPLANAR:
            region = cut_region(solid, plane)
            if not region.is_empty:
                faces.append(CutFace(owner, region))
            left.append((owner, trimmed(part, plane)))
        else:
            left.append((owner, part))
    seen = look([placed(part) for _, part in left], view)
    owners = np.array([owner for owner, _ in left], dtype=np.intp)
    lines = Linework(view, seen.segments, seen.visible, owners[seen.owner])
    return Section(view, at, tuple(faces), lines, tuple(left))


def plane_of(view: View, at: float) -> Frame:
    """The cutting plane as a frame whose x and y are the view's u and v."""
    return Frame(scale(view.toward, at), view.right, view.up, view.toward)


def trimmed(part: Part, plane: Frame) -> Part:
    """The part without what stands in front of a plane."""
    cut = SawCut(
        "section", part.frame.to_local(plane.origin), part.frame.turn_to_local(plane.z_axis)
    )
    return replace(part, shape=Shape(part.shape.blank, (*part.shape.cuts, cut)))
