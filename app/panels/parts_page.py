"""The list of parts: a name and a size each; the one picked out shows its timber and joints."""

from __future__ import annotations

from PySide6.QtCore import (
    QEvent,
    QItemSelectionModel,
    QRect,
    QSize,
    Qt,
    Signal,
)
from PySide6.QtGui import QColor, QFontMetrics, QMouseEvent, QPainter, QPen, QResizeEvent
from PySide6.QtWidgets import (
    QFrame,
    QLabel,
    QListView,
    QScrollArea,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QVBoxLayout,
    QWidget,
)

from app.look.palettes import theme_of
from app.look.themes import Tone
from app.look.thin_scroll_bar import quiet_scrolling
from app.look.type import with_tabular_figures
from app.panels.parts_model import LIT_ROLE, ROW_ROLE, Index, NamedRow, PartsModel
from app.scene.parts_notes import PartRow

PAD_X, PAD_Y = 12, 5
WRAP = Qt.TextFlag.TextWordWrap | Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop


class PartDelegate(QStyledItemDelegate):
    """A part's name, and under it quietly its size; either wraps where it is too long."""

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        row: NamedRow | None = index.data(ROW_ROLE)
        view = option.widget
        wide = view.viewport().width() if isinstance(view, QListView) else 240
        if row is None:
            return QSize(0, 0)
        title, size = text_boxes(row, option, QRect(0, 0, wide, 0))
        return QSize(0, title.height() + size.height() + 2 * PAD_Y + 2)

    def paint(
        self,
        painter: QPainter,
        option: QStyleOptionViewItem,
        index: Index,
    ) -> None:
        row: NamedRow | None = index.data(ROW_ROLE)
        if row is None:
            return
        theme = theme_of(option.palette)
        picked = bool(option.state & QStyle.StateFlag.State_Selected)
        lit = bool(index.data(LIT_ROLE)) or bool(option.state & QStyle.StateFlag.State_MouseOver)
        painter.save()
        try:
            area: QRect = option.rect
            if picked or lit:
                painter.fillRect(area, QColor(theme.wash))
            if picked:
                painter.fillRect(
                    QRect(area.left(), area.top(), 3, area.height()),
                    QColor(theme.tone(Tone.HAND)),
                )
            title, size = text_boxes(row, option, area)
            painter.setFont(option.font)
            painter.setPen(QColor(theme.tone(Tone.HAND if lit or picked else Tone.INK)))
            painter.drawText(title, WRAP, row.title)
            painter.setFont(with_tabular_figures(option.font))
            painter.setPen(QColor(theme.tone(Tone.QUIET)))
            painter.drawText(size, WRAP, row.size)
            if option.state & QStyle.StateFlag.State_HasFocus:
                painter.setPen(QPen(QColor(theme.tone(Tone.HAND)), 1))
                painter.drawRect(area.adjusted(1, 1, -2, -2))
        finally:
            painter.restore()


def text_boxes(row: NamedRow, option: QStyleOptionViewItem, area: QRect) -> tuple[QRect, QRect]:
    """Where a row's name stands and, under it, its size, in a row that wide."""
    wide = max(60, area.width() - 2 * PAD_X)
    left, top = area.left() + PAD_X, area.top() + PAD_Y
    title = option.fontMetrics.boundingRect(QRect(left, top, wide, 4000), WRAP, row.title)
    figures = QFontMetrics(with_tabular_figures(option.font))
    under = QRect(left, title.bottom() + 3, wide, 4000)
    size = figures.boundingRect(under, WRAP, row.size)
    title.setWidth(wide)
    size.setWidth(wide)
    return title, size


class PartsList(QListView):
    """``pointed``: the part under the pointer, or ''.  ``picked``: the part picked out, or ''."""

    pointed = Signal(str)
    picked = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.parts = PartsModel(self)
        self.setModel(self.parts)
        self.setItemDelegate(PartDelegate(self))
        self.setAccessibleName("Parts of the bench")
        self.setFrameShape(QListView.Shape.NoFrame)
        quiet_scrolling(self)
        self.setMouseTracking(True)
        self.setVerticalScrollMode(QListView.ScrollMode.ScrollPerPixel)
        self.viewport().setAutoFillBackground(False)

    def currentChanged(self, current: Index, previous: Index) -> None:
        super().currentChanged(current, previous)
        row = self.parts.row(current)
        self.picked.emit(row.name if row else "")

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        super().mouseMoveEvent(event)
        row = self.parts.row(self.indexAt(event.position().toPoint()))
        self.pointed.emit(row.name if row else "")

    def leaveEvent(self, event: QEvent) -> None:
        super().leaveEvent(event)
        self.pointed.emit("")

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.scheduleDelayedItemsLayout()  # names wrap to the width


class PartsPage(QWidget):
    """The list, and under it what is known of the part picked out."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.list = PartsList(self)
        self.note = QLabel(self)
        self.note.setWordWrap(True)
        self.note.setAlignment(Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft)
        self.note.setContentsMargins(12, 8, 12, 8)
        self.note.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        area = QScrollArea(self)
        area.setFrameShape(QFrame.Shape.NoFrame)
        area.setWidgetResizable(True)
        quiet_scrolling(area)
        area.setWidget(self.note)
        area.setAccessibleName("The part picked out")
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.list, 3)
        column.addWidget(area, 2)
        self._picked = ""
        self._rows: tuple[PartRow, ...] = ()
        self._say()

    def show_rows(self, rows: tuple[PartRow, ...]) -> None:
        self._rows = rows
        self.list.parts.show_rows(rows)
        self._say()

    def pick(self, name: str) -> None:
        """Make a part the picked one; empty for none."""
        if name == self._picked:
            return
        self._picked = name
        place = self.list.parts.place_of(name)
        selection = self.list.selectionModel()
        if place < 0:
            selection.clear()
        else:
            index = self.list.parts.index(place)
            selection.setCurrentIndex(index, QItemSelectionModel.SelectionFlag.ClearAndSelect)
            self.list.scrollTo(index)
        self._say()

    def _say(self) -> None:
        place = self.list.parts.place_of(self._picked)
        if place < 0:
            self.note.setText("Pick a part here or on the sheet to see its joints.")
            return
        row = self._rows[place]
        lines = [row.title, f"{row.size}, {row.material}", *(f"· {each}" for each in row.joints)]
        self.note.setText("\n".join(lines))
