"""A storage box with a lid: sizes, limits and the stay worked by hand; the swing tried by turning.

The box: 1200 long, 360 deep, 300 high with its lid of 22, walls 20; a strip of 70 and a gap of 1.5;
the lid stands out 18 in front.  Floor of the box at 150.
"""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest
import shapely
import shapely.affinity

from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.lid_box_numbers import lid_box
from geometry.bench.lid_box_parameters import NOTCH, ON_BACK
from geometry.bench.lid_clear import closed_corners, open_corners
from geometry.bench.limits import limits, set_values
from geometry.checks.all_checks import findings
from geometry.design.finding import Level
from geometry.design.parameter import Value
from geometry.design.part import Part
from geometry.design.spec import BenchSpec
from geometry.primitives.frame import Frame, add
from geometry.solids.cutting import placed
from geometry.solids.measure import volume_of
from geometry.solids.swinging import first_strike
from shared.hinges import hinge_row
from shared.stays import stay_row

BOX: dict[str, Value] = {"seat": "box with a lid", "base_height": 150.0}
BEHIND: dict[str, Value] = {"back_rest": "rails", "base": "plinth"}


def spec_of(changes: dict[str, Value]) -> BenchSpec:
    return set_values(default_spec(), BOX | changes)


def volume(changes: dict[str, Value], name: str) -> float:
    return volume_of(build(spec_of(changes)).part(name).shape)


def test_volumes_by_hand() -> None:
    """Lid 306.5 = 378 - 71.5 deep; two mortises 50 x 14, 0.85 deep: half of 3.2 less 1.5.  The
    bottom lies 9 in rebates at each side and has 1 of room: 1160 + 18 - 1 by 320 + 18 - 1.  Screws
    go down through the strip: 6 no more than 250 apart along the 1160 between the ends, one in the
    50 on each of those, in holes of 4.766.  Two stays have a screw each in the lid, in pilots of
    2.692, 12 deep.  The solid has flattened what is round to chords 0.1 off at most: a hole 4.766
    wide to 11 or more of them, which take up to 6 % of it less."""
    screws = 8.0 * math.pi / 4.0 * 4.766**2 * 22.0
    leaves = 2.0 * 50.0 * 14.0 * 0.85
    pilots = 2.0 * math.pi / 4.0 * 2.692**2 * 12.0
    assert volume({}, "lid") == pytest.approx(1200.0 * 306.5 * 22.0 - leaves - pilots, abs=10.0)
    strip = 1200.0 * 70.0 * 22.0 - leaves - screws
    assert volume({}, "hinge_strip") == pytest.approx(strip, abs=0.06 * screws)
    assert volume({}, "box_bottom") == pytest.approx(1177.0 * 337.0 * 15.0, rel=1e-9)


def test_a_corner_in_rebate_and_groove_by_hand() -> None:
    """Front 1200 x 278 x 20, its rebate 1160 + 18 long, 15 x 9; grooves 9.2 x 9 the whole height,
    of which the rebate has the part of 15 x 9 that its stretch past the corner meets."""
    found = volume({"box_corner": "rebate and groove"}, "box_front")
    groove = 2.0 * 278.0 * 9.2 * 9.0
    rebate = 1178.0 * 15.0 * 9.0
    # 9 past the inside corner, where the groove begins 0.1 inside that corner.
    both = 2.0 * 15.0 * 9.0 * 9.1
    assert found == pytest.approx(1200.0 * 278.0 * 20.0 - groove - rebate + both, rel=1e-3)


def test_a_finger_notch_by_hand() -> None:
    """110 x 16 with two rounded corners of 16: 110 x 16 - (2 - pi / 2) x 16², through 20;
    the solid's chords stray 0.01 from the arcs."""
    plain = volume({}, "box_front")
    notched = volume({"lid_grip": NOTCH}, "box_front")
    area = 110.0 * 16.0 - (2.0 - math.pi / 2.0) * 16.0**2
    assert plain - notched == pytest.approx(area * 20.0, rel=2e-3)


def test_the_lid_lies_on_the_front_to_either_side_of_a_notch() -> None:
    """Inside the ends 20 to 1180; the notch from 545 to 655 lies under no part of the lid."""
    joints = build(spec_of({"lid_grip": NOTCH})).joints
    spans = {
        joint.name: sorted({corner[0] for corner in joint.contacts[0].corners})
        for joint in joints
        if joint.name.startswith("lid_on_box_front")
    }
    assert spans == {
        "lid_on_box_front_left": [20.0, 545.0],
        "lid_on_box_front_right": [655.0, 1180.0],
    }


@pytest.mark.parametrize(
    ("changes", "name", "end", "value", "words"),
    [
        ({}, "lid_gap", "maximum", 2.4, "let in by less than {0.4 mm}"),
        ({}, "lid_strip", "minimum", 25.0, "least for any bench"),
        ({"box_thickness": 40.0, "box_rebate": 9.0}, "lid_strip", "minimum", 40.0, "the back"),
        ({}, "box_rebate", "maximum", 16.0, "less than {4 mm}"),
        ({}, "hinge_leaf", "maximum", 20.0, "less than {2 mm}"),
        ({"lid_hung": ON_BACK}, "hinge_leaf", "maximum", 18.0, "less than {2 mm}"),
        # two hinges of 50, 20 between: (1200 - 120) / 2
        ({}, "hinge_in", "maximum", 540.0, "{20 mm} apart"),
    ],
)
def test_limits_by_hand(
    changes: dict[str, Value], name: str, end: str, value: float, words: str
) -> None:
    allowed = limits(spec_of(changes), name)
    assert getattr(allowed, end) == pytest.approx(value, abs=2e-6)
    assert words in getattr(allowed, f"why_{end}")


@pytest.mark.parametrize("hung", ["on a fixed strip", ON_BACK])
@pytest.mark.parametrize("opening", [75.0, 90.0, 95.0, 110.0])
def test_a_stay_is_taut_when_the_lid_is_open(hung: str, opening: float) -> None:
    """Turned by a matrix: the distance between its fixings is its length, and less before."""
    spec = spec_of({"lid_hung": hung, "lid_opening": opening})
    b = lid_box(spec)
    place = next(s.value for s in build(spec).derived if s.name == "stay_from_back")
    pin = np.array(b.pin_place)
    lid = np.array((pin[0] - b.stay_on_lid, b.rim))
    box = np.array((-place, b.rim - b.stay_down))
    reaches = []
    for deg in np.linspace(0.0, opening, 40):
        c, s = np.cos(np.radians(deg)), np.sin(np.radians(deg))
        there = pin + np.array(((c, s), (-s, c))) @ (lid - pin)
        reaches.append(float(np.linalg.norm(there - box)))
    assert reaches[-1] == pytest.approx(b.stay_reach, abs=1e-9)
    assert max(reaches[:-1]) < b.stay_reach


def test_a_stay_is_screwed_beside_each_end() -> None:
    """The pin 70.75 in front of the back edge: the lid's screw 110 in front of that, 180.75, is
    109.25 from the lid's back edge at 71.5, and 12 inside an end of 20.  The walls are 278 high:
    35 below the rim is 243 over the lower edge, which is an end's face edge."""
    bench = build(spec_of({}))
    back = next(size.value for size in bench.derived if size.name == "stay_from_back")
    for end in ("left", "right"):
        joint = next(one for one in bench.joints if one.name == f"stay_{end}")
        assert joint.parts == (f"box_{end}", "lid")
        sizes = {one.name: one.value for one in joint.measures}
        assert sizes["box_screw_from_end"] == pytest.approx(min(back, 360.0 - back))
        assert sizes["box_screw_from_edge"] == pytest.approx(243.0)
        assert sizes["lid_screw_from_end"] == pytest.approx(32.0)
        assert sizes["lid_screw_from_edge"] == pytest.approx(109.25)
        assert (sizes["stay_reach"], sizes["lid_opening"]) == (180.0, 95.0)


def _from_the_end(parts: tuple[Part, ...]) -> shapely.Geometry:
    """The outline of parts as they are cut, seen from the end of the bench."""
    faces = []
    for part in parts:
        solid = placed(part)
        faces += [
            shapely.Polygon(corners[:, 1:]) for corners in solid.vertices[solid.solid.triangles]
        ]
    return shapely.union_all([face for face in faces if face.area > 1e-9])


@pytest.mark.parametrize("rake", [0.0, 12.0, 20.0])
@pytest.mark.parametrize("strip", [40.0, 120.0])
def test_the_lid_opens_until_it_meets_the_rest(rake: float, strip: float) -> None:
    """Judge: shapely turns the lid a little at a time and looks for common area."""
    spec = spec_of(BEHIND | {"rest_rake": rake, "lid_strip": strip, "lid_opening": 80.0})
    bench, b = build(spec), lid_box(spec)
    behind = tuple(part for part in bench.parts if part.kind in ("post", "rest rail", "slat"))
    met = first_strike(bench.part("lid"), behind, (0.0, *b.pin_place), 180.0)
    assert met is not None
    free = met.turn_deg
    lid, rest = shapely.Polygon(closed_corners(b)), _from_the_end(behind)

    def shared(deg: float) -> float:
        turned = shapely.affinity.rotate(lid, -deg, origin=b.pin_place)
        return float(turned.intersection(rest).area)

    assert shapely.affinity.rotate(lid, -80.0, origin=b.pin_place).equals_exact(
        shapely.Polygon(open_corners(b)), 1e-9
    )
    assert 90.0 < free < 180.0
    assert all(shared(deg) < 1e-6 for deg in np.linspace(0.0, free - 1e-3, 60))
    assert shared(free + 0.05) > 1e-6


def test_a_rail_over_the_lid_is_struck() -> None:
    """The pins lie level with the lid's upper face, so that face meets the rail's lower front
    arris, 120 over them and 150 in front of them, at the angle of that from level."""
    spec = spec_of(BEHIND | {"rest_rake": 0.0})
    bench, (pin_y, pin_z) = build(spec), lid_box(spec).pin_place
    assert not [one for one in findings(bench) if one.check == "lid_blocked"]
    rail = next(part for part in bench.parts if part.kind == "rest rail")
    solid, frame = placed(rail), rail.frame
    by = (0.0, pin_y - 150.0 - float(solid.low[1]), pin_z + 120.0 - float(solid.low[2]))
    moved = Frame(add(frame.origin, by), frame.x_axis, frame.y_axis, frame.z_axis)
    parts = tuple(replace(p, frame=moved) if p.name == rail.name else p for p in bench.parts)
    (found,) = [one for one in findings(replace(bench, parts=parts)) if one.check == "lid_blocked"]
    assert found.level is Level.DO_NOT_CUT
    assert found.parts == ("lid", rail.name)
    assert found.amount == pytest.approx(math.degrees(math.atan2(120.0, 150.0)), abs=0.02)
    assert found.place is not None
    assert found.place[1:] == pytest.approx((pin_y - 150.0, pin_z + 120.0), abs=0.5)


def test_a_lid_hung_on_the_back_cannot_open_under_a_rest() -> None:
    """Posts stand against the back that the lid would turn over; on a strip it opens."""
    spec = spec_of(BEHIND | {"lid_hung": ON_BACK})
    (found,) = [one for one in findings(build(spec)) if one.check == "lid_blocked"]
    assert (found.level, found.limit) == (Level.DO_NOT_CUT, 95.0)
    assert found.amount == pytest.approx(0.0, abs=1e-6)
    assert found.message.startswith("The lid cannot be opened at all: ")
    assert found.mend is not None
    mended = build(set_values(spec, dict(found.mend.values)))
    assert not [one for one in findings(mended) if one.check == "lid_blocked"]


def test_a_lid_that_falls_and_one_without_a_grip() -> None:
    """The pins lie level with the upper face: the middle of a lid 306.5 deep is 153.25 + 0.75 in
    front of them and 11 below, which passes over them at 90 + atan(11 / 154) degrees."""
    balance = 90.0 + math.degrees(math.atan(11.0 / 154.0))
    (falls,) = [
        one for one in findings(build(spec_of({"lid_opening": 90.0}))) if one.check == "lid_falls"
    ]
    assert falls.limit == pytest.approx(balance, abs=1e-9)
    bare = spec_of({"lid_front": 5.0})
    (grip,) = [one for one in findings(build(bare)) if one.check == "lid_grip"]
    assert (grip.amount, grip.limit) == (5.0, 12.0)
    assert grip.mend is not None
    cured = findings(build(set_values(bare, dict(grip.mend.values))))
    assert not [one for one in cured if one.check in ("lid_grip", "lid_falls")]


def test_a_row_brings_its_sizes() -> None:
    hinge, stay = hinge_row("butt, 63 mm"), stay_row("folding, 250 mm")
    spec = spec_of({"hinge": hinge.name})
    assert (spec.number("hinge_length"), spec.number("hinge_closed")) == (63.0, 4.0)
    spec = spec_of({"lid_stay": stay.name})
    assert spec.number("stay_reach") == stay.reach


def test_tenoned_posts_are_refused() -> None:
    spec = spec_of(BEHIND)
    assert {part.kind for part in build(spec).parts} >= {"post", "lid", "hinge strip"}
    with pytest.raises(Exception, match="a lid holds no posts"):
        set_values(spec, {"post_fixing": "tenoned into the seat"})
