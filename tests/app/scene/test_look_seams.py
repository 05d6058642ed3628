"""Seams in the pictorial view, drawn apart and cut through, worked by hand on two boards."""

from __future__ import annotations

import numpy as np
import pytest

from app.scene.apart_seams import ApartSeams
from app.scene.hidden_seams import seen_and_hidden
from app.scene.joint_seams import Near
from app.scene.look_seams import left_of
from geometry.design.joint import Contact, Joint
from geometry.views.foremost import Foremost
from geometry.views.parting import moved
from geometry.views.view import FRONT, PLAN
from tests.random_assemblies import box

NEAR = Near(3.0, 5.0, np.inf, np.inf)
SQUARE = ((0.0, 0.0, 20.0), (100.0, 0.0, 20.0), (100.0, 50.0, 20.0), (0.0, 50.0, 20.0))
LOWER = box("lower", (0.0, 0.0, 0.0), (100.0, 50.0, 20.0))
UPPER = box("upper", (0.0, 0.0, 20.0), (100.0, 50.0, 40.0))
LAID = Joint(
    "laid", "laid", ("lower", "upper"), 0.0, (), (), (), (Contact(SQUARE, (0.0, 0.0, 1.0), 0.0),)
)


def apart() -> ApartSeams:
    """The upper board lifted off to the right, seen from above."""
    parts = (LOWER, UPPER)
    return ApartSeams((LAID,), parts, (LOWER, moved(UPPER, (200.0, 0.0, 60.0))), PLAN)


@pytest.mark.parametrize(
    ("point", "joint"),
    [
        ((50.0, 25.0), "laid"),  # on the lower board's upper face, which is the joint's
        ((250.0, 25.0), None),  # on the upper one's own upper face, the joint's lies beneath
        ((150.0, 25.0), None),  # between them
        ((102.0, 25.0), "laid"),  # just beside the face, on its outline
        ((104.0, 25.0), None),
    ],
)
def test_drawn_apart_a_face_is_lit_where_its_wood_is_seen(point, joint):
    seam = apart().at(point, NEAR)
    assert (None if seam is None else seam.joint) == joint


def test_drawn_apart_outlines_lie_on_both_parts_and_the_open_face_is_told():
    seam = apart().at((50.0, 25.0), NEAR)
    lines = np.concatenate([seam.lines, seam.hidden])
    assert lines[:, 0::2].min() == 0.0
    assert lines[:, 0::2].max() == pytest.approx(300.0)
    assert len(lines) == 8
    assert len(seam.faces) == 1
    assert seam.faces[0].tolist() == [[0.0, 0.0], [100.0, 0.0], [100.0, 50.0], [0.0, 50.0]]


def test_a_gap_lies_on_the_second_part():
    """With 5 between them the second part's face is 5 farther along the normal."""
    gap = Contact(SQUARE, (0.0, 0.0, 1.0), 5.0)
    joint = Joint("laid", "laid", ("lower", "upper"), 5.0, (), (), (), (gap,))
    lifted = box("upper", (0.0, 0.0, 25.0), (100.0, 50.0, 45.0))
    seams = ApartSeams((joint,), (LOWER, lifted), (LOWER, lifted), FRONT)
    seam = seams.at((50.0, 25.0), NEAR)
    heights = np.concatenate([seam.lines, seam.hidden])[:, 1::2]
    assert sorted(set(heights.ravel().round(6))) == [20.0, 25.0]


def test_a_line_is_seen_up_to_where_wood_hides_it():
    """Along the floor at y = 0 under a board that covers it from 40 to 100, seen from above."""
    cover = box("cover", (40.0, -10.0, 50.0), (100.0, 10.0, 55.0))
    side = np.array([[(0.0, 0.0, 0.0), (160.0, 0.0, 0.0)]])
    seen, hidden = seen_and_hidden(side, Foremost((cover,), PLAN))
    assert seen.tolist() == [[0.0, 0.0, 40.0, 0.0], [100.0, 0.0, 160.0, 0.0]]
    assert hidden.tolist() == [[40.0, 0.0, 100.0, 0.0]]


def test_a_plane_leaves_what_is_behind_it_of_a_face():
    """Cut level at 20 the upper board is gone; cut at y = 30, seen from the front, 20 of 50."""
    assert left_of((LAID,), {"lower"}, PLAN, 20.0) == ()
    (joint,) = left_of((LAID,), {"lower", "upper"}, FRONT, -30.0)
    (contact,) = joint.contacts
    assert sorted(contact.corners) == [
        (0.0, 30.0, 20.0),
        (0.0, 50.0, 20.0),
        (100.0, 30.0, 20.0),
        (100.0, 50.0, 20.0),
    ]
    assert left_of((LAID,), {"lower", "upper"}, FRONT, 0.0) == (LAID,)
    assert left_of((LAID,), {"lower", "upper"}, FRONT, -50.0) == ()
    assert left_of((LAID,), {"lower", "upper"}, FRONT, -80.0) == ()
