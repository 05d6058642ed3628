"""Moments of a bench about the edges of its feet's outline: who or what tips it, and where.

Bench frame seen from above, mm, N, N mm.  About an edge of the outline everything inside it holds
the bench down, and everything outside turns it over, each by its force times its distance from the
edge; a level push turns it by the push times its height.  A drawer that is open carries its own
weight and what is in it forward by as much as it is open.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from geometry.advice.sitters import sitters
from geometry.advice.standing import BACK as BEHIND
from geometry.advice.standing import FRONT, LEFT, RIGHT, Footing, footing_of, seat_corners
from geometry.bench.bench import Bench
from geometry.bench.drawer_numbers import drawers
from geometry.bench.members import has
from geometry.bench.rest_numbers import rest_numbers
from geometry.checks.drawer_load import weights
from geometry.checks.drawer_motion import opens_by
from geometry.checks.limits_of_loads import SITTER, SITTER_FROM_EDGE
from geometry.primitives.frame import Vec2
from shared.seating import GRAVITY

Force = tuple[float, Vec2]


@dataclass(frozen=True, slots=True)
class State:
    """A bench as it stands: its forces, and the name of the drawer that is open.

    ``opened`` is empty with all of them shut, and "all" with all of them open; ``hand`` is where a
    hand leans on the front of the open drawer.
    """

    opened: str
    forces: tuple[Force, ...]
    hand: Vec2 | None = None


ALL = "all"


@dataclass(frozen=True, slots=True)
class Edge:
    """An edge of the feet's outline, the side of the bench it is on, and the way inward."""

    side: str
    start: Vec2
    inward: Vec2

    def inside(self, place: Vec2) -> float:
        """How far inside the edge a place lies, in mm; less than 0 outside."""
        (x, y), (x0, y0), (u, v) = place, self.start, self.inward
        return (x - x0) * u + (y - y0) * v

    def held(self, state: State) -> float:
        """The moment that holds the bench down about this edge, in N mm."""
        return sum(force * self.inside(place) for force, place in state.forces)


@dataclass(frozen=True, slots=True)
class Sitting:
    """Somebody at the worst place for an edge, with the bench in the state that is worst.

    ``tips`` is the force in N that tips it there; ``out`` is how far outside the edge it acts, in
    mm, and ``held`` the moment left to hold it, N mm, the level push taken off.
    """

    edge: Edge
    state: State
    place: Vec2
    out: float
    held: float

    @property
    def tips(self) -> float:
        """0 where the push alone does it, without end where no weight there ever does."""
        if self.held <= 0.0 and self.out >= 0.0:
            return 0.0
        return self.held / self.out if self.out > 0.0 else math.inf


def edges(footing: Footing) -> tuple[Edge, ...]:
    """All edges of a feet's outline."""
    found = []
    for (ax, ay), (bx, by) in pairwise(footing.outline):
        run = math.hypot(bx - ax, by - ay)
        if run < 1e-9:
            continue
        u, v = -(by - ay) / run, (bx - ax) / run
        found.append(Edge(_side(u, v), (ax, ay), (u, v)))
    return tuple(found)


def _side(u: float, v: float) -> str:
    """The side of the bench from which a way leads inward."""
    if abs(u) > abs(v):
        return LEFT if u > 0.0 else RIGHT
    return FRONT if v > 0.0 else BEHIND


def states(bench: Bench, footing: Footing) -> tuple[State, ...]:
    """Shut and empty, shut and full, each drawer open and full with the others empty, all open."""
    own: Force = (footing.weight, footing.centre)
    found = [State("", (own,))]
    if not has(bench.spec, "drawers"):
        return tuple(found)
    shut: list[Force] = [own]
    opened: list[Force] = [own]
    for drawer in drawers(bench.spec):
        weight, out = weights(bench, drawer), opens_by(bench, drawer)
        x, y, _ = drawer.origin
        middle = (x + drawer.box.width / 2.0, y + drawer.box.length / 2.0)
        box, load = weight.own * GRAVITY, weight.inside * GRAVITY
        shut.append((load, middle))
        there = (middle[0], middle[1] - out)
        # The drawer's own weight is in the bench's: as much is taken off where it was.
        moved: tuple[Force, ...] = ((-box, middle), (box, there), (load, there))
        opened += moved
        hand = (middle[0], -drawer.face - out)
        found.append(State(drawer.name, (own, *moved), hand))
    return (found[0], State("", tuple(shut)), *found[1:], State(ALL, tuple(opened)))


def sitter(bench: Bench) -> float:
    """The force in N of who sits at the edge: the heaviest of the brief, if that is more."""
    found = [SITTER.of(bench), bench.brief.load * GRAVITY]
    people = sitters(bench.brief)
    if people is not None:
        found.append(people.weight.large * GRAVITY)
    return max(found)


def places(bench: Bench) -> tuple[Vec2, ...]:
    """Where somebody may sit: at the seat's corners, no farther back than its rest lets them."""
    inside = SITTER_FROM_EDGE.of(bench)
    corners = seat_corners(bench, inside)
    if not has(bench.spec, "back rest"):
        return corners
    farthest = rest_numbers(bench.spec).front - inside
    return tuple((x, min(y, farthest)) for x, y in corners)


def sittings(bench: Bench, push: float) -> Iterator[Sitting]:
    """Somebody at the corner of the seat that is farthest out over each edge of the outline, in
    each state: what holds the bench down is the same wherever they sit.

    ``push`` is the moment of the level push, in N mm.
    """
    footing = footing_of(bench)
    corners = places(bench)
    if footing is None or not corners:
        return
    worst = [(edge, min(corners, key=edge.inside)) for edge in edges(footing)]
    for state in states(bench, footing):
        for edge, place in worst:
            yield Sitting(edge, state, place, -edge.inside(place), edge.held(state) - push)
