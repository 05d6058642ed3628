"""The table of runners as a Qt table: a line for each size, a column for each kind of runners.

Generic ones are to be read; a maker's own, behind them, to be typed over.
"""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import (
    QAbstractTableModel,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    Qt,
    Signal,
)

from app.scene.preferences import Preferences
from app.scene.runner_cells import NAME, SIZES, can_be_typed, cell_text, is_used, typed
from app.scene.wording import said, said_error
from geometry.design.spec import BenchSpec
from shared.errors import UnreadableValue
from shared.runners import RUNNERS, Runner

Index = QModelIndex | QPersistentModelIndex
Role = Qt.ItemDataRole


class RunnerModel(QAbstractTableModel):
    """``typed_over`` carries a maker's own runners after one was changed; ``refused``, why a cell
    could not be."""

    typed_over = Signal(tuple)
    refused = Signal(str)

    def __init__(self, spec: BenchSpec, preferences: Preferences, parent: QObject) -> None:
        super().__init__(parent)
        self._spec, self._preferences = spec, preferences
        self._own: tuple[Runner, ...] = ()

    @property
    def runners(self) -> tuple[Runner, ...]:
        return (*RUNNERS, *self._own)

    def is_own(self, column: int) -> bool:
        return column >= len(RUNNERS)

    def show_own(self, own: Sequence[Runner]) -> None:
        self.beginResetModel()
        self._own = tuple(own)
        self.endResetModel()

    def show_bench(self, spec: BenchSpec, preferences: Preferences) -> None:
        """Tell which runners the bench has; lengths in the unit shown."""
        self._spec, self._preferences = spec, preferences
        corner = self.index(self.rowCount() - 1, self.columnCount() - 1)
        self.dataChanged.emit(self.index(0, 0), corner)
        self.headerDataChanged.emit(Qt.Orientation.Vertical, 0, self.rowCount() - 1)

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008
        return 0 if parent.isValid() else len(SIZES)

    def columnCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008
        return 0 if parent.isValid() else len(self.runners)

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = Role.DisplayRole
    ) -> object:
        if orientation is Qt.Orientation.Horizontal:
            return None
        _, title, about = SIZES[section]
        match role:
            case Role.DisplayRole:
                return said(title, self._preferences)
            case Role.ToolTipRole:
                return said(about, self._preferences)
        return None

    def flags(self, index: Index) -> Qt.ItemFlag:
        flags = Qt.ItemFlag.ItemIsSelectable | Qt.ItemFlag.ItemIsEnabled
        runner, (field, _, _) = self.runners[index.column()], SIZES[index.row()]
        if self.is_own(index.column()) and can_be_typed(runner, field):
            flags |= Qt.ItemFlag.ItemIsEditable
        return flags

    def data(self, index: Index, role: int = Role.DisplayRole) -> object:
        runner, (field, title, _) = self.runners[index.column()], SIZES[index.row()]
        text = cell_text(runner, field, self._preferences)
        if role == Role.EditRole:
            return text
        # A maker's own words stay as they were written.
        shown = text if self.is_own(index.column()) else said(text, self._preferences)
        match role:
            case Role.DisplayRole if field == NAME and is_used(self._spec, runner):
                return f"{shown} (this bench)"
            case Role.DisplayRole:
                return shown
            case Role.AccessibleTextRole:
                return f"{runner.name}, {said(title, self._preferences)}: {shown or 'none'}"
        return None

    def setData(self, index: Index, value: object, role: int = Role.EditRole) -> bool:
        if role != Role.EditRole or not self.is_own(index.column()):
            return False
        field, place = SIZES[index.row()][0], index.column() - len(RUNNERS)
        old, taken = self._own[place], [each.name for each in self.runners]
        try:
            new = typed(old, field, str(value), self._preferences, taken)
        except UnreadableValue as error:
            self.refused.emit(said_error(error, self._preferences))
            return False
        if new != old:
            self._own = (*self._own[:place], new, *self._own[place + 1 :])
            self.dataChanged.emit(index, index)
            self.typed_over.emit(self._own)
        return True
