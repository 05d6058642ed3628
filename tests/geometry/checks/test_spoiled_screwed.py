"""Screws that nothing is cut for: benches without a place for them, the amounts worked by hand.

The sound bench is that of ``test_spoiled_drawers``: fronts 18 thick, screwed on from inside.  A
screw holds in 8 mm at least, with 1 mm over its point and beside it.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.checks.all_checks import findings, judged
from geometry.cuts.contour import Face
from geometry.cuts.cut import Cut
from geometry.cuts.groove import Groove
from geometry.design.finding import Finding, Level
from geometry.design.judging import Judging
from geometry.design.parameter import Value
from geometry.design.part import Shape

PLACES: dict[str, Value] = {"partition_count": 2.0, "partition_1": 400.0, "partition_2": 800.0}
FILLED: dict[str, Value] = {
    "opening_1_fill": "drawers",
    "opening_3_fill": "drawers",
    "opening_1_drawers": 2.0,
}
SOUND = set_values(set_values(default_spec(), PLACES), FILLED)
FRONT = "drawer_3_1_front"


def found(bench: Bench, judging: Judging | None = None) -> list[Finding]:
    told = judged(bench, judging) if judging else findings(bench)
    return [one for one in told if one.check == "screw_finds_no_place"]


def with_cut(name: str, cut: Cut) -> Bench:
    """The sound bench with one more cut in one part."""
    bench = build(SOUND)
    parts = tuple(
        replace(part, shape=Shape(part.shape.blank, (*part.shape.cuts, cut)))
        if part.name == name
        else part
        for part in bench.parts
    )
    return replace(bench, parts=parts)


def across_all(deep: float, x_low: float, x_high: float) -> Cut:
    """A wide flat hollow in the outside of a front, right across its height."""
    width = build(SOUND).part(FRONT).shape.blank.width
    return Groove(x_low, x_high, 0.0, width, deep, Face.FACE_SIDE)


def test_sound_drawers_have_a_place_for_each() -> None:
    assert found(build(SOUND)) == []


def test_thin_fronts_are_caught_and_mended() -> None:
    """Fronts 8.6 thick leave 8.6 - 8 = 0.6 over the points; 8 + 1 are enough."""
    spec = set_values(SOUND, {"drawer_front_thickness": 8.6})
    (one,) = found(build(spec))
    assert one.level is Level.THINK_AGAIN
    assert one.amount == pytest.approx(0.6, abs=1e-6)
    assert one.limit == 1.0
    assert {FRONT, "drawer_1_1_front", "drawer_1_2_front"} < set(one.parts)
    assert one.mend is not None
    assert dict(one.mend.values) == {"drawer_front_thickness": 9.0}
    assert not found(build(set_values(spec, dict(one.mend.values))))
    assert not found(build(spec), Judging().with_limit("least_thread", 7.0))


def test_a_hollow_behind_a_whole_half_is_caught() -> None:
    """5.7 deep in 18, over the right half of the front, which is bored 12 deep for its screws:
    18 - 5.7 - 12 = 0.3 are left."""
    blank = build(SOUND).part(FRONT).shape.blank
    bench = with_cut(FRONT, across_all(5.7, blank.length / 2.0, blank.length))
    (one,) = found(bench)
    assert one.amount == pytest.approx(0.3, abs=1e-6)
    assert one.parts == ("drawer_3_1_box_front", FRONT)
    assert "groove" in one.message
    assert one.place is not None
    # The part's left end is at the bench's left or right: the half is that of the hollow.
    x, _, _ = bench.part(FRONT).frame.to_local(one.place)
    assert x > blank.length / 2.0


def test_a_hollow_between_the_screws_is_nothing_to_them() -> None:
    """A front 312.35 long with its allowance: screws 40 in from the box's sides, which are 12 thick
    and 13.875 in: at 65.875 from either end, 0.21 of the length."""
    front = build(SOUND).part(FRONT)
    long = front.shape.blank.length
    assert found(with_cut(FRONT, across_all(5.7, long * 0.25, long * 0.75))) == []
    (one,) = found(with_cut(FRONT, across_all(5.7, long * 0.2, long * 0.8)))
    assert one.amount == pytest.approx(0.3, abs=1e-6)
    assert one.message.startswith("Where “")
    assert one.place is not None
    x, _, _ = front.frame.to_local(one.place)
    assert min(x, long - x) == pytest.approx(65.875)
