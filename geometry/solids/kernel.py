"""The one place that knows the solid kernel (manifold3d): cutting, measuring, reading back.

Frame and units: as the values given, mm.  The kernel never raises: a body it cannot make has a
status and no volume, so every result is checked here and a bad one raises EngineFault.

Method: saw cuts trim by a plane, which is cheapest; then the simple cutters one by one, as each
costs about as much as the surface it meets; last the many-sided ones together, as they seldom
meet one another.  Each triangle of the result remembers the cutter and the face it came from.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

import manifold3d
import numpy as np

from geometry.cuts.cut import Blank
from geometry.cuts.removal import PART_FRAME, HalfSpace, Prism, Removal
from geometry.primitives.frame import Frame, Vec3, dot
from geometry.solids.prism import FLAT, is_convex_polygon, outline, side_surface
from geometry.solids.solid import Floats, Indices


class EngineFault(AssertionError):
    """The solid kernel could not do what was asked: a mistake of ours, never the maker's."""


@dataclass(frozen=True, slots=True, eq=False)
class Body:
    """A closed body inside the kernel."""

    manifold: manifold3d.Manifold


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


@dataclass(frozen=True, slots=True, eq=False)
class _Cutter:
    """A cutter's body, the kernel's name for it, and the arcs of its faces as in a mesh."""

    manifold: manifold3d.Manifold
    origin: int
    arcs: Indices
    axes: Floats


_UNNAMED = -1
_SIMPLE = 20  # triangles: a prism of up to six sides


def carve(blank: Blank, removals: Sequence[Removal]) -> Body:
    """The blank, one corner at the origin, with all removals taken away; may come out empty."""
    body = manifold3d.Manifold.cube((blank.length, blank.width, blank.thickness))
    cutters = []
    for removal in removals:
        if isinstance(removal, HalfSpace):
            inward = (-removal.outward[0], -removal.outward[1], -removal.outward[2])
            body = body.trim_by_plane(inward, dot(inward, removal.point))
        elif isinstance(removal, Prism):
            cutters.append(_prism(removal).manifold)
        else:
            cutters.append(_hull(removal.points))
    many_sided = [cutter for cutter in cutters if cutter.num_tri() > _SIMPLE]
    for cutter in cutters:
        if cutter.num_tri() <= _SIMPLE:
            body -= cutter
            body.num_tri()  # done now: left alone, the kernel would first unite all cutters
    if many_sided:
        body = manifold3d.Manifold.batch_boolean([body, *many_sided], manifold3d.OpType.Subtract)
    _check(body, "cutting a blank")
    return Body(body)


def mesh_of(body: Body, removals: Sequence[Removal]) -> Mesh:
    """The surface of ``body``, which was carved with these ``removals``."""
    mesh = body.manifold.to_mesh64()
    faces = np.asarray(mesh.face_id, dtype=np.intp)
    rounded = {
        cutter.origin: cutter
        for cutter in (_prism(removal) for removal in removals if isinstance(removal, Prism))
        if len(cutter.axes)
    }
    # The kernel numbers faces afresh in each run of triangles from one source.
    bounds = [index // 3 for index in mesh.run_index]
    arcs: list[Indices] = [np.empty(0, dtype=np.intp)]
    axes: list[Floats] = [np.empty((0, 2, 3))]
    base = axis_base = 0
    for origin, start, stop in zip(mesh.run_original_id, bounds, bounds[1:], strict=False):
        if start == stop:
            continue
        count = int(faces[start:stop].max()) + 1
        of_run = np.full(count, FLAT, dtype=np.intp)
        cutter = rounded.get(origin)
        if cutter:
            known = cutter.arcs[:count]
            of_run[: len(known)] = np.where(known == FLAT, FLAT, known + axis_base)
            axes.append(cutter.axes)
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


def pieces(body: Body) -> int:
    """How many separate pieces a body has fallen into."""
    return len(body.manifold.decompose())


def common_volume(first: Body, first_frame: Frame, second: Body, second_frame: Frame) -> float:
    """Volume in mm³ that two placed bodies share."""
    shared = _placed(first, first_frame) ^ _placed(second, second_frame)
    _check(shared, "comparing two parts")
    return float(shared.volume())


def gap(first: Body, first_frame: Frame, second: Body, second_frame: Frame, search: float) -> float:
    """Least distance in mm between two placed bodies, at most ``search``."""
    return float(_placed(first, first_frame).min_gap(_placed(second, second_frame), search))


def _placed(body: Body, frame: Frame) -> manifold3d.Manifold:
    return body.manifold.transform(frame.matrix())


@lru_cache(maxsize=1024)
def _prism(prism: Prism) -> _Cutter:
    if is_convex_polygon(prism.path):
        corners = [
            prism.frame.to_bench((x, y, z))
            for x, y, _ in prism.path.vertices
            for z in (prism.z_low, prism.z_high)
        ]
        short = _cut_short(_hull(tuple(corners)), prism)
        return _Cutter(short, _UNNAMED, np.empty(0, dtype=np.intp), np.empty((0, 2, 3)))
    flat = outline(prism.path)
    caps = np.asarray(manifold3d.triangulate([flat.points]), dtype=np.intp)
    vertices, triangles, faces = side_surface(prism, flat, caps)
    if prism.frame is not PART_FRAME:
        turned = prism.frame.matrix()
        vertices = vertices @ turned[:, :3].T + turned[:, 3]
    origin = manifold3d.Manifold.reserve_ids(1)
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
        raise EngineFault(f"a cutter came out empty: {prism}")
    axes = [(prism.frame.to_bench((u, v, 0.0)), prism.frame.z_axis) for u, v in flat.centres]
    short = _cut_short(manifold, prism)
    return _Cutter(short, origin, flat.arc, np.array(axes).reshape(-1, 2, 3))


def _cut_short(manifold: manifold3d.Manifold, prism: Prism) -> manifold3d.Manifold:
    """The prism without what lies beyond its ends."""
    for end in prism.ends:
        inward = (-end.outward[0], -end.outward[1], -end.outward[2])
        manifold = manifold.trim_by_plane(inward, dot(inward, end.point))
    return manifold


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
