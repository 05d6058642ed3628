"""The printed sheet's own arrangement, asked for at the window's scale and without a border."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property

from app.scene.model import Model
from app.scene.preferences import Preferences
from geometry.dimensioning.dimension import Dimension
from geometry.dimensioning.dimension_marks import Target
from geometry.drawing.marks import Mark
from geometry.primitives.frame import Vec2
from geometry.sheets.arrangement import Arranged, ViewPlace, arrange
from geometry.sheets.layout import Layout
from geometry.views.view import View
from shared.paper import Paper

TEXT_HEIGHT = 2.5  # mm, ISO 3098 nominal size
SHORTEST = 0.8  # mm on the sheet between the ends of a dimension
SHORTEST_ARM = 4.0  # mm on the sheet along the sides of an angle
CAPTION_ROOM = 4.0 + 1.5 * TEXT_HEIGHT  # mm below a view, where its name stands
SCREEN = Paper("screen", 400.0, 300.0, 0.0, 0.0, "our choice: only the middle of it matters")


@dataclass(frozen=True, eq=False)
class LaidOut:
    """A model on the sheet at one scale; all in sheet mm."""

    model: Model
    arranged: Arranged

    @property
    def marks(self) -> tuple[Mark, ...]:
        return self.arranged.sheet.marks

    @property
    def targets(self) -> tuple[Target, ...]:
        return self.arranged.targets

    def view_names(self) -> tuple[str, ...]:
        return tuple(place.view for place in self.arranged.places)

    @cached_property
    def extent(self) -> tuple[float, float, float, float]:
        """Left, bottom, right, top of all views with their dimensions and names."""
        rooms = [place.room for place in self.arranged.places]
        return (
            min(room[0] for room in rooms),
            min(room[1] for room in rooms) - CAPTION_ROOM,
            max(room[2] for room in rooms),
            max(room[3] for room in rooms),
        )

    @property
    def scale(self) -> float:
        """Sheet mm for one mm of the bench."""
        return self.arranged.places[0].scale

    def sheet_point(self, view: str, point: Vec2) -> Vec2:
        """Where a point (u, v) of a view is; the front elevation stands in for one not shown."""
        return self._place(view).on_sheet(point)

    def view_at(self, sheet_point: Vec2) -> tuple[View, Vec2] | None:
        """The view a sheet point lies in, and the point (u, v) there; None between views."""
        place = self.arranged.view_at(sheet_point)
        if place is None:
            return None
        view = next(each.view for each in self.model.lineworks if each.view.name == place.view)
        return view, place.in_view(sheet_point)

    def nearest_view(self, sheet_point: Vec2) -> tuple[str, Vec2]:
        """The view that a sheet point lies in or nearest to, and the point (u, v) there."""
        place = min(self.arranged.places, key=lambda each: _away(each, sheet_point))
        return place.view, place.in_view(sheet_point)

    def _place(self, view: str) -> ViewPlace:
        for place in self.arranged.places:
            if place.view == view:
                return place
        return self.arranged.places[0]


def lay_out(
    model: Model, preferences: Preferences, scale: float, *, close: bool = False
) -> LaidOut:
    """The general arrangement at ``scale`` sheet mm for one mm of the bench; with ``close`` rows of
    dimensions where the window is low."""
    layout = Layout(
        SCREEN,
        scale,
        third_angle=preferences.third_angle,
        text_height=TEXT_HEIGHT,
        shown=preferences.shown,
        words=preferences.words,
        frame=False,
        close=close,
    )
    shown = [each for each in model.dimensions if _readable(each, scale)]
    return LaidOut(model, arrange(model.bench, model.lineworks, shown, layout))


def _readable(dimension: Dimension, scale: float) -> bool:
    """Far out, sizes and angles too small to be told apart are left to the story stick."""
    if dimension.apex is not None:
        return math.dist(dimension.apex, dimension.end) * scale >= SHORTEST_ARM
    return abs(dimension.value) * scale >= SHORTEST or dimension.value < 1e-6


def _away(place: ViewPlace, point: Vec2) -> float:
    left, bottom, right, top = place.room
    dx = max(left - point[0], 0.0, point[0] - right)
    dy = max(bottom - point[1], 0.0, point[1] - top)
    return dx * dx + dy * dy
