"""How the movement of a hand in a view changes a value."""

from __future__ import annotations

from dataclasses import dataclass

from geometry.primitives.frame import Vec2


@dataclass(frozen=True, slots=True)
class Pull:
    """What a drag sets, and by how much a movement changes it.

    ``along`` is the unit direction in the view along which movement counts.  For a length,
    ``gain`` is mm of value for each mm moved.  For a lean, ``height`` is the height in mm over
    which the hand moves sideways, and the tangent of the angle changes by ``gain`` x moved /
    ``height``.  A hand that pulls at a size which follows the value is ``told`` of that size.
    """

    parameter: str
    along: Vec2
    gain: float = 1.0
    height: float = 0.0
    told: str = ""

    @property
    def name(self) -> str:
        """What the hand is on, set or derived."""
        return self.told or self.parameter


@dataclass(frozen=True, slots=True)
class Handhold:
    """An edge in a view (u, v in mm) that a hand can take hold of; dragging it sets a value."""

    view: str
    start: Vec2
    end: Vec2
    pull: Pull
