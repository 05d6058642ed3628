"""The line of a section's plane in the elevations: where it is, and what a hand does with it there.

It is there once a maker has made a section, and moves the same plane as the small view beside that.
Pixels of the window; no Qt here.
"""

from __future__ import annotations

from collections.abc import Callable
from enum import Enum

import numpy as np

from app.gestures.plane_hand import PlaneHand
from app.scene.laying_out import TEXT_HEIGHT, LaidOut
from app.scene.picking import distances_to
from app.scene.planes import Planes
from app.scene.preferences import Preferences
from app.scene.sheet_view import SheetView
from app.scene.wording import said
from geometry.design.cutting_plane import Plane
from geometry.drawing.marks import Mark
from geometry.primitives.frame import Vec2
from geometry.sheets.plane_in_view import about, plane_in_view
from geometry.sheets.plane_line import LARGER, Letter
from geometry.sheets.section_key import SectionKey, key_on
from geometry.sheets.section_marks import visible_lines
from geometry.sheets.section_plane import key_view_of, told
from geometry.sheets.section_sheet import ON_SCREEN
from geometry.sheets.thinning import legible

_REACH = 5.0  # pixels
_LETTER = Letter(ON_SCREEN.letter, LARGER * TEXT_HEIGHT)


class Grip(Enum):
    """What a hand has of the line; level and upright tell how that runs."""

    END = "an end, to turn it by"
    LEVEL = "a line that runs more level than upright"
    UPRIGHT = "one that runs more upright"


class PlaneLine:
    """``wanted`` tells whether there is a section to be shown."""

    def __init__(self, view: SheetView, planes: Planes, wanted: Callable[[], bool]) -> None:
        self._view, self._planes, self._wanted = view, planes, wanted
        self._hand = PlaneHand(planes)
        self._about = about(())
        self._laid: tuple[LaidOut, Plane] | None = None
        self._shown: tuple[SectionKey, tuple[Mark, ...]] | None = None

    @property
    def key(self) -> SectionKey | None:
        """The line as it is drawn; None where there is none."""
        shown = self._now()
        return None if shown is None else shown[0]

    @property
    def marks(self) -> tuple[Mark, ...]:
        """On the sheet."""
        shown = self._now()
        return () if shown is None else shown[1]

    def grip_at(self, at: Vec2, *, on_dimension: bool) -> Grip | None:
        """What a hand would take hold of at a pixel; a dimension there goes before the line, but
        not before its ends."""
        key = self.key
        if key is None:
            return None
        spot = self._view.place.to_sheet(at)
        if key.end_at(spot) is not None:
            return Grip.END
        (x0, y0), (x1, y1) = key.ends
        away = float(distances_to(np.array([(x0, y0, x1, y1)]), spot)[0]) * self._view.density
        if on_dimension or away > _REACH:
            return None
        return Grip.LEVEL if abs(x1 - x0) > abs(y1 - y0) else Grip.UPRIGHT

    def note(self, preferences: Preferences, *, at_rest: bool) -> str:
        """Where the plane stands; ``at_rest`` also what can be done with it."""
        where = (
            f"Section {_LETTER.text}–{_LETTER.text}\n{told(self._planes.bench, self._planes.plane)}"
        )
        how = "\nPull it, or turn it by an end. Click to see the section."
        return said(where + how if at_rest else where, preferences)

    # The hand

    def press(self, at: Vec2) -> None:
        key = self.key
        assert key is not None
        self._hand.press(key, self._view.place.to_sheet(at))

    def pull(self, at: Vec2, *, free: bool) -> None:
        key = self.key
        if key is not None:
            self._hand.pull(key, self._view.place.to_sheet(at), free=free)

    def release(self) -> bool:
        """Whether the plane has been moved."""
        return self._hand.release()

    def give_up(self) -> None:
        self._hand.give_up()

    def _now(self) -> tuple[SectionKey, tuple[Mark, ...]] | None:
        if not self._wanted():
            return None
        laid = (self._view.laid_out, self._planes.plane)
        if self._laid is None or self._laid[0] is not laid[0]:
            self._about = about(legible(laid[0].marks))
        elif self._laid[1] == laid[1]:
            return self._shown
        self._laid, self._shown = laid, self._made(*laid)
        return self._shown

    def _made(self, laid_out: LaidOut, plane: Plane) -> tuple[SectionKey, tuple[Mark, ...]] | None:
        name = key_view_of(laid_out.model.bench, plane.way).name
        place = next((one for one in laid_out.arranged.places if one.view == name), None)
        if place is None:
            return None
        seen = next(one for one in laid_out.model.lineworks if one.view.name == name)
        key = key_on(laid_out.model.bench, plane, visible_lines(seen), place)
        return plane_in_view(key, _LETTER, self._about)
