"""Glue-ups that take too long and joints that no clamp can press, on sound samples spoiled."""

from __future__ import annotations

import math
from dataclasses import replace
from pathlib import Path

import pytest
import trimesh

from exporters.project_file import load
from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.limits import set_values
from geometry.checks.all_checks import slow_findings
from geometry.design.finding import Finding, Level
from geometry.solids.cutting import placed

SAMPLES = Path(__file__).parents[3] / "sample_projects"


def _bench(sample: str, limits: dict[str, float] | None = None, **changes: float) -> Bench:
    spec = load(SAMPLES / f"{sample}.settle").spec
    bench = build(set_values(spec, changes)) if changes else build(spec)
    return replace(bench, judged_by=tuple((limits or {}).items()))


def _found(bench: Bench, check: str) -> list[Finding]:
    return [one for one in slow_findings(bench) if one.check == check]


def test_too_many_slats_for_one_rail_are_counted() -> None:
    """21 narrow slats: the top rail closes 21 tenons at once, half a minute each."""
    assert _found(_bench("lock_keepers_bench"), "too_many_at_once") == []
    spoiled = _bench("lock_keepers_bench", slat_width=20.0, slat_count=21.0)
    (found,) = _found(spoiled, "too_many_at_once")
    assert found.level is Level.THINK_AGAIN
    assert (found.amount, found.limit, found.unit) == (10.5, 10.0, "min")
    assert set(found.parts) == {"top_rail", *(f"slat_{k}" for k in range(1, 22))}
    assert "21 glued joints close at once when Top rail goes on" in found.message
    # The foot of each slat in the lower rail, and two rails in two posts.
    assert "The other 25 joints can be glued by themselves." in found.message
    assert found.place is not None
    rail = placed(spoiled.part("top_rail"))
    assert all(
        a - 1.0 < x < b + 1.0 for a, x, b in zip(rail.low, found.place, rail.high, strict=True)
    )
    fewer = _bench("lock_keepers_bench", slat_width=20.0, slat_count=20.0)
    assert _found(fewer, "too_many_at_once") == []


def test_a_slower_glue_lets_them_be() -> None:
    spoiled = {"slat_width": 20.0, "slat_count": 21.0}
    assert (
        _found(_bench("lock_keepers_bench", {"open_time": 11.0}, **spoiled), "too_many_at_once")
        == []
    )
    quick = _bench("lock_keepers_bench", {"minutes_a_joint": 0.4}, **spoiled)
    assert _found(quick, "too_many_at_once") == []


def test_a_case_of_many_partitions_is_glued_in_two_goes() -> None:
    """12 partitions: 24 housings and 4 mitres, 14 minutes; each half of them 7."""
    assert _found(_bench("cloakroom_bench"), "glued_in_goes") == []
    (found,) = _found(_bench("cloakroom_bench", partition_count=12.0), "glued_in_goes")
    assert found.level is Level.GOOD_TO_KNOW
    assert (found.amount, found.limit) == (14.0, 10.0)
    assert "Glue up the body in 2 goes: its 28 glued joints" in found.message
    assert found.message.count("(14 joints)") == 2


def test_dovetailed_corners_take_longer() -> None:
    """The last side of the lid's box closes two of its four corners: twice two minutes."""
    found = _found(_bench("lock_keepers_bench", {"open_time": 3.9}), "too_many_at_once")
    boxes = [one for one in found if any(name.startswith("box_") for name in one.parts)]
    assert [one.amount for one in boxes] == [4.0]
    found = _found(_bench("lock_keepers_bench", {"open_time": 4.0}), "too_many_at_once")
    assert not any(name.startswith("box_") for one in found for name in one.parts)


@pytest.mark.parametrize("rake", [8.0, 12.0])
def test_raked_legs_want_cauls_of_their_rake(rake: float) -> None:
    """Between two legs that lean apart a clamp lies level: each face leans from it by the rake."""
    (found,) = _found(_bench("porch_bench", splay=0.0, rake=rake), "caul_wanted")
    assert found.level is Level.GOOD_TO_KNOW
    assert found.amount == pytest.approx(rake)
    assert (found.limit, found.unit) == (5.0, "deg")
    assert {name for name in found.parts if "apron" in name} == {"apron_left", "apron_right"}
    assert f"a wedge of {{{rake:g} deg}}" in found.message


def test_legs_that_hardly_lean_want_none() -> None:
    assert slow_findings(_bench("porch_bench", splay=0.0, rake=4.9)) == ()


def test_legs_that_lean_too_far_for_a_caul_are_told_of() -> None:
    """Splayed by 15 degrees, where no steeper caul than 10 is to be sawn."""
    sound = {"splay": 0.0, "rake": 0.0}
    limits = {"steepest_caul": 10.0}
    assert _found(_bench("map_room_bench", limits, **sound), "no_clamp") == []
    spoiled = _bench("map_room_bench", limits, splay=15.0, rake=0.0)
    (found,) = _found(spoiled, "no_clamp")
    assert found.level is Level.THINK_AGAIN
    assert found.amount == pytest.approx(15.0)
    assert (found.limit, found.unit) == (10.0, "deg")
    assert {name for name in found.parts if "apron" in name} == {"apron_front", "apron_back"}
    # Another library's mesh says the same of the face that the clamp would press.
    solid = placed(spoiled.part("leg_front_left"))
    mesh = trimesh.Trimesh(solid.vertices, solid.solid.triangles, process=False)
    assert found.place is not None
    outside = (found.place[0] - 500.0, *found.place[1:])
    _, _, faces = mesh.ray.intersects_location([outside], [(1.0, 0.0, 0.0)])
    leans = [math.degrees(math.acos(min(1.0, abs(mesh.face_normals[k][0])))) for k in faces]
    assert leans[0] == pytest.approx(15.0, abs=0.05)


def test_a_frame_that_is_longer_than_any_clamp_is_measured() -> None:
    """Upright legs, 70 in from either end of 2700: their outsides are 2560 apart."""
    assert _found(_bench("weigh_house_bench", splay=0.0), "clamp_too_short") == []
    (found,) = _found(_bench("weigh_house_bench", splay=0.0, length=2700.0), "clamp_too_short")
    assert found.level is Level.THINK_AGAIN
    assert found.amount == pytest.approx(2560.0)
    assert found.limit == 2500.0
    assert {name for name in found.parts if "apron" in name} == {"apron_front", "apron_back"}
    longer = _bench("weigh_house_bench", {"longest_clamp": 2600.0}, splay=0.0, length=2700.0)
    assert _found(longer, "clamp_too_short") == []


def test_a_mitre_is_pressed_by_two_clamps_or_by_blocks() -> None:
    """Too long for a clamp from end to end, its corners want blocks of half a right angle."""
    assert slow_findings(_bench("cloakroom_bench")) == ()
    body, plinth = slow_findings(_bench("cloakroom_bench", {"longest_clamp": 1600.0}))
    for found in (body, plinth):
        assert (found.check, found.level) == ("caul_wanted", Level.GOOD_TO_KNOW)
        assert found.amount == pytest.approx(45.0)
    assert set(body.parts) == {"top", "bottom", "end_panel_left", "end_panel_right"}


def test_wedges_and_screws_need_no_clamp() -> None:
    """A stool's round tenons are spread by their wedges."""
    assert slow_findings(_bench("apiary_bench", {"steepest_caul": 5.0})) == ()


def test_posts_that_are_wedged_in_the_seat_need_no_clamp_there() -> None:
    """Plain, their leaning shoulders want cauls; the rails between them want theirs still."""
    plain = _bench("bowling_green_bench")
    wedged = build(set_values(plain.spec, {"post_tenon_kind": "wedged"}))
    post, seat = plain.part("post_3"), plain.part("seat")
    told = [one.message for one in _found(plain, "caul_wanted")]
    assert any(f"“{post.title}” to “{seat.title}”" in message for message in told)
    after = [one.message for one in _found(wedged, "caul_wanted")]
    assert not any(f" to {seat.title}" in message for message in after)
    assert len(after) == len(told) - 1


def test_a_rest_is_clamped_bay_by_bay_where_it_is_longer_than_the_clamp() -> None:
    """Three posts 64 wide over 1240: a bay from outside to outside is 652."""
    sound = _bench("bakehouse_bench")
    posts = [placed(sound.part(f"post_{k}")) for k in (1, 2)]
    bay = float(posts[1].high[0] - posts[0].low[0])
    for longest, short in ((bay + 1.0, False), (bay - 1.0, True)):
        found = _found(_bench("bakehouse_bench", {"longest_clamp": longest}), "clamp_too_short")
        rests = [one for one in found if "rest_rail_1_bay_1" in one.parts]
        assert bool(rests) is short
        assert all(one.amount == pytest.approx(bay) for one in rests)


def test_a_hair_of_splay_does_not_turn_the_clamp_out_of_a_long_rail() -> None:
    """Shoulders 1.4 degrees off square: over 3 m a line square to them would leave the rail."""
    bench = _bench("lock_keepers_bench", {"longest_clamp": 4000.0}, length=3000.0, post_splay=1.4)
    assert [one for one in slow_findings(bench) if one.level is not Level.GOOD_TO_KNOW] == []
