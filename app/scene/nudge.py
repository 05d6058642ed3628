"""A value moved by the arrow keys: the keyboard's way to all that a hand can drag."""

from __future__ import annotations

import math

from geometry.bench.catalogue import parameter
from geometry.bench.limits import limits, set_values
from geometry.design.spec import BenchSpec
from geometry.dimensioning.drag import Dragged
from shared.errors import MakerError

_ON_STEP = 1e-6


def nudged(spec: BenchSpec, name: str, steps: int, step: float) -> Dragged:
    """The design with a number moved by ``steps`` x ``step`` and put on a multiple of ``step``.

    A value between two multiples goes to the next one on its way.  It stops at the limits, and
    says why.
    """
    row = parameter(name)
    before = spec.number(name)
    size = 1.0 if row.unit == "count" else step
    place = before / size
    if abs(place - round(place)) < _ON_STEP:
        place = round(place)
    else:
        place = math.floor(place) if steps > 0 else math.ceil(place)
    wanted = (place + steps) * size
    allowed = limits(spec, name)
    stopped_by = ""
    if wanted > allowed.maximum:
        wanted, stopped_by = allowed.maximum, allowed.why_maximum
    elif wanted < allowed.minimum:
        wanted, stopped_by = allowed.minimum, allowed.why_minimum
    try:
        return Dragged(set_values(spec, {name: wanted}), wanted, stopped_by)
    except MakerError as error:
        return Dragged(spec, before, str(error))
