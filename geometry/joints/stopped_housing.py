"""A stopped housing: an upright's tongue stands in a housing that stops short of the front.

The upright keeps its full thickness in the housing.  Its front corner is notched by the depth of
the housing, so that the un-notched front covers the round that the router leaves at the stop.
"""

from __future__ import annotations

from dataclasses import dataclass

from geometry.cuts.housing import StoppedHousing
from geometry.cuts.notch import Notch
from geometry.design.joint import Contact, Joint, Measure
from geometry.design.part import Part
from geometry.joints.marking import span
from geometry.primitives.frame import Vec3


@dataclass(frozen=True, slots=True)
class HousingNumbers:
    """One housing in bench coordinates, mm.

    The upright fills ``x_left`` to ``x_right``; its back edge is ``back`` and its front edge
    ``front`` millimetres in front of y = 0.  The board's inside face is at height ``inside_z``
    and the housing goes ``depth`` beyond it (``up`` for a board above the upright).  The housing
    stops ``cover`` behind the upright's front.  ``board_front`` is how far the board's outside
    front arris lies in front of y = 0 at the upright's left face, middle and right face;
    ``inside_front`` the same for the arris of the inside face, at the middle.
    """

    x_left: float
    x_right: float
    back: float
    front: float
    inside_z: float
    up: bool
    depth: float
    cover: float
    cutter_radius: float
    fit: float
    board_front: tuple[float, float, float]
    inside_front: float

    @property
    def stop(self) -> float:
        """How far in front of y = 0 the housing ends."""
        return self.front - self.cover

    @property
    def tongue_front(self) -> float:
        """How far in front of y = 0 the tongue may reach: where the round begins."""
        return self.stop - self.cutter_radius - self.fit / 2.0


def stopped_housing(name: str, board: Part, upright: Part, at: HousingNumbers) -> Joint:
    """House ``upright`` in ``board``."""
    x_low, x_high = span(
        board, 0, (at.x_left - at.fit / 2.0, 0.0, 0.0), (at.x_right + at.fit / 2.0, 0.0, 0.0)
    )
    housing = StoppedHousing(x_low, x_high, at.stop, at.depth, at.cutter_radius)
    floor_z = at.inside_z + at.depth if at.up else at.inside_z - at.depth
    notch_low, notch_high = span(upright, 0, (0.0, 0.0, at.inside_z), (0.0, 0.0, floor_z))
    y_low, y_high = span(upright, 1, (0.0, -at.tongue_front, 0.0), (0.0, -at.front, 0.0))
    notch = Notch(notch_low, notch_high, y_low, y_high)
    left, middle, right = at.board_front
    where = "the front edge (outside arris)"
    return Joint(
        name=name,
        kind="stopped housing",
        parts=(board.name, upright.name),
        fit=at.fit,
        cuts_first=(housing,),
        cuts_second=(notch,),
        measures=(
            Measure("stop_from_front", middle - at.stop, "mm", f"stop from {where}, on the middle"),
            Measure("stop_from_front_left", left - at.stop, "mm", f"stop from {where}, left side"),
            Measure(
                "stop_from_front_right", right - at.stop, "mm", f"stop from {where}, right side"
            ),
            Measure(
                "stop_from_inside_arris",
                at.inside_front - at.stop,
                "mm",
                "stop from the front arris of the housed face, on the middle",
            ),
            Measure("stop_from_back", at.stop, "mm", "stop from the back edge"),
            Measure("housing_width", housing.width, "mm", "across the housing"),
            Measure("housing_depth", at.depth, "mm", "below the inside face"),
            Measure("from_left_end", at.x_left, "mm", "upright's left face from the left end"),
            Measure("notch_length", at.front - at.tongue_front, "mm", "along the front corner"),
            Measure("notch_height", at.depth, "mm", "up the front edge"),
        ),
        contacts=_contacts(at, floor_z),
    )


def _contacts(at: HousingNumbers, floor_z: float) -> tuple[Contact, ...]:
    towards = -1.0 if at.up else 1.0
    floor: tuple[Vec3, ...] = (
        (at.x_left, -at.back, floor_z),
        (at.x_right, -at.back, floor_z),
        (at.x_right, -at.tongue_front, floor_z),
        (at.x_left, -at.tongue_front, floor_z),
    )
    low, high = min(floor_z, at.inside_z), max(floor_z, at.inside_z)
    cheek_x = at.x_left - at.fit / 2.0
    cheek: tuple[Vec3, ...] = (
        (cheek_x, -at.back, low),
        (cheek_x, -at.tongue_front, low),
        (cheek_x, -at.tongue_front, high),
        (cheek_x, -at.back, high),
    )
    return (
        Contact(floor, (0.0, 0.0, towards), 0.0),
        Contact(cheek, (1.0, 0.0, 0.0), at.fit / 2.0),
    )
