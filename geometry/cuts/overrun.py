"""How far a cutter runs past the wood, so that no skin of zero thickness is left behind."""

from __future__ import annotations

OVERRUN = 2.0  # mm beyond a face or edge; only ever in air


def past(value: float, low: float, high: float) -> float:
    """``value``, or a point in the air beyond it where it lies on the blank's own boundary."""
    if value <= low:
        return low - OVERRUN
    if value >= high:
        return high + OVERRUN
    return value
