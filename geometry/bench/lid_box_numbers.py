"""The numbers of a storage box with a lid, and where its pieces stand.  Bench coordinates, mm."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from geometry.bench.drawer_parameters import FINGERS, REBATE
from geometry.bench.lid_box_parameters import has_notch, on_strip
from geometry.design.spec import BenchSpec
from geometry.joints.corner import Corner
from geometry.joints.dovetail_spacing import SLOPES, Spacing
from geometry.primitives.frame import Vec3


@dataclass(frozen=True, slots=True)
class LidBox:
    """Names as in the catalogue; the box stands from X 0 to ``length``, Y 0 to -``depth``."""

    length: float
    depth: float
    floor: float
    height: float
    thickness: float
    corner: str
    count: int
    slope: float
    pin: float
    half_pin: float
    tongue_thickness: float
    tongue_length: float
    fit: float
    bottom: float
    rebate: float
    bottom_fit: float
    lid: float
    over_front: float
    over_ends: float
    notch_width: float
    notch_depth: float
    strip: float
    gap: float
    opening_deg: float
    hinges: int
    hinge_in: float
    hinge_length: float
    hinge_leaf: float
    hinge_closed: float
    stay_reach: float
    stay_on_lid: float
    stay_down: float

    @property
    def top(self) -> float:
        """Height of the lid's upper face above the floor."""
        return self.floor + self.height

    @property
    def walls(self) -> float:
        """Height of front, back and ends."""
        return self.height - self.lid

    @property
    def rim(self) -> float:
        """Height of their upper edges above the floor."""
        return self.floor + self.walls

    @property
    def has_strip(self) -> bool:
        return self.strip > 0.0

    @property
    def lid_back(self) -> float:
        """Y of the lid's back edge."""
        return -(self.strip + self.gap)

    @property
    def lid_front(self) -> float:
        """Y of the lid's front edge."""
        return -(self.depth + self.over_front)

    @property
    def lid_length(self) -> float:
        return self.length + 2.0 * self.over_ends

    @property
    def pin_place(self) -> tuple[float, float]:
        """Y and Z of the middle of the hinges' pins.

        On a strip it lies level with the upper faces, in the middle of the gap; on the back at its
        upper outside arris (common practice, no source).
        """
        return (-(self.strip + self.gap / 2.0), self.top) if self.has_strip else (0.0, self.rim)

    @property
    def mortise(self) -> float:
        """How deep each leaf is let in."""
        return (self.hinge_closed - self.gap) / 2.0

    @property
    def end_start(self) -> float:
        """How far inside the outside of front and back the ends begin."""
        return self.thickness - self.tongue_length if self.corner == REBATE else 0.0

    def spacing(self) -> Spacing:
        """Of the dovetails over the height of the walls."""
        return Spacing(self.walls, self.thickness, self.slope, self.pin, self.half_pin)

    def hinge_starts(self) -> tuple[float, ...]:
        """X of each hinge's left end."""
        first = self.hinge_in - self.over_ends
        last = self.length + self.over_ends - self.hinge_in - self.hinge_length
        return tuple(first + (last - first) * k / (self.hinges - 1) for k in range(self.hinges))

    def at_corner(self, *, front: bool, left: bool) -> Corner:
        """One corner as its joint sees it: front and back are its sides."""
        arris: Vec3 = (0.0 if left else self.length, -self.depth if front else 0.0, self.floor)
        return Corner(
            arris=arris,
            along_side=(1.0 if left else -1.0, 0.0, 0.0),
            along_end=(0.0, 1.0 if front else -1.0, 0.0),
            height=self.walls,
            side_thickness=self.thickness,
            end_thickness=self.thickness,
            fit=self.fit,
            groove=self.rebate,
            clear=self.bottom,
        )


@lru_cache(maxsize=512)
def lid_box(spec: BenchSpec) -> LidBox:
    """Read the box and its lid from a spec."""
    number, strip = spec.number, on_strip(spec)
    notch, corner = has_notch(spec), spec.word("box_corner")
    count = spec.count("box_corner_count")
    return LidBox(
        length=number("length"),
        depth=number("depth"),
        floor=number("base_height"),
        height=number("box_height"),
        thickness=number("box_thickness"),
        corner=corner,
        count=max(2, count) if corner == FINGERS else count,
        slope=SLOPES[spec.word("box_slope")],
        pin=number("box_pin"),
        half_pin=number("box_half_pin"),
        tongue_thickness=number("box_tongue_thickness"),
        tongue_length=number("box_tongue_length"),
        fit=number("box_fit"),
        bottom=number("box_bottom_thickness"),
        rebate=number("box_rebate"),
        bottom_fit=number("box_bottom_fit"),
        lid=number("lid_thickness"),
        over_front=number("lid_front"),
        over_ends=number("lid_ends"),
        notch_width=number("lid_notch_width") if notch else 0.0,
        notch_depth=number("lid_notch_depth") if notch else 0.0,
        strip=number("lid_strip") if strip else 0.0,
        gap=number("lid_gap") if strip else 0.0,
        opening_deg=number("lid_opening"),
        hinges=spec.count("hinge_count"),
        hinge_in=number("hinge_in"),
        hinge_length=number("hinge_length"),
        hinge_leaf=number("hinge_leaf"),
        hinge_closed=number("hinge_closed"),
        stay_reach=number("stay_reach"),
        stay_on_lid=number("stay_on_lid"),
        stay_down=number("stay_down"),
    )
