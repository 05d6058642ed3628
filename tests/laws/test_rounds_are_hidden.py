"""The rounds that the router leaves at a housing's stop are never seen.

Judge: winding numbers of points.  Just below the housed face, near the stop, there is air where
the housing is and wood beside it; straight above such air, out of the board, stands the housed
piece, so that nobody can look in.  Only the fit beside its two faces stays open.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from geometry.bench.bench import Bench
from geometry.cuts.contour import Face
from geometry.cuts.housing import StoppedHousing
from geometry.design.joint import Joint
from geometry.design.part import Part
from geometry.solids.cutting import placed
from tests.judges.inside import inside

HAIR = 0.02  # mm
LENGTHWISE, ACROSS = 24, 5  # sample points


def test_the_housed_piece_covers_the_end_of_its_housing(bench: Bench) -> None:
    for joint in bench.joints:
        if joint.kind != "stopped housing":
            continue
        board, piece = (bench.part(name) for name in joint.parts)
        below, above = near_the_stop(joint, board, widest_moulding(bench))
        open_air = ~inside(placed(board), below)
        covered = inside(placed(piece), above)
        for lipping in (part for part in bench.parts if part.kind.endswith("lipping")):
            covered |= inside(placed(lipping), above)  # it is the front of the housed shelf
        assert open_air.any(), joint.name
        assert covered[open_air].all(), joint.name


def widest_moulding(bench: Bench) -> float:
    """How far from a front edge a moulding may take the housed face away, mm."""
    return max(bench.spec.number(name) for name in ("edge_size", "partition_edge_size", "chamfer"))


def near_the_stop(
    joint: Joint, board: Part, moulding: float
) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """Points a hair below the housed face and a hair above it, in the bench; (n, 3) each.

    Between the faces of the housed piece, from before the round begins to beyond the stop.
    """
    (housing,) = joint.cuts_first
    assert isinstance(housing, StoppedHousing)
    half = joint.fit / 2.0 + HAIR
    x = np.linspace(housing.x_low + half, housing.x_high - half, ACROSS)
    # Where the top runs out, its front edge lies inside its blank: nothing is asked beyond it, nor
    # where the edge is moulded.
    front = min(m.value for m in joint.measures if m.name.startswith("stop_from_front"))
    beyond = housing.stop + min(5.0, front - moulding - HAIR)
    y = np.linspace(housing.stop - 2.0 * housing.corner_radius, beyond, LENGTHWISE)
    grid = np.array([(a, b) for a in x for b in y if b < board.shape.blank.width - HAIR])
    face = 0.0 if housing.face is Face.FACE_SIDE else board.shape.blank.thickness
    out = -1.0 if housing.face is Face.FACE_SIDE else 1.0
    matrix = board.frame.matrix()
    levels = []
    for z in (face - out * HAIR, face + out * HAIR):
        local = np.column_stack((grid, np.full(len(grid), z), np.ones(len(grid))))
        levels.append(local @ matrix.T)
    return levels[0], levels[1]
