"""Cropped lines against shapely."""

from __future__ import annotations

import numpy as np
import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from geometry.drawing.cropping import cropped

place = st.one_of(st.floats(-30.0, 30.0).map(lambda x: round(x, 3)), st.sampled_from([0.0, 10.0]))


@given(st.lists(st.tuples(place, place, place, place), min_size=1, max_size=8))
def test_the_length_inside_is_shapelys(lines):
    array = np.array(lines)
    kept = cropped(array, (0.0, 0.0, 10.0, 10.0))
    window = shapely.box(0.0, 0.0, 10.0, 10.0)
    wanted = sum(shapely.LineString([r[:2], r[2:]]).intersection(window).length for r in lines)
    assert np.hypot(*(kept[:, 2:] - kept[:, :2]).T).sum() == pytest.approx(wanted, abs=1e-6)


def test_nothing_of_nothing():
    assert len(cropped(np.zeros((0, 4)), (0.0, 0.0, 1.0, 1.0))) == 0
