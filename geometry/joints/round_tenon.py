"""A round tenon on a leaning leg, through a level board that is bored at the leg's own slant.

The leg's shoulder is sawn level, so that it bears on the board's underside all round; the tenon
ends flush with the board's upper face.  A wedge in a slot across the board's grain spreads the
tenon along that grain and cannot split the board (common practice, no source).
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from geometry.cuts.contour import Face
from geometry.cuts.leaning_bore import LeaningBore
from geometry.cuts.round_tenon import RoundTenon
from geometry.cuts.wedge_slot import WedgeSlot
from geometry.design.joint import FIRST, SECOND, Contact, Joint, Measure
from geometry.design.part import Part
from geometry.joints.marking import saw_cut
from geometry.primitives.frame import Vec3, add, cross, dot, norm, scale, subtract, unit
from shared.tolerances import COPLANAR

UP: Vec3 = (0.0, 0.0, 1.0)


@dataclass(frozen=True, slots=True)
class RoundTenonNumbers:
    """In bench coordinates, mm.

    ``middle`` is where the leg's axis meets the board's underside, ``down`` the axis' unit
    direction, ``steepest`` the unit direction square to it that rises most.  ``depth`` is the
    board's thickness, ``grain`` the direction of its grain.  ``fit`` is the clearance in the bore's
    diameter, ``wedge`` the wedge's thickness at the board's upper face, ``slot`` the length of its
    slot along the axis.
    """

    middle: Vec3
    down: Vec3
    steepest: Vec3
    depth: float
    diameter: float
    fit: float
    wedge: float
    slot: float
    grain: Vec3

    @property
    def tilt_deg(self) -> float:
        """Of the axis from the vertical."""
        return math.degrees(math.acos(min(1.0, -self.down[2])))

    @property
    def end(self) -> Vec3:
        """Where the axis meets the board's upper face."""
        return add(self.middle, scale(self.down, self.depth / self.down[2]))

    @property
    def root(self) -> Vec3:
        """Middle of the slot's root."""
        return add(self.end, scale(self.down, self.slot))

    @property
    def spread(self) -> Vec3:
        """The direction in which the wedge spreads the tenon: the board's grain, square to it."""
        return unit(subtract(self.grain, scale(self.down, dot(self.grain, self.down))))

    @property
    def along(self) -> Vec3:
        """The direction of the slot across the tenon."""
        return cross(self.down, self.spread)

    @property
    def slope(self) -> float:
        """Half the wedge's thickness for each mm of its length."""
        return self.wedge / 2.0 / self.slot

    @property
    def wedge_width(self) -> float:
        """A wedge this wide stays inside the round of the tenon up to twice its thickness."""
        return 2.0 * math.sqrt((self.diameter / 2.0) ** 2 - self.wedge**2)


def round_tenon(name: str, leg: Part, board: Part, at: RoundTenonNumbers) -> Joint:
    """Join a leg to the board above; the tenon is the leg's, the bore the board's."""
    axis = leg.frame.to_local(at.middle)
    steepest = leg.frame.turn_to_local(at.steepest)
    tenon = RoundTenon(
        axis[1],
        axis[2],
        at.diameter / 2.0,
        axis,
        leg.frame.turn_to_local(UP),
        (steepest[1], steepest[2]),
    )
    slot = WedgeSlot(
        leg.frame.to_local(at.root),
        leg.frame.turn_to_local(at.along),
        at.diameter / 2.0,
        leg.frame.turn_to_local(at.spread),
        at.slope,
    )
    face = Face.FACE_SIDE if board.frame.z_axis[2] > 0.0 else Face.REVERSE
    into = at.down if board.frame.z_axis[2] < 0.0 else scale(at.down, -1.0)
    bore = LeaningBore(
        board.frame.to_local(at.middle),
        board.frame.turn_to_local(into),
        (at.diameter + at.fit) / 2.0,
        face,
        board.frame.turn_to_local(at.steepest),
    )
    sightline = math.degrees(math.atan2(abs(at.down[0]), abs(at.down[1])))
    place = board.frame.to_local(at.middle)
    return Joint(
        name=name,
        kind="round tenon",
        parts=(leg.name, board.name),
        fit=at.fit,
        cuts_first=(saw_cut(leg, "level end", at.end, UP), tenon, slot),
        cuts_second=(bore,),
        measures=(
            Measure("tenon_diameter", at.diameter, "mm", "of the tenon", FIRST),
            Measure("bore_diameter", at.diameter + at.fit, "mm", "of the bore", SECOND),
            Measure(
                "bore_tilt",
                at.tilt_deg,
                "deg",
                "of the bit from square to the underside",
                along=_level_axis(at),
            ),
            Measure("sightline", sightline, "deg", "from square across the board", along=UP),
            Measure(
                "bore_along",
                place[0],
                "mm",
                "its middle on the underside, along the board",
                SECOND,
                board.frame.x_axis,
            ),
            Measure(
                "bore_across",
                place[1],
                "mm",
                "its middle, from the board's face edge",
                SECOND,
                board.frame.y_axis,
            ),
            Measure("tenon_length", at.depth / -at.down[2], "mm", "along the axis", FIRST, at.down),
            Measure(
                "slot_length",
                at.slot,
                "mm",
                "down from the tenon's end, along the axis",
                FIRST,
                at.down,
                at.end,
            ),
            Measure(
                "slot_in",
                at.diameter / 2.0,
                "mm",
                "from the tenon's side to the slot's middle; it runs across the board's grain",
                FIRST,
                at.spread,
                at.end,
            ),
        ),
        contacts=_shoulder(leg, at),
    )


def _level_axis(at: RoundTenonNumbers) -> Vec3 | None:
    """The level line that the leg leans about; none for an upright leg."""
    across = cross(at.down, UP)
    return unit(across) if norm(across) > COPLANAR else None


def leg_wedge(name: str, leg: Part, wedge: Part, at: RoundTenonNumbers) -> Joint:
    """The wedge in the slot of a tenon, sawn off level with the board's upper face."""
    run = math.hypot(1.0, at.slope)
    half = scale(at.along, at.wedge_width / 2.0)
    # What is said to meet ends below the board's upper face, where both are sawn off level.
    room = at.end[2] - at.root[2]
    if abs(half[2]) > room / 2.0:
        half = scale(half, room / 2.0 / abs(half[2]))
    contacts = []
    for sign in (1.0, -1.0):
        side = scale(at.spread, sign)
        # The slot's face on this side; the wedge lies against it from within.
        up = unit(add(scale(at.down, -1.0), scale(side, at.slope)))
        normal = scale(add(scale(side, 1.0 / run), scale(at.down, at.slope / run)), -1.0)
        top = add(at.root, scale(up, min(0.5 * at.slot, 0.9 * (room - abs(half[2])) / up[2])))
        corners = (
            subtract(at.root, half),
            add(at.root, half),
            add(top, half),
            subtract(top, half),
        )
        contacts.append(Contact(corners, normal, 0.0))
    cuts = []
    for sign in (1.0, -1.0):
        out = add(scale(at.spread, sign / run), scale(at.down, at.slope / run))
        cuts.append(saw_cut(wedge, "slope", at.root, out))
    return Joint(
        name=name,
        kind="wedge",
        parts=(leg.name, wedge.name),
        fit=0.0,
        cuts_first=(),
        cuts_second=(*cuts, saw_cut(wedge, "level end", at.end, UP)),
        measures=(
            Measure("wedge_thick", at.wedge, "mm", "at the board's upper face", SECOND, at.spread),
            Measure("wedge_long", at.slot, "mm", "from there to its edge", SECOND, at.down, at.end),
            Measure("wedge_wide", at.wedge_width, "mm", "across the tenon", SECOND, at.along),
        ),
        contacts=tuple(contacts),
    )


def _shoulder(leg: Part, at: RoundTenonNumbers) -> tuple[Contact, ...]:
    """The level shoulder in the four corners of the leg's section, clear of the bore."""
    frame, size = leg.frame, leg.shape.blank.width
    axis, rise = frame.to_local(at.middle), frame.turn_to_local(UP)
    bore = (at.diameter + at.fit) / 2.0 / math.cos(math.radians(at.tilt_deg))
    clear = size / 2.0 - (bore + 0.1) / math.sqrt(2.0)

    def on_the_shoulder(y: float, z: float) -> Vec3:
        x = axis[0] - (rise[1] * (y - axis[1]) + rise[2] * (z - axis[2])) / rise[0]
        return frame.to_bench((x, y, z))

    found = []
    for y in (0.0, size - clear):
        for z in (0.0, size - clear):
            square = ((y, z), (y + clear, z), (y + clear, z + clear), (y, z + clear))
            found.append(Contact(tuple(on_the_shoulder(*corner) for corner in square), UP, 0.0))
    return tuple(found)
