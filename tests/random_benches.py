"""Random benches: every number anywhere in its own limits, one after another."""

from __future__ import annotations

import random

from geometry.bench.catalogue import PARAMETERS, default_spec
from geometry.bench.limits import limits, set_values
from geometry.bench.overall import CASE
from geometry.design.parameter import Parameter
from geometry.design.spec import BenchSpec
from shared.errors import MakerError
from tests.carved_texts import random_text


def random_spec(seed: int, *, changes: int | None = None) -> BenchSpec:
    """A buildable bench; the same seed gives the same bench.

    ``changes`` limits how many of the values are touched, None touches them all.
    """
    dice = random.Random(seed)
    spec = default_spec()
    rows = list(PARAMETERS)
    dice.shuffle(rows)
    if dice.random() < 0.7:
        # Forms first, so that the numbers of the base and the ends drawn are touched too; in the
        # other benches forms come in upon numbers from anywhere.
        rows.sort(key=lambda row: row.unit != "choice")
    for row in rows[:changes]:
        if not row.applies(spec):
            continue
        if row.unit == "choice":
            try:
                spec = set_values(spec, {row.name: _word(row, dice)})
            except MakerError:
                continue
            continue
        if row.unit == "text":
            spec = set_values(spec, {row.name: random_text(row.name, dice)})
            continue
        allowed = limits(spec, row.name)
        # Half of the draws near the default, where benches live; the rest anywhere.
        if isinstance(row.default, float | int) and dice.random() < 0.5:
            spread = 0.3 * (allowed.maximum - allowed.minimum)
            low = max(allowed.minimum, min(row.default - spread, allowed.maximum))
            high = min(allowed.maximum, max(row.default + spread, allowed.minimum))
        else:
            low, high = allowed.minimum, allowed.maximum
        value = dice.uniform(low, high)
        if row.unit == "count":
            value = float(round(value))
        value = min(allowed.maximum, max(allowed.minimum, value))
        spec = set_values(spec, {row.name: value})
    return spec


def _word(row: Parameter, dice: random.Random) -> str:
    """One of the choices; every other bench has a case, which has most to go wrong."""
    if row.name == "seat" and dice.random() < 0.5:
        return CASE
    return dice.choice(row.choices)
