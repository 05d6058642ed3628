"""The list of parts as a Qt list."""

from __future__ import annotations

from PySide6.QtCore import QAbstractListModel, QModelIndex, QObject, QPersistentModelIndex, Qt

from app.scene.parts_notes import PartRow

Index = QModelIndex | QPersistentModelIndex

ROW_ROLE = Qt.ItemDataRole.UserRole
LIT_ROLE = Qt.ItemDataRole.UserRole + 1


class PartsModel(QAbstractListModel):
    """One row a part; rows change in place while the bench keeps its parts."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._rows: tuple[PartRow, ...] = ()
        self._lit = ""

    @property
    def rows(self) -> tuple[PartRow, ...]:
        return self._rows

    def show_rows(self, rows: tuple[PartRow, ...]) -> None:
        if [row.name for row in rows] != [row.name for row in self._rows]:
            self.beginResetModel()
            self._rows = rows
            self.endResetModel()
            return
        old, self._rows = self._rows, rows
        for place, (before, after) in enumerate(zip(old, rows, strict=True)):
            if before != after:
                self._changed(place)

    def light(self, name: str) -> None:
        """Light the row of the part under the hand; empty for none."""
        before, self._lit = self._lit, name
        for place in {self.place_of(before), self.place_of(name)} - {-1}:
            self._changed(place)

    def place_of(self, name: str) -> int:
        names = [row.name for row in self._rows]
        return names.index(name) if name in names else -1

    def row(self, index: Index) -> PartRow | None:
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
