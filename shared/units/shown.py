"""In which unit the maker sees sizes, and how finely.

Source of the two conversions: the International Yard and Pound agreement of 1959, by which
1 in = 25.4 mm and 1 lb = 0.45359237 kg exactly.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

MM_PER_INCH = 25.4
KG_PER_POUND = 0.45359237
DENOMINATORS = (16, 32, 64)  # the divisions on a shop rule, parts of an inch


@dataclass(frozen=True, slots=True)
class Shown:
    """The unit on screen and paper.

    ``denominator`` is the finest inch fraction, one of ``DENOMINATORS``; ``decimals`` the decimal
    places of millimetres.  Each is used only with its own unit.
    """

    unit: Literal["mm", "in"] = "mm"
    denominator: int = 16
    decimals: int = 1

    def __post_init__(self) -> None:
        assert self.unit in ("mm", "in"), self.unit
        assert self.denominator in DENOMINATORS, self.denominator
        assert 0 <= self.decimals <= 3, self.decimals

    @property
    def printed_step(self) -> float:
        """The distance in mm between two neighbouring printed sizes of 1 mm and more."""
        return MM_PER_INCH / self.denominator if self.unit == "in" else 10.0**-self.decimals

    @property
    def drag_step(self) -> float:
        """What a size snaps to under the hand, in mm: a whole millimetre, or one inch fraction."""
        return MM_PER_INCH / self.denominator if self.unit == "in" else 1.0


SHOWN_MM = Shown()
SHOWN_IN16 = Shown("in", 16)
SHOWN_IN32 = Shown("in", 32)
SHOWN_IN64 = Shown("in", 64)
