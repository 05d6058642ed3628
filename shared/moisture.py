"""How much water wood holds in a room.

Relative humidity in %, temperature in °C, moisture content in % of the oven-dry weight.

Equilibrium: FPL-GTR-190, Wood Handbook, equation 4-5 in its Celsius form (printed so in
FPL-RN-0268, Simpson 1998, as quoted).  It gives all but one misprinted cell of the handbook's table
within 0.06 %.  Newer work (GTR-229) warns that the data behind it scatter from one species to the
next.

How far a board moves as that changes is in ``shared.movement``.
"""

from __future__ import annotations

ROOM_TEMPERATURE = 20.0  # °C, where nothing else is said


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
