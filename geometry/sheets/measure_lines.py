"""Where in a view a measure of a joint can be drawn.

Frame and units: (u, v) of the view, mm and degrees.

Method: the joint says how large a measure is, the solid says where such a size is to be found.  A
length is looked for between corners, level, upright, or along and across a slanting edge that the
joint makes; an angle between two edges that meet, or between one and the square to the other.
At least one of the two is made by the joint.  So whatever is drawn is true: it is the distance
between two corners of the finished pieces.  Of several places the plainest is taken: seen rather
than hidden, straight across rather than far aside, and from a face that was there before when the
measure is one ``from`` something.
"""

from __future__ import annotations

from collections.abc import Sequence

from geometry.design.joint import Measure
from geometry.sheets.measured_angles import angles
from geometry.sheets.measured_lengths import lengths
from geometry.sheets.outlines import Drawn, Outlines

_KEPT = 6  # places of one measure that are remembered


def places(measures: Sequence[Measure], outlines: Outlines) -> tuple[Drawn, ...]:
    """All places in which the measures can be drawn in a view, the plainest of each first."""
    found: list[Drawn] = []
    for index, measure in enumerate(measures):
        own = (angles if measure.unit == "deg" else lengths)(index, measure, outlines)
        plainest: dict[tuple[float, ...], Drawn] = {}
        for one in sorted(own, key=lambda one: one.cost):
            plainest.setdefault(one.key, one)
        found += list(plainest.values())[:_KEPT]
    return tuple(found)
