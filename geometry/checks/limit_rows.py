"""The limits that findings are judged by, in the order in which they are listed.

A maker may change any of them; the change is kept with the project.  Each stands in a file with its
kin, with where it comes from; ``common practice, no source`` marks a rule of the trade for which no
book was found.  A new file of rows adds itself here.
"""

from __future__ import annotations

from geometry.checks import (
    limits_of_drawers,
    limits_of_glue_ups,
    limits_of_handling,
    limits_of_joints,
    limits_of_loads,
    limits_of_marking,
    limits_of_people,
    limits_of_standing,
    limits_of_strength,
    limits_of_timber,
    limits_of_wood,
)
from geometry.checks.limit import Limit

KINS: tuple[tuple[str, tuple[Limit, ...]], ...] = (
    ("Joints", limits_of_joints.ROWS),
    ("Drawers", limits_of_drawers.ROWS),
    ("Glue-ups", limits_of_glue_ups.ROWS),
    ("Loads, and what they may bend", limits_of_loads.ROWS),
    ("Strength", limits_of_strength.ROWS),
    ("Seats, lids, edges and outlines", limits_of_handling.ROWS),
    ("Setting up, marking and reading", limits_of_marking.ROWS),
    ("Wood that cuts leave", limits_of_wood.ROWS),
    ("Timber, boards and sheets", limits_of_timber.ROWS),
    ("Who sits, and the way there", limits_of_people.ROWS),
    ("How a bench stands", limits_of_standing.ROWS),
)
"""Each file of rows, under the heading that it has on the page of limits."""

LIMITS: tuple[Limit, ...] = tuple(row for _, rows in KINS for row in rows)

BY_NAME: dict[str, Limit] = {row.name: row for row in LIMITS}
