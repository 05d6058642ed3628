"""A faceted relief carved into the face side: flat facets that meet in arrises, each at its depth.

The facets may run on past the blank; what counts is what lies over it.
"""

from __future__ import annotations

from dataclasses import dataclass

from geometry.cuts.contour import Contour, Face, Operation
from geometry.cuts.cut import Blank
from geometry.cuts.overrun import OVERRUN
from geometry.cuts.removal import Hollow, Removal
from geometry.primitives.facets import Facets
from geometry.primitives.path import Path


@dataclass(frozen=True, slots=True)
class Relief:
    """The facets in the part's frame, z their depth below the face side; they cover the blank."""

    facets: Facets

    @property
    def title(self) -> str:
        return "faceted relief"

    def removals(self, blank: Blank) -> tuple[Removal, ...]:  # noqa: ARG002
        return (Hollow(self.facets, -OVERRUN),)

    def contours(self, blank: Blank) -> tuple[Contour, ...]:  # noqa: ARG002
        """The arrises, as lines to carve to."""
        points = self.facets.points
        return tuple(
            Contour(Operation.SCRIBE, Face.FACE_SIDE, Path.line(points[a][:2], points[b][:2]))
            for a, b in self.facets.arrises
        )
