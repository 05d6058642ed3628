"""The rail of a panel bench: on edge under the seat, from end to end, against racking.

It is tenoned through the ends, plain or wedged above and below; or ends inside them, with stub
tenons or housed with its whole section.  Right under the seat it is glued to it.
"""

from __future__ import annotations

import math
from collections.abc import Mapping

from geometry.bench.derived import Derived, derived_angle, derived_length
from geometry.bench.member import Member
from geometry.bench.panel_ends_numbers import SIDES, has_panel_ends
from geometry.bench.seat_rail_numbers import (
    HOUSED,
    PLAIN,
    STUB,
    WEDGED,
    SeatRail,
    rail_is,
    seat_rail,
)
from geometry.bench.seat_rail_rules import CONSTRAINTS
from geometry.bench.wedges import wedge_piece
from geometry.cuts.cut import Blank
from geometry.design.joint import Joint, Measure
from geometry.design.parameter import Parameter, choice, length
from geometry.design.part import Part, Shape
from geometry.design.spec import BenchSpec
from geometry.joints.glued_faces import glued_faces
from geometry.joints.stub_tenon import housed_rail, stub_tenon
from geometry.joints.through_tenon import through_tenon, wedge
from geometry.primitives.frame import Frame
from shared.tolerances import COPLANAR

PARAMETERS: tuple[Parameter, ...] = (
    choice(
        "seat_rail_joint",
        "Rail joined",
        "Seat rail",
        WEDGED,
        (PLAIN, WEDGED, STUB, HOUSED),
        "Tenons through the ends, plain or wedged above and below; stub tenons that end inside "
        "them; or the whole rail housed in them.",
    ),
    length("seat_rail_height", "Rail height", "Seat rail", 90, 20, 400, "Of the rail, on edge."),
    length(
        "seat_rail_thickness",
        "Rail thickness",
        "Seat rail",
        26,
        12,
        100,
        "Thickness of the rail.",
        step=0.5,
    ),
    length(
        "seat_rail_down",
        "Rail down",
        "Seat rail",
        0,
        0,
        600,
        "From the seat's underside down to the rail; 0 lays the seat on it.",
    ),
    length(
        "seat_rail_back",
        "Rail set back",
        "Seat rail",
        150,
        0,
        800,
        "From the seat's front edge back to the rail.",
    ),
    length(
        "seat_rail_tenon",
        "Rail tenon thickness",
        "Seat rail",
        12,
        5,
        80,
        "Thickness of the rail's tenons.",
        step=0.5,
        applies=rail_is(PLAIN, WEDGED, STUB),
    ),
    length(
        "seat_rail_shoulder",
        "Rail shoulder",
        "Seat rail",
        18,
        0,
        120,
        "Of the rail's tenons, above and below.",
        step=0.5,
        applies=rail_is(PLAIN, WEDGED, STUB),
    ),
    length(
        "seat_rail_wedge",
        "Wedge room",
        "Seat rail",
        4,
        2,
        15,
        "How much longer a mortise is outside than inside, at each end: the wedge's thick end.",
        step=0.5,
        applies=rail_is(WEDGED),
    ),
    length(
        "seat_rail_in",
        "Rail let in",
        "Seat rail",
        16,
        5,
        70,
        "How far a stub tenon or a housed rail reaches into the ends.",
        step=0.5,
        applies=rail_is(STUB, HOUSED),
    ),
    length(
        "seat_rail_fit",
        "Rail fit",
        "Seat rail",
        0.2,
        0,
        2,
        "Clearance of the rail in its mortises or housings, both cheeks together.",
        step=0.05,
    ),
)

_JOINED = {
    PLAIN: through_tenon,
    WEDGED: through_tenon,
    STUB: stub_tenon,
    HOUSED: housed_rail,
}


def _parts(spec: BenchSpec) -> tuple[Part, ...]:
    """The rail and its wedges."""
    r, timber = seat_rail(spec), spec.word("timber")
    start, end = r.stations
    rail = Part(
        name="rail",
        title="Rail",
        kind="rail",
        material=timber,
        shape=Shape(Blank(end - start, r.height, r.thickness), ()),
        frame=Frame.of((start, -r.front, r.top), (1, 0, 0), (0, 0, -1)),
    )
    wedges = tuple(
        wedge_piece(name, title, timber, r.end(side), high=high)
        for name, title, side, high in _wedges(r)
    )
    return (rail, *wedges)


def _wedges(r: SeatRail) -> tuple[tuple[str, str, str, bool], ...]:
    """Name, title, end and edge of each wedge."""
    if r.joint != WEDGED:
        return ()
    return tuple(
        (f"wedge_{side}_{edge}", f"Wedge, {side} {edge}", side, edge == "upper")
        for side in SIDES
        for edge in ("upper", "lower")
    )


def _joints(spec: BenchSpec, parts: Mapping[str, Part]) -> tuple[Joint, ...]:
    r = seat_rail(spec)
    rail, joined = parts["rail"], _JOINED[r.joint]
    joints = [joined(f"rail_{side}", rail, parts[f"end_{side}"], r.end(side)) for side in SIDES]
    joints += [
        wedge(name, parts[name], rail, r.end(side), high=high) for name, _, side, high in _wedges(r)
    ]
    if r.down < COPLANAR:
        joints.append(_under_seat(r, rail, parts["seat"]))
    return tuple(joints)


def _under_seat(r: SeatRail, rail: Part, seat: Part) -> Joint:
    """The rail's upper edge on the seat's underside, between the ends."""
    (left, right), front, back = r.inside, -r.front, -r.front + r.thickness
    face = (
        (left, front, r.top),
        (right, front, r.top),
        (right, back, r.top),
        (left, back, r.top),
    )
    measures = (
        Measure("rail_set_back", r.set_back, "mm", "from the seat's front edge to the rail"),
        Measure("glued_width", r.thickness, "mm", "across the glued edge"),
    )
    return glued_faces("rail_seat", "glued edge", rail, seat, face, (0.0, 0.0, 1.0), measures)


def _derived(spec: BenchSpec) -> tuple[Derived, ...]:
    r = seat_rail(spec)
    start, end = r.stations
    rows = [
        derived_length(
            "seat_rail_length",
            "Rail length",
            "Seat rail",
            end - start,
            "between the ends, and what is let into them",
        )
    ]
    if r.joint != HOUSED:
        rows.append(
            derived_length(
                "seat_rail_tenon_height",
                "Rail tenon height",
                "Seat rail",
                2.0 * r.half_grain,
                "rail height − 2 × rail shoulder",
            )
        )
    if r.joint == WEDGED:
        rows.append(
            derived_angle(
                "seat_rail_wedge_slope",
                "Wedge slope",
                "Seat rail",
                math.degrees(math.atan(r.wedge_room / r.end_thickness)),
                "wedge room over end thickness",
            )
        )
    return tuple(rows)


def _snug(spec: BenchSpec) -> tuple[dict[str, float], ...]:
    """First the same rail in the middle of the ends, then the least one."""
    r = seat_rail(spec)
    middle = spec.number("depth") - r.least_front / 2.0
    least = {
        "seat_rail_height": 20.0,
        "seat_rail_thickness": 12.0,
        "seat_rail_down": 10.0,
        "seat_rail_tenon": 5.0,
        "seat_rail_shoulder": 2.0,
        "seat_rail_wedge": 2.0,
        "seat_rail_in": 5.0,
        "seat_rail_fit": 0.2,
    }
    return (
        {"seat_rail_back": max(0.0, middle - r.thickness / 2.0)},
        {**least, "seat_rail_back": max(0.0, middle - 6.0)},
    )


MEMBER = Member(
    "seat rail",
    PARAMETERS,
    CONSTRAINTS,
    _parts,
    _joints,
    derived=_derived,
    present=has_panel_ends,
    snug=_snug,
)
