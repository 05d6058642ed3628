"""Whether a 'do not cut' about what moves is true: the finished meshes are moved, in small steps.

Lids turn about their hinges, drawers go in and out; whether wood then stands in wood is asked of
another library, point by point.
"""

from __future__ import annotations

import numpy as np
import trimesh

from geometry.bench.bench import Bench
from geometry.bench.lid_box_numbers import lid_box
from geometry.design.finding import Finding
from tests.judges.meshes import free_way, mesh_of, wood_in_both

_HAIR = 1e-3  # mm
_STEPS = 60


def lid_meets(bench: Bench, finding: Finding) -> bool:
    """Turned about the hinges as far as its stay lets it, it shares wood with the part told."""
    b = lid_box(bench.spec)
    pin_y, pin_z = b.pin_place
    lids = [mesh_of(bench, p.name) for p in bench.parts if p.kind in ("lid", "lid lipping")]
    for degrees in np.linspace(1.0, b.opening_deg, 60):
        turn = trimesh.transformations.rotation_matrix(
            -np.radians(degrees), (1.0, 0.0, 0.0), (0.0, pin_y, pin_z)
        )
        opened = [lid.copy().apply_transform(turn) for lid in lids]
        for other in finding.parts[1:]:
            if any(wood_in_both(piece, mesh_of(bench, other), 4000) for piece in opened):
                return True
    return False


def box_does_not_go_in(bench: Bench, finding: Finding) -> bool:
    """Pushed in from the front, the drawer's box and what its runners need meet a neighbour."""
    assert finding.amount is not None
    assert finding.limit is not None
    sides = [mesh_of(bench, name) for name in finding.parts if name.startswith("drawer")]
    others = [
        mesh_of(bench, part.name) for part in bench.parts if not part.name.startswith("drawer")
    ]
    low = np.min([mesh.bounds[0] for mesh in sides], axis=0)
    high = np.max([mesh.bounds[1] for mesh in sides], axis=0)
    middle = (low + high) / 2.0
    if finding.check == "drawer_too_long":
        return free_way(others, middle, (0.0, 1.0, 0.0)) - (high[1] - middle[1]) < finding.limit
    room = sum(free_way(others, middle, (way, 0.0, 0.0)) for way in (1.0, -1.0))
    return room - (high[0] - low[0]) < finding.limit - _HAIR


def drawer_meets(bench: Bench, finding: Finding) -> bool:
    """Moved on by as much as it should go, the piece told shares wood with the part told."""
    assert finding.limit is not None
    way = np.array(_WAYS[finding.check])
    piece, part = (mesh_of(bench, name) for name in finding.parts)
    for far in np.linspace(0.0, finding.limit, _STEPS + 1)[1:]:
        moved = piece.copy().apply_translation(way * far)
        if wood_in_both(moved, part, 6000):
            return True
    return False


_WAYS = {
    "drawer_blocked": (0.0, -1.0, 0.0),
    "drawer_shut_in": (0.0, -1.0, 0.0),
    "drawer_hits": (0.0, 1.0, 0.0),
    "drawer_too_tall": (0.0, 0.0, 1.0),
}
"""Toward the maker, home, and up."""
