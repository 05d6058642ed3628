"""Benches that the reference checks measure: some by hand, each differing from the default where it
says so, and some by dice."""

from __future__ import annotations

from collections.abc import Mapping

from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.design.parameter import Value
from tests.random_benches import random_spec

PLAIN: dict[str, Value] = {"flare": 0, "left_end": "open", "right_end": "open", "chamfer": 0}

KITE: dict[str, Value] = {
    "length": 1500,
    "depth": 420,
    "inset_left": 30,
    "inset_right": 210,
    "inset_back_left": 90,
    "inset_back_right": 20,
    "inset_front_left": -40,
    "inset_front_right": 75,
    "splay": 11.5,
    "base_thickness": 34,
    "leg_top_width": 64,
    "leg_foot_width": 38,
}

OUTSIDE_TAPER: dict[str, Value] = {
    **KITE,
    "taper_side": "outside",
    "base_height": 240,
    "stretcher_height": 88,
    "taper_start": 30,
    "proud": 3,
}

DEEP_RIGHT: dict[str, Value] = {
    "deep_end": "right",
    "left_end": "open",
    "right_end": "mitred",
    "flare": 110,
    "flare_straight": 180,
    "flare_end": 950,
    "case_height": 260,
    "board_thickness": 24,
}

BOTH_MITRED: dict[str, Value] = {
    "right_end": "mitred",
    "flare": 90,
    "flare_end": 1200,
    "chamfer": 0,
    "back_let_in": 4,
    "rebate_depth": 8,
}

TWO_FLARES: dict[str, Value] = {
    "deep_end": "both",
    "right_end": "mitred",
    "partition_count": 3,
    "partition_1": 200,
    "partition_2": 705,
    "partition_3": 960,
}

UPRIGHT_LEGS: dict[str, Value] = {"splay": 0, "leg_foot_width": 40}


# Fixings, feet and tenons cut faces of their own, which have checks of their own.
BARE: dict[str, Value] = {
    "fixing": "not shown",
    "foot": "none",
    "mitre_hold": "glue alone",
    "back_rest": "none",
    "edge_form": "chamfer",
    "edge_stop": 0.0,
    **dict.fromkeys(
        (
            "box_edge",
            "drawer_edge",
            "end_edge",
            "foot_edge",
            "leg_edge",
            "lid_edge",
            "partition_edge",
            "plinth_edge",
            "rail_edge",
            "rest_edge",
            "seat_edge",
            "shelf_edge",
        ),
        "sharp",
    ),
    "shelf_made_of": "timber",
    "partition_made_of": "timber",
    "top_made_of": "timber",
    "bottom_made_of": "timber",
    "ends_made_of": "timber",
}


def _random_crossed(seed: int) -> Mapping[str, Value]:
    """All values of a random case on crossed stretchers, without what is added to its pieces."""
    spec = random_spec(seed, kept=frozenset(("seat", "base")))
    return {**spec.values, **BARE}


ALL: dict[str, dict[str, Value]] = {
    "default": {},
    "plain": PLAIN,
    "kite": KITE,
    "outside taper": OUTSIDE_TAPER,
    "deep right": DEEP_RIGHT,
    "both mitred": BOTH_MITRED,
    "two flares": TWO_FLARES,
    "upright legs": UPRIGHT_LEGS,
}


RANDOM = 6  # seeds of random benches that are measured too

ALL.update({f"random {seed}": dict(_random_crossed(seed)) for seed in range(RANDOM)})


def bench_with(changes: Mapping[str, Value]) -> Bench:
    """The default bench with these values instead."""
    return build(set_values(default_spec(), changes))


def tenon_thickness(value: Mapping[str, Value]) -> float:
    """By default one third of the thickness: common practice, no source."""
    name = "base_thickness" if value["tenon_rule"] == "third" else "tenon_thickness"
    size = value[name]
    assert not isinstance(size, str)
    return size / 3.0 if value["tenon_rule"] == "third" else size
