"""Shelves: one across an opening, in stopped housings in whatever stands at its two sides.

A shelf ends at the inside face of the back, which passes behind it.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from itertools import pairwise

from geometry.bench.case_numbers import CaseNumbers, case_numbers
from geometry.bench.constraint import Constraint, rule
from geometry.bench.derived import Derived, derived_length
from geometry.bench.grain import FRONT_TO_BACK, SIDE_TO_SIDE, grain_choice
from geometry.bench.lipped import SHEET, TIMBER, with_strips
from geometry.bench.member import Member
from geometry.bench.openings import (
    DEPTH_READS,
    HEIGHT_READS,
    MOST_OPENINGS,
    SHELF,
    WIDTH_READS,
    Opening,
    exists,
    fill_name,
    filled_with,
    openings,
)
from geometry.cuts.cut import Blank
from geometry.design.joint import Joint, Measure
from geometry.design.parameter import Parameter, Value, choice, length
from geometry.design.part import Part, Shape
from geometry.design.spec import BenchSpec
from geometry.joints.stopped_housing import HousingNumbers, stopped_housing
from geometry.primitives.frame import Z_AXIS, Frame

# Common practice, no source, these:
LEAST_SPACE = 20.0  # mm above and below a shelf
LEAST_TONGUE = 30.0  # mm of tongue in the housing
LEAST_WALL = 3.0  # mm left of a board behind a housing


def height_name(k: int) -> str:
    """The parameter that places the shelf of the k-th opening."""
    return f"opening_{k}_shelf_height"


def set_back_name(k: int) -> str:
    return f"opening_{k}_shelf_set_back"


def has_shelf(spec: BenchSpec, k: int) -> bool:
    return exists(spec, k) and spec.word(fill_name(k)) == SHELF


def has_shelves(spec: BenchSpec) -> bool:
    return bool(filled_with(spec, SHELF))


def _height(k: int) -> Parameter:
    return length(
        height_name(k),
        f"Shelf height, opening {k}",
        "Shelves",
        110,
        LEAST_SPACE,
        700,
        f"Clear height below the shelf in opening {k}.",
        applies=lambda spec: has_shelf(spec, k),
    )


def _set_back(k: int) -> Parameter:
    return length(
        set_back_name(k),
        f"Shelf set back, opening {k}",
        "Shelves",
        10,
        0,
        400,
        f"How far the shelf in opening {k} stands back behind the uprights' fronts.",
        applies=lambda spec: has_shelf(spec, k),
    )


_GLUED = "glued in its housings at the front alone, as sheet does not move with the uprights"

PARAMETERS: tuple[Parameter, ...] = (
    *(row(k) for k in range(1, MOST_OPENINGS + 1) for row in (_height, _set_back)),
    choice(
        "shelf_made_of",
        "Shelves of",
        "Shelves",
        TIMBER,
        (TIMBER, SHEET),
        "Timber, or the back's sheet material with a lipping on its front edge.",
    ),
    grain_choice(
        "shelf_grain",
        "Grain of the shelves",
        "Shelves",
        SIDE_TO_SIDE,
        FRONT_TO_BACK,
        "From upright to upright a shelf of timber bears most.",
        applies=lambda spec: spec.word("shelf_made_of") == TIMBER,
    ),
    length("shelf_thickness", "Shelf thickness", "Shelves", 18, 6, 50, "Of all shelves.", step=0.5),
    length(
        "shelf_housing_depth",
        "Shelf housing depth",
        "Shelves",
        6,
        2,
        25,
        "Depth of the housings for shelves in uprights and end panels.",
        step=0.5,
    ),
)


def _parts(spec: BenchSpec) -> tuple[Part, ...]:
    return tuple(_shelf(spec, opening) for opening in filled_with(spec, SHELF))


def _shelf(spec: BenchSpec, at: Opening) -> Part:
    """A shelf of sheet is narrower by its lipping."""
    thickness, lip = spec.number("shelf_thickness"), lip_of(spec)
    whole = _front(spec, at) - at.back
    into = spec.number("shelf_housing_depth")
    top = _low(spec, at) + thickness
    blank = Blank(at.width + 2.0 * into, whole - lip, thickness)
    return Part(
        name=_name(at),
        title=f"Shelf, {at.title}",
        kind="shelf",
        material=spec.word("sheet" if lip else "timber"),
        shape=Shape(blank, ()),
        frame=Frame.of((at.x_left - into, -at.back, top), (1, 0, 0), (0, -1, 0)),
        solid_timber=not lip,
        grain_across=not lip and spec.word("shelf_grain") == FRONT_TO_BACK,
        notes=(with_strips(whole), _GLUED) if lip else (),
    )


def lip_of(spec: BenchSpec) -> float:
    """Thickness of the lipping on the shelves' front edges; 0 for shelves of timber."""
    return spec.number("shelf_lip") if spec.word("shelf_made_of") == SHEET else 0.0


def shelf_front(spec: BenchSpec, at: Opening) -> tuple[float, float, float]:
    """How far in front of y = 0 a shelf ends, and the heights of its under and upper face."""
    low = _low(spec, at)
    return _front(spec, at), low, low + spec.number("shelf_thickness")


def _name(at: Opening) -> str:
    return f"shelf_{at.index}"


def _low(spec: BenchSpec, at: Opening) -> float:
    """Height of the shelf's underside above the floor."""
    return at.z_low + spec.number(height_name(at.index))


def _front(spec: BenchSpec, at: Opening) -> float:
    """How far the shelf's front edge stands in front of y = 0."""
    return at.front - spec.number(set_back_name(at.index))


def _joints(spec: BenchSpec, parts: Mapping[str, Part]) -> tuple[Joint, ...]:
    return tuple(
        joint for opening in filled_with(spec, SHELF) for joint in _housed(spec, opening, parts)
    )


def _lipped_behind(c: CaseNumbers, upright: str) -> float:
    return c.back_lip(upright) if upright.startswith("end_panel") else 0.0


def _housed(spec: BenchSpec, at: Opening, parts: Mapping[str, Part]) -> tuple[Joint, Joint]:
    c = case_numbers(spec)
    shelf = parts[_name(at)]
    thickness = shelf.shape.blank.thickness
    low = _low(spec, at)
    middle = low + thickness / 2.0
    sides = ((at.left, at.x_left, (-1.0, 0.0, 0.0)), (at.right, at.x_right, (1.0, 0.0, 0.0)))
    first, second = (
        stopped_housing(
            f"housing_{upright}_{shelf.name}",
            parts[upright],
            shelf,
            HousingNumbers(
                low=low,
                high=low + thickness,
                across=Z_AXIS,
                back=at.back,
                front=_front(spec, at),
                inside=x,
                into=into,
                depth=spec.number("shelf_housing_depth"),
                cover=c.cover,
                cutter_radius=c.cutter_radius,
                fit=c.housing_fit,
                board_front=(
                    board_front(c, upright, low),
                    board_front(c, upright, middle),
                    board_front(c, upright, low + thickness),
                ),
                inside_front=board_front(c, upright, middle),
                sides=("lower", "upper"),
                place=_marked(c, upright, low),
                board_back=_lipped_behind(c, upright),
                lipped_first=_lipped_behind(c, upright) > 0.0,
            ),
        )
        for upright, x, into in sides
    )
    return first, second


def board_front(c: CaseNumbers, upright: str, z: float) -> float:
    """How far the front edge of an upright or end panel lies in front of y = 0 at a height."""
    if not upright.startswith("end_panel"):
        return c.upright_front
    flare = c.flare_of(upright.removeprefix("end_panel_")).amount
    return c.depth + flare * (z - c.floor) / c.height


def _marked(c: CaseNumbers, upright: str, low: float) -> Measure:
    """Where the shelf is marked on its upright or end panel, from the lower end."""
    panel = upright.startswith("end_panel")
    end = c.floor if panel else c.inside_low - c.housing_depth
    return Measure("from_lower_end", low - end, "mm", "shelf's underside from the lower end")


def fitted(before: BenchSpec, after: BenchSpec) -> dict[str, Value]:
    """Heights and set-backs for shelves that are new in ``after`` and would not fit as kept.

    A shelf whose height does not fit goes half way up, to the millimetre.
    """
    values: dict[str, Value] = {}
    thickness = after.number("shelf_thickness")
    for at in filled_with(after, SHELF):
        if has_shelf(before, at.index):
            continue
        if _above(after, at) < LEAST_SPACE:
            values[height_name(at.index)] = float(round((at.height - thickness) / 2.0))
        lacking = LEAST_TONGUE - _tongue(after, at)
        if lacking > 0.0:
            set_back = after.number(set_back_name(at.index))
            values[set_back_name(at.index)] = max(0.0, set_back - lacking)
    return values


def _above(spec: BenchSpec, at: Opening) -> float:
    """What is clear above a shelf."""
    return at.z_high - _low(spec, at) - spec.number("shelf_thickness")


def _tongue(spec: BenchSpec, at: Opening) -> float:
    """Length of a shelf's tongue in its housings."""
    c = case_numbers(spec)
    return _front(spec, at) - c.cover - c.cutter_radius - c.housing_fit / 2.0 - at.back


def _least(size: Callable[[BenchSpec, Opening], float], spec: BenchSpec) -> float:
    return min(size(spec, opening) for opening in filled_with(spec, SHELF))


def _wall(spec: BenchSpec) -> float:
    """The least wood left behind or between housings for shelves."""
    c, depth = case_numbers(spec), spec.number("shelf_housing_depth")
    walls = [
        (c.thickness if name.startswith("end_panel") else c.partition_thickness) - depth
        for opening in filled_with(spec, SHELF)
        for name in (opening.left, opening.right)
    ]
    if any(a.fill == b.fill == SHELF for a, b in pairwise(openings(spec))):
        walls.append(c.partition_thickness - 2.0 * depth)
    return min(walls)


_HEIGHTS = " ".join(height_name(k) for k in range(1, MOST_OPENINGS + 1))
SET_BACKS = " ".join(set_back_name(k) for k in range(1, MOST_OPENINGS + 1))

CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "shelf_space",
        f"{WIDTH_READS} {HEIGHT_READS} {_HEIGHTS} shelf_thickness",
        lambda s: _least(_above, s) - LEAST_SPACE,
        "a shelf needs at least {20 mm} clear above it",
    ),
    rule(
        "shelf_tongue",
        f"{WIDTH_READS} {DEPTH_READS} {SET_BACKS} housing_cover cutter_diameter housing_fit",
        lambda s: _least(_tongue, s) - LEAST_TONGUE,
        "a shelf's tongue in its housing would be shorter than {30 mm}",
    ),
    rule(
        "shelf_wall",
        f"{WIDTH_READS} shelf_housing_depth",
        lambda s: _wall(s) - LEAST_WALL,
        "the housings for shelves would leave less than {3 mm} of what they are cut into",
    ),
)


def _derived(spec: BenchSpec) -> tuple[Derived, ...]:
    found: list[Derived] = []
    for at in filled_with(spec, SHELF):
        found += [
            derived_length(
                f"shelf_{at.index}_depth",
                f"Shelf depth, {at.title}",
                "Shelves",
                _front(spec, at) - at.back,
                "partition front − set back − rebate width",
                through=set_back_name(at.index),
                gain=-1.0,
            ),
            derived_length(
                f"shelf_{at.index}_length",
                f"Shelf length, {at.title}",
                "Shelves",
                at.width + 2.0 * spec.number("shelf_housing_depth"),
                "opening + 2 × shelf housing depth",
            ),
            derived_length(
                f"shelf_{at.index}_above",
                f"Clear above shelf, {at.title}",
                "Shelves",
                _above(spec, at),
                "inside height − shelf height − shelf thickness",
            ),
        ]
    return tuple(found)


MEMBER = Member(
    "shelves", PARAMETERS, CONSTRAINTS, _parts, _joints, derived=_derived, present=has_shelves
)
