"""Dashed lines that run on one another, as a tenon's in its mortise do on paper, are drawn once.

Frame: sheet mm.

Method: two dashed lines nearer to each other than a line is wide fill each other's gaps, and look
like one that is seen.  Segments that go on from one another are taken as one line; a line all of
whose points lie so near to longer ones is left out.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np
import shapely
from numpy.typing import NDArray

from geometry.drawing.chains import DECIMALS, chains
from geometry.drawing.marks import Mark, Role, Strokes
from shared.line_styles import LINE_STYLES

Floats = NDArray[np.float64]

_NEAR = LINE_STYLES[Role.HIDDEN.value].width  # mm
_STEPS = np.array((0.25, 0.5, 0.75, 1.0))


def without_doubles(marks: Sequence[Mark]) -> tuple[Mark, ...]:
    """The marks of a sheet, hidden lines that lie on other hidden lines of their mark left out."""
    return tuple(
        _once(mark) if isinstance(mark, Strokes) and mark.role is Role.HIDDEN else mark
        for mark in marks
    )


def _once(mark: Strokes) -> Strokes:
    lines = [np.array(points) for points in chains(mark.segments)]
    dropped = _covered(lines)
    if not dropped:
        return mark
    kept = [line for k, line in enumerate(lines) if k not in dropped]
    segments = np.concatenate([np.hstack([line[:-1], line[1:]]) for line in kept])
    if mark.owner_of is None:
        return replace(mark, segments=segments)
    known = {_key(row): int(one) for row, one in zip(mark.segments, mark.owner_of, strict=True)}
    owner_of = np.array([known[_key(row)] for row in segments], dtype=np.intp)
    return replace(mark, segments=segments, owner_of=owner_of)


def _covered(lines: Sequence[Floats]) -> set[int]:
    """Which lines lie wholly on longer ones that stay."""
    drawn = np.array([shapely.LineString(points) for points in lines])
    tree = shapely.STRtree(drawn)
    length = shapely.length(drawn)
    dropped: set[int] = set()
    for k in np.argsort(length, kind="stable").tolist():
        start, run = lines[k][:-1, None], np.diff(lines[k], axis=0)[:, None]
        points = np.concatenate([lines[k][:1], (start + run * _STEPS[:, None]).reshape(-1, 2)])
        ends = shapely.points(points)
        others = [
            j
            for j in tree.query(ends[len(ends) // 2], predicate="dwithin", distance=_NEAR).tolist()
            if j != k and j not in dropped and length[j] >= length[k]
        ]
        if not others:
            continue
        near = shapely.distance(ends, shapely.union_all(drawn[others]))
        if near.max() < _NEAR:
            dropped.add(k)
    return dropped


def _key(row: Floats) -> tuple[tuple[float, float], tuple[float, float]]:
    """A segment, whichever end comes first; ends that go on from one another are one."""
    x0, y0, x1, y1 = np.round(row, DECIMALS).tolist()
    return min((x0, y0), (x1, y1)), max((x0, y0), (x1, y1))
