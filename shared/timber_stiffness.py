"""How stiff and how strong timbers are along the grain: to judge a board that is sat on.

Small clear samples at 12 % moisture: modulus of elasticity and modulus of rupture, both from
bending, in MPa.  Where the source gives them in psi: 1 psi = 6.894757 kPa.

Sources: FPL-GTR-190, Wood Handbook, table 5-3 or 5-5.  ``read``: seen in a copy of the
document; ``as quoted``: seen in a page that quotes it; ``from memory``: good enough to compare
boards, and never used to prove anything.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Stiffness:
    """One row; ``elasticity`` and ``rupture`` in MPa."""

    name: str
    elasticity: float
    rupture: float
    source: str


STIFFNESS: dict[str, Stiffness] = {
    row[0]: Stiffness(*row)
    for row in (
        # name, modulus of elasticity MPa, modulus of rupture MPa, source
        ("white oak", 12300.0, 105.0, "from memory"),
        ("red oak", 12500.0, 99.0, "from memory"),
        ("white ash", 12000.0, 103.0, "as quoted, in psi"),
        ("American beech", 11900.0, 103.0, "as quoted, in psi"),
        ("yellow birch", 13900.0, 114.0, "as quoted, in psi"),
        ("black cherry", 10300.0, 85.0, "as quoted, in psi"),
        ("hard maple", 12600.0, 109.0, "from memory"),
        ("black walnut", 11600.0, 101.0, "from memory"),
        ("yellow poplar", 10900.0, 70.0, "from memory"),
        ("mahogany", 10300.0, 79.0, "from memory"),
        ("teak", 10700.0, 101.0, "read, 1.55 million and 14600 psi"),
        ("Douglas fir", 13400.0, 85.0, "as quoted, in psi"),
        ("ponderosa pine", 8900.0, 65.0, "read"),
        ("longleaf pine", 13700.0, 100.0, "from memory"),
        ("eastern white pine", 8500.0, 59.0, "from memory"),
        ("coast redwood", 9200.0, 69.0, "read"),
        ("western red cedar", 7700.0, 52.0, "from memory"),
        ("Sitka spruce", 10800.0, 70.0, "from memory"),
        # European timbers: trade tables
        ("European beech", 14300.0, 110.0, "from memory"),
        ("European oak", 10600.0, 97.0, "from memory"),
        ("European ash", 12300.0, 104.0, "from memory"),
        ("European spruce", 9700.0, 63.0, "from memory"),
    )
}
