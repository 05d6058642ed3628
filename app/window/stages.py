"""The stages of the job: the drawing at once, each other made when it is first gone to.

So the window is there before what a maker may not need today is loaded.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Protocol

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QStackedWidget, QWidget

from app.document.desk import Desk
from app.panels.job_strip import BRIEF, CARVING, JOINTS, PAPERS
from app.window.asking import Asker
from app.window.drawing_page import DrawingPage
from app.window.presenter import Presenter
from geometry.design.finding import Finding

if TYPE_CHECKING:
    from app.window.brief_stage import BriefStage
    from app.window.carving_stage import CarvingStage
    from app.window.joints_stage import JointsStage
    from app.window.papers_stage import PapersStage


class _Stage(Protocol):
    @property
    def page(self) -> QWidget: ...

    def shown(self) -> None: ...


class Stages(QStackedWidget):
    """One page of the window's middle for each stage.

    ``preferred`` carries preferences that were changed on one of them; ``went_back``: the maker
    wants to go back to the sheet from a joint that was clicked there.
    """

    preferred = Signal(object)
    went_back = Signal()

    def __init__(
        self,
        desk: Desk,
        presenter: Presenter,
        drawing: DrawingPage,
        type_value: Callable[[str, str], str],
        ask: Asker,
        parent: QWidget,
    ) -> None:
        super().__init__(parent)
        self._desk, self._presenter, self.ask = desk, presenter, ask
        self._type_value = type_value
        self._drawing = drawing
        self.brief: BriefStage | None = None
        self.joints: JointsStage | None = None
        self.carving: CarvingStage | None = None
        self.papers: PapersStage | None = None
        self.addWidget(drawing)

    def go_to(self, word: str) -> None:
        """Show the stage of that name, up to date."""
        self.show_way_back("")
        stages: dict[str, Callable[[], _Stage]] = {
            BRIEF: self._to_brief,
            JOINTS: self.to_joints,
            CARVING: self._to_carving,
            PAPERS: self._to_papers,
        }
        if word not in stages:
            self.setCurrentWidget(self._drawing)
            return
        stage = stages[word]()
        self.setCurrentWidget(stage.page)
        stage.shown()
        if self.carving is not None and stage is self.carving:
            self.carving.canvas.setFocus()

    def show_way_back(self, words: str) -> None:
        """From the joints to the sheet, in words; empty for a maker who has not come from there."""
        if self.joints is not None:
            self.joints.page.show_way_back(words)
            if words:
                self.joints.page.list.setFocus()

    def renew(self) -> None:
        """What is being looked at, once more: units or words are others now."""
        for stage in (self.brief, self.joints, self.carving, self.papers):
            if stage is not None and stage.page.isVisible():
                stage.shown()

    @property
    def carving_is_shown(self) -> bool:
        return self.carving is not None and self.carving.page.isVisible()

    def shows_finding(self, finding: Finding) -> bool:
        """Whether the joint that a finding is about is now shown, where joints are looked at."""
        joints = self.joints
        return joints is not None and joints.page.isVisible() and joints.show_finding(finding)

    def wait(self) -> None:
        """Until the papers that are being written are written."""
        if self.papers is not None:
            self.papers.wait()

    def to_joints(self) -> JointsStage:
        if self.joints is None:
            from app.window.joints_stage import JointsStage

            self.joints = JointsStage(self._desk, self._presenter, self._type_value, self)
            self.joints.page.went_back.connect(self.went_back)
            self.addWidget(self.joints.page)
        return self.joints

    def _to_brief(self) -> BriefStage:
        if self.brief is None:
            from app.window.brief_stage import BriefStage

            self.brief = BriefStage(self._desk, self._presenter, self)
            self.addWidget(self.brief.page)
        return self.brief

    def _to_carving(self) -> CarvingStage:
        if self.carving is None:
            from app.window.carving_stage import CarvingStage

            self.carving = CarvingStage(self._desk, self._presenter, self._type_value, self)
            self.addWidget(self.carving.page)
        return self.carving

    def _to_papers(self) -> PapersStage:
        if self.papers is None:
            from app.window.papers_stage import PapersStage

            self.papers = PapersStage(self._desk, self._presenter, self.ask, self)
            self.papers.preferred.connect(self.preferred)
            self.addWidget(self.papers.page)
        return self.papers
