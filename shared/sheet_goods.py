"""Sheet materials: plywood, MDF, hardboard; what they weigh and how thick they really are.

A sheet is rarely as thick as its name, so a back or a housing is cut to a measured thickness;
these rows only say what to expect.  Millimetres and kg/m³.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class SheetMaterial:
    """A material by its name on the screen."""

    name: str
    density: float
    source: str


@dataclass(frozen=True, slots=True)
class SheetThickness:
    """``called`` is its name in the shop; ``usual`` what a rule shows, between the two limits."""

    material: str
    called: str
    usual: float
    thinnest: float
    thickest: float
    source: str


@dataclass(frozen=True, slots=True)
class SheetSize:
    """A whole sheet as it is sold."""

    called: str
    length: float
    width: float
    source: str


_BIRCH = "a maker's sheet of birch plywood, vdocuments.site 'birch plywood datasheet L'"
_CALIPER = "caliper readings of US sheets, wiki.robotz.com"
_MDF = "a maker's specification to EN 324-1: ±0.2 mm"
_MEMORY = "from memory"

_MATERIALS = (
    # name, density kg/m³, source
    SheetMaterial("birch plywood", 685.0, _BIRCH + ": 660 to 710 by thickness"),
    SheetMaterial("hardwood plywood", 600.0, _MEMORY),
    SheetMaterial("softwood plywood", 460.0, _MEMORY),
    SheetMaterial("MDF", 750.0, "decorative-trends.com: 700 to 800; IS 14587: 600 to 800"),
    SheetMaterial("hardboard", 900.0, "dataholz.eu: at least 900"),
)

SHEET_MATERIALS: dict[str, SheetMaterial] = {row.name: row for row in _MATERIALS}

SHEET_THICKNESSES = (
    # material, called, usual mm, thinnest mm, thickest mm, source
    SheetThickness("birch plywood", "4 mm", 3.8, 3.5, 4.1, _BIRCH),
    SheetThickness("birch plywood", "6.5 mm", 6.4, 6.1, 6.9, _BIRCH),
    SheetThickness("birch plywood", "9 mm", 9.2, 8.8, 9.5, _BIRCH),
    SheetThickness("birch plywood", "12 mm", 12.0, 11.5, 12.5, _BIRCH),
    SheetThickness("birch plywood", "15 mm", 14.9, 14.3, 15.3, _BIRCH),
    SheetThickness("birch plywood", "18 mm", 17.7, 17.1, 18.1, _BIRCH),
    SheetThickness("birch plywood", "21 mm", 20.5, 20.0, 20.9, _BIRCH),
    SheetThickness("birch plywood", "24 mm", 23.4, 22.9, 23.7, _BIRCH),
    SheetThickness("hardwood plywood", "1/4 in", 5.56, 5.08, 5.56, _CALIPER),
    SheetThickness("hardwood plywood", "1/2 in", 11.91, 11.18, 11.91, _CALIPER),
    SheetThickness("hardwood plywood", "3/4 in", 18.26, 17.48, 18.26, _CALIPER),
    SheetThickness("softwood plywood", "1/4 in", 5.56, 5.08, 5.56, _CALIPER),
    SheetThickness("softwood plywood", "1/2 in", 11.91, 11.18, 11.91, _CALIPER),
    SheetThickness("softwood plywood", "3/4 in", 18.26, 17.48, 18.26, _CALIPER),
    SheetThickness("MDF", "6 mm", 6.0, 5.8, 6.2, _MDF),
    SheetThickness("MDF", "9 mm", 9.0, 8.8, 9.2, _MDF),
    SheetThickness("MDF", "12 mm", 12.0, 11.8, 12.2, _MDF),
    SheetThickness("MDF", "18 mm", 18.0, 17.8, 18.2, _MDF),
    SheetThickness("hardboard", "1/8 in", 3.2, 2.9, 3.5, _MEMORY),
    SheetThickness("hardboard", "1/4 in", 6.4, 6.0, 6.8, _MEMORY),
)

SHEET_SIZES = (
    # called, length mm, width mm, source
    SheetSize("48 × 96 in", 2438.4, 1219.2, "from memory, PS 1-19"),
    SheetSize("2440 × 1220 mm", 2440.0, 1220.0, "nestplywood.com, ± 4 and ± 3 mm"),
    SheetSize("2500 × 1250 mm", 2500.0, 1250.0, "nestplywood.com, ± 4 and ± 3 mm"),
    SheetSize("1525 × 1525 mm", 1525.0, 1525.0, "from memory, the trade's birch sheet"),
)


def thicknesses_of(material: str) -> tuple[SheetThickness, ...]:
    """The thicknesses a material is sold in, thinnest first; empty for an unknown material."""
    return tuple(row for row in SHEET_THICKNESSES if row.material == material)
