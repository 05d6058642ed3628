"""What a piece is made of and how thick it is, as statics sees them.  N, mm, MPa.

E from the tables is 10 % too low, as it holds the shear of the test it was found in, and G = E / 16
(both from memory of the Wood Handbook).  Sheet is reckoned along its face grain.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from shared.errors import UnknownName
from shared.sheet_stiffness import SHEET_STIFFNESS
from shared.timber_stiffness import STIFFNESS
from shared.timber_strength import DENTED, ROLLING, strength_of

SHEAR_PEAK = 1.5  # greatest shear stress of a rectangle, of its mean
_SHEAR_FREE = 1.1
# Across the grain, of what it is along it: the handbook's table 5-1 gives 5 to 9 % for the
# stiffness of flat-sawn wood; boards split at about a twentieth of their strength (from memory).
_STIFF_ACROSS, _STRONG_ACROSS = 0.07, 0.05
_E_OVER_G = 16.0


@dataclass(frozen=True, slots=True)
class Stuff:
    """MPa: ``elasticity`` free of shear, ``rigidity``, and what it stands in bending (``rupture``),
    ``shear`` along the grain, ``crushing`` along it and ``denting`` across it, at a dent of a
    millimetre; None if unknown."""

    elasticity: float
    rigidity: float
    rupture: float
    shear: float | None
    crushing: float | None
    denting: float | None

    @property
    def rolling(self) -> float | None:
        """Shear that a glued face stands where grain crosses grain."""
        return None if self.shear is None else ROLLING * self.shear


@lru_cache(maxsize=64)
def stuff_of(material: str) -> Stuff:
    """Of a timber or a sheet material; UnknownName for another."""
    if material in STIFFNESS:
        row, more = STIFFNESS[material], strength_of(material)
        e = row.elasticity * _SHEAR_FREE
        return Stuff(
            e, e / _E_OVER_G, row.rupture, more.shear, more.crushing, DENTED * more.denting
        )
    if material in SHEET_STIFFNESS:
        sheet = SHEET_STIFFNESS[material]
        e = sheet.elasticity * _SHEAR_FREE
        return Stuff(e, e / _E_OVER_G, sheet.rupture, None, None, None)
    raise UnknownName(f"Nothing is known of the strength of “{material}”.", where="material")


@lru_cache(maxsize=64)
def across_grain(timber: str) -> Stuff:
    """A timber bent across its grain, in which it is weak and splits; UnknownName as above."""
    along = stuff_of(timber)
    e = along.elasticity * _STIFF_ACROSS
    rolls = along.rolling
    return Stuff(e, e / _E_OVER_G, along.rupture * _STRONG_ACROSS, rolls, None, along.denting)


@dataclass(frozen=True, slots=True)
class Section:
    """A rectangle bent across its ``thickness``, mm."""

    width: float
    thickness: float

    @property
    def inertia(self) -> float:
        """b h³ / 12, mm⁴."""
        return self.width * self.thickness**3 / 12.0

    @property
    def modulus(self) -> float:
        """b h² / 6, mm³."""
        return self.width * self.thickness**2 / 6.0

    @property
    def area(self) -> float:
        return self.width * self.thickness

    @property
    def shear_area(self) -> float:
        """A' = 5/6 b h, mm²."""
        return 5.0 / 6.0 * self.area
