"""A spoiled bench for each check of a back rest; amounts worked by hand beside each."""

from __future__ import annotations

import math

import pytest
import trimesh

from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.checks.all_checks import findings
from geometry.design.finding import Finding, Level
from geometry.design.parameter import Value
from geometry.solids.cutting import placed
from shared.materials import density_of

# A slab of 45 mm on a plinth that reaches 60 mm farther back than the seat: it stands well.
SOUND: dict[str, Value] = {
    "seat": "slab",
    "seat_thickness": 45.0,
    "base": "plinth",
    "base_height": 380.0,
    "inset_back": -60.0,
    "back_rest": "slats",
    "post_fixing": "tenoned into the seat",
    "rest_set_back": 5.0,
}


def _bench(changes: dict[str, Value]) -> Bench:
    return build(set_values(default_spec(), SOUND | changes))


def _found(changes: dict[str, Value], check: str) -> list[Finding]:
    return [finding for finding in findings(_bench(changes)) if finding.check == check]


def test_a_sound_rest_raises_nothing() -> None:
    found = {finding.check for finding in findings(_bench({}))}
    assert not found & {"rest_lever", "rest_thin_wall", "tips_back", "collision"}


SPOILED: tuple[tuple[str, dict[str, Value], float, float], ...] = (
    # tenons 30 deep hold 12 x 30 = 360, and the rest is 420 high
    ("rest_lever", {"post_tenon_kind": "blind", "post_tenon_depth": 30.0}, 420.0, 360.0),
    # rails of 22 set back 0: (22 - 12 - 0.2) / 2 = 4.9 in front of the mortise
    ("rest_thin_wall", {"rest_set_back": 0.0, "rest_tenon": 12.0}, 4.9, 6.0),
    # behind it: 35 - 14 - 22 + (22 - 12 - 0.2) / 2 = 3.9 is too little to build; 12.5 gives 5.4
    ("rest_thin_wall", {"rest_set_back": 12.5, "rest_tenon": 12.0}, 5.4, 6.0),
)


@pytest.mark.parametrize(("check", "changes", "amount", "limit"), SPOILED)
def test_a_spoiled_rest_is_caught_and_mended(
    check: str, changes: dict[str, Value], amount: float, limit: float
) -> None:
    found = _found(changes, check)
    assert [(one.level, one.amount, one.limit) for one in found] == [
        (Level.THINK_AGAIN, pytest.approx(amount, abs=1e-9), pytest.approx(limit, abs=1e-9))
    ]
    assert set(found[0].parts) == {"post_1", "post_2"}
    mend = found[0].mend
    assert mend is not None
    assert not _found(changes | dict(mend.values), check)


def test_steep_wedges_of_posts_are_caught_and_mended() -> None:
    """A seat of 24: slots of 18 / cos 12, so 4 to 18.40, 1 in 4.6; a fifth of 18.40 is 3.68, in
    half millimetres 3.5."""
    changes: dict[str, Value] = {"seat_thickness": 24.0, "post_tenon_kind": "wedged"}
    (found,) = _found(changes, "steep_wedge")
    slot = 18.0 / math.cos(math.radians(12.0))
    assert found.amount == pytest.approx(math.degrees(math.atan(4.0 / slot)), abs=1e-9)
    assert found.limit == pytest.approx(math.degrees(math.atan(0.2)), abs=1e-9)
    assert set(found.parts) == {f"wedge_post_{post}_{k}" for post in (1, 2) for k in (1, 2)}
    assert found.mend is not None
    assert found.mend.values == (("post_wedge", 3.5),)
    assert not _found(changes | dict(found.mend.values), "steep_wedge")


def test_posts_behind_a_slab_are_held_by_its_edge_alone() -> None:
    """45 mm of edge holds 4 x 45 = 180; at 420 no small change mends that."""
    (found,) = _found({"post_fixing": "behind the seat"}, "rest_lever")
    assert (found.amount, found.limit, found.mend) == (420.0, 180.0, None)


def test_a_bench_whose_feet_stand_in_tips() -> None:
    """Push 0.2857 (1000 - 425) N at 725 mm: 119.1 N m.  Feet 90 mm in from the back edge, the rest
    70 mm in: 600 N at 70 + 175 - 90 = 155 mm, 93 N m, and the bench's own weight, which trimesh
    weighs."""
    changes: dict[str, Value] = {"inset_back": 90.0, "length": 700.0}
    (found,) = _found(changes, "tips_back")
    assert found.limit == pytest.approx(0.2857 * 575.0 * 0.725, abs=1e-9)
    own = 0.0
    for part in _bench(changes).parts:
        solid = placed(part)
        mesh = trimesh.Trimesh(solid.vertices, solid.solid.triangles, process=False)
        kilograms = mesh.volume * 1e-9 * density_of(part.material)
        own += kilograms * 9.80665 * (-90.0 - float(mesh.center_mass[1])) / 1000.0
    assert found.amount == pytest.approx(600.0 * 0.155 + own, rel=1e-9)
    assert found.estimate
    assert found.mend is not None
    assert not _found(changes | dict(found.mend.values), "tips_back")
    assert not _found(changes | {"inset_back": 0.0}, "tips_back")
