"""What every bench has: a seat of some form on some base, a length, a depth and a height.

The base reads only what stands here; it does not know what it carries.
"""

from __future__ import annotations

from geometry.bench.derived import Derived, derived_length
from geometry.bench.member import Member
from geometry.design.parameter import Parameter, choice, length
from geometry.design.spec import BenchSpec

CASE = "case"
CROSSED = "crossed stretchers"
TRESTLES = "trestles"
FOUR_LEGS = "four legs"
PLINTH = "plinth"
PANEL_FEET = "panel feet"

SEATS = (CASE,)
BASES = (CROSSED, TRESTLES, FOUR_LEGS, PLINTH, PANEL_FEET)

PARAMETERS: tuple[Parameter, ...] = (
    choice(
        "seat",
        "Seat",
        "Bench",
        CASE,
        SEATS,
        "What is sat on.",
        applies=lambda _spec: len(SEATS) > 1,
    ),
    choice(
        "base",
        "Base",
        "Bench",
        CROSSED,
        BASES,
        "What it stands on.",
        applies=lambda _spec: len(BASES) > 1,
    ),
    length("length", "Length", "Bench", 1200, 300, 3600, "Length of the seat, end to end."),
    length(
        "depth",
        "Depth",
        "Bench",
        360,
        150,
        800,
        "Depth of the seat from the back edge; of a case, that of its bottom at the underside.",
    ),
    length(
        "base_height",
        "Base height",
        "Bench",
        150,
        60,
        700,
        "From the floor to the underside of what stands on the base.",
    ),
)


def seat_is(form: str, spec: BenchSpec) -> bool:
    """Whether the seat has this form."""
    return spec.value("seat") == form


def base_is(form: str, spec: BenchSpec) -> bool:
    """Whether the base has this form."""
    return spec.value("base") == form


def seat_height(spec: BenchSpec) -> float:
    """Height of what is sat on above the floor, in mm."""
    return spec.number("base_height") + spec.number("case_height")


def _derived(spec: BenchSpec) -> tuple[Derived, ...]:
    return (
        derived_length(
            "seat_height",
            "Seat height",
            "Bench",
            seat_height(spec),
            "base height + case height",
        ),
    )


MEMBER = Member("overall", PARAMETERS, derived=_derived)
