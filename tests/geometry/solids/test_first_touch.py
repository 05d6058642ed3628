"""How far solids come before they touch, against plain geometry and small steps."""

from __future__ import annotations

import math

import numpy as np
import pytest
import trimesh

from geometry.cuts.cut import Blank
from geometry.design.part import Part, Shape
from geometry.primitives.frame import Frame, Vec3
from geometry.solids.cutting import placed
from geometry.solids.sweeping import first_touch


def block(origin: Vec3, turn_deg: float = 0.0, size: Vec3 = (40.0, 30.0, 20.0)) -> Part:
    """A block turned about Z."""
    turn = math.radians(turn_deg)
    frame = Frame.of(
        origin,
        (math.cos(turn), math.sin(turn), 0.0),
        (-math.sin(turn), math.cos(turn), 0.0),
    )
    return Part("block", "Block", "block", "oak", Shape(Blank(*size), ()), frame)


def test_two_square_blocks() -> None:
    """From x = 40 to x = 100, of which the second's face is 15 x 20 beside the first."""
    touch = first_touch(
        [placed(block((0, 0, 0)))], [placed(block((100, 15, 0)))], (1.0, 0.0, 0.0), 500.0
    )
    assert touch is not None
    assert touch.travel == pytest.approx(60.0)
    assert touch.place[0] == pytest.approx(100.0)
    assert 15.0 <= touch.place[1] <= 30.0


def test_the_reach_is_gone_by_and_what_lies_behind_is_not_met() -> None:
    mover, other = placed(block((0, 0, 0))), placed(block((100, 0, 0)))
    assert first_touch([mover], [other], (1.0, 0.0, 0.0), 59.9) is None
    assert first_touch([mover], [other], (-1.0, 0.0, 0.0), 500.0) is None
    assert first_touch([mover], [placed(block((100, 30, 0)))], (1.0, 0.0, 0.0), 500.0) is None


def test_a_corner_meets_a_square_face() -> None:
    """A block turned by 30 degrees with its origin at x = 200: its corner at y = 30 lies at
    200 - 30 sin 30 = 185, and the face is at 40."""
    other = placed(block((200, 0, 0), 30.0))
    mover = placed(block((0, -50, 0), size=(40.0, 200.0, 20.0)))
    touch = first_touch([mover], [other], (1.0, 0.0, 0.0), 500.0)
    assert touch is not None
    assert touch.travel == pytest.approx(145.0)
    assert touch.place[:2] == pytest.approx((185.0, 30.0 * math.cos(math.radians(30))))


@pytest.mark.parametrize("turn_deg", [10.0, 33.0, 71.0])
def test_small_steps_by_another_library_agree(turn_deg: float) -> None:
    """A skew way past a turned block: the last free step and the first that is not, 0.5 apart."""
    way = np.array([0.8, 0.5, math.sqrt(1.0 - 0.89)])
    mover, other = placed(block((0, 0, 0), 20.0)), placed(block((90, 60, 25), turn_deg))
    touch = first_touch([mover], [other], tuple(way.tolist()), 400.0)
    assert touch is not None
    still = trimesh.Trimesh(other.vertices, other.solid.triangles, process=False)
    moving = trimesh.Trimesh(mover.vertices, mover.solid.triangles, process=False)
    points, _ = trimesh.sample.sample_surface_even(moving, 4000, seed=1)
    points = np.vstack([points, mover.vertices])
    back, _ = trimesh.sample.sample_surface_even(still, 4000, seed=1)
    back = np.vstack([back, other.vertices])

    def meets(far: float) -> bool:
        return bool(
            still.contains(points + far * way).any() or moving.contains(back - far * way).any()
        )

    assert not meets(touch.travel - 0.5)
    assert meets(touch.travel + 4.0)
