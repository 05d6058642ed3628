"""Paints the sheet: the drawing from a cached pixmap, and over it what is under the hand."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFont, QPainter, QPen, QPixmap, QPolygonF

from app.canvas.picture import Picture, marks_owned
from app.canvas.pointer_note import paint_note
from app.look.themes import Theme, Tone
from app.scene.sheet_view import SheetView
from geometry.dimensioning.dimension_marks import owner_of
from geometry.drawing.marks import Mark
from geometry.sheets.thinning import legible

RING = 14.0  # pixels
PART = "part:"  # begins the owner of what belongs to a part


@dataclass(frozen=True, slots=True)
class UnderHand:
    """What stands out on the sheet now.

    ``dimensions`` are lit, ``focus`` has the keyboard, ``part`` is under the pointer, ``picked``
    picked out; ``edge`` is a line in pixels that a drag would move; ``rings`` mark a place in each
    view; ``note`` stands near ``note_at``; ``gathered`` are parts that stand out together; ``seam``
    are lines in pixels, of a joint that a click would open.  ``plane`` are the marks of a section's
    plane, in the tone of the hand when that is on it.
    """

    dimensions: frozenset[str] = frozenset()
    focus: str = ""
    part: str = ""
    picked: str = ""
    edge: tuple[float, float, float, float] | None = None
    rings: tuple[tuple[float, float], ...] = ()
    note: str = ""
    note_at: tuple[float, float] = (0.0, 0.0)
    gathered: frozenset[str] = frozenset()
    seam: tuple[tuple[float, float, float, float], ...] = ()
    plane: tuple[Mark, ...] = ()
    on_plane: bool = False


class SheetPainter:
    """Keeps pictures of the drawing and of what is lit, until the drawing changes."""

    def __init__(self, view: SheetView) -> None:
        self._view = view
        self._picture: Picture | None = None
        self._ground: QPixmap | None = None
        self._ground_key: tuple[object, ...] = ()
        self._lit: dict[frozenset[str], Picture] = {}
        self._sheet: object = None

    def paint(
        self,
        painter: QPainter,
        size: QSize,
        ratio: float,
        theme: Theme,
        font: QFont,
        under_hand: UnderHand,
    ) -> None:
        """Everything, ground to note; ``size`` in logical pixels."""
        self._look_again(ratio)
        key = (size, ratio, theme.name, self._origin())
        if self._ground is None or key != self._ground_key:
            self._ground = self._painted_ground(size, ratio, theme)
            self._ground_key = key
        painter.drawPixmap(0, 0, self._ground)
        self._paint_over(painter, theme, under_hand, ratio)
        if under_hand.note:
            at, room = QPointF(*under_hand.note_at), QRectF(QPointF(0, 0), size.toSizeF())
            paint_note(painter, under_hand.note, at, room, font, theme)

    def _look_again(self, ratio: float) -> None:
        """Forget the pictures of a drawing that is no longer shown."""
        key = (self._view.laid_out, self._view.density, ratio)
        if self._sheet != key:
            self._sheet = key
            self._picture = None
            self._ground = None
            self._lit.clear()

    def _painted_ground(self, size: QSize, ratio: float, theme: Theme) -> QPixmap:
        ground = QPixmap(size * ratio)
        ground.setDevicePixelRatio(ratio)
        ground.fill(QColor(theme.paper))
        if self._picture is None:
            marks = legible(self._view.laid_out.marks)
            self._picture = Picture(marks, self._view.density, ratio)
        painter = QPainter(ground)
        try:
            painter.translate(*self._origin())
            self._picture.paint(painter, theme)
        finally:
            painter.end()
        return ground

    def _origin(self) -> tuple[int, int]:
        """The sheet's corner on whole pixels, so that sharp lines stay sharp while panning."""
        return (round(self._view.place.left), round(self._view.place.bottom))

    def _paint_over(
        self, painter: QPainter, theme: Theme, under_hand: UnderHand, ratio: float
    ) -> None:
        owners = {owner_of(name) for name in under_hand.dimensions}
        parts = {under_hand.part, under_hand.picked, *under_hand.gathered} - {""}
        owners |= {f"{PART}{part}" for part in parts}
        if owners:
            painter.save()
            painter.translate(*self._origin())
            self._lit_picture(frozenset(owners), ratio).paint(painter, theme, lit=True)
            painter.restore()
        if under_hand.plane:
            painter.save()
            painter.translate(*self._origin())
            plane = Picture(under_hand.plane, self._view.density, ratio)
            plane.paint(painter, theme, lit=under_hand.on_plane)
            painter.restore()
        hand = QColor(theme.tone(Tone.HAND))
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        edge = () if under_hand.edge is None else (under_hand.edge,)
        painter.setPen(QPen(hand, 4, c=Qt.PenCapStyle.RoundCap))
        for x0, y0, x1, y1 in (*edge, *under_hand.seam):
            painter.drawLine(QPointF(x0, y0), QPointF(x1, y1))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(QPen(hand, 2))
        for x, y in under_hand.rings:
            painter.drawEllipse(QPointF(x, y), RING, RING)
        corners = self._view.text_corners(under_hand.focus) if under_hand.focus else ()
        if corners:
            painter.setPen(QPen(hand, 1.5))
            box = QPolygonF([QPointF(x, y) for x, y in corners]).boundingRect()
            painter.drawRoundedRect(box.adjusted(-3, -2, 3, 2), 3, 3)

    def _lit_picture(self, owners: frozenset[str], ratio: float) -> Picture:
        picture = self._lit.get(owners)
        if picture is None:
            marks = marks_owned(self._view.laid_out.marks, owners)
            for part in sorted(
                owner.removeprefix(PART) for owner in owners if owner.startswith(PART)
            ):
                marks += self._view.pencil_marks(part)
            picture = self._lit[owners] = Picture(marks, self._view.density, ratio)
        return picture
