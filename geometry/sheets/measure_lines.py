"""Where in a view a measure of a joint can be drawn.

Frame and units: (u, v) of the view, mm and degrees.

Method: the joint says how large a measure is, the solid says where such a size is to be found.  A
length is looked for between corners, level, upright, or along and across a slanting edge that the
joint makes; an angle between two edges that meet, or between one and the square to the other.
At least one of the two is made by the joint.  So whatever is drawn is true: it is the distance
between two corners of the finished pieces.  Of several places the plainest is taken: seen rather
than hidden, straight across rather than far aside, and from a face that was there before when the
measure is one ``from`` something.  A measure may tell its direction, and where it ends and starts:
a size elsewhere that is as large is not meant.
"""

from __future__ import annotations

from collections.abc import Sequence

from geometry.design.joint import Measure
from geometry.dimensioning.dimension import Dimension
from geometry.sheets.measured_angles import angles
from geometry.sheets.measured_lengths import SAME, Lengths, runs_along
from geometry.sheets.outlines import Drawn, Outlines
from geometry.views.view import View

_KEPT = 6  # places of one measure that are remembered


def places(measures: Sequence[Measure], outlines: Outlines) -> tuple[Drawn, ...]:
    """All places in which the measures can be drawn in a view, the plainest of each first."""
    found: list[Drawn] = []
    lengths = Lengths(outlines)
    for index, measure in enumerate(measures):
        if measure.unit == "deg":
            every = angles(index, measure, outlines)
        else:
            every = lengths.of(index, measure)
        own = (one for one in every if _is_meant(measure, one.dimension, outlines.view))
        plainest: dict[tuple[float, ...], Drawn] = {}
        for one in sorted(own, key=lambda one: one.cost):
            plainest.setdefault(one.key, one)
        found += list(plainest.values())[:_KEPT]
    return tuple(found)


def _is_meant(measure: Measure, one: Dimension, view: View) -> bool:
    """Whether a place lies along the measure's direction and ends where it ends, as far as the
    measure tells."""
    if measure.along is None or one.apex is not None:
        return True
    if not runs_along(measure, one.along, view):
        return False
    if measure.at is None:
        return True
    right, up = one.along
    told = [measure.at] if measure.start is None else [measure.at, measure.start]
    levels = [right * u + up * v for u, v in map(view.project, told)]
    start, end = (right * u + up * v for u, v in (one.start, one.end))
    return all(min(abs(level - start), abs(level - end)) < SAME for level in levels)
