"""The outside front arrises of a panel bench's ends, eased from the floor to the seat.

At a mitre they run on into the seat's; under a seat that lies on its end, or that is dovetailed to
it, they end.  On ends of sheet they lie on the front lipping, and behind that on the sheet where
they reach so far.  A run that is too short for its size is left sharp.
"""

from __future__ import annotations

from geometry.bench.arris_rows import LEAST_RUN, form_row, formed, run_row, size_row, snug_at
from geometry.bench.constraint import Constraint, rule
from geometry.bench.lipped import moved_moulding
from geometry.bench.member import Member
from geometry.bench.panel_ends_numbers import (
    LEFT,
    MITRED,
    PanelEnd,
    PanelEnds,
    has_panel_ends,
    panel_ends,
)
from geometry.bench.seat_rail_numbers import PLAIN, WEDGED, seat_rail
from geometry.cuts.edge_moulding import EdgeMoulding, along_arris
from geometry.cuts.overrun import LAP
from geometry.cuts.removal import HalfSpace
from geometry.design.parameter import Parameter
from geometry.design.part import Part
from geometry.design.spec import BenchSpec
from geometry.primitives.frame import BENCH_FRAME, Vec3
from shared.tolerances import COPLANAR

# Common practice, no source, these:
_MOST = 0.5  # of an end's thickness
_CLEAR = 2.0  # mm of a pad, or beside a mortise
_FORWARD: Vec3 = (0.0, -1.0, 0.0)

PARAMETERS: tuple[Parameter, ...] = (
    form_row("end_edge", "End edge", "The outside front arris of both ends."),
    size_row("end_edge_size", "End edge size", 5.0, 25, "On the outside and on the front edge."),
    run_row(
        "end_edge_stop",
        "End edge stopped",
        0,
        "From the floor and from the seat's underside to where it begins; 0 runs through.",
        "end_edge",
    ),
)


def _pads(spec: BenchSpec) -> float:
    n = panel_ends(spec)
    return n.pad - spec.number("end_edge_size") - _CLEAR if n.relief > 0.0 else 1.0


def _beside_rail(spec: BenchSpec) -> float:
    """The wood between the edge and the mortise of a rail that comes through."""
    n, r = panel_ends(spec), seat_rail(spec)
    if r.joint not in (PLAIN, WEDGED):
        return 1.0
    mortise = r.middle + r.half_cross + r.fit / 2.0
    return n.least_front - mortise - spec.number("end_edge_size") - _CLEAR


CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "end_edge_within",
        "end_edge end_edge_size end_thickness",
        lambda s: _MOST * s.number("end_thickness") - s.number("end_edge_size"),
        "the edge would take more than half the end's thickness",
    ),
    rule(
        "end_edge_pad",
        "end_edge end_edge_size end_relief end_pad",
        _pads,
        "the edge would leave less than {2 mm} of the pads' outsides",
    ),
    rule(
        "end_edge_rail",
        "end_edge end_edge_size depth left_joint right_joint end_reveal seat_rail_joint "
        "seat_rail_back seat_rail_thickness seat_rail_tenon seat_rail_fit",
        _beside_rail,
        "the edge would come within {2 mm} of the rail's mortise",
    ),
)


def _has_edges(spec: BenchSpec) -> bool:
    return has_panel_ends(spec) and formed("end_edge")(spec)


def _cuts(spec: BenchSpec, part: Part) -> tuple[EdgeMoulding, ...]:
    """On an end; on one of sheet, on its front lipping, and on the sheet too if it reaches it."""
    n, size = panel_ends(spec), spec.number("end_edge_size")
    for end in n.ends:
        name = f"end_{end.side}"
        whole = part.name == name and size > n.lip + COPLANAR
        if whole or part.name == f"{name}_lipping":
            return _edge(spec, n, end, part)
    return ()


def _edge(spec: BenchSpec, n: PanelEnds, end: PanelEnd, part: Part) -> tuple[EdgeMoulding, ...]:
    size, stop = spec.number("end_edge_size"), spec.number("end_edge_stop")
    through = end.joint == MITRED and stop <= 0.0
    low, high = stop, n.top if through else n.underside - stop
    if n.underside - 2.0 * stop < LEAST_RUN * size:
        return ()
    outside: Vec3 = (-1.0 if end.side == LEFT else 1.0, 0.0, 0.0)
    x, y = end.outside, 0.0 - end.front
    # What stands in the seat, or in its tails, stays whole.
    planes = (HalfSpace((x, y, n.underside + LAP), (0.0, 0.0, 1.0)),)
    found = along_arris(
        spec.word("end_edge"),
        size,
        ((x, y, low), (x, y, high)),
        (outside, _FORWARD),
        stopped=(stop > 0.0, stop > 0.0),
        planes=() if through or stop > 0.0 else planes,
    )
    return (moved_moulding(found, BENCH_FRAME, part.frame),)


CHOICE_MEMBER = Member("end edge", PARAMETERS, present=has_panel_ends)

MEMBER = Member(
    "end edges",
    (),
    CONSTRAINTS,
    cuts=_cuts,
    present=_has_edges,
    snug=snug_at(end_edge_size=2.0),
)
