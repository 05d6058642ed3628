"""Carving: between the desk and the page that shows it."""

from __future__ import annotations

from PySide6.QtCore import QObject

from app.canvas.carving_canvas import CarvingCanvas
from app.document.desk import Desk
from app.panels.carving_page import CarvingPage
from app.panels.stick_model import TypeValue
from app.scene.carving_notes import advice_note
from app.scene.stick_rows import stick_rows
from app.scene.wording import said, said_error
from app.window.presenter import Presenter
from geometry.bench.build import build
from geometry.bench.carving_numbers import carving_of, chosen_fronts
from geometry.bench.carving_parameters import PARAMETERS, fronts_text
from geometry.bench.carving_pattern import Hold, points_of
from geometry.bench.drawer_numbers import drawers
from geometry.bench.drawers import has_drawers
from geometry.bench.raising import raised_for_land
from geometry.design.parameter import Value
from geometry.design.spec import BenchSpec
from geometry.dimensioning.point_pull import pull_point, spot_of
from shared.errors import MakerError
from shared.units import format_length, read_length

GROUPS = frozenset(row.group for row in PARAMETERS)
MOST_SEEDS = 9999


class CarvingStage(QObject):
    """Follows the desk while it is looked at.  A point under the hand is shown here only; what
    the hand leaves becomes one step of the history."""

    def __init__(
        self, desk: Desk, presenter: Presenter, type_value: TypeValue, parent: QObject
    ) -> None:
        super().__init__(parent)
        self._desk, self._presenter = desk, presenter
        self.canvas = CarvingCanvas(desk.spec, presenter.preferences, None)
        self.page = CarvingPage(self.canvas, type_value)
        self.canvas.pulled.connect(self._show_sizes)
        self.canvas.settled.connect(self._settle)
        self.canvas.given_up.connect(self._show)
        self.canvas.picked.connect(self._show_point)
        self.canvas.typing_asked.connect(self.page.point.begin)
        self.page.stick.stepped.connect(self._presenter.step_value)
        self.page.point.given.connect(self._typed)
        self.page.point.given_up.connect(self._back_to_canvas)
        self.page.front_switched.connect(self._switch)
        self.page.another.clicked.connect(self._another_seed)
        self.page.back.clicked.connect(self._as_seeded)
        self.page.raise_them.clicked.connect(self._raise)
        desk.shown_changed.connect(self._follow)

    def shown(self) -> None:
        """The maker has come to the carving, or likes to see things otherwise."""
        self._show()

    def _follow(self) -> None:
        if self.page.isVisible():
            self._show()

    def _show(self) -> None:
        spec, preferences = self._desk.spec, self._presenter.preferences
        self.canvas.show_bench(spec, preferences)
        self._show_sizes(spec)
        carved = {drawer.name for drawer in chosen_fronts(spec)}
        self.page.show_fronts(
            tuple(
                (f"{d.opening.index}.{d.number}", said(d.title, preferences), d.name in carved)
                for d in (drawers(spec) if has_drawers(spec) else ())
            )
        )
        carving = carving_of(spec)
        self.page.another.setVisible(carving is not None)
        self.page.back.setVisible(bool(carving and carving.pattern.moved))
        self.page.show_advice(advice_note(spec, preferences))

    def _show_sizes(self, spec: BenchSpec) -> None:
        """What the bench under the hand measures."""
        rows = stick_rows(build(spec), self._presenter.preferences)
        self.page.stick.stick.show_rows(tuple(row for row in rows if row.group in GROUPS))
        self._show_point(self.canvas.number)

    def _show_point(self, number: int) -> None:
        carving = carving_of(self.canvas.spec)
        spot = spot_of(carving, number) if carving and number else None
        if carving is None or spot is None:
            self.page.point.show_point(0, ("", "", ""), (True, True, True))
            return
        hold = points_of(carving.pattern)[number - 1].hold
        shown = self._presenter.preferences.shown
        held = (hold in (Hold.CORNER, Hold.UPRIGHT), hold in (Hold.CORNER, Hold.LEVEL), False)
        texts = tuple(format_length(round(value, 4), shown) for value in spot.at)
        self.page.point.show_point(number, texts, held)

    # From the hand to the desk

    def _set(self, changes: dict[str, Value], words: str) -> str:
        """One step of the history; what is wrong with it, or nothing."""
        try:
            self._desk.set_values(changes, words)
        except MakerError as error:
            return said_error(error, self._presenter.preferences)
        return ""

    def _settle(self, spec: BenchSpec) -> None:
        words = f"Point {self.canvas.number} of the carving"
        self._set({"carving_moved": spec.word("carving_moved")}, words)

    def _typed(self, place: int, text: str) -> None:
        """One number of the picked point; it is held as under the hand."""
        spec, number = self._desk.spec, self.canvas.number
        carving = carving_of(spec)
        spot = spot_of(carving, number) if carving and number else None
        if spot is None:
            return
        preferences = self._presenter.preferences
        try:
            value = read_length(text, preferences.shown)
        except MakerError as error:
            self.page.point.refuse(place, said_error(error, preferences))
            return
        x, y, z = (value if k == place else now for k, now in enumerate(spot.at))
        moved = pull_point(spec, number, (x, y, z))
        self.page.point.accepted()
        self._settle(moved.spec)
        self._show_point(number)
        if moved.stopped_by:
            reason = moved.stopped_by[:1].upper() + moved.stopped_by[1:]
            self.page.point.refuse(-1, said(f"{reason}.", preferences))

    def _back_to_canvas(self) -> None:
        self.page.point.accepted()
        self._show_point(self.canvas.number)
        self.canvas.setFocus()

    def _switch(self, name: str) -> None:
        """Carve a front that is plain, or leave plain one that is carved; the last one stays."""
        spec = self._desk.spec
        here = {(d.opening.index, d.number) for d in drawers(spec)}
        opening, number = (int(part) for part in name.split("."))
        carved = {(d.opening.index, d.number) for d in chosen_fronts(spec)}
        wanted = carved ^ {(opening, number)}
        changes: dict[str, Value] = {"carving": "faceted" if wanted else "plain"}
        if wanted:
            changes["carved_fronts"] = fronts_text(frozenset(() if wanted == here else wanted))
        why = self._set(changes, "Which fronts are carved")
        self._show()
        if why:
            self.page.point.refuse(-1, why)

    def _another_seed(self) -> None:
        seed = self._desk.spec.count("carving_seed") % MOST_SEEDS + 1
        self._set({"carving_seed": float(seed)}, "")

    def _as_seeded(self) -> None:
        self._set({"carving_moved": ""}, "Points back to the seed's")

    def _raise(self) -> None:
        raised = raised_for_land(self._desk.spec)
        if raised is not None:
            self._set({"carving_moved": raised.moved}, "Points raised")
