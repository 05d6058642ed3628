"""How high a base's feet hold it off the floor.

A bench keeps its heights whatever it stands on: feet under the legs make the legs so much shorter.
"""

from __future__ import annotations

from geometry.bench.overall import stands_on_base
from geometry.design.spec import BenchSpec

WITHOUT, PADS, LEVELLING = "none", "pads", "levelling feet"

READS = "foot foot_height"


def has_feet(spec: BenchSpec) -> bool:
    """Whether there is a base, and feet under it."""
    return stands_on_base(spec) and spec.value("foot") != WITHOUT


def ground(spec: BenchSpec) -> float:
    """Height above the floor at which legs, plinth or panels end; mm."""
    return spec.number("foot_height") if has_feet(spec) else 0.0
