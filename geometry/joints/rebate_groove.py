"""A rebate and groove: a tongue on the end piece stands in a groove across the side.

The end piece is rebated from outside, so that the tongue is flush with the inside of the box and
the side keeps as much wood as it can outside the groove.
"""

from __future__ import annotations

from dataclasses import dataclass

from geometry.cuts.contour import Face
from geometry.cuts.groove import Groove
from geometry.cuts.rebate import Rebate
from geometry.design.joint import FIRST, SECOND, Contact, Joint, Measure
from geometry.design.later import Later
from geometry.design.part import Part
from geometry.joints.corner import Corner


@dataclass(frozen=True, slots=True)
class TongueNumbers:
    """``thickness`` of the tongue along the side, ``length`` of it into the side; mm."""

    corner: Corner
    thickness: float
    length: float


def rebate_groove(name: str, side: Part, end: Part, at: TongueNumbers) -> Joint:
    """Tongue an end piece, which reaches into the side by the tongue's length, into a side."""
    c = at.corner
    start = c.end_thickness - at.thickness
    wall = (
        c.on_side(side, start - c.fit / 2.0),
        c.on_side(side, c.end_thickness + c.fit / 2.0),
    )
    tip = c.on_end(end, c.side_thickness - at.length)
    shoulder = c.on_end(end, c.side_thickness)
    return Joint(
        name=name,
        kind="rebate and groove",
        parts=(side.name, end.name),
        fit=c.fit,
        cuts_first=(Groove(min(wall), max(wall), 0.0, c.height, at.length),),
        cuts_second=(
            Rebate(min(tip, shoulder), max(tip, shoulder), 0.0, c.height, start, face=Face.REVERSE),
        ),
        measures=Later(_measures, at, start),
        contacts=Later(_contacts, at, start),
    )


def _measures(at: TongueNumbers, start: float) -> tuple[Measure, ...]:
    c = at.corner
    return (
        Measure(
            "tongue_thickness",
            at.thickness,
            "mm",
            "of the tongue, from inside the box",
            SECOND,
            c.along_side,
        ),
        Measure("tongue_length", at.length, "mm", "of the tongue", SECOND, c.along_end),
        Measure("groove_depth", at.length, "mm", "from the inside of the side", FIRST, c.along_end),
        Measure(
            "groove_width",
            at.thickness + c.fit,
            "mm",
            "across the groove",
            FIRST,
            c.along_side,
        ),
        Measure(
            "groove_from_end",
            start - c.fit / 2.0,
            "mm",
            "groove from the side's end",
            FIRST,
            c.along_side,
        ),
        Measure(
            "rebate_depth",
            start,
            "mm",
            "cut from the outside of the end piece",
            SECOND,
            c.along_side,
        ),
    )


def _contacts(at: TongueNumbers, start: float) -> tuple[Contact, ...]:
    """Where nothing else is cut: the tongue's end and cheek, and the shoulder."""
    c = at.corner
    up = (c.clear, c.height)
    tip, wall = c.side_thickness - at.length, start - c.fit / 2.0
    return (
        Contact(c.across_end(tip, (start, c.end_thickness), up), c.along_end, 0.0),
        Contact(c.across_end(c.side_thickness, (0.0, wall), up), c.along_end, 0.0),
        Contact(
            c.across_side(wall, (tip, c.side_thickness), up),
            c.along_side,
            c.fit / 2.0,
        ),
    )
