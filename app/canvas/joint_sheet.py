"""The detail of a joint, as large as the window takes it."""

from __future__ import annotations

from collections.abc import Hashable

from PySide6.QtWidgets import QWidget

from app.canvas.marks_view import MarksView
from app.scene.looks import detail_of
from app.scene.preferences import Preferences
from geometry.bench.bench import Bench
from geometry.drawing.marks import Mark
from geometry.primitives.frame import Vec2


class JointSheet(MarksView):
    """Shows nothing until it is given joints."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("Detail of the joint", parent)
        self._bench: Bench | None = None
        self._names: tuple[str, ...] = ()
        self._preferences = Preferences()

    def show_joints(
        self, bench: Bench, names: tuple[str, ...], preferences: Preferences, told: str
    ) -> None:
        """Joints that are made alike; ``told`` is the detail in words, for a screen reader."""
        self._bench, self._names, self._preferences = bench, names, preferences
        self.setAccessibleDescription(told)
        self.update()

    def key(self) -> Hashable:
        return (self._bench.spec if self._bench else None, self._names, self._preferences)

    def make(self, size: Vec2) -> tuple[tuple[Mark, ...], float]:
        if self._bench is None:
            return (), 1.0
        joints = [joint for joint in self._bench.joints if joint.name in self._names]
        return detail_of(self._bench, joints, size, self._preferences) if joints else ((), 1.0)
