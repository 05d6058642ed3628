"""What a seat offers a back rest: a board to stand on, edges to stand behind, what is in the way.

The one place where a back rest asks what it is fixed to; a new form of seat adds itself here.
Bench coordinates, mm.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from geometry.bench.case_numbers import CaseNumbers, case_numbers
from geometry.bench.partitions import MOST_PARTITIONS, uprights
from geometry.design.spec import BenchSpec

Span = tuple[float, float]

# What a rule about a back rest's hold on its seat reads, beside its own numbers.
SEAT_READS = (
    "seat length depth base_height case_height board_thickness left_end right_end left_inset "
    "right_inset partition_thickness partition_count housing_depth housing_fit rebate_depth "
    "back_thickness back_let_in "
    + " ".join(f"partition_{k}" for k in range(1, MOST_PARTITIONS + 1))
)


@dataclass(frozen=True, slots=True)
class Edge:
    """A back edge in y = 0 that posts may stand behind: its part, and the height it is whole in."""

    part: str
    low: float
    high: float


@dataclass(frozen=True, slots=True)
class SeatBack:
    """``top`` is the height of the seat, ``board`` the part whose upper face that is.

    Mortises in the board keep within X ``mortised``, in front of Y ``behind``, and off the spans
    ``under``, where something is housed in its underside.  Posts behind the seat reach down to
    ``foot`` and are fixed to ``edges`` within X ``edged``; notches for them go no deeper than
    ``deepest``, keep within ``notched`` and off the spans ``at_the_edge``.
    """

    top: float
    board: str
    thickness: float
    depth: float
    mortised: Span
    behind: float
    under: tuple[Span, ...]
    foot: float
    edges: tuple[Edge, ...]
    edged: Span
    notched: Span
    at_the_edge: tuple[Span, ...]
    deepest: float


@lru_cache(maxsize=512)
def seat_back(spec: BenchSpec) -> SeatBack:
    """The back of a bench's seat."""
    return _of_case(case_numbers(spec))


def _of_case(c: CaseNumbers) -> SeatBack:
    """Top and bottom, their mitres at closed ends, and the partitions housed in them."""
    half, t = c.housing_fit / 2.0, c.partition_thickness
    standing = [(at.x_left - half, at.x_left + t + half, at.end) for at in uprights(c)]
    left = c.thickness if c.left.mitred else 0.0
    right = c.length - (c.thickness if c.right.mitred else 0.0)
    taken = max(c.rebate_depth, c.housing_depth)
    return SeatBack(
        top=c.top,
        board="top",
        thickness=c.thickness,
        depth=c.depth,
        mortised=(left, right),
        behind=-c.rebate_width,
        under=tuple((low, high) for low, high, _ in standing),
        foot=c.floor,
        edges=(
            Edge("top", c.inside_high + taken, c.top),
            Edge("bottom", c.floor, c.inside_low - taken),
        ),
        edged=(left, right),
        notched=(left, right),
        at_the_edge=tuple((low, high) for low, high, end in standing if end),
        deepest=c.back_let_in,
    )
