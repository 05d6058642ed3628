"""Spoiled benches for what cuts leave standing, each one change to a sound sample."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest

from app.window.samples import sample_files
from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.limits import set_values
from geometry.checks.all_checks import CHECKS, findings
from geometry.cuts.contour import Face
from geometry.cuts.cut import Cut
from geometry.cuts.groove import Groove
from geometry.cuts.housing import StoppedHousing
from geometry.cuts.rebate import Rebate
from geometry.cuts.sockets import Sockets
from geometry.design.finding import Finding, Level
from geometry.design.part import Shape
from tests.samples import plain

MINE = ("thin_tenon_of_rest", "thin_pin", "thin_tongue", "thin_behind_cut")


def _found(bench: Bench) -> list[Finding]:
    checks = [check for check in CHECKS if check.name in MINE and check.applies(bench)]
    return [one for check in checks for one in check.run(bench)]


def _recut(bench: Bench, changed: Callable[[Cut], Cut]) -> Bench:
    """Every joint with some of its cuts made otherwise."""
    joints = tuple(
        replace(
            joint,
            cuts_first=tuple(changed(cut) for cut in joint.cuts_first),
            cuts_second=tuple(changed(cut) for cut in joint.cuts_second),
        )
        for joint in bench.joints
    )
    return replace(bench, joints=joints)


@pytest.mark.parametrize("name", [path.stem for path in sample_files()])
def test_sound_samples_raise_nothing(name: str) -> None:
    assert _found(plain(name)) == []


def test_a_rests_thin_tenons_are_caught_and_mended() -> None:
    spoiled = build(set_values(plain("bakehouse_bench").spec, {"rest_tenon": 5.0}))
    (one,) = [found for found in findings(spoiled) if found.check == "thin_tenon_of_rest"]
    assert (one.amount, one.limit, one.level) == (5.0, 6.0, Level.THINK_AGAIN)
    assert all("rail" in part for part in one.parts)
    assert one.mend is not None
    assert _found(build(set_values(spoiled.spec, dict(one.mend.values)))) == []


def test_a_half_pin_that_is_left_thin_is_caught() -> None:
    """The first socket begins 2 mm from the edge at its narrower side."""

    def lower(cut: Cut) -> Cut:
        if not isinstance(cut, Sockets):
            return cut
        first, *others = cut.sockets
        by = min(first.face_low, first.deep_low) - 2.0
        wider = replace(first, face_low=first.face_low - by, deep_low=first.deep_low - by)
        return replace(cut, sockets=(wider, *others))

    found = _found(_recut(plain("bakery_yard_bench"), lower))
    assert [one.check for one in found] == ["thin_pin"]
    assert found[0].amount == pytest.approx(2.0)
    assert set(found[0].parts) == {"end_left", "end_right"}
    assert found[0].place is not None
    end = plain("bakery_yard_bench").part(found[0].parts[0])
    assert end.frame.to_local(found[0].place)[1] == pytest.approx(1.0)


def test_a_thin_tongue_is_caught() -> None:
    """Box fronts and backs of 14 mm, rebated 12: tongues of 2 mm."""

    def deeper(cut: Cut) -> Cut:
        return replace(cut, depth=12.0) if isinstance(cut, Rebate) and cut.depth == 9.0 else cut

    found = _found(_recut(plain("lamp_room_bench"), deeper))
    assert {one.check for one in found} == {"thin_tongue"}
    assert all(one.amount == pytest.approx(2.0) and one.limit == 3.0 for one in found)
    assert {part.rsplit("_", 1)[1] for one in found for part in one.parts} == {"front", "back"}


@pytest.mark.parametrize(("depth", "level"), [(9.5, Level.THINK_AGAIN), (12.0, Level.DO_NOT_CUT)])
def test_a_groove_under_a_housing_leaves_little_between_them(depth: float, level: Level) -> None:
    """A bottom of 18 mm, housed 7 deep above: 11 less the groove's depth is left."""
    sound = plain("choir_loft_bench")
    bottom = sound.part("bottom")
    housing = next(cut for cut in bottom.shape.cuts if isinstance(cut, StoppedHousing))
    other = Face.REVERSE if housing.face is Face.FACE_SIDE else Face.FACE_SIDE
    groove = Groove(housing.x_low - 30.0, housing.x_high + 30.0, 100.0, 110.0, depth, other)
    grooved = replace(bottom, shape=Shape(bottom.shape.blank, (*bottom.shape.cuts, groove)))
    parts = tuple(grooved if one is bottom else one for one in sound.parts)
    (found,) = _found(replace(sound, parts=parts))
    assert (found.check, found.level) == ("thin_behind_cut", level)
    assert found.parts == ("bottom",)
    assert found.amount == pytest.approx(18.0 - housing.depth - depth)
    assert found.place is not None
    x, y, _ = bottom.frame.to_local(found.place)
    assert x == pytest.approx((housing.x_low + housing.x_high) / 2.0)
    assert y == pytest.approx(105.0)
