"""The story stick's rows as a Qt list; what was typed wrong stays in its row."""

from __future__ import annotations

from collections.abc import Callable
from enum import IntEnum

from PySide6.QtCore import QAbstractListModel, QModelIndex, QObject, QPersistentModelIndex, Qt

from app.scene.stick_rows import Entry, Heading, StickRow, entries

Index = QModelIndex | QPersistentModelIndex
TypeValue = Callable[[str, str], str]
"""Sets a named value from a text; the answer is what is wrong with it, or nothing."""


class StickRole(IntEnum):
    """What the delegate asks a row for."""

    ENTRY = Qt.ItemDataRole.UserRole
    WRONG_TEXT = Qt.ItemDataRole.UserRole + 1
    WRONG_WHY = Qt.ItemDataRole.UserRole + 2
    LIT = Qt.ItemDataRole.UserRole + 3


class StickModel(QAbstractListModel):
    """Rows change in place where only values changed, so that selection and scrolling stay."""

    def __init__(self, type_value: TypeValue, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._type_value = type_value
        self._rows: tuple[StickRow, ...] = ()
        self._entries: tuple[Entry, ...] = ()
        self._sought = ""
        self._wrong: dict[str, tuple[str, str]] = {}
        self._lit = ""

    # Filling

    def show_rows(self, rows: tuple[StickRow, ...]) -> None:
        self._rows = rows
        self._refresh()

    def seek(self, sought: str) -> None:
        """Show only the rows that hold these words."""
        self._sought = sought
        self._refresh()

    def light(self, name: str) -> None:
        """Light the row of a value under the hand; empty for none."""
        before, self._lit = self._lit, name
        for place in {self.place_of(before), self.place_of(name)} - {-1}:
            self._changed(place)

    def forget_wrong(self) -> None:
        """Texts that could not be read or built do not outlive an undo or another project."""
        self._wrong.clear()
        if self._entries:
            self._changed(0, len(self._entries) - 1)

    def _refresh(self) -> None:
        fresh = entries(self._rows, self._sought)
        if [_key(entry) for entry in fresh] != [_key(entry) for entry in self._entries]:
            self.beginResetModel()
            self._entries = fresh
            self.endResetModel()
            return
        old, self._entries = self._entries, fresh
        for place, (before, after) in enumerate(zip(old, fresh, strict=True)):
            if before != after:
                self._changed(place)

    def _changed(self, first: int, last: int | None = None) -> None:
        self.dataChanged.emit(self.index(first), self.index(first if last is None else last))

    # Asking

    def place_of(self, name: str) -> int:
        """The row number of a value; -1 when it is not shown."""
        for place, entry in enumerate(self._entries):
            if isinstance(entry, StickRow) and entry.name == name:
                return place
        return -1

    def entry(self, index: Index) -> Entry | None:
        return self._entries[index.row()] if index.isValid() else None

    def row(self, index: Index) -> StickRow | None:
        entry = self.entry(index)
        return entry if isinstance(entry, StickRow) else None

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008
        return 0 if parent.isValid() else len(self._entries)

    def flags(self, index: Index) -> Qt.ItemFlag:
        entry = self.entry(index)
        if not isinstance(entry, StickRow):
            return Qt.ItemFlag.NoItemFlags
        flags = Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable
        if entry.settable:
            flags |= Qt.ItemFlag.ItemIsEditable
        return flags

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:  # noqa: PLR0911
        entry = self.entry(index)
        if entry is None:
            return None
        if role == StickRole.ENTRY:
            return entry
        if isinstance(entry, Heading):
            text_roles = (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.AccessibleTextRole)
            return entry.title if role in text_roles else None
        typed, why = self._wrong.get(entry.name, ("", ""))
        match role:
            case Qt.ItemDataRole.DisplayRole:
                return f"{entry.title} {entry.value_text}"
            case Qt.ItemDataRole.EditRole:
                return typed or entry.edit_text
            case Qt.ItemDataRole.AccessibleTextRole:
                return f"{entry.spoken}. {why}" if why else entry.spoken
            case Qt.ItemDataRole.AccessibleDescriptionRole | Qt.ItemDataRole.ToolTipRole:
                return why or entry.note
            case StickRole.WRONG_TEXT:
                return typed
            case StickRole.WRONG_WHY:
                return why
            case StickRole.LIT:
                return entry.name == self._lit
        return None

    def setData(self, index: Index, value: object, role: int = Qt.ItemDataRole.EditRole) -> bool:
        """Type a value; False, with the text and the reason kept in the row, when it is wrong."""
        row = self.row(index)
        if row is None or role != Qt.ItemDataRole.EditRole:
            return False
        typed = str(value)
        why = "" if typed == row.edit_text else self._type_value(row.name, typed)
        if why:
            self._wrong[row.name] = (typed, why)
        else:
            self._wrong.pop(row.name, None)
        place = self.place_of(row.name)
        if place >= 0:
            self._changed(place)
        return not why


def _key(entry: Entry) -> tuple[str, str, str]:
    """What must be the same for a row to be the same row."""
    if isinstance(entry, Heading):
        return ("", entry.title, "")
    return (entry.name, entry.title, entry.standing.value)
