"""A base moved off-centre moves as one piece, by exactly what its insets say.

Source: vectors.  With every left inset d more and every right one d less, each corner of each piece
of the base is carried by (d, 0, 0); with those at the back e more and those in front e less, by
(0, -e, 0).
"""

from __future__ import annotations

import numpy as np
import pytest

from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec, parameter
from geometry.bench.limits import set_values
from geometry.bench.overall import BASES, CROSSED
from geometry.solids.cutting import placed
from shared.errors import UnknownName

PLAIN = {"flare": 0.0, "length": 1500.0, "depth": 420.0, "partition_1": 750.0}
ALONG, ACROSS = 23.0, 9.0


def moved(bench: Bench, changes: dict[str, float]) -> Bench:
    """The bench with these added to its insets, where they mean something."""
    spec = bench.spec
    return build(
        set_values(
            spec,
            {
                name: spec.number(name) + more
                for name, more in changes.items()
                if parameter(name).applies(spec)
            },
        )
    )


def pieces(bench: Bench) -> dict[str, np.ndarray]:
    """The corners of the base's pieces, sorted."""
    floor = bench.spec.number("base_height")
    return {
        part.name: placed(part).vertices
        for part in bench.parts
        if float(placed(part).low[2]) < floor - 1.0
    }


@pytest.mark.parametrize("base", BASES)
def test_along_the_bench(base: str) -> None:
    bench = build(set_values(default_spec(), {**PLAIN, "base": base}))
    there = moved(bench, {"inset_left": ALONG, "inset_right": -ALONG})
    carried(bench, there, (ALONG, 0.0, 0.0))


@pytest.mark.parametrize("base", BASES)
def test_across_the_bench(base: str) -> None:
    bench = build(set_values(default_spec(), {**PLAIN, "base": base}))
    changes = {}
    for end in ("", "_left", "_right"):
        changes |= {f"inset_back{end}": ACROSS, f"inset_front{end}": -ACROSS}
    carried(bench, moved(bench, changes), (0.0, -ACROSS, 0.0))


def carried(bench: Bench, there: Bench, by: tuple[float, float, float]) -> None:
    before, after = pieces(bench), pieces(there)
    assert before
    assert before.keys() == after.keys()
    for name, corners in before.items():
        low, high = corners.min(axis=0), corners.max(axis=0)
        assert after[name].min(axis=0) == pytest.approx(low + by, abs=1e-6), name
        assert after[name].max(axis=0) == pytest.approx(high + by, abs=1e-6), name
        assert len(after[name]) == len(corners), name


def test_the_corners_of_crossed_stretchers_move_one_by_one() -> None:
    """Only the back left leg's inset changes: its foot moves, the front right one's inset holds."""
    bench = build(set_values(default_spec(), {**PLAIN, "base": CROSSED}))
    there = moved(bench, {"inset_back_left": 20.0})
    front = placed(bench.part("leg_front_left")).vertices
    assert placed(there.part("leg_front_left")).vertices.min() == pytest.approx(front.min())
    foot = placed(bench.part("leg_back_left")).high[1] - placed(there.part("leg_back_left")).high[1]
    assert foot > 5.0


def test_no_base_has_an_inset_of_another_name() -> None:
    for name in ("inset_left", "inset_right", "inset_back", "inset_front"):
        assert parameter(name)
    with pytest.raises(UnknownName):
        parameter("inset_middle")
