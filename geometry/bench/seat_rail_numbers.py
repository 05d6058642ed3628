"""The numbers of a panel bench's rail, read once from a spec, and the places of its ends."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache

from geometry.bench.panel_ends_numbers import panel_ends
from geometry.design.spec import BenchSpec
from geometry.joints.through_tenon import ThroughTenon
from geometry.primitives.frame import Vec2

PLAIN, WEDGED, STUB, HOUSED = "through tenon", "wedged tenon", "stub tenon", "housed"


def rail_is(*joints: str) -> Callable[[BenchSpec], bool]:
    """Whether the rail is joined in one of these ways."""
    return lambda spec: spec.value("seat_rail_joint") in joints


@dataclass(frozen=True, slots=True)
class SeatRail:
    """mm.  ``inside`` are X of the ends' insides, ``least_front`` how far forward both ends reach,
    ``front`` how far in front of the back edges the rail's front face lies, ``set_back`` how far
    behind the seat's front edge; ``top`` the height of its upper edge, ``down`` below the seat.
    ``let_in`` is how far it reaches into the ends.  ``half_grain`` and ``half_cross`` are half the
    section of what is inside them."""

    joint: str
    inside: Vec2
    end_thickness: float
    least_front: float
    relief: float
    underside: float
    height: float
    thickness: float
    down: float
    front: float
    set_back: float
    let_in: float
    half_grain: float
    half_cross: float
    wedge_room: float
    fit: float

    @property
    def top(self) -> float:
        return self.underside - self.down

    @property
    def level(self) -> float:
        """Height of the rail's middle."""
        return self.top - self.height / 2.0

    @property
    def middle(self) -> float:
        """How far in front of the back edges the rail's middle lies."""
        return self.front - self.thickness / 2.0

    @property
    def stations(self) -> Vec2:
        """X of the rail's two ends."""
        return (self.inside[0] - self.let_in, self.inside[1] + self.let_in)

    def end(self, side: str) -> ThroughTenon:
        """What is inside the ``left`` or the ``right`` end."""
        left = side == "left"
        return ThroughTenon(
            face=(self.inside[0] if left else self.inside[1], -self.middle, self.level),
            out=(-1.0 if left else 1.0, 0.0, 0.0),
            depth=self.let_in,
            grain=(0.0, 0.0, 1.0),
            half_grain=self.half_grain,
            half_cross=self.half_cross,
            fit=self.fit,
            wedge_room=self.wedge_room,
        )


@lru_cache(maxsize=512)
def seat_rail(spec: BenchSpec) -> SeatRail:
    """Read the rail from a spec."""
    n, joint = panel_ends(spec), spec.word("seat_rail_joint")
    height, thickness = spec.number("seat_rail_height"), spec.number("seat_rail_thickness")
    through, housed = joint in (PLAIN, WEDGED), joint == HOUSED
    shoulder = 0.0 if housed else spec.number("seat_rail_shoulder")
    set_back = spec.number("seat_rail_back")
    return SeatRail(
        joint=joint,
        inside=(n.left.inside, n.right.inside),
        end_thickness=n.thickness,
        least_front=n.least_front,
        relief=n.relief,
        underside=n.underside,
        height=height,
        thickness=thickness,
        down=spec.number("seat_rail_down"),
        front=n.depth - set_back,
        set_back=set_back,
        let_in=n.thickness if through else spec.number("seat_rail_in"),
        half_grain=height / 2.0 - shoulder,
        half_cross=(thickness if housed else spec.number("seat_rail_tenon")) / 2.0,
        wedge_room=spec.number("seat_rail_wedge") if joint == WEDGED else 0.0,
        fit=spec.number("seat_rail_fit"),
    )
