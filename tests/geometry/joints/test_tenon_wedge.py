"""Wedges in a leaning through tenon, worked by hand; mm and degrees."""

from __future__ import annotations

from dataclasses import replace

import pytest

from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.cuts.cut import Blank
from geometry.design.parameter import Value
from geometry.design.part import Part, Shape
from geometry.joints.leaning_tenon import LeaningTenon
from geometry.joints.tenon_wedge import TenonWedge, tenon_wedge, wedge_piece
from geometry.primitives.frame import BENCH_FRAME
from geometry.solids.measure import bounding_box, shared_volume, volume_of
from shared.tolerances import SHARED_VOLUME
from tests.measures import minimum_gap


def square() -> LeaningTenon:
    """Of a post of 40 x 30 along x: 28 x 14, and 36 long."""
    return LeaningTenon(
        frame=BENCH_FRAME,
        into=(1.0, 0.0, 0.0),
        face=200.0,
        length=36.0,
        y_low=6.0,
        y_high=34.0,
        z_low=8.0,
        z_high=22.0,
        top=0.0,
        fit=0.2,
        through=True,
    )


def post() -> Part:
    return Part("post", "Post", "post", "ash", Shape(Blank(260.0, 40.0, 30.0), ()), BENCH_FRAME)


def test_a_wedge_in_a_square_tenon() -> None:
    """36 long, slot 27, wedge 4: root at x = 209, 27 x 14 x 4 / 2 = 756 mm³ of wedge."""
    at = TenonWedge(square(), 20.0, 4.0, 27.0)
    assert at.root == pytest.approx((209.0, 20.0, 15.0))
    wedge = wedge_piece("wedge", "Wedge", "ash", at)
    blank = wedge.shape.blank
    assert (blank.length, blank.width, blank.thickness) == pytest.approx((27.0, 14.0, 4.0))
    joint = tenon_wedge("wedge", post(), wedge, at)
    made = replace(wedge, shape=Shape(blank, joint.cuts_second))
    assert volume_of(made.shape) == pytest.approx(756.0)
    low, high = bounding_box(made)
    assert tuple(low) == pytest.approx((209.0, 18.0, 8.0))
    assert tuple(high) == pytest.approx((236.0, 22.0, 22.0))


@pytest.mark.parametrize(("rake", "splay"), [(12.0, 0.0), (0.0, 9.0), (20.0, 12.0)])
@pytest.mark.parametrize("count", [1.0, 2.0])
def test_leaning_wedges_fill_their_slots_to_the_tenons_end(
    rake: float, splay: float, count: float
) -> None:
    """A post's slotted tenon and its wedges together are the whole post, and flush with the seat's
    underside."""
    changes: dict[str, Value] = {
        "seat": "slab",
        "seat_thickness": 45.0,
        "back_rest": "rails",
        "post_fixing": "tenoned into the seat",
        "rest_rake": rake,
        "post_splay": splay,
    }
    spec = set_values(default_spec(), changes)
    wedges: dict[str, Value] = {"post_tenon_kind": "wedged", "post_wedge_count": count}
    plain, wedged = build(spec), build(set_values(set_values(spec, wedges), {"post_wedge": 5.0}))
    pieces = [part for part in wedged.parts if part.name.startswith(("post_1", "wedge_post_1"))]
    assert len(pieces) == 1 + count
    whole = volume_of(plain.part("post_1").shape)
    assert sum(volume_of(part.shape) for part in pieces) == pytest.approx(whole, abs=1e-3)
    underside = bounding_box(wedged.part("seat"))[0][2]
    for part in pieces[1:]:
        assert shared_volume(pieces[0], part) <= SHARED_VOLUME
        assert minimum_gap(pieces[0], part, 1.0) == pytest.approx(0.0, abs=1e-6)
        assert bounding_box(part)[0][2] == pytest.approx(underside)
