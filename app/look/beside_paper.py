"""A page of two halves: fields at the left, as wide as their words ask, and the sheet."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QSplitter, QWidget

_ALL_THE_REST = 4000
"""pixels; more than any window has."""


class BesidePaper(QSplitter):
    """What grows with the window is the sheet; it cannot be pushed away."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(Qt.Orientation.Horizontal, parent)

    def put(self, side: QWidget, sheet: QWidget, *, ems: int, least: int) -> None:
        """Both halves; the left one is ``ems`` letters wide, but no less than ``least`` pixels."""
        self.addWidget(side)
        self.addWidget(sheet)
        self.setStretchFactor(0, 0)
        self.setStretchFactor(1, 1)
        self.setCollapsible(1, False)
        self.setHandleWidth(1)
        em = self.fontMetrics().horizontalAdvance("m")
        self.setSizes([max(least, ems * em), _ALL_THE_REST])
