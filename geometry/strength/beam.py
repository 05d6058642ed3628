"""A straight beam of one section on two or more supports, under loads anywhere along it.

N, mm, MPa; X along the beam, sag and loads downward, moments that stretch the underside positive.
Ends may stand out over the outer supports.  Supports hold both ways and do not give.

Method: initial parameters.  A unit of upward force at s lowers the beam at x by -g(x - s), with
g(u) = u³ / (6 E I) - u / (G A') for u > 0: the curvature M / (E I) and the slope V / (G A') summed
up, the same bending and shear as in FPL-GTR-190 eq. 9-2, A' = 5/6 b h.  The sag and slope at the
left end and the reactions follow from no sag at the supports and from balance.  A load over a width
is the same with g averaged over it.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]

_STEPS = 20  # stations in each span; even, so that its middle is one
_POINT = 1e-6  # of the length: what is narrower is a point


@dataclass(frozen=True, slots=True)
class Beam:
    """From ``low`` to ``high``; ``supports`` ascending, at least two, at least ``low``, at most
    ``high``.  ``bending`` is E I in N mm², ``shearing`` G A' in N.  ``marked`` places are looked at
    beside the stations of every beam."""

    low: float
    high: float
    supports: tuple[float, ...]
    bending: float
    shearing: float
    marked: tuple[float, ...] = ()

    @property
    def length(self) -> float:
        return self.high - self.low

    def stations(self) -> Floats:
        """Both ends, the supports, and places between: all that is looked at, ascending."""
        marks = sorted({self.low, *self.supports, *self.marked, self.high})
        runs = [np.linspace(a, b, _STEPS + 1)[:-1] for a, b in pairwise(marks)]
        return np.concatenate([*runs, [self.high]])

    def spans_at(self, x: Floats) -> Floats:
        """The span that each place lies in; twice its length for one that stands out.

        At a support, where nothing sags, some length that is not 0.
        """
        marks = np.array([self.low, *self.supports, self.high])
        sizes = np.diff(marks)
        sizes[[0, -1]] *= 2.0
        inside = np.searchsorted(np.array(self.supports), x, side="left")
        spans = sizes[inside]
        return np.asarray(np.where(spans > 0.0, spans, self.length))


@dataclass(frozen=True, slots=True)
class Response:
    """``sag`` and ``moment`` by case and station, (c, n); ``reactions`` by case and support."""

    stations: Floats
    sag: Floats
    moment: Floats
    reactions: Floats

    @property
    def shear(self) -> Floats:
        """Between each two stations, (c, n - 1); exact where loads stand at stations."""
        return np.asarray(np.diff(self.moment, axis=1) / np.diff(self.stations))


def respond(beam: Beam, places: Floats, forces: Floats, width: float = 0.0) -> Response:
    """What the beam does under each case of loads.

    ``places`` (c, k) of the middles of k loads in c cases; ``forces`` (k,); each is spread evenly
    over ``width``.
    """
    size = beam.length
    at = (np.array(beam.supports) - beam.low) / size
    loads = (places - beam.low) / size
    half = width / 2.0 / size
    give = beam.bending / (beam.shearing * size**2)
    count = len(at)
    # Unknown: the reactions, then sag and slope at the left end, in units of L³ / (E I).
    matrix = np.zeros((count + 2, count + 2))
    matrix[:count, :count] = -_lowered(at[:, None] - at[None, :], 0.0, give)
    matrix[:count, count] = 1.0
    matrix[:count, count + 1] = at
    matrix[count, :count] = 1.0
    matrix[count + 1, :count] = at
    known: Floats = np.empty((count + 2, len(loads)))
    known[:count] = -(_lowered(at[:, None, None] - loads[None], half, give) @ forces)
    known[count] = forces.sum()
    known[count + 1] = loads @ forces
    found = np.asarray(np.linalg.solve(matrix, known).T, dtype=np.float64)
    reactions, left = np.asarray(found[:, :count]), found[:, count:]
    x = beam.stations()
    t = (x - beam.low) / size
    lifted = _lowered(t[:, None] - at[None, :], 0.0, give)
    apart = t[None, :, None] - loads[:, None, :]
    sag = left[:, :1] + left[:, 1:] * t - reactions @ lifted.T
    sag += _lowered(apart, half, give) @ forces
    moment: Floats = reactions @ np.maximum(t[:, None] - at[None, :], 0.0).T
    moment -= _arm(apart, half) @ forces
    return Response(x, sag * size**3 / beam.bending, moment * size, reactions)


def _lowered(u: Floats, half: float, give: float) -> Floats:
    """g, in units of L³ / (E I), of a force spread over twice ``half``."""
    if half < _POINT:
        ahead = np.maximum(u, 0.0)
        return np.asarray(ahead**3 / 6.0 - give * ahead)
    ends = [np.maximum(u + side, 0.0) for side in (half, -half)]
    summed = [one**4 / 24.0 - give * one**2 / 2.0 for one in ends]
    return np.asarray((summed[0] - summed[1]) / (2.0 * half))


def _arm(u: Floats, half: float) -> Floats:
    """How far ahead of a place a load acts there, averaged over the load's width."""
    if half < _POINT:
        return np.maximum(u, 0.0)
    first, last = np.maximum(u + half, 0.0), np.maximum(u - half, 0.0)
    return np.asarray((first**2 - last**2) / (4.0 * half))
