"""Where on the bench a finding is: in the middle of a piece, or in a joint.  Bench frame, mm."""

from __future__ import annotations

import numpy as np

from geometry.bench.bench import Bench
from geometry.design.part import Part
from geometry.primitives.frame import Vec3


def middle_of(part: Part) -> Vec3:
    """The middle of the piece before anything was cut off it."""
    blank = part.shape.blank
    return part.frame.to_bench((blank.length / 2.0, blank.width / 2.0, blank.thickness / 2.0))


def middle_of_named(bench: Bench, name: str) -> Vec3:
    """The same for the piece of that name."""
    return middle_of(bench.part(name))


def in_joint(bench: Bench, kind: str, *names: str) -> Vec3:
    """The middle of the faces that meet in the first joint of a kind in which all these pieces are;
    the middle of the first piece where there is none."""
    for joint in bench.joints:
        if joint.kind == kind and joint.contacts and set(names).issubset(joint.parts):
            corners = np.array([corner for face in joint.contacts for corner in face.corners])
            x, y, z = ((corners.min(axis=0) + corners.max(axis=0)) / 2.0).tolist()
            return (x, y, z)
    return middle_of_named(bench, names[0])
