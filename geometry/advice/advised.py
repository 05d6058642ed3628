"""A piece of advice: what a brief asks of one size, why, and what taking it would change."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Advice:
    """``now`` is the bench's size, ``low`` to ``high`` what is advised (None: no such end), and
    ``wanted`` the size that taking it would give.

    ``reason`` is one sentence; lengths in it are written ``{12.7 mm}``.  ``changes`` are the
    values that taking it sets, all at once; none where it cannot be taken, and then ``hindrance``
    says why, or where there is nothing to set.  ``unit`` is mm or %.
    """

    name: str
    title: str
    unit: str
    reason: str
    source: str
    now: float | None = None
    low: float | None = None
    high: float | None = None
    wanted: float | None = None
    changes: tuple[tuple[str, float | str], ...] = ()
    hindrance: str = ""

    @property
    def off(self) -> float:
        """How far the size of now lies outside; 0 where it does not, or where there is none."""
        if self.now is None:
            return 0.0
        under = 0.0 if self.low is None else self.low - self.now
        over = 0.0 if self.high is None else self.now - self.high
        return max(0.0, under, over)

    @property
    def met(self) -> bool:
        return self.off <= CLOSE


CLOSE = 0.5  # mm: nobody feels less
