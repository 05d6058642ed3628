"""Keeps the findings of the bench on the desk: when they are looked for, what is done about them.

They are looked for a moment after the hand has let go, never while it pulls.  They are listed at
once; the mends worth offering are tried behind them and come when that is known.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer, Signal

from app.document.desk import Desk
from app.panels.finding_detail import MendDetail, WhyDetail
from app.panels.finding_line import FindingLine
from app.panels.findings_foot import FindingsFoot
from app.scene.preferences import Preferences
from app.scene.wording import said_error
from app.window.assembly_job import AssemblyJob, state_of
from app.window.mend_job import MendJob
from geometry.design.brief import Brief
from geometry.design.finding import Finding, Level, Mend
from geometry.design.judging import Judging, SetAside
from shared.errors import MakerError

if TYPE_CHECKING:
    from app.window.limits_page import LimitsPage
    from geometry.bench.bench import Bench
    from geometry.checks.looked import Looked

FINDINGS_AFTER_MS = 80
"""Findings follow the frame, well within 300 ms."""


class FindingsClerk(QObject):
    """``found`` tells that the findings are other ones.

    ``slow`` are those of the slow checks, of the bench as it was until they are known of this one.
    A finding that had a mend keeps it while the mends are being tried anew; asking for it then
    tries them at once.
    """

    found = Signal()

    def __init__(
        self,
        desk: Desk,
        foot: FindingsFoot,
        preferences: Callable[[], Preferences],
        parent: QObject,
    ) -> None:
        super().__init__(parent)
        self._desk, self._foot, self._preferences = desk, foot, preferences
        self.findings: tuple[Finding, ...] = ()
        self._known = self._held_to()
        self.limits: LimitsPage | None = None
        self.slow: tuple[Finding, ...] = ()
        self._looked_into: tuple[Bench, Looked] | None = None
        self._told: tuple[Finding, ...] = ()
        self._told_of: Bench | None = None
        self._mends = MendJob(self)
        self._mends.done.connect(self._mends_tried)
        self._assembly = AssemblyJob(self)
        self._assembly.state_changed.connect(foot.show_state)
        self._assembly.done.connect(self._assembled)
        self._later = QTimer(self)
        self._later.setSingleShot(True)
        self._later.setInterval(FINDINGS_AFTER_MS)
        self._later.timeout.connect(self._look_soon)
        desk.shown_changed.connect(self._bench_changed)
        desk.work_changed.connect(self._work_changed)
        foot.why_asked.connect(self._why)
        foot.mend_asked.connect(self._mend)
        foot.told_anew.connect(self._tell_anew)
        foot.folded.connect(desk.take_back)
        desk.laid_down.connect(self._another_bench)
        self._later.start()

    @property
    def standing(self) -> tuple[Finding, ...]:
        """Those that are not set aside."""
        return tuple(one for one in self.findings if not one.set_aside)

    @property
    def alarm_count(self) -> int:
        """How many findings mean 'do not cut'."""
        return sum(one.level is Level.DO_NOT_CUT for one in self.standing)

    @property
    def mends_are_tried(self) -> bool:
        """Whether mends are still being tried, so that some may be missing or go."""
        return self._mends.running

    def look(self) -> None:
        """Run the checks on the bench that lies on the desk, not on one that is only tried, and
        try their mends, at once."""
        self._run()
        self._mends.finish()
        self._weigh()

    def _look_soon(self) -> None:
        """The same, but the mends are tried behind, in pieces."""
        self._run()
        self._weigh()

    def _run(self) -> None:
        from geometry.checks.all_checks import held_to, told  # not needed for the first picture

        self._later.stop()
        project = self._desk.project
        shown = self._preferences().shown
        bench = held_to(self._desk.settled.bench, project.judging, project.brief, shown)
        if bench != self._told_of:
            found = told(bench)
            known = {one.key: one.mend for one in self._told if one.mend is not None}
            self._told_of = bench
            self._told = tuple(_meanwhile(one, known.get(one.key)) for one in found)
            self._mends.start(bench, found)
        if self._known_of(self._desk.settled.bench) is None:
            self._assembly.start(self._desk.settled.bench)

    def _mends_tried(self, found: tuple[Finding, ...]) -> None:
        self._told = found
        self._weigh()

    def _weigh(self) -> None:
        """List what has been found of the bench, with what the slow checks have found."""
        from geometry.checks.all_checks import weighed

        bench, judging = self._desk.settled.bench, self._desk.project.judging
        looked = self._known_of(bench)
        if looked is not None:
            from geometry.checks.slow import findings_of

            judged_by = replace(bench, judged_by=judging.limits)
            self.slow = tuple(findings_of(judged_by, looked))
        names = {part.name for part in bench.parts}
        # What was found of the bench as it was stays until it is known of this one.
        slow = tuple(one for one in self.slow if names.issuperset(one.parts))
        self.findings = weighed(self._told, judging, slow)
        self.show()

    def _known_of(self, bench: Bench) -> Looked | None:
        """What was found of this very bench."""
        if self._looked_into is None or self._looked_into[0] is not bench:
            return None
        return self._looked_into[1]

    def _assembled(self, bench: Bench, looked: Looked) -> None:
        """Whether it goes together is known: the list gets what was found."""
        self._looked_into = bench, looked
        self._weigh()

    def _another_bench(self) -> None:
        self.slow, self._looked_into = (), None

    def show(self) -> None:
        self._foot.show_findings(self.findings, self._preferences())
        self.found.emit()

    def show_preferences(self) -> None:
        """Write what is found in the maker's unit, and look again: sizes add up in one only.

        At once, so that nothing moves under the hand a moment later.
        """
        if self._later.isActive():
            self.show()
        else:
            self.look()

    def apply(self, finding: Finding) -> None:
        """Make a finding's mend, as one step."""
        if finding.mend is None:
            return
        try:
            self._desk.set_values(dict(finding.mend.values), "Mend")
        except MakerError as error:
            self._foot.say(said_error(error, self._preferences()))

    def change_limit(self, name: str, value: float | None) -> None:
        """A limit of the maker's own, or None for the default, as one step."""
        self._judge(self._desk.project.judging.with_limit(name, value), "Limit")

    def open_limits(self) -> None:
        """The table of limits beside the work."""
        from app.window.limits_page import LimitsPage

        if self.limits is None:
            self.limits = LimitsPage(
                self._desk.project.judging, self._preferences(), self._foot.window()
            )
            self.limits.changed.connect(self.change_limit)
            self.limits.finished.connect(self._forget_limits)
        self.limits.show()

    def _forget_limits(self) -> None:
        self.limits = None

    def _bench_changed(self) -> None:
        self._assembly.stop()
        self._foot.show_state(state_of(self._known_of(self._desk.settled.bench)))
        if self._mends.running and not self._desk.offering:
            self._mends.stop()
            self._told_of = None
        if self._desk.previewing:
            self._later.stop()
            if not self._desk.offering:
                self._foot.fold()
        else:
            self._later.start()

    def _work_changed(self) -> None:
        if self._held_to() != self._known:
            self._known = self._held_to()
            self._later.start()
            if self.limits is not None:
                # Later: the change may come from a field of the page itself.
                QTimer.singleShot(0, self, self._show_limits)

    def _show_limits(self) -> None:
        if self.limits is not None:
            self.limits.show_judging(self._desk.project.judging)

    def _held_to(self) -> tuple[Judging, Brief]:
        """What findings go by, beside the bench itself."""
        return self._desk.project.judging, self._desk.project.brief

    def _judge(self, judging: Judging, words: str) -> None:
        self._desk.take_back()
        self._desk.describe(replace(self._desk.project, judging=judging), words)
        self.look()

    # What unfolds under a line

    def _why(self, line: FindingLine) -> None:
        if isinstance(line.detail, WhyDetail):
            self._foot.fold()
            return
        self._desk.take_back()
        self._foot.unfold(line, self._why_detail(line), mend=False)

    def _tell_anew(self, line: FindingLine) -> None:
        """An open line says something else now: its reasons go by it, an offer is withdrawn."""
        if not isinstance(line.detail, WhyDetail):
            self._foot.fold()
            return
        detail = self._why_detail(line)
        detail.keep_reason(line.detail)
        self._foot.unfold(line, detail, mend=False)

    def _why_detail(self, line: FindingLine) -> WhyDetail:
        from geometry.checks.all_checks import check_of

        check = check_of(line.finding)
        bench = replace(self._desk.settled.bench, judged_by=self._desk.project.judging.limits)
        values = [row.of(bench) for row in check.limits]
        detail = WhyDetail(line.finding, check, values, self._preferences())
        detail.limit_changed.connect(self.change_limit)
        detail.set_aside.connect(self._set_aside)
        detail.taken_up.connect(self._take_up)
        return detail

    def _mend(self, line: FindingLine) -> None:
        """Show a mend on the sheet and in words; nothing is changed yet."""
        if isinstance(line.detail, MendDetail):
            self._foot.fold()
            return
        self._mends.finish()
        mend = line.finding.mend
        if mend is None:
            self._foot.say("That would not mend it as the bench is now.")
            return
        detail = MendDetail(line.finding, self._desk.project.spec, self._preferences())
        detail.made.connect(self.apply)
        detail.left.connect(self._foot.fold)
        try:
            self._desk.offer(dict(mend.values))
        except MakerError as error:
            self._foot.say(said_error(error, self._preferences()))
            detail.deleteLater()
            return
        self._foot.unfold(line, detail, mend=True)

    def _set_aside(self, one: SetAside) -> None:
        self._foot.fold()
        self._judge(self._desk.project.judging.setting_aside(one), "Set a finding aside")

    def _take_up(self, finding: Finding) -> None:
        self._foot.fold()
        self._judge(self._desk.project.judging.taking_up(finding.key), "Take a finding up")


def _meanwhile(finding: Finding, known: Mend | None) -> Finding:
    """A finding whose mend has not been tried yet: with that which it had, if it had one."""
    proposed = finding.mend is not None or finding.seek is not None
    return replace(finding, mend=known if proposed else None, seek=None)
