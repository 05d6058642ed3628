"""The lines of the grain through simple pieces, worked by hand."""

from __future__ import annotations

import numpy as np
import pytest

from geometry.cuts.cut import Blank
from geometry.cuts.saw import SawCut
from geometry.cuts.shaped_edge import ShapedEdge
from geometry.design.part import Shape
from geometry.solids.grain import across_grain, at_end, runs_of, runs_out_at_both, runs_out_from

BLANK = Blank(300.0, 60.0, 20.0)


def test_a_straight_piece_has_its_grain_from_end_to_end() -> None:
    runs = runs_of(Shape(BLANK, ()))
    assert runs.length == pytest.approx(np.full(144, 300.0))
    assert not runs.from_side.any()
    assert not runs.to_side.any()


def test_a_taper_ends_grain_where_it_lies() -> None:
    """From y = 60 at x = 100 down to y = 20 at the end: a fibre at y ends at 100 + 5 (60 - y)."""
    size = 40.0**2 + 200.0**2
    taper = SawCut("taper", (100.0, 60.0, 0.0), (40.0 / size**0.5, 200.0 / size**0.5, 0.0))
    shape = Shape(BLANK, (taper,))
    runs = runs_of(shape)
    assert runs.end == pytest.approx(np.minimum(300.0, 100.0 + 5.0 * (60.0 - runs.y)), abs=1e-6)
    assert (runs.to_side == (runs.y > 20.0)).all()
    assert not runs_out_at_both(shape)
    assert not runs_out_from(shape, far=True)
    assert at_end(shape, 5.0, far=True) is None


def test_a_piece_sawn_aslant_has_all_its_grain_across() -> None:
    """20 wide at 1 in 4: a fibre is 80 long, four times the lesser size."""
    lines = [((0.0, y), (300.0, y + 75.0)) for y in (-40.0, -20.0)]
    shape = Shape(BLANK, (ShapedEdge(lines[1], far=True), ShapedEdge(lines[0], far=False)))
    runs = runs_of(shape)
    both = runs.from_side & runs.to_side
    assert both.any()
    assert runs.length[both] == pytest.approx(np.full(int(both.sum()), 80.0))
    short = across_grain(shape, 4.5)
    assert short is not None
    assert short.share == 1.0
    assert across_grain(shape, 3.5) is None
