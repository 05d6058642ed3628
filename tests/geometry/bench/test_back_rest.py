"""A back rest's limits and reasons, worked by hand, and what happens to it on other seats."""

from __future__ import annotations

import math

import pytest

from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import limits, set_values
from geometry.bench.members import has
from geometry.bench.rest_parameters import BEHIND, TENONED
from geometry.bench.seat_back import seat_back
from geometry.design.parameter import Value
from geometry.design.spec import BenchSpec
from shared.errors import ValueOutOfRange

RAILS: dict[str, Value] = {"back_rest": "rails"}
SLATS: dict[str, Value] = {"back_rest": "slats"}
SLAB: dict[str, Value] = {
    "seat": "slab",
    "seat_thickness": 45.0,
    "back_rest": "rails",
    "post_fixing": TENONED,
}


def spec_of(changes: dict[str, Value]) -> BenchSpec:
    return set_values(default_spec(), changes)


LIMITS: tuple[tuple[dict[str, Value], str, str, float, str], ...] = (
    # two rails of 55, 12 and 80 above, 15 between each two: the lean's 429.38 less all that, and
    # the lowest's front arris 4 sin 12 lower than the plane of the posts
    (
        RAILS,
        "rest_gap",
        "maximum",
        420.0
        - (12.0 + 80.0 + 2 * 55.0 + 2 * 15.0) * math.cos(math.radians(12))
        - 4.0 * math.sin(math.radians(12)),
        "too little room between the rails",
    ),
    (RAILS, "rest_gap", "minimum", 22.0 * math.sin(math.radians(12)), "run into the seat"),
    # 45 of post, 1 of glue room, 5 of wood
    (RAILS, "rest_tenon_length", "maximum", 39.0, "between or beyond them"),
    # three posts: two tenons, each with its millimetre
    (RAILS | {"post_count": 3.0, "rest_tenon_length": 15.0}, "post_width", "minimum", 37.0, "5 mm"),
    # nine slats and ten spaces of 6 in 930
    (SLATS, "slat_width", "maximum", (930.0 - 60.0) / 9.0, "6 mm} apart"),
    # 22 of rail, 0.2 of fit, 3 before and behind
    (SLATS, "slat_thickness", "maximum", 15.8, "in front of and behind them"),
    # the case's back is not let in at all
    (RAILS, "post_let_in", "maximum", 0.0, "closes the back"),
    # the seat is 360 deep
    (SLAB, "rest_in", "maximum", 210.0, "150 mm} of the seat"),
    # the posts' 35 are 35 / cos 12 on the level
    (
        SLAB | {"post_tenon": 6.0, "rest_tenon": 6.0},
        "rest_in",
        "minimum",
        35.0 / math.cos(math.radians(12)),
        "stand out behind",
    ),
    # 33 of tenon, 6 of shoulder: the mortise 12 from the end
    (SLAB, "post_in_left", "minimum", 6.0, "12 mm} of the seat's end"),
    (SLAB | {"post_tenon_kind": "blind"}, "post_tenon_depth", "maximum", 41.0, "3 mm} of the seat"),
    # a third of the tenon's 45 - 2 x 6 = 33, shared by two wedges
    (SLAB | {"post_tenon_kind": "wedged"}, "post_wedge", "maximum", 5.5, "third of the posts'"),
    # slots of three quarters of the tenon, along the lean; four times the wedge's 4
    (
        SLAB | {"post_tenon_kind": "wedged"},
        "seat_thickness",
        "minimum",
        16.0 / 0.75 * math.cos(math.radians(12)),
        "four times as long as thick",
    ),
)


@pytest.mark.parametrize(("changes", "name", "end", "value", "words"), LIMITS)
def test_limits_by_hand(
    changes: dict[str, Value], name: str, end: str, value: float, words: str
) -> None:
    allowed = limits(spec_of(changes), name)
    assert getattr(allowed, end) == pytest.approx(value, abs=2e-6)
    assert words in getattr(allowed, f"why_{end}")


def test_a_mortise_keeps_off_a_partitions_housing() -> None:
    """The partition fills 1120 to 1140 and 0.1 of fit at either side; tenons of 33, 6 in from the
    post's side; 3 between: so the right post's outside is 1200 - (1119.9 - 3 + 6) = 77.1 in."""
    spec = spec_of({"back_rest": "rails", "post_fixing": TENONED})
    allowed = limits(spec, "post_in_right")
    assert allowed.minimum == pytest.approx(77.1, abs=2e-6)
    assert "partition's housing" in allowed.why_minimum
    with pytest.raises(ValueOutOfRange):
        set_values(spec, {"post_in_right": 60.0})


def test_a_post_beyond_the_partition_is_limited_from_the_other_side() -> None:
    """Partition 100 in from the right: 1080 to 1100; a post wholly outside it is sound too."""
    spec = spec_of(
        {
            "right_inset": 120.0,
            "back_rest": "rails",
            "post_fixing": TENONED,
            "post_in_right": 20.0,
        }
    )
    # Tenon from 1200 - 20 - 45 + 6 = 1141; it may come to 1080.1 + 3, as the partition's right
    # face is at 1080.
    assert limits(spec, "post_in_right").maximum == pytest.approx(77.9, abs=2e-6)


def test_posts_are_let_in_as_deep_as_the_back_is() -> None:
    spec = spec_of(RAILS | {"back_let_in": 12.0, "post_in_right": 100.0})
    assert limits(spec, "post_let_in").maximum == 12.0
    bench = build(set_values(spec, {"post_let_in": 12.0}))
    assert {joint.kind for joint in bench.joints if "post_1" in joint.parts} == {
        "let in",
        "rail tenon",
    }


@pytest.mark.parametrize(
    ("seat", "kind"), [("slab", "seat"), ("panel bench", "seat"), ("box with a lid", "lid")]
)
def test_another_seat_keeps_the_rest(seat: str, kind: str) -> None:
    spec = spec_of(RAILS | {"rest_height": 390.0, "rest_rake": 9.0})
    other = set_values(spec, {"seat": seat})
    assert has(other, "back rest")
    for name in ("rest_height", "rest_rake", "post_width", "post_fixing"):
        assert other.value(name) == spec.value(name)
    assert {part.kind for part in build(other).parts} >= {"post", "rest rail", kind}


def test_wedges_come_in_as_thick_as_seat_and_tenon_allow() -> None:
    """Tenons of 45 - 2 x 16 = 13 take two wedges of 2.17 at the most; a seat of 15, which has slots
    of 11.25, wedges of 2.81.  Nothing else of the rest moves."""
    narrow = spec_of(SLAB | {"post_shoulder": 16.0})
    wedged = set_values(narrow, {"post_tenon_kind": "wedged"})
    assert wedged.number("post_wedge") == 2.0
    assert wedged.changed({"post_tenon_kind": "through", "post_wedge": 4.0}) == narrow
    thin = spec_of({**SLAB, "seat_thickness": 15.0, "rest_rake": 0.0})
    wedged = set_values(thin, {"post_tenon_kind": "wedged"})
    assert wedged.number("post_wedge") == 2.5  # the thickest in halves of a mm
    assert wedged.changed({"post_tenon_kind": "through", "post_wedge": 4.0}) == thin


def test_a_rest_that_is_taken_off_comes_back_as_it_was() -> None:
    spec = spec_of(SLATS | {"slat_count": 7.0, "rest_height": 444.0})
    bare = set_values(spec, {"back_rest": "none"})
    assert not {"post", "slat", "rest rail"} & {part.kind for part in build(bare).parts}
    assert set_values(bare, {"back_rest": "slats"}) == spec


@pytest.mark.parametrize("rake", [0.0, 1e-12, 1e-9, 1e-7, 1e-5, 1e-3])
@pytest.mark.parametrize("fixing", [BEHIND, TENONED])
def test_hardly_any_rake_is_an_upright_rest(rake: float, fixing: str) -> None:
    bench = build(spec_of(RAILS | {"post_fixing": fixing, "rest_rake": rake}))
    upright = build(spec_of(RAILS | {"post_fixing": fixing, "rest_rake": 0.0}))
    for part, twin in zip(bench.parts, upright.parts, strict=True):
        ours, other = part.shape.blank, twin.shape.blank
        assert ours.length == pytest.approx(other.length, abs=0.02), part.name
        assert ours.width == pytest.approx(other.width, abs=0.02), part.name


def test_what_round_tenons_take_of_a_seat() -> None:
    """Upright legs, their axes 70 and 40 mm in: bores of 25.2 mm, 12.6 to every side; 15 degrees
    aslant along the bench the axis runs on by 40 tan 15 to the upper face and the bore is wider."""
    spec = set_values(default_spec(), {"flare": 0.0, "seat": "slab", "base": "four legs"})
    spec = set_values(spec, {"leg_joint": "round tenons", "rake": 0.0, "inset_right": 70.0})
    upright = seat_back(set_values(spec, {"splay": 0.0})).under[0]
    assert upright == (pytest.approx((57.4, 82.6)), pytest.approx((-52.6, -27.4)))
    (low, high), _ = seat_back(set_values(spec, {"splay": 15.0})).under[0]
    half, run = 12.6 / math.cos(math.radians(15.0)), 40.0 * math.tan(math.radians(15.0))
    assert (low, high) == pytest.approx((70.0 - half, 70.0 + run + half))
