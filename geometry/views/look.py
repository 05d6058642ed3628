"""Looking at solids: the lines of a view.

Frame and units: (u, v) of the view, mm.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from geometry.design.part import Part
from geometry.primitives.frame import BENCH_FRAME
from geometry.solids.cutting import placed, placed_shape
from geometry.solids.solid import PlacedSolid
from geometry.views.hidden_lines import stretches_of
from geometry.views.linework import Linework
from geometry.views.merging import merged
from geometry.views.scene import scene_of
from geometry.views.view import View


def look(solids: Sequence[PlacedSolid], view: View) -> Linework:
    """The visible and hidden lines of solids seen together; owners are indices into ``solids``."""
    return look_at_solids(solids, (view,))[0]


def look_at_solids(solids: Sequence[PlacedSolid], views: Sequence[View]) -> tuple[Linework, ...]:
    """One linework for each view of the solids; owners are indices into ``solids``."""
    if not solids or not views:
        return tuple(
            Linework(view, np.empty((0, 4)), np.empty(0, np.bool_), np.empty(0, np.intp))
            for view in views
        )
    scene = scene_of(solids, views)
    pieces = merged(scene.lines, stretches_of(scene), len(solids))
    view_of, owner = np.divmod(pieces.place, len(solids))
    bounds = np.searchsorted(view_of, np.arange(len(views) + 1))
    return tuple(
        Linework(
            view,
            pieces.segments[start:stop],
            pieces.visible[start:stop],
            owner[start:stop],
        )
        for view, start, stop in zip(views, bounds[:-1], bounds[1:], strict=True)
    )


def look_all(parts: Sequence[Part], views: Sequence[View]) -> tuple[Linework, ...]:
    """One linework for each view of the parts; owners are indices into ``parts``.

    Raises CannotBuild, naming the part, when the cuts of one leave nothing of it.
    """
    return look_at_solids([placed(part) for part in parts], views)


def look_at_part(part: Part, view: View) -> Linework:
    """The part alone, in its own frame."""
    return look((placed_shape(part.shape, BENCH_FRAME),), view)
