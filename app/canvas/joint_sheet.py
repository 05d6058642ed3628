"""The detail of a joint, as large as the window takes it."""

from __future__ import annotations

from collections.abc import Hashable

from PySide6.QtWidgets import QWidget

from app.canvas.marks_view import MarksView
from app.scene.looks import detail_of
from app.scene.preferences import Preferences
from geometry.bench.bench import Bench
from geometry.drawing.marks import Mark
from geometry.primitives.frame import Vec2, Vec3
from geometry.sheets.picked_place import PICKED


class JointSheet(MarksView):
    """Shows nothing until it is given joints."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("Detail of the joint", parent)
        self._bench: Bench | None = None
        self._names: tuple[str, ...] = ()
        self._preferences = Preferences()
        self._picked: Vec3 | None = None
        self._gathered: tuple[str, ...] = ()

    def show_joints(
        self,
        bench: Bench,
        names: tuple[str, ...],
        preferences: Preferences,
        told: str,
        picked: Vec3 | None = None,
        gathered: tuple[str, ...] = (),
    ) -> None:
        """Joints that are made alike, of which the first is drawn; ``told`` is the detail in words,
        for a screen reader, ``picked`` a point that is ringed, and ``gathered`` parts that are
        lit."""
        self._picked, self._gathered = picked, gathered
        self._bench, self._names, self._preferences = bench, names, preferences
        self.setAccessibleDescription(told)
        self.update()

    def key(self) -> Hashable:
        spec = self._bench.spec if self._bench else None
        return (spec, self._names, self._preferences, self._picked, self._gathered)

    def lit(self) -> frozenset[str]:
        return frozenset((PICKED, *(f"part:{name}" for name in self._gathered)))

    def make(self, size: Vec2) -> tuple[tuple[Mark, ...], float]:
        if self._bench is None:
            return (), 1.0
        named = {joint.name: joint for joint in self._bench.joints}
        joints = [named[name] for name in self._names if name in named]
        if not joints:
            return (), 1.0
        return detail_of(self._bench, joints, size, self._preferences, self._picked)
