"""A spec is a value: equal when its numbers are, changed only into another one."""

from __future__ import annotations

import pytest

from geometry.design.spec import BenchSpec

SPEC = BenchSpec((("length", 1200.0), ("left_end", "open"), ("partition_count", 2.0)))


def test_values_by_kind() -> None:
    assert SPEC.number("length") == 1200.0
    assert SPEC.word("left_end") == "open"
    assert SPEC.count("partition_count") == 2
    assert dict(SPEC.values) == dict(SPEC.entries)
    with pytest.raises(AssertionError):
        SPEC.number("left_end")
    with pytest.raises(AssertionError):
        SPEC.word("length")


def test_a_change_makes_a_new_spec_in_the_same_order() -> None:
    changed = SPEC.changed({"left_end": "mitred"})
    assert changed != SPEC
    assert [name for name, _ in changed.entries] == [name for name, _ in SPEC.entries]
    assert changed.changed({"left_end": "open"}) == SPEC
    assert hash(changed.changed({"left_end": "open"})) == hash(SPEC)
    assert SPEC.changed({}) == SPEC


def test_unknown_names() -> None:
    with pytest.raises(KeyError):
        SPEC.value("height")
    with pytest.raises(KeyError, match="height"):
        SPEC.changed({"height": 1.0})
    with pytest.raises(TypeError):
        SPEC.values["length"] = 1.0  # type: ignore[index]
