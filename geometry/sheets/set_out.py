"""What a joint's detail still lacks for its lines to be marked: dimensions from reference faces.

Frame and units: a part's own for places (axis 0 along the grain from the left end, 1 across from
the face edge, 2 through from the face side), (u, v) of a view for dimensions, mm.

Method: each line of the joint on a part that is not told from a reference face yet (see ``ties``)
is given a dimension: from another line that is, if a third runs between the two, or from the face
edge, the face side or the nearer end.  Where that face is not in the picture, or the line lies
elsewhere at joints that share the detail, no dimension is true, and the place is told in words.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np
import shapely

from geometry.design.faces import FACES
from geometry.dimensioning.dimension import Dimension
from geometry.primitives.frame import dot
from geometry.sheets.joint_figures import PartFigure
from geometry.sheets.joint_lines import NEAR, MarkedLines
from geometry.sheets.measured_lengths import side_of
from geometry.sheets.outlines import HIDDEN
from geometry.sheets.ties import Ties
from geometry.solids.solid import Flags, Floats
from geometry.views.joint_scene import JointPart

_ALONG = 1.0 - 1e-6  # cosine
_SEEN = 2e-3  # mm
_NEW_VIEW = 20.0  # what it costs to show a view for one dimension, in percent of its size aside
_ASIDE = 0.25  # of what it costs a size: a place is told as well from a corner farther off
_MOST = 45.0  # a place that costs more is none


@dataclass(frozen=True, slots=True)
class Added:
    """A dimension that a view of a part has to carry."""

    figure: PartFigure
    dimension: Dimension
    base: int  # the node that it starts from, -1 the reference
    node: int


@dataclass(frozen=True, slots=True)
class Offered:
    """The views of a part: those that are shown, and those that may be."""

    shown: tuple[PartFigure, ...]
    more: tuple[PartFigure, ...]


def set_out(
    one: JointPart, ties: Ties, views: Offered, alike: Callable[[], Sequence[MarkedLines]]
) -> tuple[list[Added], list[int]]:
    """The dimensions that a part's lines lack, and the axes along which words must tell the place.

    ``alike`` finds the lines of the same part at other joints that share the detail; it is asked
    only where something lacks.
    """
    added: list[Added] = []
    in_words: list[int] = []
    setter = _Setter(one, ties, views, alike)
    for axis in (1, 2, 0):
        while loose := ties.loose(axis):
            found = setter.best(axis, loose)
            if found is None:
                if not ties.told_in_words(axis):
                    in_words.append(axis)
                    ties.tie((axis, loose[0]), (axis, -1))
                continue
            added.append(found)
            ties.tie((axis, found.node), (axis, found.base))
            ties.add_dimension(found.figure.view, found.dimension)
            setter.show(found.figure)
    return added, sorted(set(in_words))


class _Setter:
    """Looks for the plainest place of a dimension."""

    def __init__(
        self,
        one: JointPart,
        ties: Ties,
        views: Offered,
        alike: Callable[[], Sequence[MarkedLines]],
    ) -> None:
        self._one = one
        self._ties = ties
        self._shown = list(views.shown)
        self._more = list(views.more)
        self._find_alike = alike
        frame = one.part.frame
        self._axes = np.array((frame.x_axis, frame.y_axis, frame.z_axis))
        self._origin = np.array(frame.origin)

    @cached_property
    def _alike(self) -> Sequence[MarkedLines]:
        return self._find_alike()

    def show(self, figure: PartFigure) -> None:
        """A view that carries one dimension may carry others."""
        if figure in self._more:
            self._more.remove(figure)
            self._shown.append(figure)

    def best(self, axis: int, loose: Sequence[int]) -> Added | None:
        """The plainest dimension that places one of some nodes."""
        found = min(self._tries(axis, loose), key=lambda one: one[0], default=None)
        return found[1] if found is not None and found[0] < _MOST else None

    def _tries(self, axis: int, loose: Sequence[int]) -> Iterator[tuple[float, Added]]:
        values, limits = self._ties.values[axis], self._ties.lines.limits[:, axis]
        known = [k for k in range(len(values)) if k not in loose]
        for k in loose:
            for j in known:
                if self._between(axis, j, k) and self._common_size(axis, values[k] - values[j]):
                    yield from self._places(axis, float(values[j]), (j, k), extra=0.0)
            from_low, from_high = values[k] - limits[0], limits[1] - values[k]
            ways = [(from_low, 0), (from_high, 1)]
            if axis == 0:
                ways.sort()
            for rank, (away, limit) in enumerate(ways):
                if self._common_place(axis, float(away)):
                    # Nearer lines first: those farther on are then told from them.
                    extra = 20.0 * rank + 5.0 * away / max(float(limits[1] - limits[0]), 1.0)
                    yield from self._places(axis, float(limits[limit]), (-1, k), extra=extra)

    def _between(self, axis: int, j: int, k: int) -> bool:
        """Whether a line runs along an axis from one node to another."""
        values = self._ties.values[axis]
        reach = np.sort(self._ties.lines.ends[..., axis], axis=1)
        low, high = sorted((values[j], values[k]))
        return bool(
            ((np.abs(reach[:, 0] - low) < NEAR) & (np.abs(reach[:, 1] - high) < NEAR)).any()
        )

    def _common_place(self, axis: int, away: float) -> bool:
        """Whether at every joint alike some line is so far from an end or a face.

        Of pieces that are mirror images one may be marked on a face, its fellow on an edge.
        """
        axes = (0,) if axis == 0 else (1, 2)
        return all(
            any(
                (np.abs(np.abs(other.values(a)[:, None] - other.limits[:, a]) - away) < NEAR).any()
                for a in axes
            )
            for other in self._alike
        )

    def _common_size(self, axis: int, size: float) -> bool:
        axes = (0,) if axis == 0 else (1, 2)
        sizes = [
            [np.abs(v[:, None] - v) for a in axes for v in (one.values(a),)] for one in self._alike
        ]
        return all(any((np.abs(each - abs(size)) < NEAR).any() for each in some) for some in sizes)

    def _places(
        self, axis: int, start: float, nodes: tuple[int, int], *, extra: float
    ) -> Iterator[tuple[float, Added]]:
        for new, figures in ((0.0, self._shown), (_NEW_VIEW, self._more)):
            for figure in figures:
                for cost, dimension in self._in_view(figure, axis, start, nodes[1]):
                    yield cost + new + extra, Added(figure, dimension, *nodes)

    def _in_view(
        self, figure: PartFigure, axis: int, start: float, node: int
    ) -> Iterator[tuple[float, Dimension]]:
        """Dimensions in one view between a place of the part and the corners of a node's lines."""
        view, outlines = figure.view, figure.outlines
        flat = np.array((view.right, view.up))
        along = flat @ self._axes[axis]
        if np.abs(along).max() < _ALONG:
            return
        across = int(np.abs(along).argmin())
        at = 1 - across
        local = self._corners(axis, node)
        bench = local @ self._axes + self._origin
        seen = self._seen(figure, bench @ flat.T)
        feet = local.copy()
        feet[:, axis] = start
        kept = self._in_picture(bench) & self._in_picture(feet @ self._axes + self._origin)
        where = dot(tuple(self._origin.tolist()), (view.right, view.up)[at]) + start * along[at]
        for point, is_seen in zip((bench @ flat.T)[kept], seen[kept], strict=True):
            foot = _foot(figure, at, float(where), point)
            if foot is None:
                continue
            aside = _ASIDE * abs(foot[across] - point[across]) / outlines.size * 100.0
            away = abs(float(foot[at] - point[at]))
            if away < NEAR:
                continue
            points = ((float(foot[0]), float(foot[1])), (float(point[0]), float(point[1])))
            way = (1.0, 0.0) if at == 0 else (0.0, 1.0)
            dimension = Dimension(
                f"place_{axis}",
                f"from the {(self._one.part.ends, *FACES[1:])[axis][0]}",
                view.name,
                away,
                "mm",
                *points,
                way,
                side_of(*points, at, outlines),
                1,
            )
            yield aside + (0.0 if is_seen else HIDDEN), dimension

    def _corners(self, axis: int, node: int) -> Floats:
        """The ends of the lines at a node, each once, (n, 3)."""
        lines, value = self._ties.lines, self._ties.values[axis][node]
        mine = lines.placed[:, axis] & (np.abs(lines.ends[..., axis] - value) < NEAR).all(axis=1)
        return np.asarray(np.unique(np.round(lines.ends[mine].reshape(-1, 3), 4), axis=0))

    def _in_picture(self, points: Floats) -> Flags:
        """Which points of the bench (n, 3) lie where the part is not cut short."""
        kept = np.ones(len(points), dtype=np.bool_)
        for plane in self._one.breaks:
            kept &= (points - np.array(plane.point)) @ np.array(plane.outward) < _SEEN
        return kept

    def _seen(self, figure: PartFigure, points: Floats) -> Flags:
        lines = figure.lines.linework
        drawn = shapely.multilinestrings(
            shapely.linestrings(lines.segments[lines.visible].reshape(-1, 2, 2))
        )
        return np.asarray(shapely.distance(shapely.points(points), drawn) < _SEEN)


def _foot(figure: PartFigure, at: int, where: float, point: Floats) -> Floats | None:
    """Where a dimension starts: straight across from a point, or at the nearest corner of what
    lies there; None where nothing of the part is drawn there."""
    ends = figure.outlines.edges.reshape(-1, 2, 2)
    level = (np.abs(ends[..., at] - where) < NEAR).all(axis=1)
    low, high = ends[level][..., 1 - at].min(axis=1), ends[level][..., 1 - at].max(axis=1)
    foot = point.copy()
    foot[at] = where
    if ((low <= point[1 - at]) & (point[1 - at] <= high)).any():
        return foot
    corners = figure.outlines.corners
    there = corners[np.abs(corners[:, at] - where) < NEAR]
    if not len(there):
        return None
    return np.asarray(there[np.abs(there[:, 1 - at] - point[1 - at]).argmin()])
