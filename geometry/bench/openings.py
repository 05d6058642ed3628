"""The clear openings of a case, between uprights and end panels, and what fills each.

Counted from the left, as seen from the front.  All stand between the inside faces of top and
bottom, from the fronts of the uprights back to the inside face of the back.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from geometry.bench.case import has_case
from geometry.bench.case_numbers import case_numbers
from geometry.bench.derived import Derived, derived_length
from geometry.bench.member import Member
from geometry.bench.partitions import MOST_PARTITIONS
from geometry.design.parameter import Parameter, choice
from geometry.design.spec import BenchSpec

MOST_OPENINGS = MOST_PARTITIONS + 1
EMPTY, SHELF, DRAWERS = "open", "shelf", "drawers"
FILLS = (EMPTY, SHELF, DRAWERS)


@dataclass(frozen=True, slots=True)
class Opening:
    """One opening in bench coordinates, mm; ``front`` and ``back`` are in front of y = 0.

    ``left`` and ``right`` name the parts at its sides.
    """

    index: int
    x_left: float
    x_right: float
    z_low: float
    z_high: float
    front: float
    back: float
    fill: str
    left: str
    right: str

    @property
    def width(self) -> float:
        return round(self.x_right - self.x_left, 9)  # equal openings come out equal

    @property
    def height(self) -> float:
        return round(self.z_high - self.z_low, 9)

    @property
    def depth(self) -> float:
        """From the fronts of the uprights to the inside face of the back."""
        return self.front - self.back

    @property
    def title(self) -> str:
        return f"opening {self.index}"


@lru_cache(maxsize=512)
def openings(spec: BenchSpec) -> tuple[Opening, ...]:
    """All openings from left to right; a case has one more than it has partitions."""
    c = case_numbers(spec)
    half = c.partition_thickness / 2.0
    faces = [c.inside_left, *(f for x in c.partitions for f in (x - half, x + half))]
    faces.append(c.inside_right)
    inner = [f"partition_{k}" for k in range(1, len(c.partitions) + 1)]
    ends = [
        f"end_panel_{end.side}" if end.mitred else f"partition_{end.side}"
        for end in (c.left, c.right)
    ]
    parts = [ends[0], *inner, ends[1]]
    return tuple(
        Opening(
            index=k,
            x_left=faces[2 * k - 2],
            x_right=faces[2 * k - 1],
            z_low=c.inside_low,
            z_high=c.inside_high,
            front=c.upright_front,
            back=c.rebate_width,
            fill=spec.word(fill_name(k)),
            left=parts[k - 1],
            right=parts[k],
        )
        for k in range(1, len(parts))
    )


def filled_with(spec: BenchSpec, fill: str) -> tuple[Opening, ...]:
    """The openings of a bench that hold this; none for a bench without a case."""
    if not has_case(spec):
        return ()
    return tuple(opening for opening in openings(spec) if opening.fill == fill)


def exists(spec: BenchSpec, k: int) -> bool:
    """Whether the case has a k-th opening."""
    return spec.count("partition_count") + 1 >= k


def fill_name(k: int) -> str:
    """The parameter that says what fills the k-th opening."""
    return f"opening_{k}_fill"


# What a rule about the widths of openings reads.
WIDTH_READS = (
    "length left_end right_end left_inset right_inset board_thickness partition_thickness "
    "partition_count "
    + " ".join(f"partition_{k}" for k in range(1, MOST_PARTITIONS + 1))
    + " "
    + " ".join(fill_name(k) for k in range(1, MOST_OPENINGS + 1))
)
# The same for their heights and their depths.
HEIGHT_READS = "case_height board_thickness"
DEPTH_READS = "depth reveal back_thickness back_let_in"


def _fill(k: int) -> Parameter:
    return choice(
        fill_name(k),
        f"Opening {k}",
        "Openings",
        EMPTY,
        FILLS,
        f"What is in opening {k}, counted from the left.",
        applies=lambda spec: exists(spec, k),
    )


PARAMETERS: tuple[Parameter, ...] = tuple(_fill(k) for k in range(1, MOST_OPENINGS + 1))


def _derived(spec: BenchSpec) -> tuple[Derived, ...]:
    return tuple(
        derived_length(
            f"opening_{opening.index}_width",
            f"Opening {opening.index} clear",
            "Openings",
            opening.width,
            "where the uprights and end panels beside it stand",
        )
        for opening in openings(spec)
    )


MEMBER = Member("openings", PARAMETERS, derived=_derived, present=has_case)
