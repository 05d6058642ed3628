"""A section beside the view in which its plane is pulled."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

from exporters.project_file import load
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.design.cutting_plane import Plane, Way
from geometry.drawing.marks import Role, Sheet, Strokes
from geometry.sheets.layout import Layout
from geometry.sheets.section_plane import reach_of
from geometry.sheets.section_sheet import section_sheet
from shared.paper import PAPERS
from tests.geometry.sheets.on_sheet import off_the_sheet, overlapping_texts, words

SAMPLES = sorted((Path(__file__).parents[3] / "sample_projects").glob("*.settle"))
LAYOUT = Layout(PAPERS["A4"], frame=False)


@pytest.fixture(scope="module")
def plain():
    return build(default_spec())


@pytest.mark.parametrize("turn", [0.0, 30.0, -75.0])
@pytest.mark.parametrize("way", Way)
def test_a_point_of_the_small_view_is_a_place_of_the_plane(plain, way, turn):
    """The line of the plane goes through the point from which its place was read."""
    low, high = reach_of(plain, way, turn)
    for share in (0.2, 0.5, 0.83):
        plane = Plane(way, low + share * (high - low), turn)
        found = section_sheet(plain, plane, LAYOUT)
        (line,) = [m for m in found.marks if isinstance(m, Strokes) and m.role is Role.CENTRE]
        x0, y0, x1, y1 = line.segments[0].tolist()
        for part in (0.2, 0.5, 0.9):
            on_it = (x0 + part * (x1 - x0), y0 + part * (y1 - y0))
            assert found.key.pulled_to(on_it).at == pytest.approx(plane.at, abs=1e-6)
    assert found.key.pulled_to((-1e6, -1e6)).at in (low, high)  # no farther than the bench


def test_a_plane_beyond_the_bench_is_brought_to_its_end(plain):
    low, high = reach_of(plain, Way.ACROSS)
    beyond = section_sheet(plain, Plane(Way.ACROSS, high + 50), LAYOUT)
    assert "{" not in "".join(words(_sheet(beyond)))
    assert beyond.key.plane.at == high
    assert section_sheet(plain, Plane(Way.ACROSS, low - 50.0), LAYOUT).key.plane.at == low


def test_the_caption_tells_the_place(plain):
    texts = words(_sheet(section_sheet(plain, Plane(Way.LEVEL, 180.0), LAYOUT)))
    assert "Cut level, 180 mm above the floor" in texts


def _sheet(found) -> Sheet:
    return Sheet("section", LAYOUT.paper.width, LAYOUT.paper.height, found.marks)


@pytest.mark.parametrize("sample", SAMPLES[::3], ids=lambda path: path.stem)
def test_sections_of_samples_all_the_way_through(sample):
    bench = build(load(sample).spec)
    for way in Way:
        for turn in (0.0, 35.0, -62.0):
            low, high = reach_of(bench, way, turn)
            for place in np.linspace(low, high, 5 if turn == 0.0 else 3):
                sheet = _sheet(section_sheet(bench, Plane(way, float(place), turn), LAYOUT))
                assert overlapping_texts(sheet) == []
                assert off_the_sheet(sheet) == []
