"""A relief on a face side that can be set anew by itself: the crown of a piece.

Frame and units: the part's own frame, mm.

Where a relief reaches past the sides of a piece and lies above all that is cut into it otherwise,
there is upright-sided wood between the two.  Then the corners of the solid above that wood are
the points of the facets, trimmed to the sides; and while the same facets meet in the same order,
they may be put where the facets now have them, whatever the rest does.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from geometry.cuts.cut import Blank
from geometry.cuts.removal import HalfSpace, Hollow, Hull, Prism, Removal
from geometry.primitives.facets import Facets, Rectangle, trimmed
from geometry.primitives.path import arc_centre
from geometry.solids.solid import Indices, Solid

_CLEAR = 1e-2
"""mm of upright-sided wood that there must be below the relief."""

_SAME = 1e-6
"""mm within which a corner of a solid is a point of the facets."""


def crown_of(blank: Blank, removals: Sequence[Removal]) -> Facets | None:
    """The relief between the sides of a piece; None where there is none to be set by itself."""
    reliefs = [removal for removal in removals if isinstance(removal, Hollow)]
    others = [removal for removal in removals if not isinstance(removal, Hollow)]
    if len(reliefs) != 1:
        return None
    sides = _sides(blank, [one for one in others if isinstance(one, HalfSpace)])
    if sides is None or not _reaches_past(reliefs[0].facets, sides):
        return None
    crown = trimmed(reliefs[0].facets, sides)
    deepest = max(z for _, _, z in crown.points)
    below = (_least_depth(one) for one in others if not isinstance(one, HalfSpace))
    return crown if deepest + _CLEAR < min(below, default=blank.thickness) else None


@dataclass(frozen=True, slots=True, eq=False)
class CrownCorners:
    """Which corners of a solid, (c,), are which points of its crown, (c,)."""

    corners: Indices
    points: Indices


NONE = CrownCorners(np.empty(0, np.intp), np.empty(0, np.intp))


def crown_corners(solid: Solid, crown: Facets) -> CrownCorners | None:
    """The corners of a solid, as it was cut, that are the points of its crown.

    None where some have no counterpart, or where facets lie in one plane and show no arris.
    """
    points = np.array(crown.points)
    above = np.flatnonzero(solid.vertices[:, 2] < points[:, 2].max() + _CLEAR / 2.0)
    apart = np.abs(solid.vertices[above, None] - points).max(axis=2)
    # Where an arris ends hard by a corner the kernel may have kept two corners for one.
    if apart.min(axis=0).max() > _SAME or apart.min(axis=1).max() > _SAME:
        return None
    nearest = apart.argmin(axis=1)
    known = np.full(len(solid.vertices), -1)
    known[above] = nearest
    drawn = {tuple(sorted(ends)) for ends in known[solid.edges].tolist()}
    return CrownCorners(above, nearest) if drawn.issuperset(crown.arrises) else None


def _sides(blank: Blank, planes: Sequence[HalfSpace]) -> Rectangle | None:
    """The rectangle that upright saw cuts leave of the blank; None if any cut is another."""
    x_low, y_low, x_high, y_high = 0.0, 0.0, blank.length, blank.width
    for plane in planes:
        x, y, _ = plane.point
        match plane.outward:
            case (1.0, 0.0, 0.0):
                x_high = min(x_high, x)
            case (-1.0, 0.0, 0.0):
                x_low = max(x_low, x)
            case (0.0, 1.0, 0.0):
                y_high = min(y_high, y)
            case (0.0, -1.0, 0.0):
                y_low = max(y_low, y)
            case _:
                return None
    return (x_low, y_low, x_high, y_high)


def _reaches_past(facets: Facets, sides: Rectangle) -> bool:
    x_low, y_low, x_high, y_high = sides
    across = [x for x, _, _ in facets.points]
    along = [y for _, y, _ in facets.points]
    return (
        min(across) < x_low - _SAME
        and max(across) > x_high + _SAME
        and min(along) < y_low - _SAME
        and max(along) > y_high + _SAME
    )


def _least_depth(removal: Prism | Hull) -> float:
    """A depth below the face side above which a removal certainly takes nothing."""
    if isinstance(removal, Hull):
        return min(z for _, _, z in removal.points)
    vertices, heights = removal.path.vertices, (removal.z_low, removal.z_high)
    depths = [removal.frame.to_bench((x, y, h))[2] for x, y, _ in vertices for h in heights]
    for start, end in zip(vertices, (*vertices[1:], vertices[0]), strict=True):
        if start[2]:
            (x, y), radius = arc_centre(start[:2], end[:2], start[2])
            depths += [removal.frame.to_bench((x, y, h))[2] - radius for h in heights]
    return min(depths)
