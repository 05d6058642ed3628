"""What a cut draws on the face of a board: the lines a router, laser or scriber follows.

Contours lie in the part's xy plane, in mm, seen from the face side (z = 0 up) whichever face
is worked; ``face`` says which.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from geometry.primitives.path import Path


class Operation(Enum):
    """What is done along, or inside, a contour."""

    OUTLINE = "outline"  # cut through, outside the closed path
    INSIDE = "inside"  # cut through, inside the closed path
    POCKET = "pocket"  # cleared inside the closed path to a depth
    SAW_LINE = "saw line"  # where a tilted or angled saw cut meets the face; open path
    SCRIBE = "scribe"  # a line to work to; open path


class Face(Enum):
    """The face a contour is worked from."""

    FACE_SIDE = "face side"  # z = 0
    REVERSE = "reverse"  # z = thickness


@dataclass(frozen=True, slots=True)
class Contour:
    """One path and what is done with it.

    ``depth`` in mm from the worked face, None when through.  ``tilt_deg`` is the blade's tilt
    from square for a saw line, 0 elsewhere.  ``runs_out`` marks pockets that leave the edge of
    the board, where the cutter must run past it.
    """

    operation: Operation
    face: Face
    path: Path
    depth: float | None = None
    tilt_deg: float = 0.0
    runs_out: bool = False
