"""What a seat offers a back rest: a board to stand on, edges to stand behind, what is in the way.

The one place where a back rest asks what it is fixed to; a new form of seat adds itself here.
Bench coordinates, mm.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache

from geometry.bench.case_numbers import LEFT, RIGHT, case_numbers
from geometry.bench.four_leg_numbers import CORNERS
from geometry.bench.lid_box_parameters import ON_STRIP
from geometry.bench.overall import CASE, LID_BOX, PANEL_BENCH, SLAB, seat_height
from geometry.bench.panel_ends_numbers import panel_ends
from geometry.bench.partitions import MOST_PARTITIONS, uprights
from geometry.bench.round_legs import has_round_legs, tenon_numbers
from geometry.design.spec import BenchSpec
from geometry.primitives.frame import add, scale

Span = tuple[float, float]
Box = tuple[Span, Span]  # what is taken of the board in X and in Y

# What a rule about a back rest's hold on its seat reads, beside its own numbers.
SEAT_READS = (
    "seat length depth base_height case_height board_thickness left_end right_end left_inset "
    "right_inset partition_thickness partition_count housing_depth housing_fit rebate_depth "
    "back_thickness back_let_in seat_thickness base leg_joint leg_turn rake splay inset_left "
    "inset_right inset_back inset_front leg_size leg_tenon leg_tenon_fit box_height lid_thickness "
    "box_thickness lid_hung left_joint right_joint left_end_in right_end_in end_thickness "
    "panel_made_of panel_lip panel_lipped top_made_of board_lip board_lipped "
    + " ".join(f"partition_{k}" for k in range(1, MOST_PARTITIONS + 1))
)


@dataclass(frozen=True, slots=True)
class Edge:
    """A back edge in y = 0 that posts may stand behind: its part, and the height it is whole in."""

    part: str
    low: float
    high: float
    moves: bool = False


@dataclass(frozen=True, slots=True)
class SeatBack:
    """``top`` is the height of the seat, ``board`` the part whose upper face that is.

    Mortises in the board keep within X ``mortised``, in front of Y ``behind``, and off the boxes
    ``under``, where something else is let into it.  Posts behind the seat reach down to ``foot``
    and are fixed to ``edges`` within X ``edged``; notches for them go no deeper than ``deepest``,
    keep within ``edged`` too and off the boxes ``at_the_edge``.  Where there is no ``board``, posts
    can only stand behind.
    """

    top: float
    board: str
    thickness: float
    depth: float
    mortised: Span
    behind: float
    under: tuple[Box, ...]
    foot: float
    edges: tuple[Edge, ...]
    edged: Span
    at_the_edge: tuple[Box, ...]
    deepest: float


@lru_cache(maxsize=512)
def seat_back(spec: BenchSpec) -> SeatBack:
    """The back of a bench's seat; KeyError for a form that cannot have a back rest."""
    return _SEATS[spec.word("seat")](spec)


def takes_rest(spec: BenchSpec) -> bool:
    """Whether a back rest can be fixed to this form of seat."""
    return spec.word("seat") in _SEATS


def _of_case(spec: BenchSpec) -> SeatBack:
    """Top and bottom, their mitres at closed ends, and the partitions housed in them."""
    c = case_numbers(spec)
    half, t = c.housing_fit / 2.0, c.partition_thickness
    across = (-c.upright_front, 0.0)
    standing = [((at.x_left - half, at.x_left + t + half), at.end) for at in uprights(c)]
    inside = (
        c.thickness if c.left.mitred else c.end_lip("top", LEFT),
        c.length - (c.thickness if c.right.mitred else c.end_lip("top", RIGHT)),
    )
    taken = max(c.rebate_depth, c.housing_depth if standing else 0.0)
    return SeatBack(
        top=c.top,
        board="top",
        thickness=c.thickness,
        depth=c.depth,
        mortised=inside,
        behind=-max(c.rebate_width, c.back_lip("top")),
        under=tuple((along, across) for along, _ in standing),
        foot=c.floor,
        edges=(
            Edge("top", c.inside_high + taken, c.top),
            Edge("bottom", c.floor, c.inside_low - taken),
        ),
        edged=inside,
        at_the_edge=tuple((along, across) for along, end in standing if end),
        deepest=c.back_let_in,
    )


def _of_slab(spec: BenchSpec) -> SeatBack:
    """One board, and the round tenons that may come up through it."""
    top, thickness = seat_height(spec), spec.number("seat_thickness")
    ends = (0.0, spec.number("length"))
    bores = _bores(spec)
    return SeatBack(
        top=top,
        board="seat",
        thickness=thickness,
        depth=spec.number("depth"),
        mortised=ends,
        behind=0.0,
        under=bores,
        foot=top - thickness,
        edges=(Edge("seat", top - thickness, top),),
        edged=ends,
        at_the_edge=bores,
        deepest=spec.number("depth"),
    )


def _bores(spec: BenchSpec) -> tuple[Box, ...]:
    """What round tenons take of the board that they go through, from one face to the other."""
    found = []
    for corner in CORNERS if has_round_legs(spec) else ():
        at = tenon_numbers(spec, corner)
        half = (at.diameter + at.fit) / 2.0 / -at.down[2]
        through = add(at.middle, scale(at.down, at.depth / at.down[2]))
        xs, ys = ((at.middle[axis], through[axis]) for axis in (0, 1))
        found.append(((min(xs) - half, max(xs) + half), (min(ys) - half, max(ys) + half)))
    return tuple(found)


def _of_panel_bench(spec: BenchSpec) -> SeatBack:
    """The seat's board between its two ends, clear of the joints with them."""
    p = panel_ends(spec)
    inside = (p.left.inside, p.right.inside)
    return SeatBack(
        top=p.top,
        board="seat",
        thickness=p.seat_thickness,
        depth=p.depth,
        mortised=inside,
        behind=0.0 - p.back_lip,
        under=(),
        foot=p.underside,
        edges=(Edge("seat", p.underside, p.top),),
        edged=inside,
        at_the_edge=(),
        deepest=p.depth,
    )


def _of_box(spec: BenchSpec) -> SeatBack:
    """The back of a box and the strip above it; its lid holds no post."""
    top, lid, t = seat_height(spec), spec.number("lid_thickness"), spec.number("box_thickness")
    floor, rim = spec.number("base_height"), top - lid
    ends = (t, spec.number("length") - t)
    strip = (Edge("hinge_strip", rim, top),) if spec.value("lid_hung") == ON_STRIP else ()
    return SeatBack(
        top=top,
        board="",
        thickness=lid,
        depth=spec.number("depth"),
        mortised=ends,
        behind=0.0,
        under=(),
        foot=floor,
        edges=(Edge("box_back", floor, rim, moves=True), *strip),
        edged=ends,
        at_the_edge=(),
        deepest=0.0,
    )


_SEATS: dict[str, Callable[[BenchSpec], SeatBack]] = {
    CASE: _of_case,
    SLAB: _of_slab,
    PANEL_BENCH: _of_panel_bench,
    LID_BOX: _of_box,
}
