"""The sheet's border line is as wide on all four sides, on any screen."""

from __future__ import annotations

import pytest
from PySide6.QtGui import QColor, QPixmap
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from app.look.palettes import palette_of, theme_of
from app.look.paper_frame import DESK, MARGIN, PaperFrame
from app.look.themes import PAPER, Tone

WIDE, HIGH = 120, 90


@pytest.mark.parametrize("ratio", [1, 2, 3])
def test_the_border_has_one_width_all_round_and_nothing_inside_covers_it(
    qtbot: QtBot, ratio: int
) -> None:
    frame = PaperFrame()
    qtbot.addWidget(frame)
    frame.setPalette(palette_of(PAPER))
    frame.resize(WIDE, HIGH)
    inside = QWidget(frame)
    inside.setAutoFillBackground(True)
    frame.column.addWidget(inside)
    frame.ensurePolished()
    frame.grab()  # lays out
    picture = QPixmap(WIDE * ratio, HIGH * ratio)
    picture.setDevicePixelRatio(ratio)
    frame.render(picture)
    image = picture.toImage()
    ink = QColor(theme_of(frame.palette()).tone(Tone.INK)).rgb()
    edge = (DESK + MARGIN) * ratio
    middle = {"x": WIDE * ratio // 2, "y": HIGH * ratio // 2}
    across = [x for x in range(WIDE * ratio) if image.pixel(x, middle["y"]) == ink]
    down = [y for y in range(HIGH * ratio) if image.pixel(middle["x"], y) == ink]
    for found, size in ((across, WIDE * ratio), (down, HIGH * ratio)):
        first = list(range(edge, edge + ratio))
        assert found == [*first, *(size - 1 - place for place in reversed(first))]
