"""A window on marks that are made for its own size, whatever they show.

The marks are made when they are first painted and kept until the window's size, its type or what
they show changes.
"""

from __future__ import annotations

import sys
from abc import abstractmethod
from collections.abc import Hashable

from PySide6.QtCore import QEvent
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from app.canvas.picture import Picture, marks_owned
from app.look.palettes import theme_of
from app.look.type import cap_height
from app.scene.laying_out import TEXT_HEIGHT
from geometry.drawing.marks import Mark
from geometry.primitives.frame import Vec2

_LEAST_SHEET = 40.0  # mm


class MarksView(QWidget):
    """Lettering is as large as that of the window around it."""

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setMinimumSize(240, 200)
        self.setAccessibleName(name)
        self.marks: tuple[Mark, ...] = ()
        self._shown: Hashable = None
        self._picture: Picture | None = None
        self._lit: Picture | None = None
        self._density = 4.0

    @abstractmethod
    def key(self) -> Hashable:
        """What the marks depend on, beside the size of the window."""

    @abstractmethod
    def make(self, size: Vec2) -> tuple[tuple[Mark, ...], float]:
        """The marks for a sheet of so many mm, and how much larger than that their sheet is."""

    def lit(self) -> frozenset[str]:
        """The owners of what is picked out; what they are is part of the key."""
        return frozenset()

    @property
    def sheet_size(self) -> Vec2:
        """The window in sheet mm, at the size of its type."""
        density = cap_height(self.font()) / TEXT_HEIGHT
        return (
            max(self.width() / density, _LEAST_SHEET),
            max(self.height() / density, _LEAST_SHEET),
        )

    def to_sheet(self, at: Vec2) -> Vec2:
        """A pixel as a point of the sheet."""
        return (at[0] / self._density, (self.height() - at[1]) / self._density)

    def refresh(self) -> None:
        """Make the marks if what they depend on has changed."""
        key = (self.key(), self.sheet_size, self.devicePixelRatioF())
        if key == self._shown:
            return
        self.marks, larger = self.make(self.sheet_size)
        self._density = self.width() / (self.sheet_size[0] * larger)
        ratio = self.devicePixelRatioF()
        self._picture = Picture(self.marks, self._density, ratio)
        picked = marks_owned(self.marks, self.lit())
        self._lit = Picture(picked, self._density, ratio) if picked else None
        self._shown = key

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: ARG002
        theme = theme_of(self.palette())
        painter = QPainter(self)
        try:
            painter.fillRect(self.rect(), QColor(theme.paper))
            self.refresh()
            if self._picture is not None:
                painter.translate(0, self.height())
                self._picture.paint(painter, theme)
            if self._lit is not None:
                self._lit.paint(painter, theme, lit=True)
        except Exception:
            sys.excepthook(*sys.exc_info())
        finally:
            painter.end()

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() in (QEvent.Type.FontChange, QEvent.Type.PaletteChange):
            self.update()
