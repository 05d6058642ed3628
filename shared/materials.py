"""Every material that a part can be made of, timber, sheet or metal, by its name on the screen."""

from __future__ import annotations

from shared.errors import UnknownName
from shared.sheet_goods import SHEET_MATERIALS
from shared.timber import TIMBERS

METALS: dict[str, float] = {"steel": 7850.0}
"""kg/m³ of what bought pieces are made of.  From memory: mild steel."""

MATERIAL_NAMES: tuple[str, ...] = (*TIMBERS, *SHEET_MATERIALS, *METALS)
"""Timbers first, then sheet materials, then metals."""


def density_of(material: str) -> float:
    """kg/m³ at the moisture of a heated room; UnknownName for a material that is no row."""
    if material in TIMBERS:
        return TIMBERS[material].density
    if material in SHEET_MATERIALS:
        return SHEET_MATERIALS[material].density
    if material in METALS:
        return METALS[material]
    raise UnknownName(
        f"There is no material called “{material}”.",
        where="material",
        remedy=f"Choose one of: {', '.join(MATERIAL_NAMES)}.",
    )


def weight_of(volume_mm3: float, material: str) -> float:
    """Weight in kg of a volume in mm³; UnknownName as above."""
    return volume_mm3 * 1e-9 * density_of(material)
