"""What the hand does, and what is to be done about it, as plain values.

Places are window pixels, x to the right and y down.
"""

from __future__ import annotations

import math
from collections.abc import Generator
from dataclasses import dataclass
from enum import Enum

from geometry.dimensioning.pull import Pull
from geometry.primitives.frame import Vec2


class Act(Enum):
    """One thing that the hand does."""

    PRESS = "press"
    MOVE = "move"
    RELEASE = "release"
    ESCAPE = "escape"


@dataclass(frozen=True, slots=True)
class Moment:
    """An act at a place; ``free`` is True while the key for free movement is held."""

    act: Act
    at: Vec2
    free: bool = False


@dataclass(frozen=True, slots=True)
class Handle:
    """What is under the hand in a view.

    ``pull`` says which value a drag sets; None for a derived dimension.  ``dimension`` is the
    dimension's name, empty for an edge of a part.
    """

    view: str
    pull: Pull | None
    dimension: str = ""


@dataclass(frozen=True, slots=True)
class Shift:
    """The handle has been moved by so many pixels since the press."""

    handle: Handle
    by: Vec2
    free: bool


@dataclass(frozen=True, slots=True)
class Settle:
    """The drag is over; what it shows becomes one step of the history."""


@dataclass(frozen=True, slots=True)
class Restore:
    """The drag is given up; what was before stands again."""


@dataclass(frozen=True, slots=True)
class TypeInto:
    """A click: open the value for typing, or say what it follows from."""

    handle: Handle


@dataclass(frozen=True, slots=True)
class PickAt:
    """A click on the drawing itself: pick out the part there."""

    at: Vec2


@dataclass(frozen=True, slots=True)
class OpenJoint:
    """A click on the seam of a joint: show its detail."""

    joint: str


@dataclass(frozen=True, slots=True)
class ShiftPlane:
    """The line of a section's plane is pulled to a place."""

    at: Vec2
    free: bool


@dataclass(frozen=True, slots=True)
class PutPlane:
    """The hand lets go of the line: the section is kept as it is."""


@dataclass(frozen=True, slots=True)
class LeavePlane:
    """It is given up: the plane stands where it stood."""


@dataclass(frozen=True, slots=True)
class OpenSection:
    """A click on the line: show the section."""


@dataclass(frozen=True, slots=True)
class Pan:
    """Move the sheet by so many pixels since the last moment."""

    by: Vec2


Deed = (
    Shift
    | Settle
    | Restore
    | TypeInto
    | PickAt
    | OpenJoint
    | ShiftPlane
    | PutPlane
    | LeavePlane
    | OpenSection
    | Pan
)
Gesture = Generator[Deed | None, Moment, Deed | None]

_STILL = 4.0  # pixels


def between(start: Moment, end: Moment) -> Vec2:
    """How far the hand has moved, in pixels."""
    return (end.at[0] - start.at[0], end.at[1] - start.at[1])


def is_still(start: Vec2, end: Vec2) -> bool:
    """Whether a press has moved so little that it is a click."""
    return math.dist(start, end) < _STILL
