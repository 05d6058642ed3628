"""Timbers: how heavy they are and how much they shrink.

Densities in kg/m³ at 12 % moisture, shrinkage in % from green to oven-dry.  The names are those on
the screen and in files.

Method: the Wood Handbook gives specific gravity (oven-dry mass to volume at 12 % moisture); the
density at that moisture is 1000 · G · (1 + 12/100), chapter 4 of the same.  Where it gives G on the
green volume, that volume is first shrunk by 18/30 of the volumetric shrinkage, which is the part
lost on the way from fibre saturation at 30 % to 12 %.

Sources: FPL-GTR-190, Wood Handbook, table 5-3 or 5-5 (specific gravity) and 4-3 or 4-4
(shrinkage); trade pages where named.  ``read``: seen in a copy of the document;
``as quoted``: seen in a page that quotes it; ``from memory``: good enough for a weight and never
used to prove anything.
"""

from __future__ import annotations

from dataclasses import dataclass

MOISTURE = 12.0  # %


@dataclass(frozen=True, slots=True)
class Timber:
    """One row; ``trade_name`` is its name in the source."""

    name: str
    trade_name: str
    hardwood: bool
    density: float
    radial: float
    tangential: float
    source: str


def density_from_gravity(gravity: float, moisture: float = MOISTURE) -> float:
    """Density in kg/m³ from specific gravity at the same moisture.

    >>> round(density_from_gravity(0.4))
    448
    """
    return 1000.0 * gravity * (1.0 + moisture / 100.0)


def gravity_from_green(green_gravity: float, volumetric: float) -> float:
    """Specific gravity at 12 % from that on the green volume; ``volumetric`` shrinkage in %."""
    return green_gravity / (1.0 - volumetric / 100.0 * (30.0 - MOISTURE) / 30.0)


def _table(rows: tuple[tuple[str, str, bool, float, float, float, str], ...]) -> dict[str, Timber]:
    return {row[0]: Timber(*row) for row in rows}


_g = density_from_gravity
_QUOTED = "G as quoted, shrinkage read"
_SHRINKAGE_READ = "G from memory, shrinkage read"
_G_READ = "G read, shrinkage from memory"
_TEAK = gravity_from_green(0.55, 7.0)
_MAHOGANY = gravity_from_green(0.45, 7.8)

TIMBERS: dict[str, Timber] = _table(
    (
        # name, name in the source, hardwood, density kg/m³, radial %, tangential %, source
        ("white oak", "Oak, white", True, _g(0.68), 5.6, 10.5, _SHRINKAGE_READ),
        ("red oak", "Oak, northern red", True, _g(0.63), 4.0, 8.6, "from memory"),
        ("white ash", "Ash, white", True, _g(0.60), 4.9, 7.8, _QUOTED),
        ("American beech", "Beech, American", True, _g(0.64), 5.5, 11.9, _QUOTED),
        ("yellow birch", "Birch, yellow", True, _g(0.62), 7.3, 9.5, _QUOTED),
        ("black cherry", "Cherry, black", True, _g(0.50), 3.7, 7.1, _QUOTED),
        ("hard maple", "Maple, sugar", True, _g(0.63), 4.8, 9.9, "from memory"),
        ("black walnut", "Walnut, black", True, _g(0.55), 5.5, 7.8, _SHRINKAGE_READ),
        ("yellow poplar", "Yellow-poplar", True, _g(0.42), 4.6, 8.2, _SHRINKAGE_READ),
        ("mahogany", "Mahogany, true", True, _g(_MAHOGANY), 3.0, 4.1, "from memory, G green 0.45"),
        ("teak", "Teak", True, _g(_TEAK), 2.5, 5.8, "G read, green 0.55; shrinkage from memory"),
        ("Douglas fir", "Douglas-fir, coast", False, _g(0.48), 4.8, 7.6, _QUOTED),
        ("ponderosa pine", "Pine, ponderosa", False, _g(0.40), 3.9, 6.2, _G_READ),
        ("longleaf pine", "Pine, longleaf", False, _g(0.59), 5.1, 7.5, "from memory"),
        ("eastern white pine", "Pine, eastern white", False, _g(0.35), 2.1, 6.1, "from memory"),
        ("coast redwood", "Redwood, old-growth", False, _g(0.40), 2.6, 4.4, _G_READ),
        ("western red cedar", "Western redcedar", False, _g(0.32), 2.4, 5.0, _SHRINKAGE_READ),
        ("Sitka spruce", "Spruce, Sitka", False, _g(0.40), 4.3, 7.5, "from memory"),
        # European timbers: densities at 12 % as the pages give them
        ("European beech", "Fagus sylvatica", True, 712.0, 5.8, 11.8, "gramex-eu.com"),
        ("European oak", "Quercus petraea", True, 702.0, 4.5, 9.7, "gramex, timberpolis.gr"),
        ("European ash", "Fraxinus excelsior", True, 702.0, 5.0, 8.0, "frey-amon.at"),
        ("European spruce", "Picea abies", False, 441.0, 3.6, 7.8, "gramex-eu.com"),
    )
)
