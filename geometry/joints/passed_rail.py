"""A rail that passes whole through a piece: a mortise of the rail's own section."""

from __future__ import annotations

from geometry.cuts.mortise import Mortise
from geometry.design.joint import Contact, Joint
from geometry.design.part import Part
from geometry.joints.marking import corners_on
from geometry.joints.through_tenon import ThroughTenon, mortise_mouth


def passed_rail(name: str, rail: Part, holder: Part, at: ThroughTenon) -> Joint:
    """Let ``rail`` pass through ``holder``; half sizes of ``at`` are those of the rail itself."""
    near, far = (
        corners_on(holder, at.corners(along, at.half_grain, at.half_mouth))
        for along in (0.0, at.depth)
    )
    mortise = Mortise(near, far, through=True)
    first, last = (at.corners(along, at.half_grain, at.half_cross) for along in (0.0, at.depth))
    return Joint(
        name=name,
        kind="passed rail",
        parts=(rail.name, holder.name),
        fit=at.fit,
        cuts_first=(),
        cuts_second=(mortise,),
        measures=mortise_mouth(at, "along the piece's grain"),
        contacts=(
            Contact((first[3], first[2], last[2], last[3]), at.across, at.fit / 2.0),
            Contact((first[1], first[2], last[2], last[1]), at.grain, 0.0),
        ),
    )
