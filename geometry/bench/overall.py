"""What every bench has: a seat of some form on some base, a length, a depth and a height.

The base reads only what stands here; it does not know what it carries.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from geometry.bench.derived import Derived, derived_length
from geometry.bench.member import Member
from geometry.design.parameter import Parameter, choice, length
from geometry.design.spec import BenchSpec

CASE = "case"
SLAB = "slab"
PANEL_BENCH = "panel bench"
LID_BOX = "box with a lid"
CROSSED = "crossed stretchers"
TRESTLES = "trestles"
FOUR_LEGS = "four legs"
PLINTH = "plinth"
PANEL_FEET = "panel feet"


@dataclass(frozen=True, slots=True)
class Form:
    """A form of seat: ``rise`` is how high what is sat on lies above the base height, in mm, and
    ``follows_from`` says so in the maker's words.  One that is not ``on_base`` stands on its own.
    """

    rise: Callable[[BenchSpec], float]
    follows_from: str
    on_base: bool = True


FORMS: dict[str, Form] = {
    CASE: Form(lambda spec: spec.number("case_height"), "base height + case height"),
    SLAB: Form(lambda spec: spec.number("seat_thickness"), "base height + seat thickness"),
    PANEL_BENCH: Form(
        lambda spec: spec.number("seat_thickness"),
        "base height + seat thickness",
        on_base=False,
    ),
    LID_BOX: Form(lambda spec: spec.number("box_height"), "base height + box height"),
}

SEATS = tuple(FORMS)


@dataclass(frozen=True, slots=True)
class BaseForm:
    """A form of base: whether its place is told ``by_corner`` or by its edges, whether it stands on
    ``legs`` that lean, and which of its outsides are ``upright``: its ``ends``, its ``edges``.
    """

    by_corner: bool = False
    legs: bool = False
    upright: tuple[str, ...] = ()


ENDS, EDGES = "ends", "edges"
BASE_FORMS: dict[str, BaseForm] = {
    CROSSED: BaseForm(by_corner=True, legs=True),
    TRESTLES: BaseForm(by_corner=True, legs=True, upright=(ENDS,)),
    FOUR_LEGS: BaseForm(legs=True),
    PLINTH: BaseForm(upright=(ENDS, EDGES)),
    PANEL_FEET: BaseForm(upright=(ENDS, EDGES)),
}

BASES = tuple(BASE_FORMS)


def form_of(spec: BenchSpec) -> Form:
    """The form of the seat."""
    return FORMS[spec.word("seat")]


def base_form(spec: BenchSpec) -> BaseForm:
    """The form of the base that was chosen last, whether there is one or not."""
    return BASE_FORMS[spec.word("base")]


def stands_on_base(spec: BenchSpec) -> bool:
    """Whether there is a base under the seat; the base chosen last is kept meanwhile."""
    return form_of(spec).on_base


PARAMETERS: tuple[Parameter, ...] = (
    choice(
        "seat",
        "Seat",
        "Bench",
        CASE,
        SEATS,
        "What is sat on.",
    ),
    choice(
        "base",
        "Base",
        "Bench",
        CROSSED,
        BASES,
        "What it stands on.",
        applies=stands_on_base,
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
        "From the floor to the underside of what stands on the base, or of a panel bench's seat.",
    ),
)


def seat_is(form: str, spec: BenchSpec) -> bool:
    """Whether the seat has this form."""
    return spec.value("seat") == form


def base_is(form: str, spec: BenchSpec) -> bool:
    """Whether there is a base, of this form."""
    return spec.value("base") == form and stands_on_base(spec)


def seat_height(spec: BenchSpec) -> float:
    """Height of what is sat on above the floor, in mm."""
    return spec.number("base_height") + form_of(spec).rise(spec)


def _derived(spec: BenchSpec) -> tuple[Derived, ...]:
    return (
        derived_length(
            "seat_height",
            "Seat height",
            "Bench",
            seat_height(spec),
            form_of(spec).follows_from,
        ),
    )


MEMBER = Member("overall", PARAMETERS, derived=_derived)
