"""A seat that is one solid board, glued up edge to edge of several: on any base, or panel ends.

Its upper face is the face side, its back edge the face edge.  The boards are ripped to one width;
the grain of all runs along the bench.
"""

from __future__ import annotations

import math

from geometry.bench.constraint import Constraint, rule
from geometry.bench.derived import Derived, derived_length
from geometry.bench.lipped import with_strips
from geometry.bench.member import Member
from geometry.bench.overall import SLAB, seat_height, seat_is
from geometry.bench.panel_ends_numbers import has_panel_ends, panel_ends, panels_of_sheet
from geometry.cuts.cut import Blank
from geometry.design.parameter import Parameter, Value, count, length
from geometry.design.part import Part, Shape
from geometry.design.spec import BenchSpec
from geometry.primitives.frame import Frame
from shared.units import length_mark

SEAT = "seat"  # the kind of its board
LEAST_BOARD = 40.0  # mm that a board of the glue-up is wide; common practice, no source

PARAMETERS: tuple[Parameter, ...] = (
    length(
        "seat_thickness",
        "Seat thickness",
        "Seat board",
        40,
        15,
        120,
        "Thickness of the seat's board.",
        step=0.5,
    ),
    count(
        "seat_boards",
        "Boards in the seat",
        "Seat board",
        3,
        1,
        12,
        "How many boards of one width the seat is glued up from, edge to edge.",
        applies=lambda spec: not panels_of_sheet(spec),
    ),
)


def boards_across(spec: BenchSpec, width: float) -> int:
    """How few boards a panel so wide can be glued up of, none wider than the widest."""
    return math.ceil(width / spec.number("glue_up_width") - 1e-9)


def boards_in_seat(spec: BenchSpec) -> int:
    """As many as the maker says, or more where those would be wider than the widest."""
    return max(spec.count("seat_boards"), boards_across(spec, spec.number("depth")))


def board_width(spec: BenchSpec) -> float:
    """How wide each board of the glue-up is once it is ripped and planed, in mm."""
    return spec.number("depth") / boards_in_seat(spec)


def board_ends(spec: BenchSpec) -> tuple[float, float]:
    """X of the board's two ends."""
    if has_panel_ends(spec):
        return panel_ends(spec).seat_ends
    return (0.0, spec.number("length"))


CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "seat_board_width",
        "depth seat_boards panel_made_of",
        lambda s: (
            1.0 if panels_of_sheet(s) else s.number("depth") / s.count("seat_boards") - LEAST_BOARD
        ),
        "a board of the seat would be narrower than {40 mm}",
    ),
)


def seat_parts(spec: BenchSpec) -> tuple[Part, ...]:
    """One of sheet without its lippings."""
    deep, thick = spec.number("depth"), spec.number("seat_thickness")
    start, end = board_ends(spec)
    back, front, sheet = 0.0, deep, panels_of_sheet(spec)
    if sheet:
        n = panel_ends(spec)
        back, front = n.back_lip, deep - n.lip
    return (
        Part(
            name="seat",
            title="Seat",
            kind=SEAT,
            material=spec.word("sheet" if sheet else "timber"),
            shape=Shape(Blank(end - start, front - back, thick), ()),
            frame=Frame.of((start, 0.0 - back, seat_height(spec)), (1, 0, 0), (0, -1, 0)),
            solid_timber=not sheet,
            notes=(with_strips(deep, "lippings"),) if sheet else _glue_up(spec),
        ),
    )


def _glue_up(spec: BenchSpec) -> tuple[str, ...]:
    boards = boards_in_seat(spec)
    if boards == 1:
        return ("in one board",)
    return (f"glued up of {boards} boards, each {length_mark(board_width(spec))} wide",)


def _derived(spec: BenchSpec) -> tuple[Derived, ...]:
    if panels_of_sheet(spec) or boards_in_seat(spec) == 1:
        return ()
    return (
        derived_length(
            "seat_board_width",
            "Board width",
            "Seat board",
            board_width(spec),
            "depth / boards in the seat, or those that the widest board asks for",
        ),
    )


def fitted(spec: BenchSpec) -> dict[str, Value]:
    """Fewer boards, where those kept would be too narrow for a seat of this depth."""
    if panels_of_sheet(spec):
        return {}
    most = math.floor(spec.number("depth") / LEAST_BOARD)
    return {"seat_boards": float(most)} if spec.count("seat_boards") > most else {}


def has_seat_board(spec: BenchSpec) -> bool:
    return seat_is(SLAB, spec) or has_panel_ends(spec)


MEMBER = Member(
    "seat board", PARAMETERS, CONSTRAINTS, seat_parts, derived=_derived, present=has_seat_board
)
