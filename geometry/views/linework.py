"""What looking at solids gives: segments that know whether they are seen and whose they are."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from geometry.views.view import View


@dataclass(frozen=True, eq=False)
class Linework:
    """Segments of one view, n of them.

    ``segments``: (n, 4) float64, u0 v0 u1 v1 in mm.  ``visible``: (n,) bool.  ``owner``: (n,)
    intp, the index of the solid in the sequence that was looked at.  No two segments with the
    same visibility overlap, and no hidden one lies under a visible one.
    """

    view: View
    segments: NDArray[np.float64]
    visible: NDArray[np.bool_]
    owner: NDArray[np.intp]

    def bounds(self) -> tuple[float, float, float, float]:
        """Least u, least v, greatest u, greatest v in mm; zeros for an empty view."""
        return self._bounds

    @cached_property
    def _bounds(self) -> tuple[float, float, float, float]:
        if not len(self.segments):
            return (0.0, 0.0, 0.0, 0.0)
        u = self.segments[:, 0::2]
        v = self.segments[:, 1::2]
        return (float(u.min()), float(v.min()), float(u.max()), float(v.max()))
