"""Joints: between the desk and the page that shows them."""

from __future__ import annotations

from PySide6.QtCore import QObject

from app.document.desk import Desk
from app.panels.joints_page import JointsPage
from app.panels.stick_model import TypeValue
from app.scene.joint_picking import joint_of
from app.scene.joint_rows import JointRow, joint_rows, joint_sizes
from app.window.presenter import Presenter
from geometry.design.finding import Finding


class JointsStage(QObject):
    """Follows the desk while it is looked at; keeps to the picked joint where it still exists."""

    def __init__(
        self, desk: Desk, presenter: Presenter, type_value: TypeValue, parent: QObject
    ) -> None:
        super().__init__(parent)
        self._desk, self._presenter = desk, presenter
        self.page = JointsPage(type_value)
        self._rows: tuple[JointRow, ...] = ()
        self.picked = ""
        self._finding: Finding | None = None
        self.page.list.picked.connect(self._pick)
        self.page.stick.stepped.connect(self._presenter.step_value)
        desk.shown_changed.connect(self._follow)

    def shown(self) -> None:
        """The maker has come to the joints, or likes to see things otherwise."""
        self._show()

    def open(self, name: str) -> None:
        """Show a joint, or the one that stands for it."""
        self.picked, self._finding = name, None
        self._show()

    def show_finding(self, finding: Finding) -> bool:
        """Show the joint that a finding is about, with its place and its parts; False if it is
        about none."""
        name = joint_of(self._desk.model.bench.joints, finding)
        if not name:
            return False
        self.picked, self._finding = name, finding
        self._show()
        return True

    def _follow(self) -> None:
        self._finding = None
        if self.page.isVisible():
            self._show()

    def _show(self) -> None:
        bench, preferences = self._desk.model.bench, self._presenter.preferences
        self._rows = joint_rows(bench, preferences)
        picked = self.picked
        self.page.show_rows(self._rows)
        places = [k for k, row in enumerate(self._rows) if picked in row.names]
        if self._rows:
            self.page.pick(places[0] if places else 0)
        self.picked = picked if places else (self._rows[0].name if self._rows else "")
        self._show_picked()

    def _pick(self, name: str) -> None:
        """A row of the list: the joint picked before stays if the row stands for it."""
        row = self._row_of(name)
        if row is not None and self.picked not in row.names:
            self.picked, self._finding = name, None
            self.page.stick.stick.forget_wrong()
            self._show_picked()

    def _show_picked(self) -> None:
        bench, preferences = self._desk.model.bench, self._presenter.preferences
        row = self._row_of(self.picked)
        names = row.names if row is not None else ()
        told = row.spoken if row is not None else ""
        if self._finding is None:
            self.page.sheet.show_joints(bench, names, preferences, told)
        else:
            # The very joint that the finding is about, not one that is made like it.
            names = (self.picked, *(name for name in names if name != self.picked))
            place, parts = self._finding.place, self._finding.parts
            self.page.sheet.show_joints(bench, names, preferences, told, place, parts)
        self.page.show_sizes(joint_sizes(bench, self.picked, preferences))

    def _row_of(self, name: str) -> JointRow | None:
        return next((row for row in self._rows if name in row.names), None)
