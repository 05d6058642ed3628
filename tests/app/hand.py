"""A hand for tests: real mouse and wheel events at places of the sheet."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QMouseEvent, QWheelEvent
from PySide6.QtWidgets import QApplication

from app.canvas.sheet_canvas import SheetCanvas

Spot = tuple[float, float]
LEFT = Qt.MouseButton.LeftButton
NONE = Qt.MouseButton.NoButton
NO_KEY = Qt.KeyboardModifier.NoModifier


class MouseHand:
    """Presses, moves and releases on one canvas; the event loop runs between the moves."""

    def __init__(self, canvas: SheetCanvas) -> None:
        self.canvas = canvas
        self.at: Spot = (0.0, 0.0)

    def move(self, at: Spot, *, keys: Qt.KeyboardModifier = NO_KEY, held: bool = False) -> None:
        self.at = at
        self._send(QEvent.Type.MouseMove, NONE, LEFT if held else NONE, keys)

    def press(self, at: Spot, button: Qt.MouseButton = LEFT) -> None:
        self.move(at)
        self._send(QEvent.Type.MouseButtonPress, button, button, NO_KEY)

    def release(self, button: Qt.MouseButton = LEFT) -> None:
        self._send(QEvent.Type.MouseButtonRelease, button, NONE, NO_KEY)

    def pull(self, by: Spot, *, steps: int = 8, keys: Qt.KeyboardModifier = NO_KEY) -> None:
        """Move a pressed button by so many pixels, in a few moves."""
        x, y = self.at
        for step in range(1, steps + 1):
            share = step / steps
            self.move((x + by[0] * share, y + by[1] * share), keys=keys, held=True)

    def drag(self, start: Spot, by: Spot, *, keys: Qt.KeyboardModifier = NO_KEY) -> None:
        self.press(start)
        self.pull(by, keys=keys)
        self.release()

    def click(self, at: Spot) -> None:
        self.press(at)
        self.release()

    def wheel(self, at: Spot, notches: float) -> None:
        spot = QPointF(*at)
        event = QWheelEvent(
            spot,
            self.canvas.mapToGlobal(spot),
            QPoint(),
            QPoint(0, round(120 * notches)),
            NONE,
            NO_KEY,
            Qt.ScrollPhase.NoScrollPhase,
            False,
        )
        QApplication.sendEvent(self.canvas, event)
        QApplication.processEvents()

    def text_of(self, dimension: str) -> Spot:
        """The middle of a dimension's text, in pixels."""
        corners = self.canvas.view.text_corners(dimension)
        assert corners, f"{dimension} is not on the sheet"
        return (sum(x for x, _ in corners) / 4, sum(y for _, y in corners) / 4)

    def _send(
        self,
        kind: QEvent.Type,
        button: Qt.MouseButton,
        buttons: Qt.MouseButton,
        keys: Qt.KeyboardModifier,
    ) -> None:
        spot = QPointF(*self.at)
        event = QMouseEvent(kind, spot, self.canvas.mapToGlobal(spot), button, buttons, keys)
        QApplication.sendEvent(self.canvas, event)
        QApplication.processEvents()
