"""A part is a blank and a list of cuts, placed in the bench by a frame."""

from __future__ import annotations

from dataclasses import dataclass

from geometry.cuts.cut import Blank, Cut
from geometry.primitives.frame import Frame


@dataclass(frozen=True, slots=True)
class Shape:
    """What is made, wherever it stands: equal shapes are cut alike and share one solid."""

    blank: Blank
    cuts: tuple[Cut, ...]


@dataclass(frozen=True, slots=True)
class Part:
    """One piece of the bench.

    ``name`` is unique and fit for a file name (``leg_front_left``); ``title`` is for people
    (``Leg, front left``).  ``material`` names a row of the timber or sheet tables; ``kind``
    groups like with like in lists (``leg``).  ``allowance`` is what the blank is longer than the
    finished part, and ``allowance_across`` what it is wider, left on both sides together until
    the part is trimmed flush or fitted; the part's own cuts take it off.  mm.
    ``solid_timber`` is False for sheet goods.
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
