"""Benches for hypothesis: a few values moved from the default, each anywhere in its limits.

A failing example shrinks to few values near their lower ends.
"""

from __future__ import annotations

from hypothesis import strategies as st

from geometry.bench.catalogue import PARAMETERS, default_spec
from geometry.bench.limits import limits, set_values
from geometry.design.spec import BenchSpec
from shared.errors import MakerError
from tests.carved_texts import random_text


@st.composite
def specs(draw: st.DrawFn, most_changes: int = 10) -> BenchSpec:
    """A buildable bench that differs from the default in at most ``most_changes`` values."""
    spec = default_spec()
    rows = draw(st.lists(st.sampled_from(PARAMETERS), max_size=most_changes, unique=True))
    for row in rows:
        if not row.applies(spec):
            continue
        if row.unit == "choice":
            try:
                spec = set_values(spec, {row.name: draw(st.sampled_from(row.choices))})
            except MakerError:
                continue  # this choice needs other values first
            continue
        if row.unit == "text":
            dice = draw(st.randoms(use_true_random=False))
            spec = set_values(spec, {row.name: random_text(row.name, dice)})
            continue
        allowed = limits(spec, row.name)
        if row.unit == "count":
            value = float(draw(st.integers(round(allowed.minimum), round(allowed.maximum))))
        else:
            share = draw(st.one_of(st.sampled_from((0.0, 1.0)), st.floats(0.0, 1.0)))
            value = allowed.minimum + share * (allowed.maximum - allowed.minimum)
            value = min(allowed.maximum, max(allowed.minimum, value))
        spec = set_values(spec, {row.name: value})
    return spec
