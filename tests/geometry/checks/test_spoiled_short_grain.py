"""Spoiled benches for short grain, each one change to a sound sample; amounts worked by hand."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from geometry.bench.bench import Bench
from geometry.checks.all_checks import CHECKS, findings
from geometry.cuts.shaped_edge import ShapedEdge
from geometry.design.finding import Level
from geometry.design.parameter import Value
from geometry.design.part import Shape
from geometry.solids.grain import runs_of
from tests.samples import of_check, plain


def _changed(name: str, **values: Value) -> Bench:
    return plain(name, values)


def test_posts_raked_too_far_are_caught_and_mended() -> None:
    """Both arms of a knee'd post slope to the grain by half the rake.  A fibre of an arm d deep is
    d / sin long and its section d / cos: 1 / tan(12.5°) = 4.51 times as long as the section is
    deep at 25 degrees of rake, 1 / tan(11°) = 5.14 at 22."""
    assert not of_check(plain("bakehouse_bench"), "short_grain")
    spoiled = _changed("bakehouse_bench", rest_rake=25.0)
    (found,) = of_check(spoiled, "short_grain")
    assert found.level is Level.THINK_AGAIN
    assert found.parts == ("post_1", "post_2", "post_3")
    assert found.amount == pytest.approx(100.0)
    assert (found.limit, found.unit) == (50.0, "%")
    assert found.mend is not None
    assert dict(found.mend.values) == {"rest_rake": 22.0}
    assert not of_check(_changed("bakehouse_bench", rest_rake=22.0), "short_grain")


def test_the_fibres_of_a_raked_post_are_as_long_as_its_depth_and_slope_say() -> None:
    """Some ends shorten and the knee lengthens, but from side to side of an arm it is d / sin."""
    spoiled = _changed("bakehouse_bench", rest_rake=25.0)
    shape = spoiled.part("post_1").shape
    cuts = tuple(cut for cut in shape.cuts if isinstance(cut, ShapedEdge))
    runs = runs_of(Shape(shape.blank, cuts))
    depth = spoiled.spec.number("post_depth") / math.sin(math.radians(12.5))
    both = runs.from_side & runs.to_side
    assert (abs(runs.length[both] - depth) < 1e-6).sum() > 10


def test_a_foot_sawn_aslant_to_the_grain_is_caught() -> None:
    """A straight leg 20 mm square but for its lowest 60 mm, which lean out 4 in 10: the fibre that
    reaches the floor t mm from the inside runs out after 50 - 2.5 t, all within 5 x 20."""
    sound = plain("porch_bench")
    leg = sound.part("leg_front_right")
    blank = replace(leg.shape.blank, width=60.0, thickness=20.0)
    far, knee = blank.length, blank.length - 60.0
    cuts = (
        ShapedEdge(((0.0, 20.0), (knee, 20.0), (far, 44.0)), far=True),
        ShapedEdge(((0.0, 0.0), (knee, 0.0), (far, 24.0)), far=False),
    )
    cranked = replace(leg, shape=Shape(blank, cuts))
    spoiled = replace(sound, parts=tuple(cranked if one is leg else one for one in sound.parts))
    (check,) = (one for one in CHECKS if one.name == "foot_short_grain")
    assert not list(check.run(sound))
    (found,) = check.run(spoiled)
    assert (found.check, found.level) == ("foot_short_grain", Level.DO_NOT_CUT)
    assert found.parts == ("leg_front_right",)
    assert found.amount == pytest.approx(100.0)
    assert found.place is not None
    x, y, _ = cranked.frame.to_local(found.place)
    assert x == pytest.approx(far)
    assert y == pytest.approx(34.0, abs=2.5)


def test_a_straight_taper_leaves_the_foots_grain_whole() -> None:
    """The fibres at the foot of a leg tapered on one side run on up to its top."""
    sound = plain("orchard_bench")
    leg = sound.part("leg_front_left")
    assert not of_check(sound, "foot_short_grain")
    runs = runs_of(Shape(leg.shape.blank, leg.shape.cuts[:3]))
    at_foot = ~runs.to_side & (runs.end > leg.shape.blank.length - 40.0)
    assert at_foot.any()
    assert not runs.from_side[at_foot].any()


def test_little_above_a_mortise_is_caught_and_mended() -> None:
    """Upright legs: above the aprons' tenons stays what their shoulder is high."""
    upright: dict[str, Value] = {"rake": 0.0, "splay": 0.0}
    assert not of_check(_changed("porch_bench", **upright), "short_beyond_cut")
    spoiled = _changed("porch_bench", **upright, apron_shoulder=4.5)
    (found,) = of_check(spoiled, "short_beyond_cut")
    assert found.level is Level.THINK_AGAIN
    assert set(found.parts) == {
        f"leg_{y}_{x}" for y in ("front", "back") for x in ("left", "right")
    }
    assert found.amount == pytest.approx(4.5)
    assert found.limit == 6.0
    assert found.place is not None
    top = spoiled.part("leg_front_left").frame.origin[2]
    assert found.place[2] == pytest.approx(top - 2.25)
    assert found.mend is not None
    assert dict(found.mend.values) == {"apron_shoulder": 6.0}
    assert not of_check(_changed("porch_bench", **upright, apron_shoulder=6.0), "short_beyond_cut")


def test_little_beyond_a_drawer_sides_groove_is_caught() -> None:
    """The box front is 14 mm thick and rebated 9 of them for a tongue of 5 at its inside: the
    groove in the side lies 9 mm from the end, too near for a maker who wants 9.5."""
    sound = plain("lamp_room_bench")
    assert not of_check(sound, "short_beyond_cut")
    (strict,) = [
        one
        for one in findings(replace(sound, judged_by=(("least_end_grain", 9.5),)))
        if one.check == "short_beyond_cut"
    ]
    assert strict.amount == pytest.approx(9.0, abs=0.1)
    assert all("side" in name for name in strict.parts)
