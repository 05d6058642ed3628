"""A post that is pressed along its grain and bent at once.  N, mm, MPa.

Long columns by Euler, π² E I / (K L)²; shorter ones by the Forest Products Laboratory's parabola of
the fourth power, C (1 - 4/27 (C / S)²) with C the crushing strength and S Euler's stress, which
meets Euler at two thirds of C (FPL-GTR-190 chapter 9 and its forerunners, from memory).  Pressed
and bent: P / (A s) + M / (Z R (1 - P / P_E)), the bending grown by what the load does to the bent
post (the same chapter, from memory).
"""

from __future__ import annotations

import math

_MEETS = 2.0 / 3.0  # of the crushing strength, where the parabola meets Euler


def euler_load(elasticity: float, inertia: float, length: float) -> float:
    """N at which a slender column gives way sideways; ``length`` of one hinged at both ends.

    >>> round(euler_load(12000.0, 30.0**4 / 12.0, 1000.0))
    7994
    """
    return math.pi**2 * elasticity * inertia / length**2


def column_stress(crushing: float, euler_stress: float) -> float:
    """MPa that a column stands over its section.

    >>> column_stress(50.0, 10.0)
    10.0
    >>> round(column_stress(50.0, 100.0 / 3.0), 3)
    33.333
    """
    if euler_stress <= _MEETS * crushing:
        return euler_stress
    return crushing * (1.0 - 4.0 / 27.0 * (crushing / euler_stress) ** 2)


def pressed_and_bent(
    pressed: float, stands: float, bent: float, rupture: float, of_euler: float
) -> float:
    """% of strength: stresses in MPa, and the load as a share of Euler's; infinite from 1 on."""
    if of_euler >= 1.0:
        return math.inf
    return 100.0 * (pressed / stands + bent / (1.0 - of_euler) / rupture)
