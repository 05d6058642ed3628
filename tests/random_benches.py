"""Random benches: every number anywhere in its own limits, or samples with their numbers moved."""

from __future__ import annotations

import contextlib
import random
from functools import lru_cache

from app.window.samples import sample_files
from exporters.project_file import read_project
from geometry.bench import as_cut
from geometry.bench.carving_parameters import FACETED
from geometry.bench.carving_parameters import PARAMETERS as CARVING
from geometry.bench.catalogue import PARAMETERS, default_spec, parameter
from geometry.bench.drawers import has_drawers
from geometry.bench.left_to_fit import PARAMETERS as LEFT_TO_FIT
from geometry.bench.limits import limits, set_values
from geometry.bench.overall import CASE
from geometry.design.parameter import Parameter
from geometry.design.spec import BenchSpec
from shared.errors import MakerError
from tests.carved_texts import random_text

# Of how a bench is made, and nothing of what it is.
HOW_IT_IS_MADE = {row.name for row in (*as_cut.CHOICES, *as_cut.PARAMETERS, *LEFT_TO_FIT)}


@lru_cache(maxsize=64)
def random_spec(
    seed: int, *, changes: int | None = None, kept: frozenset[str] = frozenset()
) -> BenchSpec:
    """A buildable bench; the same seed gives the same bench.

    ``changes`` limits how many of the values are touched, None touches them all; those ``kept``
    stay as they are by default.
    """
    dice = random.Random(seed)
    spec = default_spec()
    rows = [row for row in PARAMETERS if row.name not in kept | HOW_IT_IS_MADE]
    dice.shuffle(rows)
    if dice.random() < 0.7:
        # Forms first, so that the numbers of the base and the ends drawn are touched too; in the
        # other benches forms come in upon numbers from anywhere.
        rows.sort(key=lambda row: row.unit != "choice")
    for row in rows[:changes]:
        spec = _touched(spec, row, dice)
    if changes is None and has_drawers(spec) and dice.random() < 0.6:
        # Few draws come to carved fronts by themselves: drawers must be there before.
        with contextlib.suppress(MakerError):
            spec = set_values(spec, {"carving": FACETED})
        for name in (row.name for row in CARVING if row.name != "carving"):
            spec = _touched(spec, parameter(name), dice)
    return spec


def _touched(spec: BenchSpec, row: Parameter, dice: random.Random) -> BenchSpec:
    """One value drawn anew; as it is where it does not apply or the draw cannot be built."""
    if not row.applies(spec):
        return spec
    if row.unit == "choice":
        try:
            return set_values(spec, {row.name: _word(row, dice)})
        except MakerError:
            return spec
    if row.unit == "text":
        return set_values(spec, {row.name: random_text(row.name, dice)})
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
    return set_values(spec, {row.name: value})


def _word(row: Parameter, dice: random.Random) -> str:
    """One of the choices; every other bench has a case, which has most to go wrong."""
    if row.name == "seat" and dice.random() < 0.5:
        return CASE
    return dice.choice(row.choices)


def sound_spec(seed: int) -> BenchSpec:
    """A bench that a maker could well have drawn; the same seed gives the same bench.

    One of the samples, all of which are sound, with about half of its lengths and angles moved by
    up to an eighth of what they are, as far as their limits go.
    """
    dice = random.Random(seed)
    spec = _samples()[seed % len(_samples())]
    rows = [row for row in PARAMETERS if row.is_number and row.unit != "count"]
    dice.shuffle(rows)
    for row in rows:
        if not row.applies(spec) or dice.random() < 0.5:
            continue
        now = spec.number(row.name)
        allowed = limits(spec, row.name)
        value = now * dice.uniform(0.875, 1.125)
        value = min(allowed.maximum, max(allowed.minimum, value))
        with contextlib.suppress(MakerError):
            spec = set_values(spec, {row.name: value})
    return spec


@lru_cache(maxsize=1)
def _samples() -> tuple[BenchSpec, ...]:
    return tuple(read_project(path.read_bytes()).spec for path in sample_files())
