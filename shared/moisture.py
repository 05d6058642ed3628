"""How much water wood holds in a room, and how much a board moves when that changes.

Relative humidity in %, temperature in °C, moisture content in % of the oven-dry weight, lengths in
mm.

Equilibrium: FPL-GTR-190, Wood Handbook, equation 4-5 in its Celsius form (printed so in
FPL-RN-0268, Simpson 1998; READ2).  It gives all but one misprinted cell of the handbook's table
within 0.06 %.  Newer work (GTR-229) warns that the data behind it scatter from one species to the
next.

Movement: the same, equation 13-2: change = size × coefficient × change of moisture (READ), good
from 6 to 14 %.  The coefficient follows from the total shrinkage S, in %, and the fibre saturation
F: (S / F) / (1 − (F − 10) S / F / 100) for 1 % of moisture, on the size at 10 %.  So computed, 57
of the 58 coefficients of table 13-5 that were compared come out to the last digit, and one is off
by 1 in it.
"""

from __future__ import annotations

from shared.timber import TIMBERS, Timber

ROOM_TEMPERATURE = 20.0  # °C, where nothing else is said
LEAST_HUMIDITY, MOST_HUMIDITY = 5.0, 95.0  # %, the range of the handbook's table
VALID_MOISTURE = (6.0, 14.0)  # %, the range of equation 13-2

FIBRE_SATURATION = 30.0  # %
# Timbers whose coefficients in table 13-5 only come out with a lower saturation: worked back from
# the table, not said in it.
_LOW_SATURATION = 22.0
_LOW = frozenset({"western red cedar", "coast redwood", "mahogany", "teak"})


def equilibrium_moisture(humidity: float, temperature: float = ROOM_TEMPERATURE) -> float:
    """Moisture content in % that wood comes to; ``humidity`` from 0 to below 100.

    >>> round(equilibrium_moisture(50.0, 20.0), 2)
    9.27
    """
    t, h = temperature, humidity / 100.0
    w = 349.0 + 1.29 * t + 0.0135 * t * t
    k = 0.805 + 0.000736 * t - 0.00000273 * t * t
    k1 = 6.27 - 0.00938 * t - 0.000303 * t * t
    k2 = 1.91 + 0.0407 * t - 0.000293 * t * t
    kh = k * h
    strong = k1 * kh + 2.0 * k1 * k2 * kh * kh
    return 1800.0 / w * (kh / (1.0 - kh) + strong / (1.0 + k1 * kh + k1 * k2 * kh * kh))


def change_coefficient(shrinkage: float, saturation: float = FIBRE_SATURATION) -> float:
    """Change of size for each % of moisture, as a share of the size at 10 %.

    >>> round(change_coefficient(10.5), 5)  # white oak, tangential
    0.00376
    """
    per_percent = shrinkage / 100.0 / saturation
    return per_percent / (1.0 - (saturation - 10.0) * per_percent)


def coefficients(timber: Timber) -> tuple[float, float]:
    """Radial and tangential coefficient of a timber."""
    saturation = _LOW_SATURATION if timber.name in _LOW else FIBRE_SATURATION
    return (
        change_coefficient(timber.radial, saturation),
        change_coefficient(timber.tangential, saturation),
    )


def movement(size: float, coefficient: float, before: float, after: float) -> float:
    """Change of a size across the grain from one moisture content to another; a gain is positive.

    >>> round(movement(232.0, 0.00245, 8.0, 11.0), 3)
    1.705
    """
    return size * coefficient * (after - before)


def across_grain(size: float, timber_name: str, before: float, after: float) -> float:
    """The most that a board of a timber moves across the grain: sawn on the flat, tangential."""
    return movement(size, coefficients(TIMBERS[timber_name])[1], before, after)
