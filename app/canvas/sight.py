"""What stands out on the sheet: what the pointer is on, what has the keyboard, what is picked.

The panels point at things here, and learn from its signals what the hand points at on the sheet.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal

from app.canvas.sheet_painter import UnderHand
from app.gestures.moments import Handle
from app.scene.joint_seams import Seam
from app.scene.sheet_view import SheetView
from geometry.primitives.frame import Vec2, Vec3

if TYPE_CHECKING:
    from app.scene.plane_line import Grip, PlaneLine


class Sight(QObject):
    """``pointed``: the value under the hand, or ''.  ``part_pointed``, ``part_picked`` and
    ``joint_pointed`` likewise.

    ``changed``: the sheet is to be painted again.
    """

    pointed = Signal(str)
    part_pointed = Signal(str)
    part_picked = Signal(str)
    joint_pointed = Signal(str)
    changed = Signal()

    def __init__(self, view: SheetView, parent: QObject) -> None:
        super().__init__(parent)
        self._view = view
        self.handle: Handle | None = None
        self.at: Vec2 = (0.0, 0.0)
        self.seam: Seam | None = None
        self.plane: PlaneLine | None = None  # once there is a section
        self.grip: Grip | None = None
        self.part = ""
        self.picked = ""
        self._gathered: frozenset[str] = frozenset()
        self.focus = ""
        self.note = ""
        self._lit: frozenset[str] = frozenset()
        self._place: Vec3 | None = None
        self._pointed = self._joint = ""

    def under_hand(self, *, has_keyboard: bool) -> UnderHand:
        """All of it, as the painter wants it."""
        dimensions = set(self._lit)
        edge = None
        if self.seam is not None:
            pass  # a click opens the joint, so that alone is lit
        elif self.handle is not None and self.handle.dimension:
            dimensions.add(self.handle.dimension)
        elif self.handle is not None and self.handle.pull is not None:
            dimensions |= self._view.dimensions_of(self.handle.pull.name)
            edge = self._view.edge_pixels(self.handle, self.at)
        focus = self.focus if has_keyboard else ""
        if focus:
            dimensions.add(focus)
        return UnderHand(
            frozenset(dimensions),
            focus,
            self.part,
            self.picked,
            edge,
            self._rings(),
            self.note,
            self.at,
            self._gathered,
            self._view.seam_pixels(self.seam) if self.seam is not None else (),
            self.plane.marks if self.plane is not None else (),
            self.grip is not None,
        )

    # From the panels

    def light(self, name: str) -> None:
        """Light the dimensions of a value pointed at elsewhere."""
        self._lit = self._view.dimensions_of(name) if name else frozenset()
        self.changed.emit()

    def light_part(self, name: str) -> None:
        self.part = name
        self.changed.emit()

    def pick(self, name: str) -> None:
        """Pick a part out, or none."""
        self._gathered = frozenset()
        if name != self.picked:
            self.picked = name
            self.part_picked.emit(name)
            self.changed.emit()

    def gather(self, names: tuple[str, ...]) -> None:
        """Let several parts stand out together, until another is picked."""
        self._gathered = frozenset(names)
        self.changed.emit()

    def show_place(self, place: Vec3 | None) -> None:
        """Ring a point of the bench in every view, until the hand does something else."""
        self._place = place
        if place is not None:
            view = self._view.model.lineworks[0].view
            self._view.show_point(view.name, view.project(place))
        self.changed.emit()

    # From the hand

    def point(self, handle: Handle | None, part: str, seam: Seam | None = None) -> None:
        """The pointer is on this, or on nothing."""
        self.handle, self.seam = handle, seam
        if part != self.part:
            self.part = part
            self.part_pointed.emit(part)
        joint = seam.joint if seam is not None else ""
        if not joint:
            self._say_joint("")
        self.say(name_of(handle) if seam is None else "")
        self._say_joint(joint)

    def grip_at(self, at: Vec2, handle: Handle | None) -> Grip | None:
        """What of a section's plane a hand would take hold of at a pixel, if anything."""
        if self.plane is None:
            return None
        on_dimension = handle is not None and bool(handle.dimension)
        return self.plane.grip_at(at, on_dimension=on_dimension)

    def _say_joint(self, name: str) -> None:
        if name != self._joint:
            self._joint = name
            self.joint_pointed.emit(name)

    def say(self, name: str) -> None:
        """Tell the panels which value the hand or the keyboard is on."""
        if name != self._pointed:
            self._pointed = name
            self.pointed.emit(name)

    def clear(self) -> bool:
        """Let everything go; False when nothing stood out."""
        if not (self.focus or self.picked or self.note or self._place or self._gathered):
            return False
        self.focus = self.note = ""
        self._place = None
        self.pick("")
        return True

    def focused(self) -> Handle | None:
        """What has the keyboard."""
        if not self.focus:
            return None
        dimension = self._view.model.dimension_named[self.focus]
        return Handle(dimension.view, dimension.pull, dimension.name)

    def forget_lost(self) -> None:
        """Another bench may not have what stood out."""
        self.seam = None
        if self.focus and self._view.target(self.focus) is None:
            self.focus = ""
        if self.picked not in {part.name for part in self._view.model.bench.parts}:
            self.pick("")

    def middle_of(self, dimension: str) -> Vec2:
        """The middle of a dimension's text in pixels; where the pointer is, if it is not drawn."""
        corners = self._view.text_corners(dimension)
        if not corners:
            return self.at
        return (
            sum(x for x, _ in corners) / len(corners),
            sum(y for _, y in corners) / len(corners),
        )

    def _rings(self) -> tuple[Vec2, ...]:
        if self._place is None:
            return ()
        views = [linework.view for linework in self._view.model.lineworks]
        return tuple(
            self._view.window_point(view.name, view.project(self._place)) for view in views
        )


def name_of(handle: Handle | None) -> str:
    """The value that a handle stands for, as the story stick names it."""
    if handle is None:
        return ""
    return handle.pull.name if handle.pull is not None else handle.dimension
