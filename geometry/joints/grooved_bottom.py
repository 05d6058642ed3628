"""A bottom in a groove of one of the pieces round it.

The groove is as wide as the bottom is thick and a fit more, and ends a groove's depth past the
inside corner, where the neighbour's groove goes on: so it shows at no end, and the bottom's corner
has room.  The bottom lies on the groove's lower side.
"""

from __future__ import annotations

from dataclasses import dataclass

from geometry.cuts.groove import Groove
from geometry.design.joint import Contact, Joint, Measure
from geometry.design.later import Later
from geometry.design.part import Part
from geometry.joints.marking import span
from geometry.joints.reference_faces import start_of
from geometry.primitives.frame import Vec3, add, scale, subtract, unit
from shared.tolerances import COPLANAR


@dataclass(frozen=True, slots=True)
class BottomNumbers:
    """One groove, in mm, where its piece stands.

    ``start`` and ``end`` are the inside corners at the piece's lower edge; ``outward`` is the level
    unit direction from the inside into the piece.  ``up`` is the bottom's underside above the
    lower edge, ``thickness`` the bottom's; ``depth`` of the groove; ``fit`` is the clearance of
    the bottom between its grooves, both edges together, ``ease`` that of its thickness.  Runners
    may need notches below the bottom, as long as ``notch`` from both inside corners.
    """

    start: Vec3
    end: Vec3
    outward: Vec3
    up: float
    thickness: float
    depth: float
    fit: float
    ease: float
    notch: float


def grooved_bottom(name: str, piece: Part, bottom: Part, at: BottomNumbers) -> Joint:
    """Groove ``piece`` for ``bottom``; its y runs up from the lower edge, its face side inside."""
    x_low, x_high = span(piece, 0, at.start, at.end)
    x_low, x_high = round(x_low - at.depth, 9), round(x_high + at.depth, 9)
    groove = Groove(x_low, x_high, at.up, at.up + at.thickness + at.ease, at.depth)
    return Joint(
        name=name,
        kind="grooved bottom",
        parts=(piece.name, bottom.name),
        fit=at.fit,
        cuts_first=(groove,),
        cuts_second=(),
        measures=Later(_measures, piece, at, x_low, x_high),
        contacts=Later(_contacts, at),
    )


def _measures(piece: Part, at: BottomNumbers, x_low: float, x_high: float) -> tuple[Measure, ...]:
    y_axis, z_axis = piece.frame.y_axis, piece.frame.z_axis
    wide = at.thickness + at.ease
    through = x_high - x_low > piece.shape.blank.length - COPLANAR
    stopped = "through" if through else "stopped at both ends"
    return (
        Measure("groove_up", at.up, "mm", "from the lower edge to the groove", (0,), y_axis),
        Measure("groove_width", wide, "mm", "across the groove", (0,), y_axis),
        Measure("groove_depth", at.depth, "mm", "below the inside face", (0,), z_axis),
        Measure("groove_length", x_high - x_low, "mm", f"along the piece, {stopped}"),
        *start_of(piece, x_low, x_high, "groove"),
    )


def _contacts(at: BottomNumbers) -> tuple[Contact, ...]:
    """The groove's lower side under the bottom, and its floor beside the bottom's edge."""
    lift = (0.0, 0.0, at.up)
    along = unit(subtract(at.end, at.start))
    start = add(at.start, scale(along, at.notch))
    end = add(at.end, scale(along, -at.notch))
    near = (add(start, lift), add(end, lift))
    under = scale(at.outward, at.depth - at.fit / 2.0)
    floor = scale(at.outward, at.depth)
    rise = (0.0, 0.0, at.thickness)
    edge = (add(near[0], floor), add(near[1], floor))
    inward = scale(at.outward, -1.0)
    return (
        Contact((*near, add(near[1], under), add(near[0], under)), (0.0, 0.0, 1.0), 0.0),
        Contact((*edge, add(edge[1], rise), add(edge[0], rise)), inward, at.fit / 2.0),
    )
