"""Which numbers can be dragged, over all samples and a few changes to them; why the rest are typed.

A new length or angle either gets a dimension or a handhold, or a line here that says why not.
"""

from __future__ import annotations

import re

from geometry.bench.build import build
from geometry.bench.catalogue import PARAMETERS
from geometry.design.spec import BenchSpec
from geometry.dimensioning.bench_dimensions import dimensions
from geometry.dimensioning.handholds import handholds
from tests.held import everything_held

# Families of numbers that are alike: partition_1, partition_2 ... are one name here.
_FAMILIES = (
    (r"^partition_\d+$", "partition_n"),
    (r"^opening_\d+_", "opening_n_"),
    (r"^cut_.*$", "as cut"),
    (r"^sawn_.*$", "as cut"),
)

AS_MADE = "measured on the piece that was made, and typed"
IN_A_JOINT = "inside a joint: shown and set in the joint's detail"
CLEARANCE = "a clearance of tenths of a millimetre, which no view shows"
BOUGHT = "read off the sheet of a bought piece"
IN_A_DRAWER = "inside the drawer, behind its front: shown on the drawer's own sheets"
IN_THE_CARVING = "the carving is shaped in a view of its own"
BEFORE_FITTING = "wood that is planed or sawn away before the bench is as it is drawn"
FOR_THE_SHOP = "about the boards that are to be had, which no view of the bench shows"
IN_A_BLOCK = "about a screw inside its block: shown in the joint's detail"

NOT_DRAGGED: dict[str, tuple[str, ...]] = {
    AS_MADE: ("as cut",),
    CLEARANCE: (
        "tail_fit",
        "seat_rail_fit",
        "housing_fit",
        "back_fit",
        "drawer_bottom_fit",
        "drawer_joint_fit",
        "box_fit",
        "box_bottom_fit",
        "rest_fit",
        "mitre_tenon_fit",
        "glue_tenon_fit",
        "bridle_fit",
        "lap_fit",
        "rail_fit",
        "apron_fit",
        "leg_tenon_fit",
        "panel_fit",
        "corner_block_gap",
    ),
    IN_A_JOINT: (
        "tail_pin",
        "tail_half_pin",
        "tail_lap",
        "seat_rail_tenon",
        "seat_rail_shoulder",
        "seat_rail_wedge",
        "seat_rail_in",
        "housing_depth",
        "cutter_diameter",
        "housing_cover",
        "shelf_housing_depth",
        "rebate_depth",
        "box_pin",
        "box_half_pin",
        "box_tongue_thickness",
        "box_tongue_length",
        "box_rebate",
        "post_tenon_depth",
        "post_tenon",
        "post_shoulder",
        "post_wedge",
        "rest_tenon",
        "rest_tenon_length",
        "rest_shoulder",
        "slat_tenon_length",
        "slat_shoulder",
        "mitre_tenon_in",
        "mitre_tenon_width",
        "mitre_tenon_thickness",
        "mitre_tenon_board",
        "mitre_tenon_panel",
        "glue_tenon_in",
        "glue_tenon_spacing",
        "glue_tenon_width",
        "glue_tenon_thickness",
        "glue_tenon_depth",
        "tenon_thickness",
        "rail_tenon_height",
        "rail_shoulder",
        "rail_wedge",
        "apron_tenon",
        "apron_tenon_length",
        "apron_shoulder",
        "leg_tenon",
        "leg_wedge",
        "panel_tenon_thickness",
        "panel_shoulder",
        "panel_wedge",
        "foot_insert",
        "foot_insert_depth",
        "fixing_bite",
        "fixing_land",
        "fixing_block",
        "button_land",
        "button_tongue",
        "button_engaged",
        "button_width",
        "button_body",
    ),
    IN_A_BLOCK: ("corner_block_land", "corner_block_bite"),
    IN_A_DRAWER: (
        "drawer_side_thickness",
        "drawer_end_thickness",
        "drawer_bottom_thickness",
        "drawer_groove_depth",
        "drawer_bottom_up",
        "tongue_thickness",
        "tongue_length",
        "corner_width",
        "pin_width",
        "half_pin_width",
        "blind_lap",
    ),
    BOUGHT: (
        "runner_side",
        "runner_thickest_side",
        "runner_below",
        "runner_above",
        "runner_behind",
        "runner_recess",
        "runner_notch_width",
        "runner_notch_height",
        "runner_bore_diameter",
        "runner_bore_depth",
        "runner_bore_in",
        "runner_bore_up",
        "runner_strip_width",
        "runner_shortest",
        "runner_longest",
        "runner_step",
        "hinge_length",
        "hinge_leaf",
        "hinge_closed",
        "stay_reach",
    ),
    IN_THE_CARVING: ("carving_depth", "carving_least", "finger_radius", "finger_land"),
    BEFORE_FITTING: ("drawer_allowance", "proud"),
    FOR_THE_SHOP: ("glue_up_width",),
}


def _family(name: str) -> str:
    for pattern, family in _FAMILIES:
        name = re.sub(pattern, family, name)
    return name


def _dragged(spec: BenchSpec) -> set[str]:
    bench = build(spec)
    pulls = [one.pull for one in dimensions(bench) if one.pull is not None]
    pulls += [one.pull for one in handholds(bench)]
    return {_family(pull.parameter) for pull in pulls}


def test_every_number_is_dragged_or_says_why_it_is_typed() -> None:
    reached = set().union(*(_dragged(spec) for spec in everything_held()))
    numbers = {_family(row.name) for row in PARAMETERS if row.unit in ("mm", "deg")}
    typed = [name for names in NOT_DRAGGED.values() for name in names]
    assert len(typed) == len(set(typed))
    assert reached & set(typed) == set()
    assert numbers - reached - set(typed) == set()
    assert set(typed) <= numbers
