"""The sheet in the window can be read: of a bench 300 mm long and of one of 3 m, on every form and
base, fitted, far out and near by; no text on a text or a line, no dimension on a line of its own
way, judged by another library.
"""

from __future__ import annotations

import math

import numpy as np
import pytest
import shapely

from app.scene.model import build_model
from app.scene.preferences import Preferences
from app.scene.sheet_view import SheetView
from app.window.samples import sample_files
from exporters.project_file import load
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import limits, set_values
from geometry.bench.overall import BASES, CASE, CROSSED, FORMS, PLINTH, SEATS, SLAB
from geometry.design.parameter import Value
from geometry.design.spec import BenchSpec
from geometry.drawing.marks import Role, Sheet, Strokes
from geometry.sheets.thinning import legible
from shared.units import SHOWN_IN16
from shared.words import Words
from tests.geometry.sheets.on_sheet import overlapping_texts, struck_texts

SHORT, LONG = 300.0, 3000.0
# What a sheet gets of windows of 1280 by 720 with its findings open, and of 1920 by 1080.
LOW, HIGH = (965.0, 440.0), (1600.0, 800.0)
DENSITY = 3.6  # pixels to the mm, as a desktop's usual type gives
ON_IT, LYING = 0.3, 2.0  # mm: nearer than that to a line, for longer than that
PREFERENCES = (Preferences(), Preferences(shown=SHOWN_IN16, words=Words.AMERICAN))
QUICK = {(CASE, CROSSED, LONG), (CASE, PLINTH, SHORT), (SLAB, BASES[2], SHORT)}
QUICK_SAMPLE = "bakehouse_bench"


def as_long_as(spec: BenchSpec, length: float) -> BenchSpec:
    """As near to a length as the bench goes."""
    allowed = limits(spec, "length")
    return set_values(spec, {"length": min(max(length, allowed.minimum), allowed.maximum)})


def furnished(spec: BenchSpec, length: float) -> BenchSpec:
    """A plain bench of that length; a long one is full."""
    steps: tuple[dict[str, Value], ...]
    if length == SHORT:
        steps = ({"partition_count": 0.0}, {"flare": 0.0}) if spec.word("seat") == CASE else ()
        for step in steps:
            spec = set_values(spec, step)
        return as_long_as(spec, length)
    spec = as_long_as(spec, length)
    case = (
        {"partition_count": 7.0},
        {"opening_1_fill": "drawers", "opening_8_fill": "drawers", "opening_3_fill": "shelf"},
    )
    rest = () if spec.word("seat") not in (CASE, SLAB) else ({"back_rest": "slats"},)
    for more in (*(case if spec.word("seat") == CASE else ()), *rest):
        spec = set_values(spec, more)
    return spec


def forms() -> list[object]:
    return [
        pytest.param(
            seat,
            base,
            length,
            id=f"{seat} on {base}, {length:.0f}"
            if FORMS[seat].on_base
            else f"{seat}, {length:.0f}",
            marks=() if (seat, base, length) in QUICK else pytest.mark.sweep,
        )
        for seat in SEATS
        for base in (BASES if FORMS[seat].on_base else (CROSSED,))
        for length in (SHORT, LONG)
    ]


def samples() -> list[object]:
    return [
        pytest.param(
            path, id=path.stem, marks=() if path.stem == QUICK_SAMPLE else pytest.mark.sweep
        )
        for path in sample_files()
    ]


def lying_on_lines(view: SheetView) -> list[tuple[str, float]]:
    """Dimension lines that lie on a visible line or on one another, and for how many mm."""
    visible = [
        mark.segments
        for mark in view.laid_out.marks
        if isinstance(mark, Strokes) and mark.role is Role.VISIBLE
    ]
    drawn = shapely.linestrings(np.concatenate(visible).reshape(-1, 2, 2))
    straight = [
        target
        for target in view.laid_out.targets
        if view.model.dimension_named[target.name].apex is None
    ]
    own = [shapely.LineString([t.line[:2], t.line[2:]]) for t in straight]
    lines, tree = [*drawn.tolist(), *own], shapely.STRtree([*drawn.tolist(), *own])
    found = []
    for place, (target, line) in enumerate(zip(straight, own, strict=True)):
        about = line.buffer(ON_IT, cap_style="flat")
        for other in tree.query(about, predicate="intersects").tolist():
            if other == len(drawn) + place or _share_a_row(target.line, other - len(drawn), own):
                continue
            long = lines[other].intersection(about).length
            if long > LYING and _same_way(line, lines[other]):
                found.append((target.name, long))
    return found


def _share_a_row(
    line: tuple[float, float, float, float], other: int, own: list[shapely.LineString]
) -> bool:
    """Running dimensions go from one point along one line: they are meant to lie on each other."""
    return other >= 0 and math.dist(line[:2], own[other].coords[0]) < 1e-6


def _same_way(one: shapely.LineString, other: shapely.LineString) -> bool:
    (ax, ay), (bx, by) = (np.diff(each.coords, axis=0)[0] for each in (one, other))
    return abs(ax * by - ay * bx) < 0.02 * math.hypot(ax, ay) * math.hypot(bx, by)


def hold_readable(spec: BenchSpec) -> None:
    model = build_model(spec)
    for preferences in PREFERENCES:
        view = SheetView(model, preferences)
        for size in (LOW, HIGH):
            view.resize(size, DENSITY)
            view.fit()
            assert not view.overflows()
            for notches in (0.0, -10.0, 16.0):  # fitted, a quarter as large, two and a half times
                view.zoom((size[0] / 2, size[1] / 2), notches)
                arranged = view.laid_out.arranged.sheet
                sheet = Sheet("", arranged.width, arranged.height, legible(arranged.marks))
                told = (preferences.shown.unit, size, notches)
                assert struck_texts(sheet) == [], told
                assert overlapping_texts(sheet) == [], told
                assert lying_on_lines(view) == [], told


@pytest.mark.parametrize(("seat", "base", "length"), forms())
def test_every_form_on_every_base_can_be_read_short_and_long(
    seat: str, base: str, length: float
) -> None:
    spec = set_values(default_spec(), {"seat": seat})
    if FORMS[seat].on_base:
        spec = set_values(spec, {"base": base})
    hold_readable(furnished(spec, length))


@pytest.mark.parametrize("path", samples())
def test_every_sample_can_be_read_as_short_and_as_long_as_it_goes(path) -> None:
    spec = load(path).spec
    for length in (spec.number("length"), SHORT, LONG):
        hold_readable(as_long_as(spec, length))
