"""A window on marks that are made for its own size, whatever they show.

The marks are made when they are first painted and kept until the window's size, its type or what
they show changes; so is their picture, as what is under the hand is painted over it at every step.
"""

from __future__ import annotations

import sys
from abc import abstractmethod
from collections.abc import Hashable

from PySide6.QtCore import QEvent
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPixmap
from PySide6.QtWidgets import QSizePolicy, QWidget

from app.canvas.picture import Picture, marks_owned
from app.look.palettes import theme_of
from app.look.themes import Theme
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
        self._ground: QPixmap | None = None
        self._ground_key: Hashable = None
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

    def paint_over(self, painter: QPainter, theme: Theme) -> None:
        """What is under the hand, in pixels, over the marks."""

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

    def to_pixels(self, at: Vec2) -> Vec2:
        """A point of the sheet as a pixel."""
        return (at[0] * self._density, self.height() - at[1] * self._density)

    @property
    def density(self) -> float:
        """Pixels to the mm of the sheet."""
        return self._density

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
            painter.drawPixmap(0, 0, self._painted_ground(theme))
            self.paint_over(painter, theme)
        except Exception:
            sys.excepthook(*sys.exc_info())
        finally:
            painter.end()

    def _painted_ground(self, theme: Theme) -> QPixmap:
        """The marks, with what is picked out among them."""
        key = (self._shown, self.size().toTuple(), theme.name)
        if self._ground is not None and key == self._ground_key:
            return self._ground
        ratio = self.devicePixelRatioF()
        ground = QPixmap(self.size() * ratio)
        ground.setDevicePixelRatio(ratio)
        ground.fill(QColor(theme.paper))
        painter = QPainter(ground)
        try:
            painter.translate(0, self.height())
            if self._picture is not None:
                self._picture.paint(painter, theme)
            if self._lit is not None:
                self._lit.paint(painter, theme, lit=True)
        finally:
            painter.end()
        self._ground, self._ground_key = ground, key
        return ground

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() in (QEvent.Type.FontChange, QEvent.Type.PaletteChange):
            self.update()
