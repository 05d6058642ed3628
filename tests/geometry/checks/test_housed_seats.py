"""Where a board is housed over what carries it: it cracks there, and is not said to break."""

from __future__ import annotations

import pytest

from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.checks.all_checks import findings
from geometry.checks.offers import bench_with
from geometry.design.finding import Level


def test_a_top_with_deep_housings_cracks_and_is_not_forbidden() -> None:
    """A partition let 17 mm into a top of 20: 3 mm are left over it, of 360 mm; a third is 6.5."""
    spec = set_values(default_spec(), {"flare": 0.0, "right_end": "mitred"})
    bench = build(set_values(spec, {"housing_depth": 17.0}))
    (found,) = (one for one in findings(bench) if one.check == "seat_strength")
    assert found.level is Level.THINK_AGAIN
    assert "over a housing" in found.message
    # The moment is that of the whole top: (20 - 7)² / 3² of the 10.34 % with 7 mm (test_strength).
    shallow = findings(build(spec))
    assert not [one for one in shallow if one.check == "seat_strength"]
    assert found.amount == pytest.approx(10.34 * (13.0 / 3.0) ** 2, rel=1e-3)
    assert found.place is not None
    assert found.place[0] == pytest.approx(600.0)
    assert found.mend is not None
    assert dict(found.mend.values) == {"housing_depth": 6.5}
    mended = bench_with(bench, found.mend)
    assert mended is not None
    assert not [one for one in findings(mended) if one.check == "seat_strength"]
