"""Spoiled benches for pieces in stopped housings, each one change to a sound sample.

The choir loft bench: partitions of 20 mm, 132 long, in housings 7 mm deep and 20.2 wide with the
cutter's 6.35 mm of round; they stop 3 mm behind the partitions' fronts.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest

from app.window.samples import sample_files
from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.limits import set_values
from geometry.checks.all_checks import CHECKS
from geometry.cuts.cut import Cut
from geometry.cuts.housing import StoppedHousing
from geometry.cuts.notch import Notch
from geometry.design.finding import Finding, Level
from geometry.design.part import Part, Shape
from tests.samples import plain

CHOIR = "choir_loft_bench"
MINE = ("partition_length", "housing_width", "notch_clears_round", "stop_covered")


def _found(bench: Bench) -> list[Finding]:
    return [one for check in CHECKS if check.name in MINE for one in check.run(bench)]


def _with(bench: Bench, name: str, changed: Callable[[Part], Part]) -> Bench:
    parts = tuple(changed(part) if part.name == name else part for part in bench.parts)
    return replace(bench, parts=parts)


def _recut(bench: Bench, name: str, changed: Callable[[Cut], Cut]) -> Bench:
    """One part with some of its cuts made otherwise."""
    return _with(
        bench,
        name,
        lambda part: replace(
            part, shape=Shape(part.shape.blank, tuple(changed(cut) for cut in part.shape.cuts))
        ),
    )


@pytest.mark.parametrize("name", [path.stem for path in sample_files()])
def test_sound_samples_raise_nothing(name: str) -> None:
    assert _found(plain(name)) == []


@pytest.mark.parametrize(
    ("more", "check", "level"),
    [
        (1.5, "piece_too_long", Level.DO_NOT_CUT),
        (-2.5, "piece_too_short", Level.THINK_AGAIN),
        (-1.5, "", None),
    ],
)
def test_a_partition_of_another_length_is_measured(
    more: float, check: str, level: Level | None
) -> None:
    """Between the floors of its housings there is what it is long when sound."""
    sound = plain(CHOIR)
    length = sound.part("partition_1").shape.blank.length
    blank = replace(sound.part("partition_1").shape.blank, length=length + more)
    spoiled = _with(
        sound,
        "partition_1",
        lambda part: replace(part, shape=Shape(blank, part.shape.cuts[:1])),
    )
    found = [one for one in _found(spoiled) if one.check.startswith("piece_")]
    if not check:
        assert found == []
        return
    (one,) = found
    assert (one.check, one.level) == (check, level)
    assert set(one.parts) == {"partition_1", "top", "bottom"}
    assert one.amount == pytest.approx(length + more)
    assert one.limit == pytest.approx(length)


def test_a_board_that_stands_aslant_is_measured_where_it_is_tightest() -> None:
    """A top that comes down 3 mm over its 360 of depth toward the back leaves the partition's back
    corner that much too little."""
    sound = plain(CHOIR)
    top = sound.part("top")
    depth = 360.0
    fall = 3.0

    def tilted(part: Part) -> Part:
        x, y, _ = part.frame.y_axis
        size = (depth**2 + fall**2) ** 0.5
        sign = -1.0 if y < 0.0 else 1.0
        # Along y of the part the top rises toward the maker, its back edge fallen.
        across = (x, sign * depth / size, -sign * fall / size)
        frame = type(part.frame).of(part.frame.origin, part.frame.x_axis, across)
        ox, oy, oz = frame.origin
        return replace(part, frame=replace(frame, origin=(ox, oy, oz - fall)))

    assert top.frame.x_axis[0] in (1.0, -1.0)
    spoiled = _with(sound, "top", tilted)
    found = [one for one in _found(spoiled) if one.check == "piece_too_long"]
    assert {one.parts[0] for one in found} == {"partition_1", "partition_2"}
    back = sound.spec.number("back_thickness")
    for one in found:
        assert one.amount is not None
        assert one.limit is not None
        assert one.amount - one.limit == pytest.approx(fall * (1.0 - back / depth), abs=0.1)


@pytest.mark.parametrize(
    ("more", "check", "level", "amount"),
    [
        (1.0, "housing_loose", Level.THINK_AGAIN, 1.2),
        (-0.7, "housing_tight", Level.DO_NOT_CUT, -0.5),
    ],
)
def test_a_housing_of_another_width_is_measured(
    more: float, check: str, level: Level, amount: float
) -> None:
    """Sound with 0.2 mm of clearance."""

    def wider(cut: Cut) -> Cut:
        return replace(cut, x_high=cut.x_high + more) if isinstance(cut, StoppedHousing) else cut

    (one,) = _found(_recut(plain(CHOIR), "bottom", wider))
    assert (one.check, one.level) == (check, level)
    assert one.parts[1] == "bottom"
    assert one.amount == pytest.approx(amount, abs=1e-6)


def test_a_fit_that_rattles_is_mended() -> None:
    spoiled = build(set_values(plain(CHOIR).spec, {"housing_fit": 0.8}))
    (one,) = _found(spoiled)
    assert (one.check, one.amount) == ("housing_loose", pytest.approx(0.8))
    assert one.mend is not None
    assert _found(build(set_values(spoiled.spec, dict(one.mend.values)))) == []


@pytest.mark.parametrize(
    ("shorter", "lower", "check", "level"),
    [
        (1.0, 0.0, "notch_short", Level.DO_NOT_CUT),
        (0.0, 1.0, "notch_low", Level.DO_NOT_CUT),
        (0.0, -1.0, "notch_high", Level.THINK_AGAIN),
        (-1.0, 0.0, "", None),
    ],
)
def test_a_notch_of_another_size_is_caught(
    shorter: float, lower: float, check: str, level: Level | None
) -> None:
    """The notch has half the fit to spare, 0.1 mm; cover and round are the least it needs."""
    sound = plain(CHOIR)
    spec = sound.spec
    reach = spec.number("housing_cover") + spec.number("cutter_diameter") / 2.0
    spare = spec.number("housing_fit") / 2.0

    def smaller(cut: Cut) -> Cut:
        if not isinstance(cut, Notch) or cut.x_low > 1.0:
            return cut
        return replace(cut, y_low=cut.y_low + shorter, x_high=cut.x_high - lower)

    found = _found(_recut(sound, "partition_1", smaller))
    if not check:
        assert found == []
        return
    (one,) = found
    assert (one.check, one.level) == (check, level)
    assert one.parts[0] == "partition_1"
    if shorter:
        assert one.amount == pytest.approx(reach + spare - shorter)
        assert one.limit == pytest.approx(reach)
    else:
        depth = spec.number("housing_depth")
        assert one.amount == pytest.approx(depth - lower)
        assert one.limit == pytest.approx(depth)


@pytest.mark.parametrize("name", ["choir_loft_bench", "weigh_house_bench", "bell_tower_bench"])
def test_a_housing_that_goes_too_far_shows(name: str) -> None:
    """Routed on to 1 mm beyond the front of what stands in it, be it lipped or not."""
    sound = plain(name)
    joint = next(
        one
        for one in sound.joints
        if one.kind == "stopped housing"
        and (name != "weigh_house_bench" or one.parts[1].startswith("shelf"))
    )
    cover = sound.spec.number("housing_cover")

    def longer(cut: Cut) -> Cut:
        return replace(cut, stop=cut.stop + cover + 1.0) if cut == joint.cuts_first[0] else cut

    found = _found(_recut(sound, joint.parts[0], longer))
    (one,) = [one for one in found if one.check == "stop_shows"]
    assert one.level is Level.DO_NOT_CUT
    assert one.parts == joint.parts[::-1]
    assert one.amount == pytest.approx(-1.0, abs=1e-6)
    assert one.message.endswith("goes {1 mm} beyond its front: the router's round shows.")


def test_a_housing_that_stops_at_the_very_front_shows_and_no_nought_is_told() -> None:
    """Of the cover, none is left."""
    sound = plain("bakehouse_bench")
    joint = next(one for one in sound.joints if one.kind == "stopped housing")
    cover = sound.spec.number("housing_cover")

    def longer(cut: Cut) -> Cut:
        return replace(cut, stop=cut.stop + cover) if cut == joint.cuts_first[0] else cut

    found = _found(_recut(sound, joint.parts[0], longer))
    (one,) = [one for one in found if one.check == "stop_shows"]
    assert one.amount == pytest.approx(0.0, abs=1e-6)
    assert one.message.endswith("stops at its front: the router's round shows.")
