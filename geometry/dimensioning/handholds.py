"""All edges of the three views that can be dragged, and what each sets."""

from __future__ import annotations

from collections.abc import Callable

from geometry.bench.bench import Bench
from geometry.bench.members import has
from geometry.dimensioning.base_handholds import base_handholds
from geometry.dimensioning.case_handholds import back_handholds, case_handholds, partition_handholds
from geometry.dimensioning.corner_block_dimensions import corner_block_handholds
from geometry.dimensioning.edge_handholds import (
    chamfer_handholds,
    lipping_handholds,
    moulding_handholds,
)
from geometry.dimensioning.fixing_handholds import fixing_handholds
from geometry.dimensioning.foot_dimensions import foot_handholds
from geometry.dimensioning.four_leg_dimensions import apron_handholds, four_leg_handholds
from geometry.dimensioning.lid_dimensions import lid_handholds, lid_inside_handholds
from geometry.dimensioning.mitre_tenon_dimensions import mitre_tenon_handholds
from geometry.dimensioning.opening_dimensions import (
    drawer_front_handholds,
    drawer_handholds,
    shelf_handholds,
)
from geometry.dimensioning.overall_dimensions import overall_handholds
from geometry.dimensioning.panel_dimensions import panel_handholds
from geometry.dimensioning.panel_end_dimensions import (
    end_handholds,
    panel_lipping_handholds,
    rail_handholds,
)
from geometry.dimensioning.place_dimensions import place_handholds
from geometry.dimensioning.plinth_dimensions import plinth_handholds
from geometry.dimensioning.pull import Handhold
from geometry.dimensioning.rest_handholds import rest_handholds
from geometry.dimensioning.seat_dimensions import seat_handholds
from geometry.dimensioning.trestle_dimensions import trestle_handholds

# By member: what can be taken hold of.  Where two lie on one another the first is found.
_TAKEN_HOLD_OF: tuple[tuple[str, Callable[[Bench], tuple[Handhold, ...]]], ...] = (
    ("back rest", rest_handholds),
    ("lid", lid_handholds),
    ("feet", foot_handholds),
    ("shelves", shelf_handholds),
    ("drawers", drawer_handholds),
    ("mitre tenons", mitre_tenon_handholds),
    ("case", case_handholds),
    ("panel ends", end_handholds),
    ("seat rail", rail_handholds),
    ("seat board", seat_handholds),
    ("overall", overall_handholds),
    ("bridled legs", base_handholds),
    ("trestles", trestle_handholds),
    ("four legs", four_leg_handholds),
    ("aprons", apron_handholds),
    ("corner blocks", corner_block_handholds),
    ("panel feet", panel_handholds),
    ("plinth", plinth_handholds),
    ("base place", place_handholds),
    # What lies close beside an edge that says more is found where the two are seen apart.
    ("fixings", fixing_handholds),
    ("partitions", partition_handholds),
    ("back", back_handholds),
    ("drawers", drawer_front_handholds),
    ("lid", lid_inside_handholds),
    ("board lippings", lipping_handholds),
    ("panel lippings", panel_lipping_handholds),
    ("edges", chamfer_handholds),
    ("overall", moulding_handholds),
)


def handholds(bench: Bench) -> tuple[Handhold, ...]:
    """Every edge of a bench that can be dragged."""
    return tuple(
        one for member, found in _TAKEN_HOLD_OF if has(bench.spec, member) for one in found(bench)
    )
