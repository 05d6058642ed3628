"""A member that comes in with numbers that no longer fit: they move only as far as they must.

Every member keeps its numbers while it is away, and the bench may have changed meanwhile.  Its
last ``snug`` numbers fit any bench that can have it; kept ones that do not fit go a quarter, a
half, three quarters or all of the way toward those, and toward earlier ones before later.  Those of
members that have no room go first, whether they are new or another choice has left them none.  One
number goes alone where that is enough; where all have to, each then goes back as far as the others
leave it room, those first that the maker has had before them.
"""

from __future__ import annotations

from collections.abc import Mapping

from geometry.bench.catalogue import SLACK, broken_rules, parameter
from geometry.bench.member import Member
from geometry.bench.members import present_members
from geometry.design.parameter import Value
from geometry.design.spec import BenchSpec

_SHARES = (0.25, 0.5, 0.75, 1.0)
_BACK = (0.0, 0.25, 0.5, 0.75)  # shares of what a number has moved, that it still may
_STEP = 0.5  # mm or degrees, to which moved numbers are rounded


def settled(before: BenchSpec, wanted: BenchSpec, given: Mapping[str, Value]) -> BenchSpec:
    """``wanted``, its newcomers' numbers made to fit where they do not; ``given`` stay as given."""
    present = present_members(wanted)
    pressed = [member for member in present if _pressed(member, wanted)]
    new = [m for m in present if not m.present(before) and m not in pressed]
    if not pressed:
        return wanted
    kept = wanted
    for stage in (stage for member in (*pressed, *new) for stage in member.snug(wanted)):
        goals = {name: goal for name, goal in stage.items() if name not in given}
        fitting = _with_one(before, wanted, goals) or _with_all(wanted, goals)
        if not broken_rules(fitting):
            return _moved_back(before, kept, fitting)
        wanted = fitting
    return wanted


def _with_one(before: BenchSpec, wanted: BenchSpec, goals: Mapping[str, float]) -> BenchSpec | None:
    """``wanted`` with one of its numbers, or some that are alike, moved as little as does it."""
    reads = frozenset().union(*(rule.reads for rule in broken_rules(wanted)))
    rows = _alike(before, wanted, wanted.changed({n: g for n, g in goals.items() if n in reads}))
    for share in _SHARES:
        for names in reversed(rows):
            goal = goals[names[0]]
            nearer = {name: _moved(wanted.number(name), goal, share) for name in names}
            fitting = wanted.changed(nearer)
            if not broken_rules(fitting):
                return fitting
    return None


def _with_all(wanted: BenchSpec, goals: Mapping[str, float]) -> BenchSpec:
    """``wanted`` with all of these numbers moved as far as does it, or all of the way."""
    fitting = wanted
    for share in _SHARES:
        moved = {name: _moved(wanted.number(name), goal, share) for name, goal in goals.items()}
        fitting = wanted.changed(moved)
        if not broken_rules(fitting):
            break
    return fitting


def _moved_back(before: BenchSpec, kept: BenchSpec, fitting: BenchSpec) -> BenchSpec:
    """``fitting`` with each number as near to what it was in ``kept`` as the others leave room."""
    for names in _alike(before, kept, fitting):
        was, now = kept.number(names[0]), fitting.number(names[0])
        for share in _BACK:
            back = {name: _moved(was, now, share) if share else kept.value(name) for name in names}
            nearer = fitting.changed(back)
            if not broken_rules(nearer):
                fitting = nearer
                break
    return fitting


def _alike(before: BenchSpec, kept: BenchSpec, fitting: BenchSpec) -> list[tuple[str, ...]]:
    """The names of what has moved, those that the maker has had before them first.  What begins
    with one word, was alike and still is (such as the insets of four feet) stays together."""
    alike: dict[tuple[bool, str, float, float], list[str]] = {}
    for name, value in kept.entries:
        if fitting.value(name) != value:
            new = not parameter(name).applies(before)
            key = (new, name.split("_")[0], kept.number(name), fitting.number(name))
            alike.setdefault(key, []).append(name)
    return [tuple(names) for _, names in sorted(alike.items(), key=lambda each: each[0][0])]


def _pressed(member: Member, spec: BenchSpec) -> bool:
    """Whether a member has no room as it is."""
    return any(rule.slack(spec) < -SLACK for rule in member.constraints)


def _moved(kept: float, goal: float, share: float) -> float:
    if share == 1.0:
        return goal
    moved = round((kept + share * (goal - kept)) / _STEP) * _STEP
    # A fit is finer than such a step: it never goes beyond the two.
    return min(max(moved, min(kept, goal)), max(kept, goal))
