"""A part is a blank and a list of cuts, placed in the bench by a frame."""

from __future__ import annotations

from dataclasses import dataclass, field

from geometry.cuts.cut import Blank, Cut
from geometry.primitives.frame import Frame, Vec3

_UPRIGHT = 0.7  # of a unit direction: within some 45° of the vertical


@dataclass(frozen=True, slots=True)
class Shape:
    """What is made, wherever it stands: equal shapes are cut alike and share one solid.

    Its hash is made once, as many caches ask for it at each step of a drag.
    """

    blank: Blank
    cuts: tuple[Cut, ...]
    _hash: int = field(default=0, init=False, repr=False, compare=False)

    def __hash__(self) -> int:
        if not self._hash:
            object.__setattr__(self, "_hash", hash((self.blank, self.cuts)) or 1)
        return self._hash


@dataclass(frozen=True, slots=True)
class Part:
    """One piece of the bench.

    ``name`` is unique and fit for a file name (``leg_front_left``); ``title`` is for people
    (``Leg, front left``).  ``material`` names a row of the timber or sheet tables; ``kind``
    groups like with like in lists (``leg``).  ``allowance`` is what the blank is longer than the
    finished part, and ``allowance_across`` what it is wider, left on both sides together until
    the part is trimmed flush or fitted; the part's own cuts take it off.  mm.
    ``solid_timber`` is False for sheet goods.  The grain runs along the blank's length, its x, or
    with ``grain_across`` along its width, its y.
    """

    name: str
    title: str
    kind: str
    material: str
    shape: Shape
    frame: Frame
    solid_timber: bool = True
    allowance: float = 0.0
    notes: tuple[str, ...] = ()
    allowance_across: float = 0.0
    grain_across: bool = False

    @property
    def grain(self) -> Vec3:
        """The direction of its grain, in bench coordinates."""
        return self.frame.y_axis if self.grain_across else self.frame.x_axis

    @property
    def ends(self) -> tuple[str, str]:
        """What its two ends are called in the bench, that at x = 0 first: of a part that stands
        upright there the lower and the upper, of any other as it lies for marking out."""
        up = self.frame.x_axis[2]
        if abs(up) < _UPRIGHT:
            return ("left end", "right end")
        return ("lower end", "upper end") if up > 0.0 else ("upper end", "lower end")

    @property
    def along_grain(self) -> float:
        """How long the blank is along its grain."""
        blank = self.shape.blank
        return blank.width if self.grain_across else blank.length

    @property
    def across_grain(self) -> float:
        """How wide the blank is across its grain, not through it."""
        blank = self.shape.blank
        return blank.length if self.grain_across else blank.width
