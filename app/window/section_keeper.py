"""Between the desk, the plane of the section on the sheet, and the fields over it.

A section is kept with the bench once the maker has moved its plane, or asks for it; from then on
the one that is kept is the one that is shown.  It is no step of the history.
"""

from __future__ import annotations

from PySide6.QtCore import QObject, Signal

from app.canvas.look_canvas import LookCanvas
from app.document.desk import Desk
from app.panels.section_fields import SectionFields
from geometry.design.cutting_plane import Way
from shared.errors import MakerError


class SectionKeeper(QObject):
    """``way_shown`` carries the place of the way in which the plane now stands, when a project
    brings its own."""

    way_shown = Signal(int)

    def __init__(self, desk: Desk, looks: LookCanvas, fields: SectionFields) -> None:
        super().__init__(looks)
        self._desk, self._looks, self._fields = desk, looks, fields
        self._left_out = False
        looks.moved.connect(self._show_plane)
        looks.put.connect(self._put)
        fields.given.connect(self._give)
        fields.given_up.connect(looks.setFocus)
        fields.kept.connect(self._want)
        desk.laid_down.connect(self.begin)
        desk.work_changed.connect(self._show_kept)

    def begin(self) -> None:
        """Another project lies on the desk."""
        self._left_out = False
        planes = self._looks.planes
        planes.begin(self._desk.project.section)
        self.way_shown.emit(tuple(Way).index(planes.way))
        self._looks.update()
        self._show_kept()

    def choose_way(self, way: Way) -> None:
        self._looks.show_way(way)
        if self._desk.project.section is not None:
            self._keep()
        self._show_kept()

    def _put(self) -> None:
        if not self._left_out:
            self._keep()
        self._show_kept()

    def _want(self, wanted: bool) -> None:
        """The maker says so, and it stays so until another project comes."""
        self._left_out = not wanted
        if wanted:
            self._keep()
        else:
            self._desk.keep_section(None)
        self._show_kept()

    def _keep(self) -> None:
        self._desk.keep_section(self._looks.planes.standing)

    def _show_kept(self) -> None:
        kept = self._desk.project.section
        self._fields.show_kept(kept=kept is not None and kept == self._looks.planes.standing)

    def _show_plane(self, told: str) -> None:
        self._fields.show_numbers(self._looks.numbers(), told)
        self._show_kept()

    def _give(self, place: int, text: str) -> None:
        try:
            (self._looks.give_place, self._looks.give_turn)[place](text)
        except MakerError as error:
            self._fields.refuse(place, error)
            return
        self._fields.fields[place].setModified(False)
        self._looks.refresh()
