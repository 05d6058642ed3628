"""The words of the title block, one field each; a change is one step of the history."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import Signal
from PySide6.QtGui import QFocusEvent
from PySide6.QtWidgets import QFormLayout, QLabel, QLineEdit, QPlainTextEdit, QWidget

from app.look.flat_field import FlatField
from app.look.thin_scroll_bar import quiet_scrolling
from app.look.type import bold
from geometry.design.project import LINE_FIELDS, LINE_LIMIT, Project
from shared.errors import MakerError

LABELS = {
    "title": "Title",
    "place": "Made for",
    "designer": "Designer",
    "owner": "Owner",
    "number": "Number",
    "revision": "Revision",
}


class TitleFields(QWidget):
    """``described`` carries the project with one word changed, and what that word is."""

    described = Signal(object, str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._project: Project | None = None
        self.fields: dict[str, QLineEdit] = {}
        form = QFormLayout(self)
        form.setContentsMargins(0, 0, 0, 0)
        heading = QLabel("Title block", self)
        heading.setFont(bold(self.font()))
        form.addRow(heading)
        for name in LINE_FIELDS:
            field = FlatField(self)
            field.setMaxLength(LINE_LIMIT)
            field.setAccessibleName(LABELS[name])
            field.setObjectName(name)
            field.editingFinished.connect(self._changed)
            form.addRow(LABELS[name], field)
            self.fields[name] = field
        self.notes = NotesField(self)
        self.notes.left.connect(self._notes_changed)
        form.addRow("Notes", self.notes)
        self._wrong = QLabel(self)
        self._wrong.setWordWrap(True)
        self._wrong.hide()
        form.addRow(self._wrong)

    def show_project(self, project: Project) -> None:
        self._project = project
        for name, field in self.fields.items():
            text = getattr(project, name)
            if field.text() != text:
                field.setText(text)
        if self.notes.toPlainText() != project.notes:
            self.notes.setPlainText(project.notes)
        self._wrong.hide()

    def _notes_changed(self) -> None:
        self._describe("notes", self.notes.toPlainText(), "Notes")

    def _changed(self) -> None:
        field = self.sender()
        if not isinstance(field, QLineEdit):
            return
        name = field.objectName()
        self._describe(name, field.text(), LABELS[name])

    def _describe(self, name: str, text: str, label: str) -> None:
        if self._project is None or text == getattr(self._project, name):
            return
        try:
            project = replace(self._project, **{name: text})  # type: ignore[arg-type]
        except MakerError as error:
            self._wrong.setText(f"✕ {error.what} {error.remedy}")
            self._wrong.show()
            return
        self.described.emit(project, label)


class NotesField(QPlainTextEdit):
    """A few lines; ``left`` when the keyboard goes elsewhere."""

    left = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFrameShape(QPlainTextEdit.Shape.NoFrame)
        self.setTabChangesFocus(True)
        self.setAccessibleName("Notes")
        self.setFixedHeight(4 * self.fontMetrics().lineSpacing())
        quiet_scrolling(self)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        self.left.emit()
