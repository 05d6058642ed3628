"""Beams against closed forms and against finite elements that are put together here.

Closed forms: FPL-GTR-190, Wood Handbook, eq. 9-2 with table 9-1, k_b and k_s: from memory, each
reckoned again by finite elements.  Beams on three and more supports, and ends that stand out:
``tests.judges.frame``.
"""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from geometry.checks.shelf_strength import even_sag
from geometry.strength.beam import Beam, respond
from tests.judges.frame import beam as judged_beam

BENDING, SHEARING, SPAN, LOAD = 3.2e9, 8.0e5, 900.0, 1000.0


def _sag(beam: Beam, x: float, places: list[float], force: float, width: float = 0.0) -> float:
    response = respond(beam, np.array([places]), np.full(len(places), force), width)
    at = int(np.argmin(np.abs(response.stations - x)))
    assert response.stations[at] == pytest.approx(x)
    return float(response.sag[0, at])


def _handbook(k_b: float, k_s: float) -> float:
    return k_b * LOAD * SPAN**3 / BENDING + k_s * LOAD * SPAN / SHEARING


SIMPLE = Beam(0.0, SPAN, (0.0, SPAN), BENDING, SHEARING)


def test_a_load_in_the_middle() -> None:
    assert _sag(SIMPLE, 450.0, [450.0], LOAD) == pytest.approx(_handbook(1 / 48, 1 / 4))


def test_an_even_load() -> None:
    assert _sag(SIMPLE, 450.0, [450.0], LOAD, SPAN) == pytest.approx(_handbook(5 / 384, 1 / 8))
    assert even_sag(LOAD, SPAN, BENDING, SHEARING) == pytest.approx(_handbook(5 / 384, 1 / 8))


@pytest.mark.parametrize(("x", "k_b"), [(450.0, 11 / 768), (225.0, 1 / 96)])
def test_loads_at_the_quarters(x: float, k_b: float) -> None:
    found = _sag(SIMPLE, x, [225.0, 675.0], LOAD / 2.0)
    assert found == pytest.approx(_handbook(k_b, 1 / 8))


@pytest.mark.parametrize(
    ("places", "width", "k_b", "k_s"),
    [([SPAN], 0.0, 1 / 3, 1.0), ([SPAN / 2.0], SPAN, 1 / 8, 1 / 2)],
)
def test_a_cantilever(places: list[float], width: float, k_b: float, k_s: float) -> None:
    """Held by two supports that stand close: 0.01 mm gives the root less than 1 in 1000."""
    beam = Beam(-0.01, SPAN, (-0.01, 0.0), BENDING, 1e15)
    shear_free = _sag(beam, SPAN, places, LOAD, width)
    assert shear_free == pytest.approx(_handbook(k_b, 0.0), rel=1e-3)
    # Shear alone, on a beam that does not bend: of the part that stands out.
    stiff = Beam(-300.0, SPAN, (-300.0, 0.0), 1e18, SHEARING)
    part = _sag(stiff, SPAN, places, LOAD, width)
    # In the held part the shear is M / 300 and turns the whole: its sag is no part of k_s.
    turned = LOAD * float(np.mean(places)) / 300.0 / SHEARING * SPAN
    assert part - turned == pytest.approx(k_s * LOAD * SPAN / SHEARING, rel=1e-6)


def test_two_equal_spans_by_hand() -> None:
    """A load in the middle of one of two spans: middle reaction 11/16 W, hogging 3/32 W L, sag
    23/1536 W L³ / (E I) (three moments by hand)."""
    beam = Beam(0.0, 2.0 * SPAN, (0.0, SPAN, 2.0 * SPAN), BENDING, 1e15)
    response = respond(beam, np.array([[SPAN / 2.0]]), np.array([LOAD]))
    assert response.reactions[0] == pytest.approx([13 / 32 * LOAD, 11 / 16 * LOAD, -3 / 32 * LOAD])
    at = int(np.argmin(np.abs(response.stations - SPAN)))
    assert response.moment[0, at] == pytest.approx(-3 / 32 * LOAD * SPAN)
    middle = _sag(beam, SPAN / 2.0, [SPAN / 2.0], LOAD)
    assert middle == pytest.approx(23 / 1536 * LOAD * SPAN**3 / BENDING)


spans = st.lists(st.floats(80.0, 900.0), min_size=1, max_size=5)
over = st.one_of(st.just(0.0), st.floats(5.0, 300.0))


@settings(max_examples=40, deadline=None)
@given(
    sizes=spans,
    left=over,
    right=over,
    thickness=st.floats(12.0, 60.0),
    first=st.floats(0.0, 1.0),
    apart=st.floats(0.0, 0.5),
    patch=st.sampled_from([0.0, 300.0]),
)
def test_any_beam_under_two_loads_is_that_of_finite_elements(
    sizes: list[float],
    left: float,
    right: float,
    thickness: float,
    first: float,
    apart: float,
    patch: float,
) -> None:
    """Spans, ends, thickness and places at random; E 12 000 MPa, G a sixteenth, 350 mm wide."""
    supports = list(np.cumsum([left, *sizes]))
    high = supports[-1] + right
    bending = 12_000.0 * 350.0 * thickness**3 / 12.0
    shearing = 750.0 * 5.0 / 6.0 * 350.0 * thickness
    beam = Beam(0.0, high, tuple(supports), bending, shearing)
    width = min(patch, high / 3.0)
    inside = high - width
    places = [width / 2.0 + first * inside, width / 2.0 + min(1.0, first + apart) * inside]
    response = respond(beam, np.array([places]), np.array([700.0, 1100.0]), width)
    marks, forces = _marks(response.stations, places, [700.0, 1100.0], width)
    sag, moment, _ = judged_beam(marks, supports, bending, shearing, forces)
    at = np.searchsorted(marks, response.stations - 1e-5)
    assert marks[at] == pytest.approx(response.stations, abs=1e-5)
    # An even load as 200 small ones: their moment is off by w d / 8.
    rough = 0.0 if width == 0.0 else 1800.0 * width / 200.0
    assert response.sag[0] == pytest.approx(sag[at], abs=1e-4 + 1e-4 * float(np.abs(sag).max()))
    close = 0.05 + rough + 1e-5 * float(np.abs(moment).max())
    assert response.moment[0] == pytest.approx(moment[at], abs=close)


def _marks(
    stations: np.ndarray, places: list[float], loads: list[float], width: float
) -> tuple[np.ndarray, np.ndarray]:
    """Stations and places of loads to a hundred-thousandth, each once, and the force at each; a
    patch as small loads."""
    forces = {round(float(x), 5): 0.0 for x in stations}
    for place, load in zip(places, loads, strict=True):
        count = 1 if width == 0.0 else 200
        for step in (np.arange(count) + 0.5) / count - 0.5:
            x = round(place + float(step) * width, 5)
            forces[x] = forces.get(x, 0.0) + load / count
    marks = sorted(forces)
    return np.array(marks), np.array([forces[x] for x in marks])
