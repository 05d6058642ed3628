"""A bridle joint: the stretcher's tenon in an open mortise at the top of a leaning leg.

Everything lies in the plane of the stretcher: u runs outward along it, z up.  The leg's edges in
the joint are parallel and lean by the splay; shoulder, tenon end and mortise floor follow them.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from geometry.cuts.open_mortise import OpenMortise
from geometry.cuts.tenon import Tenon
from geometry.design.joint import FIRST, SECOND, Contact, Joint, Measure
from geometry.design.later import Later
from geometry.design.part import Part
from geometry.joints.marking import saw_cut
from geometry.primitives.frame import Vec3, add, scale


@dataclass(frozen=True, slots=True)
class BridleNumbers:
    """``tip`` is the leg's outer edge at its top, on the middle plane, in bench coordinates.

    ``outward`` is the level unit direction along the stretcher toward this leg.  ``height`` of
    the stretcher, ``leg_width`` square to the leg's edges, ``thickness`` of both, ``tenon`` its
    thickness; ``fit`` widens the mortise.  mm and degrees.
    """

    tip: Vec3
    outward: Vec3
    splay_deg: float
    height: float
    leg_width: float
    thickness: float
    tenon: float
    fit: float

    @property
    def side(self) -> Vec3:
        """The level unit direction square to the stretcher."""
        return (-self.outward[1], self.outward[0], 0.0)


def bridle(name: str, stretcher: Part, leg: Part, at: BridleNumbers) -> Joint:
    """Join a stretcher to a leg; the tenon is the stretcher's, the open mortise the leg's."""
    sine = math.sin(math.radians(at.splay_deg))
    cosine = math.cos(math.radians(at.splay_deg))
    square_out = add(scale(at.outward, cosine), (0.0, 0.0, sine))
    inner = add(at.tip, scale(at.outward, -at.leg_width / cosine))
    low = add(inner, add(scale(at.outward, at.height * sine / cosine), (0.0, 0.0, -at.height)))
    face_edge, far_edge = stretcher.frame.to_local(inner)[0], stretcher.frame.to_local(low)[0]
    z_low = (at.thickness - at.tenon) / 2.0
    side = at.side
    at_start = face_edge < stretcher.shape.blank.length / 2.0
    tenon = Tenon(face_edge, far_edge, z_low, z_low + at.tenon, at_start)
    end_cut = saw_cut(stretcher, "end cut", at.tip, square_out)
    mortise = OpenMortise(
        *_floor_on_leg(leg, at), z_low - at.fit / 2.0, z_low + at.tenon + at.fit / 2.0
    )

    def across(part: Part, start: float, end: float) -> tuple[Vec3, Vec3, Vec3]:
        """The way across the cheeks, and between which depths: a third may be equal on all three,
        and is then only one of them."""
        at_end, at_start = (part.frame.to_bench((0.0, 0.0, z)) for z in (end, start))
        return side, at_end, at_start

    return Joint(
        name=name,
        kind="bridle joint",
        parts=(stretcher.name, leg.name),
        fit=at.fit,
        cuts_first=(end_cut, tenon),
        cuts_second=(mortise,),
        measures=(
            Measure(
                "tenon_thickness",
                at.tenon,
                "mm",
                "across the cheeks",
                FIRST,
                *across(stretcher, z_low, z_low + at.tenon),
            ),
            Measure(
                "tenon_length",
                at.leg_width / cosine,
                "mm",
                "level, from shoulder to end",
                FIRST,
                at.outward,
            ),
            Measure(
                "mortise_width",
                at.tenon + at.fit,
                "mm",
                "between the cheeks",
                SECOND,
                *across(leg, mortise.z_low, mortise.z_high),
            ),
            Measure(
                "mortise_depth",
                at.height / cosine,
                "mm",
                "down the leg's edge",
                SECOND,
                leg.frame.x_axis,
            ),
            Measure(
                "shoulder_angle",
                at.splay_deg,
                "deg",
                "shoulder, and floor, from square",
                along=side,
            ),
            Measure(
                "cheek",
                mortise.z_low,
                "mm",
                "wall of the leg on each side of the mortise",
                SECOND,
                *across(leg, 0.0, mortise.z_low),
            ),
        ),
        contacts=Later(_contacts, at, inner, low, square_out),
    )


def _floor_on_leg(leg: Part, at: BridleNumbers) -> tuple[float, float]:
    """x of the level mortise floor on the leg, at its face edge and at its far edge."""
    drop = -leg.frame.x_axis[2]
    rise_across = leg.frame.y_axis[2]
    start = leg.frame.origin[2] - (at.tip[2] - at.height)
    return (start / drop, (start + rise_across * leg.shape.blank.width) / drop)


def _contacts(at: BridleNumbers, inner: Vec3, low: Vec3, square_out: Vec3) -> tuple[Contact, ...]:
    side = at.side
    near, far = at.tenon / 2.0 + at.fit, at.thickness / 2.0
    shoulder = (
        add(inner, scale(side, near)),
        add(inner, scale(side, far)),
        add(low, scale(side, far)),
        add(low, scale(side, near)),
    )
    outer_low = add(low, scale(at.outward, at.leg_width / math.cos(math.radians(at.splay_deg))))
    half = at.tenon / 2.0
    floor = (
        add(low, scale(side, -half)),
        add(low, scale(side, half)),
        add(outer_low, scale(side, half)),
        add(outer_low, scale(side, -half)),
    )
    cheek = (
        add(inner, scale(side, half)),
        add(low, scale(side, half)),
        add(outer_low, scale(side, half)),
        add(at.tip, scale(side, half)),
    )
    return (
        Contact(shoulder, square_out, 0.0),
        Contact(floor, (0.0, 0.0, -1.0), 0.0),
        Contact(cheek, side, at.fit / 2.0),
    )
