"""The wedges of a through tenon, as pieces to make."""

from __future__ import annotations

from geometry.cuts.cut import Blank
from geometry.design.part import Part, Shape
from geometry.joints.through_tenon import ThroughTenon
from geometry.primitives.frame import Frame, add, scale

PLAIN, WEDGED = "plain", "wedged"


def wedge_piece(name: str, title: str, timber: str, at: ThroughTenon, *, high: bool) -> Part:
    """The blank of a wedge: x from its thick end, y from the edge that lies on the tenon.

    ``high``: at the end of the mortise toward its grain.  The slope is cut by the joint.
    """
    sign = 1.0 if high else -1.0
    side = scale(at.grain, sign)
    corner = add(scale(side, at.half_grain), scale(at.across, sign * at.half_cross))
    origin = add(add(at.face, corner), scale(at.out, at.depth))
    return Part(
        name=name,
        title=title,
        kind="wedge",
        material=timber,
        shape=Shape(Blank(at.depth, at.wedge_room, 2.0 * at.half_cross), ()),
        frame=Frame.of(origin, scale(at.out, -1.0), side),
    )
