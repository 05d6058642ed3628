"""A member that comes in with numbers that no longer fit: they move only as far as they must.

Every member keeps its numbers while it is away, and the bench may have changed meanwhile.  Its
last ``snug`` numbers fit any bench that can have it; kept ones that do not fit go a quarter, a
half, three quarters or all of the way toward those, and toward earlier ones before later.  Those of
members that have no room go first, whether they are new or another choice has left them none.
"""

from __future__ import annotations

from collections.abc import Mapping

from geometry.bench.catalogue import SLACK, broken_rules
from geometry.bench.member import Member
from geometry.bench.members import present_members
from geometry.design.parameter import Value
from geometry.design.spec import BenchSpec

_SHARES = (0.25, 0.5, 0.75, 1.0)
_STEP = 0.5  # mm or degrees, to which moved numbers are rounded


def settled(before: BenchSpec, wanted: BenchSpec, given: Mapping[str, Value]) -> BenchSpec:
    """``wanted``, its newcomers' numbers made to fit where they do not; ``given`` stay as given."""
    present = present_members(wanted)
    pressed = [member for member in present if _pressed(member, wanted)]
    new = [m for m in present if not m.present(before) and m not in pressed]
    if not pressed:
        return wanted
    for stage in (stage for member in (*pressed, *new) for stage in member.snug(wanted)):
        goals = {name: goal for name, goal in stage.items() if name not in given}
        for share in _SHARES:
            moved = {name: _moved(wanted.number(name), goal, share) for name, goal in goals.items()}
            fitting = wanted.changed(moved)
            if not broken_rules(fitting):
                return fitting
        wanted = fitting
    return wanted


def _pressed(member: Member, spec: BenchSpec) -> bool:
    """Whether a member has no room as it is."""
    return any(rule.slack(spec) < -SLACK for rule in member.constraints)


def _moved(kept: float, goal: float, share: float) -> float:
    if share == 1.0:
        return goal
    moved = round((kept + share * (goal - kept)) / _STEP) * _STEP
    # A fit is finer than such a step: it never goes beyond the two.
    return min(max(moved, min(kept, goal)), max(kept, goal))
