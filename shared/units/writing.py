"""Numbers to text: lengths, angles, weights and forces the way a maker marks them.

Millimetres print with one decimal, a trailing .0 dropped, and sizes below 1 mm with two.  Inches
print as whole inches and a real fraction in lowest terms, feet never; what is too small for the
finest fraction, such as the fit of a joint, prints in thousandths.  Halves round away from zero,
as on a shop rule, and the rounding forgives the last bits of a computed number.
"""

from __future__ import annotations

import re
from math import floor, isfinite, log10

from shared.tolerances import PRINTED_EXACTLY
from shared.units.fractions import fraction_glyphs
from shared.units.quantities import UNITS, told_as, unit_beside
from shared.units.shown import MM_PER_INCH, Shown

MINUS = "−"
_MARK = re.compile(
    rf"\{{([-+]?[0-9]+(?:\.[0-9]*)?(?:[eE][-+]?[0-9]+)?)(?::([0-9]))? (mm|deg|{'|'.join(UNITS)})\}}"
)
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
    return format_quantity(kg, "kg", shown, 1)


def format_quantity(value: float, unit: str, shown: Shown, decimals: int) -> str:
    """A weight, force … with its unit, one of ``quantities.UNITS`` or any other, and at most so
    many decimals.

    >>> format_quantity(600.0, "N", Shown("in"), 0), format_quantity(12.25, "kg", Shown(), 1)
    ('135 lb', '12.3 kg')
    """
    assert isfinite(value), value
    return f"{_decimal(told_as(value, unit, shown), decimals)} {unit_beside(unit, shown)}"


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


def quantity_mark(value: float, unit: str, decimals: int = 0) -> str:
    """A weight, force … inside a sentence of the engine, to be rendered by ``in_units`` with at
    most so many decimals, in whichever unit: ``{37.5:0 N m}``.  One that is written out, such as
    ``{600 N}``, is rendered without any."""
    assert unit in UNITS, unit
    return f"{{{value:.10g}:{decimals} {unit}}}"


def decimals_of(value: float, figures: int) -> int:
    """How many decimals give so many figures; none for a large number.

    >>> decimals_of(0.0123, 3), decimals_of(1234.5, 3)
    (4, 0)
    """
    place = floor(log10(abs(value))) if value else 0
    return min(9, max(0, figures - 1 - place))


def amount_mark(value: float, unit: str) -> str:
    """The amount of a finding or a limit with its unit, to be rendered by ``in_units``.

    ``unit`` is mm, deg, mm³, count, one of ``quantities.UNITS``, or any that needs no change.

    >>> in_units(amount_mark(1112.0, "N"), Shown("in")), amount_mark(-83.25, "%")
    ('250 lb', '−83.25 %')
    """
    if unit == "mm":
        return length_mark(value)
    if unit == "deg":
        return angle_mark(value)
    if unit == "mm³":
        volume = value / 1000.0
        return quantity_mark(volume, "cm³", decimals_of(volume, 3))
    if unit in UNITS:
        return quantity_mark(value, unit, decimals_of(value, 4))
    if unit in ("count", ""):
        return f"{value:.6g}".replace("-", MINUS)
    return f"{value:.4g} {unit}".replace("-", MINUS)


def in_units(text: str, shown: Shown) -> str:
    """The sentence with each ``{12.7 mm}``, ``{15 deg}`` and ``{600 N}`` written as the maker
    reads it.

    >>> in_units("The cutter is {12.7 mm} wide, tilted {15 deg}, {2 kg}.", Shown("in"))
    'The cutter is ½ in wide, tilted 15°, 4 lb.'
    """
    return _MARK.sub(lambda found: _rendered(found, shown), text)


def _rendered(found: re.Match[str], shown: Shown) -> str:
    value = float(found[1])
    if not isfinite(value):
        return found[0]
    _, decimals, unit = found.groups()
    if unit == "deg":
        return format_angle(value)
    if unit == "mm":
        return format_length(value, shown, with_unit=True)
    return format_quantity(value, unit, shown, int(decimals or 0))


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
