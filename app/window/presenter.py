"""Keeps all panels in step with the desk, and each other in step with the hand."""

from __future__ import annotations

from PySide6.QtCore import QObject

from app.document.desk import Desk
from app.panels.findings_foot import FindingsFoot
from app.panels.job_strip import JobStrip
from app.scene.absent_sizes import absent_words
from app.scene.finding_words import count_text
from app.scene.notes import joint_note, row_note
from app.scene.parts_notes import part_rows
from app.scene.preferences import Preferences
from app.scene.steps import finest_step
from app.scene.stick_rows import stick_rows
from app.scene.title_facts import title_cells
from app.scene.typed_value import read_size, read_value
from app.scene.wording import said_error, size_text
from app.window.drawing_page import PARTS, SIZES, DrawingPage
from app.window.findings_clerk import FindingsClerk
from geometry.bench.catalogue import parameter
from geometry.bench.through import settable, values_for
from geometry.design.finding import Finding
from geometry.design.parameter import Parameter
from shared.errors import MakerError


class Presenter(QObject):
    """No widget of its own: it joins the desk to the widgets it is given."""

    def __init__(
        self,
        desk: Desk,
        preferences: Preferences,
        page: DrawingPage,
        job: JobStrip,
        foot: FindingsFoot,
        parent: QObject,
    ) -> None:
        super().__init__(parent)
        self._desk, self._page, self._job, self._foot = desk, page, job, foot
        self.preferences = preferences
        self.clerk = FindingsClerk(desk, foot, lambda: self.preferences, self)
        self.clerk.found.connect(self._show_findings)
        desk.shown_changed.connect(self.show_bench)
        desk.work_changed.connect(self._work_changed)
        self._join_canvas()
        self._join_panels()
        self.show_bench()

    # From the desk to the panels

    def show_bench(self) -> None:
        """The bench under the hand, everywhere and in the same frame."""
        self._page.show_bench(self.preferences)
        self._page.stick.show_rows(stick_rows(self._desk.model.bench, self.preferences))
        if self._page.page == PARTS or not self._desk.previewing:
            self._page.parts.show_rows(part_rows(self._desk.model.bench, self.preferences))
        self._show_title()

    @property
    def alarm_count(self) -> int:
        """How many findings mean 'do not cut'."""
        return self.clerk.alarm_count

    def show_preferences(self, preferences: Preferences) -> None:
        self.preferences = preferences
        self.show_bench()
        self.clerk.show_preferences()
        self._page.stick.list.stick.forget_wrong()

    def look_for_findings(self) -> None:
        """Run the checks; they come a moment after the drawing."""
        self.clerk.look()

    def _show_findings(self) -> None:
        self._job.show_count(len(self.clerk.standing))
        self._show_title()

    def _show_title(self) -> None:
        self._page.title.show_projection(third_angle=self.preferences.third_angle)
        self._page.title.show_cells(
            title_cells(
                self._desk.project,
                self._desk.model,
                self.preferences,
                count_text(len(self.clerk.standing)),
                self._page.canvas.view.scale,
            )
        )

    def _work_changed(self) -> None:
        self._page.stick.list.stick.forget_wrong()
        self._show_title()

    # From the hand to the desk

    def type_value(self, name: str, text: str) -> str:
        """Set a value from a text; what is wrong with it, or nothing.

        The text that is shown says no other value: it may be rounded.
        """
        if settable(self._desk.model.bench.derived, name) is not None:
            return self._type_size(name, text)
        row = parameter(name)
        if text.strip() == size_text(self._desk.spec.value(name), row.unit, self.preferences):
            return ""
        try:
            value = read_value(row, text, self.preferences.shown)
            self._desk.set_values({name: value})
        except MakerError as error:
            return said_error(error, self.preferences, here=row.title)
        return ""

    def _type_size(self, name: str, text: str) -> str:
        """The same for a size that is set through the value that it follows."""
        self._desk.restore()
        size = settable(self._desk.model.bench.derived, name)
        assert size is not None, name
        if text.strip() == size_text(size.value, size.unit, self.preferences):
            return ""
        try:
            wanted = read_size(size.unit, text, self.preferences.shown)
            self._desk.set_values(values_for(self._desk.spec, size, wanted), size.title)
        except MakerError as error:
            return said_error(error, self.preferences, here=size.title)
        return ""

    def show_finding(self, finding: Finding) -> None:
        """Pick out the parts a finding is about, and bring its place into sight."""
        if finding.parts:
            self._page.canvas.sight.pick(finding.parts[0])
        self._page.canvas.sight.gather(finding.parts)
        self._page.canvas.sight.show_place(finding.place)
        self._page.looks.pick_out(finding.parts, finding.place)

    def step_value(self, name: str, steps: int) -> str:
        """The arrow keys on a row of sizes: one step of the history each press; what stops it."""
        row = self._stepped(name)
        if row is None:
            return ""
        step = finest_step(row.unit, row.step, self.preferences.shown)
        why = self._desk.nudge(name, steps, step)
        self._desk.settle()
        return why

    def _step_row(self, name: str, steps: int) -> None:
        """The same on the story stick, which says how it went."""
        why = self.step_value(name, steps)
        if self._stepped(name) is not None:
            self._say_row(name, why)

    def _stepped(self, name: str) -> Parameter | None:
        """The number that a row of sizes sets, if it sets one."""
        sizes = self._desk.model.bench.derived
        size = next((size for size in sizes if size.name == name), None)
        if size is not None and not size.through:
            return None
        row = parameter(size.through if size is not None else name)
        return row if row.is_number else None

    # The hand on one panel shows on the others

    def _join_canvas(self) -> None:
        sight = self._page.canvas.sight
        sight.pointed.connect(self._value_pointed)
        sight.part_pointed.connect(self._page.parts.list.parts.light)
        sight.part_picked.connect(self._page.parts.pick)
        self._page.joint_pointed.connect(self._say_joint)
        self._page.canvas.scale_changed.connect(self._show_title)

    def _join_panels(self) -> None:
        stick, parts = self._page.stick, self._page.parts
        stick.absent = lambda sought: absent_words(self._desk.spec, sought, self.preferences)
        stick.list.pointed.connect(self._row_pointed)
        stick.list.stepped.connect(self._step_row)
        parts.list.pointed.connect(self._page.canvas.sight.light_part)
        parts.list.picked.connect(self._page.canvas.sight.pick)
        self._foot.show_asked.connect(self.show_finding)

    def _value_pointed(self, name: str) -> None:
        self._page.stick.light(name, scroll=True)
        self._say_row(name)

    def _row_pointed(self, name: str) -> None:
        self._page.stick.light(name)
        self._page.canvas.sight.light(name)
        self._say_row(name)

    def _say_row(self, name: str, why: str = "") -> None:
        if self._page.page == SIZES:
            note = row_note(self._desk.model, name, self.preferences, why) if name else ""
            self._page.stick.say(note)

    def _say_joint(self, name: str) -> None:
        """A joint that a click on the sheet would open."""
        if self._page.page == SIZES:
            bench = self._desk.model.bench
            self._page.stick.say(joint_note(bench, name, self.preferences) if name else "")
