"""The bench in a pictorial view, taken apart, or cut by a plane that the hand pulls and turns."""

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
from geometry.sheets.section_plane import (
    FIRST_TURN,
    Plane,
    Way,
    half_turn,
    reach_of,
    standing_at,
    standing_of,
    through,
)
from geometry.sheets.section_sheet import SectionSheet
from shared.units import format_angle, format_length, read_angle, read_length

STEP, BIG = 1.0, 10  # mm or degrees a press of a key, and how many with Shift
MOVES = {
    Qt.Key.Key_Left: -STEP,
    Qt.Key.Key_Down: -STEP,
    Qt.Key.Key_Right: STEP,
    Qt.Key.Key_Up: STEP,
}
TURNS = {Qt.Key.Key_PageUp: STEP, Qt.Key.Key_PageDown: -STEP}
_ROUNDING = 1e-6
FREE_KEYS = Qt.KeyboardModifier.AltModifier | Qt.KeyboardModifier.ControlModifier


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
        self._planes: dict[Way, Plane] = {}
        self._sheet: SectionSheet | None = None
        self._picked: Vec3 | None = None
        self._gathered: tuple[str, ...] = ()
        self._pulling = False
        self._pivot: Vec3 | None = None
        self._before = self.plane
        self.setMouseTracking(True)

    # Showing

    def pick_out(self, parts: tuple[str, ...], place: Vec3 | None) -> None:
        """Light some parts and ring a point, until the bench changes or a hand takes hold; the
        plane goes through the point."""
        self._gathered, self._picked = parts, place
        if place is not None:
            self._planes = {way: through(way, self._turn(way), place) for way in Way}
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
        """The plane stands across, along, level or askew."""
        self.way = way
        self.update()

    @property
    def plane(self) -> Plane:
        """Half way through the bench at first."""
        turn = self._turn(self.way)
        low, high = reach_of(self._bench, self.way, turn)
        kept = self._planes.get(self.way)
        at = (low + high) / 2.0 if kept is None else kept.at
        return Plane(self.way, min(max(at, low), high), turn)

    def _turn(self, way: Way) -> float:
        kept = self._planes.get(way)
        return FIRST_TURN[way] if kept is None else kept.turn

    def key(self) -> Hashable:
        shown = (self._bench.spec, self._preferences, self.look, self.plane)
        return (*shown, self._picked, self._gathered, self._pulling)

    def lit(self) -> frozenset[str]:
        return frozenset((PICKED, *(f"part:{name}" for name in self._gathered)))

    def make(self, size: Vec2) -> tuple[tuple[Mark, ...], float]:
        layout = screen_layout(*size, self._preferences)
        if self.look is not Look.SECTION:
            self._sheet = None
            found = whole_marks(self._bench, self.look, layout, self._picked, self._gathered)
            return found, 1.0
        self._sheet = cut_through(
            self._bench, self.plane, layout, self._picked, with_names=not self._pulling
        )
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
        if event.button() != Qt.MouseButton.LeftButton:
            return
        self._gathered, self._picked = (), None
        self.update()
        self._pulling = self._over_small_view(event)
        if not self._pulling:
            return
        assert self._sheet is not None
        self._before = self.plane
        on_an_end = self._sheet.key.end_at(self._spot(event)) is not None
        # What it turns about stays where it is while the line gets longer or shorter.
        self._pivot = self._sheet.key.pivot if on_an_end else None
        if not on_an_end:
            self._pull(event)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        self._pull(event)
        if not event.buttons():
            self._show_pulling(event)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        if event.button() == Qt.MouseButton.LeftButton:
            self._pulling = False
            self.update()  # with its names again
            self._show_pulling(event)

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """The plane stands square again, or askew as it did at first."""
        if event.button() == Qt.MouseButton.LeftButton and self._over_small_view(event):
            self._square()

    def _over_small_view(self, event: QMouseEvent) -> bool:
        """Whether the pointer is where the plane can be taken hold of."""
        if self.look is not Look.SECTION:
            return False
        self.refresh()
        return self._sheet is not None and self._sheet.key.holds(self._spot(event))

    def _show_pulling(self, event: QMouseEvent) -> None:
        """The way in which the plane can be pulled, seen before the press."""
        if not self._over_small_view(event):
            self.unsetCursor()
            return
        assert self._sheet is not None
        if self._sheet.key.end_at(self._spot(event)) is not None:
            self.setCursor(Qt.CursorShape.SizeAllCursor)
            return
        (x0, y0), (x1, y1) = self._sheet.key.ends
        flat = abs(x1 - x0) > abs(y1 - y0)
        self.setCursor(Qt.CursorShape.SizeVerCursor if flat else Qt.CursorShape.SizeHorCursor)

    def _pull(self, event: QMouseEvent) -> None:
        """The plane goes through the pointer, in the small view: on whole millimetres, or turned
        about its middle."""
        if not self._pulling:
            return
        self.refresh()
        assert self._sheet is not None
        key, spot = self._sheet.key, self._spot(event)
        if self._pivot is None:
            pulled = key.pulled_to(spot)
            self._put(Plane(pulled.way, float(round(pulled.at)), pulled.turn))
        else:
            free = bool(event.modifiers() & FREE_KEYS)
            self._put(key.turned_to(spot, self._pivot, free=free))

    def _spot(self, event: QMouseEvent) -> Vec2:
        spot = event.position()
        return self.to_sheet((spot.x(), spot.y()))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key = Qt.Key(event.key())
        big = BIG if event.modifiers() & Qt.KeyboardModifier.ShiftModifier else 1
        if self.look is not Look.SECTION:
            super().keyPressEvent(event)
        elif key in MOVES:
            plane = self.plane
            self._put(Plane(plane.way, plane.at + MOVES[key] * big, plane.turn))
        elif key in TURNS:
            self._turn_to(half_turn(self.plane.turn + TURNS[key] * big))
        elif key == Qt.Key.Key_Home:
            self._square()
        elif key == Qt.Key.Key_Escape and self._pulling:
            self._pulling = False
            self._put(self._before)
        else:
            super().keyPressEvent(event)

    # Numbers

    def numbers(self) -> tuple[str, str]:
        """The place, as the sheet tells it, and the turn, as they are typed."""
        size = standing_of(self._bench, self.plane).size
        return (
            _signed(size, format_length(abs(size), self._preferences.shown, with_unit=True)),
            _signed(self.plane.turn, format_angle(abs(self.plane.turn))),
        )

    def give_place(self, length_text: str) -> None:
        """From what the sheet says the place is measured; MakerError if it is no length."""
        text, sign = _unsigned(length_text)
        size = sign * read_length(text, self._preferences.shown)
        self._put(standing_at(self._bench, self.plane, size))

    def give_turn(self, angle_text: str) -> None:
        """About the middle of its line; MakerError if it is no angle."""
        text, sign = _unsigned(angle_text)
        self._turn_to(half_turn(sign * read_angle(text)))

    def _square(self) -> None:
        self._turn_to(FIRST_TURN[self.way])

    def _turn_to(self, turn: float) -> None:
        """About the middle of its line."""
        self.refresh()
        assert self._sheet is not None
        self._put(through(self.way, turn, self._sheet.key.pivot))

    def _put(self, plane: Plane) -> None:
        low, high = reach_of(self._bench, plane.way, plane.turn)
        at = min(max(plane.at, low), high)
        self._planes[plane.way] = Plane(plane.way, at, plane.turn)
        self.update()


def _unsigned(text: str) -> tuple[str, float]:
    text = text.strip()
    return (text[1:], -1.0) if text.startswith(("-", "−")) else (text, 1.0)


def _signed(value: float, text: str) -> str:
    return f"−{text}" if value < -_ROUNDING else text
