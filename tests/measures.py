"""Measures of finished pieces that only tests ask for.  Bench frame for parts, mm."""

from __future__ import annotations

import itertools

from geometry.design.part import Part, Shape
from geometry.primitives.facets import Facets
from geometry.solids.cutting import body_of
from geometry.solids.kernel.between import gap


def piece_count(shape: Shape) -> int:
    """How many pieces the cuts leave; more than one means that it falls apart."""
    return len(body_of(shape).manifold.decompose())


def minimum_gap(part_a: Part, part_b: Part, search: float) -> float:
    """Least distance in mm between two parts, looked for up to ``search`` mm and no further.

    0 for parts that touch or overlap; ``search`` when they are at least that far apart.
    """
    return gap(body_of(part_a.shape), part_a.frame, body_of(part_b.shape), part_b.frame, search)


def volume_under(facets: Facets) -> float:
    """Volume in mm³ between z = 0 and the facets: plan area times mean depth, added up."""
    total = 0.0
    for face in facets.faces:
        (x, y, z), *rest = facets.corners(face)
        for (xa, ya, za), (xb, yb, zb) in itertools.pairwise(rest):
            area = ((xa - x) * (yb - y) - (xb - x) * (ya - y)) / 2.0
            total += area * (z + za + zb) / 3.0
    return total
