"""Dimensions and handholds of the loose tenons in a case's mitres, in the plan."""

from __future__ import annotations

from geometry.bench.bench import Bench
from geometry.bench.case_numbers import LEFT, case_numbers
from geometry.bench.mitre_tenons import corners_of, mitre_tenons
from geometry.dimensioning.dimension import Dimension
from geometry.dimensioning.making import UPRIGHT, WITHIN, Place, bound
from geometry.dimensioning.pull import Handhold, Pull
from geometry.views.view import PLAN

_BESIDE = 1.6  # board thicknesses from the end to where the dimensions stand


def mitre_tenon_dimensions(bench: Bench) -> tuple[Dimension, ...]:
    """Where the tenons stand along the first mitre."""
    c, m = case_numbers(bench.spec), mitre_tenons(bench.spec)
    side = corners_of(c)[0][1]
    x = _BESIDE * c.thickness if side == LEFT else c.length - _BESIDE * c.thickness
    first = Place(PLAN, (x, 0.0), (x, -m.first), UPRIGHT, WITHIN, 1, -1.0)
    found = [bound(bench, "mitre_tenon_first", first)]
    if m.count > 1:
        ends = ((x, -m.first), (x, -m.first - m.spacing))
        found.append(
            bound(bench, "mitre_tenon_spacing", Place(PLAN, *ends, UPRIGHT, WITHIN, 1, -1.0))
        )
    return tuple(found)


def mitre_tenon_handholds(bench: Bench) -> tuple[Handhold, ...]:
    """The first tenon of each mitred end moves them all, the second their spacing."""
    c, m = case_numbers(bench.spec), mitre_tenons(bench.spec)
    found = []
    for side in dict.fromkeys(side for _, side in corners_of(c)):
        low, high = (0.0, c.thickness) if side == LEFT else (c.length - c.thickness, c.length)
        places = [("mitre_tenon_first", m.first)]
        if m.count > 1:
            places.append(("mitre_tenon_spacing", m.first + m.spacing))
        for name, y in places:
            found.append(Handhold(PLAN.name, (low, -y), (high, -y), Pull(name, (0.0, -1.0))))
    return tuple(found)
