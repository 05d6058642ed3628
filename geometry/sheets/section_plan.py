"""Where two sections of the bench, their captions and their list of names stand on a page.

Frame: sheet mm.

Method: of the pairs of standard scales, the largest first, the first is taken at which everything
fits: the sections one above the other, what they do not show told under each, and the list of names
at the right, at the foot or beside the lower section.
"""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass
from enum import Enum
from itertools import product

from geometry.design.part import Part
from geometry.primitives.frame import Vec2
from geometry.sheets.cross_sections import Cut
from geometry.sheets.label_spots import Spot
from geometry.sheets.layout import Layout, Room, scale_text
from geometry.sheets.name_list import name_band, name_block, name_list, not_seen
from geometry.sheets.numbering import Numbering
from geometry.sheets.text_block import NO_TEXT, TextBlock, paragraph
from shared.lettering import text_width
from shared.paper import SCALES
from shared.units import in_units
from shared.words import in_words

_NAMES, _NUMBERS = (24.0, 8.0), (10.0, 8.0)  # mm beside a section and above it, for labels
_CAPTION = 7.0  # mm below it
_AIR = 6.0  # mm between a list and the sections


class ListAt(Enum):
    """Where the list of names stands."""

    RIGHT = "right"
    FOOT = "foot"
    BESIDE = "beside the lower section"


@dataclass(frozen=True, slots=True, eq=False)
class Band:
    """A section at a scale, the room for it with its labels, and what is told under it; the
    caption's baseline and the sentence's upper edge are at heights, mm."""

    cut: Cut
    scale: float
    spots: tuple[Spot, ...]
    room: Room
    caption: str
    caption_at: float
    sentence: TextBlock
    sentence_at: float


@dataclass(frozen=True, slots=True, eq=False)
class Plan:
    """The sections from above down, and the list of names with its upper left corner, if any."""

    layout: Layout
    bands: tuple[Band, ...]
    names: TextBlock
    corner: Vec2

    def worth(self) -> tuple[float, float]:
        """The scales of the smaller and of the larger section."""
        scales = [band.scale for band in self.bands]
        return min(scales), max(scales)


def plan(
    cuts: Sequence[Cut],
    parts: Sequence[Part],
    layout: Layout,
    at: ListAt | None = None,
    seen: Sequence[Collection[int]] = (),
) -> Plan:
    """The sections as large as they go: with a list of the parts that are ``seen`` in each; or
    without one, and then of those parts that are broad enough to be seen at its scale."""
    page = _Page(cuts, parts, layout, at, seen)
    steps = [step.factor for step in SCALES]
    pairs = sorted(product(steps, repeat=len(cuts)), key=lambda p: (min(p), max(p)), reverse=True)
    fitting = (pair for pair in pairs if page.may_fit(pair) and page.at(pair)[1])
    return page.at(next(fitting, pairs[-1]))[0]


class _Page:
    """What is to stand on a page."""

    def __init__(
        self,
        cuts: Sequence[Cut],
        parts: Sequence[Part],
        layout: Layout,
        at: ListAt | None,
        seen: Sequence[Collection[int]],
    ) -> None:
        self._cuts, self._parts, self._layout, self._at, self._seen = cuts, parts, layout, at, seen
        shown = {index for own in seen for index in own}
        numbering = Numbering(tuple(parts))
        self._rows = numbering.rows(shown, layout.words)
        self._listed = numbering.listed(shown)
        self._beside, self._above = _NUMBERS if at else _NAMES

    def may_fit(self, scales: Sequence[float]) -> bool:
        """Whether the sections fit at these scales, but for all texts."""
        left, bottom, right, top = self._layout.room
        wide, high = self._sizes(scales)
        return max(wide) <= right - left and sum(high) <= top - bottom

    def _sizes(self, scales: Sequence[float]) -> tuple[list[float], list[float]]:
        """How wide and how high the sections are with their labels and captions."""
        bounds = [cut.bounds for cut in self._cuts]
        wide = [(b[2] - b[0]) * k + 2.0 * self._beside for b, k in zip(bounds, scales, strict=True)]
        high = [
            (b[3] - b[1]) * k + 2.0 * self._above + _CAPTION
            for b, k in zip(bounds, scales, strict=True)
        ]
        return wide, high

    def at(self, scales: Sequence[float]) -> tuple[Plan, bool]:
        """The page with its sections at these scales, and whether everything fits."""
        wide, high = self._sizes(scales)
        names, corner, main = self._names_aside()
        captions = [self._caption(k, scale) for k, scale in enumerate(scales)]
        wide[-1] = max(wide[-1], text_width(captions[-1], self._layout.lettering))
        own = high[-1]
        spots = [self._spots(k, scale) for k, scale in enumerate(scales)]
        told = [self._told(one, main[2] - main[0]) for one in spots]
        spare = main[3] - main[1] - sum(high) - sum(one.height for one in told)
        rooms = [main[2] - main[0]] * len(high)
        if self._at is ListAt.BESIDE:
            room = (rooms[-1] - wide[-1] - _AIR, own + max(spare - 2.0 * _AIR, 0.0))
            names = name_block(self._rows, self._layout, room)
            rooms[-1] -= names.width + _AIR
            high[-1] = max(own, names.height + 2.0 * _AIR)
            spare -= high[-1] - own
        fits = spare >= 0.0 and all(w <= r for w, r in zip(wide, rooms, strict=True))
        y = main[3]
        bands: list[Band] = []
        for k, scale in enumerate(scales):
            y -= max(spare, 0.0) / (len(scales) + 1)
            foot = y - high[k]
            last = self._at is ListAt.BESIDE and k == len(scales) - 1
            inset = (high[k] - own) / 2.0 if last else 0.0
            if last:
                corner = (main[2] - names.width, (y + foot + names.height) / 2.0)
            bands.append(
                Band(
                    self._cuts[k],
                    scale,
                    spots[k],
                    (main[0], foot + inset + _CAPTION, main[0] + rooms[k], y - inset),
                    captions[k],
                    foot + inset + _CAPTION / 2.0,
                    told[k],
                    foot,
                )
            )
            y = foot - told[k].height
        return Plan(self._layout, tuple(bands), names, corner), fits

    def _names_aside(self) -> tuple[TextBlock, Vec2, Room]:
        """The list of names at the right or at the foot, its corner, and the room left."""
        left, bottom, right, top = room = self._layout.room
        if self._at is ListAt.RIGHT:
            names = name_list(self._rows, self._layout, top - bottom)
            edge = right - names.width
            return names, (edge, top), (left, bottom, edge - _AIR, top)
        if self._at is ListAt.FOOT:
            names = name_band(self._rows, self._layout, right - left)
            foot = bottom + names.height
            return names, (left, foot), (left, foot + _AIR, right, top)
        return NO_TEXT, (left, top), room

    def _spots(self, k: int, scale: float) -> tuple[Spot, ...]:
        """Those of a section's spots that are labelled."""
        if self._at is not None:
            return tuple(one for one in self._cuts[k].spots if one.index in self._seen[k])
        return tuple(one for one in self._cuts[k].spots if one.shows(scale))

    def _told(self, spots: Sequence[Spot], wide: float) -> TextBlock:
        """What a section does not show."""
        shown = {one.index for one in spots}
        told = not_seen(self._parts, shown, self._layout.words, self._listed)
        return paragraph([told] if told else [], wide, self._layout.lettering)

    def _caption(self, k: int, scale: float) -> str:
        cut, layout = self._cuts[k], self._layout
        place = in_units(cut.place, layout.shown)
        told = f"Section {cut.letter}–{cut.letter}, {scale_text(scale)}, {place}"
        return in_words(told, layout.words)
