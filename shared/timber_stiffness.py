"""How stiff and how strong timbers are along the grain: to judge a board that is sat on.

Small clear samples at 12 % moisture: modulus of elasticity and modulus of rupture, both from
bending, in MPa.  Where the source gives them in psi: 1 psi = 6.894757 kPa.

Sources: FPL-GTR-190, Wood Handbook, table 5-3 or 5-5.  READ: seen in a copy of the document;
READ2: seen in a page that quotes it; MEMORY: from memory, good enough to compare boards, and never
used to prove anything.
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
        ("white oak", 12300.0, 105.0, "MEMORY"),
        ("red oak", 12500.0, 99.0, "MEMORY"),
        ("white ash", 12000.0, 103.0, "READ2, in psi"),
        ("American beech", 11900.0, 103.0, "READ2, in psi"),
        ("yellow birch", 13900.0, 114.0, "READ2, in psi"),
        ("black cherry", 10300.0, 85.0, "READ2, in psi"),
        ("hard maple", 12600.0, 109.0, "MEMORY"),
        ("black walnut", 11600.0, 101.0, "MEMORY"),
        ("yellow poplar", 10900.0, 70.0, "MEMORY"),
        ("mahogany", 10300.0, 79.0, "MEMORY"),
        ("teak", 10700.0, 101.0, "READ, 1.55 million and 14600 psi"),
        ("Douglas fir", 13400.0, 85.0, "READ2, in psi"),
        ("ponderosa pine", 8900.0, 65.0, "READ"),
        ("longleaf pine", 13700.0, 100.0, "MEMORY"),
        ("eastern white pine", 8500.0, 59.0, "MEMORY"),
        ("coast redwood", 9200.0, 69.0, "READ"),
        ("western red cedar", 7700.0, 52.0, "MEMORY"),
        ("Sitka spruce", 10800.0, 70.0, "MEMORY"),
        # European timbers: trade tables
        ("European beech", 14300.0, 110.0, "MEMORY"),
        ("European oak", 10600.0, 97.0, "MEMORY"),
        ("European ash", 12300.0, 104.0, "MEMORY"),
        ("European spruce", 9700.0, 63.0, "MEMORY"),
    )
}
