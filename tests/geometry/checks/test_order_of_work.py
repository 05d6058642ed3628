"""The order of work, and what of it needs a size that is left to the dry fit; worked by hand."""

from __future__ import annotations

from pathlib import Path

import pytest

from exporters.project_file import load
from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.left_to_fit import SIZES, Size, left
from geometry.bench.limits import set_values
from geometry.checks.all_checks import findings
from geometry.checks.order_of_work import Step, before, in_order, steps, too_early
from geometry.design.finding import Finding, Level
from geometry.design.spec import BenchSpec
from tests.random_benches import random_spec

FOLDER = Path(__file__).parents[3] / "sample_projects"
SAMPLES = sorted(FOLDER.glob("*.settle"))
AT_FIT = "at the dry fit"


def _sample(name: str) -> BenchSpec:
    return load(FOLDER / f"{name}.settle").spec


def _left(spec: BenchSpec, *sizes: str) -> BenchSpec:
    return set_values(spec, {f"fit_{size}": AT_FIT for size in sizes})


def _found(spec: BenchSpec) -> list[Finding]:
    return [one for one in findings(build(spec)) if one.check.startswith("left_")]


def _check_order(bench: Bench) -> None:
    found = steps(bench)
    assert len({step.name for step in found}) == len(found)
    done: set[str] = set()
    for step in in_order(found):
        assert set(step.after) & {one.name for one in found} <= done
        assert step.parts
        assert set(step.parts) <= {part.name for part in bench.parts}
        done.add(step.name)
    assert done == {step.name for step in found}


@pytest.mark.parametrize("seed", range(12))
def test_every_bench_has_an_order_in_which_no_step_waits_for_a_later_one(seed: int) -> None:
    _check_order(build(random_spec(seed)))


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_samples_have_an_order_and_leave_nothing(path: Path) -> None:
    spec = load(path).spec
    _check_order(build(spec))
    assert left(spec) == ()
    assert _found(spec) == []


def test_the_steps_of_a_case_with_drawers() -> None:
    """As a maker would write them down for the boat club's bench."""
    names = [step.name for step in in_order(steps(build(_sample("boat_club_bench"))))]
    assert names.index("housings") < names.index("fit_case") < names.index("fit_partitions")
    assert names.index("runners") < names.index("glue_case")
    assert names.index("boxes") < names.index("hang")
    assert names.index("glue_case") < names.index("hang")
    assert names.index("laps") < names.index("fit_base")


def test_only_what_a_step_waits_for_comes_before_it() -> None:
    a, b, c = Step("a", "", ("x",)), Step("b", "", ("x",), ("a",)), Step("c", "", ("x",))
    assert before((c, b, a), b) == (a, b)
    assert in_order((b, c, a)) == (c, a, b)


def test_steps_that_wait_for_each_other_are_a_mistake_of_ours() -> None:
    with pytest.raises(AssertionError):
        in_order((Step("a", "", ("x",), ("b",)), Step("b", "", ("x",), ("a",))))


def test_a_size_is_early_only_before_it_is_measured() -> None:
    size = Size("length", "Length", "the length", ("board",), lambda _spec: True)
    cut = Step("cut", "", ("x",), (), (size,))
    fit = Step("fit", "", ("x",), ("cut",), (), (size,))
    later = Step("later", "", ("x",), ("fit",), (size,))
    assert too_early((cut, fit, later), size) == (cut, fit)
    free = Step("fit", "", ("x",), (), (), (size,))
    assert too_early((free, later), size) is None


# sample, size left, level, step that needs it, steps up to the fit, pieces told of
SPOILED: tuple[tuple[str, str, Level, int, int, set[str]], ...] = (
    # 1 rebates, 2 mitres, 3 housings, 4 the dry fit of the case
    (
        "orchard_bench",
        "sheet_thickness",
        Level.DO_NOT_CUT,
        1,
        4,
        {"back", "top", "bottom", "end_panel_left", "end_panel_right"},
    ),
    # 1 laps, 2 the dry fit of the base
    (
        "orchard_bench",
        "stretcher_length",
        Level.DO_NOT_CUT,
        1,
        2,
        {"stretcher_back_left", "stretcher_front_left"},
    ),
    # The right end is open: nothing keeps top and bottom apart there.
    (
        "reading_room_bench",
        "partition_height",
        Level.DO_NOT_CUT,
        4,
        4,
        {"partition_right", "top", "bottom", "end_panel_left"},
    ),
    # Legs that are held by their aprons alone.
    ("porch_bench", "apron_length", Level.DO_NOT_CUT, 1, 1, {"apron_front", "leg_back_left"}),
    # 1 partitions to width, 2 rebates, 3 mitres, 4 housings, 5 and 6 dry fits, 7 runners, 8 glue,
    # 9 boxes, 10 hanging them
    (
        "boat_club_bench",
        "front_size",
        Level.THINK_AGAIN,
        7,
        10,
        {"drawer_1_1_front", "drawer_3_3_front", "partition_1"},
    ),
)


@pytest.mark.parametrize(("sample", "size", "level", "at", "known", "parts"), SPOILED)
def test_a_size_that_is_needed_before_the_fit_is_caught_and_mended(
    sample: str, size: str, level: Level, at: int, known: int, parts: set[str]
) -> None:
    spec = _left(_sample(sample), size)
    (found,) = _found(spec)
    assert found.check == f"left_{size}"
    assert found.level is level
    assert (found.amount, found.limit) == (at, known)
    assert parts <= set(found.parts)
    assert found.place is not None
    assert found.mend is not None
    assert _found(set_values(spec, dict(found.mend.values))) == []


@pytest.mark.parametrize(
    ("sample", "size"),
    [
        # Both ends are mitred: the case stands without its partitions.
        ("orchard_bench", "partition_height"),
        ("orchard_bench", "back_size"),
        ("boat_club_bench", "shelf_length"),
        ("boat_club_bench", "box_width"),
        # Trestles stand, and a rail is measured between them.
        ("ferry_waiting_room_bench", "rail_length"),
        ("bakery_yard_bench", "rail_length"),
    ],
)
def test_what_the_fit_comes_in_time_for_is_let_be(sample: str, size: str) -> None:
    assert _found(_left(_sample(sample), size)) == []


def test_the_partitions_may_be_measured_first_and_the_shelf_between_them() -> None:
    assert _found(_left(_sample("boat_club_bench"), "partition_height", "shelf_length")) == []


def test_a_piece_says_what_of_it_is_left() -> None:
    spec = _left(_sample("orchard_bench"), "partition_height")
    note = "the height of the partitions is measured at the dry fit, before it is cut"
    bench, plain = build(spec), build(_sample("orchard_bench"))
    assert note in bench.part("partition_1").notes
    assert bench.part("top").notes == plain.part("top").notes
    assert [part.shape for part in bench.parts] == [part.shape for part in plain.parts]


def test_each_size_is_a_choice_of_a_bench_that_has_such_pieces() -> None:
    bench = build(default_spec())
    kinds = {part.kind for part in bench.parts}
    for size in SIZES:
        if size.there(bench.spec):
            assert kinds & set(size.kinds), size.name
