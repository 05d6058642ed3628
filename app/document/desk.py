"""The work in hand: one project, its history, what is on disk, and the bench as it now stands.

Everything that changes the bench goes through here and becomes one step of the history; a value
that makes no bench changes nothing and comes back as an error.  While a hand is on a value the
desk shows a preview, and only its end becomes a step.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path

from PySide6.QtCore import QObject, Signal

from app.collecting import the_hand_is_off, wait_for_the_hand
from app.document.history import History
from app.scene.model import Model, build_model
from app.scene.nudge import nudged
from geometry.bench.catalogue import parameter
from geometry.bench.limits import set_values
from geometry.bench.through import settable
from geometry.design.cutting_plane import Plane
from geometry.design.parameter import Value
from geometry.design.project import Project
from geometry.design.spec import BenchSpec
from geometry.dimensioning.drag import Dragged, drag
from geometry.dimensioning.pull import Pull
from geometry.primitives.frame import Vec2
from geometry.solids.standing import make_ready_to_move
from shared.errors import MakerError


class Desk(QObject):
    """``shown_changed``: the bench on the screen is another one (also during a drag).
    ``work_changed``: the history, the path or the saved mark changed.
    ``laid_down``: another project lies here."""

    shown_changed = Signal()
    work_changed = Signal()
    laid_down = Signal()

    def __init__(self, project: Project, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._model = build_model(project.spec)
        self._history: History[Project] = History(project)
        self._preview: Model | None = None
        self._pulled = ""
        self._offered = False
        self._path: Path | None = None

    # What stands on the desk

    @property
    def project(self) -> Project:
        return self._history.state

    @property
    def model(self) -> Model:
        """The bench on the screen: the preview while there is one."""
        return self._preview or self._model

    @property
    def settled(self) -> Model:
        """The bench of the present step, whatever is being tried on the screen."""
        return self._model

    @property
    def spec(self) -> BenchSpec:
        return self.model.spec

    @property
    def path(self) -> Path | None:
        return self._path

    @property
    def saved(self) -> bool:
        return self._history.saved

    @property
    def previewing(self) -> bool:
        return self._preview is not None

    @property
    def offering(self) -> bool:
        """Whether the preview is a change offered by the program and not under the hand."""
        return self._offered and self.previewing

    @property
    def undo_words(self) -> str:
        return self._history.undo_words

    @property
    def redo_words(self) -> str:
        return self._history.redo_words

    @property
    def can_redo(self) -> bool:
        return self._history.can_redo

    @property
    def undo_count(self) -> int:
        return self._history.undo_count

    # Changing it

    def set_values(self, changes: Mapping[str, Value], words: str = "") -> None:
        """Set values as one step; raises MakerError and changes nothing."""
        self.restore()
        spec = set_values(self.project.spec, changes)
        if spec == self.project.spec:
            return
        self._model = build_model(spec)
        self._history.do(replace(self.project, spec=spec), words or _titles(changes))
        self._tell()

    def describe(self, project: Project, words: str) -> None:
        """Set the words of the title block as one step; the bench stays."""
        assert project.spec == self.project.spec
        if self._history.do(project, words):
            self.work_changed.emit()

    def keep_section(self, section: Plane | None) -> None:
        """Keep where the maker has cut the bench through, or nothing of it: to be saved, but no
        step of the history, as it changes no bench."""
        if self._history.amend(replace(self.project, section=section)):
            self.work_changed.emit()

    def take_hold(self) -> None:
        """A hand is on a value: make ready for its moves."""
        make_ready_to_move(self.model.standing)

    def pull(self, pull: Pull, moved: Vec2, step: float | None) -> str:
        """Show the bench with a value moved by so much since the press; why it stopped, or ''."""
        return self._show_preview(drag(self.project.spec, pull, moved, step), pull.parameter)

    def offer(self, changes: Mapping[str, Value]) -> None:
        """Show the bench with some values changed, until it is taken up or taken back.

        Raises MakerError and shows nothing.
        """
        self.restore()
        self._preview = build_model(set_values(self.project.spec, changes))
        self._offered = True
        self.shown_changed.emit()

    def take_back(self) -> None:
        """Give up what was offered; what the hand holds stays."""
        if self.offering:
            self.restore()

    def nudge(self, name: str, steps: int, step: float) -> str:
        """Show the bench with a value moved by so many steps from where it now is, or a size that
        is set through one."""
        self.take_back()
        size = settable(self.model.bench.derived, name)
        if size is not None:
            name, steps = size.through, steps if size.gain > 0.0 else -steps
        return self._show_preview(nudged(self.spec, name, steps, step), name)

    def _show_preview(self, dragged: Dragged, name: str) -> str:
        self.take_back()
        wait_for_the_hand()
        self._pulled = name
        if dragged.spec == self.spec:
            return dragged.stopped_by
        try:
            self._preview = build_model(dragged.spec, self.model)
        except MakerError as error:
            return str(error)
        self.shown_changed.emit()
        return dragged.stopped_by

    def settle(self) -> bool:
        """What the hand has moved becomes one step; False when it is no change."""
        the_hand_is_off()
        self.take_back()
        preview, self._preview = self._preview, None
        if preview is None:
            return False
        if preview.spec == self.project.spec:
            self.shown_changed.emit()
            return False
        self._model = build_model(preview.spec)  # what stays is cut, not followed
        words = parameter(self._pulled).title
        self._history.do(replace(self.project, spec=preview.spec), words)
        self._tell()
        return True

    def restore(self) -> None:
        """Give the preview up."""
        the_hand_is_off()
        if self._preview is not None:
            self._preview = None
            self._offered = False
            self.shown_changed.emit()

    def undo(self) -> None:
        self._step(back=True)

    def redo(self) -> None:
        self._step(back=False)

    # Files

    def lay_down(self, project: Project, path: Path | None, *, saved: bool) -> None:
        """Another project on the desk, with a history of its own; raises MakerError."""
        self._model = build_model(project.spec)
        the_hand_is_off()
        self._preview = None
        self._offered = False
        self._history = History(project)
        if not saved:
            self._history.mark_unsaved()
        self._path = path
        self._tell()
        self.laid_down.emit()

    def mark_saved(self, path: Path) -> None:
        self._path = path
        self._history.mark_saved()
        self.work_changed.emit()

    def _step(self, *, back: bool) -> None:
        self.restore()
        before = self.project
        moved = self._history.undo() if back else self._history.redo()
        if not moved:
            return
        self._history.amend(replace(self.project, section=before.section))
        if self.project.spec != before.spec:
            self._model = build_model(self.project.spec)
        self._tell()

    def _tell(self) -> None:
        self.shown_changed.emit()
        self.work_changed.emit()


def _titles(changes: Mapping[str, Value]) -> str:
    """What changed, for the undo menu: ``Length``, or ``Length and 2 more``."""
    titles = [parameter(name).title for name in changes]
    if len(titles) < 2:
        return "".join(titles)
    return f"{titles[0]} and {len(titles) - 1} more"
