"""Estimates of strength and sag, against beam theory put together from small pieces.

The judge integrates the curvature and the shear of a simply supported beam in many short pieces
(Timoshenko), and knows no closed formula.
"""

from __future__ import annotations

import numpy as np
import pytest

from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.checks.all_checks import judged
from geometry.checks.strength import even_sag, middle_stress
from geometry.design.judging import AS_FOUND, Judging


def _summed_sag(load: float, span: float, width: float, thickness: float, e: float) -> float:
    """Sag in the middle by virtual work: sum of M m / (E I) + V v / (G A') over the pieces."""
    count = 20_000
    x = (np.arange(count) + 0.5) * span / count
    moment = load / span * x * (span - x) / 2.0
    shear = load * (0.5 - x / span)
    unit_moment = np.minimum(x, span - x) / 2.0
    unit_shear = np.where(x < span / 2.0, 0.5, -0.5)
    inertia, area, g = width * thickness**3 / 12.0, 5.0 / 6.0 * width * thickness, e / 16.0
    pieces = moment * unit_moment / (e * inertia) + shear * unit_shear / (g * area)
    return float(pieces.sum() * span / count)


@pytest.mark.parametrize(("span", "thickness"), [(600.0, 20.0), (1500.0, 18.0), (300.0, 40.0)])
def test_the_sag_of_a_shelf_is_that_of_its_pieces(span: float, thickness: float) -> None:
    e = 12300.0
    found = even_sag(200.0, span, 300.0, thickness, e)
    assert found == pytest.approx(_summed_sag(200.0, span, 300.0, thickness, 1.1 * e), rel=1e-4)


def test_the_stress_of_a_board_by_hand() -> None:
    """1112 N over 600 mm: 166 800 N mm; 360 x 20² / 6 = 24 000 mm³; 6.95 MPa."""
    assert middle_stress(1112.0, 600.0, 360.0, 20.0) == pytest.approx(6.95)


def test_a_top_is_told_of_when_it_uses_more_than_the_maker_allows() -> None:
    """White oak of 105 MPa; widest opening 570 + 20 = 590 mm: 6.834 MPa, 6.51 % of it."""
    bench = build(default_spec())
    assert judged(bench, AS_FOUND) == ()
    (found,) = judged(bench, Judging().with_limit("most_of_strength", 6.0))
    assert found.check == "seat_strength"
    assert found.amount == pytest.approx(100.0 * 1112.0 * 590.0 / 4.0 / 24_000.0 / 105.0)
    assert found.estimate
    assert judged(bench, Judging().with_limit("most_of_strength", 6.6)) == ()
