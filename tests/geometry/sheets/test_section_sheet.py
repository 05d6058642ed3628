"""A section beside the view in which its plane is pulled."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

from exporters.project_file import load
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.drawing.marks import Role, Sheet, Strokes
from geometry.sheets.layout import Layout
from geometry.sheets.section_sheet import Way, reach_of, section_sheet
from shared.paper import PAPERS
from tests.geometry.sheets.on_sheet import off_the_sheet, overlapping_texts, words

SAMPLES = sorted((Path(__file__).parents[3] / "sample_projects").glob("*.settle"))
LAYOUT = Layout(PAPERS["A4"], frame=False)


@pytest.fixture(scope="module")
def plain():
    return build(default_spec())


@pytest.mark.parametrize("way", Way)
def test_a_point_of_the_small_view_is_a_place_of_the_plane(plain, way):
    """The line of the plane goes through the point from which its place was read."""
    low, high = reach_of(plain, way)
    for share in (0.2, 0.5, 0.83):
        place = low + share * (high - low)
        found = section_sheet(plain, way, place, LAYOUT)
        (line,) = [m for m in found.marks if isinstance(m, Strokes) and m.role is Role.CENTRE]
        x0, y0, x1, y1 = line.segments[0].tolist()
        assert (x0 == x1) == (found.key_axis == 0)
        middle = ((x0 + x1) / 2.0, (y0 + y1) / 2.0)
        assert found.place_at(middle) == pytest.approx(place, abs=1e-6)
    assert found.place_at((-1e6, -1e6)) in (low, high)  # no farther than the bench


def test_a_plane_beyond_the_bench_is_brought_to_its_end(plain):
    low, high = reach_of(plain, Way.ACROSS)
    assert "{" not in "".join(words(_sheet(section_sheet(plain, Way.ACROSS, high + 50, LAYOUT))))
    assert section_sheet(plain, Way.ACROSS, low - 50.0, LAYOUT).limits == (low, high)


def test_the_caption_tells_the_place(plain):
    texts = words(_sheet(section_sheet(plain, Way.LEVEL, 180.0, LAYOUT)))
    assert "Cut level, 180 mm above the floor" in texts


def _sheet(found) -> Sheet:
    return Sheet("section", LAYOUT.paper.width, LAYOUT.paper.height, found.marks)


@pytest.mark.parametrize("sample", SAMPLES[::3], ids=lambda path: path.stem)
def test_sections_of_samples_all_the_way_through(sample):
    bench = build(load(sample).spec)
    for way in Way:
        low, high = reach_of(bench, way)
        for place in np.linspace(low, high, 5):
            sheet = _sheet(section_sheet(bench, way, float(place), LAYOUT))
            assert overlapping_texts(sheet) == []
            assert off_the_sheet(sheet) == []
