"""Sizes that the maker leaves to be measured when the pieces stand together dry.

Nothing of the bench changes: a piece whose size is left carries a note that says so, and a check
asks whether an earlier step already needs that size.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache

from geometry.bench.aprons import has_aprons
from geometry.bench.case import has_case
from geometry.bench.case_numbers import case_numbers
from geometry.bench.crossed_base import has_crossed_base
from geometry.bench.drawers import has_drawers
from geometry.bench.member import Member
from geometry.bench.panel_ends_numbers import has_panel_ends
from geometry.bench.panel_feet import has_panel_feet
from geometry.bench.partitions import uprights
from geometry.bench.shelves import has_shelves
from geometry.bench.trestles import has_trestles
from geometry.design.parameter import Parameter, choice
from geometry.design.part import Part
from geometry.design.spec import BenchSpec

AS_DRAWN, AT_FIT = "as drawn", "at the dry fit"


@dataclass(frozen=True, slots=True)
class Size:
    """A size that can be left.  ``words`` is what it is called in a sentence, ``kinds`` the kinds
    of the pieces that it belongs to, ``there`` whether a bench has any."""

    name: str
    title: str
    words: str
    kinds: tuple[str, ...]
    there: Callable[[BenchSpec], bool]

    @property
    def parameter(self) -> str:
        return f"fit_{self.name}"


PARTITION_HEIGHT = Size(
    "partition_height",
    "Height of the partitions",
    "the height of the partitions",
    ("partition",),
    lambda spec: has_case(spec) and bool(uprights(case_numbers(spec))),
)
SHELF_LENGTH = Size(
    "shelf_length", "Length of the shelves", "the length of the shelves", ("shelf",), has_shelves
)
BACK_SIZE = Size("back_size", "Size of the back", "the size of the back", ("back",), has_case)
SHEET_THICKNESS = Size(
    "sheet_thickness",
    "Thickness of the back",
    "the thickness of the back",
    ("back",),
    has_case,
)
BOX_WIDTH = Size(
    "box_width",
    "Width of the drawer boxes",
    "the width of the drawer boxes",
    ("drawer box front", "drawer back", "drawer bottom"),
    has_drawers,
)
FRONT_SIZE = Size(
    "front_size",
    "Size of the drawer fronts",
    "the size of the drawer fronts",
    ("drawer front",),
    has_drawers,
)
STRETCHER_LENGTH = Size(
    "stretcher_length",
    "Length of the stretchers",
    "the length of the stretchers",
    ("stretcher",),
    has_crossed_base,
)
APRON_LENGTH = Size(
    "apron_length", "Length of the aprons", "the length of the aprons", ("apron",), has_aprons
)
RAIL_LENGTH = Size(
    "rail_length",
    "Length of the rail",
    "the length of the rail",
    ("rail",),
    lambda spec: has_trestles(spec) or has_panel_feet(spec) or has_panel_ends(spec),
)

SIZES: tuple[Size, ...] = (
    PARTITION_HEIGHT,
    SHELF_LENGTH,
    BACK_SIZE,
    SHEET_THICKNESS,
    BOX_WIDTH,
    FRONT_SIZE,
    STRETCHER_LENGTH,
    APRON_LENGTH,
    RAIL_LENGTH,
)


def _parameter(size: Size) -> Parameter:
    return choice(
        size.parameter,
        size.title,
        "Left to the dry fit",
        AS_DRAWN,
        (AS_DRAWN, AT_FIT),
        "Cut as it is drawn, or measured on the pieces that stand together dry.",
        applies=size.there,
    )


PARAMETERS: tuple[Parameter, ...] = tuple(_parameter(size) for size in SIZES)


@lru_cache(maxsize=64)
def left(spec: BenchSpec) -> tuple[Size, ...]:
    """The sizes of a bench that are left to the dry fit."""
    return tuple(
        size for size in SIZES if spec.value(size.parameter) == AT_FIT and size.there(spec)
    )


def _notes(spec: BenchSpec, part: Part) -> tuple[str, ...]:
    return tuple(
        f"{size.words} is measured at the dry fit, before it is cut"
        for size in left(spec)
        if part.kind in size.kinds
    )


MEMBER = Member(
    "left to the dry fit",
    PARAMETERS,
    notes=_notes,
    present=lambda spec: any(size.there(spec) for size in SIZES),
)
