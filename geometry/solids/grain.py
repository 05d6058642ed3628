"""The lines of the grain through a piece: where each runs in wood, for how far, and where it ends.

Frame and units: the part's own frame, mm; the grain runs along x.  Method: lines in the middles of
a mesh over the piece's section are cut with the triangles of its surface; between every other two
crossings a line runs in wood.  It ends in a side of the piece where the surface lies flatter than
45 degrees to the grain, else in an end.  Only the cuts that shape the piece count: what a mortise
takes from a line is made good by the tenon in it.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from geometry.cuts.run_out import RunOut
from geometry.cuts.saw import SawCut
from geometry.cuts.shaped_edge import ShapedEdge
from geometry.design.part import Shape
from geometry.primitives.frame import Vec3
from geometry.solids.cutting import solid_of
from geometry.solids.solid import Flags, Floats, frozen

_ACROSS = 12  # lines from side to side of a piece, each way
_OFF = 3e-7  # share of a cell by which lines keep off the edges of the surface
_END = 0.7  # sine of the slope beyond which a surface is an end: that of a mitre is
_FLAT = 1e-9
_INSIDE = 0.01  # mm from an end, where the section is still whole

_Shaping = SawCut | ShapedEdge | RunOut


@dataclass(frozen=True, slots=True, eq=False)
class Runs:
    """Stretches in wood: n of them, each on the line at ``y``, ``z`` from ``start`` to ``end``.

    ``from_side`` and ``to_side`` tell whether they end in a side of the piece, not in its end.
    """

    y: Floats
    z: Floats
    start: Floats
    end: Floats
    from_side: Flags
    to_side: Flags

    @property
    def length(self) -> Floats:
        return self.end - self.start

    def at(self, x: float) -> Flags:
        """Those that are in wood at a station, (n,)."""
        return (self.start < x) & (self.end > x)


@dataclass(frozen=True, slots=True)
class ShortGrain:
    """A section of which a share, 0 to 1, has short grain; ``place`` is in the middle of that."""

    share: float
    place: Vec3


def runs_out_at_both(shape: Shape) -> bool:
    """Whether some grain may run out at both sides: by a bent edge, or sides that slant either
    way."""
    slopes = _slants(shape)
    return _is_bent(shape) or (min(slopes, default=0.0) < 0.0 < max(slopes, default=0.0))


def runs_out_from(shape: Shape, *, far: bool) -> bool:
    """Whether grain that comes to the far or the near end may run out at a side before."""
    return _is_bent(shape) or any((slope < 0.0) == far for slope in _slants(shape))


def _is_bent(shape: Shape) -> bool:
    return any(isinstance(cut, ShapedEdge | RunOut) for cut in shape.cuts)


def _slants(shape: Shape) -> list[float]:
    """Of the sawn sides, each as the share of its outward direction that is along the grain."""
    slopes = [cut.outward[0] for cut in shape.cuts if isinstance(cut, SawCut)]
    return [slope for slope in slopes if 1e-6 < abs(slope) < _END]


@lru_cache(maxsize=1024)
def shaped(shape: Shape) -> Shape:
    """The piece as it is sawn to shape, before its joints."""
    return Shape(shape.blank, tuple(cut for cut in shape.cuts if isinstance(cut, _Shaping)))


@lru_cache(maxsize=1024)
def runs_of(shape: Shape) -> Runs:
    """All stretches of the lines of grain of a piece."""
    solid = solid_of(shape)
    a, b, c = (solid.vertices[corner] for corner in solid.triangles.T)
    slope = np.abs(np.cross(b - a, c - a)[:, 0]) / np.linalg.norm(np.cross(b - a, c - a), axis=1)
    # Twice the areas that each line spans with the sides of each triangle, seen along the grain.
    whole = _area(a, b, c[:, 1], c[:, 2])
    seen = np.flatnonzero(np.abs(whole) > _FLAT)
    a, b, c, whole, slope = a[seen], b[seen], c[seen], whole[seen], slope[seen]
    y, z = _mesh(solid.vertices)
    shares = [_area(p, q, y[:, None], z[:, None]) / whole for p, q in ((b, c), (c, a), (a, b))]
    line, face = np.nonzero((shares[0] > 0.0) & (shares[1] > 0.0) & (shares[2] > 0.0))
    x = sum(
        share[line, face] * corner[face, 0] for share, corner in zip(shares, (a, b, c), strict=True)
    )
    order = np.lexsort((x, line))
    # A line that grazes an edge may miss one of its two crossings; such lines are left out.
    order = order[(np.bincount(line, minlength=len(y)) % 2 == 0)[line[order]]]
    first, last = order[0::2], order[1::2]
    sides = slope[face] < _END
    return Runs(
        frozen(y[line[first]]),
        frozen(z[line[first]]),
        frozen(x[first]),
        frozen(x[last]),
        frozen(sides[first]),
        frozen(sides[last]),
    )


def _mesh(vertices: Floats) -> tuple[Floats, Floats]:
    """The middles of the cells over the section, (n,) each, a hair off the middle."""
    low, high = vertices.min(axis=0), vertices.max(axis=0)
    shares = (np.arange(_ACROSS) + 0.5) / _ACROSS
    y, z = np.meshgrid(
        low[1] + (shares + _OFF) * (high[1] - low[1]),
        low[2] + (shares + 2.7 * _OFF) * (high[2] - low[2]),
        indexing="ij",
    )
    return y.ravel(), z.ravel()


def _area(p: Floats, q: Floats, y: Floats, z: Floats) -> Floats:
    return np.asarray((q[:, 1] - p[:, 1]) * (z - p[:, 2]) - (q[:, 2] - p[:, 2]) * (y - p[:, 1]))


@lru_cache(maxsize=1024)
def across_grain(shape: Shape, times: float) -> ShortGrain | None:
    """The section of which most runs out at both sides of the piece, in less than ``times`` the
    section's lesser size; None where no grain does."""
    piece = shaped(shape)
    runs = runs_of(piece)
    both = runs.from_side & runs.to_side
    worst: ShortGrain | None = None
    for x in np.unique(np.round((runs.start[both] + runs.end[both]) / 2.0, 1)).tolist():
        there = runs.at(x)
        found = _share(runs, there, both & there, times * _lesser_size(piece, x), x)
        if found is not None and (worst is None or found.share > worst.share):
            worst = found
    return worst


@lru_cache(maxsize=1024)
def at_end(shape: Shape, times: float, *, far: bool) -> ShortGrain | None:
    """The same for the grain that comes to the far or the near end: what of it runs out at a side
    so soon; None where all goes on."""
    piece = shaped(shape)
    runs = runs_of(piece)
    ends, here, there = (
        (runs.end, runs.to_side, runs.from_side)
        if far
        else (runs.start, runs.from_side, runs.to_side)
    )
    if here.all():
        return None
    outermost = ends[~here].max() if far else ends[~here].min()
    at = ~here & (np.abs(ends - outermost) < max(shape.blank.width, shape.blank.thickness))
    inside = float(ends[at].min() - _INSIDE if far else ends[at].max() + _INSIDE)
    short = times * _lesser_size(piece, inside)
    return _share(runs, at, at & there, short, float(ends[at].mean()))


def _share(runs: Runs, section: Flags, ending: Flags, short: float, x: float) -> ShortGrain | None:
    few = ending & (runs.length < short)
    if not few.any():
        return None
    place = (x, float(runs.y[few].mean()), float(runs.z[few].mean()))
    return ShortGrain(float(few.sum() / section.sum()), place)


def _lesser_size(shape: Shape, x: float) -> float:
    """Of the section at a station, along y or z."""
    solid = solid_of(shape)
    beyond = solid.vertices[:, 0] > x
    crossed = solid.edges[beyond[solid.edges].sum(axis=1) == 1]
    if not len(crossed):
        return 0.0
    first, second = solid.vertices[crossed[:, 0]], solid.vertices[crossed[:, 1]]
    share = (x - first[:, 0]) / (second[:, 0] - first[:, 0])
    places = first[:, 1:] + share[:, None] * (second[:, 1:] - first[:, 1:])
    return float(np.ptp(places, axis=0).min())
