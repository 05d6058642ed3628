"""Where drawers and their fronts are, and how large: worked from the opening and the runner.

Worked once by hand, for an opening 380 wide, 260 high and 342 deep (from the uprights' fronts to
the inside of the back), two equal drawers with inset fronts 18 thick and gaps of 2, on side-mounted
runners with 12.7 each side, 6 below and above, 3 behind, in lengths of 250, 300, 350:

- fronts: 380 - 2 x 2 = 376 wide, (260 - 3 x 2) / 2 = 127 high;
- box: 380 - 2 x 12.7 = 354.6 wide; 127 + 2 - 6 - 6 = 117 high; 342 - 18 - 3 = 321 is there for
  its length, so 300 long.

A box has the height of its front and one gap, less the clearances, wherever it is in the stack,
so that equal fronts have equal boxes.  Where the runner's sheet measures to the inside of the
sides (21 each side, sides 12 thick), the box is 380 - 2 x 21 + 2 x 12 = 362 wide outside.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache

from geometry.bench.drawer_parameters import (
    BY_NUMBER,
    HALF_BLIND,
    OVERLAY,
    drawers_name,
    step_name,
)
from geometry.bench.openings import DRAWERS, Opening, filled_with
from geometry.bench.runner_numbers import runner_of
from geometry.design.spec import BenchSpec
from geometry.joints.dovetail_spacing import SLOPES
from geometry.primitives.frame import Vec3
from shared.runners import TO_INSIDE, Runner


@dataclass(frozen=True, slots=True)
class Fronts:
    """All fronts of a bench, in mm: ``lap`` is 0 for inset ones."""

    overlay: bool
    gap: float
    lap: float
    thickness: float
    left_on: float


@dataclass(frozen=True, slots=True)
class Making:
    """How all boxes of a bench are made, in mm.

    ``side``, ``end`` and ``bottom`` are thicknesses; the bottom's underside is ``up`` above the
    lower edges, in grooves ``groove`` deep with ``bottom_fit`` of play.  ``lap`` is 0 but for
    half-blind dovetails.  ``number`` of tails or fingers is 0 where they follow from ``width``.
    """

    side: float
    end: float
    bottom: float
    groove: float
    up: float
    bottom_fit: float
    joint: str
    fit: float
    tongue_thickness: float
    tongue_length: float
    width: float
    number: int
    slope: float
    pin: float
    half_pin: float
    lap: float
    notch_width: float
    notch_height: float
    bore_diameter: float
    bore_depth: float
    bore_in: float
    bore_up: float

    @property
    def groove_top(self) -> float:
        """Upper side of the groove for the bottom, above the lower edges."""
        return self.up + self.bottom + self.fit


@dataclass(frozen=True, slots=True)
class BoxNumbers:
    """One box: outside width, height and length (front to back) in mm, and how it is made."""

    width: float
    height: float
    length: float
    making: Making


@dataclass(frozen=True, slots=True)
class Drawer:
    """One drawer in the bench, shut; numbered from the top of its opening.

    The front's rectangle in X and Z; ``face`` is how far its outside lies in front of y = 0.
    ``origin`` is the box's outer lower corner at the front left.
    """

    opening: Opening
    number: int
    x_low: float
    x_high: float
    z_low: float
    z_high: float
    face: float
    box: BoxNumbers
    origin: Vec3

    @property
    def name(self) -> str:
        return f"drawer_{self.opening.index}_{self.number}"

    @property
    def title(self) -> str:
        return f"Drawer {self.number} of {self.opening.title}"

    @property
    def place(self) -> str:
        """Which one it is, after the name of a part."""
        return f"{_ORDINALS[self.number - 1]} in {self.opening.title}"

    @property
    def front_height(self) -> float:
        return round(self.z_high - self.z_low, 9)

    @property
    def front_width(self) -> float:
        return round(self.x_high - self.x_low, 9)


_ORDINALS = ("first", "second", "third", "fourth", "fifth")  # as many as there can be


@lru_cache(maxsize=512)
def fronts_of(spec: BenchSpec) -> Fronts:
    """Read the fronts from a spec."""
    overlay = spec.word("drawer_front") == OVERLAY
    return Fronts(
        overlay=overlay,
        gap=spec.number("drawer_gap"),
        lap=spec.number("drawer_lap") if overlay else 0.0,
        thickness=spec.number("drawer_front_thickness"),
        left_on=spec.number("drawer_allowance"),
    )


@lru_cache(maxsize=512)
def making_of(spec: BenchSpec) -> Making:
    """Read from a spec how its boxes are made."""
    row = runner_of(spec)
    joint = spec.word("drawer_joint")
    given = spec.word("corner_rule") == BY_NUMBER
    return Making(
        side=spec.number("drawer_side_thickness"),
        end=spec.number("drawer_end_thickness"),
        bottom=spec.number("drawer_bottom_thickness"),
        groove=spec.number("drawer_groove_depth"),
        up=spec.number("drawer_bottom_up"),
        bottom_fit=spec.number("drawer_bottom_fit"),
        joint=joint,
        fit=spec.number("drawer_joint_fit"),
        tongue_thickness=spec.number("tongue_thickness"),
        tongue_length=spec.number("tongue_length"),
        width=spec.number("corner_width"),
        number=spec.count("corner_number") if given else 0,
        slope=SLOPES[spec.word("dovetail_slope")],
        pin=spec.number("pin_width"),
        half_pin=spec.number("half_pin_width"),
        lap=spec.number("blind_lap") if joint == HALF_BLIND else 0.0,
        notch_width=row.notch_width,
        notch_height=row.notch_height,
        bore_diameter=row.bore_diameter,
        bore_depth=row.bore_depth,
        bore_in=row.bore_in,
        bore_up=row.bore_up,
    )


def box_side_clearance(row: Runner, side: float) -> float:
    """Clearance from the opening to the outside of a box with sides so thick, at each side."""
    return row.side - side if row.side_to == TO_INSIDE else row.side


def box_width(spec: BenchSpec, at: Opening) -> float:
    """Outside width of the boxes in an opening."""
    clearance = box_side_clearance(runner_of(spec), spec.number("drawer_side_thickness"))
    return round(at.width - 2.0 * clearance, 9)


def box_front(spec: BenchSpec, at: Opening) -> float:
    """How far the outside of a box's own front lies in front of y = 0."""
    fronts = fronts_of(spec)
    return at.front if fronts.overlay else at.front - fronts.thickness


def box_room(spec: BenchSpec, at: Opening) -> float:
    """What depth there is for a box, with the clearance behind it taken off."""
    return box_front(spec, at) - at.back - runner_of(spec).behind


def runner_length(row: Runner, room: float) -> float:
    """The longest runner that goes into a room, which must take the shortest.

    >>> from shared.runners import SIDE, WOODEN, generic
    >>> runner_length(generic(SIDE), 321.0)
    300
    >>> runner_length(generic(WOODEN), 321.0)
    321.0
    """
    longest = min(room, row.longest)
    if not row.step:
        return round(longest, 9)
    steps = math.floor((longest - row.shortest) / row.step + 1e-9)
    return round(row.shortest + max(0, steps) * row.step, 9)


def front_heights(spec: BenchSpec, at: Opening) -> tuple[float, ...]:
    """Heights of an opening's fronts from the top down; each is the step taller than the last."""
    gap = fronts_of(spec).gap
    count, step = spec.count(drawers_name(at.index)), spec.number(step_name(at.index))
    if count == 1:
        step = 0.0
    clear = at.height - (count + 1) * gap
    first = (clear - step * count * (count - 1) / 2.0) / count
    return tuple(round(first + k * step, 9) for k in range(count))


def box_height(front: float, gap: float, row: Runner) -> float:
    """Height of a box behind a front of this height."""
    return round(front + gap - row.below - row.above, 9)


def drawer_openings(spec: BenchSpec) -> tuple[Opening, ...]:
    """The openings with drawers; none for a bench without a case."""
    return filled_with(spec, DRAWERS)


@lru_cache(maxsize=512)
def drawers(spec: BenchSpec) -> tuple[Drawer, ...]:
    """All drawers: openings from the left, in each from the top down."""
    return tuple(one for at in drawer_openings(spec) for one in _in_opening(spec, at))


def _in_opening(spec: BenchSpec, at: Opening) -> list[Drawer]:
    fronts, row, making = fronts_of(spec), runner_of(spec), making_of(spec)
    width, front = box_width(spec, at), box_front(spec, at)
    length = runner_length(row, box_room(spec, at))
    low, high = (
        at.x_left + _from_side(fronts, at.left),
        at.x_right - _from_side(fronts, at.right),
    )
    found = []
    top = at.z_high - fronts.gap
    for number, height in enumerate(front_heights(spec, at), 1):
        box = BoxNumbers(width, box_height(height, fronts.gap, row), length, making)
        origin = (
            at.x_left + (at.width - width) / 2.0,
            -front,
            top - height - fronts.gap / 2.0 + row.below,
        )
        face = front + fronts.thickness
        found.append(Drawer(at, number, low, high, top - height, top, face, box, origin))
        top -= height + fronts.gap
    return found


def _from_side(fronts: Fronts, beside: str) -> float:
    """From an opening's side inward to the front's edge; negative where it laps over an upright.

    An end panel stands in front of the uprights, so no front can lap over it.
    """
    if fronts.overlay and not beside.startswith("end_panel"):
        return -fronts.lap
    return fronts.gap
