"""What the window holds: the job across the top, the stages in the middle, findings at the foot.

Puts the pieces together and joins them; what they do is in the pieces.
"""

from __future__ import annotations

import sys
from collections.abc import Callable
from dataclasses import replace
from functools import partial
from pathlib import Path

from PySide6.QtCore import QObject, QSettings
from PySide6.QtGui import QDragEnterEvent, QDropEvent, QGuiApplication
from PySide6.QtWidgets import QApplication, QVBoxLayout, QWidget

from app.document.desk import Desk
from app.document.keeping import Keeper
from app.document.recent import RecentFiles
from app.look.palettes import chosen_theme, palette_of
from app.look.themes import Tone
from app.look.type import scaled
from app.look.word_button import WordButton
from app.panels.findings_foot import FindingsFoot
from app.panels.job_strip import BRIEF, CARVING, DRAWING, JOINTS, PAPERS, STAGES, JobStrip
from app.panels.notice_strip import Notice, NoticeStrip
from app.scene.looks import WAY_BACK, Look
from app.scene.preferences import THEME_CHOICES, UNIT_CHOICES, Preferences, short_unit_name
from app.scene.wording import said
from app.window.actions import Actions
from app.window.asking import Asker
from app.window.drawing_page import PARTS, SIZES, DrawingPage
from app.window.file_desk import FileDesk, new_project
from app.window.frame import Frame
from app.window.menus import PreferenceMenus, fill_recent, fill_samples
from app.window.pages_beside import PagesBeside
from app.window.presenter import Presenter
from app.window.samples import sample_files, spoken_name
from app.window.settings import read_bytes, write_preferences
from app.window.stages import Stages
from exporters.project_file import SUFFIX
from geometry.bench.drawers import has_drawers
from geometry.design.finding import Finding


class Workplace(QObject):
    """Furnishes a frame and works in it."""

    def __init__(
        self,
        frame: Frame,
        settings: QSettings,
        preferences: Preferences,
        keeper: Keeper,
        log: Path,
    ) -> None:
        super().__init__(frame)
        self.frame, self._settings = frame, settings
        self._base_font = QApplication.font()
        self._body = QWidget(frame)
        self.ask = Asker(frame)
        self.desk = Desk(new_project(preferences.shown), self)
        self.notices = NoticeStrip(self._body)
        self.files = FileDesk(
            self.desk,
            keeper,
            RecentFiles(settings),
            self.notices.tell,
            self.notices.withdraw,
            self._ask_target,
            self,
        )
        self.job = JobStrip(self._body)
        self.foot = FindingsFoot(self._body)
        self.page = DrawingPage(self.desk, preferences, self._type_value, self._body)
        self.presenter = Presenter(self.desk, preferences, self.page, self.job, self.foot, self)
        self.stages = Stages(
            self.desk, self.presenter, self.page, self._type_value, self.ask, self._body
        )
        self.beside = PagesBeside(
            self.desk, self.presenter, settings, self.ask, log, self.prefer, frame
        )
        self.unit_button = WordButton("", self.job)
        self._closing_anyway = False
        self._lay_out()
        self.commands = Actions(frame, self._deeds())
        self._menus = PreferenceMenus(
            self.commands.submenus["units"],
            self.commands.submenus["theme"],
            self._choose_unit,
            self._choose_theme,
        )
        self._join()
        self._show_preferences(preferences)
        self._show_work()
        self._show_stages()
        frame.setCentralWidget(self._body)
        frame.inhabitant = self
        self.page.canvas.setFocus()

    # Putting together

    def _lay_out(self) -> None:
        column = QVBoxLayout(self._body)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        for widget in (self.job, self.notices, self.stages, self.foot):
            column.addWidget(widget, 1 if widget is self.stages else 0)
        fit = WordButton("Fit", self.job)
        fit.setToolTip("Fit the sheet to the window (Ctrl+0)")
        fit.clicked.connect(self.page.canvas.fit)
        self.job.add_at_end(fit)
        self.job.add_at_end(self.unit_button)
        self.page.restoreState(read_bytes(self._settings, "splitter"))

    def _deeds(self) -> dict[str, Callable[[], object]]:
        canvas = self.page.canvas
        return {
            "new": self._new,
            "open": self._open,
            "save": self.files.save,
            "save_as": self.files.save_as,
            "papers": partial(self.go_to, STAGES.index(PAPERS)),
            "quit": self.frame.close,
            "undo": self.desk.undo,
            "redo": self.desk.redo,
            "find": self._find,
            "limits": self.presenter.clerk.open_limits,
            "runners": self.beside.open_runners,
            "preferences": self.beside.open_preferences,
            "stage_brief": partial(self.go_to, STAGES.index(BRIEF)),
            "stage_drawing": partial(self.go_to, STAGES.index(DRAWING)),
            "stage_joints": partial(self.go_to, STAGES.index(JOINTS)),
            "stage_carving": partial(self.go_to, STAGES.index(CARVING)),
            "stage_papers": partial(self.go_to, STAGES.index(PAPERS)),
            "elevations": partial(self._show_look, Look.ELEVATIONS),
            "pictorial": partial(self._show_look, Look.PICTORIAL),
            "apart": partial(self._show_look, Look.APART),
            "section": partial(self._show_look, Look.SECTION),
            "fit": canvas.fit,
            "zoom_in": partial(canvas.zoom, 2.0),
            "zoom_out": partial(canvas.zoom, -2.0),
            "sizes": partial(self._go_to_page, SIZES),
            "parts": partial(self._go_to_page, PARTS),
            "sheet": self._go_to_sheet,
            "other_unit": self._other_unit,
            "keys": self.beside.show_keys,
            "checked": self.beside.show_checked,
            "cautions": self.beside.show_cautions,
            "log": self.beside.show_log,
        }

    def _join(self) -> None:
        self.job.stage_chosen.connect(self.go_to)
        self.unit_button.clicked.connect(self._other_unit)
        self.page.joint_opened.connect(self.open_joint)
        self.stages.preferred.connect(self.prefer)
        self.stages.went_back.connect(self._go_to_sheet)
        self.desk.work_changed.connect(self._show_work)
        self.desk.shown_changed.connect(self._show_stages)
        self.foot.show_asked.connect(self._show_where)
        self.foot.keyboard_left.connect(self.page.canvas.setFocus)
        self.desk.laid_down.connect(self.page.canvas.fit)
        QGuiApplication.styleHints().colorSchemeChanged.connect(self._follow_desktop)
        recent = self.commands.submenus["recent"]
        recent.aboutToShow.connect(partial(fill_recent, recent, self.files.recent, self.files.open))
        fill_samples(self.commands.submenus["samples"], self.files.open_copy)

    # The work

    def start_with(self, path: Path | None) -> None:
        """Open a file, or begin with a plain bench; then offer what was left unsaved."""
        if path is None or not self.files.open(path):
            self._begin(alone=path is None)
        self.files.offer_left_over()

    def trouble(self, what: str) -> None:
        """The program itself failed somewhere: keep the work, say so, go on."""
        kept = self.files.keep_now()
        work = "Your bench is kept." if kept else "Your bench could NOT be kept: save it now."
        deeds = (("Show the log", self.beside.show_log), ("Save as…", self.files.save_as))
        self.notices.tell(
            Notice(f"Something failed inside the program ({what}). {work}", deeds, Tone.DO_NOT_CUT)
        )

    def _begin(self, *, alone: bool) -> None:
        """The quiet line over a new bench."""
        deeds: list[tuple[str, Callable[[], object]]] = [("Open…", self._open)]
        recent = next((file for file in self.files.recent.files() if file.exists()), None)
        if recent is not None:
            deeds.append((f"Go on with {recent.stem}", partial(self.files.open, recent)))
        deeds += [
            (spoken_name(file), partial(self.files.open_copy, file)) for file in sample_files()[:3]
        ]
        text = "A plain bench to begin with: pull any dimension, or click one and type."
        if alone:
            self.notices.tell(Notice(text, tuple(deeds), kind="start"))

    def _new(self) -> None:
        self.files.new(self.presenter.preferences.shown)

    def _open(self) -> None:
        path = self.desk.path or next(iter(self.files.recent.files()), Path.home())
        chosen = self.ask.file(path.parent if path.suffix else path)
        if chosen is not None:
            self.files.open(chosen)

    def _ask_target(self, suggestion: Path) -> Path | None:
        return self.ask.target(suggestion)

    def _type_value(self, name: str, text: str) -> str:
        return self.presenter.type_value(name, text)

    def _show_work(self) -> None:
        """Title, unsaved mark, and what undo and redo would do."""
        project, path = self.desk.project, self.desk.path
        name = path.stem if path else project.title
        self.frame.setWindowTitle(f"{name}[*] – Settlewright")
        self.frame.setWindowModified(not self.desk.saved)
        undo, redo = self.desk.undo_words, self.desk.redo_words
        self.commands["undo"].setText(f"&Undo: {undo}" if undo else "&Undo")
        self.commands["undo"].setEnabled(bool(self.desk.undo_count))
        self.commands["redo"].setText(f"&Redo: {redo}" if redo else "&Redo")
        self.commands["redo"].setEnabled(self.desk.can_redo)
        if self.desk.undo_count or path:
            self.notices.withdraw("start")
        if not self.desk.saved:
            self.notices.withdraw("saved")

    # Where to look

    def go_to(self, stage: int) -> None:
        """Another stage of the job."""
        self.job.go_to(stage)
        self.stages.go_to(STAGES[stage])

    def open_joint(self, name: str) -> None:
        """The detail of a joint that was clicked on the sheet, and the way back to it."""
        self.stages.to_joints().open(name)
        self.go_to(STAGES.index(JOINTS))
        self.stages.show_way_back(WAY_BACK[self.page.look])

    def _show_where(self, finding: Finding) -> None:
        """In the detail if a maker looks at joints, else on the drawing."""
        if not self.stages.shows_finding(finding) and not self.page.isVisible():
            self.go_to(STAGES.index(DRAWING))

    def _show_stages(self) -> None:
        """Only a bench with drawers has fronts to carve."""
        there = has_drawers(self.desk.spec)
        self.job.show_stage(CARVING, there=there)
        self.commands["stage_carving"].setEnabled(there)
        if not there and self.stages.carving_is_shown:
            self.go_to(STAGES.index(DRAWING))

    def _show_look(self, look: Look) -> None:
        self.go_to(STAGES.index(DRAWING))
        self.page.show_look(look)
        (self.page.canvas if look is Look.ELEVATIONS else self.page.looks).setFocus()

    def _go_to_page(self, page: int) -> None:
        self.go_to(STAGES.index(DRAWING))
        self.page.go_to(page)
        (self.page.parts.list if page == PARTS else self.page.stick.list).setFocus()

    def _go_to_sheet(self) -> None:
        self._show_look(self.page.look)

    def _find(self) -> None:
        self._go_to_page(SIZES)
        self.page.stick.filter.setFocus()
        self.page.stick.filter.selectAll()

    # Preferences

    def prefer(self, preferences: Preferences) -> None:
        """Take up other preferences, everywhere and for good."""
        write_preferences(self._settings, preferences)
        self._show_preferences(preferences)
        self.presenter.show_preferences(preferences)
        self.stages.renew()
        self.beside.show_preferences(preferences)

    def _show_preferences(self, preferences: Preferences) -> None:
        app = QApplication.instance()
        assert isinstance(app, QApplication)
        app.setPalette(palette_of(chosen_theme(preferences.theme)))
        font = scaled(self._base_font, preferences.text_percent / 100)
        if app.font() != font:
            app.setFont(font)
        unit = short_unit_name(preferences.shown)
        self.unit_button.setText(unit)
        self.unit_button.setAccessibleName(f"Units: {unit}")
        self.unit_button.setToolTip(said("Millimetres or inches (Ctrl+U)", preferences))
        self.unit_button.updateGeometry()
        self.commands.reword(preferences.words)
        self._menus.show(preferences)

    def _follow_desktop(self) -> None:
        """The desktop has gone light or dark."""
        self._show_preferences(self.presenter.preferences)

    def _other_unit(self) -> None:
        self.prefer(self.presenter.preferences.other_unit())

    def _choose_unit(self, place: int) -> None:
        self.prefer(self.presenter.preferences.with_shown(UNIT_CHOICES[place]))

    def _choose_theme(self, place: int) -> None:
        self.prefer(replace(self.presenter.preferences, theme=THEME_CHOICES[place]))

    # Coming and going

    def drag_entered(self, event: QDragEnterEvent) -> None:
        if any(url.toLocalFile().endswith(SUFFIX) for url in event.mimeData().urls()):
            event.acceptProposedAction()

    def dropped(self, event: QDropEvent) -> None:
        paths = [Path(url.toLocalFile()) for url in event.mimeData().urls()]
        chosen = next((path for path in paths if path.suffix == SUFFIX), None)
        if chosen is not None:
            event.acceptProposedAction()
            self.files.open(chosen)

    def may_close(self) -> bool:
        """Unsaved work is kept for the next start; if it can't be, the window stays once."""
        if not self._work_is_kept() and not self._closing_anyway:
            self._closing_anyway = True
            return False
        self._settings.setValue("window", self.frame.saveGeometry())
        self._settings.setValue("splitter", self.page.saveState())
        self._settings.sync()
        self.stages.wait()
        return True

    def _work_is_kept(self) -> bool:
        """A fault here must not take the work along: it counts as not kept."""
        try:
            self.desk.settle()
            return self.files.let_go()
        except Exception:
            sys.excepthook(*sys.exc_info())
            return False
