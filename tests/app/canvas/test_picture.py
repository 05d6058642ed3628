"""Marks as they are painted: small texts stay within the width that the drawing gives them."""

from __future__ import annotations

import pytest
from PySide6.QtGui import QImage, QPainter
from pytestqt.qtbot import QtBot

from app.canvas.picture import Picture
from app.look.themes import PAPER
from geometry.drawing.marks import Anchor, Label, Role
from shared.lettering import text_width

TEXT = "Hallway of the boat club, under the roll of crews"


@pytest.mark.parametrize("density", [1.5, 1.9, 2.3, 2.9, 4.0])
@pytest.mark.parametrize("anchor", [Anchor.START, Anchor.MIDDLE, Anchor.END])
def test_a_text_keeps_its_width_at_any_size(qtbot: QtBot, density: float, anchor: Anchor) -> None:  # noqa: ARG001
    """A font of whole pixels would be up to a tenth wider in a small picture of a page."""
    width = text_width(TEXT, 1.8) * density
    before = {Anchor.START: 0.0, Anchor.MIDDLE: width / 2.0, Anchor.END: width}[anchor]
    image = QImage(800, 60, QImage.Format.Format_RGB32)
    image.fill(0xFFFFFFFF)
    label = Label(Role.TEXT, TEXT, ((40.0 + before) / density, -30.0 / density), 1.8, anchor)
    painter = QPainter(image)
    Picture([label], density, 1.0).paint(painter, PAPER)
    painter.end()
    inked = [
        x for x in range(800) if any(image.pixelColor(x, y).lightness() < 230 for y in range(60))
    ]
    assert inked[0] == pytest.approx(40.0, abs=3.0)
    assert inked[-1] < 40.0 + 1.02 * width + 2.0
    assert inked[-1] > 40.0 + 0.85 * width
