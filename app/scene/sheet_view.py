"""What of the sheet is in the window: the model, laid out at a scale, and where it lies.

The sheet is the same as the one that prints; only its scale is the window's.  Turning the wheel
lays the sheet out again at another scale, so that texts and line widths keep their size, and
puts the point of the bench that was under the pointer there again.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass

import numpy as np

from app.gestures.moments import Handle
from app.scene.joint_picking import joint_under
from app.scene.joint_seams import Near, Seam
from app.scene.laying_out import LaidOut, lay_out
from app.scene.model import Model
from app.scene.picking import Lines, distances_to, lines_of, texts_of
from app.scene.preferences import Preferences
from app.scene.sheet_place import LARGEST_SCALE, SMALLEST_SCALE, SheetPlace, zoomed
from geometry.dimensioning.dimension_marks import Target
from geometry.drawing.marks import Mark
from geometry.drawing.text_box import TextBox
from geometry.primitives.frame import Vec2
from geometry.sheets.pencil_marks import pencil_marks

SMALLEST_SHARE = 0.22  # of the room, however much the dimensions want for themselves
FAIR_SHARE = 0.55  # of the room: rows of dimensions close up before the views come out smaller
MODEST_SHARE = 0.3  # of the room: lettering gives way before the views come out smaller
DENSITY_STEP = 0.5  # pixels to the mm, by which lettering gives way
NARROWEST_SHEET, LOWEST_SHEET = 140.0, 115.0  # mm; lettering gives way before that
LEAST_DENSITY = 3.0  # pixels to the mm: capitals 7.5 pixels high
LEAST_SQUEEZED = 0.6  # of its scale, to which a fitted drawing shrinks for what comes below it
MARGIN = 14.0  # pixels left free round the drawing when it is fitted
LINE_REACH = 7.0  # pixels
EDGES_ALIKE = 2.5  # pixels between two edges that a hand does not tell apart
SEAM_REACH = 5.0  # pixels
SMALL_SEAM = 48.0  # pixels: a corner or an end, which an edge may pass; pulled, it still follows
SEAM_NEARER = 1.0  # pixels that a seam is nearer than an edge, to be meant before it
SEAM_AROUND = 8.0  # pixels round the pointer in which both parts of a joint are in sight
TEXT_REACH = 13.0  # pixels from a text's middle line: a target of 26 px


@dataclass(frozen=True, slots=True)
class Hold:
    """A point of the bench in a view, and the pixel where it is to stay."""

    view: str
    point: Vec2
    at: Vec2


class SheetView:
    """No Qt here: pixels are plain numbers."""

    def __init__(self, model: Model, preferences: Preferences) -> None:
        self.model = model
        self.preferences = preferences
        self.size: Vec2 = (800.0, 600.0)
        self.density = self._wanted = 4.0
        self.scale = 0.1
        self.place = SheetPlace(self.density, 0.0, 0.0)
        self.fitted = True
        self._squeezed = False
        self._close = False
        self.laid_out: LaidOut = lay_out(model, preferences, self.scale)
        self._texts = Lines((), ())
        self._lines = Lines((), ())
        self._edges = Lines((), ())
        self._indexed: LaidOut | None = None

    # Changing

    def show(self, model: Model, preferences: Preferences, hold: Hold | None = None) -> None:
        """Another bench or other preferences, with a point of it held where it is."""
        held = hold or self._lower_corner()
        turned = preferences.third_angle != self.preferences.third_angle
        self.model, self.preferences = model, preferences
        if turned and self.fitted:
            self.fit()
        else:
            self._lay_out(held)

    def resize(self, size: Vec2, density: float) -> None:
        """The window has another size or type size; a fitted sheet is fitted again.

        ``density`` follows the window's type, but leaves the sheet room enough to be one.
        """
        held = self._lower_corner()
        self.size, self._squeezed = size, False
        roomy = min(size[0] / NARROWEST_SHEET, size[1] / LOWEST_SHEET)
        self.density = self._wanted = min(density, max(LEAST_DENSITY, roomy))
        if self.fitted:
            self.fit()
        else:
            self._lay_out(held)

    def give_way(self, height: float, down: float, *, held: bool = False) -> None:
        """The window is as wide as before but of another height, and its top has moved.

        The drawing stays where it is on the screen.  But what has come below it must not cut off a
        fitted one, nor leave it small when it has gone again, unless a hand has ``held`` of it.
        """
        more = height > self.size[1]
        self.size = (self.size[0], height)
        self.place = self.place.moved((0.0, down))
        if down != 0.0 or held or not self.fitted:
            return
        cut_off = self.overflows()
        self._squeezed = self._squeezed or cut_off
        if cut_off or (more and self._squeezed):
            self._fit_unless_tiny()

    def zoom(self, at: Vec2, notches: float) -> None:
        """Larger or smaller about a pixel."""
        held = self._hold_under(at)
        self.scale = zoomed(self.scale, notches)
        self.fitted = False
        self._lay_out(held)

    def pan(self, by: Vec2) -> None:
        self.place = self.place.moved(by)
        self.fitted = False

    def fit(self) -> None:
        """The whole drawing as large as the window takes it.

        In a low window the dimensions alone would fill the sheet, so there their rows close up and
        then the lettering gives way, down to the least that can be read, before the bench becomes a
        stamp among them.
        """
        self.density, self._close = self._wanted, False
        if not self._fill_window(FAIR_SHARE):
            self._close = True
            while not self._fill_window(MODEST_SHARE) and self.density > LEAST_DENSITY:
                self.density = max(LEAST_DENSITY, self.density - DENSITY_STEP)
        self.scale = self.laid_out.scale
        left, bottom, right, top = self.laid_out.extent
        middle = ((left + right) / 2, (bottom + top) / 2)
        centre = (self.size[0] / 2, self.size[1] / 2)
        self.place = SheetPlace(self.density, 0.0, 0.0).holding(middle, centre)
        self.fitted = True

    def overflows(self) -> bool:
        """True when some of the drawing lies outside the window."""
        left, bottom, right, top = self.laid_out.extent
        x0, y0 = self.place.to_window((left, top))
        x1, y1 = self.place.to_window((right, bottom))
        return x0 < 0 or y0 < 0 or x1 > self.size[0] or y1 > self.size[1]

    def show_point(self, view: str, point: Vec2) -> None:
        """Bring a point of the bench into the middle if it lies outside the window."""
        x, y = self.window_point(view, point)
        if not (0 <= x <= self.size[0] and 0 <= y <= self.size[1]):
            self.pan((self.size[0] / 2 - x, self.size[1] / 2 - y))

    # Asking

    @property
    def pixels_per_mm(self) -> float:
        """Window pixels to the mm of the bench."""
        return self.density * self.scale

    def view_mm(self, by: Vec2) -> Vec2:
        """A movement of so many pixels as a movement in a view, mm of the bench."""
        return (by[0] / self.pixels_per_mm, -by[1] / self.pixels_per_mm)

    def window_point(self, view: str, point: Vec2) -> Vec2:
        """The pixel where a point (u, v) of a view is."""
        return self.place.to_window(self.laid_out.sheet_point(view, point))

    def hold(self, view: str, point: Vec2) -> Hold:
        """A point of the bench held where it now is."""
        return Hold(view, point, self.window_point(view, point))

    def handle_at(self, at: Vec2) -> Handle | None:
        """What a hand would take hold of there: a dimension's text, its line, or an edge."""
        self._index()
        sheet = self.place.to_sheet(at)
        line, text = LINE_REACH / self.density, TEXT_REACH / self.density
        name = self._texts.nearest(sheet, text) or self._lines.nearest(sheet, line)
        if name:
            dimension = self.model.dimension_named[name]
            return Handle(dimension.view, dimension.pull, name)
        edge = self._edges.nearest(sheet, line, EDGES_ALIKE / self.density)
        if edge:
            handhold = self.model.handholds[int(edge)]
            return Handle(handhold.view, handhold.pull)
        return None

    def edge_pixels(self, handle: Handle, at: Vec2) -> tuple[float, float, float, float] | None:
        """The edge of that pull which lies nearest to a pixel, as a line in pixels."""
        found = [
            (
                *self.window_point(handhold.view, handhold.start),
                *self.window_point(handhold.view, handhold.end),
            )
            for handhold in self.model.handholds
            if handhold.view == handle.view and handhold.pull == handle.pull
        ]
        if not found:
            return None
        return found[int(distances_to(np.array(found), at).argmin())]

    def part_at(self, at: Vec2) -> str:
        """The name of the part seen at a pixel; empty beside the bench."""
        spot = self.laid_out.view_at(self.place.to_sheet(at))
        if spot is None:
            return ""
        view, point = spot
        place = self.model.seams.foremost_in(view).under(point)
        return "" if place is None else self.model.bench.parts[place].name

    def joint_at(self, at: Vec2) -> str:
        """The name of the joint at a pixel; empty where there is none."""
        spot = self.laid_out.view_at(self.place.to_sheet(at))
        if spot is None:
            return ""
        view, point = spot
        reach = LINE_REACH / self.pixels_per_mm
        return joint_under(self.model.bench.joints, view, point, reach)

    def seam_at(self, at: Vec2, handle: Handle | None) -> Seam | None:
        """The seam of a joint at a pixel where that is plain: on no dimension, and not on a long
        one that runs no nearer than an edge of which a hand would take hold."""
        spot = self.laid_out.view_at(self.place.to_sheet(at))
        if spot is None or (handle is not None and handle.dimension):
            return None
        edge = self.edge_pixels(handle, at) if handle is not None else None
        beside = np.inf if edge is None else float(distances_to(np.array([edge]), at)[0])
        view, point = spot
        pixels = (SEAM_REACH, SEAM_AROUND, beside - SEAM_NEARER, SMALL_SEAM)
        return self.model.seams.at(view, point, Near(*(p / self.pixels_per_mm for p in pixels)))

    def seam_pixels(self, seam: Seam) -> tuple[tuple[float, float, float, float], ...]:
        """A seam's lines in pixels."""
        return tuple(
            (*self.window_point(seam.view, (a, b)), *self.window_point(seam.view, (c, d)))
            for a, b, c, d in seam.lines.tolist()
        )

    def target(self, dimension: str) -> Target | None:
        """Where a dimension stands on the sheet; None when it is not drawn at this scale."""
        return next((t for t in self.laid_out.targets if t.name == dimension), None)

    def text_corners(self, dimension: str) -> tuple[Vec2, ...]:
        """The corners of a dimension's text in pixels; empty when it is not drawn."""
        target = self.target(dimension)
        return tuple(self.place.to_window(c) for c in target.text_corners) if target else ()

    def pencil_marks(self, part: str) -> list[Mark]:
        """Grain and reference faces of a part in every view, in sheet mm."""
        bench = self.model.bench
        if part not in {one.name for one in bench.parts}:
            return []
        texts = [_box(target.text_corners) for target in self.laid_out.targets]
        views = {linework.view.name: linework.view for linework in self.model.lineworks}
        return [
            mark
            for place in self.laid_out.arranged.places
            for mark in pencil_marks(
                bench.part(part), views[place.view], place.scale, place.origin, texts
            )
        ]

    def dimensions_of(self, name: str) -> frozenset[str]:
        """The dimensions that show a value of the story stick, set or derived."""
        return frozenset(
            each.name for each in self.model.dimensions if name in (each.parameter, each.name)
        )

    def walk(self) -> tuple[str, ...]:
        """The dimensions on the sheet in reading order: view by view, from the top left."""
        views = {view: place for place, view in enumerate(self.laid_out.view_names())}

        def order(target: Target) -> tuple[int, float, float]:
            view = self.model.dimension_named[target.name].view
            x, y = target.text_corners[0]
            return (views[view], -round(y / 4.0), x)

        return tuple(target.name for target in sorted(self.laid_out.targets, key=order))

    # Inside

    def _fit_unless_tiny(self) -> None:
        """Better cut off for a while than too small to be read."""
        before = self.laid_out, self.scale, self.place, self.density, self._close
        self.fit()
        if self.pixels_per_mm < LEAST_SQUEEZED * before[1] * before[3]:
            self.laid_out, self.scale, self.place, self.density, self._close = before

    def _lay_out(self, held: Hold) -> None:
        self.laid_out = self._at(self.scale)
        sheet = self.laid_out.sheet_point(held.view, held.point)
        self.place = SheetPlace(self.density, 0.0, 0.0).holding(sheet, held.at)

    def _at(self, scale: float) -> LaidOut:
        return lay_out(self.model, self.preferences, scale, close=self._close)

    def _fill_window(self, share: float) -> bool:
        """Lay out at the largest scale that fits; True when all is in the window, and the views are
        no smaller than that ``share`` of what they would be alone.

        Dimensions keep their size on the sheet and need the less room the larger the views are,
        so several scales may just fit.  Coming down from the scale at which the views alone fill
        the window finds the largest.
        """
        room = (
            max(40.0, (self.size[0] - 2 * MARGIN) / self.density),
            max(40.0, (self.size[1] - 2 * MARGIN) / self.density),
        )
        largest = min(
            have / max(need, 1.0) for have, need in zip(room, self.model.size, strict=True)
        )
        self.laid_out = self._largest_that_fits(0.8 * largest, SMALLEST_SHARE * largest, room)
        return self.laid_out.scale >= share * largest and _spare(self.laid_out, room) >= 1.0

    def _largest_that_fits(self, scale: float, least: float, room: Vec2) -> LaidOut:
        """The sheet laid out to fill ``room`` (mm); where none fits down to ``least``, the one of
        which the least is cut off, and of several the largest."""
        best: LaidOut | None = None
        too_large: list[LaidOut] = []
        for _ in range(16):
            tried = self._at(_bounded(scale))
            ratio = _spare(tried, room)
            if ratio < 1.0 and best is not None:
                break
            if ratio >= 1.0:
                best = tried
                if ratio < 1.02:
                    break
                scale *= min(ratio, 1.1)
            else:
                too_large.append(tried)
                scale *= max(min(ratio, 0.97), 0.92)
                if scale < least:
                    break
        return best or min(too_large, key=lambda each: round(_excess(each, room)))

    def _lower_corner(self) -> Hold:
        """The front view's origin, on the floor at the left: it stays while the bench changes."""
        view = self.laid_out.view_names()[0]
        return self.hold(view, (0.0, 0.0))

    def _hold_under(self, at: Vec2) -> Hold:
        """The point of the nearest view under a pixel."""
        view, point = self.laid_out.nearest_view(self.place.to_sheet(at))
        return Hold(view, point, at)

    def _index(self) -> None:
        if self._indexed is self.laid_out:
            return
        self._indexed = self.laid_out
        targets: Iterable[Target] = self.laid_out.targets
        self._texts, self._lines = texts_of(targets), lines_of(targets)
        handholds = self.model.handholds
        ends = [
            (
                *self.laid_out.sheet_point(handhold.view, handhold.start),
                *self.laid_out.sheet_point(handhold.view, handhold.end),
            )
            for handhold in handholds
        ]
        self._edges = Lines(ends, [str(place) for place in range(len(handholds))])


def _spare(laid_out: LaidOut, room: Vec2) -> float:
    """How much larger the views could be if all else kept its size; under 1: too large."""
    left, bottom, right, top = laid_out.extent
    wide, high = (side * laid_out.scale for side in laid_out.model.size)
    return min(
        (room[0] - (right - left) + wide) / max(wide, 1e-6),
        (room[1] - (top - bottom) + high) / max(high, 1e-6),
    )


def _excess(laid_out: LaidOut, room: Vec2) -> float:
    """How far the sheet reaches out of the room, mm."""
    left, bottom, right, top = laid_out.extent
    return max(right - left - room[0], top - bottom - room[1])


def _box(corners: tuple[Vec2, ...]) -> TextBox:
    """The room of a text from its corners, counter-clockwise from the lower left."""
    (ax, ay), (bx, by), (cx, cy), _ = corners
    wide, high = math.dist((ax, ay), (bx, by)), math.dist((bx, by), (cx, cy))
    cos, sin = (bx - ax) / wide, (by - ay) / wide
    return TextBox((ax + cx) / 2.0, (ay + cy) / 2.0, wide / 2.0, high / 2.0, cos, sin)


def _bounded(scale: float) -> float:
    return min(LARGEST_SCALE, max(SMALLEST_SCALE, scale))
