"""Panel benches measured on the solids: volumes by hand, angles by a vector computation.

Source of the expected values: the description of the joints, and plane and solid geometry.  The
slope of 1 in 8 is 7.125 degrees (common practice, no source).
"""

from __future__ import annotations

import math

import numpy as np
import pytest

from geometry.bench.bench import Bench
from geometry.design.parameter import Value
from geometry.solids.measure import volume_of
from shared.tolerances import CHORD_ERROR
from tests.flat_faces import flat_faces
from tests.reference.benches import bench_with

WITHIN = 1e-6  # mm
L, D, T, E, UNDER = 1300.0, 330.0, 36.0, 28.0, 410.0  # length, depth, seat, ends, underside

BENCH: dict[str, Value] = {
    "seat": "panel bench",
    "flare": 0,
    "chamfer": 0,
    "length": L,
    "depth": D,
    "seat_thickness": T,
    "end_thickness": E,
    "base_height": UNDER,
    "end_relief": 0,
    "seat_rail_joint": "through tenon",
    "seat_rail_height": 84,
    "seat_rail_thickness": 24,
    "seat_rail_tenon": 10,
    "seat_rail_shoulder": 15,
    "seat_rail_down": 12,
    "seat_rail_back": 140,
    "seat_rail_fit": 0.2,
}
CHORD = 2.0 / 3.0 * CHORD_ERROR  # mm that chords stay off an arc, in the mean
MORTISE = 10.2 * 54.0 * E  # mm3 that the rail's tenon takes out of an end
TAILS = {"tail_count": 4, "tail_slope": "1:8", "tail_pin": 12, "tail_half_pin": 10, "tail_fit": 0.2}


def volume(bench: Bench, name: str) -> float:
    return volume_of(bench.part(name).shape)


def test_mitred_ends() -> None:
    """A mitre takes half of the corner's block off either board."""
    bench = bench_with({**BENCH, "left_joint": "mitred", "right_joint": "mitred"})
    corner = E * T * D / 2.0
    assert volume(bench, "seat") == pytest.approx(L * D * T - 2.0 * corner)
    assert volume(bench, "end_left") == pytest.approx((UNDER + T) * D * E - corner - MORTISE)
    assert volume(bench, "end_right") == pytest.approx(volume(bench, "end_left"))


def test_the_mitre_runs_from_arris_to_arris() -> None:
    """On both boards, 28 mm along and 36 mm up: atan(36 / 28) from the level."""
    bench = bench_with({**BENCH, "left_joint": "mitred"})
    along = np.array((E, 0.0, -T))  # from the outside arris to the inside one
    across = np.array((0.0, -1.0, 0.0))
    normal = np.cross(along, across)
    normal /= np.linalg.norm(normal)
    offset = float(normal @ (0.0, 0.0, UNDER + T))
    for name in ("seat", "end_left"):
        (face,) = [
            one for one in flat_faces(bench.part(name)) if abs(float(one.normal @ normal)) > 0.9999
        ]
        assert abs(abs(face.offset) - abs(offset)) < WITHIN
        assert face.area == pytest.approx(math.hypot(E, T) * D)


def test_housed_ends() -> None:
    """30 + 0.2 wide: the tongue is notched back to where the round of the stop begins."""
    changes: dict[str, Value] = {
        "left_joint": "housed",
        "right_joint": "housed",
        "left_end_in": 90,
        "right_end_in": 140,
        "end_reveal": 15,
        "housing_depth": 9,
        "housing_cover": 5,
        "housing_fit": 0.2,
        "cutter_diameter": 12,
    }
    bench = bench_with({**BENCH, **changes})
    front, width, radius = D - 15.0, E + 0.2, 6.0
    stop = front - 5.0
    # a rectangle to the stop, less what two rounded corners of a quarter circle leave
    area = width * stop - 2.0 * (1.0 - math.pi / 4.0) * radius**2
    assert volume(bench, "seat") == pytest.approx(
        L * D * T - 2.0 * 9.0 * area, abs=CHORD * 36.0 * math.pi * radius / 2.0
    )
    tongue = stop - radius - 0.1
    notch = 9.0 * (front - tongue) * E
    end = (UNDER + 9.0) * front * E - notch - MORTISE
    assert volume(bench, "end_left") == pytest.approx(end)
    assert volume(bench, "rail") == pytest.approx(
        (L - 230.0 - 2.0 * E) * 84.0 * 24.0 + 2.0 * E * 54.0 * 10.0
    )


@pytest.mark.parametrize("lap", [0.0, 6.0])
def test_dovetailed_ends(lap: float) -> None:
    """Tails and pins as trapezia: (330 - 2 x 10 - 3 x 12) / 4 = 68.5 mm wide at their ends."""
    bench = bench_with(
        {
            **BENCH,
            **TAILS,
            "tail_lap": lap,
            "left_joint": "dovetailed",
            "right_joint": "dovetailed",
        }
    )
    tail, long = (D - 2.0 * 10.0 - 3.0 * 12.0) / 4.0, E - lap
    narrow = tail - 2.0 * long / 8.0
    tails = 4.0 * (tail + narrow) / 2.0 * long * T
    clear = (L - 2.0 * E) * D * T
    assert volume(bench, "seat") == pytest.approx(clear + 2.0 * tails)
    # The sockets are wider by the fit, measured square to the flanks: 0.1 mm each.
    more = 0.1 * math.hypot(8.0, 1.0) / 8.0
    sockets = 4.0 * ((tail + narrow) / 2.0 + 2.0 * more) * long * T
    end = (UNDER + T) * D * E - sockets - MORTISE
    assert volume(bench, "end_left") == pytest.approx(end)
    assert volume(bench, "end_right") == pytest.approx(end)


def test_the_flanks_of_tails_and_pins_lie_along_each_other() -> None:
    """Each flank turns by atan(1/8) from the length; the flanks of pins stand off by the fit."""
    bench = bench_with({**BENCH, **TAILS, "right_joint": "dovetailed"})
    steep = np.array((1.0, 8.0, 0.0)) / math.hypot(1.0, 8.0)
    for sign in (1.0, -1.0):
        flank = steep * (1.0, sign, 1.0)
        tails, pins = (
            sorted(
                abs(one.offset)
                for one in flat_faces(bench.part(name))
                if abs(float(one.normal @ flank)) > 1.0 - 1e-9
            )
            for name in ("seat", "end_right")
        )
        assert len(tails) == len(pins) == 4
        assert [abs(a - b) for a, b in zip(tails, pins, strict=True)] == pytest.approx([0.1] * 4)


@pytest.mark.parametrize(("joint", "section"), [("stub tenon", 54 * 10), ("housed", 84 * 24)])
def test_rails_that_end_inside(joint: str, section: float) -> None:
    """18 mm let in at either end; a mortise for a stub tenon is 1 mm deeper, a housing is not."""
    bench = bench_with({**BENCH, "seat_rail_joint": joint, "seat_rail_in": 18})
    assert volume(bench, "rail") == pytest.approx(
        (L - 2.0 * E) * 84.0 * 24.0 + 2.0 * 18.0 * section
    )
    taken = 19.0 * 54.0 * 10.2 if joint == "stub tenon" else 18.0 * 84.0 * 24.2
    end = (UNDER + T) * D * E - E * T * D / 2.0
    assert volume(bench, "end_left") == pytest.approx(end - taken)


def test_wedges_fill_what_the_mortise_flares() -> None:
    """Rail, four wedges and 0.2 mm beside the tenon fill each end's mortise."""
    bench = bench_with({**BENCH, "seat_rail_joint": "wedged tenon", "seat_rail_wedge": 5})
    wedge = 5.0 * E / 2.0 * 10.0
    assert volume(bench, "wedge_left_upper") == pytest.approx(wedge)
    mortise = (54.0 + 54.0 + 2.0 * 5.0) / 2.0 * E * 10.2
    end = (UNDER + T) * D * E - E * T * D / 2.0 - mortise
    assert volume(bench, "end_left") == pytest.approx(end)


def test_a_slab_with_four_leaning_bores() -> None:
    """Each bore a round cylinder askew: pi/4 d^2 x thickness x sqrt(1 + tan^2 rake + tan^2 splay).

    A plane that is level cuts such a cylinder in an ellipse, larger than the circle by the same
    root.
    """
    bench = bench_with(
        {
            "seat": "slab",
            "base": "four legs",
            "leg_joint": "round tenons",
            "flare": 0,
            "chamfer": 0,
            "length": 1100,
            "depth": 320,
            "seat_thickness": 44,
            "base_height": 400,
            "inset_left": 160,
            "inset_right": 160,
            "inset_back": 85,
            "inset_front": 85,
            "rake": 9,
            "splay": 13,
            "leg_tenon": 26,
            "leg_tenon_fit": 0.3,
        }
    )
    lean = math.sqrt(1.0 + math.tan(math.radians(9)) ** 2 + math.tan(math.radians(13)) ** 2)
    bore = math.pi / 4.0 * 26.3**2 * 44.0 * lean
    chords = CHORD * 4.0 * math.pi * 26.3 * 44.0 * lean
    assert volume(bench, "seat") == pytest.approx(1100.0 * 320.0 * 44.0 - 4.0 * bore, abs=chords)
