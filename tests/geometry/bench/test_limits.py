"""Limits against the rules themselves, asked value by value."""

from __future__ import annotations

import numpy as np
import pytest

from geometry.bench.catalogue import default_spec
from geometry.bench.limits import limits, set_values
from shared.errors import CannotBuild, ValueOutOfRange


def test_limits_stop_at_the_first_value_that_fails() -> None:
    """Stretchers that cross near one leg: moving another leg, the lap comes too close, goes away
    and comes back.  The range is the one around the value of now."""
    spec = set_values(
        default_spec(),
        {
            "inset_left": 875.03,
            "inset_right": 70.36,
            "inset_back_left": -126.85,
            "inset_front_left": 244.31,
            "inset_front_right": 32.52,
            "splay": 13.0415,
            "leg_top_width": 79.3842,
        },
    )
    allowed = limits(spec, "inset_back_right")
    assert "lap" in allowed.why_minimum
    for value in np.linspace(allowed.minimum, allowed.maximum, 200):
        set_values(spec, {"inset_back_right": float(value)})
    with pytest.raises(CannotBuild):
        set_values(spec, {"inset_back_right": 35.0, "inset_back_left": -126.85})
    with pytest.raises(ValueOutOfRange) as refused:
        set_values(spec, {"inset_back_right": 35.0})
    assert refused.value.limit == allowed.minimum
    assert 35.0 < allowed.minimum < 60.0
    # Beyond the gap it could be built again, but not by moving there.
    set_values(spec, {"inset_back_right": -40.0, "inset_back_left": -126.85})


def test_straight_rules_end_exactly() -> None:
    """The bevelled front may lean 45 deg at most: the flare is at most the case height.  A board
    of 20 keeps 3 under a housing: 17.  The partition at 600 ends at 610; 40 clear, a set-in
    partition of 20 and 60 behind it make 730."""
    spec = default_spec()
    assert limits(spec, "housing_depth").maximum == 17.0
    assert limits(spec, "flare").maximum == spec.number("case_height")
    assert limits(spec, "length").minimum == pytest.approx(730.0)


def test_what_no_bench_has_is_refused_with_what_this_one_may_have() -> None:
    """Boards of 20 leave far less for a housing than the 25 that thick ones allow."""
    spec = default_spec()
    with pytest.raises(ValueOutOfRange) as refused:
        set_values(spec, {"housing_depth": 300.0})
    most = refused.value.limit
    assert most is not None
    assert most < 20.0
    assert f"to {{{most:.6g} mm}}" in refused.value.remedy
    set_values(spec, {"housing_depth": most})
    with pytest.raises(ValueOutOfRange):
        set_values(spec, {"housing_depth": most + 0.01})
