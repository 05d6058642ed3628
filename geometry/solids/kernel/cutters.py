"""What removals take away, as bodies of the kernel; each cutter is made once and kept.

Frame and units: the part's own frame, mm.
"""

from __future__ import annotations

from functools import lru_cache

import manifold3d
import numpy as np

from geometry.cuts.cut import Blank
from geometry.cuts.removal import PART_FRAME, HalfSpace, Hollow, Hull, Prism
from geometry.primitives.frame import Vec3, dot
from geometry.primitives.path import Path
from geometry.solids.hollow import hollow_surface
from geometry.solids.kernel.body import Body, EngineFault, Rounded, check, trimmed
from geometry.solids.prism import is_convex_polygon, outline, side_surface
from geometry.solids.solid import Floats, Indices

_SAME_PATH = 9
"""Decimals of mm to which cutters are of one form, wherever they cut; far below COPLANAR."""


def waste_of(removal: Prism | Hull | Hollow) -> Body:
    """What a removal takes away, in wood and air."""
    match removal:
        case Prism():
            return _prism(removal)
        case Hull():
            return Body(_hull(removal.points))
        case Hollow():
            return Body(_hollow(removal))


def waste_in(plane: HalfSpace, blank: Blank) -> Body:
    """What a saw cut takes off a blank."""
    cube = manifold3d.Manifold.cube((blank.length, blank.width, blank.thickness))
    return Body(cube.trim_by_plane(plane.outward, dot(plane.outward, plane.point)))


def hull_faces(points: tuple[Vec3, ...]) -> tuple[Floats, Floats, Floats]:
    """The triangles of a convex body: unit normals (m, 3) and their boxes, low and high (m, 3)."""
    mesh = _hull(points).to_mesh64()
    corners = mesh.vert_properties[mesh.tri_verts]
    normals = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    normals /= np.sqrt((normals * normals).sum(axis=1, keepdims=True))
    return normals, corners.min(axis=1), corners.max(axis=1)


@lru_cache(maxsize=1024)
def _prism(prism: Prism) -> Body:
    rounded: tuple[Rounded, ...] = ()
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
        manifold = trimmed(manifold, end)
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
def _rounded(path: Path, height: float) -> Rounded:
    flat = outline(path)
    caps = np.asarray(manifold3d.triangulate([flat.points]), dtype=np.intp)
    vertices, triangles, faces = side_surface(flat, height, caps)
    origin = manifold3d.Manifold.reserve_ids(1)
    manifold = _closed(vertices, triangles, faces, origin)
    axes = np.array([((u, v, 0.0), (0.0, 0.0, 1.0)) for u, v in flat.centres])
    return Rounded(manifold, origin, flat.arc, axes.reshape(-1, 2, 3))


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
    check(manifold, "making a cutter")
    if manifold.is_empty():
        raise EngineFault(f"a cutter of {len(triangles)} triangles came out empty")
    return manifold


@lru_cache(maxsize=1024)
def _hull(points: tuple[Vec3, ...]) -> manifold3d.Manifold:
    manifold = manifold3d.Manifold.hull_points(np.array(points))
    check(manifold, "making a cutter")
    if manifold.is_empty():
        raise EngineFault(f"a cutter came out flat: {points}")
    return manifold
