"""A finding: what a maker should know about a design, as data and never as an exception."""

from __future__ import annotations

from collections.abc import Callable, Generator
from dataclasses import dataclass, field
from enum import Enum

from geometry.design.judging import FindingKey
from geometry.primitives.frame import Vec3


class Level(Enum):
    """How much it matters; the words are those on the screen."""

    DO_NOT_CUT = "do not cut"
    THINK_AGAIN = "think again"
    GOOD_TO_KNOW = "good to know"


@dataclass(frozen=True, slots=True)
class Mend:
    """A change that would cure a finding: new values of parameters, and a sentence."""

    sentence: str
    values: tuple[tuple[str, float | str], ...]


Seeking = Generator[None, None, Mend | None]
"""The search for a mend, which stops for breath after each bench that it has tried."""


@dataclass(frozen=True, slots=True)
class Finding:
    """What, where, by how much, against which limit.

    ``check`` is a stable name (``housing_cutter``).  ``message`` is one sentence with the number in
    it; lengths in it are written as ``{12.7 mm}`` so that the screen can show them in the
    maker's unit.  ``place`` is a point in the bench, or None.  ``unit`` is mm, deg, N or %.
    ``estimate`` marks what is reckoned and not measured.  ``set_aside`` is the maker's reason for
    letting it be, empty while it stands; ``worse`` says so when it stands again, having grown worse
    than it was let be with.  ``told_by`` names the check in the list of checks.
    ``seek`` looks for a mend that a check cannot name without trying; it is gone once that has been
    done.
    """

    check: str
    level: Level
    message: str
    parts: tuple[str, ...] = ()
    place: Vec3 | None = None
    amount: float | None = None
    limit: float | None = None
    unit: str = "mm"
    mend: Mend | None = None
    estimate: bool = False
    set_aside: str = ""
    worse: str = ""
    told_by: str = ""
    seek: Callable[[], Seeking] | None = field(default=None, compare=False, repr=False)

    @property
    def key(self) -> FindingKey:
        """What it is known by while its number changes."""
        return self.check, self.parts
