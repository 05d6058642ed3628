"""The numbers and choices of a storage box with a lid: its pieces, its corners, its lid."""

from __future__ import annotations

from collections.abc import Callable

from geometry.bench.drawer_parameters import FINGERS, REBATE, THROUGH
from geometry.design.parameter import Parameter, angle, choice, count, length
from geometry.design.spec import BenchSpec
from geometry.joints.dovetail_spacing import SLOPES
from shared.hinges import HINGES
from shared.stays import STAYS

ON_STRIP, ON_BACK = "on a fixed strip", "on the back"
OVERHANG, NOTCH = "overhanging lid", "notch in the front"

_BOX, _LID = "Box", "Lid"
_HINGE, _STAY = HINGES[0], STAYS[0]


def corner_is(*kinds: str) -> Callable[[BenchSpec], bool]:
    """Whether the box's corners have one of these joints."""
    return lambda spec: spec.value("box_corner") in kinds


def on_strip(spec: BenchSpec) -> bool:
    """Whether the lid hangs on a strip of its own."""
    return spec.value("lid_hung") == ON_STRIP


def has_notch(spec: BenchSpec) -> bool:
    return spec.value("lid_grip") == NOTCH


_PIECES: tuple[Parameter, ...] = (
    length("box_height", "Box height", _BOX, 300, 120, 800, "Outside height of the box, with lid."),
    length(
        "box_thickness",
        "Box thickness",
        _BOX,
        20,
        12,
        50,
        "Thickness of front, back and ends.",
        step=0.5,
    ),
    choice(
        "box_corner",
        "Box corners",
        _BOX,
        THROUGH,
        (THROUGH, FINGERS, REBATE),
        "How front and back are joined to the ends; the tails are on front and back.",
    ),
    count(
        "box_corner_count",
        "Tails or fingers",
        _BOX,
        5,
        1,
        20,
        "At each end of front and back; a box joint has at least two.",
        applies=corner_is(THROUGH, FINGERS),
    ),
    choice(
        "box_slope",
        "Box dovetail slope",
        _BOX,
        "1:8",
        tuple(SLOPES),
        "Of the dovetails: 1:6 for soft timber and 1:8 for hard, common practice.",
        applies=corner_is(THROUGH),
    ),
    length(
        "box_pin",
        "Box pins",
        _BOX,
        10,
        3,
        60,
        "Width of the pins at their narrow ends.",
        step=0.5,
        applies=corner_is(THROUGH),
    ),
    length(
        "box_half_pin",
        "Box half pins",
        _BOX,
        12,
        3,
        60,
        "Width of the half pins at both edges, at their narrow ends.",
        step=0.5,
        applies=corner_is(THROUGH),
    ),
    length(
        "box_tongue_thickness",
        "Box tongue thickness",
        _BOX,
        9,
        3,
        30,
        "Of the tongues on the ends.",
        step=0.5,
        applies=corner_is(REBATE),
    ),
    length(
        "box_tongue_length",
        "Box tongue length",
        _BOX,
        9,
        3,
        30,
        "How far a tongue reaches into front or back.",
        step=0.5,
        applies=corner_is(REBATE),
    ),
    length(
        "box_fit",
        "Box corner fit",
        _BOX,
        0.2,
        0,
        1,
        "Clearance in the corner joints.",
        step=0.05,
    ),
    length(
        "box_bottom_thickness",
        "Box bottom thickness",
        _BOX,
        15,
        5,
        40,
        "Measured thickness of the sheet; it lies in rebates, flush below.",
        step=0.1,
    ),
    length(
        "box_rebate",
        "Rebate for the bottom",
        _BOX,
        9,
        3,
        40,
        "How deep the rebates are cut into front, back and ends.",
        step=0.5,
    ),
    length(
        "box_bottom_fit",
        "Box bottom fit",
        _BOX,
        1.0,
        0,
        6,
        "Clearance of the bottom in its rebates, both edges together.",
        step=0.1,
    ),
)

_TOP: tuple[Parameter, ...] = (
    length("lid_thickness", "Lid thickness", _LID, 22, 12, 60, "Of lid and strip.", step=0.5),
    length(
        "lid_front",
        "Lid over the front",
        _LID,
        18,
        0,
        100,
        "How far the lid stands out in front of the box.",
    ),
    length(
        "lid_ends",
        "Lid over the ends",
        _LID,
        0,
        0,
        100,
        "How far lid and strip stand out at both ends.",
    ),
    choice(
        "lid_grip",
        "Lid lifted by",
        _LID,
        OVERHANG,
        (OVERHANG, NOTCH),
        "Fingers take hold of the overhanging edge, or reach through a notch in the front.",
    ),
    length(
        "lid_notch_width",
        "Finger notch width",
        _LID,
        110,
        30,
        400,
        "In the middle of the front's upper edge.",
        applies=has_notch,
    ),
    length(
        "lid_notch_depth",
        "Finger notch depth",
        _LID,
        16,
        5,
        60,
        "Down from the front's upper edge; its corners are rounded to it.",
        applies=has_notch,
    ),
    choice(
        "lid_hung",
        "Lid hung",
        _LID,
        ON_STRIP,
        (ON_STRIP, ON_BACK),
        "On a strip that is fixed to the box, or on the box's back, where nothing stands behind.",
    ),
    length(
        "lid_strip",
        "Fixed strip",
        _LID,
        70,
        25,
        400,
        "From the back edge to the front of the strip.",
        applies=on_strip,
    ),
    length(
        "lid_gap",
        "Gap at the strip",
        _LID,
        1.5,
        0.5,
        8,
        "Between the strip and the closed lid.",
        step=0.1,
        applies=on_strip,
    ),
    angle(
        "lid_opening",
        "Lid opens to",
        _LID,
        95,
        60,
        130,
        "Where the stay holds the lid; check your stay's sheet.",
    ),
)

_HINGES: tuple[Parameter, ...] = (
    choice(
        "hinge",
        "Hinge",
        _LID,
        _HINGE.name,
        tuple(row.name for row in HINGES),
        "A generic row; a new one brings its sizes: measure your hinge.",
    ),
    count("hinge_count", "Hinges", _LID, 2, 2, 8, "How many, equally spaced."),
    length(
        "hinge_in",
        "Hinges in from the ends",
        _LID,
        120,
        10,
        900,
        "From the lid's ends to the outer hinges.",
    ),
    length(
        "hinge_length", "Hinge length", _LID, _HINGE.length, 20, 1000, "Along the pin.", step=0.5
    ),
    length(
        "hinge_leaf",
        "Hinge leaf",
        _LID,
        _HINGE.leaf,
        6,
        60,
        "From the middle of the pin to the outer edge of a leaf.",
        step=0.5,
    ),
    length(
        "hinge_closed",
        "Hinge closed",
        _LID,
        _HINGE.closed,
        1.2,
        12,
        "Thickness of both leaves lying on each other; each is let in by half of what the gap "
        "leaves of it.",
        step=0.1,
    ),
)

_STAYS: tuple[Parameter, ...] = (
    choice(
        "lid_stay",
        "Lid stay",
        _LID,
        _STAY.name,
        tuple(row.name for row in STAYS),
        "A generic row, one at each end; a new one brings its sizes: check your stay's sheet.",
    ),
    length(
        "stay_reach",
        "Stay when taut",
        _LID,
        _STAY.reach,
        60,
        900,
        "Between its two fixings, the lid open.",
    ),
    length(
        "stay_on_lid",
        "Stay on the lid",
        _LID,
        _STAY.on_lid,
        30,
        700,
        "From the hinge's pin forward to its fixing on the lid.",
    ),
    length(
        "stay_down",
        "Stay down in the box",
        _LID,
        _STAY.down,
        10,
        400,
        "From the box's rim down to its fixing on an end.",
    ),
)

BOX_PARAMETERS: tuple[Parameter, ...] = _PIECES
LID_PARAMETERS: tuple[Parameter, ...] = (*_TOP, *_HINGES, *_STAYS)
