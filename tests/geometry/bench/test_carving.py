"""Carved fronts: the pattern, its text, the picture over several fronts, and what may be set."""

from __future__ import annotations

import random

import pytest

from geometry.bench.build import build
from geometry.bench.carving_numbers import carving_of, facets_on_front
from geometry.bench.carving_pattern import (
    Hold,
    Moved,
    Pattern,
    moved_text,
    points_of,
    read_moved,
    with_point,
)
from geometry.bench.catalogue import default_spec, parameter
from geometry.bench.drawer_numbers import drawers
from geometry.bench.limits import limits, set_values
from geometry.bench.relief_surface import spots_of, surface_of
from geometry.design.parameter import Value
from geometry.design.spec import BenchSpec
from shared.errors import MakerError, UnreadableValue
from tests.measures import piece_count, volume_under

FILLED: dict[str, Value] = {
    "partition_count": 1.0,
    "opening_1_fill": "drawers",
    "opening_2_fill": "drawers",
    "opening_1_drawers": 2.0,
}


def carved(**changes: Value) -> BenchSpec:
    spec = set_values(default_spec(), FILLED)
    return set_values(spec, {"carving": "faceted"} | changes)


def test_a_pattern_comes_from_its_seed_and_grows_without_moving() -> None:
    few, many = points_of(Pattern(7, 12, False)), points_of(Pattern(7, 40, False))
    assert many[:12] == few
    assert points_of(Pattern(8, 12, False)) != few
    assert [point.number for point in many] == list(range(1, 41))
    assert [point.hold for point in few[:4]] == [Hold.CORNER] * 4


@pytest.mark.parametrize("seed", range(1, 9))
def test_points_spread_over_the_picture(seed: int) -> None:
    """No two of forty in a picture of 900 by 300 lie nearer than a third of their even spacing."""
    spots = spots_of(Pattern(seed, 40, False), 900.0, 300.0, 6.0)
    even = (900 * 300 / 40) ** 0.5
    pairs = [(a.at, b.at) for a in spots for b in spots if a.number < b.number]
    assert min(((p[0] - q[0]) ** 2 + (p[1] - q[1]) ** 2) ** 0.5 for p, q in pairs) > even / 3


def test_a_point_is_held_to_its_corner_or_border() -> None:
    pattern = Pattern(3, 12, False)
    for point in points_of(pattern):
        moved = points_of(with_point(pattern, Moved(point.number, 0.4, 0.3, 0.2)))[point.number - 1]
        assert moved.deep == 0.2
        held_across = point.hold in (Hold.CORNER, Hold.UPRIGHT)
        held_up = point.hold in (Hold.CORNER, Hold.LEVEL)
        assert moved.across == (point.across if held_across else 0.4)
        assert moved.up == (point.up if held_up else 0.3)


def test_the_text_of_moved_points_reads_back() -> None:
    text = "7 31.25 60 40; 12 0 100 0.5"
    assert moved_text(read_moved(text)) == text
    assert moved_text(read_moved(" 12 0% 100% .5% ;\n7 31.25 60 40;")) == text
    row = parameter("carving_moved")
    assert row.read(text) == text
    told = row.tell(text)
    assert told == "7: 31.25 % across, 60 % up, 40 % deep; 12: 0 % across, 100 % up, 0.5 % deep"
    assert row.read(told) == text


@pytest.mark.parametrize(
    "text", ["7 1 2", "7 1 2 3 4", "x 1 2 3", "7 101 0 0", "7 1 1 nan", "61 1 1 1", "7.5 1 1 1",
             "7 1 1 1; 7 2 2 2", "0 1 1 1", "7 1 1 inf"]
)  # fmt: skip
def test_a_text_that_is_no_point_is_refused_with_a_pattern_to_follow(text: str) -> None:
    with pytest.raises(UnreadableValue) as refused:
        read_moved(text)
    assert "7 31.5 60 40" in refused.value.remedy


@pytest.mark.parametrize("text", ["1", "1.x", "99.1", "1.9", "first", "1.1 all"])
def test_a_text_that_is_no_front_is_refused(text: str) -> None:
    with pytest.raises(UnreadableValue):
        parameter("carved_fronts").read(text)


def test_only_a_text_as_it_is_kept_can_be_set() -> None:
    with pytest.raises(UnreadableValue):
        set_values(carved(), {"carving_moved": "7  1 2 3"})
    with pytest.raises(UnreadableValue):
        set_values(carved(), {"carved_fronts": 1.0})


def test_one_picture_runs_over_all_fronts() -> None:
    """Where two fronts meet across their gap, the facets at both sides are the same ones."""
    spec = carved(carving_points=30.0)
    carving = carving_of(spec)
    assert carving is not None
    surface = carving.surface
    inside = [face for face in surface.faces if len(face) == 3]
    assert volume_under(surface) > 0
    areas = 0.0
    for face in inside:
        (ax, ay, _), (bx, by, _), (cx, cy, _) = surface.corners(face)
        areas += ((bx - ax) * (cy - ay) - (cx - ax) * (by - ay)) / 2
    assert areas == pytest.approx(carving.picture.width * carving.picture.height)
    upper, lower = drawers(spec)[:2]
    above, below = facets_on_front(spec, upper), facets_on_front(spec, lower)
    assert above is not None
    assert below is not None
    gap = upper.z_low - lower.z_high
    for x, y, deep in above.points:
        if abs(y - max(p[1] for p in above.points)) < 1e-6:
            # the same plane carried on over the gap comes near the depth at the other edge
            near = min(below.points, key=lambda p: abs(p[0] - x) + abs(p[1]))
            assert abs(near[2] - deep) < carving.depth
    assert gap == pytest.approx(2.0)


def test_chosen_fronts_alone_are_carved() -> None:
    spec = carved(carved_fronts="1.2")
    reliefs = {
        part.name: [cut.title for cut in part.shape.cuts].count("faceted relief")
        for part in build(spec).parts
        if part.kind == "drawer front"
    }
    assert reliefs == {"drawer_1_1_front": 0, "drawer_1_2_front": 1, "drawer_2_1_front": 0}
    carving = carving_of(spec)
    assert carving is not None
    assert carving.picture.height == pytest.approx(127.0)


@pytest.mark.parametrize("seed", range(1, 7))
def test_a_mirrored_pattern_is_its_own_image(seed: int) -> None:
    surface = surface_of(Pattern(seed, 20, True), 700.0, 250.0, 6.0)
    mirrored = {(round(700.0 - x, 6), round(y, 6), z) for x, y, z in surface.points}
    assert mirrored == {(round(x, 6), round(y, 6), z) for x, y, z in surface.points}
    place = {(round(x, 6), round(y, 6)): k for k, (x, y, _) in enumerate(surface.points)}
    image = [place[(round(700.0 - x, 6), round(y, 6))] for x, y, _ in surface.points]
    faces = {frozenset(face) for face in surface.faces}
    assert {frozenset(image[k] for k in face) for face in surface.faces} == faces


def test_the_front_bounds_depth_and_groove_together() -> None:
    """18 thick, 1 left: 17 for the carving alone; with a groove of 6.35 only 10.65."""
    assert limits(carved(), "carving_depth").maximum == pytest.approx(17.0)
    assert limits(carved(finger_groove="top edge"), "carving_depth").maximum == pytest.approx(10.65)


def test_points_that_fall_together_are_one() -> None:
    pattern = Pattern(3, 12, False)
    at = points_of(pattern)[5]
    assert at.hold is Hold.FREE
    spots = spots_of(with_point(pattern, Moved(7, at.across, at.up, 0.1)), 600.0, 200.0, 6.0)
    assert len(spots) == 11


@pytest.mark.parametrize("seed", range(10))
def test_any_points_moved_anywhere_leave_a_sound_front(seed: int) -> None:
    from geometry.solids.measure import volume_of
    from tests.carved_texts import random_text

    dice = random.Random(seed)
    spec = carved(
        carving_seed=float(dice.randint(1, 9999)),
        carving_points=float(dice.randint(5, 60)),
        carving_mirror=dice.choice(("mirrored", "scattered")),
        carving_depth=17.0,
        carving_moved=random_text("carving_moved", dice),
        drawer_allowance=dice.choice((0.0, 3.2, 15.0)),
    )
    bench = build(spec)
    for drawer in drawers(spec):
        shape = bench.part(f"{drawer.name}_front").shape
        facets = facets_on_front(spec, drawer)
        assert facets is not None
        whole = drawer.front_width * drawer.front_height * 18.0
        assert volume_of(shape) == pytest.approx(whole - volume_under(facets), rel=1e-9)
        assert piece_count(shape) == 1


def test_turning_the_carving_off_keeps_its_numbers() -> None:
    spec = carved(carving_moved="7 31.25 60 40", carving_seed=12.0)
    plain = set_values(spec, {"carving": "plain"})
    assert carving_of(plain) is None
    assert set_values(plain, {"carving": "faceted"}) == spec


def test_what_cannot_be_built_says_so() -> None:
    with pytest.raises(MakerError, match="come through the front"):
        set_values(carved(), {"carving_depth": 17.5})
