"""Which pieces are cut alike, and what is left when the proud ends are trimmed."""

from __future__ import annotations

from dataclasses import replace

import pytest

from exporters.pieces import cut_alike, finished_size
from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.cuts.saw import SawCut
from geometry.cuts.trim import Trim
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
    "change",
    [
        {"material": "teak"},
        {"notes": ("mind the knot",)},
        {"allowance": 3.0},
        {"allowance_across": 3.0},
    ],
)
def test_any_difference_keeps_pieces_apart(leg: Part, change: dict[str, object]) -> None:
    other = replace(leg, name="other", **change)  # type: ignore[arg-type]
    assert cut_alike([leg, other]) == ((leg,), (other,))
    assert cut_alike([leg, replace(leg, name="other")])[0][1].name == "other"


def test_pieces_that_differ_by_rounding_alone_are_one(leg: Part) -> None:
    """As two legs do, one of which is reckoned from the other side of the bench."""
    cut = next(cut for cut in leg.shape.cuts if isinstance(cut, SawCut))
    x, y, z = cut.outward
    near = replace(cut, outward=(x, y, z + 1e-15))
    cuts = tuple(near if one is cut else one for one in leg.shape.cuts)
    other = replace(leg, name="other", shape=replace(leg.shape, cuts=cuts))
    assert other.shape != leg.shape
    assert cut_alike([leg, other]) == ((leg, other),)
    x, y, z = cut.point
    longer = replace(cut, point=(x + 0.05, y, z))
    cuts = tuple(longer if one is cut else one for one in leg.shape.cuts)
    other = replace(leg, name="other", shape=replace(leg.shape, cuts=cuts))
    assert cut_alike([leg, other]) == ((leg,), (other,))


def test_what_is_left_on_is_trimmed_off(stretcher: Part) -> None:
    """A blank of 900 x 80 with 3 left on at each end and 2 at each edge: 894 x 76."""
    assert finished_size(stretcher) == pytest.approx((900.0, 80.0, 38.0))
    trimmed = replace(
        stretcher,
        shape=replace(stretcher.shape, cuts=(Trim(3.0, 897.0, 2.0, 78.0),)),
        allowance=6.0,
        allowance_across=4.0,
    )
    assert finished_size(trimmed) == pytest.approx((894.0, 76.0, 38.0))


def test_proud_legs_and_stretchers_are_finished_flush() -> None:
    """3 left proud lengthens the blanks only: the finished sizes are those of a bench with none."""
    flush, proud = (
        {part.name: part for part in build(set_values(default_spec(), {"proud": mm})).parts}
        for mm in (0.0, 3.0)
    )
    for name, more in (("leg_back_left", 3.0), ("stretcher_back_left", 6.0)):
        assert finished_size(proud[name]) == pytest.approx(finished_size(flush[name]))
        longer = proud[name].shape.blank.length - flush[name].shape.blank.length
        assert longer == pytest.approx(more)
