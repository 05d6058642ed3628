"""What makes a drawer impossible: the rules that bind its numbers, each with its reason.

All are of the tightest drawer of the bench: the top one of each opening is never the taller one.
"""

from __future__ import annotations

from collections.abc import Callable

from geometry.bench.case_numbers import case_numbers
from geometry.bench.constraint import Constraint, rule
from geometry.bench.drawer_numbers import (
    Making,
    box_height,
    box_room,
    box_side_clearance,
    box_width,
    drawer_openings,
    front_heights,
    fronts_of,
    making_of,
)
from geometry.bench.drawer_parameters import (
    FINGERS,
    HALF_BLIND,
    REBATE,
    THROUGH,
    drawers_name,
    step_name,
)
from geometry.bench.openings import DEPTH_READS, HEIGHT_READS, MOST_OPENINGS, WIDTH_READS
from geometry.bench.runner_numbers import runner_of
from geometry.design.spec import BenchSpec
from geometry.joints.box_joint import LEAST_FINGER
from geometry.joints.dovetail_spacing import Spacing
from shared.runners import WOODEN

# Common practice, no source, these:
LEAST_FRONT = 25.0  # mm high
LEAST_ABOVE_BOTTOM = 12.0  # mm of side above the bottom
LEAST_INSIDE = 60.0  # mm between the sides: a hand must reach in
LEAST_LENGTH_INSIDE = 40.0  # mm between box front and back
LEAST_CLEARANCE = 0.2  # mm at each side
LEAST_WOOD = 2.0  # mm left by a groove or behind a tongue
LEAST_STRIP = 5.0  # mm thick

_FREE = 1.0  # what does not apply binds nothing


def _fronts(spec: BenchSpec) -> float:
    return min(front_heights(spec, at)[0] for at in drawer_openings(spec)) - LEAST_FRONT


def lowest_box(spec: BenchSpec) -> float:
    """Height of the lowest box in the bench."""
    row, gap = runner_of(spec), fronts_of(spec).gap
    lowest = min(front_heights(spec, at)[0] for at in drawer_openings(spec))
    return box_height(lowest, gap, row)


def _box_heights(spec: BenchSpec) -> float:
    return lowest_box(spec) - making_of(spec).groove_top - LEAST_ABOVE_BOTTOM


def _inside(spec: BenchSpec) -> float:
    """The narrowest box's width between its sides."""
    narrowest = min(box_width(spec, at) for at in drawer_openings(spec))
    return narrowest - 2.0 * making_of(spec).side


def _clearance(spec: BenchSpec) -> float:
    return box_side_clearance(runner_of(spec), making_of(spec).side) - LEAST_CLEARANCE


def _room(spec: BenchSpec) -> float:
    return box_room(spec, drawer_openings(spec)[0]) - runner_of(spec).shortest


def _inside_length(spec: BenchSpec) -> float:
    return runner_of(spec).shortest - 2.0 * making_of(spec).end - LEAST_LENGTH_INSIDE


def _lap(spec: BenchSpec) -> float:
    fronts = fronts_of(spec)
    if not fronts.overlay:
        return _FREE
    return case_numbers(spec).partition_thickness - fronts.gap - 2.0 * fronts.lap


def _groove(spec: BenchSpec) -> float:
    m = making_of(spec)
    return min(m.side, m.end - m.lap) - m.groove - LEAST_WOOD


def _held(spec: BenchSpec) -> float:
    m = making_of(spec)
    return m.groove - m.bottom_fit / 2.0 - 1.0


def _tongue(spec: BenchSpec) -> float:
    m = making_of(spec)
    if m.joint != REBATE:
        return _FREE
    return min(m.side - m.tongue_length, m.end - m.tongue_thickness) - LEAST_WOOD


def _tails(spec: BenchSpec) -> float:
    """The room of the tightest tails: those of the back, whose tails are the longest."""
    m = making_of(spec)
    if m.joint not in (HALF_BLIND, THROUGH):
        return _FREE
    return Spacing(lowest_box(spec), m.end, m.slope, m.pin, m.half_pin).room(max(1, m.number))


def _fingers(spec: BenchSpec) -> float:
    m = making_of(spec)
    if m.joint != FINGERS:
        return _FREE
    return lowest_box(spec) / (2 * max(2, m.number) - 1) - LEAST_FINGER


def _notches(spec: BenchSpec) -> float:
    m = making_of(spec)
    if not (m.notch_width and m.notch_height):
        return _FREE
    between = _inside(spec) - 2.0 * m.notch_width - 20.0
    return min(between, lowest_box(spec) / 3.0 - m.notch_height)


def _hook(spec: BenchSpec) -> float:
    """The least wood round the holes for the hooks."""
    m = making_of(spec)
    if not (m.bore_diameter and m.bore_depth):
        return _FREE
    radius = m.bore_diameter / 2.0
    return min(
        m.end - m.bore_depth - 1.0,
        m.bore_in - radius - 1.0,
        _inside(spec) / 2.0 - m.bore_in - radius - 1.0,
        m.bore_up - radius - m.notch_height - 1.0,
        lowest_box(spec) - m.bore_up - radius - 1.0,
    )


def _wooden(width: Callable[[BenchSpec, float], float]) -> Callable[[BenchSpec], float]:
    def slack(spec: BenchSpec) -> float:
        row = runner_of(spec)
        return width(spec, row.strip_width) if row.kind == WOODEN else _FREE

    return slack


def _under_the_side(spec: BenchSpec, strip: float) -> float:
    m: Making = making_of(spec)
    return strip - box_side_clearance(runner_of(spec), m.side) - m.side


def _between_strips(spec: BenchSpec, strip: float) -> float:
    return min(at.width for at in drawer_openings(spec)) - 2.0 * strip - 10.0


_STACKS = " ".join(f"{drawers_name(k)} {step_name(k)}" for k in range(1, MOST_OPENINGS + 1))
_FRONT_READS = f"{WIDTH_READS} {HEIGHT_READS} {_STACKS} drawer_gap"
_BOX_READS = f"{_FRONT_READS} runner_kind runner_below runner_above"
_SIDE_READS = "runner_kind runner_side runner_side_to drawer_side_thickness"
_INSIDE_READS = f"{WIDTH_READS} {_SIDE_READS}"
_JOINT_READS = "drawer_joint drawer_end_thickness blind_lap"
_NUMBER_READS = "corner_rule corner_number"

CONSTRAINTS: tuple[Constraint, ...] = (
    rule("drawer_fronts", _FRONT_READS, _fronts, "a drawer's front needs at least {25 mm}"),
    rule(
        "drawer_boxes",
        f"{_BOX_READS} drawer_bottom_up drawer_bottom_thickness drawer_joint_fit",
        _box_heights,
        "a drawer's sides need at least {12 mm} above its bottom",
    ),
    rule(
        "drawer_inside",
        _INSIDE_READS,
        lambda s: _inside(s) - LEAST_INSIDE,
        "a drawer needs at least {60 mm} between its sides",
    ),
    rule(
        "drawer_clearance",
        _SIDE_READS,
        _clearance,
        "the sides are thicker than the runner leaves room for",
    ),
    rule(
        "drawer_room",
        f"{WIDTH_READS} {DEPTH_READS} drawer_front drawer_front_thickness runner_behind "
        "runner_shortest",
        _room,
        "the opening is too shallow for the shortest runner",
    ),
    rule(
        "drawer_length",
        "runner_shortest drawer_end_thickness",
        _inside_length,
        "a drawer needs at least {40 mm} between its box front and back",
    ),
    rule(
        "runner_lengths",
        "runner_shortest runner_longest",
        lambda s: s.number("runner_longest") - s.number("runner_shortest"),
        "the longest runner can't be shorter than the shortest",
    ),
    rule(
        "drawer_lap",
        "drawer_front drawer_lap drawer_gap partition_thickness",
        _lap,
        "two fronts would meet on one upright",
    ),
    rule(
        "drawer_groove",
        f"drawer_side_thickness drawer_groove_depth {_JOINT_READS}",
        _groove,
        "the groove for the bottom would leave less than {2 mm} before the joint",
    ),
    rule(
        "drawer_bottom_held",
        "drawer_groove_depth drawer_bottom_fit",
        _held,
        "the bottom would be held by less than {1 mm}",
    ),
    rule(
        "tongue",
        "drawer_joint drawer_side_thickness drawer_end_thickness tongue_length tongue_thickness",
        _tongue,
        "the tongue and its groove would leave less than {2 mm}",
    ),
    rule(
        "tails",
        f"{_BOX_READS} {_JOINT_READS} {_NUMBER_READS} dovetail_slope pin_width half_pin_width",
        _tails,
        "the tails would be narrower than {5 mm} at their base",
    ),
    rule(
        "fingers",
        f"{_BOX_READS} drawer_joint {_NUMBER_READS}",
        _fingers,
        "the fingers would be narrower than {3 mm}",
    ),
    rule(
        "runner_notches",
        f"{_BOX_READS} {_INSIDE_READS} runner_notch_width runner_notch_height",
        _notches,
        "the notches for the runners would take too much of the box's back",
    ),
    rule(
        "runner_hooks",
        f"{_BOX_READS} {_INSIDE_READS} drawer_end_thickness runner_notch_width "
        "runner_notch_height runner_bore_diameter runner_bore_depth runner_bore_in runner_bore_up",
        _hook,
        "the hole for the runner's hook would break out",
    ),
    rule(
        "runner_strip",
        f"{_SIDE_READS} runner_strip_width",
        _wooden(_under_the_side),
        "a wooden runner has to reach under the whole side",
    ),
    rule(
        "runner_strips",
        f"{WIDTH_READS} runner_kind runner_strip_width",
        _wooden(_between_strips),
        "the wooden runners would meet in the middle",
    ),
    rule(
        "runner_strip_thickness",
        "runner_kind runner_below",
        _wooden(lambda s, _strip: runner_of(s).below - LEAST_STRIP),
        "a wooden runner needs a thickness of at least {5 mm}, the clearance below",
    ),
)
