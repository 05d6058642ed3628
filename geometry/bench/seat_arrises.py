"""The upper arris of a seat board's front, and of its ends if asked, eased.

A run that is too short for its size is left sharp.  On a seat of sheet they lie on its front
lipping, and behind that on the sheet where they reach so far.
"""

from __future__ import annotations

from geometry.bench.arris_rows import (
    FACE_SIDE,
    FAR_EDGE,
    LEAST_RUN,
    form_row,
    formed,
    run_row,
    size_row,
    snug_at,
)
from geometry.bench.constraint import Constraint, rule
from geometry.bench.lipped import mouldings_on
from geometry.bench.member import Member
from geometry.bench.panel_ends_numbers import panel_ends, panels_of_sheet
from geometry.bench.seat_board import SEAT, has_seat_board
from geometry.cuts.edge_moulding import EdgeMoulding, along_arris
from geometry.design.parameter import Parameter, choice
from geometry.design.part import Part
from geometry.design.spec import BenchSpec
from geometry.primitives.frame import Frame

FRONT, ROUND = "front", "front and ends"
SEAT_LIPPING = "seat lipping"  # the kind of part
_MOST = 0.75  # of the seat's thickness; common practice, no source

PARAMETERS: tuple[Parameter, ...] = (
    form_row("seat_edge", "Seat edge", "The upper arris of the seat's board."),
    size_row("seat_edge_size", "Seat edge size", 6.0, 40, "On the upper face and down the edge."),
    choice(
        "seat_edge_where",
        "Seat edge along",
        "Edges",
        FRONT,
        (FRONT, ROUND),
        "The front, or the front and both ends.",
        applies=lambda spec: formed("seat_edge")(spec) and not panels_of_sheet(spec),
    ),
    run_row(
        "seat_edge_stop",
        "Seat edge stopped",
        0,
        "From the ends of the front to where it begins; 0 runs through.",
        "seat_edge",
    ),
)

CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "seat_edge_within",
        "seat_edge seat_edge_size seat_thickness",
        lambda s: _MOST * s.number("seat_thickness") - s.number("seat_edge_size"),
        "the edge would take more than three quarters of the seat's thickness",
    ),
)


def _has_edge(spec: BenchSpec) -> bool:
    return has_seat_board(spec) and formed("seat_edge")(spec)


def _cuts(spec: BenchSpec, part: Part) -> tuple[EdgeMoulding, ...]:
    if panels_of_sheet(spec):
        return _on_sheet(spec, part)
    if part.kind != SEAT:
        return ()
    blank = part.shape.blank
    return _edges(spec, blank.length, blank.width, ends_too=spec.word("seat_edge_where") == ROUND)


def _on_sheet(spec: BenchSpec, part: Part) -> tuple[EdgeMoulding, ...]:
    """The front edge of the whole seat, on its lipping, and where it reaches so far on the sheet
    and the lippings of its ends behind that."""
    if part.kind not in (SEAT, SEAT_LIPPING):
        return ()
    n = panel_ends(spec)
    whole = Frame.of((0.0, 0.0, n.top), (1, 0, 0), (0, -1, 0))
    return mouldings_on(_edges(spec, n.length, n.depth, ends_too=False), whole, part)


def _edges(
    spec: BenchSpec, long: float, deep: float, *, ends_too: bool
) -> tuple[EdgeMoulding, ...]:
    """Of a board so long and deep, in its own frame."""
    form, size, stop = (
        spec.word("seat_edge"),
        spec.number("seat_edge_size"),
        spec.number("seat_edge_stop"),
    )
    if ends_too:
        stop = 0.0
    if long - 2.0 * stop < LEAST_RUN * size:
        return ()
    ends = ((stop, deep, 0.0), (long - stop, deep, 0.0))
    stops = (stop > 0.0, stop > 0.0)
    found = [along_arris(form, size, ends, (FACE_SIDE, FAR_EDGE), stopped=stops)]
    if ends_too:
        found += [
            along_arris(form, size, ((x, 0.0, 0.0), (x, deep, 0.0)), (FACE_SIDE, (way, 0.0, 0.0)))
            for x, way in ((0.0, -1.0), (long, 1.0))
        ]
    return tuple(found)


CHOICE_MEMBER = Member("seat edge", PARAMETERS, present=has_seat_board)

MEMBER = Member(
    "seat edges",
    (),
    CONSTRAINTS,
    cuts=_cuts,
    present=_has_edge,
    snug=snug_at(seat_edge_size=6.0),
)
