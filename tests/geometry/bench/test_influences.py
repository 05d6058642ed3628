"""Which numbers a joint follows from, against what is known of each joint."""

from __future__ import annotations

import pytest

from geometry.bench.build import build
from geometry.bench.catalogue import PARAMETERS, default_spec, parameter
from geometry.bench.influences import influences
from geometry.bench.limits import limits, set_values
from tests.random_benches import random_spec


def test_a_housing_follows_from_its_own_numbers_first():
    found = influences(default_spec(), "housing_bottom_partition_1")
    assert found[0] == "housing_depth"
    assert {"housing_depth", "housing_fit", "partition_thickness", "cutter_diameter"} <= set(found)
    assert "splay" not in found
    assert "timber" not in found


def test_a_bridle_follows_from_the_base_and_not_from_the_case():
    found = influences(default_spec(), "bridle_back_left")
    assert "splay" in found
    assert "partition_thickness" not in found


def test_a_joint_that_is_not_there_is_a_key_error():
    with pytest.raises(KeyError):
        influences(default_spec(), "nothing")


@pytest.mark.parametrize("seed", range(2))
def test_what_is_named_does_change_the_joint_and_what_is_not_does_not(seed):
    """Outside trial: set each number through the front door to another value that can be built."""
    spec = random_spec(seed)
    joint = build(spec).joints[0]
    found = influences(spec, joint.name)
    for row in PARAMETERS:
        if not row.applies(spec) or row.unit not in ("mm", "deg"):
            continue
        now, allowed = spec.number(row.name), limits(spec, row.name)
        value = now + 0.1 if now + 0.1 <= allowed.maximum else now - 0.1
        if value < allowed.minimum:
            continue
        other = build(set_values(spec, {row.name: value}))
        same = next((j for j in other.joints if j.name == joint.name), None)
        if same is None:
            continue
        moved = (
            any(
                abs(a.value - b.value) > 1e-9
                for a, b in zip(joint.measures, same.measures, strict=True)
            )
            or abs(joint.fit - same.fit) > 1e-9
        )
        if moved:
            # A change may reach a joint through another value that follows it.
            assert row.name in found or spec.changed({row.name: value}) != other.spec, row.name
        assert parameter(row.name) is row
