"""A rail that ends inside the piece it meets: with a stub tenon, or housed with its whole section.

A stub tenon has shoulders, and a mortise a little deeper than it is long, for glue; a housed rail
has none, and its end stands on the floor of its housing.
"""

from __future__ import annotations

from geometry.cuts.cut import Cut
from geometry.cuts.mortise import Mortise
from geometry.design.joint import FIRST, SECOND, Contact, Joint, Measure
from geometry.design.part import Part
from geometry.joints.leaning_tenon import GLUE_ROOM
from geometry.joints.marking import corners_on
from geometry.joints.through_tenon import (
    ThroughTenon,
    mortise_mouth,
    square_tenon,
    tenon_contacts,
    tenon_section,
)
from geometry.primitives.frame import add, scale

STUB, HOUSED = "stub tenon", "housed rail"


def stub_tenon(name: str, rail: Part, holder: Part, at: ThroughTenon) -> Joint:
    """A tenon of ``at.depth`` in a blind mortise."""
    measures = (
        *tenon_section(at),
        Measure("tenon_length", at.depth, "mm", "from the shoulder to its end", FIRST, at.out),
        *mortise_mouth(at, "along the grain"),
        Measure(
            "mortise_depth", at.depth + GLUE_ROOM, "mm", "below the piece's face", SECOND, at.out
        ),
    )
    return Joint(
        name=name,
        kind=STUB,
        parts=(rail.name, holder.name),
        fit=at.fit,
        cuts_first=(square_tenon(rail, at),),
        cuts_second=(_mortise(holder, at, at.depth + GLUE_ROOM),),
        measures=measures,
        contacts=tenon_contacts(rail, at),
    )


def housed_rail(name: str, rail: Part, holder: Part, at: ThroughTenon) -> Joint:
    """The rail's own end, ``at.depth`` deep in the piece; half sizes of ``at`` are the rail's."""
    end = at.corners(at.depth, at.half_grain, at.half_cross)
    cuts: tuple[Cut, ...] = (_mortise(holder, at, at.depth),)
    return Joint(
        name=name,
        kind=HOUSED,
        parts=(rail.name, holder.name),
        fit=at.fit,
        cuts_first=(),
        cuts_second=cuts,
        measures=(
            Measure(
                "housing_length",
                2.0 * at.half_grain,
                "mm",
                "along the piece's grain",
                SECOND,
                at.grain,
            ),
            Measure(
                "housing_width",
                2.0 * at.half_mouth,
                "mm",
                "across the grain, between the cheeks",
                SECOND,
                at.across,
            ),
            Measure("housing_depth", at.depth, "mm", "below the piece's face", SECOND, at.out),
        ),
        contacts=(*tenon_contacts(rail, at), Contact(end, at.out, 0.0)),
    )


def _mortise(holder: Part, at: ThroughTenon, depth: float) -> Mortise:
    mouth = at.corners(0.0, at.half_grain, at.half_mouth)
    step = scale(at.out, depth)
    floor = tuple(add(corner, step) for corner in mouth)
    return Mortise(
        corners_on(holder, mouth),
        corners_on(holder, (floor[0], floor[1], floor[2], floor[3])),
        through=False,
    )
