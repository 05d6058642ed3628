"""How the bench's own timber moves across its grain from one season to another, in mm.

``low``, ``made`` and ``high`` are % of moisture: in the driest air, when the bench is made, and in
the dampest.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from geometry.design.spec import BenchSpec
from shared.movement import movement


@dataclass(frozen=True, slots=True)
class Seasons:
    """As in the catalogue, whatever form the bench has."""

    timber: str
    sawn: str
    low: float
    made: float
    high: float

    def moved(self, far: float) -> tuple[float, float]:
        """How far a place so ``far`` across the grain from one that is fast goes back and on, from
        when the bench is made to the driest and to the dampest."""
        return (
            movement(far, self.timber, self.sawn, self.low, self.made),
            movement(far, self.timber, self.sawn, self.made, self.high),
        )


@lru_cache(maxsize=512)
def seasons(spec: BenchSpec) -> Seasons:
    """Read them from a spec."""
    return Seasons(
        spec.word("timber"),
        spec.word("fixing_sawn"),
        spec.number("moisture_low"),
        spec.number("moisture_made"),
        spec.number("moisture_high"),
    )
