"""The closed surface of a hollow: facets at its floor, upright sides, and a lid.

Frame and units: the part's own, mm.
"""

from __future__ import annotations

from itertools import count, pairwise

import numpy as np

from geometry.cuts.removal import Hollow
from geometry.solids.solid import Floats, Indices


def hollow_surface(hollow: Hollow) -> tuple[Floats, Indices, Indices]:
    """Vertices (2n, 3), triangles (m, 3) and the flat face of each triangle (m,).

    The n points of the facets come first, those of the lid above them after; face k is facet k,
    then come the lid and the sides.
    """
    facets = hollow.facets
    points = np.array(facets.points)
    n = len(points)
    lid = points.copy()
    lid[:, 2] = hollow.z_open
    numbers = count(len(facets.faces) + 1)
    floor: list[tuple[int, int, int]] = []
    owner: list[int] = []
    sides: dict[tuple[int, int], None] = {}
    for number, face in enumerate(facets.faces):
        first, *rest = face
        for second, third in pairwise(rest):
            floor.append((first, second, third))
            owner.append(number)
        sides |= dict.fromkeys(zip(face, (*face[1:], face[0]), strict=True))
    triangles = [*floor, *((c + n, b + n, a + n) for a, b, c in floor)]
    owner += [len(facets.faces)] * len(floor)
    for a, b in sides:
        if (b, a) not in sides:
            triangles += [(a, a + n, b), (b, a + n, b + n)]
            owner += [next(numbers)] * 2
    return np.concatenate((points, lid)), np.array(triangles), np.array(owner)
