"""Names led to parts: near them, and no leader across another."""

from __future__ import annotations

from itertools import combinations
from pathlib import Path

import pytest
import shapely

from exporters.project_file import load
from geometry.bench.build import build
from geometry.drawing.marks import Label, Role, Strokes
from geometry.sheets.layout import Layout
from geometry.sheets.section_page import cross_section_leaf
from shared.paper import PAPERS
from tests.geometry.sheets.on_sheet import ink

SAMPLES = sorted((Path(__file__).parents[3] / "sample_projects").glob("*.settle"))
# With most parts cut through: slats, drawers one above the other, a rest of many pieces.
QUICK = ("bakehouse_bench", "bowling_green_bench", "choir_loft_bench")
_ARROW = 7.0  # mm: the shafts of a plane's arrows are shorter


def samples() -> list[object]:
    return [
        pytest.param(path, id=path.stem, marks=() if path.stem in QUICK else pytest.mark.sweep)
        for path in SAMPLES
    ]


@pytest.mark.parametrize("path", samples())
def test_leaders_of_sections_are_short_and_do_not_cross(path):
    """None is longer than a hand is broad, and each is clear of all others."""
    leaf = cross_section_leaf(build(load(path).spec), Layout(PAPERS["A4"]))
    leaders = [
        shapely.LineString([(a, b), (c, d)])
        for mark in leaf.marks
        if isinstance(mark, Strokes) and mark.role is Role.DIMENSION and not mark.owner
        for a, b, c, d in mark.segments.tolist()
    ]
    assert max(line.length for line in leaders) < 70.0
    assert not [1 for one, other in combinations(leaders, 2) if one.crosses(other)]
    names = [m for m in leaf.marks if isinstance(m, Label) and m.role is Role.TEXT]
    assert not [(a.text, b.text) for a, b in combinations(names, 2) if ink(a).intersects(ink(b))]
