"""Wood screws and dowels.  Millimetres."""

from __future__ import annotations

from dataclasses import dataclass

from shared.units import MM_PER_INCH


@dataclass(frozen=True, slots=True)
class WoodScrew:
    """A slotted or cross-headed wood screw; ``shank`` and ``root`` (of the thread) diameters."""

    gauge: int
    shank: float
    root: float
    source: str

    @property
    def pilot_in_hardwood(self) -> float:
        """The root's own diameter; READ2 blacksmithbolt.com, boring chart for wood screws."""
        return self.root

    @property
    def pilot_in_softwood(self) -> float:
        """About 15 % less, from the same chart."""
        return 0.85 * self.root


_IN = MM_PER_INCH
_CHART = (
    "READ2 albanycountyfasteners.com; shanks agree with 0.060 + 0.013 n in, MEMORY ASME B18.6.1"
)

_SCREWS = (
    # gauge, shank mm, root mm, source
    WoodScrew(4, 0.112 * _IN, 0.084 * _IN, _CHART),
    WoodScrew(6, 0.138 * _IN, 0.106 * _IN, _CHART),
    WoodScrew(8, 0.164 * _IN, 0.131 * _IN, _CHART),
    WoodScrew(10, 0.190 * _IN, 0.158 * _IN, _CHART),
    WoodScrew(12, 0.216 * _IN, 0.182 * _IN, _CHART),
    WoodScrew(14, 0.242 * _IN, 0.207 * _IN, _CHART),
)

WOOD_SCREWS: dict[int, WoodScrew] = {row.gauge: row for row in _SCREWS}


@dataclass(frozen=True, slots=True)
class Dowel:
    """A fluted dowel by its name in the shop."""

    called: str
    diameter: float
    length: float
    source: str


_PRACTICE = "common practice, no source"

DOWELS = (
    # called, diameter mm, length mm, source
    Dowel("6 mm", 6.0, 30.0, _PRACTICE),
    Dowel("8 mm", 8.0, 40.0, _PRACTICE),
    Dowel("10 mm", 10.0, 50.0, _PRACTICE),
    Dowel("1/4 in", 6.35, 31.75, _PRACTICE),
    Dowel("5/16 in", 7.9375, 38.1, _PRACTICE),
    Dowel("3/8 in", 9.525, 50.8, _PRACTICE),
)

DOWEL_SHARE = (1 / 3, 1 / 2)
"""Diameter of a dowel as a share of the thickness it stands in: READ2 ewhannas.com and
chicagodowel.com, which adds: never more than half."""

DOWEL_ROOM = MM_PER_INCH / 16
"""How much deeper than the dowel its two holes are together: READ2, the same two pages."""
