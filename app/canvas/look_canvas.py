"""The bench in a pictorial view, taken apart, or cut by a plane that the hand pulls."""

from __future__ import annotations

from collections.abc import Hashable

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent
from PySide6.QtWidgets import QWidget

from app.canvas.marks_view import MarksView
from app.scene.looks import Look, cut_through, screen_layout, whole_marks
from app.scene.preferences import Preferences
from geometry.bench.bench import Bench
from geometry.drawing.marks import Label, Mark, Role
from geometry.primitives.frame import Vec2, Vec3
from geometry.sheets.picked_place import PICKED
from geometry.sheets.section_sheet import SectionSheet, Way, reach_of

STEP, BIG = 1.0, 10  # mm a press of an arrow key, and how many with Shift
BACK = (Qt.Key.Key_Left, Qt.Key.Key_Down)
ON = (Qt.Key.Key_Right, Qt.Key.Key_Up)


class LookCanvas(MarksView):
    """``moved``: the plane stands elsewhere, with what the sheet says of it."""

    moved = Signal(str)

    def __init__(
        self, bench: Bench, preferences: Preferences, parent: QWidget | None = None
    ) -> None:
        super().__init__("The bench otherwise", parent)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self._bench, self._preferences = bench, preferences
        self.look = Look.PICTORIAL
        self.way = Way.ACROSS
        self._places: dict[Way, float] = {}
        self._sheet: SectionSheet | None = None
        self._picked: Vec3 | None = None
        self._gathered: tuple[str, ...] = ()
        self._pulling = False
        self.setMouseTracking(True)

    # Showing

    def pick_out(self, parts: tuple[str, ...], place: Vec3 | None) -> None:
        """Light some parts and ring a point, until the bench changes or a hand takes hold; the
        plane goes through the point."""
        self._gathered, self._picked = parts, place
        if place is not None:
            self._places = {way: place[way.value] for way in Way}
        self.update()

    def show_bench(self, bench: Bench, preferences: Preferences) -> None:
        if bench is not self._bench:
            self._gathered, self._picked = (), None
        self._bench, self._preferences = bench, preferences
        self.update()

    def show_look(self, look: Look) -> None:
        self.look = look
        self.setAccessibleName(look.value)
        self.unsetCursor()
        self.update()

    def show_way(self, way: Way) -> None:
        """The plane stands across, along or level."""
        self.way = way
        self.update()

    @property
    def place(self) -> float:
        """Where the plane stands, in bench mm; half way at first."""
        low, high = reach_of(self._bench, self.way)
        return min(max(self._places.get(self.way, (low + high) / 2.0), low), high)

    def key(self) -> Hashable:
        shown = (self._bench.spec, self._preferences, self.look, self.way, self.place)
        return (*shown, self._picked, self._gathered)

    def lit(self) -> frozenset[str]:
        return frozenset((PICKED, *(f"part:{name}" for name in self._gathered)))

    def make(self, size: Vec2) -> tuple[tuple[Mark, ...], float]:
        layout = screen_layout(*size, self._preferences)
        if self.look is not Look.SECTION:
            self._sheet = None
            found = whole_marks(self._bench, self.look, layout, self._picked, self._gathered)
            return found, 1.0
        self._sheet = cut_through(self._bench, self.way, self.place, layout, self._picked)
        self._tell()
        return self._sheet.marks, 1.0

    def _tell(self) -> None:
        """The sentence on the sheet, also for a screen reader."""
        texts = [
            mark.text
            for mark in (self._sheet.marks if self._sheet else ())
            if isinstance(mark, Label) and mark.role is Role.TITLE
        ]
        said = texts[-1] if texts else ""
        self.setAccessibleDescription(said)
        self.moved.emit(said)

    # The hand

    def mousePressEvent(self, event: QMouseEvent) -> None:
        if event.button() == Qt.MouseButton.LeftButton:
            self._gathered, self._picked = (), None
            self.update()
            self._pulling = self._over_small_view(event)
            self._pull(event)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        self._pull(event)
        if not event.buttons():
            self._show_pulling(event)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        if event.button() == Qt.MouseButton.LeftButton:
            self._pulling = False
            self._show_pulling(event)

    def _over_small_view(self, event: QMouseEvent) -> bool:
        """Whether the pointer is where the plane can be taken hold of."""
        if self.look is not Look.SECTION:
            return False
        self.refresh()
        return self._sheet is not None and self._sheet.in_key(self._spot(event))

    def _show_pulling(self, event: QMouseEvent) -> None:
        """The way in which the plane can be pulled, seen before the press."""
        if not self._over_small_view(event):
            self.unsetCursor()
            return
        level = self.way is Way.LEVEL
        self.setCursor(Qt.CursorShape.SizeVerCursor if level else Qt.CursorShape.SizeHorCursor)

    def _pull(self, event: QMouseEvent) -> None:
        """The plane goes through the pointer, in the small view; on whole millimetres."""
        if self._pulling:
            self.refresh()
            assert self._sheet is not None
            self._move_to(float(round(self._sheet.place_at(self._spot(event)))))

    def _spot(self, event: QMouseEvent) -> Vec2:
        spot = event.position()
        return self.to_sheet((spot.x(), spot.y()))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if self.look is not Look.SECTION or event.key() not in (*BACK, *ON):
            super().keyPressEvent(event)
            return
        big = BIG if event.modifiers() & Qt.KeyboardModifier.ShiftModifier else 1
        self._move_to(self.place + (STEP if event.key() in ON else -STEP) * big)

    def _move_to(self, place: float) -> None:
        low, high = reach_of(self._bench, self.way)
        self._places[self.way] = min(max(place, low), high)
        self.update()
