"""Which line a hand finds where several lie close together."""

from __future__ import annotations

from app.scene.picking import Lines

# A point, a line through it, and another line 2 mm above.
HELD = Lines(
    ((5.0, 0.0, 5.0, 0.0), (0.0, 0.0, 10.0, 0.0), (0.0, 2.0, 10.0, 2.0)),
    ("point", "edge", "fine line"),
)


def test_the_nearest_is_found_within_reach() -> None:
    assert HELD.nearest((1.0, 1.9), 3.0) == "fine line"
    assert HELD.nearest((1.0, 0.2), 3.0) == "edge"
    assert HELD.nearest((1.0, 6.0), 3.0) == ""
    assert Lines((), ()).nearest((0.0, 0.0), 3.0) == ""


def test_of_those_that_a_hand_cannot_tell_apart_the_first_is_found() -> None:
    """At (4, 0.3) the edge is 0.3 off and the point hypot(1, 0.3) = 1.044: 0.744 farther."""
    assert HELD.nearest((4.0, 0.3), 3.0) == "edge"
    assert HELD.nearest((4.0, 0.3), 3.0, alike=0.8) == "point"
    assert HELD.nearest((4.0, 0.3), 3.0, alike=0.7) == "edge"
    # Where the two lines are seen apart, either is found.
    assert HELD.nearest((1.0, 1.9), 3.0, alike=0.8) == "fine line"
    assert HELD.nearest((1.0, 1.9), 3.0, alike=2.0) == "edge"


def test_none_is_found_beyond_reach_for_being_alike() -> None:
    assert HELD.nearest((1.0, 2.5), 1.0, alike=5.0) == "fine line"
