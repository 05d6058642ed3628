"""The job from left to right in the trade's words; only the stages that work are there."""

from __future__ import annotations

from PySide6.QtCore import QRectF, Qt, Signal
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QWidget

from app.look.palettes import theme_of
from app.look.word_button import WordButton
from app.scene.finding_words import count_text

BRIEF, DRAWING, JOINTS = "Brief", "Drawing", "Joints"
CARVING, PAPERS = "Carving", "Papers"
STAGES = (BRIEF, DRAWING, JOINTS, CARVING, PAPERS)


class JobStrip(QWidget):
    """``stage_chosen`` carries the stage's place in ``STAGES``."""

    stage_chosen = Signal(int)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._group = QButtonGroup(self)
        self._row = QHBoxLayout(self)
        self._row.setContentsMargins(8, 0, 8, 0)
        self._row.setSpacing(0)
        for place, stage in enumerate(STAGES):
            button = WordButton(stage, self)
            button.setCheckable(True)
            button.setToolTip(f"{stage} (Ctrl+{place + 1})")
            self._group.addButton(button, place)
            self._row.addWidget(button)
        self._row.addStretch(1)
        self.go_to(STAGES.index(DRAWING))
        self._group.idClicked.connect(self.stage_chosen)

    def go_to(self, place: int) -> None:
        self._group.button(place).setChecked(True)

    def button(self, place: int) -> WordButton:
        button = self._group.button(place)
        assert isinstance(button, WordButton)
        return button

    def show_stage(self, stage: str, *, there: bool) -> None:
        """A stage that only some benches have."""
        self.button(STAGES.index(stage)).setVisible(there)

    def show_count(self, count: int) -> None:
        """The drawing's findings, as a number after its word and in words to a screen reader."""
        button = self.button(STAGES.index(DRAWING))
        button.setText(f"{DRAWING}  {count}" if count else DRAWING)
        button.setAccessibleName(f"{DRAWING}, {count_text(count)}")
        button.updateGeometry()

    def add_at_end(self, widget: QWidget) -> None:
        """Something that belongs to the whole window, at the right."""
        self._row.addWidget(widget, 0, Qt.AlignmentFlag.AlignVCenter)

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: ARG002
        theme = theme_of(self.palette())
        painter = QPainter(self)
        try:
            rule = QRectF(0, self.height() - 1, self.width(), 1)
            painter.fillRect(rule, QColor(theme.hairline))
        finally:
            painter.end()
