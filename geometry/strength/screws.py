"""How hard screws are pulled, and what they stand before they come out of the wood.  N, mm.

In side grain a wood screw stands p = 15,700 G² D for each inch of its thread (lb, in; G the
specific gravity, D the diameter of the shank): FPL-GTR-190 chapter 8, from memory;
engineeringtoolbox.com, wood screws, quotes 2850 G² D as what may be used, which is 1 / 5.5 of it.
In end grain they stand three quarters of that (the same chapter, from memory).

A piece that is levered away turns about the lowest place at which it bears; as it is stiff against
its screws, each is pulled as much as it stands above that place: T = M d / Σ d².
"""

from __future__ import annotations

from collections.abc import Sequence

from shared.timber import density_from_gravity
from shared.timber_strength import PSI

_PULLED_OUT = 15_700.0 * PSI  # MPa: lb for each in² is psi
_IN_END_GRAIN = 0.75


def stands_pulled(density: float, shank: float, thread: float, *, end_grain: bool = False) -> float:
    """N that a screw stands; ``density`` in kg/m³ at 12 % moisture.

    >>> round(stands_pulled(1000.0 * 0.45 * 1.12, 4.826, 25.4))
    2687
    """
    gravity = density / density_from_gravity(1.0)
    share = _IN_END_GRAIN if end_grain else 1.0
    return _PULLED_OUT * gravity**2 * shank * thread * share


def pulls(moment: float, above: Sequence[float]) -> tuple[float, ...]:
    """N on each screw, by how far it stands above the place that the piece turns about.

    >>> pulls(3000.0, (10.0, 20.0, 20.0))
    (33.333333333333336, 66.66666666666667, 66.66666666666667)
    """
    square = sum(one * one for one in above)
    return tuple(moment * one / square for one in above)
