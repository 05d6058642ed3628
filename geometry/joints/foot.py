"""A foot under the end of a leg: a pad glued on, or a levelling foot screwed into an insert.

The threaded insert stands in a boring that goes straight up, with a flange against the end.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from geometry.cuts.end_bore import EndBore
from geometry.cuts.turned import Turned
from geometry.design.joint import Contact, Joint, Measure
from geometry.design.part import Part
from geometry.joints.reference_faces import Told, places_of
from geometry.joints.slotted_screw import UP, rectangle
from geometry.primitives.frame import Vec3, add, rounded, scale

PLAY = 0.6  # mm in the diameter between an insert as drawn and its boring

_BORE = Told("bore", "the middle of the boring", "the boring")
_PAD = Told("pad", "the middle of the pad", "the pad")
_SIDES = 24  # of the face in which a pad is said to bear
_WITHIN = 0.98  # of its radius, so that the face lies in the disc

_ALONG: Vec3 = (1.0, 0.0, 0.0)
_ACROSS: Vec3 = (0.0, 1.0, 0.0)


@dataclass(frozen=True, slots=True)
class FootNumbers:
    """``middle`` is where the foot's axis meets the end, in bench coordinates; mm.

    ``inner`` and ``outer`` are the radii between which the foot bears on the end all round;
    ``bore`` and ``depth`` are those of the boring, 0 without one.
    """

    middle: Vec3
    inner: float
    outer: float
    bore: float
    depth: float


def foot(name: str, piece: Part, leg: Part, at: FootNumbers) -> Joint:
    """Put a foot under a leg, plinth or panel."""
    bore = EndBore(
        rounded(leg.frame.to_local(at.middle)),
        rounded(leg.frame.turn_to_local(UP)),
        rounded(leg.frame.turn_to_local(_ALONG)),
        at.bore,
        at.depth,
    )
    measures = [Measure("foot_height", at.middle[2], "mm", "from the floor to the end", (0,), UP)]
    if at.bore > 0.0:
        measures += [
            Measure("bore_diameter", at.bore, "mm", "for the threaded insert, straight up", (1,)),
            Measure("bore_depth", at.depth, "mm", "from the end", (1,), UP),
        ]
    if not any(isinstance(cut, Turned) for cut in leg.shape.cuts):  # that has it in its middle
        measures += places_of(leg, (at.middle,), UP, _BORE if at.bore > 0.0 else _PAD, 1)
    return Joint(
        name=name,
        kind="levelling foot" if at.bore > 0.0 else "pad",
        parts=(piece.name, leg.name),
        fit=0.0,
        cuts_first=(),
        cuts_second=(bore,) if at.bore > 0.0 else (),
        measures=tuple(measures),
        contacts=tuple(Contact(corners, UP, 0.0) for corners in _bearing(at)),
    )


def _bearing(at: FootNumbers) -> tuple[tuple[Vec3, ...], ...]:
    """Rectangles inside the ring, along it, or what is next to a whole disc."""
    if at.inner <= 0.0:
        radius = _WITHIN * at.outer
        turns = [2.0 * math.pi * k / _SIDES for k in range(_SIDES)]
        return (
            tuple(
                add(at.middle, (radius * math.cos(turn), radius * math.sin(turn), 0.0))
                for turn in turns
            ),
        )
    wide = at.outer - at.inner
    radius, half = at.inner + wide / 2.0, wide / 4.0
    along = _WITHIN * math.sqrt(at.outer**2 - (radius + half) ** 2)
    return tuple(
        rectangle(add(at.middle, scale(way, sign * radius)), _ALONG, _ACROSS, halves)
        for way, halves in ((_ALONG, (half, along)), (_ACROSS, (along, half)))
        for sign in (1.0, -1.0)
    )
