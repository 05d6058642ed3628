"""Where everything of the carving lies in its view: facets, fronts, points and sections, in pixels.

The elevation of the picture stands above; below it the section along the level of the pointer, at
its right the one up through the pointer, both with the thickness drawn ``larger`` so that it can
be read; under that how deep a finger gets along the groove.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

from geometry.bench.carving_numbers import Carving, carving_of, finished_edges, groove_of
from geometry.bench.drawer_numbers import Drawer, drawers, fronts_of
from geometry.bench.groove_land import finger_profile, stretches_without_land
from geometry.bench.relief_surface import Spot, spots_of
from geometry.design.spec import BenchSpec
from geometry.primitives.facets import Facets, trimmed
from geometry.primitives.frame import Vec2, Vec3

EDGE = 14.0  # px round everything
BESIDE = 48.0  # px between the elevation and the section at its right, for depths
CAPTION = 24.0  # px above a section
LEAST_STRIP, MOST_STRIP = 34.0, 64.0  # px, what a section's thickness takes
LARGEST = 4.0  # times; more looks like another timber
REACH = 11.0  # px: a point so near to the pointer is meant
_LIGHT = (-0.35, 0.45, 0.82)  # from the upper left, toward the viewer
_RELIEF = 5.0  # slopes are shaded as if so much steeper


@dataclass(frozen=True, slots=True)
class Shaded:
    """A facet in pixels and how bright it is, 0 to 1."""

    corners: tuple[Vec2, ...]
    bright: float


@dataclass(frozen=True, slots=True)
class Cut:
    """A section of one front in pixels: its outline."""

    outline: tuple[Vec2, ...]


@dataclass(frozen=True)
class CarvingScene:
    """A bench's carving in a window of ``size`` pixels, cut at ``at`` mm of the picture."""

    spec: BenchSpec
    size: Vec2
    at: Vec2

    @cached_property
    def carving(self) -> Carving | None:
        return carving_of(self.spec)

    @property
    def _known(self) -> Carving:
        assert self.carving is not None
        return self.carving

    # The elevation

    @cached_property
    def thickness(self) -> float:
        return fronts_of(self.spec).thickness

    @cached_property
    def larger(self) -> float:
        """How much larger than the elevation the thickness is drawn: a whole number."""
        times = math.floor(self.strip / (self.thickness * self.scale) + 0.5)
        return min(max(1.0, times), LARGEST)

    @cached_property
    def strip(self) -> float:
        """What each section may take, in pixels: as much as the elevation leaves."""
        free = self.size[1] - 2.0 * EDGE - self._known.picture.height * self.scale
        strips = 2 if groove_of(self.spec) else 1
        return min(max(free / strips - CAPTION - EDGE, LEAST_STRIP), MOST_STRIP)

    @cached_property
    def scale(self) -> float:
        """Pixels for a mm, so that the elevation leaves room for the sections."""
        picture = self._known.picture
        width, height = self.size
        wide = (width - 2.0 * EDGE - BESIDE - 1.5 * MOST_STRIP) / picture.width
        strips = 2 if groove_of(self.spec) else 1
        high = (height - 2.0 * EDGE - strips * (2.0 * LEAST_STRIP + CAPTION)) / picture.height
        return max(0.02, min(wide, high))

    @cached_property
    def corner(self) -> Vec2:
        """The picture's upper left corner in pixels."""
        wide = self._known.picture.width * self.scale + BESIDE + self.thickness_drawn
        return (max(EDGE, (self.size[0] - wide) / 2.0), EDGE)

    @property
    def thickness_drawn(self) -> float:
        """The fronts' thickness in a section, in pixels."""
        return self.thickness * self.scale * self.larger

    @property
    def foot(self) -> float:
        """The picture's lower edge in pixels."""
        return self.corner[1] + self._known.picture.height * self.scale

    def to_window(self, at: Sequence[float]) -> Vec2:
        """A point of the picture in pixels."""
        left, _ = self.corner
        return (left + at[0] * self.scale, self.foot - at[1] * self.scale)

    def to_picture(self, at: Vec2) -> Vec2:
        """A pixel in mm of the picture."""
        return ((at[0] - self.corner[0]) / self.scale, (self.foot - at[1]) / self.scale)

    def on_picture(self, at: Vec2) -> bool:
        x, y = self.to_picture(at)
        picture = self._known.picture
        return 0.0 <= x <= picture.width and 0.0 <= y <= picture.height

    def over(self, drawer: Drawer) -> tuple[float, float, float, float]:
        """A front's rectangle in the picture: left, low, right, high."""
        p = self._known.picture
        return (
            drawer.x_low - p.x_low,
            drawer.z_low - p.z_low,
            drawer.x_high - p.x_low,
            drawer.z_high - p.z_low,
        )

    @cached_property
    def fronts(self) -> tuple[tuple[Drawer, Facets], ...]:
        """What lies over each carved front, in mm of the picture."""
        return tuple(
            (drawer, trimmed(self._known.surface, self.over(drawer)))
            for drawer in self._known.fronts
        )

    @cached_property
    def facets(self) -> tuple[Shaded, ...]:
        return tuple(
            Shaded(tuple(self.to_window(c) for c in corners), _brightness(corners))
            for _, facets in self.fronts
            for corners in (facets.corners(face) for face in facets.faces)
        )

    @cached_property
    def spots(self) -> tuple[Spot, ...]:
        c = self._known
        return spots_of(c.pattern, c.picture.width, c.picture.height, c.depth)

    def spot_under(self, at: Vec2) -> Spot | None:
        """The nearest point within reach of a pixel."""
        near = [(math.dist(at, self.to_window(spot.at)), spot) for spot in self.spots]
        close = [one for one in near if one[0] <= REACH]
        return min(close, key=lambda one: one[0])[1] if close else None

    def depth_at(self, at: Vec2) -> float | None:
        """The carving's depth there; None between the fronts."""
        for drawer, facets in self.fronts:
            left, low, right, high = self.over(drawer)
            if left <= at[0] <= right and low <= at[1] <= high:
                line = _profile(facets, 1, at[1])
                return _along(line, at[0])
        return None

    # Sections

    @cached_property
    def level_section(self) -> tuple[Cut, ...]:
        """Along the level of the pointer, the face downward as one looks from above."""
        found = []
        face = self.level_top + self.thickness_drawn
        for drawer, facets in self.fronts:
            left, low, right, high = self.over(drawer)
            if not low <= self.at[1] <= high:
                continue
            line = [
                (self.to_window((x, 0.0))[0], face - deep * self.scale * self.larger)
                for x, deep in _profile(facets, 1, self.at[1])
            ]
            ends = (self.to_window((right, 0.0))[0], self.to_window((left, 0.0))[0])
            found.append(Cut((*line, (ends[0], self.level_top), (ends[1], self.level_top))))
        return tuple(found)

    @property
    def level_top(self) -> float:
        """The reverse of the fronts in the level section, in pixels."""
        return self.foot + CAPTION

    @property
    def upright_left(self) -> float:
        """The face of the fronts in the upright section, in pixels."""
        return self.to_window((self._known.picture.width, 0.0))[0] + BESIDE

    @cached_property
    def upright_section(self) -> tuple[Cut, ...]:
        """Up through the pointer, the face to the left, with the finger groove."""
        groove = groove_of(self.spec)
        found = []
        for drawer, facets in self.fronts:
            left, low, right, high = self.over(drawer)
            if not left <= self.at[0] <= right:
                continue
            line = [(deep, y) for y, deep in _profile(facets, 0, self.at[0])]
            back: list[Vec2] = []
            for edge, top in ((high, True), (low, False)):
                if groove and groove.at_top == top:
                    back += _cove(groove.radius, edge, self.thickness, top=top)
                else:
                    back.append((self.thickness, edge))
            found.append(Cut(tuple(self._upright(deep, y) for deep, y in (*line, *back))))
        return tuple(found)

    def _upright(self, deep: float, y: float) -> Vec2:
        return (self.upright_left + deep * self.scale * self.larger, self.to_window((0.0, y))[1])

    # The groove

    @cached_property
    def lacking(self) -> tuple[tuple[Vec2, Vec2], ...]:
        """Stretches of the fronts' edges in pixels where the groove's land is missing."""
        groove = groove_of(self.spec)
        found = []
        for drawer in self._known.fronts if groove else ():
            left, low, _, high = self.over(drawer)
            start = left - finished_edges(self.spec, drawer)[0]
            y = high if groove and groove.at_top else low
            for a, b in stretches_without_land(self.spec, drawer):
                found.append((self.to_window((start + a, y)), self.to_window((start + b, y))))
        return tuple(found)

    @property
    def hold_foot(self) -> float:
        """Where no finger gets in, in pixels; the deeper, the higher above it."""
        return self.level_top + self.thickness_drawn + CAPTION + self.strip + 8.0

    @cached_property
    def row(self) -> tuple[Drawer, ...]:
        """The drawers on the pointer's level, those of the whole bench that have a groove."""
        z = self._known.picture.z_low + self.at[1]
        return tuple(d for d in drawers(self.spec) if d.z_low <= z <= d.z_high)

    @cached_property
    def hold_lines(self) -> tuple[tuple[Vec2, ...], ...]:
        """How deep a finger gets along the edges of those fronts, in pixels."""
        groove = groove_of(self.spec)
        if groove is None:
            return ()
        found = []
        for drawer in self.row:
            left = self.over(drawer)[0] - finished_edges(self.spec, drawer)[0]
            found.append(
                tuple(
                    (
                        self.to_window((left + x, 0.0))[0],
                        self.hold_foot - deep / groove.radius * self.strip,
                    )
                    for x, deep in finger_profile(self.spec, drawer)
                )
            )
        return tuple(found)

    @cached_property
    def hold_range(self) -> Vec2 | None:
        """The least and the greatest depth that a finger gets on this level."""
        if groove_of(self.spec) is None or not self.row:
            return None
        depths = [deep for d in self.row for _, deep in finger_profile(self.spec, d)]
        return (min(depths), max(depths))


def _brightness(corners: Sequence[Vec3]) -> float:
    """Of a facet in the light of the upper left."""
    (ax, ay, az), (bx, by, bz) = corners[0], corners[1]
    cx, cy, cz = corners[2]
    u, v = (bx - ax, by - ay, az - bz), (cx - ax, cy - ay, az - cz)
    nx, ny = u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2]
    nz = (u[0] * v[1] - u[1] * v[0]) / _RELIEF
    size = math.sqrt(nx * nx + ny * ny + nz * nz) or 1.0
    lit = (nx * _LIGHT[0] + ny * _LIGHT[1] + nz * _LIGHT[2]) / size
    return min(max(0.5 + 0.5 * lit, 0.0), 1.0)


def _profile(facets: Facets, axis: int, at: float) -> list[Vec2]:
    """(place, depth) along the line where coordinate ``axis`` is ``at``, in order of place."""
    other = 1 - axis
    found: dict[float, float] = {}
    for face in facets.faces:
        corners = facets.corners(face)
        for a, b in zip(corners, (*corners[1:], corners[0]), strict=True):
            low, high = sorted((a[axis], b[axis]))
            if not low <= at <= high:
                continue
            if high - low < 1e-9:
                for end in (a, b):
                    found[round(end[other], 6)] = end[2]
                continue
            share = (at - a[axis]) / (b[axis] - a[axis])
            place = a[other] + share * (b[other] - a[other])
            found[round(place, 6)] = a[2] + share * (b[2] - a[2])
    return sorted(found.items())


def _along(line: Sequence[Vec2], at: float) -> float | None:
    for (x0, d0), (x1, d1) in itertools.pairwise(line):
        if x0 <= at <= x1:
            return d0 + (d1 - d0) * (at - x0) / (x1 - x0) if x1 > x0 else d0
    return None


def _cove(radius: float, edge: float, thickness: float, *, top: bool) -> list[Vec2]:
    """The round of a groove from the edge to the reverse (top), or from there to the edge."""
    way = -1.0 if top else 1.0
    turns = [math.pi / 2.0 * k / 8 for k in range(9)]
    points = [
        (thickness - radius * math.cos(turn), edge + way * radius * math.sin(turn))
        for turn in turns
    ]
    return points if top else points[::-1]
