"""What everything else asks of a base: what bears on the board above, where its feet stand, and the
tops that must lie under the bench.  Bench coordinates, mm.

A base says all of it in one file of its own, which ends in its ``Standing``, and has a line in
``bases``.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

from geometry.design.spec import BenchSpec
from geometry.primitives.frame import Vec2, Vec3

# Common practice, no source, these:
CLEAR = 2.0  # mm between a fixing and whatever joint or piece is next to it
CLEAR_OF_BORING = 5.0  # mm between the boring for a foot and the joint above it


@dataclass(frozen=True, slots=True)
class Bearer:
    """A stretch of a piece's upper inside arris that is free of joints.

    ``start`` and ``end`` lie on the upper inside arris; ``along`` and ``inward`` are level unit
    directions along it and from the inside face into the open; ``slope`` is how far that face goes
    outward for each mm down.  ``thickness`` is level, at the top; ``height`` what the piece goes
    down; ``room`` how far inward a fixing may reach.  Screws go right through a ``solid`` piece;
    others have a block glued to their inside.  Its lower arrises are ``eased`` by so much.
    """

    name: str
    part: str
    start: Vec3
    end: Vec3
    along: Vec3
    inward: Vec3
    slope: float
    thickness: float
    height: float
    room: float
    solid: bool
    eased: float = 0.0

    @property
    def length(self) -> float:
        return math.dist(self.start, self.end)


@dataclass(frozen=True, slots=True)
class FootPlace:
    """``part`` ends at ``middle``; ``inside`` is the radius of the largest circle on its end,
    ``lean`` how far it leans for each mm up, ``free`` how far up nothing else is cut.  From
    ``beside`` up something else stands round the foot, as far off as ``inside``.  Its end is
    ``eased`` all round by so much.  mm."""

    name: str
    part: str
    middle: Vec3
    inside: float
    lean: float
    free: float
    beside: float | None = None
    eased: float = 0.0

    @property
    def bears(self) -> float:
        """The radius of the largest circle on what is left of its end."""
        return self.inside - self.eased


@dataclass(frozen=True, slots=True)
class Top:
    """A piece of a base where it carries the bench: the points in plan that could stand out."""

    part: str
    words: str
    points: tuple[Vec2, ...]


@dataclass(frozen=True, slots=True)
class Standing:
    """``bearers`` are told how far inside a bearer's face a fixing reaches, as those of two bearers
    must not meet in a corner; ``feet_read`` names the numbers that the places of the feet depend
    on.  ``holds`` tells whether a joint of its own holds it to the board already.
    """

    bearers: Callable[[BenchSpec, float], tuple[Bearer, ...]]
    feet: Callable[[BenchSpec], tuple[FootPlace, ...]]
    feet_read: str
    tops: Callable[[BenchSpec], tuple[Top, ...]]
    holds: Callable[[BenchSpec], bool] = lambda _spec: False


def leg_top(corner: str, points: tuple[Vec2, ...]) -> Top:
    """The top of the leg in a corner."""
    return Top(f"leg_{corner}", f"the {corner.replace('_', ' ')} leg", points)
