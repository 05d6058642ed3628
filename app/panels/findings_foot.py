"""Findings: a quiet list at the foot, the gravest first, folded to one line when there are none.

Lines are kept by the finding's key: one that is still found stays the very same widget, whatever
its number is now, so that nothing flickers, the list stays where it was scrolled to, and an
unfolded line stays unfolded.
"""

from __future__ import annotations

from PySide6.QtCore import QEvent, Qt, QTimer, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import (
    QApplication,
    QFrame,
    QHBoxLayout,
    QLabel,
    QScrollArea,
    QScrollBar,
    QVBoxLayout,
    QWidget,
)

from app.look.palettes import theme_of
from app.look.thin_scroll_bar import quiet_scrolling
from app.look.type import bold
from app.panels.finding_line import FindingLine
from app.scene.finding_words import count_text, tally_text
from app.scene.preferences import Preferences
from geometry.design.finding import Finding, Level
from geometry.design.judging import FindingKey

MOST_LINES, MOST_SHARE = 4, 0.2
"""So many lines, or in a high window this share of its height."""
MOST_LINES_UNFOLDED, MOST_SHARE_UNFOLDED = 8, 0.4


class FindingsFoot(QFrame):
    """``show_asked`` carries a finding; ``why_asked`` and ``mend_asked`` the line to unfold under.

    ``told_anew`` carries an unfolded line whose finding has changed; ``folded`` tells that a line
    which was open has gone or was shut; ``keyboard_left`` that the line with the keyboard was the
    last.
    """

    show_asked = Signal(object)
    why_asked = Signal(object)
    mend_asked = Signal(object)
    told_anew = Signal(object)
    folded = Signal()
    keyboard_left = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._lines: dict[FindingKey, FindingLine] = {}
        self._preferences = Preferences()
        self._open: FindingKey | None = None
        self.heading = QLabel(self)
        self.heading.setFont(bold(self.font()))
        self.tally = QLabel(self)
        self.state = QLabel(self)
        self._area = QScrollArea(self)
        self._area.setAccessibleName("Findings")
        self._area.setFrameShape(QFrame.Shape.NoFrame)
        self._area.setWidgetResizable(True)
        quiet_scrolling(self._area)
        self._area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._body = QWidget()
        self._column = QVBoxLayout(self._body)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(0)
        self._column.addStretch(1)
        self._area.setWidget(self._body)
        side = QVBoxLayout()
        side.setSpacing(0)
        for label in (self.heading, self.tally):
            side.addWidget(label)
        side.addStretch(1)
        row = QHBoxLayout(self)
        row.setContentsMargins(14, 4, 8, 4)
        row.setSpacing(20)
        row.addLayout(side)
        row.addWidget(self._area, 1)
        row.addStretch(0)
        row.addWidget(self.state, 0, Qt.AlignmentFlag.AlignTop)
        self._fit()

    def show_findings(self, findings: tuple[Finding, ...], preferences: Preferences) -> None:
        """List them; a line whose finding is still there stays, with what it says now."""
        ranked = sorted(findings, key=lambda each: (bool(each.set_aside), _RANK[each.level]))
        again = preferences != self._preferences
        self._preferences = preferences
        wanted = {finding.key: finding for finding in ranked}
        for key, line in list(self._lines.items()):
            if key not in wanted:
                self._drop(key)
            elif again or wanted[key] != line.finding:
                line.tell(wanted[key], preferences)
                if key == self._open:
                    self.told_anew.emit(line)
        self._area.setVisible(bool(wanted))
        for place, (key, finding) in enumerate(wanted.items()):
            line = self._lines.get(key) or self._made(finding)
            if self._column.indexOf(line) != place:
                self._column.insertWidget(place, line)
                line.show()  # or it counts as having no height
        self._lines = {key: self._lines[key] for key in wanted}
        self.heading.setText(count_text(len(ranked)))
        self.tally.setText(tally_text(ranked))
        self.tally.setVisible(bool(self.tally.text()))
        self._fit()

    def say(self, text: str) -> None:
        """A word on what was asked for, such as why a mend cannot be made."""
        self.heading.setText(text)

    def show_state(self, text: str) -> None:
        """What is still being looked at; nothing when all is known."""
        self.state.setText(text)
        # As wide as it has ever been, so that the list beside it does not move.
        self.state.setMinimumWidth(max(self.state.minimumWidth(), self.state.sizeHint().width()))

    @property
    def scroll_bar(self) -> QScrollBar:
        return self._area.verticalScrollBar()

    def lines(self) -> list[FindingLine]:
        return list(self._lines.values())

    def unfold(self, line: FindingLine, detail: QWidget, *, mend: bool) -> None:
        """Show a detail under one line and fold the others."""
        for each in self._lines.values():
            if each is not line:
                each.fold()
                each.mark_open(why=False, mend=False)
        line.unfold(detail)
        line.mark_open(why=not mend, mend=mend)
        self._open = line.finding.key
        self._fit()
        QTimer.singleShot(0, self, lambda: self._show_open(detail))

    def fold(self) -> None:
        """Every line alone."""
        if self._open is None:
            return
        self._open = None
        for line in self._lines.values():
            if _has_keyboard(line.detail):
                line.why.setFocus(Qt.FocusReason.OtherFocusReason)
            line.fold()
            line.mark_open(why=False, mend=False)
        self._fit()
        self.folded.emit()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            QTimer.singleShot(0, self, self._fit)

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() == QEvent.Type.PaletteChange:
            shown = tuple(line.finding for line in self._lines.values())
            for key in list(self._lines):
                self._drop(key)
            self.show_findings(shown, self._preferences)

    def _made(self, finding: Finding) -> FindingLine:
        line = FindingLine(finding, self._preferences, theme_of(self.palette()), self._body)
        line.show_asked.connect(self._show)
        line.why_asked.connect(self.why_asked)
        line.mend_asked.connect(self.mend_asked)
        self._lines[finding.key] = line
        return line

    def _show(self, line: FindingLine) -> None:
        self.show_asked.emit(line.finding)

    def _drop(self, key: FindingKey) -> None:
        line = self._lines.pop(key)
        if _has_keyboard(line):
            self._pass_on_keyboard(self._column.indexOf(line))
        self._column.removeWidget(line)
        line.hide()
        line.deleteLater()
        if key == self._open:
            self._open = None
            self.folded.emit()

    def _pass_on_keyboard(self, place: int) -> None:
        """From the line at ``place``, which goes, to the one after it, or else to one before."""
        others = list(self._lines.values())
        if others:
            after = [line for line in others if self._column.indexOf(line) > place]
            (after or others)[0].why.setFocus(Qt.FocusReason.OtherFocusReason)
        else:
            self.keyboard_left.emit()

    def _show_open(self, detail: QWidget) -> None:
        """Bring what has unfolded into sight, once it has its size, under its own line."""
        for line in self._lines.values():
            if line.detail is detail:
                self._area.ensureWidgetVisible(detail, 0, 0)
                self._area.ensureVisible(0, line.y(), 0, 0)

    def _fit(self) -> None:
        line_height = max(28, self.fontMetrics().height() + 12)
        self.heading.setMinimumHeight(line_height)
        self.state.setMinimumHeight(line_height)
        self._area.setVisible(bool(self._lines))
        most = self._room(line_height)
        heights = self._heights(self._area.width())
        if sum(heights) > most:
            beside_bar = self._area.width() - self.scroll_bar.sizeHint().width()
            heights = self._heights(beside_bar)
        wanted = min(sum(heights), most)
        if self._open is None and wanted < sum(heights):
            wanted = _whole(heights, most)
        self._area.setFixedHeight(max(line_height, wanted))

    def _room(self, line_height: int) -> int:
        """The most that the list takes of the window."""
        lines, share = MOST_LINES, MOST_SHARE
        if self._open is not None:
            lines, share = MOST_LINES_UNFOLDED, MOST_SHARE_UNFOLDED
        return max(lines * line_height, int(share * self.window().height()))

    def _heights(self, wide: int) -> list[int]:
        return [line.height_at(wide) for line in self._lines.values()]


def _whole(heights: list[int], room: int) -> int:
    """The height of as many lines as find room whole, at least one: nobody reads half a line."""
    taken = 0
    for high in heights:
        if taken and taken + high > room:
            break
        taken += high
    return taken


def _has_keyboard(widget: QWidget | None) -> bool:
    at = QApplication.focusWidget()
    return widget is not None and at is not None and (widget is at or widget.isAncestorOf(at))


_RANK = {level: place for place, level in enumerate(Level)}
