"""The list of parts, or of joints, as a Qt list."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Protocol

from PySide6.QtCore import QAbstractListModel, QModelIndex, QObject, QPersistentModelIndex, Qt

Index = QModelIndex | QPersistentModelIndex

ROW_ROLE = Qt.ItemDataRole.UserRole
LIT_ROLE = Qt.ItemDataRole.UserRole + 1


class NamedRow(Protocol):
    """A row of two lines: what it is called, and quietly a second thing about it."""

    @property
    def name(self) -> str: ...

    @property
    def title(self) -> str: ...

    @property
    def size(self) -> str: ...

    @property
    def spoken(self) -> str: ...


class PartsModel(QAbstractListModel):
    """One row a part or a joint; rows change in place while the bench keeps them."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._rows: tuple[NamedRow, ...] = ()
        self._lit = ""

    @property
    def rows(self) -> tuple[NamedRow, ...]:
        return self._rows

    def show_rows(self, rows: Sequence[NamedRow]) -> None:
        if [row.name for row in rows] != [row.name for row in self._rows]:
            self.beginResetModel()
            self._rows = tuple(rows)
            self.endResetModel()
            return
        old, self._rows = self._rows, tuple(rows)
        for place, (before, after) in enumerate(zip(old, rows, strict=True)):
            if before != after:
                self._changed(place)

    def light(self, name: str) -> None:
        """Light the row of what is under the hand; empty for none."""
        before, self._lit = self._lit, name
        for place in {self.place_of(before), self.place_of(name)} - {-1}:
            self._changed(place)

    def place_of(self, name: str) -> int:
        names = [row.name for row in self._rows]
        return names.index(name) if name in names else -1

    def row(self, index: Index) -> NamedRow | None:
        return self._rows[index.row()] if index.isValid() else None

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008
        return 0 if parent.isValid() else len(self._rows)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        row = self.row(index)
        if row is None:
            return None
        match role:
            case Qt.ItemDataRole.DisplayRole:
                return row.title
            case Qt.ItemDataRole.AccessibleTextRole:
                return row.spoken
            case _ if role == ROW_ROLE:
                return row
            case _ if role == LIT_ROLE:
                return row.name == self._lit
        return None

    def _changed(self, place: int) -> None:
        self.dataChanged.emit(self.index(place), self.index(place))
