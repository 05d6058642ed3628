"""A bottom in a rebate along the lower edge of one of the pieces round it.

The rebate is as high as the bottom is thick, so that the bottom is flush below; it ends a rebate's
depth past the inside corner, where the neighbour's rebate goes on, and shows at no end.
"""

from __future__ import annotations

from dataclasses import dataclass

from geometry.cuts.rebate import Rebate
from geometry.design.joint import Contact, Joint, Measure
from geometry.design.part import Part
from geometry.joints.marking import span
from geometry.joints.reference_faces import start_of
from geometry.primitives.frame import Vec3, add, scale


@dataclass(frozen=True, slots=True)
class RebateNumbers:
    """One rebate, in mm, where its piece stands.

    ``start`` and ``end`` are the inside corners at the piece's lower edge; ``outward`` is the level
    unit direction from the inside into the piece.  ``thickness`` is the bottom's, ``depth`` the
    rebate's; ``fit`` is the clearance of the bottom between its rebates, both edges together.
    """

    start: Vec3
    end: Vec3
    outward: Vec3
    thickness: float
    depth: float
    fit: float


def rebated_bottom(name: str, piece: Part, bottom: Part, at: RebateNumbers) -> Joint:
    """Rebate ``piece`` for ``bottom``; its y runs up from the lower edge, its face side inside."""
    x_low, x_high = span(piece, 0, at.start, at.end)
    x_low, x_high = round(x_low - at.depth, 9), round(x_high + at.depth, 9)
    return Joint(
        name=name,
        kind="rebate",
        parts=(piece.name, bottom.name),
        fit=at.fit,
        cuts_first=(Rebate(x_low, x_high, 0.0, at.thickness, at.depth),),
        cuts_second=(),
        measures=(
            Measure(
                "rebate_width", at.thickness, "mm", "from the lower edge", (0,), piece.frame.y_axis
            ),
            Measure(
                "rebate_depth", at.depth, "mm", "below the inside face", (0,), piece.frame.z_axis
            ),
            Measure("rebate_length", x_high - x_low, "mm", "along the piece, stopped at both ends"),
            *start_of(piece, x_low, x_high, "rebate"),
        ),
        contacts=_contacts(at),
    )


def _contacts(at: RebateNumbers) -> tuple[Contact, ...]:
    """The rebate's wall over the bottom, and its side beside the bottom's edge."""
    rise = (0.0, 0.0, at.thickness)
    near = (add(at.start, rise), add(at.end, rise))
    over = scale(at.outward, at.depth - at.fit / 2.0)
    side = scale(at.outward, at.depth)
    edge = (add(at.start, side), add(at.end, side))
    return (
        Contact((*near, add(near[1], over), add(near[0], over)), (0.0, 0.0, -1.0), 0.0),
        Contact(
            (*edge, add(edge[1], rise), add(edge[0], rise)), scale(at.outward, -1.0), at.fit / 2.0
        ),
    )
