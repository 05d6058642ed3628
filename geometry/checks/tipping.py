"""Checks of tipping, forward, backward, sideways and at an overhang, drawers shut and open.

N, mm; moments about the edges of the feet's outline (see ``balance``).  Estimates: weights are of
the timbers' mean densities, without hinges, screws and runners, on a floor that is level and hard.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from functools import lru_cache, partial

from geometry.advice.standing import BACK as BEHIND
from geometry.advice.standing import FRONT, LEFT, RIGHT, footing_of
from geometry.advice.taking import Changes
from geometry.bench.bench import Bench
from geometry.bench.catalogue import parameter
from geometry.bench.drawer_numbers import drawers
from geometry.bench.members import has
from geometry.bench.overall import seat_height
from geometry.checks.balance import ALL, Sitting, State, edges, sitter, sittings, states
from geometry.checks.brief_places import seat_parts
from geometry.checks.check import Check
from geometry.checks.limits_of_drawers import DRAWER_FILL
from geometry.checks.limits_of_loads import SITTER, SITTER_FROM_EDGE
from geometry.checks.limits_of_standing import HAND_ON_DRAWER, SITTER_PUSHES
from geometry.checks.offers import bench_with
from geometry.design.finding import Finding, Level, Mend, Seeking
from geometry.solids.cutting import placed
from shared.units import length_mark, quantity_mark

_WHERE = {
    LEFT: "at the left end",
    RIGHT: "at the right end",
    FRONT: "at the front edge",
    BEHIND: "at the back edge",
}
_INSETS = {
    LEFT: ("inset_left", "left_end_in"),
    RIGHT: ("inset_right", "right_end_in"),
    FRONT: ("inset_front", "inset_front_left", "inset_front_right"),
    BEHIND: ("inset_back", "inset_back_left", "inset_back_right"),
}
_SPARE = 1.0  # mm: feet are set out a little farther than they must
_TRIES = 3
_MORE = 1.5  # of what still lacks is made up for: feet that move take some of their weight along
_EVEN = 1e-6  # N


def worst_of(found: Iterable[Sitting]) -> dict[tuple[str, bool], Sitting]:
    """By side, and by whether a drawer is open, whom the bench can bear least of."""
    worst: dict[tuple[str, bool], Sitting] = {}
    for one in found:
        if one.state.opened == ALL or (one.state.opened and one.held <= 0.0):
            continue  # nobody sits with all of them open; what tips by itself is told elsewhere
        key = one.edge.side, bool(one.state.opened)
        known = worst.get(key)
        if known is None or one.tips < known.tips:
            worst[key] = one
    return worst


@lru_cache(maxsize=32)
def _worst(bench: Bench) -> dict[tuple[str, bool], Sitting]:
    push = SITTER_PUSHES.of(bench) * seat_height(bench.spec)
    return worst_of(sittings(bench, push))


def _sitter_tips(bench: Bench) -> Iterator[Finding]:
    """Each side over which somebody at the edge tips the bench, told once and by the gravest."""
    load = sitter(bench)
    worst = _worst(bench)
    for side, where in _WHERE.items():
        shut, opened = worst.get((side, False)), worst.get((side, True))
        if shut is not None and shut.tips < load - _EVEN:
            yield _told(bench, shut, where, load, Level.THINK_AGAIN)
        elif opened is not None and opened.tips < load - _EVEN:
            yield _told(bench, opened, where, load, Level.GOOD_TO_KNOW)


def _told(bench: Bench, one: Sitting, where: str, load: float, level: Level) -> Finding:
    side = one.edge.side
    return Finding(
        check=f"sitter_tips_{side}{'_open' if one.state.opened else ''}",
        level=level,
        message=f"{_turned_over(bench, one, where, load)} An estimate.",
        parts=seat_parts(bench),
        place=(*one.place, seat_height(bench.spec)),
        amount=one.tips,
        limit=load,
        unit="N",
        seek=partial(_stands_wider, bench, side, partial(_lacking, side=side))
        if level is Level.THINK_AGAIN
        else None,
        estimate=True,
    )


def _turned_over(bench: Bench, one: Sitting, where: str, load: float) -> str:
    """Who or what tips the bench, and by how much, in N m about the edge."""
    push = SITTER_PUSHES.of(bench) * seat_height(bench.spec)
    holds, newtons = one.held + push, 1000.0
    if holds <= _EVEN:
        full = "With its drawers full the" if len(one.state.forces) > 1 else "The"
        return (
            f"{full} bench falls by itself, with nobody on it: its own weight lies outside its "
            f"feet {where} and turns it over them with {quantity_mark(-holds / newtons, 'N m', 1)}."
        )
    if one.held <= 0.0:
        return (
            f"A push at the seat tips the bench, with nobody on it: it turns it over the feet "
            f"{where} with {quantity_mark(push / newtons, 'N m', 1)}, and it is held down by "
            f"{quantity_mark(holds / newtons, 'N m', 1)}."
        )
    opened = "" if not one.state.opened else f" with {_open(bench, one.state)} open and full"
    inside = length_mark(SITTER_FROM_EDGE.of(bench))
    return (
        f"Somebody of {quantity_mark(load, 'N')} who sits {where}, {inside} from it, tips the "
        f"bench{opened}: they turn it over the feet with "
        f"{quantity_mark((load * one.out + push) / newtons, 'N m')}, and it is held down by "
        f"{quantity_mark(holds / newtons, 'N m')}. {quantity_mark(one.tips, 'N')} there are enough."
    )


def _open(bench: Bench, state: State) -> str:
    if state.opened == ALL:
        return "all drawers"
    drawer = next(one for one in drawers(bench.spec) if one.name == state.opened)
    return drawer.title[0].lower() + drawer.title[1:]


def _lacking(bench: Bench, side: str) -> float:
    """How much farther out an edge must be, in mm, for the sitter: it brings the load in and the
    weight farther in; 0 or less where the bench stands."""
    one, load = _worst(bench).get((side, False)), sitter(bench)
    if one is None or one.tips >= load - _EVEN:
        return 0.0
    weight = sum(force for force, _ in one.state.forces)
    return (load * one.out - one.held) / (load + weight)


def _stands_wider(bench: Bench, side: str, lacking: Callable[[Bench], float]) -> Seeking:
    """Feet farther out on a side, or less flare over them, by what is lacking and what then still
    is; none where that cannot be or is not enough."""
    less = lacking(bench) + _SPARE
    for _ in range(_TRIES):
        changes = _wider(bench, side, less)
        mend = Mend(_mending(changes), changes)
        yield
        mended = bench_with(bench, mend) if changes else None
        if mended is None:
            return None
        still = lacking(mended)
        if still <= 0.0:
            return mend
        less += _MORE * still + _SPARE
    return None


def _wider(bench: Bench, side: str, less: float) -> Changes:
    """Insets less by so much, but no foot beyond the edge; the flare less by what that leaves."""
    spec = bench.spec
    found: dict[str, float | str] = {}
    most = less
    for name in _INSETS[side]:
        if parameter(name).applies(spec):
            now = spec.number(name)
            found[name] = max(min(now, 0.0), float(math.floor(now - less)))
            most = min(most, now - float(found[name]))
    if found and most >= less:
        return tuple(found.items())
    if side == FRONT and has(spec, "flare"):
        left = less - most if found else less
        for name in ("flare", "flare_right"):
            if parameter(name).applies(spec):
                found[name] = max(0.0, float(math.floor(spec.number(name) - left)))
    return tuple((name, value) for name, value in found.items() if value != spec.number(name))


def _mending(changes: Changes) -> str:
    """What is changed, in words."""
    rows = [f"{parameter(name).title}: {length_mark(float(value))}" for name, value in changes]
    return f"{'; '.join(rows)}."


@dataclass(frozen=True, slots=True)
class _Leaning:
    """The moments in N mm, about the worst edge in front, with drawers open: what holds the bench,
    and what a hand on the open one turns."""

    state: State
    held: float
    turns: float
    hand: float

    @property
    def lacking(self) -> float:
        """How much farther forward the edge must be, in mm; 0 or less where the bench stands."""
        weight = sum(force for force, _ in self.state.forces)
        return (self.turns - self.held - _EVEN) / (weight + self.hand)


@lru_cache(maxsize=32)
def _leanings(bench: Bench) -> tuple[_Leaning, ...]:
    """With each drawer open and a hand on it, and with all of them and none."""
    footing = footing_of(bench)
    if footing is None:
        return ()
    found = []
    ahead = [edge for edge in edges(footing) if edge.side == FRONT]
    for state in states(bench, footing):
        if not state.opened:
            continue
        hand = 0.0 if state.hand is None else HAND_ON_DRAWER.of(bench)
        place = state.hand or (0.0, 0.0)
        at_edges = [
            _Leaning(state, edge.held(state), -hand * edge.inside(place), hand) for edge in ahead
        ]
        found.append(min(at_edges, key=lambda one: one.held - one.turns))
    return tuple(found)


def _drawer_tips(bench: Bench) -> Iterator[Finding]:
    """One drawer open, full, with a hand on it; all of them, where each by itself stands."""
    told = False
    for one in _leanings(bench):
        if one.lacking > 0.0 and not (told and one.state.opened == ALL):
            told = True
            yield _drawer_told(bench, one)


def _forward_lacking(bench: Bench, opened: str) -> float:
    """What is lacking with a drawer open."""
    return next((one.lacking for one in _leanings(bench) if one.state.opened == opened), 0.0)


def _moment_over(moment: float) -> str:
    """What turns it over (N mm), in words; of next to nothing no number is told."""
    newton_metres = f"{moment / 1000.0:.0f}"
    if newton_metres == "0":
        return "its weight stands right over"
    return f"{quantity_mark(moment / 1000.0, 'N m')} turn it over"


def _drawer_told(bench: Bench, one: _Leaning) -> Finding:
    state, held, turns = one.state, one.held, one.turns
    names = (
        [drawer.name for drawer in drawers(bench.spec)] if state.opened == ALL else [state.opened]
    )
    fronts = tuple(f"{name}_front" for name in names)
    low, high = placed(bench.part(fronts[0])).low, placed(bench.part(fronts[0])).high
    x, y, z = ((low + high) / 2.0).tolist()
    if held <= 0.0:
        open_one = "Open one at a time, or fix" if state.opened == ALL else "Fix"
        message = (
            f"With {_open(bench, state)} open and full the bench tips forward by itself: "
            f"{_moment_over(-held)} its front feet. {open_one} the bench to the wall. An estimate."
        )
    else:
        message = (
            f"With {_open(bench, state)} open and full, a hand that leans on it with "
            f"{quantity_mark(HAND_ON_DRAWER.of(bench), 'N')} tips the bench: it turns it over the "
            f"front feet with {quantity_mark(turns / 1000.0, 'N m', 1)}, and "
            f"{quantity_mark(held / 1000.0, 'N m', 1)} hold it down. An estimate."
        )
    return Finding(
        check="all_drawers_tip" if state.opened == ALL else "drawer_tips",
        level=Level.GOOD_TO_KNOW if state.opened == ALL else Level.THINK_AGAIN,
        message=message,
        parts=fronts,
        place=(x, y, z),
        amount=held / 1000.0,
        limit=max(0.0, turns) / 1000.0,
        unit="N m",
        seek=None
        if state.opened == ALL
        else partial(_stands_wider, bench, FRONT, partial(_forward_lacking, opened=state.opened)),
        estimate=True,
    )


CHECKS: tuple[Check, ...] = (
    Check(
        "tips_over",
        "Tipping over an edge",
        "Puts somebody {50 mm} from the edges at each corner of the seat, {600 N} as in ISO "
        "7174-1:1988, 7.1.1, as quoted, or the heaviest of the brief, and takes moments about "
        "every edge of the outline of the feet: the bench's own weight from its solids against "
        "theirs, drawers shut and open, empty and full. The standard's level push beside it is a "
        "limit that is 0 until the maker sets it. An estimate: hinges, screws and the floor are "
        "left out, and a bench that is fixed to the wall or the floor does not tip.",
        _sitter_tips,
        limits=(SITTER, SITTER_FROM_EDGE, SITTER_PUSHES, DRAWER_FILL),
        quick=False,
    ),
    Check(
        "drawers_tip",
        "Tipping forward with drawers open",
        "Opens each drawer as far as it goes, filled to the brim, the others empty, with a hand "
        "that leans on its front, and then all of them at once without a hand; nobody sits on the "
        "bench. Moments are about the front edges of the feet's outline. The hand is common "
        "practice, no source. An estimate; a bench that is fixed to the wall does not tip.",
        _drawer_tips,
        ("drawers",),
        limits=(HAND_ON_DRAWER, DRAWER_FILL),
        quick=False,
    ),
)
