"""A pointer over the joints of a look: the seam it is on lights up, and a click there opens it.

Pixels of the view that it belongs to.
"""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QObject, QPointF, QRectF, QTimer, Signal
from PySide6.QtGui import QColor, QPainter, QPen, QPolygonF, Qt

from app.canvas.deeds import REST_MS
from app.canvas.marks_view import MarksView
from app.canvas.pointer_note import paint_note
from app.gestures.moments import is_still
from app.look.themes import Theme, Tone
from app.scene.joint_seams import Floats, Seam
from app.scene.look_seams import LookSeams
from geometry.primitives.frame import Vec2

_WIDE = 3.0  # pixels of a seam
_NARROW = 1.5  # of what of it lies behind wood, where more is seen
_FACE = 70  # of 255: a face in which two parts meet, over its wood


class SeamPointer(QObject):
    """``lit`` carries the joint whose seam lights up, or ''; ``opened`` one that was clicked."""

    lit = Signal(str)
    opened = Signal(str)

    def __init__(self, view: MarksView, note_of: Callable[[str], str]) -> None:
        super().__init__(view)
        self._view, self._note_of = view, note_of
        self._seams: LookSeams | None = None
        self.seam: Seam | None = None
        self.note = ""
        self._at: Vec2 = (0.0, 0.0)
        self._pressed: Vec2 | None = None
        self._rest = QTimer(self)
        self._rest.setSingleShot(True)
        self._rest.setInterval(REST_MS)
        self._rest.timeout.connect(self._rested)

    def show_seams(self, seams: LookSeams | None) -> None:
        """Other marks are shown: what was lit is not there any more."""
        self._seams = seams
        self.let_go()

    def point_at(self, at: Vec2 | None) -> bool:
        """The pointer is there, with nothing held, None when it is elsewhere; whether it is on a
        seam."""
        self._rest.stop()
        self.note = ""
        seam = None
        if at is not None and self._seams is not None:
            self._at = at
            seam = self._seams.at(self._view.to_sheet(at), self._view.density)
        before = self.seam.joint if self.seam is not None else ""
        joint = seam.joint if seam is not None else ""
        self.seam = seam
        if joint:
            self._rest.start()
        if joint != before:
            self.lit.emit(joint)
        if joint or before:
            self._view.update()
        return bool(joint)

    # The hand

    def press(self, at: Vec2) -> None:
        if self.point_at(at):
            self._pressed = at
            self._rest.stop()

    def move(self, at: Vec2) -> None:
        """With the button held: a hand that moves does not mean the joint."""
        if self._pressed is not None and not is_still(self._pressed, at):
            self.let_go()

    def release(self, at: Vec2) -> None:
        pressed, seam = self._pressed, self.seam
        self._pressed = None
        if pressed is not None and seam is not None and is_still(pressed, at):
            self.let_go()
            self.opened.emit(seam.joint)

    def let_go(self) -> bool:
        """Give a press up; whether there was one."""
        pressed, self._pressed = self._pressed, None
        self.point_at(None)
        return pressed is not None

    def _rested(self) -> None:
        if self.seam is not None and self._pressed is None:
            self.note = self._note_of(self.seam.joint)
            self._view.update()

    # Painting

    def paint(self, painter: QPainter, theme: Theme) -> None:
        if self.seam is None or self._seams is None:
            return
        hand = QColor(theme.tone(Tone.HAND))
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(Qt.PenStyle.NoPen)
        wash = QColor(hand)
        wash.setAlpha(_FACE)
        painter.setBrush(wash)
        for face in self.seam.faces:
            painter.drawPolygon(QPolygonF([QPointF(*at) for at in self._pixels(face)]))
        dashes = _NARROW if len(self.seam.lines) else _WIDE
        for lines, pen in (
            (self.seam.hidden, QPen(hand, dashes, Qt.PenStyle.DashLine)),
            (self.seam.lines, QPen(hand, _WIDE, c=Qt.PenCapStyle.RoundCap)),
        ):
            painter.setPen(pen)
            for x0, y0, x1, y1 in self._in_pixels(lines):
                painter.drawLine(QPointF(x0, y0), QPointF(x1, y1))
        painter.restore()
        if self.note:
            room = QRectF(self._view.rect())
            paint_note(painter, self.note, QPointF(*self._at), room, self._view.font(), theme)

    def lines(self) -> tuple[tuple[float, float, float, float], ...]:
        """What is lit, in pixels: first what is in plain sight."""
        if self.seam is None:
            return ()
        return (*self._in_pixels(self.seam.lines), *self._in_pixels(self.seam.hidden))

    def _in_pixels(self, lines: Floats) -> tuple[tuple[float, float, float, float], ...]:
        ends = self._pixels(lines.reshape(-1, 2))
        return tuple((*a, *b) for a, b in zip(ends[::2], ends[1::2], strict=True))

    def _pixels(self, points: Floats) -> list[Vec2]:
        assert self._seams is not None
        return [self._view.to_pixels((x, y)) for x, y in self._seams.on_sheet(points).tolist()]
