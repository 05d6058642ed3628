"""Spoiled benches for cuts that open, or come near, the mortises and bores of any joint.

Each is one change to a sound sample; the amounts are worked by hand beside each.
"""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.limits import set_values
from geometry.checks.all_checks import findings
from geometry.cuts.contour import Face
from geometry.cuts.cut import Cut
from geometry.cuts.end_bore import EndBore
from geometry.cuts.groove import Groove
from geometry.cuts.mortise import Mortise
from geometry.cuts.relief import Relief
from geometry.cuts.saw import SawCut
from geometry.design.finding import Finding, Level
from geometry.design.parameter import Value
from geometry.design.part import Shape
from geometry.primitives.facets import Facets
from tests.samples import plain


def _changed(name: str, **values: Value) -> Bench:
    return plain(name, values)


def _with_cut(bench: Bench, part_name: str, cut: Cut) -> Bench:
    """One more cut in one part."""
    parts = tuple(
        replace(part, shape=Shape(part.shape.blank, (*part.shape.cuts, cut)))
        if part.name == part_name
        else part
        for part in bench.parts
    )
    return replace(bench, parts=parts)


def _found(bench: Bench, *checks: str) -> list[Finding]:
    return [one for one in findings(bench) if one.check in checks]


def test_the_two_mortises_of_a_leg_come_near_each_other() -> None:
    """Upright legs of 46 mm; the inner cheeks of the mortises lie reveal, half of apron and tenon
    and half the fit in, the floors 1 mm deeper than the tenons are long.  Both ways the rest is
    between a floor and the other's cheek, and √2 of that from corner to corner."""
    upright: dict[str, Value] = {"rake": 0.0, "splay": 0.0}
    assert not _found(_changed("choir_loft_bench", **upright), "joint_mortise_near")
    length = 24.5
    spoiled = _changed("choir_loft_bench", **upright, apron_tenon_length=length)
    near = _found(spoiled, "joint_mortise_near")
    assert {one.parts for one in near} == {
        (f"leg_{y}_{x}",) for x in ("left", "right") for y in ("front", "back")
    }
    a = spoiled.spec
    inner = a.number("apron_reveal") + (a.number("apron_thickness") + a.number("apron_tenon")) / 2.0
    room = a.number("leg_size") - inner - a.number("apron_fit") / 2.0 - length - 1.0
    for one in near:
        assert one.level is Level.THINK_AGAIN
        assert one.amount == pytest.approx(room * math.sqrt(2.0), abs=1e-3)
        assert one.mend is not None
    mend = near[0].mend
    assert mend is not None
    assert not _found(build(set_values(a, dict(mend.values))), "joint_mortise_near")


def _mortise_near_its_faces() -> tuple[Mortise, float]:
    """A leg's mortise, and how much wood lies between it and the face side."""
    leg = plain("porch_bench").part("leg_front_right")
    found = []
    for cut in leg.shape.cuts:
        if isinstance(cut, Mortise):
            found.append((min(z for _, _, z in (*cut.mouth, *cut.floor)), cut))
    room, cut = max(found, key=lambda one: (one[0] > 1.0, -one[0]))
    return cut, room


def test_a_groove_in_the_face_over_a_mortise_is_measured() -> None:
    """A groove 9 mm deep over it leaves the wall less 9 mm."""
    cut, room = _mortise_near_its_faces()
    xs = [x for x, _, _ in cut.floor]
    groove = Groove(min(xs) - 5.0, max(xs) + 5.0, 5.0, 40.0, 9.0)
    sound = plain("porch_bench")
    (found,) = _found(_with_cut(sound, "leg_front_right", groove), "joint_mortise_near")
    assert found.amount == pytest.approx(room - 9.0, abs=1e-3)
    assert "groove" in found.message
    leg = sound.part("leg_front_right")
    assert found.place is not None
    at = leg.frame.to_local(found.place)
    assert at[2] == pytest.approx(9.0 + (room - 9.0) / 2.0, abs=0.3)
    assert min(xs) - 1.0 <= at[0] <= max(xs) + 1.0


def test_a_carving_over_a_mortise_is_measured_and_a_deeper_one_opens_it() -> None:
    _, room = _mortise_near_its_faces()
    sound = plain("porch_bench")
    blank = sound.part("leg_front_right").shape.blank

    def carved(depth: float) -> list[Finding]:
        corners = (
            (-5.0, -5.0),
            (blank.length + 5.0, -5.0),
            (blank.length + 5.0, 60.0),
            (-5.0, 60.0),
        )
        flat = Facets(tuple((x, y, depth) for x, y in corners), ((0, 1, 2, 3),))
        spoiled = _with_cut(sound, "leg_front_right", Relief(flat))
        return _found(spoiled, "joint_mortise_near", "joint_mortise_opened")

    assert carved(room - 3.5) == []
    (near,) = carved(room - 2.0)
    assert near.amount == pytest.approx(2.0, abs=1e-3)
    assert "relief" in near.message
    (opened,) = carved(room + 1.0)
    assert (opened.check, opened.level) == ("joint_mortise_opened", Level.DO_NOT_CUT)
    assert opened.amount == 0.0


def test_a_taper_that_begins_too_high_cuts_into_a_bore() -> None:
    """The insert of a levelling foot stands in the middle of a leg 48 mm square."""
    sound = plain("weigh_house_bench")
    leg = sound.part("leg_front_right")
    (bore,) = (cut for cut in leg.shape.cuts if isinstance(cut, EndBore))
    y, r = bore.middle[1], bore.diameter / 2.0
    for left, check in ((2.0, "insert_near"), (-1.0, "insert_opened")):
        taper = SawCut("taper", (0.0, y - r - left - 1.0, 0.0), (0.0, -1.0, 0.0))
        lean = bore.into[1]
        found = _found(_with_cut(sound, "leg_front_right", taper), "insert_near", "insert_opened")
        nearest = left + 1.0 + min(0.0, lean * bore.depth)
        if nearest < 3.0:
            assert [one.check for one in found] == [check if nearest > 0.0 else "insert_opened"]
            assert found[0].amount == pytest.approx(max(0.0, nearest), abs=0.1)
            assert "taper" in found[0].message


def test_a_stub_tenon_that_leaves_little_behind_it_is_caught_and_mended() -> None:
    """Ends of 30 mm, tenons 24 long and 1 of room for glue: 5 mm stay behind them."""
    assert not _found(plain("bakery_yard_bench"), "thin_mortise_wall")
    spoiled = _changed("bakery_yard_bench", seat_rail_in=24.0)
    found = _found(spoiled, "thin_mortise_wall")
    assert [one.parts for one in found] == [("end_left",), ("end_right",)]
    for one in found:
        assert one.amount == pytest.approx(5.0)
        assert one.limit == 6.0
        assert one.mend is not None
        assert dict(one.mend.values) == {"seat_rail_in": pytest.approx(23.0)}
    assert not _found(_changed("bakery_yard_bench", seat_rail_in=23.0), "thin_mortise_wall")


def test_a_mortise_that_comes_out_at_the_back_is_not_to_be_cut() -> None:
    sound = plain("bakery_yard_bench")
    end = sound.part("end_left")
    (cut,) = (cut for cut in end.shape.cuts if isinstance(cut, Mortise))
    deeper = replace(cut, floor=tuple((x, y, z * 31.0 / cut.depth) for x, y, z in cut.floor))
    shape = Shape(end.shape.blank, tuple(deeper if one == cut else one for one in end.shape.cuts))
    parts = tuple(replace(end, shape=shape) if one is end else one for one in sound.parts)
    joints = tuple(
        replace(joint, cuts_second=(deeper,))
        if cut in joint.cuts_second and "left" in joint.name
        else joint
        for joint in sound.joints
    )
    found = _found(replace(sound, parts=parts, joints=joints), "mortise_comes_through")
    assert [(one.parts, one.level) for one in found] == [(("end_left",), Level.DO_NOT_CUT)]


@pytest.mark.parametrize("face", list(Face))
def test_a_hole_for_a_runners_pin_is_told_of_only_where_it_is_opened(face: Face) -> None:
    sound = plain("boat_club_bench")
    back = sound.part("drawer_1_1_back")
    across = Groove(0.0, back.shape.blank.length, 6.0, 12.0, 11.0, face)
    found = _found(_with_cut(sound, back.name, across), "runner_hole_near", "runner_hole_opened")
    assert all(one.check == "runner_hole_opened" for one in found)
