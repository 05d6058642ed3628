"""Numbers to text: lengths, angles and weights the way a maker marks them.

Millimetres print with one decimal, a trailing .0 dropped, and sizes below 1 mm with two.  Inches
print as whole inches and a real fraction in lowest terms, feet never; what is too small for the
finest fraction, such as the fit of a joint, prints in thousandths.  Halves round away from zero,
as on a shop rule, and the rounding forgives the last bits of a computed number.
"""

from __future__ import annotations

import re
from math import floor, isfinite

from shared.tolerances import PRINTED_EXACTLY
from shared.units.fractions import fraction_glyphs
from shared.units.shown import KG_PER_POUND, MM_PER_INCH, Shown

MINUS = "−"
_MARK = re.compile(r"\{([-+]?[0-9]+(?:\.[0-9]*)?(?:[eE][-+]?[0-9]+)?) (mm|deg)\}")
_THOUSANDTHS = 1000
_FORGIVEN = 1e-6  # of one step: 12.2499999999 was meant as 12.25 and prints as 12.3


def format_length(mm: float, shown: Shown, *, with_unit: bool = False) -> str:
    """A length in the maker's unit; ``mm`` must be finite.

    >>> format_length(927.1, Shown("in"), with_unit=True), format_length(927.0, Shown())
    ('36 ½ in', '927')
    """
    assert isfinite(mm), mm
    text = _inches(mm, shown.denominator) if shown.unit == "in" else _millimetres(mm, shown)
    return f"{text} {shown.unit}" if with_unit else text


def format_angle(deg: float) -> str:
    """Degrees with at most two decimals.

    >>> format_angle(14.0362), format_angle(15)
    ('14.04°', '15°')
    """
    assert isfinite(deg), deg
    return _decimal(deg, 2) + "°"


def format_weight(kg: float, shown: Shown) -> str:
    """A weight with its unit: kilograms beside millimetres, pounds beside inches."""
    assert isfinite(kg), kg
    if shown.unit == "in":
        return _decimal(kg / KG_PER_POUND, 1) + " lb"
    return _decimal(kg, 1) + " kg"


def printed_error(mm: float, shown: Shown) -> float:
    """Printed size minus true size, in mm: what cutting to the printed number would add."""
    if shown.unit == "in":
        parts = _inch_parts(mm, shown.denominator)
        printed = _steps(mm * parts / MM_PER_INCH) * MM_PER_INCH / parts
    else:
        printed = _steps(mm * 10.0 ** _decimals(mm, shown)) / 10.0 ** _decimals(mm, shown)
    return printed - mm


def prints_exactly(mm: float, shown: Shown) -> bool:
    """Whether a maker can cut to the printed number: it is true within PRINTED_EXACTLY."""
    return abs(printed_error(mm, shown)) <= PRINTED_EXACTLY


def length_mark(mm: float) -> str:
    """A length inside a sentence of the engine, to be rendered by ``in_units``: ``{12.7 mm}``."""
    return f"{{{mm:.10g} mm}}"


def angle_mark(deg: float) -> str:
    """An angle inside a sentence of the engine, to be rendered by ``in_units``: ``{15 deg}``."""
    return f"{{{deg:.10g} deg}}"


def in_units(text: str, shown: Shown) -> str:
    """The sentence with each ``{12.7 mm}`` and ``{15 deg}`` written as the maker reads it.

    >>> in_units("The cutter is {12.7 mm} wide, tilted {15 deg}.", Shown("in"))
    'The cutter is ½ in wide, tilted 15°.'
    """
    return _MARK.sub(lambda found: _rendered(found, shown), text)


def _rendered(found: re.Match[str], shown: Shown) -> str:
    value = float(found[1])
    if not isfinite(value):
        return found[0]
    return format_angle(value) if found[2] == "deg" else format_length(value, shown, with_unit=True)


def _millimetres(mm: float, shown: Shown) -> str:
    return _decimal(mm, _decimals(mm, shown))


def _decimals(mm: float, shown: Shown) -> int:
    """A fit of 0.15 mm must not print as 0.2."""
    return max(2, shown.decimals) if abs(mm) < 1.0 else shown.decimals


def _inch_parts(mm: float, denominator: int) -> int:
    """A fit of 0.2 mm must not print as 0: parts of an inch that it is printed in."""
    return denominator if _steps(mm * denominator / MM_PER_INCH) else _THOUSANDTHS


def _inches(mm: float, denominator: int) -> str:
    if _inch_parts(mm, denominator) == _THOUSANDTHS:
        return _decimal(mm / MM_PER_INCH, 3)
    steps = _steps(mm * denominator / MM_PER_INCH)
    whole, over = divmod(abs(steps), denominator)
    sign = MINUS if steps < 0 else ""
    if not over:
        return f"{sign}{whole}"
    fraction = fraction_glyphs(over, denominator)
    return f"{sign}{whole} {fraction}" if whole else f"{sign}{fraction}"


def _decimal(value: float, decimals: int) -> str:
    steps = _steps(value * 10.0**decimals)
    whole, rest = divmod(abs(steps), 10**decimals)
    sign = MINUS if steps < 0 else ""
    digits = f"{rest:0{decimals}d}".rstrip("0") if decimals else ""
    return f"{sign}{whole}.{digits}" if digits else f"{sign}{whole}"


def _steps(value: float) -> int:
    """The nearest whole number, halves away from zero."""
    steps = floor(abs(value) + 0.5 + _FORGIVEN)
    return -steps if value < 0 else steps
