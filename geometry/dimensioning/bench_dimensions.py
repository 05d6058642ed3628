"""The dimensions of a whole bench: those a maker sets, and the derived ones worth reading.

Coordinates are those of the views, in mm: front (X, Z), plan (X, Y), end (Y or -Y, Z).
"""

from __future__ import annotations

from collections.abc import Callable

from geometry.bench.bench import Bench
from geometry.bench.members import has
from geometry.dimensioning.base_dimensions import base_dimensions, crossing_dimensions
from geometry.dimensioning.case_dimensions import case_dimensions
from geometry.dimensioning.corner_block_dimensions import corner_block_dimensions
from geometry.dimensioning.dimension import Dimension
from geometry.dimensioning.foot_dimensions import foot_dimensions
from geometry.dimensioning.four_leg_dimensions import apron_dimensions, four_leg_dimensions
from geometry.dimensioning.lid_dimensions import lid_dimensions
from geometry.dimensioning.mitre_tenon_dimensions import mitre_tenon_dimensions
from geometry.dimensioning.opening_dimensions import (
    drawer_dimensions,
    opening_dimensions,
    shelf_dimensions,
)
from geometry.dimensioning.overall_dimensions import overall_dimensions
from geometry.dimensioning.panel_dimensions import panel_dimensions
from geometry.dimensioning.panel_end_dimensions import end_dimensions, rail_dimensions
from geometry.dimensioning.place_dimensions import place_dimensions
from geometry.dimensioning.plinth_dimensions import plinth_dimensions
from geometry.dimensioning.rest_dimensions import rest_dimensions
from geometry.dimensioning.seat_dimensions import seat_dimensions
from geometry.dimensioning.trestle_dimensions import trestle_dimensions

# By member: what is dimensioned.
_DIMENSIONED: tuple[tuple[str, Callable[[Bench], tuple[Dimension, ...]]], ...] = (
    ("overall", overall_dimensions),
    ("case", case_dimensions),
    ("seat board", seat_dimensions),
    ("mitre tenons", mitre_tenon_dimensions),
    ("panel ends", end_dimensions),
    ("seat rail", rail_dimensions),
    ("openings", opening_dimensions),
    ("shelves", shelf_dimensions),
    ("drawers", drawer_dimensions),
    ("lid", lid_dimensions),
    ("back rest", rest_dimensions),
    ("base place", place_dimensions),
    ("bridled legs", base_dimensions),
    ("crossed base", crossing_dimensions),
    ("trestles", trestle_dimensions),
    ("four legs", four_leg_dimensions),
    ("aprons", apron_dimensions),
    ("corner blocks", corner_block_dimensions),
    ("plinth", plinth_dimensions),
    ("panel feet", panel_dimensions),
    ("feet", foot_dimensions),
)


def dimensions(bench: Bench) -> tuple[Dimension, ...]:
    """All dimensions of the general arrangement."""
    return tuple(
        one for member, found in _DIMENSIONED if has(bench.spec, member) for one in found(bench)
    )
