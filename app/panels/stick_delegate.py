"""Draws the story stick: a rod down the side, a tick for each size, the value at the right.

A knife line right across the rod is a size that the maker sets; a short one is a size that
follows.  The words stand in the row's note and in its accessible text.
"""

from __future__ import annotations

from PySide6.QtCore import (
    QEvent,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    QRect,
    QSize,
    Qt,
)
from PySide6.QtGui import QColor, QFontMetrics, QKeyEvent, QPainter, QPen
from PySide6.QtWidgets import (
    QComboBox,
    QListView,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QWidget,
)

from app.look.palettes import theme_of
from app.look.themes import Theme, Tone
from app.look.type import bold, with_tabular_figures
from app.look.value_field import ValueField
from app.panels.stick_model import StickModel, StickRole
from app.scene.stick_rows import Heading, Standing, StickRow

Index = QModelIndex | QPersistentModelIndex

ROD = 16  # width of the rod in pixels
PAD = 8
ROW_PAD = 5


class StickDelegate(QStyledItemDelegate):
    """Paints entries and opens their editors."""

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        entry = index.data(StickRole.ENTRY)
        theme = theme_of(option.palette)
        painter.save()
        try:
            area = option.rect
            if isinstance(entry, Heading):
                _paint_heading(painter, area, entry, option, theme)
            elif isinstance(entry, StickRow):
                self._paint_row(painter, option, index, entry, theme)
        finally:
            painter.restore()

    def _paint_row(
        self,
        painter: QPainter,
        option: QStyleOptionViewItem,
        index: Index,
        row: StickRow,
        theme: Theme,
    ) -> None:
        area = option.rect
        state = option.state
        current = bool(state & QStyle.StateFlag.State_Selected)
        lit = bool(index.data(StickRole.LIT)) or bool(state & QStyle.StateFlag.State_MouseOver)
        if current or lit:
            painter.fillRect(area.adjusted(ROD, 0, 0, 0), QColor(theme.wash))
        derived = row.standing is Standing.DERIVED
        tone = Tone.HAND if lit else Tone.QUIET if derived else Tone.INK
        line = _first_line(area, option.fontMetrics)
        _paint_tick(painter, area, line, theme, derived=derived, lit=lit or current)
        wrong = str(index.data(StickRole.WRONG_TEXT) or "")
        value_area = value_rect(area, option.fontMetrics)
        value = wrong or row.value_text
        metrics = option.fontMetrics
        name_width = min(metrics.horizontalAdvance(row.title), round(area.width() * 0.5))
        room = area.width() - ROD - 3 * PAD - name_width
        taken = min(max(room, value_area.width()), metrics.horizontalAdvance(value) + 2 * PAD)
        value_area.setLeft(area.right() - taken)
        painter.setPen(QColor(theme.tone(tone)))
        painter.setFont(option.font)
        name_area = QRect(line)
        name_area.setLeft(area.left() + ROD + PAD)
        name_area.setRight(area.right() - taken - 4)
        title = option.fontMetrics.elidedText(
            row.title, Qt.TextElideMode.ElideRight, name_area.width()
        )
        painter.drawText(name_area, Qt.AlignmentFlag.AlignVCenter, title)
        painter.setFont(with_tabular_figures(option.font))
        if wrong:
            painter.setPen(QColor(theme.tone(Tone.DO_NOT_CUT)))
        text = option.fontMetrics.elidedText(
            value, Qt.TextElideMode.ElideRight, value_area.width() - PAD
        )
        painter.drawText(
            value_area.adjusted(0, 0, -PAD, 0),
            Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignRight,
            text,
        )
        why = str(index.data(StickRole.WRONG_WHY) or "")
        if why:
            painter.setFont(option.font)
            painter.drawText(_why_rect(area, line), Qt.TextFlag.TextWordWrap, f"✕ {why}")
        if state & QStyle.StateFlag.State_HasFocus:
            painter.setPen(QPen(QColor(theme.tone(Tone.HAND)), 1))
            painter.drawRect(area.adjusted(ROD + 1, 0, -1, -1))

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        metrics = option.fontMetrics
        height = metrics.height() + 2 * ROW_PAD
        if isinstance(index.data(StickRole.ENTRY), Heading):
            return QSize(0, height + ROW_PAD + 2)
        why = str(index.data(StickRole.WRONG_WHY) or "")
        if why:
            room = _why_rect(QRect(0, 0, self._width(option), 0), QRect())
            box = metrics.boundingRect(room, Qt.TextFlag.TextWordWrap, f"✕ {why}")
            height += box.height() + ROW_PAD
        return QSize(0, max(24, height))

    @staticmethod
    def _width(option: QStyleOptionViewItem) -> int:
        view = option.widget
        return view.viewport().width() if isinstance(view, QListView) else 240

    # Editing

    def createEditor(
        self,
        parent: QWidget,
        option: QStyleOptionViewItem,  # noqa: ARG002
        index: Index,
    ) -> QWidget:
        row = index.data(StickRole.ENTRY)
        assert isinstance(row, StickRow)
        if row.choices:
            box = QComboBox(parent)
            box.addItems(list(row.choices))
            box.setAccessibleName(row.title)
            box.activated.connect(self._choice_made)
            return box
        field = ValueField(parent)
        field.setAccessibleName(row.title)
        field.setAutoFillBackground(True)
        return field

    def _choice_made(self) -> None:
        box = self.sender()
        assert isinstance(box, QComboBox)
        self.commitData.emit(box)
        self.closeEditor.emit(box)

    def setEditorData(self, editor: QWidget, index: Index) -> None:
        if isinstance(editor, QComboBox):
            editor.setCurrentText(str(index.data(Qt.ItemDataRole.EditRole)))
        elif isinstance(editor, ValueField) and not editor.isModified():
            editor.setText(str(index.data(Qt.ItemDataRole.EditRole)))
            editor.show_wrong(str(index.data(StickRole.WRONG_WHY) or ""))
            editor.selectAll()

    def setModelData(self, editor: QWidget, model: object, index: Index) -> None:
        assert isinstance(model, StickModel)
        if isinstance(editor, QComboBox):
            model.setData(index, editor.currentText())
        elif isinstance(editor, ValueField):
            model.setData(index, editor.text())

    def updateEditorGeometry(
        self,
        editor: QWidget,
        option: QStyleOptionViewItem,
        index: Index,  # noqa: ARG002
    ) -> None:
        area = value_rect(option.rect, option.fontMetrics)
        editor.setGeometry(area.adjusted(0, 1, -2, -1))

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Enter on a wrong text keeps the field open, with the reason under it."""
        if (
            isinstance(watched, ValueField)
            and isinstance(event, QKeyEvent)
            and event.type() == QEvent.Type.KeyPress
            and event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter)
        ):
            self.commitData.emit(watched)
            model, place = self._editing()
            why = str(model.index(place).data(StickRole.WRONG_WHY) or "") if model else ""
            watched.show_wrong(why)
            if not why:
                self.closeEditor.emit(watched)
            return True
        return bool(super().eventFilter(watched, event))

    def _editing(self) -> tuple[StickModel | None, int]:
        view = self.parent()
        if isinstance(view, QListView) and isinstance(view.model(), StickModel):
            return view.model(), view.currentIndex().row()  # type: ignore[return-value]
        return None, -1


def value_rect(area: QRect, metrics: QFontMetrics) -> QRect:
    """Where a row's value stands: the right 42 %, on the row's first line."""
    line = _first_line(area, metrics)
    line.setLeft(area.left() + round(area.width() * 0.58))
    return line


def _first_line(area: QRect, metrics: QFontMetrics) -> QRect:
    line = QRect(area)
    line.setHeight(min(area.height(), max(24, metrics.height() + 2 * ROW_PAD)))
    return line


def _why_rect(area: QRect, line: QRect) -> QRect:
    """Room under the first line for the reason why a text is wrong."""
    left = area.left() + ROD + PAD
    return QRect(left, line.bottom(), max(60, area.right() - PAD - left), 4000)


def _paint_heading(
    painter: QPainter, area: QRect, entry: Heading, option: QStyleOptionViewItem, theme: Theme
) -> None:
    _paint_rod(painter, area, theme)
    painter.setFont(bold(option.font))
    painter.setPen(QColor(theme.tone(Tone.INK)))
    text_area = area.adjusted(ROD + PAD, ROW_PAD, -PAD, -2)
    painter.drawText(text_area, Qt.AlignmentFlag.AlignBottom, entry.title)
    painter.setPen(QPen(QColor(theme.hairline), 1))
    painter.drawLine(area.left() + ROD, area.bottom(), area.right(), area.bottom())


def _paint_rod(painter: QPainter, area: QRect, theme: Theme) -> None:
    painter.fillRect(QRect(area.left(), area.top(), ROD, area.height()), QColor(theme.rod))


def _paint_tick(
    painter: QPainter, area: QRect, line: QRect, theme: Theme, *, derived: bool, lit: bool
) -> None:
    _paint_rod(painter, area, theme)
    tone = Tone.HAND if lit else Tone.QUIET if derived else Tone.INK
    painter.setPen(QPen(QColor(theme.tone(tone)), 2 if lit else 1))
    start = area.left() + (ROD * 2 // 3 if derived else 0)
    painter.drawLine(start, line.center().y(), area.left() + ROD, line.center().y())
