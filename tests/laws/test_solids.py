"""Every part of every bench is one closed solid, and no two are in the same place.

Judges that share no code with the solid kernel: trimesh for closure and volume; trimesh's
sections and shapely's polygons for shared volume.
"""

from __future__ import annotations

from itertools import combinations

import numpy as np
import pytest
import shapely
import trimesh
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from geometry.bench.bench import Bench
from geometry.bench.board_lippings import BOARD_LIPPING
from geometry.bench.carving_numbers import chosen_fronts
from geometry.cuts.edge_moulding import EdgeMoulding
from geometry.cuts.wedge_slot import WedgeSlot
from geometry.design.part import Part
from geometry.solids.cutting import placed, solid_of
from geometry.solids.measure import shared_volume
from geometry.solids.solid import PlacedSolid
from shared.tolerances import SHARED_VOLUME
from tests.flat_faces import FlatFace, between_deg, flat_faces
from tests.judges.inside import winding
from tests.measures import piece_count

GRID = 1e-5  # mm, to which the lines of a section are rounded before they are joined
PER_AXIS = 3  # random section planes for each direction


def mesh_of(part: Part) -> trimesh.Trimesh:
    solid = placed(part)
    return trimesh.Trimesh(solid.vertices, solid.solid.triangles, process=False)


def test_each_part_is_one_closed_solid(bench: Bench) -> None:
    for part in bench.parts:
        mesh = mesh_of(part)
        assert mesh.is_watertight, part.name
        assert mesh.is_winding_consistent, part.name
        assert mesh.body_count == 1, part.name
        assert piece_count(part.shape) == 1, part.name
        blank = part.shape.blank
        whole = blank.length * blank.width * blank.thickness
        assert 0.05 * whole < mesh.volume <= whole * (1.0 + 1e-9), part.name
        assert mesh.volume == pytest.approx(solid_of(part.shape).volume, rel=1e-9), part.name


def test_no_part_has_a_skin(bench: Bench) -> None:
    """A skin is wood of no thickness: a face that lies on the back of another one."""
    for part in bench.parts:
        solid = placed(part)
        faces = flat_faces(part)
        for a, b in combinations(faces, 2):
            if abs(a.offset + b.offset) < 1e-4 and between_deg(a.normal, -b.normal) < 0.01:
                skin = shape_of(solid, a).intersection(shape_of(solid, b))
                assert skin.area < 1e-3, (part.name, a.normal, a.offset)


def shape_of(solid: PlacedSolid, face: FlatFace) -> BaseGeometry:
    """The face's triangles in its own plane, turned the same way for both sides of the plane."""
    corners = solid.vertices[solid.solid.triangles]
    crosses = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    mine = (np.abs(corners @ face.normal - face.offset) < 1e-4).all(axis=1)
    mine &= crosses @ face.normal > 0.0
    others = np.argsort(np.abs(face.normal))[:2]
    others.sort()
    return shapely.union_all(shapely.polygons(corners[mine][:, :, others]), grid_size=1e-6)


def test_each_part_fills_its_blank(bench: Bench) -> None:
    """A blank is no larger than the part needs, but for what is left proud; a chamfer may take the
    foremost point of a board that ends in a mitre or either end of a lipping thinner than it, and a
    carving the whole of a face."""
    chamfer = bench.spec.number("chamfer")
    carved = {f"{one.name}_front" for one in chosen_fronts(bench.spec)}
    for part in bench.parts:
        low, high = (getattr(solid_of(part.shape).vertices, end)(axis=0) for end in ("min", "max"))
        blank = part.shape.blank
        spare = np.array((blank.length, blank.width, blank.thickness)) - (high - low)
        spare[1] -= part.allowance_across
        assert (low >= -1e-9).all(), part.name
        # The slot for a wedge may take the highest point of a leaning tenon's end.
        slotted = 0.5 if any(isinstance(cut, WedgeSlot) for cut in part.shape.cuts) else 0.0
        # A moulding takes the farthest corner of a slanting end, or the foremost of a bevelled one.
        moulded = max(
            (2.5 * cut.size for cut in part.shape.cuts if isinstance(cut, EdgeMoulding)),
            default=0.0,
        )
        lipping = part.kind == BOARD_LIPPING
        mitres = sum(getattr(cut, "title", "") == "mitre" for cut in part.shape.cuts)
        ended = slotted + moulded + (max(mitres, 1) * chamfer if lipping else 0.0)
        assert -1e-6 < spare[0] - part.allowance < ended + 1e-6, part.name
        eased = chamfer if lipping or part.kind in ("top", "bottom", "end panel") else 0.0
        assert -1e-6 < spare[1] < eased + moulded + 1e-6, part.name
        deep = bench.spec.number("carving_depth") if part.name in carved else 0.0
        assert -1e-6 < spare[2] < deep + 1e-6, part.name


def test_no_two_parts_share_volume(bench: Bench) -> None:
    for a, b in combinations(bench.parts, 2):
        assert shared_volume(a, b) <= SHARED_VOLUME, (a.name, b.name)


def test_no_two_parts_share_area_in_any_section(bench: Bench) -> None:
    """Sections at random places, square to each axis."""
    dice = np.random.default_rng(7)
    meshes = {part.name: mesh_of(part) for part in bench.parts}
    low = np.min([mesh.bounds[0] for mesh in meshes.values()], axis=0)
    high = np.max([mesh.bounds[1] for mesh in meshes.values()], axis=0)
    for axis in range(3):
        for at in dice.uniform(low[axis], high[axis], PER_AXIS):
            cut = {name: section(mesh, axis, float(at)) for name, mesh in meshes.items()}
            for (a, first), (b, second) in combinations(cut.items(), 2):
                if first.intersects(second):
                    shared = first.intersection(second)
                    assert shared.area < 1e-3 + GRID * shared.length, (a, b, axis, at)


def section(mesh: trimesh.Trimesh, axis: int, at: float) -> BaseGeometry:
    """What a plane cuts out of a part, in the other two coordinates."""
    normal = np.eye(3)[axis]
    lines: NDArray[np.float64] = trimesh.intersections.mesh_plane(mesh, normal, normal * at)
    others = [k for k in range(3) if k != axis]
    noded = shapely.union_all(shapely.linestrings(lines[:, :, others]), grid_size=GRID)
    loops, cuts, dangles, invalid = shapely.polygonize_full(shapely.get_parts(noded))
    assert max(left.length for left in (cuts, dangles, invalid)) < 1e-3
    rings = [ring for ring in loops.geoms if ring.area > 1e-6]
    assert rings or not mesh.bounds[0, axis] < at < mesh.bounds[1, axis]
    # Holes come out as pieces of their own: what is wood is what the mesh holds.
    return shapely.union_all([ring for ring in rings if _is_wood(mesh, ring, axis, at)])


def _is_wood(mesh: trimesh.Trimesh, ring: BaseGeometry, axis: int, at: float) -> bool:
    point = np.insert(np.array(ring.representative_point().coords[0]), axis, at)
    return bool(winding(mesh.vertices, mesh.faces, point[None])[0] > 0.5)
