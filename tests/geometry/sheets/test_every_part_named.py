"""On the pages of the whole bench each part that shows has its label, and the others are told.

What shows, and on what a leader ends, is judged by rays that trimesh casts down onto the page.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date
from pathlib import Path

import pytest

from exporters.project_file import load
from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.limits import set_values
from geometry.design.cutting_plane import Plane, Way
from geometry.design.part import Part
from geometry.drawing.marks import Label, Mark, Role
from geometry.sheets.layout import Layout
from geometry.sheets.numbering import Numbering
from geometry.sheets.part_labels import Named
from geometry.sheets.section_page import section_page
from geometry.sheets.section_plane import reach_of
from geometry.sheets.section_sheet import section_sheet
from geometry.sheets.title_block import title_block_of
from geometry.sheets.whole_views import exploded_page, pictorial_page
from geometry.solids.measure import volume_of
from geometry.views.view import View
from shared.paper import PAPERS, Paper
from shared.units import SHOWN_IN16, SHOWN_MM
from tests.judges.labels import PageJudge, crossing, struck

SAMPLES = sorted((Path(__file__).parents[3] / "sample_projects").glob("*.settle"))
# Many slats, many drawers, a carved front with lippings, sections full of wedges and tenons.
QUICK = ("bowling_green_bench", "boat_club_bench", "lamp_room_bench", "stitching_room_bench")
TURNS = (0.0, 30.0)  # degrees, of a cutting plane
PAGES = ("pictorial", "exploded", "sections")
TOLD = re.compile(r"Not seen here: ([^.]*)\.")


@dataclass(frozen=True)
class Seen:
    """One view on a page: its parts by index, how it is drawn, its labels, the page's marks."""

    parts: dict[int, Part]
    view: View
    scale: float
    labels: tuple[Named, ...]
    marks: tuple[Mark, ...]


def views_on(page: str, bench: Bench, layout: Layout) -> list[Seen]:
    if page == "sections":
        found = section_page(bench, layout)
        return [
            Seen(
                dict(one.cut.section.left),
                one.cut.section.view,
                one.scale,
                one.labels,
                found.marks,
            )
            for one in found.shown
        ]
    drawn = (pictorial_page if page == "pictorial" else exploded_page)(bench, layout)
    parts = dict(enumerate(drawn.figure.parts))
    return [Seen(parts, drawn.figure.linework.view, drawn.scale, drawn.labels, drawn.marks)]


def samples() -> list[object]:
    return [
        pytest.param(path, id=path.stem, marks=() if path.stem in QUICK else pytest.mark.sweep)
        for path in SAMPLES
    ]


def hold_named(bench: Bench, layout: Layout, page: str) -> None:
    for seen in views_on(page, bench, layout):
        judge = PageJudge(seen.parts, seen.view, seen.scale)
        labelled = {one.index for one in seen.labels}
        assert [bench.parts[k].title for k in judge.seen() - labelled] == []
        assert judge.astray(seen.labels) == []
        assert struck(seen.labels) == []
        assert crossing(seen.labels) == []
        if page == "exploded":
            assert len(labelled) == len(bench.parts)
        hold_said(bench, seen)


def hold_said(bench: Bench, seen: Seen) -> None:
    """Each label is a name, or a number that stands with its name in the list."""
    texts = [m for m in seen.marks if isinstance(m, Label) and m.role is Role.TEXT]
    names = {m.text for m in texts}
    listed = {m.text for m in texts if m.bold}
    for one in seen.labels:
        title = bench.parts[one.index].title
        assert title in names, title
        assert one.text in (title, str(one.index + 1)), title
        assert one.text == title or one.text in listed, title


@pytest.mark.parametrize("page", PAGES)
@pytest.mark.parametrize("path", samples())
def test_each_part_that_shows_is_labelled(path, page):
    project = load(path)
    layout = Layout(PAPERS["A4"], shown=SHOWN_MM, title=title_block_of(project, date(2025, 3, 4)))
    hold_named(build(project.spec), layout, page)


@pytest.mark.parametrize("page", PAGES)
@pytest.mark.parametrize(
    ("sample", "changes"),
    [
        ("porch_bench", {"length": 300.0, "partition_count": 0.0}),
        ("bowling_green_bench", {"length": 3000.0}),
        ("boat_club_bench", {"length": 3000.0}),
    ],
)
def test_of_a_short_and_of_a_long_bench_too(sample, changes, page):
    path = next(path for path in SAMPLES if path.stem == sample)
    bench = build(set_values(load(path).spec, changes))
    hold_named(bench, Layout(PAPERS["Letter"], shown=SHOWN_IN16), page)


@pytest.mark.parametrize("path", samples())
def test_what_a_view_does_not_show_is_told_under_it(path):
    """As many as have no label: by name, by number, or by how many there are of a kind."""
    bench = build(load(path).spec)
    layout = Layout(PAPERS["A3"], text_height=1.8)
    for page in PAGES:
        views = views_on(page, bench, layout)
        texts = [m.text for m in views[0].marks if isinstance(m, Label) and not m.bold]
        told = TOLD.findall(" ".join(texts))
        hidden = [len(bench.parts) - len(seen.labels) for seen in views]
        assert [count_of(one) for one in told] == [count for count in hidden if count], page


def count_of(told: str) -> int:
    """How many parts a sentence tells."""
    count = 0
    for words in told.split("; "):
        if re.fullmatch(r"[0-9, –]+", words):
            for run in words.split(", "):
                first, _, last = run.partition("–")
                count += int(last or first) - int(first) + 1
        elif found := re.search(r"\((?:all )?(\d+)(?: of \d+)?\)$", words):
            count += int(found[1])
        else:
            count += 1
    return count


@pytest.mark.parametrize("page", PAGES)
def test_of_very_many_parts_those_made_alike_share_a_number(page):
    """Seven openings with three drawers each: 143 parts on a page of A4."""
    spec = load(next(path for path in SAMPLES if path.stem == "boat_club_bench")).spec
    spec = set_values(set_values(spec, {"length": 3000.0}), {"partition_count": 6.0})
    for k in range(1, 8):
        spec = set_values(spec, {f"opening_{k}_fill": "drawers"})
        spec = set_values(spec, {f"opening_{k}_drawers": 3.0})
    bench = build(spec)
    assert len(bench.parts) == 143
    numbers = Numbering(bench.parts).texts
    for number in set(numbers):
        alike = [part for part, own in zip(bench.parts, numbers, strict=True) if own == number]
        assert len({round(volume_of(part.shape), 3) for part in alike}) == 1
        assert len({(part.kind, part.material) for part in alike}) == 1
    for seen in views_on(page, bench, Layout(PAPERS["A4"])):
        judge = PageJudge(seen.parts, seen.view, seen.scale)
        labelled = {one.text for one in seen.labels}
        assert {numbers[k] for k in judge.seen()} - labelled == set()
        assert judge.astray(seen.labels) == []
        assert struck(seen.labels) == []
        assert crossing(seen.labels) == []
        listed = {m.text for m in seen.marks if isinstance(m, Label) and m.bold}
        assert labelled <= listed


def turned() -> list[object]:
    """The quick samples with a plane as it comes and a turned one, all others with one of them."""
    both = [pytest.param(path, turn) for path in SAMPLES if path.stem in QUICK for turn in TURNS]
    others = [path for path in SAMPLES if path.stem not in QUICK]
    return [
        *both,
        *(
            pytest.param(path, TURNS[place % 2], marks=pytest.mark.sweep)
            for place, path in enumerate(others)
        ),
    ]


@pytest.mark.parametrize(
    ("path", "turn"), turned(), ids=lambda one: one.stem if isinstance(one, Path) else str(one)
)
def test_in_a_section_that_a_hand_has_moved(path, turn):
    """As in a window; what it does not show is told beside the small view."""
    bench = build(load(path).spec)
    layout = Layout(Paper("screen", 330.0, 190.0, 0.0, 0.0, ""), text_height=2.5, frame=False)
    for way in Way:
        low, high = reach_of(bench, way, turn)
        for share in (0.3, 0.6):
            found = section_sheet(bench, Plane(way, low + share * (high - low), turn), layout)
            judge = PageJudge(dict(found.cut.left), found.cut.view, found.scale)
            labelled = {one.index for one in found.labels}
            assert [bench.parts[k].title for k in judge.seen() - labelled] == []
            assert judge.astray(found.labels) == []
            assert struck(found.labels) == []
            assert crossing(found.labels) == []
            texts = [m.text for m in found.marks if isinstance(m, Label) and not m.bold]
            told = TOLD.findall(" ".join(texts))
            hidden = len(bench.parts) - len(labelled)
            assert [count_of(one) for one in told] == ([hidden] if hidden else [])
