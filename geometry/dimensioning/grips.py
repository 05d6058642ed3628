"""All edges of the three views that can be dragged, and what each sets."""

from __future__ import annotations

from collections.abc import Callable

from geometry.bench.bench import Bench
from geometry.bench.members import has
from geometry.dimensioning.base_grips import base_grips
from geometry.dimensioning.case_grips import back_grips, case_grips, partition_grips
from geometry.dimensioning.corner_block_dimensions import corner_block_grips
from geometry.dimensioning.edge_grips import chamfer_grips, lipping_grips, moulding_grips
from geometry.dimensioning.fixing_grips import fixing_grips
from geometry.dimensioning.foot_dimensions import foot_grips
from geometry.dimensioning.four_leg_dimensions import apron_grips, four_leg_grips
from geometry.dimensioning.lid_dimensions import lid_grips, lid_inside_grips
from geometry.dimensioning.mitre_tenon_dimensions import mitre_tenon_grips
from geometry.dimensioning.opening_dimensions import (
    drawer_front_grips,
    drawer_grips,
    shelf_grips,
)
from geometry.dimensioning.overall_dimensions import overall_grips
from geometry.dimensioning.panel_dimensions import panel_grips
from geometry.dimensioning.panel_end_dimensions import end_grips, rail_grips
from geometry.dimensioning.place_dimensions import place_grips
from geometry.dimensioning.plinth_dimensions import plinth_grips
from geometry.dimensioning.pull import Grip
from geometry.dimensioning.rest_grips import rest_grips
from geometry.dimensioning.seat_dimensions import seat_grips
from geometry.dimensioning.trestle_dimensions import trestle_grips

# By member: what can be taken hold of.  Where two lie on one another the first is found.
_GRIPPED: tuple[tuple[str, Callable[[Bench], tuple[Grip, ...]]], ...] = (
    ("back rest", rest_grips),
    ("lid", lid_grips),
    ("feet", foot_grips),
    ("shelves", shelf_grips),
    ("drawers", drawer_grips),
    ("mitre tenons", mitre_tenon_grips),
    ("case", case_grips),
    ("panel ends", end_grips),
    ("seat rail", rail_grips),
    ("seat board", seat_grips),
    ("overall", overall_grips),
    ("bridled legs", base_grips),
    ("trestles", trestle_grips),
    ("four legs", four_leg_grips),
    ("aprons", apron_grips),
    ("corner blocks", corner_block_grips),
    ("panel feet", panel_grips),
    ("plinth", plinth_grips),
    ("base place", place_grips),
    # What lies close beside an edge that says more is found where the two are seen apart.
    ("fixings", fixing_grips),
    ("partitions", partition_grips),
    ("back", back_grips),
    ("drawers", drawer_front_grips),
    ("lid", lid_inside_grips),
    ("board lippings", lipping_grips),
    ("edges", chamfer_grips),
    ("overall", moulding_grips),
)


def grips(bench: Bench) -> tuple[Grip, ...]:
    """Every grip of a bench."""
    return tuple(
        one for member, found in _GRIPPED if has(bench.spec, member) for one in found(bench)
    )
