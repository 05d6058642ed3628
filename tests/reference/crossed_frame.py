"""The crossed base by vectors, from its description alone: shares no code with the program.

Frame and units: X right, Y back (back edges in y = 0), Z up; mm and degrees.

The description: two stretchers run under the case from corner to corner, their top edges at the
case's underside.  The insets give where, at that height, the outer edge of each leg begins, on
the middle plane of its stretcher.  A leg's straight edge leans by the splay in that plane.

Method: directions are turned with Rodrigues' rotation about the level axis square to the
stretcher's plane; lines in plan meet by cross products of homogeneous coordinates.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]

UP = np.array((0.0, 0.0, 1.0))
DIAGONALS = (("back_left", "front_right"), ("front_left", "back_right"))
OPPOSITE = {a: z for pair in DIAGONALS for a, z in (pair, pair[::-1])}


@dataclass(frozen=True, eq=False)
class LegVectors:
    """``tip`` the outer edge's top; ``along`` level and outward; ``down`` along the leg's edges in
    the joint; ``out`` square to those edges, in the stretcher's plane, away from the bench."""

    tip: Floats
    along: Floats
    down: Floats
    out: Floats
    side: Floats


def tips(value: Mapping[str, Any]) -> dict[str, Floats]:
    """The four tips."""
    x = {"left": value["inset_left"], "right": value["length"] - value["inset_right"]}
    found = {}
    for side in ("left", "right"):
        found[f"back_{side}"] = (x[side], -value[f"inset_back_{side}"])
        found[f"front_{side}"] = (x[side], value[f"inset_front_{side}"] - value["depth"])
    return {name: np.array((*xy, value["base_height"])) for name, xy in found.items()}


def leg_vectors(value: Mapping[str, Any], corner: str) -> LegVectors:
    """Where a leg stands and how it leans."""
    at = tips(value)
    run = at[corner] - at[OPPOSITE[corner]]
    along = run / np.linalg.norm(run)
    side = np.cross(UP, along)
    # Turning "straight down" about the side axis swings the foot outward.
    down = rotated(-UP, side, -value["splay"])
    out = rotated(along, side, -value["splay"])
    return LegVectors(at[corner], along, down, out, side)


def rotated(vector: Floats, axis: Floats, by_deg: float) -> Floats:
    """Rodrigues' rotation of a vector about a unit axis, by the right-hand rule."""
    turn = math.radians(by_deg)
    return np.asarray(
        vector * math.cos(turn)
        + np.cross(axis, vector) * math.sin(turn)
        + axis * (axis @ vector) * (1.0 - math.cos(turn))
    )


def crossing(value: Mapping[str, Any]) -> Floats:
    """Where the stretchers' middle planes cross, in plan."""
    at = tips(value)
    lines = [
        np.cross(np.array((*at[a][:2], 1.0)), np.array((*at[z][:2], 1.0))) for a, z in DIAGONALS
    ]
    meeting = np.cross(*lines)
    return np.asarray(meeting[:2] / meeting[2])


def crossing_deg(value: Mapping[str, Any]) -> float:
    """The acute angle between the stretchers, from their bearings."""
    at = tips(value)
    bearings = []
    for a, z in DIAGONALS:
        run = at[z] - at[a]
        bearings.append(math.degrees(math.atan2(run[1], run[0])))
    apart = abs(bearings[0] - bearings[1]) % 180.0
    return min(apart, 180.0 - apart)
