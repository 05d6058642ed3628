"""One maker's way through a real window: drag the flare, take it back, type it, save, pack.

The pointer and the keys come from the X server, the judgement from its pixels and from the files.
Where ink must be is worked out here from the bench's numbers: the top's deep stretch lies at
depth + flare, its run-out goes straight to depth, and the front leans from depth at the case's
underside to depth + flare at the seat.
"""

from __future__ import annotations

import json
import shutil
import time
from collections.abc import Iterator, Sequence
from pathlib import Path

import numpy as np
import pytest

from tests.journeys.program import ROOT, Program, command, open_program, wait_until
from tests.journeys.screen import INK, Screen, Shades, Spot, ink_share, screen_of_ones_own

pytestmark = pytest.mark.journey

SAMPLE = ROOT / "sample_projects" / "reading_room_bench.settle"
# The sample's own numbers, mm.
DEPTH, FLARE, STRAIGHT, RUN_OUT_END, BASE, CASE = 410.0, 85.0, 520.0, 1340.0, 145.0, 310.0


@pytest.fixture
def screen() -> Iterator[Screen]:
    with screen_of_ones_own() as one:
        yield one


@pytest.fixture
def file(tmp_path: Path) -> Path:
    return Path(shutil.copy(SAMPLE, tmp_path / "bench.settle"))


@pytest.fixture
def program(file: Path, screen: Screen, tmp_path: Path) -> Iterator[Program]:
    with open_program(file, screen, tmp_path / "home") as one:
        yield one


def between(start: Spot, end: Spot, count: int = 40) -> list[Spot]:
    """Places along a line, its ends left out: other lines meet there."""
    shares = np.linspace(0.04, 0.96, count)
    return [tuple(np.add(start, np.subtract(end, start) * share)) for share in shares]


def deep_stretch(program: Program, flare: float) -> list[Spot]:
    front = -(DEPTH + flare)
    return between(program.place("plan", 0, front), program.place("plan", STRAIGHT, front))


def run_out(program: Program, flare: float) -> list[Spot]:
    """The half next to the deep stretch, where run-outs of different flares lie apart."""
    middle = program.place("plan", (STRAIGHT + RUN_OUT_END) / 2, -(DEPTH + flare / 2))
    return between(program.place("plan", STRAIGHT, -(DEPTH + flare)), middle)


def lean(program: Program, flare: float) -> list[Spot]:
    """The upper half, likewise; seen from the left the front is at the right hand."""
    middle = program.place("end left", DEPTH + flare / 2, BASE + CASE / 2)
    return between(middle, program.place("end left", DEPTH + flare, BASE + CASE))


def sheet_of(shades: Shades, sheet: Sequence[float]) -> Shades:
    left, top, width, height = (round(each) for each in sheet)
    return shades[top : top + height, left : left + width]


def still_picture(screen: Screen, sheet: Sequence[float]) -> Shades:
    """The sheet with the pointer off it, once two looks a while apart agree: what comes
    later than the drawing, such as findings, has come by then."""
    screen.move((sheet[0] + sheet[2] / 2, sheet[1] + sheet[3] + 85))  # where nothing says more
    last = sheet_of(screen.shades(), sheet)

    def settled() -> bool:
        nonlocal last
        time.sleep(0.3)
        before, last = last, sheet_of(screen.shades(), sheet)
        return bool(np.array_equal(before, last))

    wait_until(settled)
    return last


def test_a_bench_is_dragged_taken_back_typed_saved_and_packed(
    program: Program, screen: Screen, file: Path, tmp_path: Path
) -> None:
    screen.take_focus("bench.* – Settlewright")
    state = program.state("flare")
    sheet, per_mm = state["sheet"], state["pixels_per_mm"]
    assert state["values"]["flare"] == FLARE

    first = still_picture(screen, sheet)
    dark = first < INK
    assert 0.005 < dark.mean() < 0.2, "paper with a drawing on it"
    assert np.ptp(np.nonzero(dark.any(axis=0))) > 0.8 * sheet[2], "as large as the sheet takes it"
    for line in (deep_stretch, run_out, lean):
        assert ink_share(screen.shades(), line(program, FLARE)) > 0.95, line.__name__
        assert ink_share(screen.shades(), line(program, FLARE - 45)) < 0.25, line.__name__

    # A hand on the edge of the deep stretch, up towards the wall.
    edge = program.place("plan", STRAIGHT / 3, -(DEPTH + FLARE))
    by = (0.0, -12.0)
    screen.press(edge)
    screen.pull(edge, by)
    wait_until(lambda: program.state("flare")["values"]["flare"] != FLARE)
    in_hand = program.state("flare")
    assert in_hand["saved"], "while the hand is on it nothing is settled"
    shown = sheet_of(screen.shades(), sheet)
    assert not np.array_equal(shown, first), "the drawing follows before the hand lets go"
    screen.let_go()
    wait_until(lambda: not program.state()["saved"])

    dragged = program.state("flare")["values"]["flare"]
    assert dragged == pytest.approx(FLARE + by[1] / per_mm, abs=2.0 / per_mm)
    second = still_picture(screen, sheet)
    for line in (deep_stretch, run_out, lean):
        assert ink_share(screen.shades(), line(program, dragged)) > 0.95, line.__name__
        assert ink_share(screen.shades(), line(program, FLARE)) < 0.25, line.__name__

    # Back and forth: the same bench is the same picture, to the pixel.
    screen.keys("ctrl+z")
    wait_until(lambda: program.state("flare")["values"]["flare"] == FLARE)
    assert np.array_equal(still_picture(screen, sheet), first)
    screen.keys("ctrl+y")
    wait_until(lambda: program.state("flare")["values"]["flare"] == dragged)
    assert np.array_equal(still_picture(screen, sheet), second)

    # The same value typed on its dimension: 3 1/2 in are 88.9 mm.
    screen.click(program.text("flare"))
    screen.keys("ctrl+a")
    screen.type("3 1/2 in")
    screen.keys("Return")
    wait_until(lambda: program.state("flare")["values"]["flare"] == pytest.approx(88.9))

    before = file.read_bytes()
    screen.keys("ctrl+s")
    wait_until(lambda: program.state()["saved"])
    assert file.read_bytes() != before
    screen.keys("ctrl+q")
    assert program.end() == 0
    assert program.said.read_text() == "", "a quiet end"

    # What was saved is what the command line reads and packs.
    facts = json.loads(command("facts", file).stdout)
    assert facts["parameters"]["flare"]["value"] == pytest.approx(88.9)
    pack = tmp_path / "pack"
    done = command("pack", file, "--out", pack)
    assert done.returncode == 0, done.stderr
    names = {each.name for each in pack.iterdir()}
    assert names >= {"drawings.pdf", "templates.pdf", "cut_list.csv", "dxf", "meshes", "facts.json"}
    assert json.loads((pack / "facts.json").read_text()) == facts
