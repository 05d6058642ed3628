"""The case's numbers, read once from a spec, and the few that follow from them.

Case frame in plan: X from the left end of the case, ``depth`` forward from the back edges.
Stations s run from the deep end, whichever end that is.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache

from geometry.design.spec import BenchSpec

LEFT, RIGHT = "left", "right"
MITRED, OPEN = "mitred", "open"


@dataclass(frozen=True, slots=True)
class End:
    """How an end is closed: a mitred panel, or a partition set in by ``inset`` (to its outside)."""

    side: str
    mitred: bool
    inset: float


@dataclass(frozen=True, slots=True)
class CaseNumbers:
    """All in mm; names as in the catalogue."""

    length: float
    depth: float
    height: float
    thickness: float
    floor: float  # height of the case's underside above the floor
    flare: float
    deep_left: bool
    straight: float
    flare_end: float
    left: End
    right: End
    partition_thickness: float
    partitions: tuple[float, ...]
    reveal: float
    housing_depth: float
    cutter_radius: float
    cover: float
    housing_fit: float
    back_thickness: float
    rebate_depth: float
    back_let_in: float
    back_fit: float
    chamfer: float

    @property
    def top(self) -> float:
        """Height of the seat above the floor."""
        return self.floor + self.height

    @property
    def inside_low(self) -> float:
        return self.floor + self.thickness

    @property
    def inside_high(self) -> float:
        return self.top - self.thickness

    @property
    def inside_height(self) -> float:
        return self.height - 2.0 * self.thickness

    @property
    def partition_height(self) -> float:
        return self.inside_height + 2.0 * self.housing_depth

    @property
    def front_lean_deg(self) -> float:
        """Lean of the front edges from the vertical: atan(flare / case height)."""
        return math.degrees(math.atan2(self.flare, self.height))

    @property
    def rebate_width(self) -> float:
        return self.back_thickness + self.back_let_in

    @property
    def bevel(self) -> float:
        """How far the leaning front edge travels through one board's thickness."""
        return self.flare * self.thickness / self.height

    @property
    def upright_front(self) -> float:
        """How far the uprights' front edges stand in front of the back edges."""
        return self.depth - self.reveal

    @property
    def inside_left(self) -> float:
        """X of the inside face at the left end."""
        return self.thickness if self.left.mitred else self.left.inset + self.partition_thickness

    @property
    def inside_right(self) -> float:
        if self.right.mitred:
            return self.length - self.thickness
        return self.length - self.right.inset - self.partition_thickness

    @property
    def deep_side(self) -> str:
        return LEFT if self.deep_left else RIGHT

    def station(self, x: float) -> float:
        """Distance of X from the deep end."""
        return x if self.deep_left else self.length - x

    def x_at(self, station: float) -> float:
        """X of a station."""
        return station if self.deep_left else self.length - station

    def depth_at(self, x: float) -> float:
        """Depth of the top at its outside (upper) front arris."""
        s = self.station(x)
        if s <= self.straight:
            return self.depth + self.flare
        if s >= self.flare_end:
            return self.depth
        left = (self.flare_end - s) / (self.flare_end - self.straight)
        return self.depth + self.flare * left

    def inside_depth_at(self, x: float) -> float:
        """Depth of the top at the front arris of its inside (under) face."""
        if self.station(x) <= self.straight:
            return self.depth + self.flare - self.bevel
        return self.depth_at(x)


@lru_cache(maxsize=512)
def case_numbers(spec: BenchSpec) -> CaseNumbers:
    """Read the case from a spec."""
    v = spec.values
    count = spec.count("partition_count")

    def number(name: str) -> float:
        value = v[name]
        assert not isinstance(value, str)
        return value

    return CaseNumbers(
        length=number("length"),
        depth=number("depth"),
        height=number("case_height"),
        thickness=number("board_thickness"),
        floor=number("base_height"),
        flare=number("flare"),
        deep_left=v["deep_end"] == LEFT,
        straight=number("flare_straight"),
        flare_end=number("flare_end"),
        left=End(LEFT, v["left_end"] == MITRED, number("left_inset")),
        right=End(RIGHT, v["right_end"] == MITRED, number("right_inset")),
        partition_thickness=number("partition_thickness"),
        partitions=tuple(number(f"partition_{k}") for k in range(1, count + 1)),
        reveal=number("reveal"),
        housing_depth=number("housing_depth"),
        cutter_radius=number("cutter_diameter") / 2.0,
        cover=number("housing_cover"),
        housing_fit=number("housing_fit"),
        back_thickness=number("back_thickness"),
        rebate_depth=number("rebate_depth"),
        back_let_in=number("back_let_in"),
        back_fit=number("back_fit"),
        chamfer=number("chamfer"),
    )
