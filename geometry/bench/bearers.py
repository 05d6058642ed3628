"""What of a base bears on the board above, where a fixing may stand; bench coordinates, mm."""

from __future__ import annotations

from functools import lru_cache

from geometry.bench.bases import standing
from geometry.bench.overall import LID_BOX, stands_on_base
from geometry.bench.standing import Bearer
from geometry.design.spec import BenchSpec


def can_be_fixed(spec: BenchSpec) -> bool:
    """Whether there is a base, and one that nothing else holds to the seat already.

    A box stands on the lower edges of its walls, and is screwed down through its bottom.
    """
    if not stands_on_base(spec) or spec.value("seat") == LID_BOX:
        return False
    return not standing(spec).holds(spec)


@lru_cache(maxsize=512)
def bearers(spec: BenchSpec, inward_by: float) -> tuple[Bearer, ...]:
    """The bearers of a base; fixings reach ``inward_by`` inside them and must not meet."""
    return standing(spec).bearers(spec, inward_by)
