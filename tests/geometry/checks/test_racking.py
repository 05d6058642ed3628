"""Racking, by hand for each form: the moment in each joint by statics, and what it does there.

The push is that of ISO 7173:1989, 7.6 (330 N level at the front edge of a seat without a back), in
a page that quotes it.  Knees of a frame with hinged feet: H h / 2 each (any book of portal frames;
here by statics, and against a frame solved by stiffness).
"""

from __future__ import annotations

import math

import numpy as np
import pytest

from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.checks.all_checks import findings, judged
from geometry.design.finding import Finding, Level
from geometry.design.judging import Judging
from geometry.design.parameter import Value
from geometry.design.spec import BenchSpec
from geometry.strength.joints import BORE, GLUE
from geometry.strength.racking import ACROSS, ALONG, RAIL_WALL, Racked, racked
from geometry.strength.stuff import stuff_of

PUSH = 330.0


def bench_of(*steps: dict[str, Value]) -> BenchSpec:
    spec = set_values(default_spec(), {"flare": 0.0})
    for step in steps:
        for name, value in step.items():
            spec = set_values(spec, {name: value})
    return spec


def told(bench: Bench, way: str, judging: Judging | None = None) -> list[Finding]:
    check = f"racks_{way}"
    return [one for one in judged(bench, judging or Judging()) if one.check == check]


def of_way(spec: BenchSpec, way: str) -> Racked:
    return next(one for one in racked(spec, PUSH) if one.way == way)


def _rod(length: float, ea: float, ei: float, turn: float) -> np.ndarray:
    """Stiffness (6, 6) of a plane rod in the frame's axes."""
    a, b = ea / length, ei / length**3
    own = np.zeros((6, 6))
    own[np.ix_([0, 3], [0, 3])] = [[a, -a], [-a, a]]
    bend = np.array(
        [
            [12.0, 6.0 * length, -12.0, 6.0 * length],
            [6.0 * length, 4.0 * length**2, -6.0 * length, 2.0 * length**2],
            [-12.0, -6.0 * length, 12.0, -6.0 * length],
            [6.0 * length, 2.0 * length**2, -6.0 * length, 4.0 * length**2],
        ]
    )
    own[np.ix_([1, 2, 4, 5], [1, 2, 4, 5])] = b * bend
    c, s = math.cos(turn), math.sin(turn)
    one = np.array([[c, s, 0.0], [-s, c, 0.0], [0.0, 0.0, 1.0]])
    whole = np.kron(np.eye(2), one)
    return np.asarray(whole.T @ own @ whole)


def test_the_knees_of_a_frame_with_hinged_feet_by_stiffness() -> None:
    """Two legs 400 high, a beam of 1000 between them, feet hinged, pushed level: H h / 2 each."""
    ea, ei, high = 1e8, 5e9, 400.0
    whole = np.zeros((12, 12))  # foot, knee, knee, foot; x, z and turn of each
    for first, length, turn in ((0, high, math.pi / 2), (1, 1000.0, 0.0), (2, high, -math.pi / 2)):
        at = range(3 * first, 3 * first + 6)
        whole[np.ix_(at, at)] += _rod(length, ea, ei, turn)
    free = [2, 3, 4, 5, 6, 7, 8, 11]
    force = np.zeros(12)
    force[3] = force[6] = PUSH / 2.0
    moved = np.zeros(12)
    moved[free] = np.linalg.solve(whole[np.ix_(free, free)], force[free])
    ends = _rod(high, ea, ei, math.pi / 2) @ moved[:6]
    assert abs(ends[5]) == pytest.approx(PUSH * high / 2.0, rel=1e-9)


def test_aprons_share_a_push_between_four_joints() -> None:
    """150 high: 330 x 150 / 4 = 12 375 N mm each; glued cheeks 2 x (h x l) as ``opened_glue`` takes
    them, by numbers over the cheek: M / (2 S)."""
    spec = bench_of({"base": "four legs"}, {"splay": 0.0}, {"rake": 0.0})
    one = of_way(spec, ALONG)
    high = spec.number("apron_height") - 2.0 * spec.number("apron_shoulder")
    long = spec.number("apron_tenon_length")
    xs, ys = ((np.arange(400) + 0.5) / 400.0 * size for size in (long, high))
    mean = float(np.hypot(xs[:, None], ys[None, :]).mean())
    rolling = stuff_of(spec.word("timber")).rolling
    assert rolling is not None
    assert one.moment == pytest.approx(12_375.0)
    assert one.fails == GLUE
    stress = 12_375.0 / (2.0 * mean * high * long)
    assert one.share == pytest.approx(100.0 * stress / rolling, rel=1e-4)
    assert not told(build(spec), ALONG)


def test_round_tenons_in_a_thin_board_dent_its_bores() -> None:
    """Legs of 500 under a board: 330 x 500 / 4 = 41 250 N mm against the wall of a bore, evenly
    from one way to the other: 6 M / (d T²)."""
    low = bench_of({"base": "four legs", "board_thickness": 28.0}, {"leg_joint": "round tenons"})
    assert not told(build(low), ALONG)
    high = set_values(low, {"base_height": 500.0})
    denting = stuff_of(high.word("timber")).denting
    assert denting is not None
    share = 100.0 * 6.0 * 41_250.0 / (high.number("leg_tenon") * 28.0**2) / denting
    (found,) = told(build(high), ALONG)
    assert found.level is Level.THINK_AGAIN
    assert found.estimate
    assert of_way(high, ALONG).fails == BORE
    assert found.amount == pytest.approx(share, rel=1e-9)
    assert (found.limit, found.unit) == (50.0, "%")
    assert "leg_front_left" in found.parts
    assert "bottom" in found.parts
    more = Judging().with_limit("most_of_racked", 100.0).with_limit("racking_push", 50.0)
    assert not told(build(high), ALONG, more)
    assert found.mend is not None
    assert not told(build(set_values(high, dict(found.mend.values))), ALONG)


def test_low_aprons_under_high_legs_rack_and_are_mended() -> None:
    """Aprons of 32 with their shoulders taken off, legs of 400: 33 000 N mm in each joint."""
    sound = bench_of({"base": "four legs"}, {"splay": 0.0, "rake": 0.0}, {"base_height": 400.0})
    assert not told(build(sound), ALONG)
    low = set_values(sound, {"apron_height": 32.0})
    found = told(build(low), ALONG)
    assert [one.parts[:2] for one in found] == [("apron_front", "apron_back")]
    assert found[0].amount == pytest.approx(of_way(low, ALONG).share)
    assert of_way(low, ALONG).moment == pytest.approx(330.0 * 400.0 / 4.0)
    assert found[0].mend is not None
    assert not told(build(set_values(low, dict(found[0].mend.values))), ALONG)


def test_a_trestles_rail_keeps_it_along_and_its_bridles_across() -> None:
    """330 x 150 / 2 at each end of the rail, / 4 at each bridle; the rail's tenon 20 high and 40
    wide less its shoulders, through stretchers of 40: 6 M / (w T²) on side grain."""
    spec = bench_of({"base": "trestles"})
    along, across = of_way(spec, ALONG), of_way(spec, ACROSS)
    assert (along.moment, across.moment) == pytest.approx((24_750.0, 12_375.0))
    wide = spec.number("rail_width") - 2.0 * spec.number("rail_shoulder")
    denting = stuff_of(spec.word("timber")).denting
    assert denting is not None
    pressed = 6.0 * 24_750.0 / (wide * spec.number("base_thickness") ** 2)
    assert along.fails == RAIL_WALL
    assert along.share == pytest.approx(100.0 * pressed / denting, rel=1e-9)


def test_crossed_stretchers_share_a_push_along_their_own_lines() -> None:
    """Insets of 60 and 70: the stretchers run 1060 along and 240 across, each at atan(240 / 1060):
    a push across needs 330 / (2 sin) along each, one along 330 / (2 cos)."""
    spec = bench_of({"base": "crossed stretchers"})
    run = math.hypot(1060.0, 240.0)
    for way, part in ((ALONG, 1060.0), (ACROSS, 240.0)):
        force = PUSH * run / (2.0 * part)
        assert of_way(spec, way).moment == pytest.approx(force * 150.0 / 2.0, rel=1e-9)


def test_what_is_stiff_in_itself_has_nothing_to_find() -> None:
    assert racked(bench_of({"base": "plinth"}), PUSH) == ()
    assert [one.way for one in racked(bench_of({"base": "panel feet"}), PUSH)] == [ALONG]
    for base in ("crossed stretchers", "trestles", "four legs", "panel feet"):
        found = {one.check for one in findings(build(bench_of({"base": base})))}
        assert not found & {"racks_along", "racks_across"}


def test_the_rail_of_a_panel_bench() -> None:
    """330 N at ends as high as the seat's underside, two joints: H h / 2."""
    spec = bench_of({"seat": "panel bench"})
    (one,) = racked(spec, PUSH)
    assert one.parts == ("rail", "end_left", "end_right")
    assert one.moment == pytest.approx(PUSH * spec.number("base_height") / 2.0)
