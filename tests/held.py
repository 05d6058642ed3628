"""Benches that show between them all there is to take hold of: the samples, and what none has."""

from __future__ import annotations

from geometry.bench.limits import set_values
from geometry.design.parameter import Value
from geometry.design.spec import BenchSpec
from tests.samples import NAMES, sample

_CHANGED: tuple[tuple[str, dict[str, Value]], ...] = (
    ("lock_keepers", {"lid_made_of": "sheet"}),
    ("lock_keepers", {"lid_grip": "notch in the front"}),
    ("lock_keepers", {"back_rest": "none", "lid_hung": "on the back"}),
    ("bakery_yard", {"left_joint": "housed", "right_joint": "housed"}),
    ("bowling_green", {"fixing_count": 2.0, "seat_edge": "round-over", "seat_edge_stop": 50.0}),
    ("weigh_house", {"partition_edge_stop": 30.0}),
    ("bowling_green", {"seat_edge": "cove", "seat_edge_where": "front and ends"}),
    ("boat_club", {"back_let_in": 5.0, "taper_side": "outside"}),
    ("ferry_waiting_room", {"taper_side": "outside"}),
    ("weigh_house", {"partition_made_of": "sheet", "top_made_of": "sheet"}),
    ("apiary", {"leg_edge": "chamfer", "foot_edge": "chamfer"}),
    ("ferry_waiting_room", {"rail_edge": "chamfer", "rail_edge_where": "all that lie free"}),
    ("lock_keepers", {"plinth_edge": "chamfer", "rest_edge": "chamfer", "box_edge": "chamfer"}),
    ("lock_keepers", {"lid_edge": "round-over", "lid_edge_where": "front and ends"}),
    (
        "lock_keepers",
        {
            "lid_edge": "chamfer",
            "lid_edge_stop": 60.0,
            "plinth_edge": "cove",
            "plinth_edge_stop": 20.0,
        },
    ),
    ("weigh_house", {"edge_stop": 40.0, "shelf_edge": "cove", "shelf_edge_stop": 30.0}),
    ("sail_loft", {"drawer_edge": "chamfer"}),
    ("bell_tower", {"panel_made_of": "sheet", "end_edge": "round-over", "end_edge_stop": 60.0}),
)


HELD = (*((name, dict[str, Value]()) for name in NAMES), *_CHANGED)
"""The samples as they are, and some with a few words and numbers changed."""


def held(name: str, changes: dict[str, Value]) -> BenchSpec:
    """A bench of ``HELD``."""
    spec = sample(name).spec
    for parameter, value in changes.items():
        spec = set_values(spec, {parameter: value})
    return spec


def everything_held() -> tuple[BenchSpec, ...]:
    return tuple(held(*row) for row in HELD)
