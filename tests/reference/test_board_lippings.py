"""Lippings on the boards of a case by hand: sizes, bevels, mitres, and that nothing is lost."""

from __future__ import annotations

import math

import pytest

from geometry.bench.bench import Bench
from geometry.bench.board_lippings import BOARD_LIPPING
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import limits, set_values
from geometry.checks.all_checks import slow_findings
from geometry.cuts.edge_moulding import EdgeMoulding
from geometry.cuts.rebate import Rebate
from geometry.cuts.saw import SawCut
from geometry.design.parameter import Value
from geometry.design.part import Part
from geometry.dimensioning.handholds import handholds
from geometry.solids.measure import bounding_box, volume_of
from shared.errors import CannotBuild, MakerError
from tests.flat_faces import facing, flat_faces

BOARDS = ("top", "bottom", "end_panel_left", "end_panel_right")
STRAIGHT: dict[str, Value] = {"flare": 0.0, "right_end": "mitred"}
MADE = {"top": "top_made_of", "bottom": "bottom_made_of"}
ALL: dict[str, Value] = {
    "top_made_of": "sheet",
    "bottom_made_of": "sheet",
    "ends_made_of": "sheet",
}
ROUND: dict[str, Value] = {"board_lip": 8.0, "board_lipped": "all round"}
LEANING: dict[str, Value] = {"bottom_made_of": "sheet", "ends_made_of": "sheet"}


def _bench(*changes: dict[str, Value]) -> Bench:
    spec = default_spec()
    for change in changes:
        spec = set_values(spec, change)
    return build(spec)


def _whole(bench: Bench, name: str) -> float:
    """The volume of a board with its lipping, where it has one."""
    return sum(volume_of(p.shape) for p in bench.parts if p.name in (name, f"{name}_lipping"))


@pytest.mark.parametrize("edge", [("chamfer", 2.0), ("round-over", 8.0), ("cove", 4.0)])
@pytest.mark.parametrize(("form", "made"), [(STRAIGHT, ALL), ({}, LEANING)])
def test_boards_are_as_large_as_of_one_piece(
    form: dict[str, Value], made: dict[str, Value], edge: tuple[str, float]
) -> None:
    """Of every board, by volume and by what it reaches, whatever is cut on its front."""
    size = "chamfer" if edge[0] == "chamfer" else "edge_size"
    shaped: dict[str, Value] = {"edge_form": edge[0], size: edge[1]}
    timber, sheet = _bench(form, shaped), _bench(form, shaped, made)
    for board in timber.parts:
        if board.kind not in ("top", "bottom", "end panel"):
            continue
        assert _whole(sheet, board.name) == pytest.approx(volume_of(board.shape)), board.name
        lipping = next((p for p in sheet.parts if p.name == f"{board.name}_lipping"), None)
        if lipping is not None:
            assert bounding_box(lipping)[0][1] == pytest.approx(bounding_box(board)[0][1])


def test_upright_fronts() -> None:
    """Boards 360 deep: 354 of sheet and 6 of lipping, mitred at both ends."""
    bench = _bench(STRAIGHT, ALL)
    for name, long in zip(BOARDS, (1200.0, 1200.0, 300.0, 300.0), strict=True):
        core, strip = bench.part(name), bench.part(f"{name}_lipping")
        assert core.shape.blank.width == pytest.approx(354.0)
        assert (core.material, core.solid_timber) == ("birch plywood", False)
        blank = strip.shape.blank
        assert (blank.length, blank.width, blank.thickness) == pytest.approx((long, 20.0, 6.0))
        mitres = [
            cut for cut in strip.shape.cuts if isinstance(cut, SawCut) and cut.title == "mitre"
        ]
        assert [abs(cut.outward[0]) for cut in mitres] == pytest.approx([math.sqrt(0.5)] * 2)


def test_a_leaning_front() -> None:
    """A flare of 60 over a case 300 high: the front leans 1 in 5, so a lipping of 6 is
    6 x sqrt(1 + 1/25) = 6.1188 deep along the board; through 20 mm the front is 20.396 wide, and
    the blank 6 x 1/5 = 1.2 wider, to be bevelled to it; along the end 305.941 and 1.2."""
    bench = _bench({"flare": 60.0}, LEANING)
    deep = 6.0 * math.sqrt(1.04)
    bottom, end = bench.part("bottom"), bench.part("end_panel_left")
    assert bottom.shape.blank.width == pytest.approx(360.0 + 4.0 - deep)
    assert end.shape.blank.width == pytest.approx(420.0 - deep)
    strip = bench.part("bottom_lipping")
    assert strip.shape.blank.width == pytest.approx(20.0 * math.sqrt(1.04) + 1.2)
    bevels = [cut for cut in strip.shape.cuts if isinstance(cut, SawCut) and cut.title == "bevel"]
    assert [cut.tilt_deg for cut in bevels] == pytest.approx([math.degrees(math.atan(0.2))] * 2)
    end_strip = bench.part("end_panel_left_lipping")
    assert end_strip.shape.blank.length == pytest.approx(300.0 * math.sqrt(1.04) + 1.2)
    assert end_strip.shape.blank.width == pytest.approx(20.0)


def test_housings_stop_behind_the_lipping() -> None:
    """Partitions stand 12 back, their housings stop 4 more: 16."""
    bench = _bench(STRAIGHT, ALL)
    assert limits(bench.spec, "board_lip").maximum == pytest.approx(16.0)


OPEN: dict[str, Value] = {"flare": 0.0, "left_end": "open"}
HOUSED: dict[str, Value] = {"opening_1_fill": "shelf"}


@pytest.mark.parametrize("along", ["front and back", "front and ends", "all round"])
@pytest.mark.parametrize(("lip", "edge"), [(4.0, 5.0), (8.0, 2.0)])
@pytest.mark.parametrize(
    ("form", "made"), [(STRAIGHT, ALL), (OPEN, ALL), ({}, LEANING), ({"flare": 0.0}, ALL)]
)
def test_boards_lipped_behind_and_on_their_ends_are_as_large(
    form: dict[str, Value], made: dict[str, Value], lip: float, edge: float, along: str
) -> None:
    """Rebates, housings and chamfers and all: what is cut through lipping and sheet takes as much
    of both as of one piece, in front of a lipping thinner than the rebate or than the chamfer, and
    of a thicker one."""
    shaped: dict[str, Value] = {"chamfer": edge}
    timber = _bench(form, HOUSED, shaped)
    sheet = _bench(form, HOUSED, shaped, made, {"board_lip": lip, "board_lipped": along})
    for board in timber.parts:
        if board.kind not in ("top", "bottom", "end panel"):
            continue
        pieces = [p for p in sheet.parts if p.name == board.name or _on(p, board.name)]
        assert sum(volume_of(p.shape) for p in pieces) == pytest.approx(volume_of(board.shape))
        boxes = [bounding_box(piece) for piece in pieces]
        for axis in range(3):
            low, high = (bounding_box(board)[k][axis] for k in (0, 1))
            assert min(box[0][axis] for box in boxes) == pytest.approx(low), board.name
            assert max(box[1][axis] for box in boxes) == pytest.approx(high), board.name


def _on(part: Part, board: str) -> bool:
    return part.kind == BOARD_LIPPING and part.name.startswith(f"{board}_")


def test_sizes_of_a_case_lipped_all_round() -> None:
    """1200 long and 360 deep, open at the left, 8 of lipping: the sheet of top and bottom is 1192
    long and 344 deep, that of the end panel 300 high and 344 deep.  Long strips lap over the one on
    the end, which is 344 long."""
    bench = _bench({"flare": 0.0, **OPEN, "right_end": "mitred"}, ALL, ROUND)
    for name in ("top", "bottom"):
        blank = bench.part(name).shape.blank
        assert (blank.length, blank.width) == pytest.approx((1192.0, 344.0))
        assert "{1200 mm} long and {360 mm} wide" in bench.part(name).notes[0]
        for strip in (f"{name}_lipping", f"{name}_back_lipping"):
            sizes = bench.part(strip).shape.blank
            assert (sizes.length, sizes.width, sizes.thickness) == pytest.approx((1200, 20, 8))
        across = bench.part(f"{name}_left_lipping").shape.blank
        assert (across.length, across.width, across.thickness) == pytest.approx((344, 20, 8))
        assert f"{name}_right_lipping" not in {part.name for part in bench.parts}
    panel = bench.part("end_panel_right").shape.blank
    assert (panel.length, panel.width) == pytest.approx((300.0, 344.0))
    # Marked from the lipped end and back edge, as they are on by then: 60 in, stopped 344.
    (housed,) = (one for one in bench.joints if one.name == "housing_bottom_partition_left")
    told = {measure.name: measure.value for measure in housed.measures}
    assert told["from_left_end"] == pytest.approx(60.0)
    assert told["stop_from_back"] == pytest.approx(360.0 - 12.0 - 4.0)


def test_the_back_lies_in_the_lipping_or_in_the_sheet_behind_it() -> None:
    """A back 6 thick in rebates 6 deep.  In lippings of 8 they are cut in these alone; those of 6
    and of 4 are but 14 wide where the rebate runs from mitre to mitre, and behind 4 it goes on 2
    into the sheet."""
    for lip, wide, in_sheet in ((8.0, 20.0, 0.0), (6.0, 14.0, 0.0), (4.0, 14.0, 2.0)):
        bench = _bench(STRAIGHT, ALL, {"board_lipped": "front and back", "board_lip": lip})
        for name in BOARDS:
            strip = bench.part(f"{name}_back_lipping")
            assert strip.shape.blank.width == pytest.approx(wide)
            cuts = [c for c in bench.part(name).shape.cuts if isinstance(c, Rebate)]
            assert [c.y_high for c in cuts] == pytest.approx([in_sheet] if in_sheet else [])
            rebated = [c for c in strip.shape.cuts if isinstance(c, Rebate)]
            assert [c.depth for c in rebated] == pytest.approx([6.0] if lip == 8.0 else [])
        mitred = [joint for joint in bench.joints if joint.kind == "mitred lipping"]
        assert len(mitred) == 8


def test_the_end_lipping_of_a_leaning_bottom_is_bevelled_with_it() -> None:
    """A flare of 60 over 300: the front leans 1 in 5, 11.31 degrees."""
    bench = _bench({"flare": 60.0}, LEANING, ROUND)
    (cut,) = bench.part("bottom_right_lipping").shape.cuts
    assert isinstance(cut, SawCut)
    lean = math.degrees(math.atan2(abs(cut.outward[1]), abs(cut.outward[0])))
    assert lean == pytest.approx(math.degrees(math.atan(0.2)))


def test_housings_keep_off_the_lippings_of_open_ends() -> None:
    """Set in 12 mm with a fit of 0.2, 2 of sheet between: a lipping of 9.9."""
    bench = _bench(OPEN, ALL, ROUND, {"left_inset": 12.0})
    most = limits(bench.spec, "board_lip")
    assert most.maximum == pytest.approx(9.9)
    assert "end's lipping" in most.why_maximum
    assert limits(bench.spec, "left_inset").minimum == pytest.approx(10.1)


def test_posts_are_not_screwed_to_lippings() -> None:
    rest: dict[str, Value] = {"back_rest": "rails"}
    behind = _bench(STRAIGHT, rest, {"post_fixing": "behind the seat"}, ALL).spec
    with pytest.raises(CannotBuild, match="back lippings of top and bottom"):
        set_values(behind, {"board_lipped": "all round"})
    assert build(set_values(behind, {"board_lipped": "front and ends"})).part("post_1")


def test_lippings_are_pressed_on_before_mitres_are_sawn() -> None:
    """So nothing slants that a clamp lies on, nor are they wet with the case."""
    bench = _bench({"flare": 0.0, **OPEN, "right_end": "mitred"}, ALL, ROUND)
    told = [one for one in slow_findings(bench) if one.check in ("no_clamp", "caul_wanted")]
    assert not [one for one in told if any("lipping" in name for name in one.parts)]


def test_the_joints_behind_lippings_can_be_taken_hold_of() -> None:
    """In plan: in front and behind of top and bottom, and at both their open ends."""
    held = [one for one in handholds(_bench(OPEN, ALL, ROUND)) if one.pull.parameter == "board_lip"]
    assert len(held) == 8


def test_a_housing_up_to_the_lipping_leaves_no_skin_before_it() -> None:
    """At the limit of 16 the housing, 20.2 wide with rounds of 6.35, ends in the joint: 7.5 by 7
    of the bottom's front edge is open."""
    deep = 429.2583154571905  # at which a cut up to the joint itself left one
    bench = _bench(STRAIGHT, {"depth": deep}, ALL, {"board_lip": 16.0})
    faces = flat_faces(bench.part("bottom"))
    front = facing(faces, (0.0, -1.0, 0.0))
    # The edge is 1200 long outside and, between the mitres, 1160 inside.
    opened = (1200.0 + 1160.0) / 2.0 * 20.0 - front.area
    assert opened == pytest.approx((20.2 - 2.0 * 6.35) * 7.0, abs=2.0)
    assert not [face for face in faces if face.normal[1] > 0.99 and face.offset < -400.0]


def test_stopped_edges_begin_as_far_from_both_open_ends() -> None:
    """50 from the ends of a bench of 1200, over lippings of 8; those on the ends stay whole."""
    bench = _bench(OPEN, ALL, ROUND, {"chamfer": 9.0, "edge_stop": 50.0})
    for board in ("top", "bottom"):
        for name in (board, f"{board}_lipping"):
            part = bench.part(name)
            (cut,) = (cut for cut in part.shape.cuts if isinstance(cut, EdgeMoulding))
            ends = sorted(part.frame.to_bench(at)[0] for at in (cut.start, cut.end))
            assert ends == pytest.approx([50.0, bench.spec.number("length") - 50.0]), name
        for end in ("left", "right"):
            assert not bench.part(f"{board}_{end}_lipping").shape.cuts
    assert [one for one in handholds(bench) if one.pull.parameter == "edge_stop"]


def test_a_top_with_a_run_out_has_no_lipping() -> None:
    with pytest.raises(MakerError, match="straight from end to end"):
        _bench({"flare": 60.0}, {"top_made_of": "sheet"})
    flat = _bench(STRAIGHT, ALL)
    assert limits(flat.spec, "flare").maximum == 0.0


def test_slots_have_no_movement_to_allow_for() -> None:
    """A bottom of sheet stays as it is."""
    fixed: dict[str, Value] = {"fixing": "screws in slots"}
    moving, still = (_bench(STRAIGHT, made, fixed) for made in ({}, ALL))

    def lengths(bench: Bench) -> set[float]:
        return {
            round(measure.value, 6)
            for joint in bench.joints
            if joint.kind == "slotted screw"
            for measure in joint.measures
            if measure.name == "slot_length"
        }

    assert max(lengths(still)) < max(lengths(moving))
