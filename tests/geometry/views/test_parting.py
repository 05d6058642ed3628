"""Which way joined parts come apart, by hand and against their own solids."""

from __future__ import annotations

import pytest

from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.primitives.frame import dot, norm, scale
from geometry.solids.measure import shared_volume
from geometry.views.parting import holds_of, moved, way_apart, ways_out
from tests.random_benches import random_spec


@pytest.fixture(scope="module")
def bench():
    return build(default_spec())


def parts_of(bench):
    return {part.name: part for part in bench.parts}


def joint_of(bench, kind):
    return next(joint for joint in bench.joints if joint.kind == kind)


def test_a_housed_partition_leaves_straight_out_or_to_the_back(bench):
    """A stopped housing is open to the back and upward from the bottom board, and nowhere else."""
    joint = next(one for one in bench.joints if one.name.startswith("housing_bottom"))
    parts = parts_of(bench)
    found = list(ways_out((joint,), parts[joint.parts[1]], parts))
    assert found[0] == pytest.approx((0.0, 0.0, 1.0))
    assert found[1] == pytest.approx((0.0, 1.0, 0.0))
    assert len(found) == 2


def test_a_lap_lifts_out(bench):
    parts = parts_of(bench)
    assert way_apart(joint_of(bench, "angled lap"), parts) == pytest.approx((0.0, 0.0, 1.0))


def test_a_leg_leaves_its_tenon_down_its_own_length_or_outward(bench):
    joint, parts = joint_of(bench, "bridle joint"), parts_of(bench)
    leg, stretcher = parts[joint.parts[1]], parts[joint.parts[0]]
    found = list(ways_out((joint,), leg, parts))
    axes = (leg.frame.x_axis, stretcher.frame.x_axis)
    for way in found:
        assert max(abs(dot(way, axis)) for axis in axes) == pytest.approx(1.0, abs=0.02)


def test_the_part_that_stays_is_held_the_other_way_round(bench):
    joint = joint_of(bench, "rebate")
    first, second = joint.parts
    assert holds_of(joint, first).normals == tuple(
        scale(normal, -1.0) for normal in holds_of(joint, second).normals
    )


@pytest.mark.parametrize("seed", range(3))
def test_on_a_way_out_nothing_collides(seed):
    """Pulled 1, 5 and 60 mm along the first way that is found, the two share no volume."""
    bench = build(random_spec(seed))
    parts = parts_of(bench)
    free = 0
    for joint in bench.joints:
        first, second = (parts[name] for name in joint.parts)
        for way in ways_out((joint,), second, parts):
            assert norm(way) == pytest.approx(1.0)
            for distance in (1.0, 5.0, 60.0):
                aside = moved(second, scale(way, distance))
                assert shared_volume(first, aside) < 1.0, joint.name
            free += 1
            break
    assert free >= 0.9 * len(bench.joints)
