"""The names of parts, each led to a place where its part is seen.

Frame: sheet mm about the view's own origin.

Method: each label takes the cheapest of its places that bars no other label; parts with least to
show choose first.  Then the one that came off worst, without a place or with a leader across half
the drawing, takes a place that others have, and these look for another, as long as that helps.  No
two labels overlap and no leader runs through a label.  Leaders cross only where a part would have
no label otherwise.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from geometry.drawing.marks import Anchor, Fill, Label, Mark, Role, Strokes
from geometry.drawing.text_box import Line, TextBox
from geometry.primitives.frame import Vec2
from geometry.sheets.label_places import Places, Put, Reach, Room, Site, meeting
from geometry.sheets.label_spots import Spot
from geometry.solids.solid import Floats

_DOT = 0.55
_NEAR_ENOUGH = 20.0  # mm of a leader
_ENOUGH = {Reach.BESIDE: 15.0, Reach.NEAR: 58.0, Reach.FAR: math.inf}
"""mm: what a place may cost for none to be looked for farther off."""
_MISSING = 1000.0  # mm: what a part without a label costs
_MOVED = 12.0  # mm: what it costs to turn a label out of its place
_CROSSING = 80.0  # mm: what it costs to cross a leader, where there is no other way
_MOST_MOVED = 3
_WAYS = 4  # of turning out others, so many are tried
_DEEP = 2  # those turned out may turn out others once
_CHOICE = 128  # places, the cheapest, from which others may be turned out
_TOGETHER = 40  # places tried at once
_EFFORT = 3  # for each label, so many turnings out are tried in all

_State = Mapping[int, Put]


@dataclass(frozen=True, slots=True)
class Named:
    """A part's label: its index, its words, the room they take, and the leader to the part."""

    index: int
    text: str
    box: TextBox
    leader: Line

    @property
    def length(self) -> float:
        """Of its leader, mm."""
        u0, v0, u1, v1 = self.leader
        return math.hypot(u1 - u0, v1 - v0)


def named(
    texts: Sequence[str],
    spots: Sequence[Spot],
    lines: Floats,
    height: float,
    room: Room,
    there: Sequence[TextBox] = (),
) -> tuple[Named, ...]:
    """A label at each spot, within ``room``; one is left out only where there is no room at all.

    ``texts`` are by index; spots, ``lines`` (n, 4) and the texts already ``there`` in sheet mm
    about the view's origin.
    """
    found = _Placing(texts, spots, Site(lines, there, room, height)).found()
    return tuple(_named(index, texts[index], found[index]) for index in sorted(found))


def _named(index: int, text: str, put: Put) -> Named:
    (x, y), (half_w, half_h) = put.middle.tolist(), put.half.tolist()
    u0, v0, u1, v1 = put.leader.tolist()
    return Named(index, text, TextBox(x, y, half_w, half_h), (u0, v0, u1, v1))


def label_marks(labels: Sequence[Named], origin: Vec2, height: float) -> list[Mark]:
    """The labels as marks, the view's (0, 0) at ``origin``."""
    x, y = origin
    marks: list[Mark] = []
    if labels:
        leaders = np.array([one.leader for one in labels]) + np.array(origin * 2)
        marks.append(Strokes(Role.DIMENSION, leaders))
    turns = [k * math.pi / 4.0 for k in range(8)]
    for one in labels:
        u, v = one.leader[2] + x, one.leader[3] + y
        dot = tuple((u + _DOT * math.cos(t), v + _DOT * math.sin(t)) for t in turns)
        marks.append(Fill(Role.DIMENSION, dot))
        u, v = one.box.baseline_middle(height)
        marks.append(Label(Role.TEXT, one.text, (u + x, v + y), height, Anchor.MIDDLE))
    return marks


class _Placing:
    """Placing the labels of a view; keeps the places of each."""

    def __init__(self, texts: Sequence[str], spots: Sequence[Spot], site: Site) -> None:
        self._texts, self._site = texts, site
        self._spots = {spot.index: spot for spot in sorted(spots, key=lambda one: one.clear)}
        self._kept: dict[tuple[int, Reach], Places] = {}
        self._effort = _EFFORT * len(spots)

    def found(self) -> _State:
        state: dict[int, Put] = {}
        for index in self._spots:
            put = self._cheapest(index, state)
            if put is not None:
                state[index] = put
        return self._at_any_cost(self._improved(state))

    def _cheapest(self, index: int, state: _State) -> Put | None:
        """The cheapest place that the labels there are leave; farther off none is looked for while
        there is one that does not cost too much."""
        best: Put | None = None
        for reach, enough in _ENOUGH.items():
            put = _cheapest(self._places(index, reach), list(state.values()))
            if put is not None and (best is None or put.cost < best.cost):
                best = put
            if best is not None and best.cost <= enough:
                break
        return best

    def _places(self, index: int, reach: Reach) -> Places:
        if (index, reach) not in self._kept:
            spot, text = self._spots[index], self._texts[index]
            self._kept[index, reach] = self._site.places(spot, text, reach)
        return self._kept[index, reach]

    def _improved(self, state: _State) -> _State:
        """The labels with the worst of them put better, while that helps."""
        given_up: set[int] = set()
        while self._effort > 0 and (left := [k for k in self._spots if k not in given_up]):
            worst = max(left, key=lambda index: _cost_of(state, index))
            if _cost_of(state, worst) <= _NEAR_ENOUGH:
                break
            others = {index: put for index, put in state.items() if index != worst}
            deep = _DEEP if worst not in state else 1
            better = self._with(others, worst, deep, frozenset({worst}))
            if self._worth(better) < self._worth(state) - 1.0:
                state = better
            else:
                given_up.add(worst)
        return state

    def _worth(self, state: _State) -> float:
        """Less is better."""
        missing = len(self._spots) - len(state)
        return _MISSING * missing + sum(put.cost for put in state.values())

    def _with(self, state: _State, index: int, deep: int, kept: frozenset[int]) -> _State:
        """The labels with one more, for which some others, not those ``kept``, may have to move."""
        self._effort -= 1
        if not deep or self._effort < 0:
            put = self._cheapest(index, state)
            return state if put is None else {**state, index: put}
        there, places = list(state), self._places(index, Reach.NEAR).part(0, _CHOICE)
        met = meeting(places, list(state.values()))
        barred = met.barred | met.crossed
        price = np.array([math.inf if other in kept else _MOVED for other in there])
        moves = np.where(barred, price, 0.0).sum(axis=1)
        cost = places.cost + met.tight
        best, worth = state, self._worth(state)
        tried: set[frozenset[int]] = set()
        for k in np.argsort(cost + moves, kind="stable").tolist():
            if math.isinf(moves[k]) or len(tried) == _WAYS:
                break
            moving = frozenset(np.flatnonzero(barred[k]).tolist())
            if moving in tried or len(moving) > _MOST_MOVED:
                continue
            tried.add(moving)
            new = {other: put for n, (other, put) in enumerate(state.items()) if n not in moving}
            after: _State = {**new, index: places.put(k, float(cost[k]))}
            for n in sorted(moving):
                after = self._with(after, there[n], deep - 1, kept | {there[n]})
            if self._worth(after) < worth:
                best, worth = after, self._worth(after)
            if not moving:
                break
        return best

    def _at_any_cost(self, state: _State) -> _State:
        """The labels with those that have found no place yet put anywhere, across leaders too."""
        for index in self._spots:
            for reach in (Reach.NEAR, Reach.FAR, Reach.ANYWHERE) if index not in state else ():
                places = self._places(index, reach)
                put = _cheapest(places, list(state.values()), crossing=_CROSSING)
                if put is not None:
                    state = {**state, index: put}
                    break
        return state


def _cost_of(state: _State, index: int) -> float:
    return state[index].cost if index in state else math.inf


def _cheapest(places: Places, labels: Sequence[Put], crossing: float = math.inf) -> Put | None:
    """The cheapest place that bars none of the labels."""
    best: Put | None = None
    for start in range(0, len(places.cost), _TOGETHER):
        if best is not None and places.cost[start] >= best.cost:
            break  # none from here on is cheaper
        some = places.part(start, start + _TOGETHER)
        met = meeting(some, labels)
        cost = some.cost + met.tight
        crossed = met.crossed.sum(axis=1)
        cost[crossed > 0] += crossing * crossed[crossed > 0]
        cost[met.barred.any(axis=1)] = math.inf
        k = int(cost.argmin())
        if cost[k] < (math.inf if best is None else best.cost):
            best = some.put(k, float(cost[k]))
    return best
