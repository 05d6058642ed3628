"""A dovetailed corner: tails on the side, pins on the end piece; through, or half-blind.

A half-blind dovetail leaves a lap of the end piece in front of the tails, so that nothing shows
from there.  The tails are as the spacing says; the sockets are wider by the fit, shared by both
flanks and measured square to them.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import pairwise

from geometry.cuts.end_gaps import EndGaps, Gap
from geometry.cuts.sockets import Socket, Sockets
from geometry.design.joint import FIRST, SECOND, Contact, Joint, Measure
from geometry.design.later import Later
from geometry.design.part import Part
from geometry.joints.corner import Corner
from geometry.joints.dovetail_spacing import Spacing, Tail
from geometry.primitives.frame import add, scale


@dataclass(frozen=True, slots=True)
class DovetailNumbers:
    """``spacing`` over the corner's height; ``lap`` is 0 for a through dovetail, in mm."""

    corner: Corner
    spacing: Spacing
    count: int
    lap: float


def dovetail(name: str, side: Part, end: Part, at: DovetailNumbers) -> Joint:
    """Dovetail a side to an end piece; the side's end lies on the lap."""
    tails = at.spacing.tails(at.count)
    corner = at.corner
    return Joint(
        name=name,
        kind="half-blind dovetail" if at.lap else "through dovetail",
        parts=(side.name, end.name),
        fit=corner.fit,
        cuts_first=(_gaps(side, at, tails),),
        cuts_second=(_sockets(end, at, tails),),
        measures=Later(_measures, at, tails[0]),
        contacts=Later(_contacts, at, tails[-1]),
    )


def _gaps(side: Part, at: DovetailNumbers, tails: tuple[Tail, ...]) -> EndGaps:
    """What is sawn away on the side: between its tails, and the half pins at its edges."""
    height = at.corner.height
    below, above = Tail(0.0, 0.0, 0.0, 0.0), Tail(height, height, height, height)
    return EndGaps(
        "tails",
        at.corner.on_side(side, at.lap),
        at.corner.on_side(side, at.corner.end_thickness),
        tuple(
            Gap(lower.end_high, upper.end_low, lower.base_high, upper.base_low)
            for lower, upper in pairwise((below, *tails, above))
        ),
    )


def _sockets(end: Part, at: DovetailNumbers, tails: tuple[Tail, ...]) -> Sockets:
    corner, more = at.corner, _more(at)
    return Sockets(
        corner.on_end(end, 0.0),
        corner.on_end(end, corner.side_thickness),
        at.spacing.length,
        tuple(
            Socket(
                tail.base_low - more,
                tail.base_high + more,
                tail.end_low - more,
                tail.end_high + more,
            )
            for tail in tails
        ),
    )


def _more(at: DovetailNumbers) -> float:
    """How much wider a socket is at each side: up the piece, where half the fit is square."""
    return at.corner.fit / 2.0 * math.hypot(1.0, 1.0 / at.spacing.slope)


def _measures(at: DovetailNumbers, first: Tail) -> tuple[Measure, ...]:
    spacing = at.spacing
    slope_deg = math.degrees(math.atan(1.0 / spacing.slope))
    width, base = first.end_high - first.end_low, first.base_high - first.base_low
    corner = at.corner
    tails = "one tail" if at.count == 1 else f"each of {at.count} tails"
    rows = [
        Measure(
            "tail_length",
            spacing.length,
            "mm",
            "base line of the tails, from the side's end",
            FIRST,
            corner.along_side,
        ),
        Measure(
            "pin_length",
            corner.side_thickness,
            "mm",
            "base line of the pins, from the end; mark the pins from the tails",
            SECOND,
            corner.along_end,
        ),
        Measure(
            "first_tail",
            first.end_low,
            "mm",
            f"{corner.edge} to the first tail, at the end",
            FIRST,
            corner.up,
            corner.point(at.lap, 0.0, first.end_low),
        ),
        Measure("tail_width", width, "mm", f"across {tails} at the end", FIRST, corner.up),
        Measure("tail_base", base, "mm", "across a tail at the base line", FIRST, corner.up),
        Measure("pin_width", spacing.pin, "mm", "between two tails at the end", FIRST, corner.up),
        Measure(
            "pin_base",
            spacing.pin + 2.0 * spacing.narrowing,
            "mm",
            "between two tails at the base line",
            FIRST,
            corner.up,
        ),
        Measure(
            "slope",
            slope_deg,
            "deg",
            f"from square, 1 in {spacing.slope:g}",
            along=corner.along_end,
        ),
    ]
    if at.lap:
        rows.append(
            Measure("lap", at.lap, "mm", "left in front of the tails", SECOND, corner.along_side)
        )
    return tuple(rows)


def _contacts(at: DovetailNumbers, top: Tail) -> tuple[Contact, ...]:
    """At the topmost tail: shoulder on the half pin, flank, end in the socket, and the lap."""
    c = at.corner
    back = scale(c.along_side, -1.0)
    inner, reach = c.side_thickness - c.groove, c.end_thickness - c.groove
    size = math.hypot(1.0, at.spacing.slope)
    outward = add(scale(c.along_side, 1.0 / size), scale(c.up, at.spacing.slope / size))
    # Across the gap and square to the flank, a place near the base line has no pin behind it.
    last = c.end_thickness - c.fit / 2.0 / size
    rise = (c.end_thickness - last) / at.spacing.slope
    flank = (
        c.point(at.lap, 0.0, top.end_high),
        c.point(at.lap, inner, top.end_high),
        c.point(last, inner, top.base_high + rise),
        c.point(last, 0.0, top.base_high + rise),
    )
    pin = top.base_high + _more(at)
    shoulder = c.across_side(c.end_thickness, (0.0, inner), (pin, c.height))
    found = [Contact(shoulder, back, 0.0), Contact(flank, outward, c.fit / 2.0)]
    low = max(top.base_low, c.clear)
    if top.base_high - low > _WORTH_IT:
        floor = c.across_end(c.side_thickness, (at.lap, reach), (low, top.base_high))
        found.append(Contact(floor, c.along_end, 0.0))
        if at.lap:
            lap = c.across_side(at.lap, (0.0, inner), (low, top.base_high))
            found.append(Contact(lap, back, 0.0))
    return tuple(found)


_WORTH_IT = 1.0  # mm: a lower contact says nothing
