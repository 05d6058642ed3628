"""Wood screws, and the holes they stand in.  Millimetres."""

from __future__ import annotations

from dataclasses import dataclass

from shared.units import MM_PER_INCH

HEAD_IN_SHANKS = 2.0  # from memory: a flat head is two shanks and a little
SCREW_EASE = 0.6  # mm a hole or slot is wider than the shank in it; common practice, no source


@dataclass(frozen=True, slots=True)
class WoodScrew:
    """A slotted or cross-headed wood screw; ``shank`` and ``root`` (of the thread) diameters.

    A pilot hole of the root's own diameter suits hardwood, one some 15 % less softwood:
    blacksmithbolt.com, boring chart for wood screws.
    """

    gauge: int
    shank: float
    root: float
    source: str

    @property
    def head(self) -> float:
        """Diameter of its flat head."""
        return HEAD_IN_SHANKS * self.shank


_IN = MM_PER_INCH
_CHART = (
    "albanycountyfasteners.com; shanks agree with 0.060 + 0.013 n in (ASME B18.6.1, from memory)"
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

WOOD_SCREWS: dict[str, WoodScrew] = {f"no. {row.gauge}": row for row in _SCREWS}
"""By their names in the shop, such as ``no. 8``; thinnest first."""
