"""From a mesh of triangles to the lines a drawing shows and the flat panels that hide them.

Frame and units: the mesh's own, mm.

Method: triangles of one flat face share the face's normal, taken over the whole face so that
a sliver cannot tilt it.  Each edge joins two triangles; it counts when their faces differ in
direction, and is smooth when they hardly do or belong to one flattened arc.  Two triangles that
share their longest edge within a face become one panel when they make a convex piece.
"""

from __future__ import annotations

import math

import numpy as np

from geometry.solids.kernel import EngineFault, Mesh
from geometry.solids.solid import Floats, Indices, Solid, frozen
from shared.tolerances import SHARP_EDGE_DEG

_SHARP = 2.0 * math.sin(math.radians(SHARP_EDGE_DEG) / 2.0)
_FLAT = 1e-6
"""Normals that differ by less belong to one plane: a micrometre over a metre."""


def solid_from(mesh: Mesh, volume: float) -> Solid:
    """The drawn edges and panels of ``mesh``, with its volume in mm³."""
    corners = mesh.vertices[mesh.triangles]
    crosses = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    normals = _face_normals(crosses, mesh.faces)[mesh.faces]
    halves = _half_edge_pairs(mesh.triangles, len(mesh.vertices))
    beside = halves // 3
    faces = mesh.faces[beside]
    smooth = (mesh.runs_into[faces] == faces[:, ::-1]).any(axis=1)
    turn = normals[beside[:, 0]] - normals[beside[:, 1]]
    square = np.einsum("ij,ij->i", turn, turn)
    smooth |= square < _SHARP**2
    drawn = (faces[:, 0] != faces[:, 1]) & (square > _FLAT**2)
    start = mesh.triangles.ravel()
    end = mesh.triangles[:, (1, 2, 0)].ravel()
    panels, of_triangle = _panels(mesh, normals, halves[faces[:, 0] == faces[:, 1]])
    return Solid(
        vertices=frozen(mesh.vertices),
        triangles=frozen(mesh.triangles),
        edges=frozen(np.stack((start, end), axis=1)[halves[drawn, 0]]),
        edge_normals=frozen(normals[beside[drawn]]),
        smooth=frozen(smooth[drawn]),
        panels=frozen(panels),
        panel_normals=frozen(normals[of_triangle]),
        volume=volume,
    )


def _face_normals(crosses: Floats, faces: Indices) -> Floats:
    """Unit normal of each face, (g, 3), weighted by the area of its triangles."""
    count = int(faces.max()) + 1
    total = np.empty((count, 3))
    for axis in range(3):
        total[:, axis] = np.bincount(faces, crosses[:, axis], count)
    length = np.sqrt(np.einsum("ij,ij->i", total, total))
    return np.asarray(total / np.maximum(length, np.finfo(np.float64).tiny)[:, None])


def _half_edge_pairs(triangles: Indices, vertex_count: int) -> Indices:
    """Both half-edges of every edge, (e, 2); half-edge 3 t + k runs from corner k of triangle t."""
    start = triangles.ravel()
    end = triangles[:, (1, 2, 0)].ravel()
    key = np.minimum(start, end) * vertex_count + np.maximum(start, end)
    order = np.argsort(key, kind="stable")
    ordered = key[order]
    if len(ordered) % 2 or not np.array_equal(ordered[0::2], ordered[1::2]):
        raise EngineFault("a solid has an edge without exactly two faces")
    return order.reshape(-1, 2)


def _panels(mesh: Mesh, normals: Floats, inner: Indices) -> tuple[Indices, Indices]:
    """Panels (q, 4) as vertex indices and one triangle of each (q,).

    ``inner`` (e, 2) are the half-edge pairs inside a face.
    """
    triangles, vertices = mesh.triangles, mesh.vertices
    along = vertices[triangles[:, (1, 2, 0)]] - vertices[triangles]
    longest = np.einsum("ijk,ijk->ij", along, along).argmax(axis=1)
    beside, corner = np.divmod(inner, 3)
    mutual = (longest[beside] == corner).all(axis=1)
    beside, corner = beside[mutual], corner[mutual]
    first, second = beside[:, 0], beside[:, 1]
    a = triangles[first, corner[:, 0]]
    b = triangles[first, (corner[:, 0] + 1) % 3]
    c = triangles[first, (corner[:, 0] + 2) % 3]
    d = triangles[second, (corner[:, 1] + 2) % 3]
    convex = (_turn(vertices, normals[first], c, a, d) > 0.0) & (
        _turn(vertices, normals[first], d, b, c) > 0.0
    )
    pairs = np.stack((a, d, b, c), axis=1)[convex]
    single = np.ones(len(triangles), dtype=np.bool_)
    single[beside[convex]] = False
    alone = np.flatnonzero(single)
    return (
        np.concatenate((pairs, triangles[alone][:, (0, 1, 2, 2)])),
        np.concatenate((first[convex], alone)),
    )


def _turn(vertices: Floats, normal: Floats, before: Indices, at: Indices, after: Indices) -> Floats:
    """How far each corner turns to the left, seen against the normal; mm²."""
    arriving = vertices[at] - vertices[before]
    leaving = vertices[after] - vertices[at]
    return np.asarray(np.einsum("ij,ij->i", np.cross(arriving, leaving), normal))
