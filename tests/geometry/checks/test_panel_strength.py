"""Panel feet under those who sit, by hand on the clock shop's sound bench made high and thin.

Its panels of black walnut, 340 wide from y = -365 to -25, stand under a case 410 deep; the middle
one of three bears most.
"""

from __future__ import annotations

import math

import numpy as np
import pytest

from geometry.bench.bench import Bench
from geometry.checks.offers import bench_with
from geometry.checks.strengthening import loads_on, own_weight
from geometry.design.finding import Level
from geometry.design.parameter import Value
from geometry.strength.panels import DENT, PAD, PRESSED, Stood, edge_pressure, panels_under
from shared.timber_stiffness import STIFFNESS
from shared.timber_strength import DENTED, STRENGTH
from tests.samples import of_check, plain

THIN, HIGH = 12.0, 620.0
OFF = 340.0 / 2.0 - 200.0 / 3.0
WALNUT, OF_WALNUT = STIFFNESS["black walnut"], STRENGTH["black walnut"]


def clock_shop(changes: dict[str, Value]) -> Bench:
    return plain("clock_shop", changes)


def stood(bench: Bench) -> dict[tuple[str, str], Stood]:
    found = panels_under(bench.spec, loads_on(bench), own_weight(bench))
    return {(one.parts[0].removeprefix("panel_foot_"), one.way): one for one in found}


def test_the_sound_bench_holds() -> None:
    assert not of_check(clock_shop({}), "panel_strength")
    assert not of_check(clock_shop({}), "panel_dents")


def test_thin_panels_under_a_high_seat() -> None:
    """12 mm under a seat so high: Euler's load of 2 x the height, by E of the handbook and a tenth;
    the load would act 115 in front of the panel's middle (the seat's edge at -410, 100 in), but
    presses over 200 at the least, so a third of that from the panel's edge: OFF."""
    bench = clock_shop({"panel_thickness": THIN, "base_height": HIGH})
    (found,) = of_check(bench, "panel_strength")
    force = stood(bench)["middle", PRESSED].force
    euler = math.pi**2 * 1.1 * WALNUT.elasticity * 340.0 * THIN**3 / 12.0 / (2.0 * HIGH) ** 2
    stands = euler / (340.0 * THIN)
    assert stands < 2.0 / 3.0 * OF_WALNUT.crushing, "slender: Euler's, not the parabola's"
    bent = force * OFF / (THIN * 340.0**2 / 6.0)
    share = force / (340.0 * THIN) / stands + bent / (1.0 - force / euler) / WALNUT.rupture
    assert found.amount == pytest.approx(100.0 * share, rel=1e-6)
    assert found.level is Level.THINK_AGAIN
    assert "panel_foot_middle" in found.parts
    assert found.estimate
    assert found.mend is not None
    mended = bench_with(bench, found.mend)
    assert mended is not None
    assert not of_check(mended, "panel_strength")


def test_what_a_panel_presses_on() -> None:
    """The middle panel, 32 thick, with pads of 58: all on one pad, and on a triangle of the upper
    end 200 long, as much as somebody bears on."""
    found = stood(clock_shop({}))
    force = found["middle", PRESSED].force
    on_pad = force / (58.0 * 32.0) / OF_WALNUT.crushing
    assert found["middle", PAD].share == pytest.approx(100.0 * on_pad)
    pressure = 2.0 * force / (32.0 * 200.0)
    dent = pressure / (DENTED * OF_WALNUT.denting)
    assert found["middle", DENT].share == pytest.approx(100.0 * dent)


@pytest.mark.parametrize("off", [0.0, 20.0, 56.0, 57.0, 100.0, 140.0])
def test_pressure_holds_the_load_where_it_is(off: float) -> None:
    """Summed over the width, pressure that runs evenly and never draws carries the load and has its
    middle where that is (a numerical balance of force and moment)."""
    thick, wide, force = 20.0, 340.0, 1600.0
    edge = edge_pressure(force, thick, wide, off)
    x = (np.arange(200_000) + 0.5) / 200_000 * wide
    reach = 3.0 * (wide / 2.0 - off)
    far = edge * (1.0 - wide / reach) if off > wide / 6.0 else 2.0 * force / (thick * wide) - edge
    pressure = np.maximum(0.0, edge + (far - edge) * x / wide)
    whole = pressure.mean() * wide * thick
    assert whole == pytest.approx(force, rel=1e-4)
    middle = float((pressure * x).sum() / pressure.sum())
    assert middle == pytest.approx(wide / 2.0 - off, abs=0.01)
