"""Open sides of pockets go past the edge; closed ones stay.  All by hand."""

from __future__ import annotations

import math

import numpy as np
import pytest
from shapely.geometry import MultiPolygon, Polygon, box

from exporters.run_over import run_over
from geometry.primitives.path import HALF_TURN_BULGE, Path

BOARD = MultiPolygon([box(0, 0, 300, 200)])


def bounds(path: Path) -> tuple[float, ...]:
    return tuple(Polygon(path.flattened(0.001)).bounds)


@pytest.mark.parametrize(
    ("pocket", "expected"),
    [
        ((0, 0, 300, 10), (-8, -8, 308, 10)),  # along the whole edge: three open sides
        ((50, 0, 250, 10), (50, -8, 250, 10)),  # stopped at both ends
        ((0, 0, 250, 10), (-8, -8, 250, 10)),  # stopped at one end
        ((50, 40, 250, 60), (50, 40, 250, 60)),  # in the middle: nothing is open
        ((50, -3, 250, 10), (50, -8, 250, 10)),  # drawn 3 past the edge already
        ((50, -9, 250, 10), (50, -9, 250, 10)),  # drawn far enough
        ((0, 0, 300, 200), (-8, -8, 308, 208)),  # all over
    ],
)
def test_rectangles(pocket: tuple[float, ...], expected: tuple[float, ...]) -> None:
    path = run_over(Path.rectangle(*pocket), BOARD, 8.0)
    assert bounds(path) == pytest.approx(expected)
    assert len(path.vertices) == 4


def test_nothing_changes_where_nothing_is_open() -> None:
    path = Path.rectangle(50, 40, 250, 60)
    assert run_over(path, BOARD, 8.0) is path


def test_a_slanting_edge_is_passed_square_to_itself() -> None:
    """A board whose right edge leans 45°, and a pocket up to that edge."""
    board = MultiPolygon([Polygon([(0, 0), (100, 0), (200, 100), (0, 100)])])
    pocket = Path.polygon(((20.0, 20.0), (120.0, 20.0), (140.0, 40.0), (20.0, 40.0)))
    path = run_over(pocket, board, 5.0)
    across = 5.0 * math.sqrt(2.0)
    corners = sorted((round(x, 9), round(y, 9)) for x, y, _ in path.vertices)
    expected = [(20.0, 20.0), (20.0, 40.0), (120.0 + across, 20.0), (140.0 + across, 40.0)]
    assert np.array(corners) == pytest.approx(np.array(expected))


def test_an_arc_beside_an_open_side_keeps_its_place() -> None:
    """A half-round cut at the edge: the open side gets a step, the arc stays."""
    path = run_over(Path(((100.0, 0.0, 0.0), (120.0, 0.0, HALF_TURN_BULGE))), BOARD, 8.0)
    area = Polygon(path.flattened(0.0001)).area
    assert area == pytest.approx(math.pi * 10.0**2 / 2.0 + 20.0 * 8.0, abs=0.01)


def test_a_side_in_two_pieces_moves_as_one() -> None:
    pocket = Path(((0.0, 0.0, 0.0), (150.0, 0.0, 0.0), (300.0, 0.0, 0.0), (300.0, 10.0, 0.0),
                   (0.0, 10.0, 0.0)))  # fmt: skip
    path = run_over(pocket, BOARD, 8.0)
    assert bounds(path) == pytest.approx((-8.0, -8.0, 308.0, 10.0))
    assert Polygon(path.flattened(0.001)).area == pytest.approx(316.0 * 18.0)


def test_wood_beyond_a_side_keeps_it_closed() -> None:
    """An edge that is stepped: half of the pocket's side has wood against it."""
    board = MultiPolygon([box(0, 0, 300, 200).union(box(150, -50, 300, 0))])
    path = run_over(Path.rectangle(50, 0, 250, 10), board, 8.0)
    assert bounds(path) == pytest.approx((50.0, 0.0, 250.0, 10.0))
