"""The limits that findings are judged by, in the order in which they are listed.

A maker may change any of them; the change is kept with the project.  Each stands in a file with its
kin, with where it comes from; ``common practice, no source`` marks a rule of the trade for which no
book was found.  A new file of rows adds itself here.
"""

from __future__ import annotations

from geometry.checks import (
    limits_of_drawers,
    limits_of_handling,
    limits_of_joints,
    limits_of_loads,
    limits_of_marking,
    limits_of_standing,
    limits_of_strength,
    limits_of_timber,
    limits_of_wood,
)
from geometry.checks.limit import Limit

LIMITS: tuple[Limit, ...] = (
    *limits_of_joints.ROWS,
    *limits_of_drawers.ROWS,
    *limits_of_loads.ROWS,
    *limits_of_strength.ROWS,
    *limits_of_handling.ROWS,
    *limits_of_marking.ROWS,
    *limits_of_wood.ROWS,
    *limits_of_timber.ROWS,
    *limits_of_standing.ROWS,
)

BY_NAME: dict[str, Limit] = {row.name: row for row in LIMITS}
