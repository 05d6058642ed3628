"""Joints that are made alike, so that one detail serves them all.

Method: two joints are alike when they are of one kind, join parts of one section and material, and
their faces meet in the same shapes, sizes, gaps and angles to one another.  Where along a part a
joint stands does not matter, nor whether it is the mirror image of another.  Of a joint that runs
on and on (a rebate, a groove) the length does not matter, nor how wide the parts are.
"""

from __future__ import annotations

import math
from collections.abc import Hashable, Mapping, Sequence
from itertools import combinations

from geometry.design.joint import Contact, Joint
from geometry.design.part import Part
from geometry.primitives.frame import dot

_LONG = 160.0  # mm
_SLENDER = 4.0  # a face less long for its width is no run
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
    runs_on = any(_is_long(contact) for contact in joint.contacts)
    return (
        joint.kind,
        round(joint.fit, _DECIMALS),
        tuple(_stuff(parts[name], whole=not runs_on) for name in joint.parts),
        tuple(_form(contact) for contact in joint.contacts),
        tuple(
            round(abs(dot(one.normal, other.normal)), 4)
            for one, other in combinations(joint.contacts, 2)
        ),
        tuple(measure.name for measure in joint.measures),
        tuple(round(m.value, _DECIMALS) for m in joint.measures if m.unit == "deg"),
    )


def _stuff(part: Part, *, whole: bool) -> Hashable:
    """What a part is made from, but for its length; the ``whole`` of it tells its width too."""
    blank = part.shape.blank
    width = round(blank.width, _DECIMALS) if whole else 0.0
    return (part.kind, part.material, round(blank.thickness, _DECIMALS), width)


def _form(contact: Contact) -> Hashable:
    """A face's shape: its sides and diagonals, whichever corner they start from."""
    spans = sorted(round(span, _DECIMALS) for span in _spans(contact))
    if _is_long(contact):
        spans = [span for span in spans if span <= _LONG]
    return (tuple(spans), round(contact.gap, 4))


def _is_long(contact: Contact) -> bool:
    """Whether a face runs on and on."""
    spans = _spans(contact)
    return bool(spans) and max(spans) > max(_LONG, _SLENDER * min(spans))


def _spans(contact: Contact) -> list[float]:
    return [math.dist(a, b) for a, b in combinations(contact.corners, 2)]
