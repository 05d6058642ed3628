"""Estimates of the top of a case under somebody sitting, and of shelves a year later.

Newtons, mm, MPa.  Method: a board over its widest opening as a simply supported beam as wide as the
case is deep, FPL-GTR-190 eq. 9-2 with table 9-1: deflection k_b W L³ / (E I) + k_s W L / (G A'),
with A' = 5/6 b h; a load in the middle has k_b = 1/48, k_s = 1/4, an even one 5/384 and 1/8.  E is
10 % above the handbook's figure, which holds the shear of its own test, and G = E / 16 (both from
memory).  Timber that carries for a year sags about as much again (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from geometry.bench.bench import Bench
from geometry.bench.case_numbers import case_numbers
from geometry.bench.openings import SHELF, filled_with, openings
from geometry.checks.check import Check
from geometry.checks.limits_of_loads import (
    AFTER_A_YEAR,
    MOST_OF_STRENGTH,
    SEAT_LOAD,
    SHELF_LOAD,
    VISIBLE_SAG,
)
from geometry.design.finding import Finding, Level
from shared.timber_stiffness import stiffness_of
from shared.units import length_mark

_SHEAR_FREE = 1.1
_E_OVER_G = 16.0


def middle_stress(load: float, span: float, width: float, thickness: float) -> float:
    """Bending stress in MPa under a load in the middle: (W L / 4) / (b h² / 6)."""
    return load * span / 4.0 / (width * thickness**2 / 6.0)


def even_sag(load: float, span: float, width: float, thickness: float, elasticity: float) -> float:
    """Sag in mm in the middle under a load spread evenly; ``elasticity`` as in the tables."""
    e = elasticity * _SHEAR_FREE
    inertia = width * thickness**3 / 12.0
    area = 5.0 / 6.0 * width * thickness
    bending = 5.0 / 384.0 * load * span**3 / (e * inertia)
    return bending + load * span / 8.0 / (e / _E_OVER_G * area)


def _seat(bench: Bench) -> Iterator[Finding]:
    c = case_numbers(bench.spec)
    bays = openings(bench.spec)
    if not bays:
        return
    widest = max(bays, key=lambda at: at.width)
    span, load = widest.width + c.partition_thickness, SEAT_LOAD.of(bench)
    timber = stiffness_of(bench.part("top").material)
    share = 100.0 * middle_stress(load, span, c.depth, c.thickness) / timber.rupture
    limit = MOST_OF_STRENGTH.of(bench)
    if share <= limit:
        return
    yield Finding(
        check="seat_strength",
        level=Level.THINK_AGAIN,
        message=(
            f"With {load:.0f} N in the middle of its widest opening, {length_mark(span)} from "
            f"support to support, the top is strained to about {share:.0f} % of its strength: an "
            "estimate."
        ),
        parts=("top",),
        place=((widest.x_left + widest.x_right) / 2.0, -c.depth / 2.0, c.top),
        amount=share,
        limit=limit,
        unit="%",
        estimate=True,
    )


def _shelves(bench: Bench) -> Iterator[Finding]:
    for at in filled_with(bench.spec, SHELF):
        part = bench.part(f"shelf_{at.index}")
        blank = part.shape.blank
        load = SHELF_LOAD.of(bench) * at.width / 1000.0
        if not part.solid_timber:
            continue  # the table of stiffness has timbers only
        elasticity = stiffness_of(part.material).elasticity
        first = even_sag(load, at.width, blank.width, blank.thickness, elasticity)
        sag = first * AFTER_A_YEAR.of(bench) / 100.0
        limit = VISIBLE_SAG.of(bench) * at.width / 1000.0
        if sag <= limit:
            continue
        yield Finding(
            check="shelf_sag",
            level=Level.THINK_AGAIN,
            message=(
                f"The shelf in {at.title} sags about {length_mark(round(sag, 1))} under books "
                f"after a year, and more than {length_mark(round(limit, 1))} is seen: an estimate."
            ),
            parts=(part.name,),
            place=((at.x_left + at.x_right) / 2.0, -at.front, at.z_low),
            amount=sag,
            limit=limit,
            estimate=True,
        )


CHECKS: tuple[Check, ...] = (
    Check(
        "seat_strength",
        "Top of a case under somebody sitting",
        "Reckons the bending of the top over its widest opening with a person in the middle, as a "
        "share of the timber's strength in the Wood Handbook. That strength is of clear, straight "
        "wood broken in minutes; knots, slanting grain and years take most of it. The load is that "
        "of the 2010 ADA Standards, 903.6; the share is common practice, no source. An estimate: "
        "local codes and a licensed engineer go before it.",
        _seat,
        ("case", "partitions"),
        limits=(SEAT_LOAD, MOST_OF_STRENGTH),
    ),
    Check(
        "shelf_sag",
        "Shelf sagging under books",
        "Reckons how far each shelf sags when it is full of books, a year on, when timber has "
        "crept about as far again. An eye sees a shelf that hangs by 1/32 inch in a foot. Load and "
        "limit are trade guidelines, the beam formula is the Wood Handbook's. Shelves of "
        "sheet are left out. An estimate.",
        _shelves,
        ("shelves",),
        limits=(SHELF_LOAD, AFTER_A_YEAR, VISIBLE_SAG),
    ),
)
