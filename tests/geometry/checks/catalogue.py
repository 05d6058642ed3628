"""The catalogue of what must be caught before the saw: each row with its checks and their proofs.

A proof is a test in this folder in which a sound bench is spoiled and the check catches it.  A row
that is not there yet, or not all of it, says so in ``lacking`` and is seen among the skipped tests.
"""

from __future__ import annotations

from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True)
class Row:
    """``proofs``: check -> ``file::test``, of the files ``test_….py`` in this folder, or in the
    one named before it."""

    number: int
    title: str
    proofs: dict[str, str] = field(default_factory=dict)
    lacking: str = ""


CATALOGUE: tuple[Row, ...] = (
    Row(
        1,
        "A housing that misses its partner",
        {
            "housings_meet": (
                "spoiled_as_cut::stops_marked_from_the_front_miss_where_the_top_is_deeper"
            ),
            "shelf_housings_meet": (
                "spoiled_as_cut::a_shelf_marked_from_lower_ends_that_lie_at_two_heights"
            ),
        },
    ),
    Row(
        2,
        "A mitre that cannot close",
        {"mitres_close": "spoiled_as_cut::a_third_angle_in_the_corner_gapes_along_the_joint"},
    ),
    Row(
        3,
        "A loose tenon, mortise or screw that another cut cuts into",
        {
            "cuts_near": (
                "spoiled_mortises::a_carving_over_a_mortise_is_measured_and_a_deeper_one_opens_it"
            ),
            "glue_up_mortises": "spoiled_tenons::a_deeper_housing_opens_them",
            "edge_bares_housing": (
                "spoiled_edges::an_edge_that_bares_a_housing_is_caught_and_mended"
            ),
            "insert_room": "spoiled_feet::an_insert_without_room_is_caught_and_mended",
            "screwed_faces": "spoiled_screwed::a_hollow_behind_a_whole_half_is_caught",
        },
    ),
    Row(
        4,
        "A router's rounded stop left showing",
        {
            "round_stop": "spoiled_benches::a_spoiled_bench_is_caught",
            "housing_front": "spoiled_benches::a_spoiled_bench_is_caught",
            "notch_clears_round": "spoiled_housed::a_notch_of_another_size_is_caught",
            "stop_covered": "spoiled_housed::a_housing_that_goes_too_far_shows",
        },
    ),
    Row(
        5,
        "A partition, shelf or drawer longer than its opening, or rattling in it",
        {
            "partition_length": "spoiled_housed::a_partition_of_another_length_is_measured",
            "housing_width": "spoiled_housed::a_housing_of_another_width_is_measured",
            "shelf_length": "spoiled_shelves::a_shelf_of_another_length_is_measured",
            "drawer_clearance": "spoiled_drawers::a_box_is_measured_where_its_opening_is_tightest",
            "front_tight": "spoiled_drawers::a_front_is_measured_where_its_opening_is_tightest",
        },
    ),
    Row(
        6,
        "Mortise wall, tenon, tongue, or what is left beside a cut, too thin",
        {
            "thin_tenon_of_rest": "spoiled_thin_wood::a_rests_thin_tenons_are_caught_and_mended",
            "thin_pin": "spoiled_thin_wood::a_half_pin_that_is_left_thin_is_caught",
            "thin_tongue": "spoiled_thin_wood::a_thin_tongue_is_caught",
            "thin_behind_cut": (
                "spoiled_thin_wood::a_groove_under_a_housing_leaves_little_between_them"
            ),
            "thin_mortise_walls": (
                "spoiled_mortises::a_stub_tenon_that_leaves_little_behind_it_is_caught_and_mended"
            ),
            "thin_walls": "spoiled_benches::a_spoiled_bench_is_caught",
            "deep_housing": "spoiled_benches::a_spoiled_bench_is_caught",
            "deep_rebate": "spoiled_benches::a_spoiled_bench_is_caught",
            "back_to_back": "spoiled_shelves::each_wall_between_two_housings_is_looked_at",
            "deep_shelf_housing": "spoiled_shelves::a_spoiled_shelf_is_caught_and_mended",
            "deep_bottom_groove": "spoiled_drawers::a_spoiled_drawer_is_caught_and_mended",
            "thin_rail_tenon": "spoiled_bases::a_spoiled_base_is_caught_and_mended",
            "tall_rail_mortise": "spoiled_bases::a_spoiled_base_is_caught_and_mended",
            "apron_wall": "spoiled_bases::a_spoiled_base_is_caught_and_mended",
            "apron_tenon_thin": "spoiled_bases::a_spoiled_base_is_caught_and_mended",
            "short_round_tenon": "spoiled_bases::a_spoiled_base_is_caught_and_mended",
            "deep_end_housing": "spoiled_seats::spoiled_seat",
            "short_stub_tenon": "spoiled_seats::spoiled_seat",
            "rest_thin_wall": "spoiled_rests::a_spoiled_rest_is_caught_and_mended",
        },
    ),
    Row(
        7,
        "Short grain at an angled or curved cut, or at a foot",
        {
            "short_grain": "spoiled_short_grain::posts_raked_too_far_are_caught_and_mended",
            "foot_short_grain": "spoiled_short_grain::a_foot_sawn_aslant_to_the_grain_is_caught",
            "short_beyond_cut": "spoiled_short_grain::little_above_a_mortise_is_caught_and_mended",
        },
    ),
    Row(
        8,
        "A front too thin for its finger groove or its carving; a groove too shallow",
        {
            "front_thin_for_carving": "spoiled_fronts::a_spoiled_front_is_caught_and_mended",
            "front_thin_at_groove": "spoiled_fronts::a_spoiled_front_is_caught_and_mended",
            "groove_too_shallow": "spoiled_fronts::a_spoiled_front_is_caught_and_mended",
        },
    ),
    Row(
        9,
        "A drawer that cannot open, cannot go in, hits the back, or overloads its runner; a lid",
        {
            "drawer_clearance": "spoiled_drawers::a_box_of_another_size_is_measured",
            "side_too_thick": "spoiled_drawers::a_spoiled_drawer_is_caught_and_mended",
            "bottom_too_low": "spoiled_drawers::a_spoiled_drawer_is_caught_and_mended",
            "front_binds": "spoiled_drawers::a_spoiled_drawer_is_caught_and_mended",
            "wide_on_wood": "spoiled_drawers::a_spoiled_drawer_is_caught_and_mended",
            "drawer_blocked": (
                "spoiled_drawer_motion::what_is_in_a_drawers_way_is_caught_and_measured"
            ),
            "drawer_hits": "spoiled_drawer_motion::what_is_in_a_drawers_way_is_caught_and_measured",
            "drawer_too_tall": (
                "spoiled_drawer_motion::what_is_in_a_drawers_way_is_caught_and_measured"
            ),
            "front_rubs": (
                "spoiled_drawer_motion::a_front_beside_a_flared_end_rubs_when_pulled_askew"
            ),
            "runner_overloaded": "spoiled_drawer_motion::a_full_drawer_overloads_a_weak_runner",
            "lid_blocked": "bench/lid_box::a_rail_over_the_lid_is_struck",
        },
    ),
    Row(
        10,
        "Cross-grain glue-ups and fixings, panels with no room to move",
        {
            "held_across": "spoiled_movement::ends_with_their_grain_level",
            "panel_no_room": "spoiled_movement::a_solid_back_without_room_is_given_it",
            "panel_drops_out": (
                "spoiled_movement::a_solid_back_with_its_grain_upright_cannot_be_held"
            ),
            "slot_short": "spoiled_movement::slots_for_another_air",
        },
    ),
    Row(
        11,
        "Grain running the wrong way",
        {
            "grain_corner": "spoiled_grain::ends_whose_grain_does_not_turn_the_corner",
            "grain_bears": "spoiled_grain::shelves_and_partitions_with_their_grain_across",
            "long_across": "spoiled_grain::a_seat_longer_across_its_grain",
        },
    ),
    Row(
        12,
        "A part larger than the boards or sheets there are; a strip too narrow",
        {
            "large_sheet": "spoiled_benches::a_spoiled_bench_is_caught",
            "long_board": "spoiled_stock::longer_than_the_boards",
            "wide_board": "spoiled_stock::wider_than_the_boards",
            "thick_board": "spoiled_stock::thicker_than_the_boards",
            "narrow_strip": "spoiled_stock::a_strip_too_narrow_to_saw",
            "wide_seat_board": "spoiled_seats::spoiled_seat",
            "sheet_thickness": (
                "spoiled_lippings::a_thickness_that_is_not_sold_is_caught_and_mended"
            ),
            "edge_through_lipping": "spoiled_lippings::an_edge_through_the_lipping",
        },
    ),
    Row(
        13,
        "Seat, shelf, stretcher, leg and joint under those who sit, and a year later",
        {
            "seat_bends": "strength::a_thin_seat_bends",
            "seat_strength": "strength::a_seat_that_breaks_is_not_to_be_cut",
            "shelf_sag": "strength::a_shelf_that_sags",
            "shelf_strength": "strength::a_shelf_that_is_overloaded",
            "leg_strength": "leg_strength::feet_too_thin",
            "leg_joint_strength": "leg_strength::a_tenon_that_dents",
            "bottom_strength": "base_strength::a_thin_bottom_between_trestle_and_partitions",
            "rail_strength": "base_strength::a_rail_that_is_stepped_on",
            "trestle_strength": "base_strength::a_trestle_that_its_rail_has_weakened",
            "rest_strength": "rest_strength::thin_posts_behind_a_seat",
            "panel_strength": "panel_strength::thin_panels_under_a_high_seat",
            "rest_screws": "rest_strength::posts_screwed_to_the_edge_of_a_slab",
        },
    ),
    Row(
        14,
        "Tipping forward, sideways and at an overhang, drawers open and shut; racking",
        {
            "tips_back": "spoiled_rests::a_bench_whose_feet_stand_in_tips",
            "tips_over": "tipping::an_overhang_at_an_end",
            "drawers_tip": "tipping::one_drawer_open_and_a_hand_on_it",
            "racks": "racking::low_aprons_under_high_legs_rack_and_are_mended",
        },
    ),
    Row(
        15,
        "Seat, edge, finger and knee room against the person; legs that trip",
        {
            "seat_height": "spoiled_briefs::caught_measured_and_mended",
            "seat_depth": "spoiled_briefs::caught_measured_and_mended",
            "room_for_all": "spoiled_briefs::caught_measured_and_mended",
            "hard_edge": "spoiled_briefs::caught_measured_and_mended",
            "heel_room": ("spoiled_ways::a_plinth_flush_in_front_leaves_no_room_for_heels"),
            "leg_outside": "spoiled_benches::a_spoiled_bench_is_caught",
            "foot_beyond": "spoiled_bases::a_spoiled_base_is_caught_and_mended",
            "lid_grip": "bench/lid_box::a_lid_that_falls_and_one_without_a_grip",
        },
    ),
    Row(
        16,
        "A bench that will not go through the door or up the stair",
        {
            "past_door": "spoiled_briefs::a_bench_that_does_not_go_through_the_door",
            "past_stair": "spoiled_briefs::a_bench_that_does_not_go_round_the_stair",
            "too_large_for_room": "spoiled_briefs::caught_measured_and_mended",
        },
    ),
    Row(
        17,
        "Assembly: can it be put together at all",
        {
            "assembly": "assembly::parts_that_lock_each_other_are_told_of",
            "clamping": "spoiled_glue_ups::legs_that_lean_too_far_for_a_caul_are_told_of",
            "open_time": "spoiled_glue_ups::too_many_slats_for_one_rail_are_counted",
        },
    ),
    Row(
        18,
        "A dimension left to the dry fit that an earlier step needs",
        {"dry_fit": "order_of_work::a_size_that_is_needed_before_the_fit_is_caught_and_mended"},
    ),
    Row(
        19,
        "Parts nearly but not quite the same; left and right of a pair",
        {
            "nearly_alike": (
                "spoiled_pairs::pieces_that_come_out_nearly_alike_are_caught_and_made_alike"
            ),
            "mirror_images": "spoiled_pairs::left_and_right_sides_of_drawers_are_told_of_once",
        },
    ),
    Row(20, "A cut with no machine in the shop that can make it", lacking="all of it"),
    Row(
        21,
        "Two numbers that disagree by a rounding",
        {"reading": "spoiled_readings::a_partition_half_a_sixteenth_aside_is_caught_and_mended"},
    ),
)

BESIDE: dict[str, str] = {
    "collision": "spoiled_benches::two_parts_in_one_place_are_never_cut",
    "housing_cutter": "spoiled_benches::a_spoiled_bench_is_caught",
    "shelf_cutter": "spoiled_shelves::a_spoiled_shelf_is_caught_and_mended",
    "end_cutter": "spoiled_seats::spoiled_seat",
    "box_shows": "spoiled_drawers::a_spoiled_drawer_is_caught_and_mended",
    "rest_lever": "spoiled_rests::a_spoiled_rest_is_caught_and_mended",
    "seat_tail_slope": "spoiled_seats::spoiled_seat",
    "lid_falls": "bench/lid_box::a_lid_that_falls_and_one_without_a_grip",
    "flat_lap": "spoiled_benches::a_spoiled_bench_is_caught",
    "steep_wedge": "spoiled_bases::a_spoiled_base_is_caught_and_mended",
    "fixing_lacking": "spoiled_fixings::fixings_without_a_place_are_counted",
    "button_slips": "spoiled_fixings::a_button_that_slips_out_is_caught_and_mended",
    "short_thread": "spoiled_fixings::a_short_thread_is_caught_and_mended",
    "corner_block_thread": "spoiled_corner_blocks::screws_in_little_wood_are_caught_and_mended",
    "corner_block_glue": ("spoiled_corner_blocks::ends_that_are_only_glued_are_caught_and_mended"),
    "corner_block_seat": "spoiled_corner_blocks::blocks_too_thin_for_the_seat_screw_are_told",
    "drawer_front_left_sharp": "spoiled_edges::a_drawer_front_too_low_for_its_edge_is_caught",
    "leg_left_sharp": "spoiled_edges::legs_without_room_for_their_edges_are_caught_and_mended",
    "arris_left_sharp": "spoiled_edges::a_rail_without_room_between_its_stops_is_caught_and_mended",
    "proud_bevel": "spoiled_benches::a_spoiled_bench_is_caught",
    "bevel_step": "spoiled_benches::a_spoiled_bench_is_caught",
}
"""Checks of what the catalogue does not ask for."""
