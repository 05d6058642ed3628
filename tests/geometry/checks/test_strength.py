"""Estimates of seats and shelves on spoiled benches; amounts by hand beside each."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest

from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.checks.all_checks import judged
from geometry.checks.offers import bench_with
from geometry.design.brief import Brief
from geometry.design.finding import Level
from geometry.design.judging import AS_FOUND
from geometry.design.parameter import Value
from shared.units import SHOWN_MM, in_units
from tests.judges.frame import Frame
from tests.judges.frame import beam as judged_beam
from tests.samples import NAMES, assert_cured, of_check, plain, sample

# White oak: E 12 300 MPa, a tenth more without shear, G a sixteenth of that, 105 MPa of strength.
E, RUPTURE = 1.1 * 12_300.0, 105.0
G = E / 16.0
# Persons of 1079 N, 500 mm apart, each bearing on 300 mm.
SITTER, APART, SAT_ON = 1079.0, 500.0, 300.0


def bench_of(*steps: dict[str, Value]) -> Bench:
    spec = default_spec()
    for step in steps:
        spec = set_values(spec, step)
    return build(spec)


def sag_of_two(span: float, width: float, thickness: float) -> float:
    """Of a board on two supports, two persons at equal distances from its middle.

    A force at a from a support lowers the middle by F a (3 L² - 4 a²) / (48 E I) and by
    F a / (2 G A'); averaged over the width that somebody bears on.
    """
    low, high = (span - APART - SAT_ON) / 2.0, (span - APART + SAT_ON) / 2.0
    mean = (1.5 * span**2 * (high**2 - low**2) - (high**4 - low**4)) / SAT_ON
    bending = SITTER * mean / (48.0 * E * width * thickness**3 / 12.0)
    shearing = SITTER * (low + high) / 2.0 / (2.0 * G * 5.0 / 6.0 * width * thickness)
    return 2.0 * (bending + shearing)


SLAB: dict[str, Value] = {"flare": 0.0, "seat": "slab", "base": "panel feet"}
PANELS: dict[str, Value] = {"flare": 0.0, "seat": "panel bench"}


@pytest.mark.parametrize(
    ("sound", "change", "span", "thickness"),
    [
        # panels of 30 mm, 70 mm in from 1200: their middles are 1030 mm apart
        (SLAB, {"seat_thickness": 20.0}, 1030.0, 20.0),
        # ends of 32 mm: 1168 mm; a rail of 26 x 90 would carry alone, 10 mm below it does nothing
        (PANELS, {"seat_thickness": 24.0, "seat_rail_down": 10.0}, 1168.0, 24.0),
    ],
)
def test_a_thin_seat_bends(
    sound: dict[str, Value], change: dict[str, Value], span: float, thickness: float
) -> None:
    assert not of_check(bench_of(sound), "seat_bends")
    bench = bench_of(sound, change)
    (found,) = of_check(bench, "seat_bends")
    assert found.level is Level.THINK_AGAIN
    assert found.estimate
    assert found.amount == pytest.approx(sag_of_two(span, 360.0, thickness), rel=1e-9)
    assert found.limit == pytest.approx(span / 360.0)
    assert found.parts[0] == "seat"
    assert found.place is not None
    assert found.place[0] == pytest.approx(600.0)
    assert found.mend is not None
    mended = bench_with(bench, found.mend)
    assert mended is not None
    assert not of_check(mended, "seat_bends")


def test_the_mend_of_a_bending_seat_is_the_least_that_is_enough() -> None:
    """A step of half a millimetre less is not."""
    (found,) = of_check(bench_of(SLAB, {"seat_thickness": 20.0}), "seat_bends")
    assert found.mend is not None
    ((name, size),) = found.mend.values
    assert name == "seat_thickness"
    assert isinstance(size, float)
    assert sag_of_two(1030.0, 360.0, size) <= 1030.0 / 360.0
    assert sag_of_two(1030.0, 360.0, size - 0.5) > 1030.0 / 360.0


def test_a_top_is_told_of_when_it_uses_more_than_the_maker_allows() -> None:
    """Two spans of 590 mm, a person at either side of the partition, whose housing of 7 mm leaves
    13 mm: over it F a (L² - a²) / (4 L²) each (three moments by hand), averaged over 300 mm.

    Shear, which three moments leave out, makes it half a hundredth less.
    """
    bench = bench_of({"flare": 0.0, "right_end": "mitred"})
    span = 590.0
    low, high = span - APART / 2.0 - SAT_ON / 2.0, span - APART / 2.0 + SAT_ON / 2.0
    mean = (span**2 * (high**2 - low**2) / 2.0 - (high**4 - low**4) / 4.0) / SAT_ON
    moment = 2.0 * SITTER * mean / (4.0 * span**2)
    left = 20.0 - bench.spec.number("housing_depth")
    share = 100.0 * moment / (360.0 * left**2 / 6.0) / RUPTURE
    strict = replace(bench, judged_by=(("most_of_strength", 0.99 * share),))
    (found,) = of_check(strict, "seat_strength")
    assert found.parts == ("top",)
    assert found.amount == pytest.approx(share, rel=0.006)
    assert found.estimate
    assert not of_check(replace(bench, judged_by=(("most_of_strength", share),)), "seat_strength")


def test_a_heavy_load_of_the_brief_is_borne_in_mind() -> None:
    """400 kg at one place break what 1112 N leave whole; the brief alone says so."""
    bench = bench_of(SLAB)
    assert not of_check(bench, "seat_strength")
    loaded = replace(bench, brief=Brief(load=1000.0), judged_by=(("most_of_strength", 20.0),))
    (found,) = of_check(loaded, "seat_strength")
    # 1000 kg x 9.80665 m/s², in the middle of 1030 mm, on 360 x 40² / 6 = 96 000 mm³
    stress = 1000.0 * 9.80665 * 1030.0 / 4.0 / 96_000.0
    assert found.amount == pytest.approx(100.0 * stress / RUPTURE, rel=1e-9)
    assert "9807 N" in in_units(found.message, SHOWN_MM)


def test_a_seat_that_breaks_is_not_to_be_cut() -> None:
    """15 mm of western red cedar, 52 MPa, over 3400 mm: two persons break it."""
    weak: dict[str, Value] = {"timber": "western red cedar", "depth": 200.0, "length": 3000.0}
    thin = bench_of(SLAB, weak, {"seat_boards": 1.0, "seat_thickness": 15.0})
    (found,) = of_check(thin, "seat_strength")
    assert found.amount is not None
    assert found.amount > 100.0
    assert found.level is Level.DO_NOT_CUT


def test_a_weak_apron_under_a_slab() -> None:
    """A slab on four legs: its front half and the front apron bend together; one deep apron less.

    Each takes its part of the moment as E I b h³ / 12 is to the sum; the load, 100 mm in from the
    front edge, goes to the front by the lever.
    """
    sound: dict[str, Value] = {"flare": 0.0, "seat": "slab", "base": "four legs"}
    assert not of_check(bench_of(sound), "seat_strength")
    weak = bench_of(sound, {"seat_thickness": 20.0, "apron_height": 40.0})
    found = of_check(weak, "seat_bends")
    assert [one.parts for one in found] == [("seat", "apron_front")]
    (one,) = found
    assert one.mend is not None
    mended = bench_with(weak, one.mend)
    assert mended is not None
    assert not of_check(mended, "seat_bends")


SHELVED: dict[str, Value] = {f"opening_{k}_fill": "shelf" for k in (1, 2)}


def test_a_shelf_that_sags() -> None:
    """A shelf of 8 mm in openings of 570: books of 330 N a metre, 5/384 W L³ / (E I) and
    W L / (8 G A'), twice that a year later; 2.6 mm on a metre are seen."""
    bench = bench_of(SHELVED)
    assert not of_check(bench, "shelf_sag")
    thin = bench_of(SHELVED, {"shelf_thickness": 8.0})
    found = of_check(thin, "shelf_sag")
    assert [one.parts for one in found] == [("shelf_1",), ("shelf_2",)]
    width = thin.part("shelf_1").shape.blank.width
    load = 0.33 * 570.0
    bending = 5.0 / 384.0 * load * 570.0**3 / (E * width * 8.0**3 / 12.0)
    shearing = load * 570.0 / 8.0 / (G * 5.0 / 6.0 * width * 8.0)
    assert found[0].amount == pytest.approx(2.0 * (bending + shearing))
    assert found[0].limit == pytest.approx(2.6 * 0.57)
    assert found[0].mend is not None
    mended = bench_with(thin, found[0].mend)
    assert mended is not None
    assert not of_check(mended, "shelf_sag")


def test_a_shelf_of_sheet_sags_by_its_own_stiffness() -> None:
    """Birch plywood of 10 050 MPa, 9 mm, with a lipping of oak 6 mm thick that bends with it."""
    sheet: dict[str, Value] = {**SHELVED, "shelf_made_of": "sheet", "sheet": "birch plywood"}
    thin = bench_of(sheet, {"shelf_thickness": 9.0})
    (found, *_) = of_check(thin, "shelf_sag")
    width = thin.part("shelf_1").shape.blank.width
    lip, load = thin.spec.number("shelf_lip"), 0.33 * 570.0
    plywood = 1.1 * 10_050.0
    stiff = (plywood * width + E * lip) * 9.0**3 / 12.0
    shear = (plywood * width + E * lip) / 16.0 * 5.0 / 6.0 * 9.0
    sag = 5.0 / 384.0 * load * 570.0**3 / stiff + load * 570.0 / 8.0 / shear
    assert found.amount == pytest.approx(2.0 * sag)


def test_a_shelf_with_its_grain_from_front_to_back() -> None:
    """18 mm of white oak bent across its grain: 7 % as stiff; turned, it is as before."""
    bench = bench_of({**SHELVED, "shelf_grain": "front to back"})
    (found, *_) = of_check(bench, "shelf_sag")
    width, load = bench.part("shelf_1").shape.blank.width, 0.33 * 570.0
    bending = 5.0 / 384.0 * load * 570.0**3 / (0.07 * E * width * 18.0**3 / 12.0)
    shearing = load * 570.0 / 8.0 / (0.07 * G * 5.0 / 6.0 * width * 18.0)
    assert found.amount == pytest.approx(2.0 * (bending + shearing))
    assert found.mend is not None
    assert found.mend.values == (("shelf_grain", "side to side"),)
    assert_cured(bench, found)


def test_a_shelf_that_is_overloaded() -> None:
    """3000 N a metre on 570 mm: W L / 8 over b h² / 6 of the shelf of 7 mm."""
    thin = bench_of(SHELVED, {"shelf_thickness": 7.0})
    assert not of_check(thin, "shelf_strength")
    heavy = replace(thin, judged_by=(("shelf_load", 3000.0),))
    (found, *_) = of_check(heavy, "shelf_strength")
    width = thin.part("shelf_1").shape.blank.width
    stress = 3.0 * 570.0 * 570.0 / 8.0 / (width * 49.0 / 6.0)
    assert found.amount == pytest.approx(100.0 * stress / RUPTURE)
    assert found.mend is not None


# --- by finite elements, on samples ---------------------------------------------------------------


@pytest.mark.parametrize("name", NAMES)
def test_samples_are_stiff_and_strong_enough(name: str) -> None:
    project = sample(name)
    found = judged(build(project.spec), AS_FOUND, project.brief)
    assert not [one for one in found if one.told_by in STRENGTH_CHECKS]


STRENGTH_CHECKS = {"seat_bends", "seat_strength", "shelf_sag", "shelf_strength"}


def test_a_thin_lid_between_hinges() -> None:
    """The lock keeper's lid of red oak at the least its hinges allow, these 40 mm in at the ends.

    Its back half over the box's ends and the middles of the hinges; 1112 N in the middle, 100 mm in
    front of its back edge, go there by the lever to the middle of the box's front, 430 - 10.5 mm
    from the back.
    """
    bench = plain("lock_keepers_bench", {"hinge_in": 40.0}, {"lid_thickness": 19.0})
    (found,) = of_check(bench, "seat_bends")
    spec = bench.spec
    back = spec.number("lid_strip") + spec.number("lid_gap")
    half = (430.0 + spec.number("lid_front") - back) / 2.0
    share = (419.5 - back - 100.0) / (419.5 - back)
    hinge = 40.0 + spec.number("hinge_length") / 2.0 - spec.number("lid_ends")
    supports = [10.5, hinge, 1100.0 - hinge, 1089.5]
    marks = np.array([0.0, *supports[:2], 550.0, *supports[2:], 1100.0])
    e = 1.1 * 12_500.0
    bending, shearing = e * half * 19.0**3 / 12.0, e / 16.0 * 5.0 / 6.0 * half * 19.0
    loads = np.where(marks == 550.0, 1112.0 * share, 0.0)
    sag, _, _ = judged_beam(marks, supports, bending, shearing, loads)
    assert found.amount == pytest.approx(float(sag[marks == 550.0][0]), rel=1e-6)
    assert found.limit == pytest.approx((1100.0 - 2.0 * hinge) / 360.0)
    assert found.parts == ("lid",)
    assert_cured(bench, found)


def test_a_thin_slab_on_aprons() -> None:
    """The bowling green's seat made 24 mm: half of it and the front apron, two bars between the
    same nodes from leg to leg, under the share of two persons that the lever gives the front.

    The persons stand 250 mm to either side of the middle, each as thirty small loads over 300 mm.
    """
    bench = plain("bowling_green_bench", {"seat_thickness": 24.0})
    (found,) = of_check(bench, "seat_bends")
    spec = bench.spec
    size, long, deep = (spec.number(name) for name in ("leg_size", "length", "depth"))
    low, high = spec.number("inset_left") + size / 2.0, long - spec.number("inset_right") - size / 2
    front, back = spec.number("inset_front") + size / 2.0, spec.number("inset_back") + size / 2.0
    share = (deep - 100.0 - back) / (deep - front - back)
    middle = (low + high) / 2.0
    spread = (np.arange(30) + 0.5) * 10.0 - 150.0
    at = np.concatenate([middle - 250.0 + spread, middle + 250.0 + spread])
    marks = np.array(sorted({0.0, low, middle, high, long, *(float(x) for x in at)}))
    e = 1.1 * 12_000.0
    lean = math.cos(math.radians(spec.number("rake")))
    frame = Frame([(float(x), 0.0) for x in marks])
    for node in range(len(marks) - 1):
        for wide, thick in (
            (deep / 2.0, 24.0),
            (spec.number("apron_thickness") / lean, spec.number("apron_height")),
        ):
            area = 5.0 / 6.0 * wide * thick
            frame.bar(node, node + 1, e * wide * thick**3 / 12.0, e / 16.0 * area)
    frame.hold(0, 0)
    for x in (low, high):
        frame.hold(int(np.argmin(np.abs(marks - x))), 1)
    for x in at:
        frame.push(int(np.argmin(np.abs(marks - x))), 0.0, -SITTER * share / 30.0)
    sag = -float(frame.solve()[int(np.argmin(np.abs(marks - middle))), 1])
    # The two bars share bending and shear each for itself here, together there.
    assert found.amount == pytest.approx(sag, rel=0.01)
    assert found.parts == ("seat", "apron_front")
    assert_cured(bench, found)


def test_weak_stretchers_under_a_slab() -> None:
    """A slab of 20 mm on crossed stretchers 30 mm high: lapped, 15 mm of each are left where they
    cross, and they take of the moment what their stiffness is of all, aslant as they lie."""
    sound: dict[str, Value] = {"flare": 0.0, "seat": "slab", "timber": "western red cedar"}
    assert not of_check(bench_of(sound), "seat_strength")
    weak = bench_of(sound, {"seat_thickness": 18.0, "stretcher_height": 30.0})
    found = {one.parts[0]: one for one in of_check(weak, "seat_strength")}
    part = found["stretcher_back_left"]
    spec = weak.spec
    run, across = 1200.0 - 140.0, 360.0 - 120.0
    cosine = run / math.hypot(run, across)
    seat, lapped = 360.0 * 18.0**3 / 12.0, 40.0 * cosine**3 * 30.0**3 / 12.0
    span = run - spec.number("leg_top_width") / math.cos(math.radians(spec.number("splay")))
    whole = max(
        1112.0 * span / 4.0,
        SITTER * (span - APART) / 2.0,
    )
    moment = whole * lapped / (seat + 2.0 * lapped)
    stress = moment / (40.0 * cosine * 15.0**2 / 6.0)
    assert part.amount == pytest.approx(100.0 * stress / 52.0, rel=1e-6)
    assert_cured(weak, part)


def test_a_plinth_on_feet_bends_with_its_slab() -> None:
    """A slab of 18 mm on a plinth of 90 mm, 30 of them feet: half of the seat and one board of 20 x
    60 mm between the feet, in the middles of the corner blocks; on the floor it lies all along."""
    low: dict[str, Value] = {"flare": 0.0, "seat": "slab", "base": "plinth"}
    thin: dict[str, Value] = {"base_height": 90.0, "seat_thickness": 18.0}
    assert not of_check(bench_of(low, thin), "seat_bends")
    bench = bench_of(low, thin, {"foot": "pads", "foot_height": 30.0})
    (found,) = of_check(bench, "seat_bends")
    assert found.parts[0] == "seat"
    assert found.parts[1] in ("plinth_front", "plinth_back")
    p, depth = bench.spec.number, 360.0
    span = 1200.0 - 140.0 - 2.0 * (20.0 + p("plinth_block") / 2.0)
    rows = (p("inset_back") + 10.0, depth - p("inset_front") - 10.0)
    share = (depth - 100.0 - rows[0]) / (rows[1] - rows[0])
    stiff = 180.0 * 18.0**3 / 12.0 + 20.0 * 60.0**3 / 12.0
    area = 5.0 / 6.0 * (180.0 * 18.0 + 20.0 * 60.0)
    low_x, high_x = (span - APART - SAT_ON) / 2.0, (span - APART + SAT_ON) / 2.0
    mean = (1.5 * span**2 * (high_x**2 - low_x**2) - (high_x**4 - low_x**4)) / SAT_ON
    two = 2.0 * SITTER * (mean / (48.0 * E * stiff) + (low_x + high_x) / 4.0 / (G * area))
    one = 1112.0 * (span**3 / (48.0 * E * stiff) + span / (4.0 * G * area))
    assert found.amount == pytest.approx(share * max(one, two), rel=1e-6)
    assert_cured(bench, found)
