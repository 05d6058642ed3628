"""A page of joints that are alike tells each joint's places from the end that it is measured from;
places on a piece that is left larger count from the line that it is trimmed to."""

from __future__ import annotations

import re

import pytest

from geometry.bench.build import build
from geometry.sheets.cut_words import cut_lines
from geometry.sheets.joint_words import measure_rows
from geometry.sheets.layout import Layout
from shared.paper import PAPERS
from tests.samples import sample

LAYOUT = Layout(PAPERS["A4"])


def test_stays_at_both_ends_are_told_from_the_left_and_from_the_right() -> None:
    """The lid is 1100 long; its stays' screws are 33 in from its left and from its right end."""
    bench = build(sample("lock_keepers").spec)
    parts = {part.name: part for part in bench.parts}
    stays = [joint for joint in bench.joints if joint.kind == "lid stay"]
    rows = measure_rows(stays, parts, (), LAYOUT)
    (told,) = [what for size, what in rows if what.startswith("Lid screw from end")]
    size = {what: size for size, what in rows}[told]
    assert size == "33"
    assert "from the lid's left end to the middle of the stay's screw (Box end, left" in told
    assert "from the lid's right end to the middle of the stay's screw (Box end, right" in told


def test_pilots_in_a_drawer_front_count_from_its_finished_edges() -> None:
    """434 long when fitted, 3.175 more at each edge before; the holes are 310.6 apart and as far
    from both finished ends."""
    bench = build(sample("herbarium").spec)
    front = bench.part("drawer_1_1_front")
    bores = [row.words for row in cut_lines(front.shape) if row.title == "bore"]
    found = [
        float(found.group(1))
        for text in bores
        if (found := re.search(r"middle \{([0-9.]+) mm\} from the left end", text))
    ]
    assert len(found) == 2
    assert sum(found) == pytest.approx(434.0, abs=0.1)
