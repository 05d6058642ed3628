"""Two flat faces on each other, screwed or sliding: nothing is cut, but they have to meet."""

from __future__ import annotations

import math

from geometry.design.joint import Contact, Joint, Measure
from geometry.design.part import Part
from geometry.primitives.frame import Vec3

SCREWED, SLIDING = "screwed", "runner"
SLOTTED = "screwed in slots"  # one screw fast, the others with room to move

Corners = tuple[Vec3, Vec3, Vec3, Vec3]


def face_to_face(
    name: str, kind: str, first: Part, second: Part, corners: Corners, normal: Vec3
) -> Joint:
    """Lay ``second`` on ``first``.

    ``corners`` bound the rectangle in which they touch, in bench coordinates; ``normal`` points
    from the first into the second.
    """
    return Joint(
        name=name,
        kind=kind,
        parts=(first.name, second.name),
        fit=0.0,
        cuts_first=(),
        cuts_second=(),
        measures=(
            Measure("face_length", math.dist(corners[0], corners[1]), "mm", "where they touch"),
            Measure("face_width", math.dist(corners[1], corners[2]), "mm", "where they touch"),
        ),
        contacts=(Contact(corners, normal, 0.0),),
    )
