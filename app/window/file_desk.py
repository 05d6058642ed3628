"""New, open, save, and keeping unsaved work aside.

Nothing here asks "are you sure": work that is not saved is kept aside before anything takes its
place, and can be taken up again.
"""

from __future__ import annotations

import hashlib
import re
from collections.abc import Callable
from datetime import datetime
from functools import partial
from pathlib import Path

from PySide6.QtCore import QElapsedTimer, QObject, QTimer

from app.document.desk import Desk
from app.document.keeping import Keeper, Kept
from app.document.recent import RecentFiles
from app.look.themes import Tone
from app.panels.notice_strip import Notice
from app.scene.model import build_model
from exporters.project_file import SUFFIX, load, read_project
from exporters.project_writing import project_bytes
from exporters.writing import write_file
from geometry.bench.plain import plain_spec
from geometry.design.project import Project
from shared.errors import CannotWrite, MakerError
from shared.units import Shown

UNTITLED = "Untitled bench"
KEEP_AFTER_MS = 2_000
KEEP_AT_LEAST_MS = 30_000

Tell = Callable[[Notice], None]
ChooseTarget = Callable[[Path], Path | None]


def new_project(shown: Shown) -> Project:
    """A bench to begin with, in round sizes of that unit."""
    return Project(spec=plain_spec(shown), title=UNTITLED)


class FileDesk(QObject):
    """Between the desk and the disk.  ``tell`` shows a notice, ``withdraw``
    puts one away by its kind, ``choose_target`` asks for a name."""

    def __init__(
        self,
        desk: Desk,
        keeper: Keeper,
        recent: RecentFiles,
        tell: Tell,
        withdraw: Callable[[str], None],
        choose_target: ChooseTarget,
        parent: QObject | None = None,
    ) -> None:
        super().__init__(parent)
        self._desk = desk
        self._keeper = keeper
        self.recent = recent
        self._tell = tell
        self._withdraw = withdraw
        self._choose_target = choose_target
        self._basis = ""
        self._could_keep = True
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(KEEP_AFTER_MS)
        self._timer.timeout.connect(self.keep_now)
        self._since_kept = QElapsedTimer()
        self._since_kept.start()
        desk.work_changed.connect(self._work_changed)

    # Opening

    def new(self, shown: Shown) -> None:
        """A fresh bench; unsaved work is kept aside."""
        aside = self._put_aside()
        self._lay_down(new_project(shown), None, "", saved=True)
        self._offer_return(aside)

    def open(self, path: Path) -> bool:
        """Open a file; on failure the work in hand stays, with a notice."""
        try:
            project = load(path)
            build_model(project.spec)
        except MakerError as error:
            self._complain(f"{path.name} cannot be opened. {error}")
            return False
        aside = self._put_aside()
        self._lay_down(project, path, _digest_of(path), saved=True)
        self.recent.add(path)
        self._offer_return(aside)
        return True

    def open_copy(self, path: Path) -> bool:
        """Open a sample: the work in hand has no file of its own yet, so the sample stays whole."""
        if not self.open(path):
            return False
        self.recent.remove(path.absolute())
        self._lay_down(self._desk.project, None, "", saved=True)
        return True

    # Saving

    def save(self) -> bool:
        """Save where the work came from; ask where the first time."""
        path = self._desk.path
        if path is None:
            return self.save_as()
        if self._changed_by_others(path):
            self._tell(
                Notice(
                    f"{path.name} has been changed by something else since it was opened.",
                    (("Save as…", self.save_as), ("Save over it", partial(self._write, path))),
                    Tone.THINK_AGAIN,
                )
            )
            return False
        return self._write(path)

    def save_as(self) -> bool:
        chosen = self._choose_target(self._desk.path or _file_name(self._desk.project.title))
        if chosen is None:
            return False
        if chosen.suffix == SUFFIX:
            return self._write(chosen)
        target = chosen.with_name(chosen.name + SUFFIX)
        if not target.exists():
            return self._write(target)
        # The dialog has asked about another name, so this file must not go unasked.
        deeds = (("Save over it", partial(self._write, target)), ("Save as…", self.save_as))
        self._tell(Notice(f"There is a file {target.name} already.", deeds, Tone.THINK_AGAIN))
        return False

    def _write(self, path: Path) -> bool:
        data = project_bytes(self._desk.project)
        try:
            write_file(path, data)
        except CannotWrite as error:
            self._complain(f"The bench is not saved. {error}", ("Save as…", self.save_as))
            return False
        self._basis = _digest(data)
        self._desk.mark_saved(path)
        self.recent.add(path)
        self._tell(Notice(f"Saved as {path.name}.", kind="saved"))
        return True

    def _changed_by_others(self, path: Path) -> bool:
        found = _digest_of(path)
        return bool(self._basis and found) and found != self._basis

    # Keeping unsaved work aside

    def keep_now(self) -> bool:
        """Write unsaved work aside; False, with a notice, when that fails."""
        self._timer.stop()
        self._since_kept.restart()
        if self._desk.saved:
            return True
        project = self._desk.project
        try:
            self._keeper.keep(
                project.title,
                self._desk.path,
                self._basis,
                project_bytes(project).decode("utf-8"),
                datetime.now().astimezone(),
            )
        except CannotWrite as error:
            if self._could_keep:
                self._complain(f"Unsaved work cannot be kept aside. {error}")
            self._could_keep = False
            return False
        self._could_keep = True
        return True

    def let_go(self) -> bool:
        """Before the window closes: keep unsaved work for the next start.  False if that fails."""
        kept = self.keep_now()
        if kept:
            self._keeper.release()
        return kept

    def offer_left_over(self) -> None:
        """Offer what a crash, or closing without saving, has left."""
        for kept in self._keeper.left_over():
            when = kept.when.replace("T", " at ")
            self._tell(
                Notice(
                    f"“{kept.title}” was not saved. It is kept as it was on {when}.",
                    (
                        ("Take it up again", partial(self.take_up, kept)),
                        ("Throw away", partial(self._throw_away, kept)),
                    ),
                    waits=True,
                    kind=_kind(kept),
                )
            )

    def take_up(self, kept: Kept) -> None:
        """Put kept work back on the desk, still unsaved."""
        try:
            project = read_project(kept.text.encode("utf-8"), kept.title)
            build_model(project.spec)
        except MakerError as error:
            self._complain(f"“{kept.title}” cannot be taken up again. {error}")
            return
        aside = self._put_aside()
        path = Path(kept.path) if kept.path else None
        self._lay_down(project, path, kept.basis, saved=False)
        if self.keep_now():
            self._keeper.forget(kept)
        self._withdraw(_kind(kept))
        self._tell(Notice(f"“{kept.title}” is as you left it, and not saved yet."))
        self._offer_return(aside)

    def _throw_away(self, kept: Kept) -> None:
        thrown = self._keeper.throw_away(kept)
        self._withdraw(_kind(kept))
        self._tell(
            Notice(
                f"“{kept.title}” is thrown away.",
                (("Bring it back", partial(self._bring_back, thrown)),),
            )
        )

    def _bring_back(self, thrown: Kept) -> None:
        self.take_up(self._keeper.bring_back(thrown))

    def _put_aside(self) -> Kept | None:
        """Keep the work in hand before something takes its place."""
        if self._desk.saved:
            return None
        self.keep_now()
        return self._keeper.put_aside()

    def _offer_return(self, aside: Kept | None) -> None:
        if aside is not None:
            self._tell(
                Notice(
                    f"“{aside.title}” was not saved; it is kept.",
                    (("Go back to it", partial(self.take_up, aside)),),
                )
            )

    def _lay_down(self, project: Project, path: Path | None, basis: str, *, saved: bool) -> None:
        self._basis = basis
        self._desk.lay_down(project, path, saved=saved)

    def _work_changed(self) -> None:
        if self._desk.saved:
            self._timer.stop()
            self._keeper.drop()
        elif self._since_kept.elapsed() > KEEP_AT_LEAST_MS:
            self.keep_now()
        else:
            self._timer.start()

    def _complain(self, text: str, *deeds: tuple[str, Callable[[], object]]) -> None:
        self._tell(Notice(text, deeds, Tone.DO_NOT_CUT))


def _file_name(title: str) -> Path:
    """A title as a file name that every system takes."""
    return Path(re.sub(r'[\\/:*?"<>|.]+', "-", title).strip(" -") or UNTITLED).with_suffix(SUFFIX)


def _kind(kept: Kept) -> str:
    return f"kept {kept.file.name}"


def _digest(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()


def _digest_of(path: Path) -> str:
    """The digest of a file, empty when there is none to read."""
    try:
        return _digest(path.read_bytes())
    except OSError:
        return ""
