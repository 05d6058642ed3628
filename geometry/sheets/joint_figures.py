"""The flat views among which a joint's detail chooses: sections through it, and each part alone.

Frame and units: (u, v) of each view, mm.

A section is taken across the joint: its line of sight lies in the faces that meet, so that they and
the angles between them are seen true; along a face's own normal; or square to the ends or the broad
faces of a part, in which an angle may lie.  A part alone is turned as it
lies on the bench, its grain from left to right, and seen from any of its six sides.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from itertools import combinations

import numpy as np

from geometry.primitives.frame import (
    Y_AXIS,
    Z_AXIS,
    Frame,
    Vec3,
    cross,
    dot,
    norm,
    scale,
    unit,
)
from geometry.sheets.joint_outlines import (
    part_outlines,
    section_outlines,
    to_mark,
)
from geometry.sheets.outlines import Outlines
from geometry.solids.cutting import placed
from geometry.views.breaks import Broken, broken
from geometry.views.joint_scene import JointScene
from geometry.views.look import look_all
from geometry.views.view import PART_EDGE, PART_END, PART_FACE, View

REVERSE = View("reverse", (1, 0, 0), (0, 1, 0), (0, 0, 1))
FAR_EDGE = View("far edge", (1, 0, 0), (0, 0, -1), (0, 1, 0))
FAR_END = View("far end", (0, 0, -1), (0, -1, 0), (-1, 0, 0))
SIDES = (PART_FACE, PART_EDGE, PART_END, REVERSE, FAR_EDGE, FAR_END)
"""The second three look against the first."""

_SIGHT = unit((0.35, -1.0, 0.6))
"""Of two opposite lines of sight the one from in front, above and the right is taken."""

_CLEARLY = 0.2  # sine of the least angle between two directions that span a plane
_SAME = 0.02
_MOST = 10  # lines of sight that are tried


@dataclass(frozen=True, slots=True, eq=False)
class PartFigure:
    """A part of the joint alone, from one of its sides; ``index`` 0 or 1 tells which."""

    index: int
    side: View
    view: View
    lines: Broken
    outlines: Outlines


@dataclass(frozen=True, slots=True, eq=False)
class SectionFigure:
    """A section at a height of a view; ``cuts_both`` tells whether it meets both parts."""

    view: View
    at: float
    outlines: Outlines
    cuts_both: bool


@lru_cache(maxsize=4)
def part_figures(scene: JointScene, index: int) -> tuple[PartFigure, ...]:
    """One part from all sides."""
    one = scene.both[index]
    views = [_turned(one.part.frame, side, f"{index} {side.name}") for side in SIDES]
    mark = to_mark(scene.joint, index)
    found: list[PartFigure] = []
    for side, view, linework in zip(SIDES, views, look_all((one.part,), views), strict=True):
        lines = broken(linework, (one,))
        outlines = part_outlines(one, mark, lines)
        found.append(PartFigure(index, side, view, lines, outlines))
    return tuple(found)


def section_figures(scene: JointScene) -> tuple[SectionFigure, ...]:
    """Sections through the middle of the joint, one for each line of sight worth trying."""
    found: list[SectionFigure] = []
    for k, sight in enumerate(_sights(scene)):
        view = View(f"section {k}", *_axes(sight))
        at = _middle(scene, sight)
        outlines, cut = section_outlines(scene, view, at)
        found.append(SectionFigure(view, at, outlines, cut == len(scene.both)))
    return tuple(found)


def _middle(scene: JointScene, sight: Vec3) -> float:
    """Half way along a line of sight through what is shown of the joint in both parts."""
    along = np.array(sight)
    reach = scene.reach() @ along
    parts = [placed(part).vertices @ along for part in scene.parts]
    low = max(reach.min(), *(one.min() for one in parts))
    high = min(reach.max(), *(one.max() for one in parts))
    if low > high:
        low, high = reach.min(), reach.max()
    return float(low + high) / 2.0


def _turned(frame: Frame, side: View, name: str) -> View:
    """A view of a part's own frame as a view of the bench."""
    right, up, toward = (frame.turn_to_bench(a) for a in (side.right, side.up, side.toward))
    return View(name, right, up, toward)


def _sights(scene: JointScene) -> list[Vec3]:
    """Lines of sight along the faces that meet, then along their normals, then square to the parts'
    ends and faces."""
    normals = [contact.normal for contact in scene.joint.contacts]
    faces = [part.frame.z_axis for part in scene.parts]
    wanted = [
        *(cross(a, b) for a, b in combinations(normals, 2)),
        *(cross(a, b) for a in normals for b in faces),
        *normals,
        *(part.frame.x_axis for part in scene.parts),
        *faces,
    ]
    found: list[Vec3] = []
    for raw in wanted:
        if norm(raw) < _CLEARLY:
            continue
        way = unit(raw)
        sight = way if dot(way, _SIGHT) >= 0.0 else scale(way, -1.0)
        if all(norm(cross(sight, known)) > _SAME for known in found):
            found.append(sight)
    return found[:_MOST]


def _axes(toward: Vec3) -> tuple[Vec3, Vec3, Vec3]:
    """Right, up and toward, upright as the bench stands, or with its back up when seen from
    above."""
    upright = Z_AXIS if norm(cross(Z_AXIS, toward)) > _CLEARLY else Y_AXIS
    right = unit(cross(upright, toward))
    return right, cross(toward, right), toward
