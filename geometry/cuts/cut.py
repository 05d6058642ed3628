"""The few things that every cut can say about itself."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Protocol

from geometry.cuts.contour import Contour
from geometry.cuts.removal import Removal


@dataclass(frozen=True, slots=True)
class Blank:
    """The squared-up piece before its joints: mm along the grain, across, and through."""

    length: float
    width: float
    thickness: float


class Cut(Protocol):
    """A frozen value in the part's frame; the solid, the drawing and the DXF all read it."""

    def __hash__(self) -> int:
        """Equal cuts are one and the same to every cache."""
        ...

    @property
    def title(self) -> str:
        """The cut in the trade's words, such as ``stopped housing``."""
        ...

    def removals(self, blank: Blank) -> tuple[Removal, ...]:
        """The solids that the cut takes away from the blank."""
        ...

    def contours(self, blank: Blank) -> tuple[Contour, ...]:
        """The lines that the cut draws on a face, for DXF and templates; may be empty."""
        ...
