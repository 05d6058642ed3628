"""What lies on the base: the board that round tenons go into, and where in it they may come up.

The one place where a base asks what it carries; a new form of seat adds itself here.
"""

from __future__ import annotations

from dataclasses import dataclass

from geometry.bench.case_numbers import case_numbers
from geometry.bench.partitions import uprights
from geometry.design.spec import BenchSpec


@dataclass(frozen=True, slots=True)
class Above:
    """The board whose underside is at the base's height; mm.

    ``part`` is its name, ``thickness`` how deep a tenon goes that ends flush with the board's
    upper face.  Tenons of the left legs keep to the range of X ``left``, those of the right legs to
    ``right``, all to Y from ``front`` to ``back``.
    """

    part: str
    thickness: float
    left: tuple[float, float]
    right: tuple[float, float]
    back: float
    front: float


def above(spec: BenchSpec) -> Above:
    """The bottom of a case: tenons come up inside its first and its last opening."""
    c = case_numbers(spec)
    t, half_fit = c.partition_thickness, c.housing_fit / 2.0
    between = [at.x_left for at in uprights(c) if not at.end]
    ends = (c.inside_left + half_fit, c.inside_right - half_fit)
    return Above(
        part="bottom",
        thickness=c.thickness,
        left=(ends[0], between[0] - half_fit if between else ends[1]),
        right=(between[-1] + t + half_fit if between else ends[0], ends[1]),
        back=-c.rebate_width,
        front=-c.depth,
    )
