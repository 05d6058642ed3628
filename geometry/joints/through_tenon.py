"""A through tenon: a rail's tenon passes through a piece that it meets square, plain or wedged.

Wedged, the mortise is longer on the far side than on the near by room for a wedge at either end;
the wedges hold against the end grain of the mortised piece, so they stand at the ends of its
grain and cannot split it (common practice, no source).  The tenon itself stays straight, so its
mortise has no more than the room that the wedges fill.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from geometry.cuts.mortise import Corners, Mortise
from geometry.cuts.saw import SawCut
from geometry.cuts.shouldered_tenon import ShoulderedTenon
from geometry.design.joint import FIRST, SECOND, Contact, Joint, Measure
from geometry.design.part import Part
from geometry.joints.marking import corners_on, saw_cut, span
from geometry.primitives.frame import Vec3, add, cross, scale
from shared.tolerances import COPLANAR


@dataclass(frozen=True, slots=True)
class ThroughTenon:
    """In bench coordinates, mm.

    ``face`` is the tenon's middle on the near face of the mortised piece, ``out`` the unit
    direction of the tenon, ``depth`` the thickness it passes.  ``grain`` is the unit direction of
    the mortised piece's grain, ``half_grain`` half the tenon along it and ``half_cross`` half the
    tenon across it.  ``fit`` widens the mortise across the grain, both cheeks together;
    ``wedge_room`` is how much longer the mortise is on the far side at either end, 0 for a plain
    tenon.
    """

    face: Vec3
    out: Vec3
    depth: float
    grain: Vec3
    half_grain: float
    half_cross: float
    fit: float
    wedge_room: float

    @property
    def across(self) -> Vec3:
        """The unit direction across the mortised piece's grain, square to the tenon."""
        return cross(self.out, self.grain)

    @property
    def half_mouth(self) -> float:
        """Half the mortise across the grain."""
        return self.half_cross + self.fit / 2.0

    def corners(self, along: float, half_grain: float, half_cross: float) -> Corners:
        """A rectangle round the tenon's axis, ``along`` mm beyond the near face."""
        middle = add(self.face, scale(self.out, along))
        a, b, c, d = (
            add(middle, add(scale(self.grain, i * half_grain), scale(self.across, j * half_cross)))
            for i, j in ((-1, -1), (1, -1), (1, 1), (-1, 1))
        )
        return (a, b, c, d)


def through_tenon(name: str, rail: Part, holder: Part, at: ThroughTenon) -> Joint:
    """Join a rail to the piece that its tenon passes through; the tenon is the rail's."""
    end = add(at.face, scale(at.out, at.depth))
    near = at.corners(0.0, at.half_grain, at.half_mouth)
    far = at.corners(at.depth, at.half_grain + at.wedge_room, at.half_mouth)
    mortise = Mortise(corners_on(holder, far), corners_on(holder, near), through=True)
    measures = [
        *tenon_section(at),
        Measure(
            "tenon_length", at.depth, "mm", "from the shoulder to its end, flush", FIRST, at.out
        ),
        *mortise_mouth(at, "along the grain, where the tenon goes in"),
    ]
    if at.wedge_room > 0.0:
        measures += [
            Measure(
                "mortise_far",
                2.0 * (at.half_grain + at.wedge_room),
                "mm",
                "along the grain, where the tenon comes out",
                SECOND,
                at.grain,
            ),
            Measure(
                "wedge_slope",
                math.degrees(math.atan(at.wedge_room / at.depth)),
                "deg",
                "of the mortise's ends from square",
                SECOND,
                at.across,
            ),
        ]
    return Joint(
        name=name,
        kind="wedged tenon" if at.wedge_room > 0.0 else "through tenon",
        parts=(rail.name, holder.name),
        fit=at.fit,
        cuts_first=(*_trimmed(rail, end, at.out), square_tenon(rail, at)),
        cuts_second=(mortise,),
        measures=tuple(measures),
        contacts=tenon_contacts(rail, at),
    )


def tenon_section(at: ThroughTenon) -> tuple[Measure, ...]:
    """The tenon's sizes square to its length."""
    return (
        Measure(
            "tenon_width",
            2.0 * at.half_grain,
            "mm",
            "along the mortised piece's grain",
            FIRST,
            at.grain,
        ),
        Measure(
            "tenon_thickness", 2.0 * at.half_cross, "mm", "across that grain", FIRST, at.across
        ),
    )


def mortise_mouth(at: ThroughTenon, lengthwise: str) -> tuple[Measure, ...]:
    """The mortise's sizes on the face that the shoulder lies on."""
    return (
        Measure("mortise_length", 2.0 * at.half_grain, "mm", lengthwise, SECOND, at.grain),
        Measure(
            "mortise_width",
            2.0 * at.half_mouth,
            "mm",
            "across the grain, between the cheeks",
            SECOND,
            at.across,
        ),
    )


def square_tenon(rail: Part, at: ThroughTenon) -> ShoulderedTenon:
    """What stays of the rail beyond a square shoulder on the near face."""
    box = at.corners(0.0, at.half_grain, at.half_cross)
    y_low, y_high = span(rail, 1, box[0], box[2])
    z_low, z_high = span(rail, 2, box[0], box[2])
    shoulder = rail.frame.to_local(at.face)[0]
    at_start = rail.frame.turn_to_local(at.out)[0] < 0.0
    return ShoulderedTenon(shoulder, 0.0, 0.0, y_low, y_high, z_low, z_high, at_start)


def wedge(name: str, piece: Part, rail: Part, at: ThroughTenon, *, high: bool) -> Joint:
    """A wedge beside a tenon, at the end of the mortise toward ``grain`` when ``high``."""
    sign = 1.0 if high else -1.0
    side = scale(at.grain, sign)
    edge = add(at.face, scale(side, at.half_grain))
    corners = tuple(
        add(edge, add(scale(at.out, t), scale(at.across, s * at.half_cross)))
        for t, s in ((0.0, -1.0), (at.depth, -1.0), (at.depth, 1.0), (0.0, 1.0))
    )
    return Joint(
        name=name,
        kind="wedge",
        parts=(rail.name, piece.name),
        fit=0.0,
        cuts_first=(),
        cuts_second=(saw_cut(piece, "slope", edge, _slope(at, side)),),
        measures=(
            Measure("wedge_thick", at.wedge_room, "mm", "at its thick end"),
            Measure("wedge_long", at.depth, "mm", "from the thick end to the edge"),
        ),
        contacts=(Contact(corners, side, 0.0),),
    )


def _slope(at: ThroughTenon, side: Vec3) -> Vec3:
    """The unit normal of the mortise's sloping end, out of the wedge."""
    run = math.hypot(at.depth, at.wedge_room)
    return add(scale(side, at.depth / run), scale(at.out, -at.wedge_room / run))


def _trimmed(rail: Part, end: Vec3, out: Vec3) -> tuple[SawCut, ...]:
    """The cut that trims a tenon flush, where the blank was left proud."""
    x = rail.frame.to_local(end)[0]
    if min(x, rail.shape.blank.length - x) < COPLANAR:
        return ()
    return (saw_cut(rail, "end cut", end, out),)


def tenon_contacts(rail: Part, at: ThroughTenon) -> tuple[Contact, ...]:
    """A cheek, and the shoulder where the rail has one."""
    box = at.corners(0.0, at.half_grain, at.half_cross)
    end = at.corners(at.depth, at.half_grain, at.half_cross)
    cheek = Contact((box[3], box[2], end[2], end[3]), at.across, at.fit / 2.0)
    blank = rail.shape.blank
    y_low, y_high = span(rail, 1, box[0], box[2])
    z_low, z_high = span(rail, 2, box[0], box[2])
    x = rail.frame.to_local(at.face)[0]
    # The shoulder's wider bands, clear of the mortise's fit.
    bands = (
        ((0.0, y_low - at.fit), (0.0, blank.thickness)),
        ((y_high + at.fit, blank.width), (0.0, blank.thickness)),
        ((0.0, blank.width), (0.0, z_low - at.fit)),
        ((0.0, blank.width), (z_high + at.fit, blank.thickness)),
    )
    found = [cheek]
    for (y0, y1), (z0, z1) in bands:
        if y1 - y0 > 0.5 and z1 - z0 > 0.5:
            corners = tuple(
                rail.frame.to_bench((x, y, z)) for y, z in ((y0, z0), (y1, z0), (y1, z1), (y0, z1))
            )
            found.append(Contact(corners, at.out, 0.0))
    return tuple(found)
