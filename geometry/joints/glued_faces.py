"""Two flat faces that lie on each other and are glued or screwed: no cut in either piece."""

from __future__ import annotations

from geometry.design.joint import Contact, Joint, Measure
from geometry.design.part import Part
from geometry.primitives.frame import Vec3


def glued_faces(
    name: str,
    kind: str,
    first: Part,
    second: Part,
    corners: tuple[Vec3, ...],
    normal: Vec3,
    measures: tuple[Measure, ...] = (),
) -> Joint:
    """The face of ``first`` with these ``corners`` lies on ``second``.

    ``corners`` in bench coordinates; ``normal`` is the unit direction from the first piece into
    the second; ``kind`` is the joint in the trade's words, such as ``butt joint``.
    """
    return Joint(
        name=name,
        kind=kind,
        parts=(first.name, second.name),
        fit=0.0,
        cuts_first=(),
        cuts_second=(),
        measures=measures,
        contacts=(Contact(corners, normal, 0.0),),
    )
