"""How near a hollow in a piece comes to another cut of the same piece.

Frame and units: the part's own frame, mm.  Method: to a saw cut, from its plane to the nearest
corner of the box round the hollow; to anything else, the least distance of the two solids.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from geometry.cuts.cut import Blank
from geometry.cuts.removal import PART_FRAME, HalfSpace, Prism, Removal
from geometry.cuts.slot_mortise import SlotMortise
from geometry.design.part import Shape
from geometry.primitives.frame import dot, subtract
from geometry.solids.kernel import common_volume, gap, waste_of

_WHOLLY = 0.999  # share of a hollow beyond which it lies in another cut's waste altogether


@dataclass(frozen=True, slots=True)
class Near:
    """A cut, or a face of the blank, and how much wood is left before it; 0 where they meet."""

    title: str
    distance: float


@lru_cache(maxsize=1024)
def nearest(shape: Shape, mortise: SlotMortise, search: float) -> Near | None:
    """What comes nearest to a mortise of ``shape``, other than the face that it is cut in.

    None where nothing comes within ``search``, or where the mortise goes off with the waste.
    """
    found = [*_faces(shape.blank, mortise)]
    for cut in shape.cuts:
        if cut == mortise:
            continue
        for removal in cut.removals(shape.blank):
            if isinstance(removal, HalfSpace) and _holds_the_mouth(removal, mortise):
                continue
            distance = _distance(removal, mortise, search)
            if distance is None:
                return None
            found.append(Near(cut.title, distance))
    least = min(found, key=lambda one: one.distance)
    return least if least.distance < search else None


def _faces(blank: Blank, mortise: SlotMortise) -> list[Near]:
    """The faces of the blank, but for the one in which the mouth lies."""
    sizes = (blank.length, blank.width, blank.thickness)
    names = (("left end", "right end"), ("face edge", "far edge"), ("face side", "reverse"))
    found = []
    for axis, (low, high) in enumerate(names):
        if abs(mortise.into[axis]) > 1.0 - 1e-9:
            at = [p[axis] for p in mortise.box()]
            far = max(at) if mortise.into[axis] > 0.0 else min(at)
            name, room = (high, sizes[axis] - far) if mortise.into[axis] > 0.0 else (low, far)
            found.append(Near(name, max(0.0, room)))
            continue
        places = [p[axis] for p in mortise.box()]
        found.append(Near(low, max(0.0, min(places))))
        found.append(Near(high, max(0.0, sizes[axis] - max(places))))
    return found


def _holds_the_mouth(plane: HalfSpace, mortise: SlotMortise) -> bool:
    """Whether the mortise is cut into the face that this saw cut leaves."""
    off = dot(subtract(mortise.middle, plane.point), plane.outward)
    return abs(off) < 1e-6 and dot(plane.outward, mortise.into) < -1.0 + 1e-9


def _distance(removal: Removal, mortise: SlotMortise, search: float) -> float | None:
    """From a hollow to a removal, up to ``search``; None where the removal takes all of it."""
    if isinstance(removal, HalfSpace):
        outs = [dot(subtract(p, removal.point), removal.outward) for p in mortise.box()]
        return None if min(outs) >= 0.0 else max(0.0, -max(outs))
    hollow = mortise.hollow()
    body, waste = waste_of(hollow), waste_of(removal)
    distance = gap(body, PART_FRAME, waste, PART_FRAME, search)
    if distance > 0.0:
        return distance
    whole = _volume(hollow)
    taken = common_volume(body, PART_FRAME, waste, PART_FRAME)
    return None if taken >= _WHOLLY * whole else 0.0


def _volume(hollow: Prism) -> float:
    body = waste_of(hollow)
    return common_volume(body, PART_FRAME, body, PART_FRAME)
