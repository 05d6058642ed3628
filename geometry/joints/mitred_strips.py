"""Two strips on the edges of boards that meet in a mitre, or one and a board of timber.

Each strip is sawn on the line of its board's mitre.  The angle lies in the strip's broad face, so
it hides from whoever looks along the boards' own mitre.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import radians, sin

from geometry.cuts.saw import SawCut
from geometry.design.joint import Contact, Joint, Measure
from geometry.design.part import Part
from geometry.primitives.frame import Vec3

_LEAST_TILT = sin(radians(0.05))  # what nobody can set a saw to
KIND = "mitred lipping"


def mitred_strips(
    name: str,
    parts: tuple[Part, Part],
    cuts: tuple[SawCut | None, SawCut | None],
    corners: tuple[Vec3, ...],
    normal: Vec3,
) -> Joint:
    """Saw those of the two that have a cut; ``corners`` bound where they meet, in bench
    coordinates, and ``normal`` points from the first into the second."""
    own = tuple((cut,) if cut is not None else () for cut in cuts)
    measures = [
        measure
        for which, (part, cut) in enumerate(zip(parts, cuts, strict=True))
        if cut is not None
        for measure in _sawn(part, cut, which)
    ]
    return Joint(
        name=name,
        kind=KIND,
        parts=(parts[0].name, parts[1].name),
        fit=0.0,
        cuts_first=own[0],
        cuts_second=own[1],
        measures=tuple(measures),
        contacts=(Contact(corners, normal, 0.0),),
    )


def _sawn(part: Part, cut: SawCut, which: int) -> Iterator[Measure]:
    word = ("first", "second")[which]
    meaning = f"from square, across the face side of {part.title}"
    yield Measure(f"mitre_{word}", cut.swing_deg, "deg", meaning, (which,))
    if abs(cut.outward[2]) > _LEAST_TILT:
        meaning = f"blade tilt from square, {part.title}"
        yield Measure(f"tilt_{word}", cut.tilt_deg, "deg", meaning, (which,))
