"""The numbers of a panel bench's seat and ends, read once from a spec, and what follows from them.

X runs from the seat's left end; ``forward`` is how far in front of the back edges something lies.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from geometry.bench.lipped import SHEET
from geometry.bench.overall import PANEL_BENCH, seat_height, seat_is
from geometry.design.spec import BenchSpec
from geometry.joints.dovetail_spacing import SLOPES, Spacing

LEFT, RIGHT = "left", "right"
SIDES = (LEFT, RIGHT)
MITRED, HOUSED, DOVETAILED = "mitred", "housed", "dovetailed"
FRONT_EDGES, BOTH_EDGES = "front edges", "front and back edges"

# What the lippings of seat and ends depend on.
LIP_READS = "panel_made_of panel_lip panel_lipped"


def has_panel_ends(spec: BenchSpec) -> bool:
    return seat_is(PANEL_BENCH, spec)


def panels_of_sheet(spec: BenchSpec) -> bool:
    """Whether it is a panel bench whose seat and ends are of sheet."""
    return has_panel_ends(spec) and spec.value("panel_made_of") == SHEET


def _has_end(spec: BenchSpec, joint: str) -> bool:
    return has_panel_ends(spec) and any(spec.value(f"{side}_joint") == joint for side in SIDES)


def has_housed_end(spec: BenchSpec) -> bool:
    return _has_end(spec, HOUSED)


def has_dovetailed_end(spec: BenchSpec) -> bool:
    return _has_end(spec, DOVETAILED)


@dataclass(frozen=True, slots=True)
class PanelEnd:
    """One end: X of its outside and its inside, how far forward it reaches, and how high."""

    side: str
    joint: str
    outside: float
    inside: float
    front: float
    height: float


@dataclass(frozen=True, slots=True)
class PanelEnds:
    """All in mm.  ``top`` is the seat's height, ``thickness`` that of the ends.  Where they are of
    sheet, ``lip`` is the thickness of the lippings on the front edges, ``back_lip`` of those on the
    back edges; all other numbers are those of boards with their lippings on.
    """

    length: float
    depth: float
    top: float
    seat_thickness: float
    thickness: float
    left: PanelEnd
    right: PanelEnd
    relief: float
    pad: float
    housing_depth: float
    housing_fit: float
    cover: float
    cutter_radius: float
    tails: Spacing
    tail_count: int
    tail_lap: float
    tail_fit: float
    lip: float
    back_lip: float

    @property
    def of_sheet(self) -> bool:
        return self.lip > 0.0

    @property
    def underside(self) -> float:
        """Height of the seat's underside."""
        return self.top - self.seat_thickness

    @property
    def ends(self) -> tuple[PanelEnd, PanelEnd]:
        return (self.left, self.right)

    @property
    def seat_ends(self) -> tuple[float, float]:
        """X of the board's own ends: behind the lap, where an end laps over its tails, and behind
        the lipping of one that stands out over a housed end."""
        behind = {DOVETAILED: self.tail_lap, HOUSED: self.lip}
        left, right = (behind.get(end.joint, 0.0) for end in self.ends)
        return (left, self.length - right)

    @property
    def between(self) -> float:
        """Clear width between the ends."""
        return self.right.inside - self.left.inside

    @property
    def least_front(self) -> float:
        """How far forward both ends reach."""
        return min(self.left.front, self.right.front)

    @property
    def tongue_front(self) -> float:
        """How far forward the tongue of a housed end reaches: to where the round begins."""
        front = min(end.front for end in self.ends if end.joint == HOUSED)
        return front - self.cover - self.cutter_radius - self.housing_fit / 2.0


@lru_cache(maxsize=512)
def panel_ends(spec: BenchSpec) -> PanelEnds:
    """Read seat and ends from a spec."""
    depth, lap, thickness = (spec.number(n) for n in ("depth", "tail_lap", "end_thickness"))
    lip = spec.number("panel_lip") if panels_of_sheet(spec) else 0.0
    return PanelEnds(
        length=spec.number("length"),
        depth=depth,
        top=seat_height(spec),
        seat_thickness=spec.number("seat_thickness"),
        thickness=thickness,
        left=_end(spec, LEFT),
        right=_end(spec, RIGHT),
        relief=spec.number("end_relief"),
        pad=spec.number("end_pad"),
        housing_depth=spec.number("housing_depth"),
        housing_fit=spec.number("housing_fit"),
        cover=spec.number("housing_cover"),
        cutter_radius=spec.number("cutter_diameter") / 2.0,
        tails=Spacing(
            height=depth,
            length=thickness - lap,
            slope=SLOPES[spec.word("tail_slope")],
            pin=spec.number("tail_pin"),
            half_pin=spec.number("tail_half_pin"),
        ),
        tail_count=spec.count("tail_count"),
        tail_lap=lap,
        tail_fit=spec.number("tail_fit"),
        lip=lip,
        back_lip=lip if spec.value("panel_lipped") == BOTH_EDGES else 0.0,
    )


def _end(spec: BenchSpec, side: str) -> PanelEnd:
    joint, thickness = spec.word(f"{side}_joint"), spec.number("end_thickness")
    housed = joint == HOUSED
    outside = spec.number(f"{side}_end_in") if housed else 0.0
    inside = outside + thickness
    if side == RIGHT:
        outside, inside = spec.number("length") - outside, spec.number("length") - inside
    low = spec.number("base_height") + spec.number("housing_depth")
    return PanelEnd(
        side=side,
        joint=joint,
        outside=outside,
        inside=inside,
        front=spec.number("depth") - (spec.number("end_reveal") if housed else 0.0),
        height=low if housed else seat_height(spec),
    )
