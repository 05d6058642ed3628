"""Brief: between the desk and the page that asks and advises."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from PySide6.QtCore import QObject

from app.document.desk import Desk
from app.panels.brief_page import BriefPage
from app.scene.advice_words import advice_words
from app.scene.brief_text import read_brief_value
from app.scene.wording import said_error
from app.window.presenter import Presenter
from geometry.advice.advised import Advice
from geometry.advice.all_advice import advice
from geometry.design.brief import row_of
from shared.errors import MakerError


class BriefStage(QObject):
    """Follows the desk while it is looked at; what is said and taken is one step each."""

    def __init__(self, desk: Desk, presenter: Presenter, parent: QObject) -> None:
        super().__init__(parent)
        self._desk, self._presenter = desk, presenter
        self.page = BriefPage()
        self._advice: tuple[Advice, ...] = ()
        self.page.fields.said.connect(self._say)
        self.page.taken.connect(self._take)
        desk.work_changed.connect(self._follow)
        desk.shown_changed.connect(self._follow)

    def shown(self) -> None:
        """The maker has come to the brief, or likes to see things otherwise."""
        self._show()

    def _follow(self) -> None:
        if self.page.isVisible():
            self._show()

    def _show(self) -> None:
        project, preferences = self._desk.project, self._presenter.preferences
        self.page.fields.show_brief(project.brief, preferences)
        self._advice = advice(self._desk.settled.bench, project.brief)
        self.page.show_advice(tuple(advice_words(one, preferences) for one in self._advice))

    def _say(self, name: str, text: str) -> None:
        """A value of the brief from what was written or chosen."""
        row, project = row_of(name), self._desk.project
        shown = self._presenter.preferences.shown
        try:
            value: Any = read_brief_value(row, text, shown)
            brief = replace(project.brief, **{name: value})
        except MakerError as error:
            self.page.fields.show_wrong(name, said_error(error, self._presenter.preferences))
            return
        self._desk.describe(replace(project, brief=brief), f"Brief, {row.title.lower()}")
        self._show()

    def _take(self, name: str) -> None:
        """Set what a piece of advice asks, as one step."""
        one = next(each for each in self._advice if each.name == name)
        try:
            self._desk.set_values(dict(one.changes), f"{one.title} as advised")
        except MakerError as error:
            self.page.say(said_error(error, self._presenter.preferences))
