"""How much shear and crushing timbers stand: small clear samples at 12 % moisture, MPa.

``shear`` along the grain, ``crushing`` with the load along the grain (its maximum) and ``denting``
with the load across it (at the limit of elasticity).  Bending is in ``timber_stiffness``.

Sources: FPL-GTR-190, Wood Handbook, table 5-3 or 5-5, from memory in psi (1 psi = 6.894757 kPa),
good enough for an estimate; ``as quoted`` where a page that quotes the handbook was seen.  Where a
table has no value it follows from specific gravity G, table 5-11a, from memory: shear 21.9 G^1.13
and 16.6 G^0.85, crushing 76.0 G^0.89 and 93.7 G^0.97, denting 21.6 G^2.09 and 16.5 G^1.57, of
hardwoods and of softwoods.
"""

from __future__ import annotations

from dataclasses import dataclass

from shared.errors import UnknownName
from shared.timber import TIMBERS, density_from_gravity

PSI = 6.894757e-3
ROLLING = 0.23
"""Shear that rolls the fibres over each other, of that along them.  From memory: the Wood
Handbook's chapter 5 says 18 to 28 %; it binds where grain is glued across grain."""
DENTED = 1.6
"""Load across the grain that leaves a dent of a millimetre, of that at the limit of elasticity.
From memory: design codes go by a dent of 0.04 in and give about this."""


@dataclass(frozen=True, slots=True)
class Strength:
    """One row, all in MPa."""

    name: str
    shear: float
    crushing: float
    denting: float
    source: str


@dataclass(frozen=True, slots=True)
class FromGravity:
    """What follows from specific gravity alone: factor and power of each."""

    shear: tuple[float, float]
    crushing: tuple[float, float]
    denting: tuple[float, float]


HARDWOOD = FromGravity((21.9, 1.13), (76.0, 0.89), (21.6, 2.09))
SOFTWOOD = FromGravity((16.6, 0.85), (93.7, 0.97), (16.5, 1.57))


def from_gravity(timber: str) -> Strength:
    """Shear, crushing and denting as they follow from a timber's density; KeyError for no row."""
    row = TIMBERS[timber]
    gravity = row.density / density_from_gravity(1.0)
    rule = HARDWOOD if row.hardwood else SOFTWOOD
    shear, crushing, denting = (
        factor * gravity**power for factor, power in (rule.shear, rule.crushing, rule.denting)
    )
    return Strength(timber, shear, crushing, denting, "from its density, by a rule from memory")


_CRUSHING_QUOTED = "from memory; crushing as quoted at bio.net, ag-forst, April 1997"

_ROWS = (
    # name, shear, crushing, denting in psi (0: not in the table), source
    ("white oak", 2000, 7440, 1070, _CRUSHING_QUOTED),
    ("red oak", 1780, 6760, 1010, "from memory"),
    ("white ash", 1910, 7410, 1160, "from memory"),
    ("American beech", 2010, 7300, 1010, "from memory"),
    ("yellow birch", 1880, 8170, 970, "from memory"),
    ("black cherry", 1700, 7110, 690, "from memory"),
    ("hard maple", 2330, 7830, 1470, "from memory"),
    ("black walnut", 1370, 7580, 1010, "from memory"),
    ("yellow poplar", 1190, 5540, 500, "from memory"),
    ("mahogany", 1230, 6780, 0, "from memory"),
    ("teak", 1890, 8410, 0, "from memory"),
    ("Douglas fir", 1130, 7240, 800, _CRUSHING_QUOTED),
    ("ponderosa pine", 1130, 5320, 580, "from memory"),
    ("longleaf pine", 1510, 8470, 960, "from memory"),
    ("eastern white pine", 900, 4800, 440, "from memory"),
    ("coast redwood", 940, 6150, 700, "from memory"),
    ("western red cedar", 990, 4560, 460, "from memory"),
    ("Sitka spruce", 1150, 5610, 580, "from memory"),
)


def _of_row(name: str, shear: float, crushing: float, denting: float, source: str) -> Strength:
    known = PSI * denting if denting else from_gravity(name).denting
    return Strength(name, PSI * shear, PSI * crushing, known, source)


STRENGTH: dict[str, Strength] = {
    **{name: from_gravity(name) for name in TIMBERS},
    **{row[0]: _of_row(*row) for row in _ROWS},
}


def strength_of(timber: str) -> Strength:
    """The row of a timber; UnknownName for a name that is no row."""
    if timber in STRENGTH:
        return STRENGTH[timber]
    raise UnknownName(
        f"There is no strength for a timber called “{timber}”.",
        where="timber",
        remedy=f"Choose one of: {', '.join(STRENGTH)}.",
    )
