"""Joints that are made alike, so that one detail serves them all.

Method: two joints are alike when they are of one kind, join parts of one section and material, and
their faces meet in the same shapes, sizes, gaps and angles to one another.  Where along a part a
joint stands does not matter, nor whether it is the mirror image of another.
"""

from __future__ import annotations

import math
from collections.abc import Hashable, Mapping, Sequence
from itertools import combinations

from geometry.design.joint import Contact, Joint
from geometry.design.part import Part
from geometry.primitives.frame import dot

_DECIMALS = 2  # mm and hundredths of a degree's cosine: finer than anybody marks


def joint_groups(
    joints: Sequence[Joint], parts: Mapping[str, Part]
) -> tuple[tuple[Joint, ...], ...]:
    """Joints alike together, in the bench's order."""
    groups: dict[Hashable, list[Joint]] = {}
    for joint in joints:
        groups.setdefault(_likeness(joint, parts), []).append(joint)
    return tuple(tuple(group) for group in groups.values())


def _likeness(joint: Joint, parts: Mapping[str, Part]) -> Hashable:
    return (
        joint.kind,
        round(joint.fit, _DECIMALS),
        tuple(_stuff(parts[name]) for name in joint.parts),
        tuple(_form(contact) for contact in joint.contacts),
        tuple(
            round(abs(dot(one.normal, other.normal)), 4)
            for one, other in combinations(joint.contacts, 2)
        ),
        tuple(measure.name for measure in joint.measures),
        tuple(round(m.value, _DECIMALS) for m in joint.measures if m.unit == "deg"),
    )


def _stuff(part: Part) -> Hashable:
    """What a part is made from, but for its length."""
    blank = part.shape.blank
    return (
        part.kind,
        part.material,
        round(blank.thickness, _DECIMALS),
        round(blank.width, _DECIMALS),
    )


def _form(contact: Contact) -> Hashable:
    """A face's shape: its sides and diagonals, whichever corner they start from."""
    spans = sorted(round(math.dist(a, b), _DECIMALS) for a, b in combinations(contact.corners, 2))
    return (tuple(spans), round(contact.gap, 4))
