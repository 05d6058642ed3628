"""What each base says of itself: the pieces that it names are there, and lie where it says."""

from __future__ import annotations

import pytest

from geometry.bench.bases import STANDINGS, standing
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.bench.overall import BASES
from geometry.solids.measure import bounding_box


def test_every_base_says_how_it_stands() -> None:
    assert set(STANDINGS) == set(BASES)


@pytest.mark.parametrize("base", BASES)
def test_what_a_base_says_is_where_its_pieces_are(base: str) -> None:
    """A bench 150 off the floor, its base 70 in from the ends: tops, bearers and feet lie on the
    solids of the pieces that they name."""
    spec = set_values(default_spec(), {"base": base})
    spec = set_values(spec, {"foot": "pads"})
    bench, told = build(spec), standing(spec)
    for top in told.tops(spec):
        low, high = bounding_box(bench.part(top.part))
        for x, y in top.points:
            assert low[0] - 1e-6 <= x <= high[0] + 1e-6
            assert low[1] - 1e-6 <= y <= high[1] + 1e-6
            assert 70.0 - 1e-6 <= x <= 1200.0 - 70.0 + 1e-6
    for bearer in told.bearers(spec, 20.0):
        low, high = bounding_box(bench.part(bearer.part))
        for point in (bearer.start, bearer.end):
            assert all(a - 1e-6 <= p <= b + 1e-6 for a, p, b in zip(low, point, high, strict=True))
            assert point[2] == pytest.approx(150.0)
    for foot in told.feet(spec):
        low, high = bounding_box(bench.part(foot.part))
        assert all(
            a - 1e-6 <= p <= b + 1e-6 for a, p, b in zip(low, foot.middle, high, strict=True)
        )
        assert foot.middle[2] == pytest.approx(low[2])
