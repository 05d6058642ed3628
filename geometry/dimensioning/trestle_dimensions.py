"""Dimensions and handholds of the rail between two trestles."""

from __future__ import annotations

from geometry.bench.bench import Bench
from geometry.bench.trestles import RailNumbers, rail_numbers
from geometry.dimensioning.dimension import Dimension
from geometry.dimensioning.making import BELOW, LEVEL, UPRIGHT, WITHIN, Place, bound, follows
from geometry.dimensioning.pull import Handhold, Pull
from geometry.views.view import FRONT, PLAN


def trestle_dimensions(bench: Bench) -> tuple[Dimension, ...]:
    r = rail_numbers(bench.spec)
    low, high = r.level - r.height / 2.0, r.level + r.height / 2.0
    left, right = _ends(r)
    x = left + 0.3 * (right - left)
    near, far = r.middle - r.width / 2.0, r.middle + r.width / 2.0
    found = [
        follows(bench, "rail_between", Place(FRONT, (left, low), (right, low), LEVEL, BELOW, 2)),
        bound(bench, "rail_height", Place(FRONT, (x, high), (x, low), UPRIGHT, WITHIN, 1, -1.0)),
        bound(bench, "rail_width", Place(PLAN, (x, far), (x, near), UPRIGHT, WITHIN, 1, -1.0)),
    ]
    forward = bench.spec.number("rail_forward")
    if forward:
        x = left + 0.6 * (right - left)
        at = Place(PLAN, (x, r.middle + forward), (x, r.middle), UPRIGHT, WITHIN, 1, -1.0)
        found.append(bound(bench, "rail_forward", at))
    return tuple(found)


def trestle_handholds(bench: Bench) -> tuple[Handhold, ...]:
    """The rail's edges: its middle stays, so an edge moves half as far as the size grows."""
    r = rail_numbers(bench.spec)
    left, right = _ends(r)
    half_high, half_wide = r.height / 2.0, r.width / 2.0
    found = []
    for sign in (-1.0, 1.0):
        z, y = r.level + sign * half_high, r.middle + sign * half_wide
        taller, wider = Pull("rail_height", (0.0, sign), 2.0), Pull("rail_width", (0.0, sign), 2.0)
        found.append(Handhold(FRONT.name, (left, z), (right, z), taller))
        found.append(Handhold(PLAN.name, (left, y), (right, y), wider))
    moved = Pull("rail_forward", (0.0, -1.0))
    found.append(Handhold(PLAN.name, (left, r.middle), (right, r.middle), moved))
    return tuple(found)


def _ends(r: RailNumbers) -> tuple[float, float]:
    """X of the rail's shoulders."""
    return r.left + r.legs.thickness, r.right - r.legs.thickness
