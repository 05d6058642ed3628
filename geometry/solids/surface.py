"""From a mesh of triangles to the lines a drawing shows and the flat panels that hide them.

Frame and units: the mesh's own, mm.

Method: the volume is that of the pyramids from the origin to all triangles.  Triangles of one
flat face share the face's normal, taken over the whole face so that a sliver cannot tilt it.
Each edge joins two triangles; it counts when their faces differ in direction.  It is smooth when
one of them is a chord of an arc and the true surfaces hardly differ: a chord stands for the round
surface, which faces straight away from the arc's axis.  Flat facets have their arrises however
little they lean.  Sides no longer than rounding are none: their corners are one.  Two triangles of
a face that share their longest edge become one panel.
"""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np

from geometry.solids.kernel.body import EngineFault
from geometry.solids.kernel.mesh import Mesh
from geometry.solids.prism import FLAT
from geometry.solids.solid import Flags, Floats, Indices, Solid, frozen
from shared.tolerances import SHARP_EDGE_DEG

_SHARP = 2.0 * math.sin(math.radians(SHARP_EDGE_DEG) / 2.0)
FLAT_NORMALS = 1e-6
"""Normals that differ by less belong to one plane: a micrometre over a metre."""

_CRUMB = 1e-7
"""mm: a shorter side is none."""


def solid_from(mesh: Mesh) -> Solid:
    """The drawn edges, the panels and the volume of a closed ``mesh``."""
    points = np.ascontiguousarray(mesh.vertices.T)
    corners = np.ascontiguousarray(mesh.triangles.T)
    a, b, c = (points.take(corner, axis=1) for corner in corners)
    lengths = np.stack([_square(b - a), _square(c - b), _square(a - c)])
    if lengths.min() < _CRUMB**2:
        return solid_from(_without_crumbs(mesh, lengths.T < _CRUMB**2))
    crosses = _cross(b - a, c - a)
    normals = _face_normals(crosses, mesh.faces).take(mesh.faces, axis=1)

    halves = _half_edge_pairs(mesh.triangles, len(mesh.vertices))
    beside = halves // 3
    faces = mesh.faces.take(beside)
    within = faces[0] == faces[1]
    across = np.flatnonzero(~within)
    beside, faces = beside.take(across, axis=1), faces.take(across, axis=1)
    flat_normals = normals[:, beside]  # (3, 2, e)
    differ = _square(flat_normals[:, 0] - flat_normals[:, 1]) > FLAT_NORMALS**2
    start = halves[0].take(across)
    end = start + 1 - 3 * (start % 3 == 2)  # the next corner of the same triangle
    ends = mesh.triangles.ravel().take((start, end))
    truly = _true_normals(mesh, flat_normals, faces, points.take(ends[0], axis=1))
    round_about = (mesh.arcs.take(faces) != FLAT).any(axis=0)
    smooth = round_about & (_square(truly[:, 0] - truly[:, 1]) < _SHARP**2)
    drawn = np.flatnonzero(differ)

    inner = halves.take(np.flatnonzero(within), axis=1)
    panels, of_triangle = _panels(corners, lengths.argmax(axis=0), inner)
    return Solid(
        vertices=frozen(mesh.vertices),
        triangles=frozen(mesh.triangles),
        edges=frozen(np.ascontiguousarray(ends.take(drawn, axis=1).T)),
        edge_normals=frozen(np.ascontiguousarray(flat_normals.take(drawn, axis=2).T)),
        smooth=frozen(smooth.take(drawn)),
        panels=frozen(panels),
        panel_normals=frozen(np.ascontiguousarray(normals.take(of_triangle, axis=1).T)),
        edge_faces=frozen(np.ascontiguousarray(faces.take(drawn, axis=1).T)),
        panel_faces=frozen(mesh.faces.take(of_triangle)),
        volume=float((crosses * a).sum()) / 6.0,
    )


def _without_crumbs(mesh: Mesh, short: Flags) -> Mesh:
    """The same without its ``short`` (m, 3) sides, which are nothing but rounding.

    Where a round begins just in the plane of a cut, a face a few millionths of a micrometre wide
    can be left between the two; its edges would be drawn, as it leans in no direction.  What such
    a face leaves behind may be two triangles back to back, which hold nothing between them.
    """
    kept = np.arange(len(mesh.vertices))
    triangle, corner = np.nonzero(short)
    ends = np.stack(
        (mesh.triangles[triangle, corner], mesh.triangles[triangle, (corner + 1) % 3]), axis=1
    )
    for a, b in ends.tolist():
        first, second = sorted((kept[a], kept[b]))
        kept[kept == second] = first
    triangles = kept.take(mesh.triangles)
    whole = (triangles != np.roll(triangles, -1, axis=1)).all(axis=1)
    _, of_corners, alike = np.unique(
        np.sort(triangles, axis=1), axis=0, return_inverse=True, return_counts=True
    )
    whole &= alike.take(of_corners.ravel()) == 1
    used, numbers = np.unique(triangles[whole], return_inverse=True)
    return replace(
        mesh,
        vertices=mesh.vertices.take(used, axis=0),
        triangles=numbers.reshape(-1, 3),
        faces=mesh.faces[whole],
    )


def _true_normals(mesh: Mesh, normals: Floats, faces: Indices, at: Floats) -> Floats:
    """Outward unit normals (3, 2, e) of the surfaces that two faces stand for, at points (3, e).

    ``normals`` are those of the faces themselves.
    """
    side, edge = np.nonzero(mesh.arcs.take(faces) != FLAT)
    if not len(edge):
        return normals
    axes = mesh.axes[mesh.arcs.take(faces[side, edge])]
    away = at[:, edge].T - axes[:, 0]
    away -= axes[:, 1] * (away * axes[:, 1]).sum(axis=1, keepdims=True)
    chord = normals[:, side, edge].T
    away *= np.sign((away * chord).sum(axis=1, keepdims=True))
    away /= np.sqrt((away * away).sum(axis=1, keepdims=True))
    truly = normals.copy()
    truly[:, side, edge] = away.T
    return truly


def _face_normals(crosses: Floats, faces: Indices) -> Floats:
    """Unit normal of each face, (3, g), weighted by the area of its triangles."""
    total = np.stack([np.bincount(faces, row) for row in crosses])
    length = np.sqrt((total * total).sum(axis=0))
    return np.asarray(total / np.maximum(length, np.finfo(np.float64).tiny))


def _half_edge_pairs(triangles: Indices, vertex_count: int) -> Indices:
    """Both half-edges of every edge, (2, e); half-edge 3 t + k runs from corner k of triangle t."""
    start = triangles.ravel()
    end = triangles.take((1, 2, 0), axis=1).ravel()
    key = np.minimum(start, end) * vertex_count + np.maximum(start, end)
    order = np.argsort(key, kind="stable")
    first, second = order[0::2], order[1::2]
    if len(first) != len(second) or not np.array_equal(key.take(first), key.take(second)):
        raise EngineFault("a solid has an edge without exactly two faces")
    return np.stack((first, second))


def _panels(corners: Indices, longest: Indices, inner: Indices) -> tuple[Indices, Indices]:
    """Panels (q, 4) as vertex indices and one triangle of each (q,).

    ``corners`` (3, m) are the triangles, ``longest`` (m,) which of their half-edges is longest,
    ``inner`` (2, e) the half-edge pairs inside a face.  Two triangles on one longest side make a
    convex piece, as a triangle's angles at its longest side are both less than a right angle.
    """
    beside = inner // 3
    corner = inner - 3 * beside
    mutual = np.flatnonzero((longest.take(beside) == corner).all(axis=0))
    (first, second), (k, k_second) = beside.take(mutual, axis=1), corner.take(mutual, axis=1)
    quads = np.stack(
        (
            corners[k, first],
            corners[(k_second + 2) % 3, second],
            corners[(k + 1) % 3, first],
            corners[(k + 2) % 3, first],
        )
    )
    single = np.ones(corners.shape[1], dtype=np.bool_)
    single[first] = False
    single[second] = False
    alone = np.flatnonzero(single)
    triangles = corners.take((0, 1, 2, 2), axis=0).take(alone, axis=1)
    panels = np.concatenate((quads, triangles), axis=1)
    return np.ascontiguousarray(panels.T), np.concatenate((first, alone))


def _square(columns: Floats) -> Floats:
    """Squared lengths of columns, (n,)."""
    return np.asarray((columns * columns).sum(axis=0))


def _cross(a: Floats, b: Floats) -> Floats:
    """Cross products of columns, (3, n)."""
    return np.stack(
        (a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])
    )
