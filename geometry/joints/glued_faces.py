"""Two flat faces that lie on each other and are glued or screwed: no cut in either piece."""

from __future__ import annotations

from collections.abc import Sequence

from geometry.design.joint import Contact, Joint, Measure
from geometry.design.part import Part
from geometry.joints.reference_faces import Told, places_of
from geometry.primitives.frame import Vec3

_BLOCK = Told("block", "the block", "the block")


def glued_faces(
    name: str,
    kind: str,
    first: Part,
    second: Part,
    corners: tuple[Vec3, ...],
    normal: Vec3,
    measures: Sequence[Measure] = (),
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


def glued_block(
    name: str, block: Part, holder: Part, corners: tuple[Vec3, ...], normal: Vec3
) -> Joint:
    """A block rubbed on to ``holder``, and where it stands there."""
    measures = places_of(holder, corners, normal, _BLOCK, 1)
    return glued_faces(name, "glued block", block, holder, corners, normal, measures)
