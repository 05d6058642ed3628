"""Where a joint says that two parts meet, they do: wood, the stated gap, wood.

A joint declares its faces as it leaves them itself; a rebate may take the corner off a mitre, a
housing a piece out of a rebate.  So each joint is judged on its two parts without what other
joints and the easing of edges take, and then on what is left of its faces in the end.

Judge: winding numbers of points a hair to either side of the declared faces.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

import numpy as np
import pytest
from numpy.typing import NDArray

from geometry.bench.bench import Bench
from geometry.cuts.chamfer import Chamfer
from geometry.design.joint import Contact, Joint
from geometry.design.part import Shape
from geometry.solids.cutting import placed
from geometry.solids.measure import shared_volume
from geometry.solids.solid import PlacedSolid
from shared.tolerances import SHARED_VOLUME
from tests.judges.inside import inside

Floats = NDArray[np.float64]

HAIR = 0.01  # mm
SAMPLES = 24  # points on each face
RIM = 0.05  # mm from a face's outline within which a point may fall off the wood


def test_faces_meet_within_their_gap(bench: Bench) -> None:
    dice = np.random.default_rng(3)
    for joint in bench.joints:
        first, second = (alone(bench, joint, name) for name in joint.parts)
        for number, contact in enumerate(joint.contacts):
            points, normal = samples(contact, dice), np.array(contact.normal)
            where = (joint.name, number)
            assert inside(first, points - HAIR * normal).all(), where
            assert not inside(first, points + HAIR * normal).any(), where
            beyond = points + contact.gap * normal
            assert inside(second, beyond + HAIR * normal).all(), where
            assert not inside(second, beyond - HAIR * normal).any(), where


def test_a_good_part_of_the_faces_meets_in_the_end(bench: Bench) -> None:
    """By area, whatever the other joints take; and never is there wood in wood."""
    dice = np.random.default_rng(4)
    for joint in bench.joints:
        first, second = (placed(bench.part(name)) for name in joint.parts)
        meeting = whole = 0.0
        for contact in joint.contacts:
            points, normal = samples(contact, dice), np.array(contact.normal)
            here = inside(first, points - HAIR * normal)
            there = inside(second, points + (contact.gap + HAIR) * normal)
            assert not inside(first, points + HAIR * normal).any(), joint.name
            meeting += area(contact) * float((here & there).mean())
            whole += area(contact)
        assert meeting > 0.2 * whole, (joint.name, meeting / whole)


def alone(bench: Bench, joint: Joint, name: str) -> PlacedSolid:
    """A part with the cuts it has of its own and those of one joint."""
    part = bench.part(name)
    others = [
        cut
        for other in bench.joints_of(name)
        if other.name != joint.name
        for owner, cuts in zip(other.parts, (other.cuts_first, other.cuts_second), strict=True)
        if owner == name
        for cut in cuts
    ]
    kept = tuple(c for c in part.shape.cuts if c not in others and not isinstance(c, Chamfer))
    return placed(replace(part, shape=Shape(part.shape.blank, kept)))


def test_gaps_add_up_to_the_fit(bench: Bench) -> None:
    """A clearance is shared by both sides; a face that must touch has none."""
    for joint in bench.joints:
        for contact in joint.contacts:
            assert contact.gap in (0.0, pytest.approx(joint.fit / 2.0)), joint.name


def test_every_joint_declares_its_faces(bench: Bench) -> None:
    for joint in bench.joints:
        assert joint.contacts, joint.name
        assert max(area(contact) for contact in joint.contacts) > 1.0, joint.name


def test_jointed_parts_touch_and_no_more(bench: Bench) -> None:
    for joint in bench.joints:
        first, second = (bench.part(name) for name in joint.parts)
        assert shared_volume(first, second) <= SHARED_VOLUME, joint.name


def test_joints_name_parts_that_exist_and_cut_them(bench: Bench) -> None:
    names = {part.name for part in bench.parts}
    for joint in bench.joints:
        assert set(joint.parts) <= names
        for name, cuts in zip(joint.parts, (joint.cuts_first, joint.cuts_second), strict=True):
            assert set(cuts) <= set(bench.part(name).shape.cuts), joint.name


def samples(contact: Contact, dice: np.random.Generator) -> Floats:
    """Random points of a convex face, off its rim, (n, 3)."""
    corners = np.array(contact.corners)
    middle = corners.mean(axis=0)
    reach = np.linalg.norm(corners - middle, axis=1).max()
    slim = min(_widths(corners))
    keep = 1.0 - min(0.5, 4.0 * RIM * reach / slim / max(reach, 1.0))
    weights = dice.dirichlet(np.ones(len(corners)), SAMPLES)
    return np.asarray(middle + (weights @ corners - middle) * keep)


def _widths(corners: Floats) -> Iterator[float]:
    """Height of the face over each of its edges."""
    for start, end in zip(corners, np.roll(corners, -1, axis=0), strict=True):
        run = end - start
        length = float(np.linalg.norm(run))
        if length > 1e-9:
            yield float(np.linalg.norm(np.cross(corners - start, run), axis=1).max()) / length


def area(contact: Contact) -> float:
    corners = np.array(contact.corners)
    fan = np.cross(corners[1:-1] - corners[0], corners[2:] - corners[0])
    return float(np.linalg.norm(fan.sum(axis=0))) / 2.0
