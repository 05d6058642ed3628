"""An outside judge of joints: whether two parts really meet where their joint says they do.

Frame and units: bench frame, mm.

Method: at points of each contact, a step behind the face must be wood of the first part, a step
beyond the clearance wood of the second, and the clearance between them air of both.  What is wood
is told by winding numbers (see ``inside``), not by the kernel that cut it.  Other joints and the
treatment of edges may take some of a contact away, so not every point has to meet.
"""

from __future__ import annotations

import numpy as np

from geometry.bench.bench import Bench
from geometry.design.joint import Contact, Joint
from geometry.solids.cutting import placed
from tests.judges.inside import Floats, inside

STEP = 0.01  # mm; less than any clearance that is worth stating


def gapes(bench: Bench, joint: Joint, least: float = 0.5) -> list[str]:
    """What is wrong with the contacts of a joint, in words; empty when all is well.

    ``least`` is the share of points at which both parts have to be there.
    """
    first, second = (placed(bench.part(name)) for name in joint.parts)
    wrong: list[str] = []
    for number, contact in enumerate(joint.contacts):
        points, normal = points_of(contact), np.array(contact.normal)
        here = inside(first, points - STEP * normal)
        there = inside(second, points + (contact.gap + STEP) * normal)
        if (here & there).mean() < least:
            share = f"{here.mean():.2f} and {there.mean():.2f} of the points have wood"
            wrong.append(f"{joint.name}, contact {number}: {share}")
        if contact.gap > 3.0 * STEP:
            for deep in (STEP, contact.gap / 2.0, contact.gap - STEP):
                between = points + deep * normal
                if inside(first, between).any() or inside(second, between).any():
                    wrong.append(f"{joint.name}, contact {number}: wood in the gap")
    return wrong


def points_of(contact: Contact) -> Floats:
    """Points of a convex contact: its middle, and some toward each corner."""
    corners = np.array(contact.corners)
    middle = corners.mean(axis=0)
    shares = np.array((0.4, 0.9))[:, None, None]
    return np.concatenate([middle[None], (middle + shares * (corners - middle)).reshape(-1, 3)])
