"""Running dimensions: many sizes from one point along a single line.

Frame: ``s`` along the side, ``d`` outward from the outline, sheet mm (see ``rows``).

When several dimensions start from the same point, a row for each would take more paper than the
drawing.  From ``FEWEST`` on they share one row: the line runs from the common origin, marked by a
ring, to an arrowhead at every size, and the sizes stand beyond the ends of the extension lines,
read along them (ISO 129-1 running dimensioning, from memory).  Where they would touch, they are
spread and led back to their lines.  Sizes so near each other that they read alike are shown once.

Method of spreading: texts that would touch join a cluster about the mean of what they want; the
clusters are merged until none touch (pool adjacent violators).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from geometry.dimensioning.placed import Arrow, DimensionStyle, PlacedDimension, Sweep
from geometry.dimensioning.row_parts import Margin, RowDimension
from geometry.drawing.text_box import HALF_BOX, TextBox
from geometry.primitives.frame import Vec2

FEWEST = 5
_SAME = 0.01  # mm
ONE_PLACE = 0.15  # mm on paper: less than a line is wide
_APART = 0.6  # mm between two texts
_RING = 0.8  # mm
_LEADER = 3.0  # mm from the line to where the text begins
_BEFORE_TEXT = 3.5


@dataclass(frozen=True, slots=True)
class Running:
    """Dimensions from one origin; ``members`` go outward from it, each with its text at ``spots``.

    ``room`` is what a text takes of ``s``.
    """

    origin: float
    members: tuple[RowDimension, ...]
    spots: tuple[float, ...]
    room: float

    @property
    def low(self) -> float:
        return min(one.low for one in self.members)

    @property
    def stretch(self) -> tuple[float, float]:
        """What the group takes of ``s`` with its texts."""
        half = self.room / 2.0
        return min(self.low, min(self.spots) - half), max(self.high, max(self.spots) + half)

    @property
    def high(self) -> float:
        return max(one.high for one in self.members)

    @property
    def rank(self) -> int:
        return max(one.rank for one in self.members)

    @property
    def reach(self) -> float:
        """How far outward of its line the texts go, mm."""
        return _BEFORE_TEXT + max(one.width for one in self.members)

    def rows_taken(self, style: DimensionStyle, margin: Margin) -> int:
        """How many rows it takes; a text of the next row may stand on the near side of its line."""
        text = margin.text_side * (style.clearance + 2.0 * HALF_BOX * style.text_height)
        return math.ceil((self.reach + style.clearance - min(0.0, text)) / style.pitch)


def gathered(
    wanted: Sequence[RowDimension], style: DimensionStyle
) -> tuple[list[Running], list[RowDimension]]:
    """The dimensions that can share a line, in groups, and the rest."""
    rest = list(wanted)
    groups: list[Running] = []
    for start in (True, False):
        origins = sorted({round(one.low if start else one.high, 2) for one in rest})
        for origin in origins:
            own = [o for o in rest if abs((o.low if start else o.high) - origin) < _SAME]
            if len(own) >= FEWEST:
                room = 2.0 * HALF_BOX * style.text_height + _APART
                groups.append(_group(_once(own), start, room))
                rest = [one for one in rest if one not in own]
    return groups, rest


def _once(own: Sequence[RowDimension]) -> list[RowDimension]:
    """Of those that end in one place on paper and read alike, the first in rank."""
    kept: list[RowDimension] = []
    for one in sorted(own, key=lambda each: (each.rank, each.name)):
        twice = (
            one.text == other.text
            and abs(one.low - other.low) < ONE_PLACE
            and abs(one.high - other.high) < ONE_PLACE
            for other in kept
        )
        if not any(twice):
            kept.append(one)
    return kept


def drawn_running(
    group: Running, d: float, margin: Margin, style: DimensionStyle
) -> list[PlacedDimension]:
    """The members of a group on one line at distance ``d``."""
    found: list[PlacedDimension] = []
    for index, one in enumerate(group.members):
        from_low = abs(one.low - group.origin) < _SAME
        far, depth = (one.high, one.high_depth) if from_low else (one.low, one.low_depth)
        origin_depth = one.low_depth if from_low else one.high_depth
        line = margin.line(group.origin, d, far, d)
        spot = group.spots[index]
        lines = [
            line,
            margin.line(far, depth + style.gap, far, d),
            margin.line(far, d, spot, d + _LEADER),
        ]
        if index == 0:
            extension = (origin_depth + style.gap, d + style.overshoot)
            lines.append(margin.line(group.origin, extension[0], group.origin, extension[1]))
        middle = margin.point(spot, d + _BEFORE_TEXT + one.width / 2.0)
        turn = 90.0 if margin.horizontal else 0.0
        box = TextBox.about(middle, one.width, style.text_height, turn)
        way = 1.0 if from_low else -1.0
        pointing: Vec2 = (way, 0.0) if margin.horizontal else (0.0, way)
        ring = (Sweep(margin.point(group.origin, d), _RING, 0.0, 360.0),) if index == 0 else ()
        arrow = Arrow(margin.point(far, d), pointing)
        found.append(
            PlacedDimension(one.name, one.role, one.text, box, line, tuple(lines), (arrow,), ring)
        )
    return found


def _group(own: Sequence[RowDimension], start: bool, room: float) -> Running:
    members = sorted(own, key=lambda one: (one.high - one.low, one.rank, one.name))
    origin = members[0].low if start else members[0].high
    way = 1.0 if start else -1.0
    away = spread([one.high - one.low for one in members], room)
    return Running(origin, tuple(members), tuple(origin + way * a for a in away), room)


def spread(wanted: Sequence[float], room: float) -> list[float]:
    """Places near the wanted ones (in rising order), at least ``room`` apart and from 0.

    >>> spread([10.0, 11.0, 30.0], 4.0)
    [8.5, 12.5, 30.0]
    """
    clusters: list[tuple[float, int]] = []  # mean of the middles, number of texts
    for want in wanted:
        middle, count = want, 1
        while clusters:
            before, texts = clusters[-1]
            if before + texts * room / 2.0 <= middle - count * room / 2.0:
                break
            clusters.pop()
            middle = (before * texts + middle * count) / (texts + count)
            count += texts
        clusters.append((max(middle, (count + 1) * room / 2.0), count))
    return [
        middle + (k - (count - 1) / 2.0) * room for middle, count in clusters for k in range(count)
    ]
