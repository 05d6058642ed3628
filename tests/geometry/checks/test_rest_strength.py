"""Sound samples with a back rest too weak by one change; amounts by hand beside each.

Each push is 450 N, 300 mm over the seat.
"""

from __future__ import annotations

import pytest

from geometry.checks.all_checks import findings
from geometry.checks.offers import bench_with
from geometry.design.finding import Level
from geometry.design.parameter import Value
from geometry.strength.screws import pulls, stands_pulled
from shared.timber import TIMBERS
from shared.timber_stiffness import STIFFNESS
from shared.timber_strength import ROLLING, STRENGTH
from shared.units import SHOWN_MM, in_units
from tests.samples import assert_cured, of_check, plain, spoiled


@pytest.mark.parametrize("name", ["bowling_green_bench", "bakehouse_bench", "lock_keepers_bench"])
def test_samples_hold(name: str) -> None:
    assert not of_check(plain(name, {}), "rest_strength")


def test_thin_posts_behind_a_seat() -> None:
    """The bakehouse's posts of cherry, 64 wide, made 22 deep; rails 14 thick so that they fit.

    Two persons lean back, 500 mm apart; the middle post of three that stand l apart has most where
    each is 250 mm from it: 2 x 450 (1 - 250 / l) N, at 300 mm over b h² / 6 of 85 MPa.
    """
    changes: dict[str, Value] = {"post_depth": 22.0, "rest_rail_thickness": 14.0}
    bench = plain("bakehouse_bench", changes)
    (found,) = of_check(bench, "rest_strength")
    apart = (1460.0 - 2.0 * (110.0 + 32.0)) / 2.0
    force = 900.0 * (1.0 - 250.0 / apart)
    bears = 64.0 * 22.0**2 / 6.0 * STIFFNESS["black cherry"].rupture
    assert found.amount == pytest.approx(100.0 * force * 300.0 / bears, rel=0.01)
    assert found.level is Level.THINK_AGAIN
    assert found.parts == ("post_1", "post_2", "post_3")
    assert found.estimate
    assert_cured(bench, found)


def test_thin_tenons_of_posts() -> None:
    """The bowling green's tenons of ash made 15 of 38 mm: they bend, 50 x 15² / 6 of 103 MPa, and
    glue on both their cheeks, 50 x 44 each, holds them down 19 mm before the shoulder's back edge.
    """
    bench = plain("bowling_green_bench", {"post_tenon": 15.0})
    (found,) = of_check(bench, "rest_strength")
    force = float(in_units(found.message, SHOWN_MM).split("with ")[1].split(" N")[0])
    glue = 2.0 * 50.0 * 44.0 * ROLLING * STRENGTH["white ash"].shear
    bears = 50.0 * 15.0**2 / 6.0 * STIFFNESS["white ash"].rupture + glue * 19.0
    assert found.amount == pytest.approx(100.0 * force * 300.0 / bears, rel=2e-3)
    assert found.parts == ("post_1", "post_2", "post_3")
    assert_cured(bench, found)


def test_thin_slats() -> None:
    """The lock keeper's slats of oak, 50 x 5 mm: a third of 450 N in the middle of what is clear
    between the rails, over 50 x 5² / 6 of 99 MPa."""
    bench = plain("lock_keepers_bench", {"slat_thickness": 5.0})
    (found,) = of_check(bench, "rest_strength")
    slat = bench.part("slat_1")
    clear = slat.shape.blank.length - 2.0 * bench.spec.number("slat_tenon_length")
    stress = 150.0 * clear / 4.0 / (50.0 * 25.0 / 6.0)
    assert found.amount == pytest.approx(100.0 * stress / STIFFNESS["red oak"].rupture, rel=1e-6)
    assert found.parts == ("slat_1",)
    assert_cured(bench, found)


def test_small_tenons_of_rails() -> None:
    """The bakehouse's lower rails, 60 wide, with shoulders of 20 and tenons of 4 mm: half of 450 N
    beside a post, 1.5 F over 20 x 4 mm of cherry, 1700 psi; the top rail has 50 x 4 for all."""
    changes: dict[str, Value] = {"rest_shoulder": 20.0, "rest_tenon": 4.0}
    bench = plain("bakehouse_bench", changes)
    (found,) = of_check(bench, "rest_strength")
    stands = STRENGTH["black cherry"].shear
    assert found.amount == pytest.approx(100.0 * 1.5 * 225.0 / 80.0 / stands)
    assert all(part.startswith("rest_rail") for part in found.parts)
    assert_cured(bench, found)


def test_a_rail_over_too_wide_a_bay() -> None:
    """The bakehouse's rest on two posts, its rails 17 mm: one bay of 1176 - 64 = 1112 mm, two
    persons on the top rail of 90 mm, 500 mm apart: in its middle F x (1112 - 500) / 2."""
    bench = plain("bakehouse_bench", {"post_count": 2.0, "rest_rail_thickness": 17.0})
    (found,) = of_check(bench, "rest_strength")
    half = (1112.0 - 500.0) / 2.0
    stress = 450.0 * half / (90.0 * 17.0**2 / 6.0)
    share = 100.0 * stress / STIFFNESS["black cherry"].rupture
    assert found.amount == pytest.approx(share, rel=0.05)
    assert found.parts[0] == "top_rail"
    assert_cured(bench, found)


def test_posts_screwed_to_the_edge_of_a_slab() -> None:
    """The bowling green's posts stood behind its seat of ash, 44 thick: the screws, 22 over their
    foot, hold against a push 300 over the seat: F x (44 + 300) = 2 T x 22.  They are no. 10,
    0.190 in, bored 40 mm deep into the edge, and stand 15,700 G² D lb for each inch of that."""
    bench = plain("bowling_green_bench", {"post_fixing": "behind the seat"})
    (found,) = [one for one in findings(bench) if one.check == "rest_screws"]
    force = float(in_units(found.message, SHOWN_MM).split("with ")[1].split(" N")[0])
    gravity = TIMBERS["white ash"].density / 1120.0
    stands = 15_700.0 * gravity**2 * 0.190 * (40.0 / 25.4) * 4.4482216
    assert found.amount == pytest.approx(100.0 * force * 344.0 / 44.0 / stands, rel=2e-3)
    assert found.level is Level.THINK_AGAIN
    assert found.parts == ("post_1", "post_2", "post_3", "seat")
    assert found.estimate
    assert found.place is not None
    assert found.place[2] == pytest.approx(418.0)
    assert found.mend is not None
    mended = bench_with(bench, found.mend)
    assert mended is not None
    assert not [one for one in findings(mended) if one.check == "rest_screws"]


def test_screws_pull_where_they_are_bored() -> None:
    """Behind the lock-keeper's box, 90 to 450 over the floor: three in its back, 21 thick, so 18
    deep, 40 and 169 and 298 over the lower edge; one in the strip, 349 over it.  A push 300 over
    the seat pulls that at 298 with F x 660 x 298 / (40² + 169² + 298² + 349²)."""
    bench = spoiled("lock_keepers", {}, limits=(("most_of_strength", 5.0),))
    (found,) = of_check(bench, "rest_screws")
    force = float(in_units(found.message, SHOWN_MM).split("with ")[1].split(" N")[0])
    pull = force * 660.0 * 298.0 / (40.0**2 + 169.0**2 + 298.0**2 + 349.0**2)
    gravity = TIMBERS["red oak"].density / 1120.0
    stands = 15_700.0 * gravity**2 * 0.190 * (18.0 / 25.4) * 4.4482216
    assert found.amount == pytest.approx(100.0 * pull / stands, rel=2e-3)
    assert found.place is not None
    assert found.place[2] == pytest.approx(90.0 + 298.0)
    assert found.parts == ("post_1", "post_2", "box_back")
    # Judged by the usual third it is sound.
    assert not of_check(spoiled("lock_keepers", {}), "rest_screws")


def test_screws_as_quoted() -> None:
    """engineeringtoolbox.com, wood screws: no. 10 (0.190 in) in spruce of 0.45 may be loaded with
    109 lb for each inch of thread, by 2850 G² D; the strength is 15,700 / 2850 of that."""
    stands = stands_pulled(0.45 * 1120.0, 0.190 * 25.4, 25.4)
    assert stands * 2850.0 / 15_700.0 / 4.4482216 == pytest.approx(109.0, abs=1.0)
    wide = stands_pulled(0.45 * 1120.0, 0.190 * 25.4, 25.4, end_grain=True)
    assert wide == pytest.approx(0.75 * stands)
    # A post on two edges: the pulls hold the moment.
    drawn = pulls(300_000.0, (10.0, 10.0, 290.0, 290.0))
    assert sum(t * d for t, d in zip(drawn, (10.0, 10.0, 290.0, 290.0), strict=True)) == (
        pytest.approx(300_000.0)
    )
    assert drawn[2] / drawn[0] == pytest.approx(29.0)
