"""The surface of a body, read back from the kernel.

Each triangle remembers the cutter and the face it came from, and a round its arc.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from geometry.solids.kernel.body import Body
from geometry.solids.prism import FLAT
from geometry.solids.solid import Floats, Indices


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
