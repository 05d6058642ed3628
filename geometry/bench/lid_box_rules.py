"""What a storage box with a lid must leave room for, each rule with its reason."""

from __future__ import annotations

from geometry.bench.constraint import Constraint, rule
from geometry.bench.drawer_parameters import FINGERS, REBATE, THROUGH
from geometry.bench.lid_box_numbers import lid_box
from geometry.bench.lid_stay import stay_numbers
from geometry.design.spec import BenchSpec
from geometry.joints.box_joint import LEAST_FINGER

# Common practice, no source, these:
LEAST_INSIDE = 60.0  # mm inside the box: a hand must reach to its floor
LEAST_WOOD = 4.0  # mm left by a rebate or behind a tongue
LEAST_HELD = 1.5  # mm of the bottom in its rebates
LEAST_LID = 100.0  # mm of lid from front to back
LEAST_BESIDE = 20.0  # mm between hinges, between a notch and the box's ends, under a notch
LEAST_BEYOND = 2.0  # mm of wood beyond a leaf, before it comes out on the other side
LEAST_LEAF = 0.4  # mm that a leaf is let in

_FREE = 1.0  # what does not apply binds nothing


def _inside(spec: BenchSpec) -> float:
    b = lid_box(spec)
    return min(b.length, b.depth) - 2.0 * b.thickness - LEAST_INSIDE


def _high(spec: BenchSpec) -> float:
    b = lid_box(spec)
    return b.walls - b.bottom - LEAST_INSIDE


def _tails(spec: BenchSpec) -> float:
    b = lid_box(spec)
    return b.spacing().room(b.count) if b.corner == THROUGH else _FREE


def _fingers(spec: BenchSpec) -> float:
    b = lid_box(spec)
    return b.walls / (2 * b.count - 1) - LEAST_FINGER if b.corner == FINGERS else _FREE


def _tongue(spec: BenchSpec) -> float:
    b = lid_box(spec)
    if b.corner != REBATE:
        return _FREE
    return b.thickness - max(b.tongue_length, b.tongue_thickness) - LEAST_WOOD


def _rebate(spec: BenchSpec) -> float:
    b = lid_box(spec)
    return b.thickness - b.rebate - LEAST_WOOD


def _held(spec: BenchSpec) -> float:
    b = lid_box(spec)
    return b.rebate - b.bottom_fit / 2.0 - LEAST_HELD


def _notch_wide(spec: BenchSpec) -> float:
    b = lid_box(spec)
    return b.length - 2.0 * (b.thickness + LEAST_BESIDE) - b.notch_width


def _notch_deep(spec: BenchSpec) -> float:
    b = lid_box(spec)
    return b.walls - b.bottom - b.notch_depth - LEAST_BESIDE


def _lid_deep(spec: BenchSpec) -> float:
    b = lid_box(spec)
    return b.lid_back - b.lid_front - LEAST_LID


def _strip(spec: BenchSpec) -> float:
    b = lid_box(spec)
    return b.strip - b.thickness if b.has_strip else _FREE


def _hinges(spec: BenchSpec) -> float:
    starts = lid_box(spec).hinge_starts()
    return starts[1] - starts[0] - lid_box(spec).hinge_length - LEAST_BESIDE


def _leaf(spec: BenchSpec) -> float:
    """In the edges of lid and strip, or in the upper edge of the back."""
    b = lid_box(spec)
    return (b.lid if b.has_strip else b.thickness) - b.hinge_leaf - LEAST_BEYOND


def _hinges_on_back(spec: BenchSpec) -> float:
    """Leaves on the back's upper edge keep off its corners."""
    b = lid_box(spec)
    if b.has_strip:
        return _FREE
    return b.hinge_starts()[0] - b.thickness


def _let_in(spec: BenchSpec) -> float:
    b = lid_box(spec)
    return b.mortise - LEAST_LEAF


def _let_in_lid(spec: BenchSpec) -> float:
    b = lid_box(spec)
    return b.lid / 3.0 - b.mortise


def _stay_long(spec: BenchSpec) -> float:
    return stay_numbers(lid_box(spec)).spare


def _stay_in_box(spec: BenchSpec) -> float:
    return stay_numbers(lid_box(spec)).room


def _stay_under_lid(spec: BenchSpec) -> float:
    """The fixing on the lid, over the inside of the box."""
    b = lid_box(spec)
    return b.pin_place[0] - b.stay_on_lid - (b.thickness - b.depth) - 10.0


def _stay_down(spec: BenchSpec) -> float:
    b = lid_box(spec)
    return b.walls - b.bottom - b.stay_down - 10.0


_WALLS = "box_height lid_thickness box_bottom_thickness"
_LID = "depth lid_hung lid_strip lid_gap"
_PLACES = "length lid_ends hinge_in hinge_length hinge_count"
_STAY = f"{_LID} box_thickness lid_thickness lid_opening stay_reach stay_on_lid stay_down"

BOX_CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "box_inside",
        "length depth box_thickness",
        _inside,
        "the box needs at least {60 mm} between its walls",
    ),
    rule("box_high", _WALLS, _high, "the box needs at least {60 mm} of height inside"),
    rule(
        "box_tails",
        "box_corner box_corner_count box_height lid_thickness box_thickness box_slope box_pin "
        "box_half_pin",
        _tails,
        "the tails would be narrower than {5 mm} at their base",
    ),
    rule(
        "box_fingers",
        "box_corner box_corner_count box_height lid_thickness",
        _fingers,
        "the fingers would be narrower than {3 mm}",
    ),
    rule(
        "box_tongue",
        "box_corner box_thickness box_tongue_length box_tongue_thickness",
        _tongue,
        "the tongue or its groove would leave less than {4 mm}",
    ),
    rule(
        "box_rebate_wood",
        "box_thickness box_rebate",
        _rebate,
        "the rebate for the bottom would leave less than {4 mm}",
    ),
    rule(
        "box_bottom_held",
        "box_rebate box_bottom_fit",
        _held,
        "the bottom would lie less than {1.5 mm} in its rebates",
    ),
)

LID_CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "lid_notch_wide",
        "length box_thickness lid_grip lid_notch_width",
        _notch_wide,
        "the finger notch would come within {20 mm} of the ends",
    ),
    rule(
        "lid_notch_deep",
        f"{_WALLS} lid_grip lid_notch_depth",
        _notch_deep,
        "the finger notch would leave less than {20 mm} of the front above the bottom",
    ),
    rule(
        "lid_deep",
        f"{_LID} lid_front",
        _lid_deep,
        "the lid needs at least {100 mm} from front to back",
    ),
    rule(
        "lid_strip_back",
        "lid_hung lid_strip box_thickness",
        _strip,
        "the strip must cover the whole thickness of the back",
    ),
    rule(
        "hinges_apart",
        _PLACES,
        _hinges,
        "the hinges would stand less than {20 mm} apart",
    ),
    rule(
        "hinge_leaf_wood",
        "lid_hung lid_thickness box_thickness hinge_leaf",
        _leaf,
        "a leaf would leave less than {2 mm} of the edge that it is let into",
    ),
    rule(
        "hinges_on_back",
        f"{_PLACES} lid_hung box_thickness",
        _hinges_on_back,
        "the outer hinges would run into the corners of the box",
    ),
    rule(
        "hinge_let_in",
        "lid_hung lid_gap hinge_closed",
        _let_in,
        "the leaves would be let in by less than {0.4 mm}: the gap is as wide as the hinge",
    ),
    rule(
        "hinge_in_lid",
        "lid_hung lid_gap hinge_closed lid_thickness",
        _let_in_lid,
        "the leaves would be let in deeper than a third of the lid's thickness",
    ),
    rule(
        "stay_long",
        _STAY,
        _stay_long,
        "the stay is too short to be taut at this opening, or fixed too far out on the lid",
    ),
    rule(
        "stay_in_box",
        _STAY,
        _stay_in_box,
        "the stay would be fixed outside the box, or less than {10 mm} from its front or back",
    ),
    rule(
        "stay_under_lid",
        f"{_LID} box_thickness stay_on_lid",
        _stay_under_lid,
        "the stay would be fixed to the lid less than {10 mm} behind the front of the box",
    ),
    rule(
        "stay_down",
        f"{_WALLS} stay_down",
        _stay_down,
        "the stay would be fixed less than {10 mm} above the bottom",
    ),
)
