"""The numbers of panel feet, read once from a spec, and the places that follow from them."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from geometry.bench.feet_numbers import ground
from geometry.bench.wedges import WEDGED
from geometry.design.spec import BenchSpec
from geometry.joints.through_tenon import ThroughTenon
from geometry.primitives.frame import Vec3

_UP: Vec3 = (0.0, 0.0, 1.0)


def has_middle(spec: BenchSpec) -> bool:
    return spec.count("panel_count") == 3


def is_wedged(spec: BenchSpec) -> bool:
    return spec.value("panel_tenon") == WEDGED


@dataclass(frozen=True, slots=True)
class PanelNumbers:
    """mm.  ``left`` and ``right`` are X of the outer panels' outsides, ``middle`` X of the middle
    panel's middle, None without one; ``back`` and ``front`` Y of their edges.  ``wedge_room`` is 0
    for plain tenons."""

    left: float
    right: float
    middle: float | None
    back: float
    front: float
    height: float
    ground: float
    thickness: float
    relief: float
    pad: float
    rail_height: float
    rail_thickness: float
    rail_top: float
    rail_middle: float
    tenon_thickness: float
    shoulder: float
    wedge_room: float
    fit: float

    @property
    def width(self) -> float:
        """Of a panel, across the bench's depth."""
        return self.back - self.front

    @property
    def tenon_height(self) -> float:
        return self.rail_height - 2.0 * self.shoulder

    @property
    def rail_level(self) -> float:
        """Height of the rail's middle."""
        return self.rail_top - self.rail_height / 2.0

    @property
    def between(self) -> float:
        """Length of the rail between its shoulders."""
        return self.right - self.left - 2.0 * self.thickness

    def end(self, side: str) -> ThroughTenon:
        """The tenon in the ``left`` or the ``right`` panel."""
        out, t = (-1.0 if side == "left" else 1.0), self.thickness
        x = self.left + t if side == "left" else self.right - t
        return ThroughTenon(
            face=(x, self.rail_middle, self.rail_level),
            out=(out, 0.0, 0.0),
            depth=t,
            grain=_UP,
            half_grain=self.tenon_height / 2.0,
            half_cross=self.tenon_thickness / 2.0,
            fit=self.fit,
            wedge_room=self.wedge_room,
        )

    def passage(self, middle: float) -> ThroughTenon:
        """The whole rail where it passes the middle panel."""
        return ThroughTenon(
            face=(middle - self.thickness / 2.0, self.rail_middle, self.rail_level),
            out=(1.0, 0.0, 0.0),
            depth=self.thickness,
            grain=_UP,
            half_grain=self.rail_height / 2.0,
            half_cross=self.rail_thickness / 2.0,
            fit=self.fit,
            wedge_room=0.0,
        )


@lru_cache(maxsize=512)
def panel_numbers(spec: BenchSpec) -> PanelNumbers:
    """Read the panel feet from a spec."""
    left, right = spec.number("inset_left"), spec.number("length") - spec.number("inset_right")
    back, front = -spec.number("inset_back"), spec.number("inset_front") - spec.number("depth")
    return PanelNumbers(
        left=left,
        right=right,
        middle=(left + right) / 2.0 + spec.number("panel_middle") if has_middle(spec) else None,
        back=back,
        front=front,
        height=spec.number("base_height"),
        ground=ground(spec),
        thickness=spec.number("panel_thickness"),
        relief=spec.number("panel_relief"),
        pad=spec.number("panel_pad"),
        rail_height=spec.number("panel_rail_height"),
        rail_thickness=spec.number("panel_rail_thickness"),
        rail_top=spec.number("base_height") - spec.number("panel_rail_down"),
        rail_middle=(back + front) / 2.0 - spec.number("panel_rail_forward"),
        tenon_thickness=spec.number("panel_tenon_thickness"),
        shoulder=spec.number("panel_shoulder"),
        wedge_room=spec.number("panel_wedge") if is_wedged(spec) else 0.0,
        fit=spec.number("panel_fit"),
    )
