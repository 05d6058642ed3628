"""How like two pieces are, against pieces that were turned, mirrored or changed by hand."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from geometry.cuts.bore import Bore
from geometry.cuts.contour import Face
from geometry.cuts.cut import Blank
from geometry.cuts.notch import Notch
from geometry.cuts.saw import SawCut
from geometry.design.part import Shape
from geometry.solids.likeness import MIRROR_IMAGE, SAME, likeness, size_of

BLANK = Blank(300.0, 60.0, 20.0)


def _bored(x: float, y: float, face: Face = Face.FACE_SIDE) -> Shape:
    return Shape(BLANK, (Bore(x, y, 10.0, 8.0, face),))


def _sawn(deg: float, blank: Blank) -> Shape:
    """The far end sawn off square across, tilted by ``deg``, on the middle of the thickness."""
    tilt = math.radians(deg)
    point = (blank.length - 20.0, 0.0, blank.thickness / 2.0)
    return Shape(blank, (SawCut("cut", point, (math.cos(tilt), 0.0, math.sin(tilt))),))


def test_a_piece_turned_over_or_end_for_end_is_the_same() -> None:
    """Half turns about x, y and z carry the boring to the places below."""
    here = _bored(40.0, 20.0)
    assert likeness(here, _bored(260.0, 40.0)) == SAME
    assert likeness(here, _bored(40.0, 40.0, Face.REVERSE)) == SAME
    assert likeness(here, _bored(260.0, 20.0, Face.REVERSE)) == SAME


def test_the_other_three_places_make_its_mirror_image() -> None:
    here = _bored(40.0, 20.0)
    for other in (_bored(260.0, 20.0), _bored(40.0, 40.0), _bored(40.0, 20.0, Face.REVERSE)):
        assert likeness(here, other) == MIRROR_IMAGE


def test_a_square_piece_may_be_turned_about_its_grain() -> None:
    square = Blank(300.0, 40.0, 40.0)
    face = Shape(square, (Notch(0.0, 30.0, 0.0, 10.0),))
    quarter = Shape(square, (SawCut("off", (30.0, 0.0, 0.0), (-1.0, 0.0, 0.0)),))
    beside = Shape(square, (Notch(0.0, 30.0, 30.0, 40.0),))
    assert likeness(face, beside) == SAME
    assert likeness(face, quarter) != SAME


@pytest.mark.parametrize("by", [0.4, 1.5, 2.5])
def test_a_boring_that_is_moved_is_so_far_apart(by: float) -> None:
    """The leading side of the moved hole stands ``by`` in the wood of the other (chords: 0.1)."""
    found = likeness(_bored(40.0, 20.0), _bored(40.0 + by, 20.0))
    assert found is not None
    assert not found.mirrored
    assert found.distance == pytest.approx(by, abs=0.1)
    assert found.turn_deg == pytest.approx(0.0, abs=0.1)


def test_a_cut_that_is_tilted_is_so_far_apart_and_turned() -> None:
    """Through 20 mm of board about its middle: 10 (tan 11 - tan 10), taken square to the face."""
    found = likeness(_sawn(10.0, BLANK), _sawn(11.0, BLANK))
    assert found is not None
    tan = [math.tan(math.radians(deg)) for deg in (10.0, 11.0)]
    longer = 10.0 * (tan[1] - tan[0])
    assert found.turn_deg == pytest.approx(1.0, abs=1e-3)
    # The boxes are laid middle on middle, so each end stands off by half of what one is longer.
    assert size_of(_sawn(11.0, BLANK))[0] - size_of(_sawn(10.0, BLANK))[0] == pytest.approx(longer)
    assert longer / 2.0 <= found.distance <= 1.5 * longer


def test_pieces_with_other_cuts_are_not_like_each_other() -> None:
    notched = Shape(BLANK, (Notch(0.0, 150.0, 0.0, 30.0),))
    assert likeness(Shape(BLANK, ()), notched) is None


@settings(max_examples=25, deadline=None)
@given(
    x=st.floats(10.0, 130.0),
    y=st.floats(8.0, 25.0),
    other=st.floats(160.0, 280.0),
    end=st.booleans(),
)
def test_a_mirror_image_is_known_whatever_is_bored(
    x: float, y: float, other: float, end: bool
) -> None:
    """Two borings and a notch, mirrored along the grain; turned end for end it is still one."""
    notch = Notch(0.0, 30.0, 0.0, 5.0)
    far = Notch(270.0, 300.0, 0.0, 5.0)
    here = Shape(BLANK, (notch, Bore(x, y, 9.0, 6.0), Bore(other, y, 9.0, 20.0)))
    mirrored = Shape(BLANK, (far, Bore(300.0 - x, y, 9.0, 6.0), Bore(300.0 - other, y, 9.0, 20.0)))
    if end:
        far = Notch(0.0, 30.0, 55.0, 60.0)
        mirrored = Shape(
            BLANK, (far, Bore(x, 60.0 - y, 9.0, 6.0), Bore(other, 60.0 - y, 9.0, 20.0))
        )
    assert likeness(here, mirrored) == MIRROR_IMAGE
    assert likeness(here, here) == SAME
