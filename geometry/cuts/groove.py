"""A groove: a square channel in a face, along the grain or across it, through or stopped."""

from __future__ import annotations

from dataclasses import dataclass

from geometry.cuts.pocket import Pocket


@dataclass(frozen=True, slots=True)
class Groove(Pocket):
    """An end that reaches no end or edge of the blank is stopped, and square."""

    @property
    def title(self) -> str:
        return "groove"
