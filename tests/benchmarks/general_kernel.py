"""The same parts and the same three views by a general B-rep kernel: build123d on OCC.

For comparison only (``pip install build123d``, the benchmark extra).  Frame and units: bench
frame, mm.  Blanks and wastes are those of our own parts: a box, and in one boolean operation for
each part everything its cuts take away; arcs stay true arcs, as such a kernel likes them best.
Hidden lines by ``Shape.project_to_viewport``: the kernel's exact algorithm (HLRBRep_Algo).
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from build123d import (
    Box,
    Compound,
    Edge,
    Face,
    Location,
    Plane,
    Shape,
    Shell,
    Solid,
    ThreePointArc,
    Vector,
    Wire,
)
from scipy.spatial import ConvexHull

from geometry.cuts.removal import HalfSpace, Hollow, Hull, Prism, Removal
from geometry.design.part import Part
from geometry.primitives.frame import Frame, Vec3
from geometry.primitives.path import Path
from geometry.solids.cutting import removals_of
from geometry.views.view import View

FAR = 1e5  # mm from the bench to the eye


def solids(parts: Sequence[Part], *, one_by_one: bool = False) -> list[Solid]:
    """Each part where it stands.

    All wastes of a part go in one operation, which is quicker, or one after another, which is
    surer: cutters that nearly touch confuse this kernel when it has to unite them.  Where it loses
    the part so, the last waste goes first.
    """
    return [_solid(part, one_by_one=one_by_one) for part in parts]


def three_views(bodies: Sequence[Solid], views: Sequence[View]) -> list[tuple[int, int]]:
    """Visible and hidden edges of all bodies together, counted for each view."""
    whole = Compound(list(bodies))
    counts = []
    for view in views:
        eye = tuple(FAR * axis for axis in view.toward)
        visible, hidden = whole.project_to_viewport(eye, viewport_up=view.up, look_at=(0, 0, 0))
        counts.append((len(visible), len(hidden)))
    return counts


def _solid(part: Part, *, one_by_one: bool) -> Solid:
    blank = part.shape.blank
    size = (blank.length, blank.width, blank.thickness)
    middle = (blank.length / 2.0, blank.width / 2.0, blank.thickness / 2.0)
    box = Box(*size).moved(Location(middle))
    wastes = [_waste(removal, middle, 4.0 * max(size)) for removal in removals_of(part.shape)]
    groups = [[waste] for waste in wastes] if one_by_one else [wastes] if wastes else []
    found = _cut(box, groups)
    if not found and one_by_one:
        found = _cut(box, groups[::-1])
    assert len(found) == 1, part.name
    return found[0].moved(_location(part.frame))


def _cut(box: Shape, groups: Sequence[Sequence[Shape]]) -> list[Solid]:
    cut = box
    for group in groups:
        cut = cut.cut(*group)
    return list(cut.solids())


def _location(frame: Frame) -> Location:
    return Location(Plane(frame.origin, x_dir=frame.x_axis, z_dir=frame.z_axis))


def _waste(removal: Removal, middle: Vec3, reach: float) -> Shape:
    """``middle`` of the blank; ``reach`` far beyond it."""
    if isinstance(removal, HalfSpace):
        return _beyond(removal, middle, reach)
    if isinstance(removal, Prism):
        face = Face(_wire(removal.path))
        up = Vector(0, 0, removal.z_high - removal.z_low)
        prism = Solid.extrude(face, up).moved(Location((0, 0, removal.z_low)))
        prism = prism.moved(_location(removal.frame))
        ends = [_beyond(end, middle, reach) for end in removal.ends]
        return prism.cut(*ends) if ends else prism
    return _hollow(removal) if isinstance(removal, Hollow) else _hull(removal)


def _hollow(hollow: Hollow) -> Shape:
    """A column over each facet, all of them united."""
    facets = hollow.facets
    first, *others = (
        _hull(
            Hull(
                tuple((x, y, z) for x, y, deep in facets.corners(f) for z in (deep, hollow.z_open))
            )
        )
        for f in facets.faces
    )
    return first.fuse(*others) if others else first


def _beyond(half: HalfSpace, middle: Vec3, reach: float) -> Solid:
    """A block on the plane, opposite the middle of the blank."""
    outward, at = np.array(half.outward), np.array(middle)
    foot = at - outward * float(outward @ (at - np.array(half.point)))
    block = Box(2 * reach, 2 * reach, reach).moved(Location((0, 0, reach / 2.0)))
    return block.moved(Location(Plane(tuple(foot), z_dir=half.outward))).solid()


def _wire(path: Path) -> Wire:
    edges = []
    count = len(path.vertices)
    for i, (x0, y0, bulge) in enumerate(path.vertices):
        x1, y1, _ = path.vertices[(i + 1) % count]
        if not bulge:
            edges.append(Edge.make_line((x0, y0), (x1, y1)))
            continue
        # The middle of the arc lies square off the chord, to its right where it turns left.
        chord = np.array((x1 - x0, y1 - y0))
        off = np.array((chord[1], -chord[0])) / np.linalg.norm(chord)
        middle = np.array(((x0 + x1) / 2.0, (y0 + y1) / 2.0)) + off * bulge * (
            np.linalg.norm(chord) / 2.0
        )
        edges.append(ThreePointArc((x0, y0), tuple(middle), (x1, y1)).edge())
    return Wire(edges)


def _hull(hull: Hull) -> Solid:
    points = np.array(hull.points)
    found = ConvexHull(points)
    sides: dict[tuple[float, ...], set[int]] = {}
    for plane, corners in zip(found.equations, found.simplices, strict=True):
        sides.setdefault(tuple(np.round(plane, 6)), set()).update(int(k) for k in corners)
    return Solid(
        Shell([_polygon(points[sorted(side)], np.array(n[:3])) for n, side in sides.items()])
    )


def _polygon(corners: np.ndarray, normal: np.ndarray) -> Face:
    middle = corners.mean(axis=0)
    first = corners[0] - middle
    second = np.cross(normal, first)
    turn = np.arctan2((corners - middle) @ second, (corners - middle) @ first)
    ordered = corners[np.argsort(turn)]
    return Face(Wire.make_polygon([tuple(corner) for corner in ordered]))
