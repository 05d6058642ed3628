"""A stopped housing: a piece's tongue stands in a housing that stops short of the front.

The board may lie (an upright housed in top or bottom) or stand (a shelf housed in an upright).
Either way the housing is cut from the back edge toward the front, and the housed piece keeps its
full thickness in it.  Its front corner is notched by the depth of the housing, so that the
un-notched front covers the round that the router leaves at the stop.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from geometry.cuts.contour import Face
from geometry.cuts.housing import StoppedHousing
from geometry.cuts.notch import Notch
from geometry.design.joint import FIRST, SECOND, Contact, Joint, Measure
from geometry.design.later import Later
from geometry.design.part import Part
from geometry.joints.marking import span
from geometry.primitives.frame import Y_AXIS, Vec3, add, scale

LIPPING_ON = ", its lipping on"  # of what is measured on a board of sheet


@dataclass(frozen=True, slots=True)
class HousingNumbers:
    """One housing in bench coordinates, mm.

    The housed piece fills ``low`` to ``high`` along ``across`` (the X or Z axis); its back edge is
    ``back`` and its front edge ``front`` millimetres in front of y = 0.  The board's housed face
    is at ``inside`` along the axis of ``into``, the unit direction into the board, and the
    housing goes ``depth`` beyond it.  It stops ``cover`` behind the piece's front.

    ``board_front`` is how far the board's outside front arris lies in front of y = 0 at the
    piece's low face, middle and high face; ``inside_front`` the same for the arris of the housed
    face, at the middle.  ``board_back`` is how far its back edge lies in front of y = 0, of sheet
    before that is lipped.  ``sides`` are the words for the low and the high side; ``place`` tells
    where along the board the piece is marked.  ``lipped_first`` when the lipping behind is on
    before the housing is cut, which then counts from the lipping's edge.
    """

    low: float
    high: float
    across: Vec3
    back: float
    front: float
    inside: float
    into: Vec3
    depth: float
    cover: float
    cutter_radius: float
    fit: float
    board_front: tuple[float, float, float]
    inside_front: float
    sides: tuple[str, str]
    place: Measure
    board_back: float = 0.0
    lipped_first: bool = False

    @property
    def stop(self) -> float:
        """How far in front of y = 0 the housing ends."""
        return self.front - self.cover

    @property
    def tongue_front(self) -> float:
        """How far in front of y = 0 the tongue may reach: where the round begins."""
        return self.stop - self.cutter_radius - self.fit / 2.0

    def point(self, along: float, forward: float, deep: float) -> Vec3:
        """The bench point at a place along ``across``, in front of y = 0 and below the face."""
        x, y, z = self.into
        face = (abs(x) * self.inside, abs(y) * self.inside - forward, abs(z) * self.inside)
        return add(add(scale(self.across, along), face), scale(self.into, deep))


def stopped_housing(name: str, board: Part, piece: Part, at: HousingNumbers) -> Joint:
    """House ``piece`` in ``board``; both have x along ``into`` or ``across``, y from the back."""
    wide_low, wide_high = at.low - at.fit / 2.0, at.high + at.fit / 2.0
    x_low, x_high = span(board, 0, at.point(wide_low, 0.0, 0.0), at.point(wide_high, 0.0, 0.0))
    _, stop, z = board.frame.to_local(at.point(at.low, at.stop, 0.0))
    face = Face.FACE_SIDE if z < board.shape.blank.thickness / 2.0 else Face.REVERSE
    housing = StoppedHousing(x_low, x_high, stop, at.depth, at.cutter_radius, face)
    corner, inner = at.point(at.low, at.front, 0.0), at.point(at.low, at.tongue_front, at.depth)
    notch = Notch(*span(piece, 0, corner, inner), *span(piece, 1, corner, inner))
    return Joint(
        name=name,
        kind="stopped housing",
        parts=(board.name, piece.name),
        fit=at.fit,
        cuts_first=(housing,),
        cuts_second=(notch,),
        measures=Later(_measures, at, housing.width, stop),
        contacts=Later(_contacts, at),
    )


def _measures(at: HousingNumbers, width: float, stop: float) -> tuple[Measure, ...]:
    low, middle, high = at.board_front
    where = "the front edge (outside arris)"
    stops = [
        Measure(
            f"stop_from_front_{side}",
            front - at.stop,
            "mm",
            f"stop from {where}, {side} side",
            FIRST,
            Y_AXIS,
        )
        for side, front in zip(at.sides, (low, high), strict=True)
    ]
    return (
        Measure(
            "stop_from_front",
            middle - at.stop,
            "mm",
            f"stop from {where}, on the middle",
            FIRST,
            Y_AXIS,
        ),
        *stops,
        Measure(
            "stop_from_inside_arris",
            at.inside_front - at.stop,
            "mm",
            "stop from the front arris of the housed face, on the middle",
            FIRST,
            Y_AXIS,
        ),
        _from_back(at, stop),
        Measure("housing_width", width, "mm", "across the housing", FIRST, at.across),
        Measure("housing_depth", at.depth, "mm", "below the inside face", FIRST, at.into),
        replace(at.place, found_on=FIRST, along=at.across),
        Measure(
            "notch_length",
            at.front - at.tongue_front,
            "mm",
            "along the front corner",
            SECOND,
            Y_AXIS,
        ),
        Measure("notch_height", at.depth, "mm", "along the front edge", SECOND, at.into),
    )


def _from_back(at: HousingNumbers, stop: float) -> Measure:
    """``stop`` is how far from its own back edge the board is housed."""
    counted, when = stop, ", before it is lipped" if at.board_back else ""
    if at.lipped_first:
        counted, when = stop + at.board_back, LIPPING_ON
    return Measure("stop_from_back", counted, "mm", f"stop from the back edge{when}", FIRST, Y_AXIS)


def _contacts(at: HousingNumbers) -> tuple[Contact, ...]:
    back = max(at.back, at.board_back)
    outline = (
        (at.low, back),
        (at.high, back),
        (at.high, at.tongue_front),
        (at.low, at.tongue_front),
    )
    floor = tuple(at.point(along, forward, at.depth) for along, forward in outline)
    cheek_at = at.low - at.fit / 2.0
    cheek = tuple(
        at.point(cheek_at, forward, deep)
        for forward, deep in (
            (back, at.depth),
            (at.tongue_front, at.depth),
            (at.tongue_front, 0.0),
            (back, 0.0),
        )
    )
    return (
        Contact(floor, scale(at.into, -1.0), 0.0),
        Contact(cheek, at.across, at.fit / 2.0),
    )
