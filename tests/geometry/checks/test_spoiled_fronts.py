"""A spoiled bench for each check of carved fronts; amounts worked by hand beside each.

One front 1096 wide, 256 high and 18 thick.  Six points: the corners 1 to 4, 5 on a border, 6
within; their depths are given in per cent of the carving's.
"""

from __future__ import annotations

import pytest

from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.checks.all_checks import findings
from geometry.design.finding import Finding, Level
from geometry.design.parameter import Value
from geometry.design.spec import BenchSpec


def depths(*per_cent: float) -> str:
    places = ("0 0", "100 0", "100 100", "0 100", "50 0", "50 50")
    rows = zip(places, per_cent, strict=True)
    return "; ".join(f"{k} {place} {deep:g}" for k, (place, deep) in enumerate(rows, 1))


SOUND = set_values(
    set_values(default_spec(), {"partition_count": 0.0, "opening_1_fill": "drawers"}),
    {"carving": "faceted", "carving_points": 6.0, "finger_groove": "top edge"},
)
LEVEL_8 = {"carving_depth": 10.0, "carving_moved": depths(80, 80, 80, 80, 80, 80)}
LEVEL_10 = {"carving_depth": 10.0, "carving_moved": depths(100, 100, 100, 100, 100, 100)}

SPOILED: tuple[tuple[str, dict[str, Value], Level, float, float, str], ...] = (
    # check, changes, level, amount, limit, the mend
    (  # 18 - 10.5 = 7.5; 10.5 x (18 - 8) / 10.5 = 10
        "front_thin_for_carving",
        {"carving_depth": 10.5, "carving_moved": depths(0, 0, 0, 0, 0, 100)},
        Level.DO_NOT_CUT,
        7.5,
        8.0,
        "Carve {10 mm} deep at most.",
    ),
    (  # 18 - 8 - 6.35 = 3.65 at the edge, 4 wanted: 0.35 more at both upper corners
        "front_thin_at_groove",
        LEVEL_8,
        Level.DO_NOT_CUT,
        3.65,
        4.0,
        "",
    ),
    (  # 18 - 6.35 = 11.65, 12 wanted: a radius of 6
        "front_thin_at_groove",
        {"carving": "plain", "finger_land": 12.0},
        Level.DO_NOT_CUT,
        11.65,
        12.0,
        "Make its radius {6 mm}.",
    ),
    (  # 18 - 6.35 = 11.65, 14 wanted: a radius of 4 is too small to hold, so 2.35 thicker
        "front_thin_at_groove",
        {"carving": "plain", "finger_land": 14.0},
        Level.DO_NOT_CUT,
        11.65,
        14.0,
        "Make the fronts {20.4 mm} thick.",
    ),
    ("groove_too_shallow", {"finger_radius": 3.0}, Level.THINK_AGAIN, 3.0, 5.0,
     "Make its radius {6.35 mm}."),
    # 18 - 10 - 4 = 4 while the land is kept
    ("groove_too_shallow", LEVEL_10, Level.THINK_AGAIN, 4.0, 5.0, ""),
)  # fmt: skip


def _found(spec: BenchSpec, check: str) -> list[Finding]:
    return [finding for finding in findings(build(spec)) if finding.check == check]


def test_a_sound_carving_raises_nothing() -> None:
    """But that a top 1160 mm long without a partition bends, and one drawer as long, open and full,
    outweighs the bench behind it."""
    found = {finding.check for finding in findings(build(SOUND))}
    assert found == {"seat_bends", "drawer_tips"}


@pytest.mark.parametrize(("check", "changes", "level", "amount", "limit", "mend"), SPOILED)
def test_a_spoiled_front_is_caught_and_mended(
    check: str, changes: dict[str, Value], level: Level, amount: float, limit: float, mend: str
) -> None:
    spec = set_values(SOUND, changes)
    (found,) = _found(spec, check)
    assert found.level is level
    assert found.amount == pytest.approx(amount, abs=1e-6)
    assert found.limit == limit
    assert found.parts == ("drawer_1_1_front",)
    assert found.mend is not None
    if mend:
        assert found.mend.sentence == mend
    else:
        assert found.mend.sentence.startswith("Raise point")
    assert not _found(set_values(spec, dict(found.mend.values)), check)


def test_the_thinnest_place_is_told_and_shown() -> None:
    """Point 6 half way along and up: 548 from the left end, 128 below the top edge."""
    spec = set_values(SOUND, SPOILED[0][1])
    (found,) = _found(spec, "front_thin_for_carving")
    assert "{548 mm} from its left end and {128 mm} below its top edge" in found.message
    part = build(spec).part("drawer_1_1_front")
    assert found.place is not None
    x, y, z = part.frame.to_local(found.place)
    assert (x, y, z) == pytest.approx((548 + 3.175, 128 + 3.175, 10.5))


def test_the_stretch_without_land_is_told() -> None:
    """Along the top edge the depth falls from 10 at the left corner to 0 at the right one.

    Land is missing while it is more than 18 - 6.35 - 4 = 7.65: from 0 to (10 - 7.65) / 10 of 1096.
    """
    moved = depths(0, 0, 0, 100, 0, 0)
    spec = set_values(SOUND, {"carving_depth": 10.0, "carving_moved": moved})
    (found,) = _found(spec, "front_thin_at_groove")
    assert "missing at the edge from {0 mm} to {257.56 mm}" in found.message
    assert found.mend is not None
    assert found.mend.sentence.startswith("Raise point 4 by {2.35")


def test_the_land_is_least_behind_the_edge_where_the_carving_falls_away_from_it() -> None:
    """A plane that falls with slope s from the edge comes nearest to the cove where
    h / sqrt(r² - h²) = s; there T - d0 - r sqrt(1 + s²) is left (by hand).

    Depth 0 along the top and 16 along the bottom, so s = 16 / 256 everywhere.
    """
    from geometry.bench.drawer_numbers import drawers
    from geometry.bench.groove_land import least_land

    spec = SOUND.changed({"carving_depth": 16.0, "carving_moved": depths(100, 100, 0, 0, 100, 50)})
    land = least_land(spec, drawers(spec)[0])
    assert land.wood == pytest.approx(18 - 6.35 * (1 + (16 / 256) ** 2) ** 0.5, abs=1e-9)
    h = 6.35 * (16 / 256) / (1 + (16 / 256) ** 2) ** 0.5
    assert land.at[1] - 3.175 == pytest.approx(h, abs=1e-9)
