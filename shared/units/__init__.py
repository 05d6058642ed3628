"""Lengths, angles, weights and forces as people write and read them.

Inside the program a length is a float in millimetres and an angle a float in degrees.  Text
becomes such a number as early as possible (``reading``) and text again as late as possible
(``writing``); a ``Shown`` says in which unit the maker wants to see sizes.
"""

from shared.units.quantities import read_as, told_as, unit_beside
from shared.units.reading import LONGEST_MM, read_angle, read_count, read_length
from shared.units.shown import (
    DENOMINATORS,
    KG_PER_POUND,
    MM_PER_INCH,
    SHOWN_IN16,
    SHOWN_IN32,
    SHOWN_IN64,
    SHOWN_MM,
    Shown,
)
from shared.units.writing import (
    amount_mark,
    angle_mark,
    format_angle,
    format_length,
    format_quantity,
    format_weight,
    in_units,
    length_mark,
    printed_error,
    prints_exactly,
    quantity_mark,
)

__all__ = [
    "DENOMINATORS",
    "KG_PER_POUND",
    "LONGEST_MM",
    "MM_PER_INCH",
    "SHOWN_IN16",
    "SHOWN_IN32",
    "SHOWN_IN64",
    "SHOWN_MM",
    "Shown",
    "amount_mark",
    "angle_mark",
    "format_angle",
    "format_length",
    "format_quantity",
    "format_weight",
    "in_units",
    "length_mark",
    "printed_error",
    "prints_exactly",
    "quantity_mark",
    "read_angle",
    "read_as",
    "read_count",
    "read_length",
    "told_as",
    "unit_beside",
]
