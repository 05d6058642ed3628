"""A drag: from a design and a movement of the hand to a new design, or the reason why not.

Pure: the same press, movement and step always give the same bench, so a drag there and back
is no change at all.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from geometry.bench.catalogue import parameter
from geometry.bench.limits import limits, set_values
from geometry.design.spec import BenchSpec
from geometry.dimensioning.pull import Pull
from geometry.primitives.frame import Vec2
from shared.errors import MakerError


@dataclass(frozen=True, slots=True)
class Dragged:
    """The design under the hand, its value, and why it stopped (empty while it moves freely)."""

    spec: BenchSpec
    value: float
    stopped_by: str


def drag(start: BenchSpec, pull: Pull, moved: Vec2, step: float | None) -> Dragged:
    """Move a value of ``start`` by the hand's total movement since the press.

    ``moved`` (u, v) in mm of the view; ``step`` in mm (or degrees for an angle) snaps the value
    to its multiples, None moves freely.
    """
    row = parameter(pull.parameter)
    before = start.number(pull.parameter)
    travel = pull.gain * (moved[0] * pull.along[0] + moved[1] * pull.along[1])
    if abs(travel) < 1e-9:
        return Dragged(start, before, "")
    wanted = _wanted(before, travel, pull.height)
    if step is not None and row.unit in ("mm", "deg"):
        wanted = round(wanted / step) * step
    if row.unit == "count":
        wanted = float(round(wanted))
    allowed = limits(start, pull.parameter)
    if wanted > allowed.maximum:
        value, stopped_by = allowed.maximum, allowed.why_maximum
    elif wanted < allowed.minimum:
        value, stopped_by = allowed.minimum, allowed.why_minimum
    else:
        value, stopped_by = wanted, ""
    try:
        return Dragged(set_values(start, {pull.parameter: value}), value, stopped_by)
    except MakerError as error:
        return Dragged(start, before, str(error))


def _wanted(before: float, travel: float, height: float) -> float:
    if not height:
        return before + travel
    tangent = math.tan(math.radians(before)) + travel / height
    return math.degrees(math.atan(tangent))
