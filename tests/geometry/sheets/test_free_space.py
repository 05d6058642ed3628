"""Free rectangles against a grid of squares."""

from __future__ import annotations

import itertools

from hypothesis import given
from hypothesis import strategies as st

from geometry.sheets.free_space import FreeSpace

starts, sizes = st.integers(0, 11), st.integers(1, 12)
rectangles = st.builds(lambda x, y, w, h: (x, y, x + w, y + h), starts, starts, sizes, sizes)


@given(st.lists(rectangles, max_size=5))
def test_every_free_square_is_in_a_rectangle_and_no_taken_one_is(taken):
    space = FreeSpace(((0.0, 0.0, 24.0, 24.0),))
    for x0, y0, x1, y1 in taken:
        space = space.without((2.0 * x0, 2.0 * y0, 2.0 * x1, 2.0 * y1), 0.0)
    for x, y in itertools.product(range(12), repeat=2):
        middle = (2.0 * x + 1.0, 2.0 * y + 1.0)
        is_taken = any(a <= x < c and b <= y < d for a, b, c, d in taken)
        is_free = any(a < middle[0] < c and b < middle[1] < d for a, b, c, d in space.rectangles)
        assert is_free is not is_taken


def test_the_preferred_rectangle_is_found():
    space = FreeSpace(((0.0, 0.0, 10.0, 4.0), (0.0, 0.0, 4.0, 10.0)))
    assert space.corner_for((5.0, 3.0), lambda r: (r[0],)) == (0.0, 0.0, 10.0, 4.0)
    assert space.corner_for((3.0, 8.0), lambda r: (r[0],)) == (0.0, 0.0, 4.0, 10.0)
    assert space.corner_for((5.0, 5.0), lambda r: (r[0],)) is None
