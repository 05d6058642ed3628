"""Where a joint says that two parts meet, they do: wood, the stated gap, wood.

A joint declares its faces as it leaves them itself; a rebate may take the corner off a mitre, a
housing a piece out of a rebate.  So wood may be missing where another cut has taken it; and a
good part of the faces must be left in the end.

Judge: winding numbers of points a hair to either side of the declared faces.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from numpy.typing import NDArray

from geometry.bench.bench import Bench
from geometry.design.joint import Contact, Joint
from geometry.design.part import Shape
from geometry.solids.cutting import placed
from geometry.solids.measure import shared_volume
from geometry.solids.solid import PlacedSolid
from shared.tolerances import SHARED_VOLUME
from tests.judges.inside import inside

Floats = NDArray[np.float64]

HAIR = 0.001  # mm
SAMPLES = 24  # points on each face
RIM = 0.05  # mm from a face's outline within which a point may fall off the wood


def test_faces_meet_within_their_gap(bench: Bench) -> None:
    dice = np.random.default_rng(3)
    for joint in bench.joints:
        first, second = (placed(bench.part(name)) for name in joint.parts)
        bare_first, bare_second = (alone(bench, joint, name) for name in joint.parts)
        for number, contact in enumerate(joint.contacts):
            points, normal = samples(contact, joint.fit, dice), np.array(contact.normal)
            where = (joint.name, number)
            here, beyond = points - HAIR * normal, points + (contact.gap + HAIR) * normal
            assert (inside(first, here) | inside(bare_first, here)).all(), where
            assert (inside(second, beyond) | inside(bare_second, beyond)).all(), where
            assert not inside(first, points + HAIR * normal).any(), where
            assert not inside(second, beyond - 2.0 * HAIR * normal).any(), where


def test_a_good_part_of_the_faces_meets_in_the_end(bench: Bench) -> None:
    """By area, whatever the other joints take; and never is there wood in wood."""
    dice = np.random.default_rng(4)
    for joint in bench.joints:
        first, second = (placed(bench.part(name)) for name in joint.parts)
        meeting = whole = 0.0
        for contact in joint.contacts:
            points, normal = samples(contact, joint.fit, dice), np.array(contact.normal)
            here = inside(first, points - HAIR * normal)
            there = inside(second, points + (contact.gap + HAIR) * normal)
            assert not inside(first, points + HAIR * normal).any(), joint.name
            meeting += area(contact) * float((here & there).mean())
            whole += area(contact)
        assert meeting > 0.2 * whole or not joint.contacts, (joint.name, meeting, whole)


def alone(bench: Bench, joint: Joint, name: str) -> PlacedSolid:
    """The blank of a part with the cuts of one joint."""
    part = bench.part(name)
    cuts = [
        cut
        for owner, given in zip(joint.parts, (joint.cuts_first, joint.cuts_second), strict=True)
        if owner == name
        for cut in given
    ]
    return placed(replace(part, shape=Shape(part.shape.blank, tuple(cuts))))


def test_gaps_add_up_to_the_fit(bench: Bench) -> None:
    """A clearance is shared by both sides; a face that must touch has none.  A hinged lid has a
    gap on one side only."""
    for joint in bench.joints:
        for contact in joint.contacts:
            whole = joint.fit if joint.kind == "hinged lid" else joint.fit / 2.0
            assert contact.gap in (0.0, pytest.approx(whole)), joint.name


def test_every_joint_declares_its_faces(bench: Bench) -> None:
    """Only a round tenon may meet its bore in nothing flat."""
    for joint in bench.joints:
        if joint.kind != "round tenon":
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


def samples(contact: Contact, fit: float, dice: np.random.Generator) -> Floats:
    """Random points of a convex face, (n, 3), off its rim by what a neighbour's fit may take."""
    corners = np.array(contact.corners)
    weights = dice.dirichlet(np.full(len(corners), 0.6), 40 * SAMPLES)
    points = weights @ corners
    inward = np.full(len(points), np.inf)
    slim = np.inf
    for start, end in zip(corners, np.roll(corners, -1, axis=0), strict=True):
        run = end - start
        length = float(np.linalg.norm(run))
        if length < 1e-9:
            continue
        inward = np.minimum(inward, np.linalg.norm(np.cross(points - start, run), axis=1) / length)
        slim = min(
            slim, float(np.linalg.norm(np.cross(corners - start, run), axis=1).max()) / length
        )
    kept = points[inward > min(RIM + fit / 2.0, 0.3 * slim)][:SAMPLES]
    assert len(kept), "a face without an inside"
    return np.asarray(kept)


def area(contact: Contact) -> float:
    corners = np.array(contact.corners)
    fan = np.cross(corners[1:-1] - corners[0], corners[2:] - corners[0])
    return float(np.linalg.norm(fan.sum(axis=0))) / 2.0
