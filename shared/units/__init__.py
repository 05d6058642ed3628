"""Lengths, angles and weights as people write and read them.

Inside the program a length is a float in millimetres and an angle a float in degrees.  Text
becomes such a number as early as possible (``reading``) and text again as late as possible
(``writing``); a ``Shown`` says in which unit the maker wants to see sizes.
"""

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
    angle_mark,
    format_angle,
    format_length,
    format_weight,
    in_units,
    length_mark,
    printed_error,
    prints_exactly,
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
    "angle_mark",
    "format_angle",
    "format_length",
    "format_weight",
    "in_units",
    "length_mark",
    "printed_error",
    "prints_exactly",
    "read_angle",
    "read_count",
    "read_length",
]
