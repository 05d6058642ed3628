"""Which pieces are cut alike, and what is left when the proud ends are trimmed."""

from __future__ import annotations

from dataclasses import replace

import pytest

from exporters.pieces import cut_alike, finished_size
from geometry.bench.bench import Bench
from geometry.design.part import Part


def test_four_equal_legs_are_one_shape(bench: Bench) -> None:
    groups = cut_alike(bench.parts)
    legs = next(group for group in groups if group[0].kind == "leg")
    assert [part.name for part in legs] == [
        "leg_back_left",
        "leg_back_right",
        "leg_front_left",
        "leg_front_right",
    ]
    assert sum(len(group) for group in groups) == len(bench.parts)


@pytest.mark.parametrize(
    "change", [{"material": "teak"}, {"notes": ("mind the knot",)}, {"allowance": 3.0}]
)
def test_any_difference_keeps_pieces_apart(leg: Part, change: dict[str, object]) -> None:
    other = replace(leg, name="other", **change)  # type: ignore[arg-type]
    assert cut_alike([leg, other]) == ((leg,), (other,))
    assert cut_alike([leg, replace(leg, name="other")])[0][1].name == "other"


def test_what_is_left_proud_is_trimmed_off(stretcher: Part) -> None:
    assert finished_size(stretcher) == pytest.approx((900.0, 80.0, 38.0))
    assert finished_size(replace(stretcher, allowance=6.0)) == pytest.approx((894.0, 80.0, 38.0))
