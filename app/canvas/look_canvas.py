"""The bench in a pictorial view, taken apart, or cut by a plane that the hand pulls and turns.

A joint whose seam is in plain sight opens with a click, as it does in the elevations.
"""

from __future__ import annotations

from collections.abc import Hashable

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter
from PySide6.QtWidgets import QWidget

from app.canvas.marks_view import MarksView
from app.canvas.seam_pointer import SeamPointer
from app.gestures.plane_hand import PlaneHand
from app.look.themes import Theme
from app.scene.look_seams import apart_seams, pictorial_seams, section_seams
from app.scene.looks import Look, cut_through, screen_layout, whole_sheet
from app.scene.notes import joint_note
from app.scene.planes import Planes, read_turn
from app.scene.preferences import Preferences
from geometry.bench.bench import Bench
from geometry.design.cutting_plane import FIRST_TURN, Plane, Way
from geometry.drawing.marks import Label, Mark, Role
from geometry.primitives.frame import Vec2, Vec3
from geometry.sheets.layout import Layout
from geometry.sheets.picked_place import PICKED
from geometry.sheets.section_sheet import SectionSheet

STEP, BIG = 1.0, 10  # mm or degrees a press of a key, and how many with Shift
MOVES = {
    Qt.Key.Key_Left: -STEP,
    Qt.Key.Key_Down: -STEP,
    Qt.Key.Key_Right: STEP,
    Qt.Key.Key_Up: STEP,
}
TURNS = {Qt.Key.Key_PageUp: STEP, Qt.Key.Key_PageDown: -STEP}
FREE_KEYS = Qt.KeyboardModifier.AltModifier | Qt.KeyboardModifier.ControlModifier


class LookCanvas(MarksView):
    """``moved``: the plane stands elsewhere, with what the sheet says of it.  ``put``: the maker
    has moved it and let go.  ``joint_pointed`` carries the joint that a click would open, or '';
    ``joint_opened`` the one that was clicked."""

    moved = Signal(str)
    put = Signal()
    joint_pointed = Signal(str)
    joint_opened = Signal(str)

    def __init__(
        self, bench: Bench, preferences: Preferences, parent: QWidget | None = None
    ) -> None:
        super().__init__("The bench otherwise", parent)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self._bench, self._preferences = bench, preferences
        self.look = Look.PICTORIAL
        self.planes = Planes(bench)
        self._sheet: SectionSheet | None = None
        self._picked: Vec3 | None = None
        self._gathered: tuple[str, ...] = ()
        self._hand = PlaneHand(self.planes)
        self.pointer = SeamPointer(self, self._note_of)
        self.pointer.lit.connect(self.joint_pointed)
        self.pointer.opened.connect(self.joint_opened)
        self.setMouseTracking(True)

    # Showing

    def pick_out(self, parts: tuple[str, ...], place: Vec3 | None) -> None:
        """Light some parts and ring a point, until the bench changes or a hand takes hold; the
        plane goes through the point."""
        self._gathered, self._picked = parts, place
        if place is not None:
            self.planes.put_all_through(place)
        self.update()

    def show_bench(self, bench: Bench, preferences: Preferences) -> None:
        if bench is not self._bench:
            self._gathered, self._picked = (), None
        self._bench, self._preferences = bench, preferences
        self.planes.bench = bench
        self.update()

    def show_look(self, look: Look) -> None:
        self.look = look
        self.setAccessibleName(look.value)
        self.unsetCursor()
        self.update()

    def show_way(self, way: Way) -> None:
        """The plane stands across, along, level or askew."""
        self.planes.way = way
        self.update()

    @property
    def plane(self) -> Plane:
        """Half way through the bench at first."""
        return self.planes.plane

    def key(self) -> Hashable:
        shown = (self._bench.spec, self._preferences, self.look, self.plane)
        return (*shown, self._picked, self._gathered, self._hand.holding)

    def lit(self) -> frozenset[str]:
        return frozenset((PICKED, *(f"part:{name}" for name in self._gathered)))

    def make(self, size: Vec2) -> tuple[tuple[Mark, ...], float]:
        layout = screen_layout(*size, self._preferences)
        if self.look is Look.SECTION:
            return self._cut(layout), 1.0
        self._sheet = None
        found = whole_sheet(self._bench, self.look, layout, self._picked, self._gathered)
        seams_of = pictorial_seams if self.look is Look.PICTORIAL else apart_seams
        self.pointer.show_seams(seams_of(self._bench, found))
        return found.marks, 1.0

    def _cut(self, layout: Layout) -> tuple[Mark, ...]:
        plane, held = self.plane, self._hand.holding
        found = cut_through(self._bench, plane, layout, self._picked, with_names=not held)
        self._sheet = found
        self.pointer.show_seams(None if held else section_seams(self._bench, found))
        self._tell(found)
        return found.marks

    def _tell(self, shown: SectionSheet) -> None:
        """The sentence on the sheet, also for a screen reader."""
        texts = [m.text for m in shown.marks if isinstance(m, Label) and m.role is Role.TITLE]
        self.setAccessibleDescription(texts[-1])
        self.moved.emit(texts[-1])

    def paint_over(self, painter: QPainter, theme: Theme) -> None:
        self.pointer.paint(painter, theme)

    def _note_of(self, joint: str) -> str:
        return joint_note(self._bench, joint, self._preferences)

    # The hand

    def mousePressEvent(self, event: QMouseEvent) -> None:
        if event.button() != Qt.MouseButton.LeftButton:
            super().mousePressEvent(event)
            return
        self._gathered, self._picked = (), None
        self.refresh()
        self.update()
        if not self._over_small_view(event):
            self.pointer.press(_at(event))
            return
        assert self._sheet is not None
        self.pointer.let_go()
        if not self._hand.press(self._sheet.key, self._spot(event)):
            self._pull(event)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        self._pull(event)
        self.pointer.move(_at(event))
        if not event.buttons():
            self._show_what_is_under(event)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        if event.button() != Qt.MouseButton.LeftButton:
            return
        if self._hand.holding:
            self.update()  # with its names again
            if self._hand.release():
                self.put.emit()
        self.pointer.release(_at(event))
        if self.isVisible():
            self._show_what_is_under(event)

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """The plane stands square again, or askew as it did at first."""
        if event.button() == Qt.MouseButton.LeftButton and self._over_small_view(event):
            assert self._sheet is not None
            self._hand.turn_back(self._sheet.key)
            self.update()
            self.put.emit()

    def leaveEvent(self, event: QEvent) -> None:
        super().leaveEvent(event)
        self.pointer.let_go()

    def _over_small_view(self, event: QMouseEvent) -> bool:
        """Whether the pointer is where the plane can be taken hold of."""
        if self.look is not Look.SECTION:
            return False
        self.refresh()
        return self._sheet is not None and self._sheet.key.holds(self._spot(event))

    def _show_what_is_under(self, event: QMouseEvent) -> None:
        """The way in which the plane can be pulled, or a joint that opens, seen before the
        press."""
        if not self._over_small_view(event):
            self.refresh()
            if self.pointer.point_at(_at(event)):
                self.setCursor(Qt.CursorShape.PointingHandCursor)
            else:
                self.unsetCursor()
            return
        self.pointer.point_at(None)
        assert self._sheet is not None
        if self._sheet.key.end_at(self._spot(event)) is not None:
            self.setCursor(Qt.CursorShape.SizeAllCursor)
            return
        (x0, y0), (x1, y1) = self._sheet.key.ends
        flat = abs(x1 - x0) > abs(y1 - y0)
        self.setCursor(Qt.CursorShape.SizeVerCursor if flat else Qt.CursorShape.SizeHorCursor)

    def _pull(self, event: QMouseEvent) -> None:
        """The plane follows the pointer, in the small view."""
        if not self._hand.holding:
            return
        self.refresh()
        assert self._sheet is not None
        free = bool(event.modifiers() & FREE_KEYS)
        self._hand.pull(self._sheet.key, self._spot(event), free=free)
        self.update()

    def _spot(self, event: QMouseEvent) -> Vec2:
        return self.to_sheet(_at(event))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key = Qt.Key(event.key())
        big = BIG if event.modifiers() & Qt.KeyboardModifier.ShiftModifier else 1
        if key == Qt.Key.Key_Escape and self.pointer.let_go():
            return
        if self.look is not Look.SECTION:
            super().keyPressEvent(event)
        elif key == Qt.Key.Key_Escape and self._hand.holding:
            self._hand.give_up()
            self.update()
        elif key in MOVES:
            plane = self.plane
            self._stand(Plane(plane.way, plane.at + MOVES[key] * big, plane.turn))
            self.put.emit()
        elif key in TURNS:
            self._turn_to(self.plane.turn + TURNS[key] * big)
        elif key == Qt.Key.Key_Home:
            self._turn_to(FIRST_TURN[self.planes.way])
        else:
            super().keyPressEvent(event)

    # Numbers

    def numbers(self) -> tuple[str, str]:
        """The place, as the sheet tells it, and the turn, as they are typed."""
        return self.planes.numbers(self._preferences)

    def give_place(self, length_text: str) -> None:
        """From what the sheet says the place is measured; MakerError if it is no length."""
        self.planes.give_place(length_text, self._preferences)
        self.update()
        self.put.emit()

    def give_turn(self, angle_text: str) -> None:
        """About the middle of its line; MakerError if it is no angle."""
        self._turn_to(read_turn(angle_text))

    def _turn_to(self, turn: float) -> None:
        """About the middle of its line."""
        self.refresh()
        assert self._sheet is not None
        self.planes.turn_about(self._sheet.key.pivot, turn)
        self.update()
        self.put.emit()

    def _stand(self, plane: Plane) -> None:
        self.planes.put(plane)
        self.update()


def _at(event: QMouseEvent) -> Vec2:
    return (event.position().x(), event.position().y())
