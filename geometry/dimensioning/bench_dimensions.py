"""The dimensions of a whole bench: those a maker sets, and the derived ones worth reading.

Coordinates are those of the views, in mm: front (X, Z), plan (X, Y), end (Y or -Y, Z).
"""

from __future__ import annotations

from geometry.bench.bench import Bench
from geometry.dimensioning.base_dimensions import base_dimensions
from geometry.dimensioning.case_dimensions import case_dimensions
from geometry.dimensioning.dimension import Dimension


def dimensions(bench: Bench) -> tuple[Dimension, ...]:
    """All dimensions of the general arrangement."""
    return (*case_dimensions(bench), *base_dimensions(bench))
