"""How stiff and how strong sheet materials are in bending, along their face grain; MPa.

From memory, the lower ends where the source gives a range: FPL-GTR-190, Wood Handbook, table 12-1
(plywood 6.96 to 8.55 GPa and 33.7 to 42.6 MPa, medium-density fibreboard 3.59 GPa and 35.9 MPa,
hardboard 3.10 to 5.52 GPa and 31.0 to 56.5 MPa); birch plywood of 18 mm from its makers' handbook
(mean stiffness 10.05 GPa, strength that 95 in 100 reach 40 MPa).
"""

from __future__ import annotations

from shared.timber_stiffness import Stiffness

SHEET_STIFFNESS: dict[str, Stiffness] = {
    row[0]: Stiffness(*row)
    for row in (
        ("birch plywood", 10050.0, 40.0, "from memory, makers' handbook"),
        ("hardwood plywood", 6960.0, 33.7, "from memory, table 12-1"),
        ("softwood plywood", 6960.0, 33.7, "from memory, table 12-1"),
        ("MDF", 3590.0, 35.9, "from memory, table 12-1"),
        ("hardboard", 3100.0, 31.0, "from memory, table 12-1"),
    )
}
