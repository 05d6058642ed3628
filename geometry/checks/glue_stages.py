"""The glue-ups of a bench: which joints are wet together, and in how many goes they can be glued.

Method: the order of assembly says which joints a step closes; those close at once, however the work
is divided.  What is made by itself is a stage of its own, and so is putting it on.  Read along the
order, a stage is a tree: each step joins what earlier steps have joined.  If all of it together
takes longer than glue stays open, the heaviest of what a step joins is left to dry first, and so on
from the leaves to the root: the fewest goes there are for a tree of weights (S. Kundu and J. Misra,
A linear tree partitioning algorithm, SIAM Journal on Computing 6 (1977), from memory).
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from geometry.bench.bench import Bench
from geometry.bench.lipped import LIPPED
from geometry.bench.made_apart import made_apart
from geometry.bench.member import THE_BODY
from geometry.checks.assembly import Assembly
from geometry.design.joint import Joint
from geometry.joints.closing import closing_of

Minutes = Callable[[Joint], float]


@dataclass(frozen=True, slots=True)
class Closing:
    """Joints that one step closes, and the closings of what it joins; ``coming`` part names."""

    joints: tuple[Joint, ...]
    coming: tuple[str, ...]
    before: tuple[Closing, ...]

    def all_joints(self) -> tuple[Joint, ...]:
        """Its joints and those of all closings before it, the earliest first."""
        earlier = tuple(joint for one in self.before for joint in one.all_joints())
        return (*earlier, *self.joints)

    def all_closings(self) -> tuple[Closing, ...]:
        earlier = tuple(closing for one in self.before for closing in one.all_closings())
        return (*earlier, self)


@dataclass(frozen=True, slots=True)
class Stage:
    """What is glued up together, by its title (``the base``), and its last closing."""

    title: str
    last: Closing


def stages(bench: Bench, assembly: Assembly) -> tuple[Stage, ...]:
    """Every glue-up of a bench, in the order in which they are done."""
    apart = made_apart(bench.spec)
    glued = [joint for joint in bench.joints if closing_of(joint) is not None]
    # By stage: what has been joined so far, with the closing that joined it last.
    joined: dict[str, list[tuple[set[str], Closing]]] = {}
    for step in assembly.steps:
        group_of = {name: k for k, group in enumerate(step.groups) for name in group}
        closed = [joint for joint in glued if _closes(joint, group_of)]
        titles = {joint.name: _title(joint, apart) for joint in closed if joint.kind != LIPPED}
        if len(step.moves) > 1:  # all at once: nothing of it can be left for another time
            most = max(titles.values(), key=list(titles.values()).count, default="")
            titles = dict.fromkeys(titles, most)
        # Lippings are glued on, and planed flush, before their board is joined to anything.
        titles |= {one.name: _lipped(bench, one) for one in closed if one.kind == LIPPED}
        for title in dict.fromkeys(titles.values()):
            wet = tuple(joint for joint in closed if titles[joint.name] == title)
            names = {name for joint in wet for name in joint.parts}
            trees = joined.setdefault(title, [])
            met = [tree for tree in trees if tree[0] & names]
            coming = tuple(sorted(name for name in names if group_of[name] != 0))
            last = Closing(wet, coming, tuple(closing for _, closing in met))
            trees[:] = [tree for tree in trees if tree not in met]
            trees.append((names.union(*(some for some, _ in met)), last))
    return tuple(Stage(title, last) for title, trees in joined.items() for _, last in trees)


def _closes(joint: Joint, group_of: dict[str, int]) -> bool:
    """Whether its two parts come together in a step."""
    first, second = (group_of.get(name) for name in joint.parts)
    return first is not None and second is not None and first != second


def _lipped(bench: Bench, joint: Joint) -> str:
    board = bench.part(joint.parts[1]).title
    return f"the {board[:1].lower()}{board[1:]} with its lippings"


def _title(joint: Joint, apart: Mapping[str, str]) -> str:
    first, second = (apart.get(name, THE_BODY) for name in joint.parts)
    return first if first == second else f"{min(first, second)} and {max(first, second)}"


def goes(stage: Stage, minutes: Minutes, open_time: float) -> tuple[tuple[Joint, ...], ...]:
    """The joints that can be glued in one go each, in their order.

    A closing that takes too long by itself is a go of its own with too much in it.
    """
    done: list[tuple[Joint, ...]] = []
    done.append(_wet(stage.last, minutes, open_time, done))
    return tuple(done)


def _wet(
    closing: Closing, minutes: Minutes, open_time: float, done: list[tuple[Joint, ...]]
) -> tuple[Joint, ...]:
    """The joints that are still wet when a closing is done; what has dried goes to ``done``."""
    own = time_for(closing.joints, minutes)
    earlier = [_wet(one, minutes, open_time, done) for one in closing.before]
    earlier.sort(key=lambda joints: time_for(joints, minutes))
    while earlier and own + sum(time_for(one, minutes) for one in earlier) > open_time:
        done.append(earlier.pop())
    return (*(joint for joints in earlier for joint in joints), *closing.joints)


def time_for(joints: tuple[Joint, ...], minutes: Minutes) -> float:
    """How long it takes to glue some joints one after another."""
    return sum(minutes(joint) for joint in joints)
