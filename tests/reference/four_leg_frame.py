"""Four raking and splaying legs by vectors, from their description alone.

Frame and units: X right, Y back (back edges in y = 0), Z up; mm and degrees.  Shares no code with
the program.

The description: seen from the front a leg leans outward by the splay, seen from the side by the
rake.  Its front face stays parallel to the bench's length.  Held by aprons its outer arris starts,
at the height of the underside, where the insets say; with round tenons its axis does.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Any

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]

UP = np.array((0.0, 0.0, 1.0))
LENGTH = np.array((1.0, 0.0, 0.0))
DEPTH = np.array((0.0, 1.0, 0.0))
CORNERS = ("back_left", "back_right", "front_left", "front_right")


def signs(corner: str) -> tuple[float, float]:
    """Which way outward is, along the length and across the depth."""
    return (1.0 if "right" in corner else -1.0, 1.0 if "back" in corner else -1.0)


def grain(value: Mapping[str, Any], corner: str) -> Floats:
    """Down the leg: a plumb line that is off by both tangents at one mm of height."""
    along, across = signs(corner)
    run = np.array(
        (
            along * math.tan(math.radians(value["splay"])),
            across * math.tan(math.radians(value["rake"])),
            -1.0,
        )
    )
    return np.asarray(run / np.linalg.norm(run))


def start(value: Mapping[str, Any], corner: str) -> Floats:
    """The outer arris, or the axis, at the height of the underside."""
    x = value["length"] - value["inset_right"] if "right" in corner else value["inset_left"]
    y = -value["inset_back"] if "back" in corner else value["inset_front"] - value["depth"]
    return np.array((x, y, value["base_height"]))


def front_face(value: Mapping[str, Any], corner: str) -> Floats:
    """The outward unit normal of the face that is parallel to the length."""
    normal = np.cross(LENGTH, grain(value, corner))
    normal /= np.linalg.norm(normal)
    return np.asarray(normal if normal[1] * signs(corner)[1] > 0 else -normal)


def side_face(value: Mapping[str, Any], corner: str) -> Floats:
    """The outward unit normal of the face square to that one."""
    normal = np.cross(front_face(value, corner), grain(value, corner))
    return np.asarray(normal if normal[0] * signs(corner)[0] > 0 else -normal)
