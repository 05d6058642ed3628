"""The one place that knows the solid kernel (manifold3d): cutting, measuring, reading back.

Frame and units: as the values given, mm.  The kernel never raises: a body it cannot make has a
status and no volume, so every result is checked here and a bad one raises EngineFault.

Method: what goes right through is cut in the plane; saw cuts trim by a plane, which is cheapest;
then the simple cutters, those that stand apart in one go, as each go costs about as much as the
surface it meets; last the many-sided ones together, as they seldom meet one another.  Each
triangle of the result remembers the cutter and the face it came from.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import TypeGuard

import manifold3d
import numpy as np

from geometry.cuts.cut import Blank
from geometry.cuts.removal import PART_FRAME, HalfSpace, Hollow, Hull, Prism, Removal
from geometry.primitives.frame import Frame, Vec3, add, dot, scale
from geometry.primitives.path import Path
from geometry.solids.hollow import hollow_surface
from geometry.solids.prism import FLAT, is_convex_polygon, outline, side_surface
from geometry.solids.solid import Floats, Indices
from shared.tolerances import COPLANAR


class EngineFault(AssertionError):
    """The solid kernel could not do what was asked: a mistake of ours, never the maker's."""


@dataclass(frozen=True, slots=True, eq=False)
class _Rounded:
    """A cutter with arcs, standing at its path's first vertex, and the kernel's name for it.

    ``arcs`` (g,) and ``axes`` (k, 2, 3) as in a mesh.
    """

    manifold: manifold3d.Manifold
    origin: int
    arcs: Indices
    axes: Floats


@dataclass(frozen=True, slots=True, eq=False)
class Body:
    """A closed body inside the kernel, and the rounds among what it was cut with.

    Those are kept with it: the kernel knows a cutter by a name, and one made anew has another.
    """

    manifold: manifold3d.Manifold
    rounded: tuple[_Rounded, ...] = ()


@dataclass(frozen=True, slots=True, eq=False)
class Mesh:
    """The surface of a body: n vertices, m triangles, g flat faces, k arcs.

    ``vertices`` (n, 3); ``triangles`` (m, 3), counter-clockwise from outside; ``faces`` (m,) the
    flat face of each triangle, 0 to g - 1; ``arcs`` (g,) the arc that a face is a chord of, FLAT
    for none; ``axes`` (k, 2, 3) a point on the axis of each arc and its direction.
    """

    vertices: Floats
    triangles: Indices
    faces: Indices
    arcs: Indices
    axes: Floats


_SAME_PATH = 9
"""Decimals of mm to which cutters are of one form, wherever they cut; far below COPLANAR."""

_PLACED = 0.2  # mm to which the place where two bodies come nearest is told
_SOME = 0.1  # share of a cube

_SIMPLE = 20  # triangles: a prism of up to six sides


def carve(blank: Blank, removals: Sequence[Removal]) -> Body:
    """The blank, one corner at the origin, with all removals taken away; may come out empty."""
    right_through = [removal for removal in removals if _goes_through(removal, blank)]
    body = _sawn_out(blank, right_through)
    simple: list[manifold3d.Manifold] = []
    many_sided: list[manifold3d.Manifold] = []
    rounded: list[_Rounded] = []
    for removal in removals:
        if isinstance(removal, HalfSpace):
            body = _trimmed(body, removal)
        elif removal not in right_through:
            cutter = _cutter(removal)
            few = cutter.manifold.num_tri() <= _SIMPLE
            (simple if few else many_sided).append(cutter.manifold)
            rounded += cutter.rounded
    for apart in _apart(simple):
        body -= apart[0] if len(apart) == 1 else manifold3d.Manifold.compose(apart)
        body.num_tri()  # done now: left alone, the kernel would first unite all cutters
    if many_sided:
        body = manifold3d.Manifold.batch_boolean([body, *many_sided], manifold3d.OpType.Subtract)
    _check(body, "cutting a blank")
    return Body(body, tuple(rounded))


def _goes_through(removal: Removal, blank: Blank) -> TypeGuard[Prism]:
    """Whether a removal is a straight-sided hole or notch through the whole thickness."""
    return (
        isinstance(removal, Prism)
        and removal.frame is PART_FRAME
        and not removal.ends
        and removal.z_low < 0.0
        and removal.z_high > blank.thickness
        and not any(bulge for _, _, bulge in removal.path.vertices)
    )


def _sawn_out(blank: Blank, removals: Sequence[Prism]) -> manifold3d.Manifold:
    """The blank less what goes right through it, done in the plane, which is much quicker."""
    if not removals:
        return manifold3d.Manifold.cube((blank.length, blank.width, blank.thickness))
    corners = ((0.0, 0.0), (blank.length, 0.0), (blank.length, blank.width), (0.0, blank.width))
    waste = manifold3d.CrossSection(
        [[(x, y) for x, y, _ in removal.path.vertices] for removal in removals],
        manifold3d.FillRule.NonZero,
    )
    left = manifold3d.CrossSection([corners]) - waste
    if left.is_empty():
        return manifold3d.Manifold()
    return manifold3d.Manifold.extrude(left, blank.thickness)


def _apart(cutters: Sequence[manifold3d.Manifold]) -> list[list[manifold3d.Manifold]]:
    """Cutters in groups whose bounding boxes do not touch: each group cuts in one go."""
    groups: list[list[tuple[manifold3d.Manifold, tuple[float, ...]]]] = []
    for cutter in cutters:
        box = cutter.bounding_box()
        for group in groups:
            if all(_boxes_apart(box, other) for _, other in group):
                group.append((cutter, box))
                break
        else:
            groups.append([(cutter, box)])
    return [[cutter for cutter, _ in group] for group in groups]


def _boxes_apart(a: tuple[float, ...], b: tuple[float, ...]) -> bool:
    return any(
        a[axis + 3] < b[axis] - COPLANAR or b[axis + 3] < a[axis] - COPLANAR for axis in range(3)
    )


def waste_of(removal: Prism | Hull | Hollow) -> Body:
    """What a removal takes away, in wood and air."""
    return _cutter(removal)


def mesh_of(body: Body) -> Mesh:
    """The surface of ``body``."""
    mesh = body.manifold.to_mesh64()
    faces = np.asarray(mesh.face_id, dtype=np.intp)
    rounded = {cutter.origin: cutter for cutter in body.rounded}
    # The kernel numbers faces afresh in each run of triangles from one source.
    bounds = [index // 3 for index in mesh.run_index]
    arcs: list[Indices] = [np.empty(0, dtype=np.intp)]
    axes: list[Floats] = [np.empty((0, 2, 3))]
    base = axis_base = 0
    moves = np.asarray(mesh.run_transform)
    for run, origin in enumerate(mesh.run_original_id):
        start, stop = bounds[run], bounds[run + 1]
        if start == stop:
            continue
        count = int(faces[start:stop].max()) + 1
        of_run = np.full(count, FLAT, dtype=np.intp)
        cutter = rounded.get(origin)
        if cutter:
            known = cutter.arcs[:count]
            of_run[: len(known)] = np.where(known == FLAT, FLAT, known + axis_base)
            turned = cutter.axes @ moves[run, :3]
            turned[:, 0] += moves[run, 3]
            axes.append(turned)
            axis_base += len(cutter.axes)
        arcs.append(of_run)
        faces[start:stop] += base
        base += count
    triangles, order = _in_order(mesh.tri_verts.astype(np.intp), len(mesh.vert_properties))
    return Mesh(
        vertices=np.array(mesh.vert_properties[:, :3]),
        triangles=triangles,
        faces=faces.take(order),
        arcs=np.concatenate(arcs),
        axes=np.concatenate(axes),
    )


def _in_order(triangles: Indices, vertex_count: int) -> tuple[Indices, Indices]:
    """The triangles sorted, each from its least corner on, and where each was before.

    The kernel's own order follows the age of the cutters, so it would tell what was cut before.
    """
    least = triangles.argmin(axis=1)
    turned = triangles.ravel().take(
        3 * np.arange(len(triangles))[:, None] + (least[:, None] + (0, 1, 2)) % 3
    )
    key = (turned[:, 0] * vertex_count + turned[:, 1]) * vertex_count + turned[:, 2]
    order = np.argsort(key)
    return turned.take(order, axis=0), order


def common_volume(first: Body, first_frame: Frame, second: Body, second_frame: Frame) -> float:
    """Volume in mm³ that two placed bodies share."""
    shared = _placed(first, first_frame) ^ _placed(second, second_frame)
    _check(shared, "comparing two parts")
    return float(shared.volume())


def gap(first: Body, first_frame: Frame, second: Body, second_frame: Frame, search: float) -> float:
    """Least distance in mm between two placed bodies, at most ``search``."""
    return float(_placed(first, first_frame).min_gap(_placed(second, second_frame), search))


def waste_in(plane: HalfSpace, blank: Blank) -> Body:
    """What a saw cut takes off a blank."""
    cube = manifold3d.Manifold.cube((blank.length, blank.width, blank.thickness))
    return Body(cube.trim_by_plane(plane.outward, dot(plane.outward, plane.point)))


def box_of(body: Body) -> tuple[Vec3, Vec3]:
    """The least and the greatest corner of the box round a body."""
    x, y, z, x_high, y_high, z_high = body.manifold.bounding_box()
    return (x, y, z), (x_high, y_high, z_high)


def box_within(body: Body, frame: Frame, low: Vec3, high: Vec3) -> tuple[Vec3, Vec3] | None:
    """The box round what of a placed body lies within a box; None for nothing."""
    size = (high[0] - low[0], high[1] - low[1], high[2] - low[2])
    met = _placed(body, frame) ^ manifold3d.Manifold.cube(size).translate(low)
    return None if met.is_empty() else box_of(Body(met))


def corners_of(body: Body) -> Floats:
    """The corners of a body, (n, 3)."""
    return np.asarray(body.manifold.to_mesh64().vert_properties)[:, :3]


def common_middle(first: Body, second: Body) -> Vec3:
    """The middle of the box round what two bodies share."""
    low, high = box_of(Body(first.manifold ^ second.manifold))
    return scale(add(low, high), 0.5)


def nearest_point(first: Body, second: Body, search: float) -> Vec3:
    """Where the first body comes nearest to the second, which is less than ``search`` away.

    The middle of the place where that is a line or a face square to the axes.
    """
    body = first.manifold
    tied: set[int] = set()
    while True:
        box = body.bounding_box()
        sizes = {axis: box[axis + 3] - box[axis] for axis in range(3) if axis not in tied}
        axis = max(sizes, key=lambda one: sizes[one], default=-1)
        if axis < 0 or sizes[axis] < _PLACED:
            return ((box[0] + box[3]) / 2.0, (box[1] + box[4]) / 2.0, (box[2] + box[5]) / 2.0)
        middle = (box[axis] + box[axis + 3]) / 2.0
        normal = tuple(float(k == axis) for k in range(3))
        halves = body.split_by_plane(normal, middle)
        gaps = [half.min_gap(second.manifold, search) for half in halves]
        if abs(gaps[0] - gaps[1]) < COPLANAR:
            tied.add(axis)
        else:
            body = halves[0] if gaps[0] < gaps[1] else halves[1]


def is_wood(body: Body, middle: Vec3, size: float) -> bool:
    """Whether a cube of this size has some of a body in it, be it at a face or an arris."""
    cube = manifold3d.Manifold.cube((size, size, size), True).translate(middle)
    return float((body.manifold ^ cube).volume()) > _SOME * size**3


def _placed(body: Body, frame: Frame) -> manifold3d.Manifold:
    return body.manifold.transform(frame.matrix())


def _cutter(removal: Prism | Hull | Hollow) -> Body:
    match removal:
        case Prism():
            return _prism(removal)
        case Hull():
            return Body(_hull(removal.points))
        case Hollow():
            return Body(_hollow(removal))


@lru_cache(maxsize=1024)
def _prism(prism: Prism) -> Body:
    rounded: tuple[_Rounded, ...] = ()
    if is_convex_polygon(prism.path):
        corners = [
            prism.frame.to_bench((x, y, z))
            for x, y, _ in prism.path.vertices
            for z in (prism.z_low, prism.z_high)
        ]
        manifold = _hull(tuple(corners))
    else:
        rounded = (_rounded(*_form(prism)),)
        x, y, _ = prism.path.vertices[0]
        manifold = rounded[0].manifold.translate((x, y, prism.z_low))
        if prism.frame is not PART_FRAME:
            manifold = manifold.transform(prism.frame.matrix())
    for end in prism.ends:
        manifold = _trimmed(manifold, end)
    return Body(manifold, rounded)


def _form(prism: Prism) -> tuple[Path, float]:
    """A prism's path from its first vertex on, and its height: equal for equal cutters."""
    x0, y0, _ = prism.path.vertices[0]
    vertices = tuple(
        (round(x - x0, _SAME_PATH), round(y - y0, _SAME_PATH), round(bulge, _SAME_PATH))
        for x, y, bulge in prism.path.vertices
    )
    return Path(vertices), round(prism.z_high - prism.z_low, _SAME_PATH)


@lru_cache(maxsize=256)
def _rounded(path: Path, height: float) -> _Rounded:
    flat = outline(path)
    caps = np.asarray(manifold3d.triangulate([flat.points]), dtype=np.intp)
    vertices, triangles, faces = side_surface(flat, height, caps)
    origin = manifold3d.Manifold.reserve_ids(1)
    manifold = _closed(vertices, triangles, faces, origin)
    axes = np.array([((u, v, 0.0), (0.0, 0.0, 1.0)) for u, v in flat.centres])
    return _Rounded(manifold, origin, flat.arc, axes.reshape(-1, 2, 3))


@lru_cache(maxsize=256)
def _hollow(hollow: Hollow) -> manifold3d.Manifold:
    return _closed(*hollow_surface(hollow), manifold3d.Manifold.reserve_ids(1))


def _closed(
    vertices: Floats, triangles: Indices, faces: Indices, origin: int
) -> manifold3d.Manifold:
    """The body within a surface; ``faces`` (m,) are the flat faces of its triangles."""
    manifold = manifold3d.Manifold(
        manifold3d.Mesh64(
            vertices,
            triangles.astype(np.uint64),
            run_index=np.array((0, triangles.size), dtype=np.uint64),
            run_original_id=np.array((origin,), dtype=np.uint32),
            face_id=faces.astype(np.uint64),
        )
    )
    _check(manifold, "making a cutter")
    if manifold.is_empty():
        raise EngineFault(f"a cutter of {len(triangles)} triangles came out empty")
    return manifold


def hull_faces(points: tuple[Vec3, ...]) -> tuple[Floats, Floats, Floats]:
    """The triangles of a convex body: unit normals (m, 3) and their boxes, low and high (m, 3)."""
    mesh = _hull(points).to_mesh64()
    corners = mesh.vert_properties[mesh.tri_verts]
    normals = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    normals /= np.sqrt((normals * normals).sum(axis=1, keepdims=True))
    return normals, corners.min(axis=1), corners.max(axis=1)


def _trimmed(manifold: manifold3d.Manifold, beyond: HalfSpace) -> manifold3d.Manifold:
    """What is left when everything in ``beyond`` is taken away."""
    inward = (-beyond.outward[0], -beyond.outward[1], -beyond.outward[2])
    return manifold.trim_by_plane(inward, dot(inward, beyond.point))


@lru_cache(maxsize=1024)
def _hull(points: tuple[Vec3, ...]) -> manifold3d.Manifold:
    manifold = manifold3d.Manifold.hull_points(np.array(points))
    _check(manifold, "making a cutter")
    if manifold.is_empty():
        raise EngineFault(f"a cutter came out flat: {points}")
    return manifold


def _check(manifold: manifold3d.Manifold, doing: str) -> None:
    status = manifold.status()
    if status != manifold3d.Error.NoError:
        raise EngineFault(f"the solid kernel failed while {doing}: {status}")
