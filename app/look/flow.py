"""A layout like words on a page: items side by side, going on in the next line when one is full.

The first item is the sentence: it takes the room that the others leave on its line.
"""

from __future__ import annotations

from PySide6.QtCore import QRect, QSize
from PySide6.QtWidgets import QLayout, QLayoutItem, QWidget


class FlowLayout(QLayout):
    """Height follows from width."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._items: list[QLayoutItem] = []

    def addItem(self, item: QLayoutItem) -> None:
        self._items.append(item)

    def count(self) -> int:
        return len(self._items)

    def itemAt(self, index: int) -> QLayoutItem | None:
        return self._items[index] if 0 <= index < len(self._items) else None

    def takeAt(self, index: int) -> QLayoutItem | None:
        return self._items.pop(index) if 0 <= index < len(self._items) else None

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        return self._arrange(QRect(0, 0, width, 0), move=False)

    def sizeHint(self) -> QSize:
        return self.minimumSize()

    def minimumSize(self) -> QSize:
        margins = self.contentsMargins()
        rest = [item.minimumSize() for item in self._items[1:]]
        width = max((size.width() for size in rest), default=0)
        height = max((size.height() for size in rest), default=0)
        return QSize(
            width + margins.left() + margins.right(), height + margins.top() + margins.bottom()
        )

    def setGeometry(self, area: QRect) -> None:
        super().setGeometry(area)
        self._arrange(area, move=True)

    def _arrange(self, area: QRect, *, move: bool) -> int:
        """Place the items; the height they need."""
        if not self._items:
            return 0
        margins = self.contentsMargins()
        left, right = area.left() + margins.left(), area.right() + 1 - margins.right()
        head, *rest = self._items
        gap = max(0, self.spacing())
        needed = sum(item.sizeHint().width() + gap for item in rest)
        wanted = head.sizeHint().width()
        beside = right - left - needed
        on_one_line = beside >= min(wanted, (right - left) // 3) and beside > 0
        width = beside if on_one_line else right - left
        height = _height(head, width)
        if on_one_line:
            height = max([height, *(item.sizeHint().height() for item in rest)])
        top = area.top() + margins.top()
        if move:
            head.setGeometry(QRect(left, top, width, height))
        x, y = (left + width + gap, top) if on_one_line else (left, top + height)
        line = 0
        for item in rest:
            size = item.sizeHint()
            if x + size.width() > right and x > left:
                x, y, line = left, y + line, 0
            if move:
                item.setGeometry(QRect(x, y, size.width(), size.height()))
            x += size.width() + gap
            line = max(line, size.height())
        return max(top + height, y + line) - area.top() + margins.bottom()


def _height(item: QLayoutItem, width: int) -> int:
    return item.heightForWidth(width) if item.hasHeightForWidth() else item.sizeHint().height()
