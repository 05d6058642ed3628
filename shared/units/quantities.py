"""Weights, forces and the like: metric beside millimetres, pounds beside inches.

Inside the program they are metric numbers, each with one of the units of ``UNITS``.

Source of the conversions: the International Yard and Pound agreement of 1959 (pound, inch),
standard gravity for the force of a pound, and the definition of the degree Fahrenheit.
"""

from __future__ import annotations

from dataclasses import dataclass

from shared.seating import GRAVITY
from shared.units.shown import KG_PER_POUND, MM_PER_INCH, Shown

_FOOT = 12.0 * MM_PER_INCH / 1000.0  # m
_POUND_FORCE = KG_PER_POUND * GRAVITY  # N


@dataclass(frozen=True, slots=True)
class _Beside:
    """What stands beside inches: its name, how much of ours one of it is, and where its 0 lies."""

    unit: str
    one: float
    zero: float = 0.0


_BESIDE_INCHES: dict[str, _Beside] = {
    "kg": _Beside("lb", KG_PER_POUND),
    "N": _Beside("lb", _POUND_FORCE),
    "N m": _Beside("ft-lb", _POUND_FORCE * _FOOT),
    "kg/m³": _Beside("lb/ft³", KG_PER_POUND / _FOOT**3),
    "cm³": _Beside("in³", (MM_PER_INCH / 10.0) ** 3),
    "°C": _Beside("°F", 5.0 / 9.0, -160.0 / 9.0),
}
UNITS = tuple(sorted(_BESIDE_INCHES, key=len, reverse=True))
"""The metric units that are told otherwise beside inches, the longest name first."""


def unit_beside(unit: str, shown: Shown) -> str:
    """What a maker calls it: ``N`` is ``lb`` beside inches; any other unit stays what it is."""
    beside = _BESIDE_INCHES.get(unit) if shown.unit == "in" else None
    return beside.unit if beside else unit


def told_as(value: float, unit: str, shown: Shown) -> float:
    """The number in that unit.

    >>> round(told_as(1112.0, "N", Shown("in")), 1), told_as(1112.0, "N", Shown())
    (250.0, 1112.0)
    """
    beside = _BESIDE_INCHES.get(unit) if shown.unit == "in" else None
    return (value - beside.zero) / beside.one if beside else value


def read_as(number: float, written: str, unit: str, shown: Shown) -> float | None:
    """A number with the unit behind it, or none ('' is the shown one), in ``unit``; None if it
    has another unit.

    >>> read_as(1.0, "lb", "kg", Shown()), read_as(600.0, "n", "N", Shown("in"))
    (0.45359237, 600.0)
    """
    told = " ".join(written.split()).casefold() or unit_beside(unit, shown).casefold()
    beside = _BESIDE_INCHES.get(unit)
    if told in _ways_to_write(unit):
        return number
    if beside is None or told not in _ways_to_write(beside.unit):
        return None
    return number * beside.one + beside.zero


def _ways_to_write(unit: str) -> tuple[str, ...]:
    return (unit.casefold(), *_ALSO.get(unit, ()))


_ALSO = {
    "lb": ("lbs", "lbf", "pound", "pounds"),
    "ft-lb": ("ft lb", "lb ft", "lb-ft"),
    "N m": ("nm",),
    "lb/ft³": ("lb/ft3",),
    "kg/m³": ("kg/m3",),
    "%": ("percent",),
    "°C": ("c",),
    "°F": ("f",),
}
