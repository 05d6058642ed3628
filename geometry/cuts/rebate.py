"""A rebate: a rectangular step along an edge, through or stopped."""

from __future__ import annotations

from dataclasses import dataclass

from geometry.cuts.pocket import Pocket


@dataclass(frozen=True, slots=True)
class Rebate(Pocket):
    """It runs out of the edge that it lies along."""

    @property
    def title(self) -> str:
        return "rebate"
