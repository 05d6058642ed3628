"""Which views a joint's detail shows, and in which of them each measure is drawn.

Method: of the sections the one that tells most, an angle counting for more than a length, as it
hides in other views; then each part that is cut, from the side that tells most; then what else
shows a measure not drawn yet.  Each measure is drawn once, where it is plainest, on the part that
it is a size of rather than in the section, and no two between the same points.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

import numpy as np

from geometry.design.joint import Joint, Measure
from geometry.dimensioning.dimension import Dimension
from geometry.sheets.joint_figures import (
    PartFigure,
    SectionFigure,
    part_figures,
    section_figures,
)
from geometry.sheets.joint_outlines import has_cuts
from geometry.sheets.measure_lines import places
from geometry.sheets.outlines import Drawn, Outlines
from geometry.views.joint_scene import JointScene

_ANGLE, _LENGTH = 3.0, 1.0  # what drawing a measure is worth
PLAIN = 30.0  # a place that costs more tells nothing
_MOST = 5  # flat views on a page
_AGAIN = 0.15  # of its worth, for a measure that is drawn already
_SHOWN = 2.0  # for showing all edges that the joint makes of a part
_LATER = 0.35  # the first lines of sight lie in the faces that meet
_BESIDE_HATCHING = 12.0  # what it costs a size of one part to stand in a section
_HAIR = 1e-6  # mm


@dataclass(frozen=True, slots=True, eq=False)
class Chosen:
    """A view with the dimensions that it carries."""

    figure: PartFigure | SectionFigure
    dimensions: tuple[Dimension, ...]


def chosen(scene: JointScene) -> tuple[Chosen, ...]:
    """The flat views of a joint, a section first if any meets both parts."""
    joint = scene.joint
    sections = [
        _Offer(one, joint.measures, rank) for rank, one in enumerate(section_figures(scene))
    ]
    sides = [
        [_Offer(one, joint.measures, 0) for one in fronts(part_figures(scene, index))]
        if _is_cut(joint, index) or not has_cuts(joint)
        else []
        for index in (0, 1)
    ]
    picked: list[_Offer] = []
    across = [one for one in sections if one.cuts_both]
    if across:
        picked.append(max(across, key=lambda one: one.worth(joint.measures, ())))
    for index, views in enumerate(sides):
        if _is_cut(joint, index):
            alone = [one for one in picked if one not in across]
            picked.append(max(views, key=lambda one: one.worth(joint.measures, alone)))
    rest = [one for one in (*sides[0], *sides[1], *across) if one not in picked]
    while len(picked) < _MOST:
        told = _told(picked)
        rest = [one for one in rest if one.told - told]
        if not rest:
            break
        best = max(rest, key=lambda one: one.worth(joint.measures, picked))
        picked.append(best)
        rest.remove(best)
    return _shared_out(picked, joint.measures)


class _Offer:
    """A view, and the plainest places in it for each measure; ``rank`` is its place among those
    that come to mind."""

    def __init__(
        self, figure: PartFigure | SectionFigure, measures: Sequence[Measure], rank: int
    ) -> None:
        self.figure = figure
        self._rank = rank
        here = {figure.index} if isinstance(figure, PartFigure) else {0, 1}
        found = tuple(
            one
            for one in places(measures, figure.outlines)
            if here.intersection(measures[one.measure].found_on)
        )
        if isinstance(figure, SectionFigure):
            found = tuple(
                replace(one, cost=one.cost + _BESIDE_HATCHING)
                if one.dimension.unit == "mm" or len(measures[one.measure].found_on) == 1
                else one
                for one in found
            )
        self.places = [one for one in found if one.cost < PLAIN]
        self.told = frozenset(one.measure for one in self.places)
        self.cuts_both = isinstance(figure, SectionFigure) and figure.cuts_both

    def worth(self, measures: Sequence[Measure], beside: Iterable[_Offer]) -> float:
        """What it adds to other views: measures, the plainer the better, and edges that the joint
        makes."""
        known = _told(beside)
        sizes: dict[tuple[str, float], float] = {}  # what each size is worth; alike ones count once
        for m in self.told:
            plain = 1.0 - min(p.cost for p in self.places if p.measure == m) / PLAIN
            weight = _ANGLE if measures[m].unit == "deg" else _LENGTH
            size = (measures[m].unit, round(measures[m].value, 2))
            worth = weight * plain * (_AGAIN if m in known else 1.0)
            sizes[size] = max(sizes.get(size, 0.0), worth)
        shown = _SHOWN * _shown(self.figure.outlines)
        return sum(sizes.values()) + shown - _LATER * self._rank


def fronts(figures: Sequence[PartFigure]) -> list[PartFigure]:
    """Of each two views from opposite sides the one that shows more of the joint's edges: the same
    measures are to be found in both."""
    half = len(figures) // 2
    return [
        max(pair, key=lambda one: round(_shown(one.outlines), 3))
        for pair in zip(figures[:half], figures[half:], strict=True)
    ]


def _told(offers: Iterable[_Offer]) -> frozenset[int]:
    return frozenset().union(*(one.told for one in offers))


def _shown(outlines: Outlines) -> float:
    """How much of the joint's own edges is seen, from 0 to 1."""
    lines = outlines.edges[outlines.own_edges]
    size = np.hypot(lines[:, 2] - lines[:, 0], lines[:, 3] - lines[:, 1])
    total = float(size.sum())
    return float(size[outlines.seen_edges[outlines.own_edges]].sum()) / total if total else 0.0


def _is_cut(joint: Joint, index: int) -> bool:
    return bool((joint.cuts_first, joint.cuts_second)[index])


def _shared_out(picked: Sequence[_Offer], measures: Sequence[Measure]) -> tuple[Chosen, ...]:
    """Each measure in the view where it is plainest, and one of those that say the same."""
    kept: list[list[Drawn]] = [[] for _ in picked]
    drawn: list[Measure] = []
    for index, measure in enumerate(measures):
        if any(_same(measure, other) for other in drawn):
            continue
        offers = sorted(
            (
                (place.cost, k, place)
                for k, one in enumerate(picked)
                for place in one.places
                if place.measure == index
            ),
            key=lambda one: one[:2],
        )
        for _, k, place in offers:
            if all(place.key != other.key for other in kept[k]):
                kept[k].append(place)
                drawn.append(measure)
                break
    return tuple(
        Chosen(one.figure, tuple(place.dimension for place in places))
        for one, places in zip(picked, kept, strict=True)
    )


def _same(one: Measure, other: Measure) -> bool:
    """Whether two measures are one place told from two points, such as a stop from either end of
    an edge."""
    return (
        "_from_" in one.name
        and one.name.split("_")[0] == other.name.split("_")[0]
        and abs(one.value - other.value) < _HAIR
        and (one.along, one.found_on) == (other.along, other.found_on)
    )
