"""The brief as a form: a field or a choice for each value, those that mean something now."""

from __future__ import annotations

from typing import Any

from PySide6.QtCore import Signal
from PySide6.QtGui import QColor, QPalette
from PySide6.QtWidgets import QComboBox, QFormLayout, QLabel, QLineEdit, QWidget

from app.look.flat_field import FlatField
from app.look.palettes import theme_of
from app.look.themes import Tone
from app.look.type import bold
from app.scene.brief_text import asked_for, brief_text
from app.scene.preferences import Preferences
from app.scene.wording import said
from geometry.design.brief import ROWS, Brief, BriefRow
from shared.units import Shown


class BriefFields(QWidget):
    """``said`` carries a value's name and the text that the maker gave it."""

    said = Signal(str, str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.fields: dict[str, QLineEdit | QComboBox] = {}
        self._texts: dict[str, str] = {}
        self._form = QFormLayout(self)
        self._form.setContentsMargins(0, 0, 0, 0)
        self._form.setRowWrapPolicy(QFormLayout.RowWrapPolicy.DontWrapRows)
        self._form.setFieldGrowthPolicy(QFormLayout.FieldGrowthPolicy.ExpandingFieldsGrow)
        self._wrong = QLabel(self)
        self._wrong.setWordWrap(True)
        group = ""
        for row in ROWS:
            if row.group != group:
                group = row.group
                self._form.addRow(self._heading(group))
            self._add(row)
        self._form.addRow(self._wrong)
        self._wrong.hide()

    def show_brief(self, brief: Brief, preferences: Preferences) -> None:
        """Fill the fields, and hide those that mean nothing now."""
        for row in ROWS:
            field = self.fields[row.name]
            text = self._text(row, brief, preferences.shown)
            self._texts[row.name] = text
            field.setToolTip(said(row.description, preferences))
            if isinstance(field, QLineEdit):
                field.setPlaceholderText(asked_for(row, preferences.shown))
            if isinstance(field, QComboBox):
                field.setCurrentIndex(row.choices.index(text))
            elif field.text() != text:
                field.setText(text)
            self._form.setRowVisible(field, row.applies(brief))
        self._wrong.hide()

    def show_wrong(self, name: str, why: str) -> None:
        """Say under a field what is wrong with what was written; the text stays to be put right."""
        palette = QPalette(self._wrong.palette())
        tone = theme_of(self.palette()).tone(Tone.DO_NOT_CUT)
        palette.setColor(QPalette.ColorRole.WindowText, QColor(tone))
        self._wrong.setPalette(palette)
        self._wrong.setText(f"✕ {why}")
        self._form.takeRow(self._wrong)
        under: Any = self._form.getWidgetPosition(self.fields[name])  # row and role
        self._form.insertRow(int(under[0]) + 1, "", self._wrong)
        self._wrong.show()
        self.fields[name].setAccessibleDescription(why)

    def _text(self, row: BriefRow, brief: Brief, shown: Shown) -> str:
        return brief_text(row, getattr(brief, row.name), shown)

    def _heading(self, text: str) -> QLabel:
        label = QLabel(text, self)
        label.setFont(bold(self.font()))
        label.setContentsMargins(0, 10, 0, 0)
        return label

    def _add(self, row: BriefRow) -> None:
        field: QLineEdit | QComboBox
        if row.unit == "choice":
            field = QComboBox(self)
            field.addItems(row.choices)
            field.activated.connect(self._chosen)
        else:
            field = FlatField(self)
            field.editingFinished.connect(self._written)
            field.textEdited.connect(self._wrong.hide)
        field.setObjectName(row.name)
        field.setAccessibleName(row.title)
        field.setAccessibleDescription(row.description)
        label = QLabel(row.title, self)
        label.setBuddy(field)
        self._form.addRow(label, field)
        self.fields[row.name] = field

    def _chosen(self) -> None:
        field = self.sender()
        if isinstance(field, QComboBox):
            self._tell(field.objectName(), field.currentText())

    def _written(self) -> None:
        field = self.sender()
        if isinstance(field, QLineEdit):
            self._tell(field.objectName(), field.text())

    def _tell(self, name: str, text: str) -> None:
        """Only what the maker has changed: a size shown rounded is not a new size."""
        if text != self._texts.get(name):
            self.said.emit(name, text)
