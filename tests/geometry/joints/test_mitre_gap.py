"""How a mitre gapes, against closed forms worked with the two faces drawn on paper.

The joint: boards 20 mm thick, 400 mm of them along the joint, meeting at 45 degrees.
"""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.cuts.cut import Blank
from geometry.cuts.saw import SawCut
from geometry.design.part import Part, Shape
from geometry.joints.mitre_gap import gaps, sawn_outward
from geometry.primitives.frame import Frame, Vec3, add
from geometry.solids.measure import shared_volume

T, DEEP = 20.0, 400.0
HALF = math.sqrt(0.5)
# Outside back, outside front, inside front, inside back; the board lies, the end hangs down.
CORNERS: tuple[Vec3, ...] = (
    (0.0, 0.0, 0.0),
    (0.0, -DEEP, 0.0),
    (T, -DEEP, -T),
    (T, 0.0, -T),
)
NORMAL = (-HALF, 0.0, -HALF)  # from the board, at the right, into the end at its left
BOARD = Frame.of((0.0, 0.0, 0.0), (1, 0, 0), (0, -1, 0))  # z down from the outside
END = Frame.of((T, 0.0, 0.0), (0, 0, -1), (0, -1, 0))


def _cut(frame: Frame, outward: Vec3) -> SawCut:
    return SawCut("mitre", (0.0, 0.0, 0.0), frame.turn_to_local(outward))


def _gaps(board: tuple[float, float], end: tuple[float, float]) -> tuple[float, ...]:
    """With tilt and degrees off square of each."""
    out = []
    for frame, way, (tilt, off) in ((BOARD, 1.0, board), (END, -1.0, end)):
        drawn = _cut(frame, (NORMAL[0] * way, 0.0, NORMAL[2] * way))
        out.append(frame.turn_to_bench(sawn_outward(drawn, tilt, off)))
    return gaps(CORNERS, NORMAL, out[0], out[1])


def test_a_mitre_sawn_as_drawn_closes() -> None:
    assert _gaps((45.0, 0.0), (45.0, 0.0)) == pytest.approx((0.0,) * 4, abs=1e-9)


def test_a_tilt_that_is_short_opens_the_outside_all_along() -> None:
    """The faces touch at the inside arris and part by 1 degree over 20 sqrt 2 mm."""
    wide = T * math.sqrt(2.0) * math.tan(math.radians(1.0))
    assert _gaps((44.0, 0.0), (45.0, 0.0)) == pytest.approx((wide, wide, 0.0, 0.0))
    assert _gaps((45.0, 0.0), (44.0, 0.0)) == pytest.approx((wide, wide, 0.0, 0.0))


def test_a_tilt_that_is_over_opens_the_inside() -> None:
    wide = T * math.sqrt(2.0) * math.tan(math.radians(1.0))
    assert _gaps((46.0, 0.0), (45.0, 0.0)) == pytest.approx((0.0, 0.0, wide, wide))


@given(st.floats(-3.0, 3.0))
def test_what_one_tilt_lacks_the_other_makes_good(more: float) -> None:
    assert _gaps((45.0 + more, 0.0), (45.0 - more, 0.0)) == pytest.approx((0.0,) * 4, abs=1e-9)


@given(st.floats(0.1, 15.0))
def test_a_third_angle_opens_the_joint_along_its_length(off: float) -> None:
    """An end that is left longer at its front: on the outside it gapes at the back, by
    sqrt 2 y tan(e / 2) over y = 400 mm."""
    at = _gaps((45.0, 0.0), (45.0, off))
    assert at[0] - at[1] == pytest.approx(
        math.sqrt(2.0) * DEEP * math.tan(math.radians(off) / 2.0), rel=1e-9
    )
    shorter = _gaps((45.0, 0.0), (45.0, -off))
    assert shorter[1] - shorter[0] == pytest.approx(at[0] - at[1], rel=1e-9)


def test_the_same_third_angle_on_both_is_twice_as_wide() -> None:
    once, twice = _gaps((45.0, 0.0), (45.0, 2.0)), _gaps((45.0, 2.0), (45.0, 2.0))
    assert twice[0] - twice[1] == pytest.approx(2.0 * (once[0] - once[1]))


def test_against_planes_laid_through_three_sawn_points() -> None:
    """The board's face through three points worked by hand; then straight from plane to plane."""
    tilt, off = 43.0, 4.0
    at = _gaps((tilt, off), (45.0, 0.0))
    lean, swing = math.tan(math.radians(tilt)), math.tan(math.radians(off))
    back = (0.0, 0.0, 0.0)
    # At the front of the outside face the board is longer (to the left) by 400 tan(4).
    front = (-DEEP * swing, -DEEP, 0.0)
    # Through the thickness a blade tilted by 43 degrees travels 20 tan(43), square to the line.
    under = (T * lean / math.cos(math.radians(off)), 0.0, -T)
    normal = _normal(back, front, under)
    apart = []
    for corner in CORNERS:
        # From the plane of the joint along its normal to the board's face.
        reach = -_dot(normal, corner) / _dot(normal, NORMAL)
        apart.append(-reach)
    least = min(apart)
    assert at == pytest.approx([gap - least for gap in apart], abs=1e-9)


@pytest.mark.parametrize(
    ("board", "end"),
    [((44.0, 0.0), (45.0, 0.0)), ((46.0, 0.5), (45.0, -1.0)), ((45.0, 0.0), (45.0, 2.0))],
)
def test_the_solids_touch_where_the_gaps_say(
    board: tuple[float, float], end: tuple[float, float]
) -> None:
    """Both sawn through one corner, and the end moved square to the joint until they touch: a hair
    farther they share wood, and a hair before they share none."""
    pieces, out = [], []
    for name, frame, way, (tilt, off) in (
        ("board", BOARD, 1.0, board),
        ("end", END, -1.0, end),
    ):
        outward = sawn_outward(_cut(frame, (NORMAL[0] * way, 0.0, NORMAL[2] * way)), tilt, off)
        cut = SawCut("mitre", frame.to_local(CORNERS[0]), outward)
        # Longer than need be at the joint: where the fence leaves more, more is there.
        blank = Blank(260.0, DEEP, T)
        back = frame.turn_to_bench((-60.0, 0.0, 0.0))
        placed = replace(frame, origin=add(frame.origin, back))
        cut = replace(cut, point=add(cut.point, (60.0, 0.0, 0.0)))
        pieces.append(Part(name, name, name, "white oak", Shape(blank, (cut,)), placed))
        out.append(frame.turn_to_bench(outward))
    apart = [
        -_dot(out[1], corner) / _dot(out[1], NORMAL) + _dot(out[0], corner) / _dot(out[0], NORMAL)
        for corner in CORNERS
    ]
    assert gaps(CORNERS, NORMAL, out[0], out[1]) == pytest.approx(
        [gap - min(apart) for gap in apart], abs=1e-9
    )
    for hair, touching in ((-0.02, True), (0.02, False)):
        by = tuple(part * (hair - min(apart)) for part in NORMAL)
        frame = pieces[1].frame
        x, y, z = by
        moved = replace(pieces[1], frame=replace(frame, origin=add(frame.origin, (x, y, z))))
        assert (shared_volume(pieces[0], moved) > 1e-3) is touching


def _dot(a: Vec3, b: Vec3) -> float:
    return sum(x * y for x, y in zip(a, b, strict=True))


def _normal(a: Vec3, b: Vec3, c: Vec3) -> Vec3:
    u = [x - y for x, y in zip(b, a, strict=True)]
    v = [x - y for x, y in zip(c, a, strict=True)]
    return (u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0])
