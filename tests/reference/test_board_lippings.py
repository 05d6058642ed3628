"""Lippings on the boards of a case by hand: sizes, bevels, mitres, and that nothing is lost."""

from __future__ import annotations

import math

import pytest

from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import limits, set_values
from geometry.cuts.saw import SawCut
from geometry.design.parameter import Value
from geometry.solids.measure import bounding_box, volume_of
from shared.errors import MakerError

BOARDS = ("top", "bottom", "end_panel_left", "end_panel_right")
STRAIGHT: dict[str, Value] = {"flare": 0.0, "right_end": "mitred"}
MADE = {"top": "top_made_of", "bottom": "bottom_made_of"}
ALL: dict[str, Value] = {
    "top_made_of": "sheet",
    "bottom_made_of": "sheet",
    "ends_made_of": "sheet",
}
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
