"""The numbers and choices of drawers: how many, their fronts, their boxes, their corners."""

from __future__ import annotations

from collections.abc import Callable

from geometry.bench.grain import (
    FRONT_TO_BACK,
    OF_SHEET,
    OF_TIMBER,
    SIDE_TO_SIDE,
    grain_choice,
    panel_choice,
)
from geometry.bench.openings import DRAWERS, MOST_OPENINGS, exists, fill_name
from geometry.design.parameter import Parameter, choice, count, length
from geometry.design.spec import BenchSpec
from geometry.joints.dovetail_spacing import SLOPES
from shared.sheet_goods import SHEET_MATERIALS
from shared.timber import TIMBERS
from shared.units import MM_PER_INCH

MOST_DRAWERS = 5

INSET, OVERLAY = "inset", "overlay"
REBATE, FINGERS = "rebate and groove", "box joint"
HALF_BLIND, THROUGH = "half-blind dovetail", "through dovetail"
BY_WIDTH, BY_NUMBER = "by width", "by number"

# common practice, no source: an eighth of an inch on each edge, planed off when the front is fitted
LEFT_ON = MM_PER_INCH / 8.0


def drawers_name(k: int) -> str:
    """The parameter that says how many drawers the k-th opening has."""
    return f"opening_{k}_drawers"


def step_name(k: int) -> str:
    """The parameter that says how much taller each front is than the one above it."""
    return f"opening_{k}_step"


def joint_is(*kinds: str) -> Callable[[BenchSpec], bool]:
    """Whether the corners have one of these joints."""
    return lambda spec: spec.word("drawer_joint") in kinds


def _has_drawers(spec: BenchSpec, k: int) -> bool:
    return exists(spec, k) and spec.word(fill_name(k)) == DRAWERS


def _number(k: int) -> Parameter:
    return count(
        drawers_name(k),
        f"Drawers in opening {k}",
        "Drawers",
        1,
        1,
        MOST_DRAWERS,
        f"How many drawers stand one above the other in opening {k}.",
        applies=lambda spec: _has_drawers(spec, k),
    )


def _step(k: int) -> Parameter:
    return length(
        step_name(k),
        f"Graduation, opening {k}",
        "Drawers",
        0,
        0,
        200,
        f"How much taller each front in opening {k} is than the one above it; 0 for equal ones.",
        applies=lambda spec: _has_drawers(spec, k) and spec.count(drawers_name(k)) > 1,
    )


_PER_OPENING = tuple(row(k) for k in range(1, MOST_OPENINGS + 1) for row in (_number, _step))

_FRONTS: tuple[Parameter, ...] = (
    choice(
        "drawer_front",
        "Drawer fronts",
        "Drawer fronts",
        INSET,
        (INSET, OVERLAY),
        "Inset between the uprights, flush with their fronts, or lying on them.",
    ),
    length(
        "drawer_gap",
        "Gap round fronts",
        "Drawer fronts",
        2,
        0.5,
        10,
        "Between fronts, and from fronts to whatever they stand between.",
        step=0.1,
    ),
    length(
        "drawer_lap",
        "Lap over uprights",
        "Drawer fronts",
        8,
        0,
        40,
        "How far an overlay front lies on the upright beside it.",
        step=0.5,
        applies=lambda spec: spec.word("drawer_front") == OVERLAY,
    ),
    length(
        "drawer_front_thickness",
        "Front thickness",
        "Drawer fronts",
        18,
        6,
        40,
        "Of the fronts that are seen; they are screwed on to the drawers.",
        step=0.5,
    ),
    length(
        "drawer_allowance",
        "Left on each edge",
        "Drawer fronts",
        LEFT_ON,
        0,
        15,
        "Fronts are cut larger by this on every edge, and fitted to their openings afterwards.",
        step=0.1,
    ),
)

_BOX: tuple[Parameter, ...] = (
    choice(
        "drawer_timber",
        "Timber of the boxes",
        "Drawer boxes",
        "hard maple",
        tuple(TIMBERS),
        "Timber of sides, box fronts, backs and wooden runners.",
    ),
    panel_choice(
        "drawer_bottom_of",
        "Bottoms of",
        "Drawer boxes",
        "Sheet, or panels of the boxes' timber that have to move.",
    ),
    grain_choice(
        "drawer_bottom_grain",
        "Grain of the bottoms",
        "Drawer boxes",
        SIDE_TO_SIDE,
        FRONT_TO_BACK,
        "A panel of timber moves across it.",
        applies=lambda spec: spec.word("drawer_bottom_of") == OF_TIMBER,
    ),
    choice(
        "drawer_sheet",
        "Sheet of the bottoms",
        "Drawer boxes",
        "birch plywood",
        tuple(SHEET_MATERIALS),
        "Sheet material of the drawers' bottoms.",
        applies=lambda spec: spec.word("drawer_bottom_of") == OF_SHEET,
    ),
    length("drawer_side_thickness", "Sides", "Drawer boxes", 12, 6, 25, "Thickness.", step=0.5),
    length(
        "drawer_end_thickness",
        "Box front and back",
        "Drawer boxes",
        14,
        6,
        30,
        "Thickness of the box's own front and of its back.",
        step=0.5,
    ),
    length(
        "drawer_bottom_thickness",
        "Bottom",
        "Drawer boxes",
        6.4,
        2,
        15,
        "Measured thickness of the sheet, not its nominal size.",
        step=0.1,
    ),
    length(
        "drawer_groove_depth",
        "Bottom's groove",
        "Drawer boxes",
        5,
        1.5,
        15,
        "Depth of the grooves that hold the bottom.",
        step=0.5,
    ),
    length(
        "drawer_bottom_up",
        "Bottom up",
        "Drawer boxes",
        12.7,
        4,
        40,
        "From the lower edge of the sides to the underside of the bottom.",
        step=0.1,
    ),
    length(
        "drawer_bottom_fit",
        "Bottom's fit",
        "Drawer boxes",
        1,
        0,
        4,
        "Clearance of the bottom between its grooves, both edges together.",
        step=0.1,
    ),
)

_DOVETAILS = (HALF_BLIND, THROUGH)

_CORNERS: tuple[Parameter, ...] = (
    choice(
        "drawer_joint",
        "Corner joint",
        "Drawer corners",
        REBATE,
        (REBATE, FINGERS, HALF_BLIND, THROUGH),
        "Of the box's corners; a half-blind dovetail is at the front, with a through one behind.",
    ),
    length(
        "drawer_joint_fit",
        "Corner fit",
        "Drawer corners",
        0.1,
        0,
        1,
        "Clearance in the corner joints and of the bottom's thickness in its groove.",
        step=0.05,
    ),
    length(
        "tongue_thickness",
        "Tongue thickness",
        "Drawer corners",
        5,
        2,
        15,
        "Of the tongue on box front and back.",
        step=0.5,
        applies=joint_is(REBATE),
    ),
    length(
        "tongue_length",
        "Tongue length",
        "Drawer corners",
        5,
        2,
        15,
        "How far the tongue reaches into the side.",
        step=0.5,
        applies=joint_is(REBATE),
    ),
    choice(
        "corner_rule",
        "Tails or fingers",
        "Drawer corners",
        BY_WIDTH,
        (BY_WIDTH, BY_NUMBER),
        "As many as come nearest to a width, or a given number.",
        applies=joint_is(FINGERS, *_DOVETAILS),
    ),
    length(
        "corner_width",
        "About as wide as",
        "Drawer corners",
        22,
        3,
        150,
        "The width of a tail at its end, or of a finger, that is come near to.",
        applies=lambda spec: not joint_is(REBATE)(spec) and spec.word("corner_rule") == BY_WIDTH,
    ),
    count(
        "corner_number",
        "How many",
        "Drawer corners",
        3,
        1,
        20,
        "Tails on each side, or fingers; a box joint has at least two.",
        applies=lambda spec: not joint_is(REBATE)(spec) and spec.word("corner_rule") == BY_NUMBER,
    ),
    choice(
        "dovetail_slope",
        "Slope",
        "Drawer corners",
        "1:8",
        tuple(SLOPES),
        "Of the dovetails: 1:6 for soft timber and 1:8 for hard, common practice.",
        applies=joint_is(*_DOVETAILS),
    ),
    length(
        "pin_width",
        "Pins",
        "Drawer corners",
        6,
        2,
        40,
        "Width of the pins at their narrow ends.",
        step=0.5,
        applies=joint_is(*_DOVETAILS),
    ),
    length(
        "half_pin_width",
        "Half pins",
        "Drawer corners",
        6,
        2,
        40,
        "Width of the half pins at both edges, at their narrow ends.",
        step=0.5,
        applies=joint_is(*_DOVETAILS),
    ),
    length(
        "blind_lap",
        "Lap",
        "Drawer corners",
        4,
        1,
        15,
        "What a half-blind dovetail leaves of the box front in front of the tails.",
        step=0.5,
        applies=joint_is(HALF_BLIND),
    ),
)

PARAMETERS: tuple[Parameter, ...] = (*_PER_OPENING, *_FRONTS, *_BOX, *_CORNERS)
