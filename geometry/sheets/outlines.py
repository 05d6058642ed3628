"""What can be measured in a view, and a measure drawn there.

Frame and units: (u, v) of the view, mm and degrees.
"""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np

from geometry.design.joint import Measure
from geometry.dimensioning.dimension import Dimension
from geometry.primitives.frame import Vec2, dot
from geometry.solids.solid import Flags, Floats
from geometry.views.view import View
from shared.paper import largest_scale

MEET = 1e-3  # mm: points and lines nearer than this meet
_FACE = 0.01  # mm
_PARALLEL = 1.0 - 1e-7  # cosine
SHORT = 1.5  # mm: too short an edge to tell a direction
USUAL = (60.0, 46.0)  # mm of paper that a view usually gets

# What makes a place less plain, in percent of the view's size that it lies aside.
HIDDEN = 8.0
_TINY = 12.0  # to be no more than a point


@dataclass(frozen=True, slots=True, eq=False)
class Outlines:
    """What can be measured in a view.

    ``corners`` (n, 2); ``own`` and ``seen`` (n,) tell which of them the joint makes and which are
    seen.  ``edges`` (m, 4) with ``own_edges`` and ``seen_edges`` (m,).  ``limits`` (k, 2) are how
    far the whole parts reach along u and along v: there are the faces, edges and ends that a maker
    measures from.  ``size`` is the larger of the view's width and height.
    """

    view: View
    corners: Floats
    own: Flags
    seen: Flags
    edges: Floats
    own_edges: Flags
    seen_edges: Flags
    limits: Floats
    size: float

    usual_scale: float = field(init=False)  # at which such a view is likely to be drawn

    def __post_init__(self) -> None:
        scale = 1.0
        if len(self.edges):
            wide, high = np.ptp(self.edges.reshape(-1, 2), axis=0).tolist()
            most = min(2.0, USUAL[0] / max(wide, 1.0), USUAL[1] / max(high, 1.0))
            scale = largest_scale(most).factor
        object.__setattr__(self, "usual_scale", scale)

    def outer(self, at: Floats, axis: int) -> Flags:
        """Which of some places along u (axis 0) or v (1) are as far out as a part reaches."""
        return np.asarray((np.abs(at[:, None] - self.limits[:, axis]) < _FACE).any(axis=1))

    def turns(self, measure: Measure) -> bool:
        """Whether an angle is seen true: one looks along the axis that it turns about."""
        return measure.along is None or abs(dot(measure.along, self.view.toward)) > _PARALLEL


@dataclass(frozen=True, slots=True)
class Drawn:
    """A measure as a dimension of a view, and how far it is from plain; less is better."""

    measure: int
    dimension: Dimension
    cost: float

    @property
    def key(self) -> tuple[float, ...]:
        """Equal for dimensions that show the same: between the same lines, or the same angle."""
        one = self.dimension
        if one.apex is not None:
            return (*(round(c, 2) for c in one.apex), round(one.value, 2))
        reach = sorted(p[0] * one.along[0] + p[1] * one.along[1] for p in (one.start, one.end))
        return tuple(round(c, 2) for c in (*one.along, *reach))


def tiny(size: float, outlines: Outlines, readable: float) -> float:
    """What it costs that a size in mm comes out smaller than is ``readable`` on paper, the view
    being drawn at its usual scale."""
    drawn = size * outlines.usual_scale
    return _TINY * max(0.0, 1.0 - drawn / readable)


def length_of(
    measure: Measure, view: View, points: tuple[Vec2, Vec2], along: Vec2, side: int
) -> Dimension:
    return Dimension(
        measure.name,
        measure.meaning,
        view.name,
        measure.value,
        "mm",
        *points,
        along,
        side,
        1,
    )


def as_point(at: Floats) -> Vec2:
    x, y = at.tolist()
    return (x, y)
