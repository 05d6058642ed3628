"""Shifting and stretching of every kind of mark."""

from __future__ import annotations

import numpy as np
import pytest

from geometry.drawing.marks import Arc, Fill, Label, Role, Strokes
from geometry.drawing.shifting import shifted
from geometry.drawing.stretching import Stretch

STROKES = Strokes(Role.CUT, np.array([(0.0, 0.0, 10.0, 0.0)]), owner="part:leg")
ARC = Arc(Role.CUT, (0.0, 0.0), 5.0, 0.0, 360.0)
FILL = Fill(Role.CUT, ((0.0, 0.0), (1.0, 0.0), (0.0, 1.0)))
LABEL = Label(Role.TEXT, "leg", (2.0, 3.0), 2.5)


def test_every_mark_is_shifted():
    assert shifted(STROKES, (1.0, 2.0)).segments.tolist() == [[1.0, 2.0, 11.0, 2.0]]
    assert shifted(ARC, (1.0, 2.0)).centre == (1.0, 2.0)
    assert shifted(FILL, (1.0, 2.0)).points[1] == (2.0, 2.0)
    assert shifted(LABEL, (1.0, 2.0)).at == (3.0, 5.0)
    assert shifted(STROKES, (1.0, 2.0)).owner == "part:leg"


def test_each_axis_is_stretched_by_its_own_factor():
    stretch = Stretch(origin=(0.0, 0.0), to=(8.0, 20.0), factors=(1.02, 0.99))
    assert stretch.mark(STROKES).segments[0].tolist() == pytest.approx([8.0, 20.0, 18.2, 20.0])
    assert stretch.mark(LABEL).at == pytest.approx((8.0 + 2.04, 20.0 + 2.97))
    assert stretch.mark(LABEL).height == 2.5
    assert stretch.mark(FILL).points[2] == pytest.approx((8.0, 20.99))


def test_a_stretched_circle_is_an_ellipse_of_chords():
    stretch = Stretch(origin=(0.0, 0.0), to=(0.0, 0.0), factors=(1.02, 0.98))
    points = stretch.mark(ARC).segments
    assert points[:, 0].max() == pytest.approx(5.1, abs=0.01)
    assert points[:, 1].max() == pytest.approx(4.9, abs=0.01)
    on_ellipse = (points[:, 0] / 5.1) ** 2 + (points[:, 1] / 4.9) ** 2
    assert np.allclose(on_ellipse, 1.0)
