"""When a bench tips, against moments worked by hand, and its centre of gravity against trimesh."""

from __future__ import annotations

import numpy as np
import pytest
import trimesh

from geometry.advice.standing import Footing, footing_of, seat_corners, tippings
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.solids.cutting import placed
from shared.materials import density_of


def test_moments_by_hand() -> None:
    """Feet 1000 x 300, 200 N in the middle, 600 N 60 mm outside the front: 200 x 150 = 30 N m
    against 600 x 0.06 = 36 N m tips; at 50 mm outside it stands, just."""
    bench = Footing(
        ((0.0, -300.0), (1000.0, -300.0), (1000.0, 0.0), (0.0, 0.0), (0.0, -300.0)),
        200.0,
        (500.0, -150.0),
    )
    front = next(one for one in tippings(bench, 600.0, (500.0, -360.0)) if one.side == "front")
    assert (front.load_in, front.reach) == pytest.approx((-60.0, 50.0))
    assert front.short == pytest.approx(10.0)
    edge = next(one for one in tippings(bench, 600.0, (500.0, -350.0)) if one.side == "front")
    assert edge.short == pytest.approx(0.0)
    assert {one.side for one in tippings(bench, 600.0, (0.0, 0.0))} == {
        "left",
        "right",
        "front",
        "back",
    }


@pytest.mark.parametrize("base", ["crossed stretchers", "plinth", "four legs"])
def test_weight_and_centre_by_another_library(base: str) -> None:
    bench = build(set_values(default_spec(), {"base": base}))
    found = footing_of(bench)
    assert found is not None
    mass, moment = 0.0, np.zeros(3)
    for part in bench.parts:
        solid = placed(part)
        mesh = trimesh.Trimesh(solid.vertices, solid.solid.triangles, process=False)
        one = mesh.volume * 1e-9 * density_of(part.material)
        mass += one
        moment += one * mesh.center_mass
    assert found.weight == pytest.approx(mass * 9.80665, rel=1e-9)
    assert found.centre == pytest.approx(tuple((moment / mass)[:2]), abs=1e-6)


def test_the_seats_corners_lie_inside_by_as_much_as_asked() -> None:
    bench = build(set_values(default_spec(), {"flare": 0, "chamfer": 0}))
    xs, ys = zip(*seat_corners(bench, 50.0), strict=True)
    assert (min(xs), max(xs), min(ys), max(ys)) == pytest.approx((50, 1150, -310, -50))
