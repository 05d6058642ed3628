"""The uprights inside the case: set-in partitions at open ends, and those between.

All stand in stopped housings in top and bottom, their front edges a reveal behind the bottom's
front edge.  Set-in partitions reach the back edges and are rebated for the back; the others end
at its inside face.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from geometry.bench.case import has_case
from geometry.bench.case_numbers import LEFT, RIGHT, CaseNumbers, case_numbers
from geometry.bench.constraint import Constraint, rule
from geometry.bench.derived import Derived, derived_length
from geometry.bench.grain import FRONT_TO_BACK, UPRIGHT, grain_choice
from geometry.bench.lipped import SHEET, TIMBER, with_strips
from geometry.bench.member import Member
from geometry.cuts.cut import Blank
from geometry.design.joint import Joint, Measure
from geometry.design.parameter import Parameter, Value, choice, count, length
from geometry.design.part import Part, Shape
from geometry.design.spec import BenchSpec
from geometry.joints.stopped_housing import LIPPING_ON, HousingNumbers, stopped_housing
from geometry.primitives.frame import X_AXIS, Frame

MOST_PARTITIONS = 12
PARTITION_LIPPING = "partition lipping"  # the kind of part
LEAST_CLEAR = 40.0  # mm between uprights: a hand must reach in; common practice, no source


def _partition(k: int) -> Parameter:
    return length(
        f"partition_{k}",
        f"Partition {k}",
        "Partitions",
        600,
        20,
        3580,
        f"From the left end to the middle of partition {k}.",
        applies=lambda spec: spec.count("partition_count") >= k,
    )


_GLUED = "glued in its housings at the front alone, as sheet does not move with top and bottom"

PARAMETERS: tuple[Parameter, ...] = (
    count(
        "partition_count",
        "Partitions",
        "Partitions",
        1,
        0,
        MOST_PARTITIONS,
        "How many partitions stand between the ends; a new number spaces them evenly.",
    ),
    *(_partition(k) for k in range(1, MOST_PARTITIONS + 1)),
    length(
        "partition_thickness",
        "Partition thickness",
        "Partitions",
        20,
        8,
        50,
        "Thickness of partitions, set-in ones too.",
        step=0.5,
    ),
    length(
        "reveal",
        "Reveal",
        "Partitions",
        12,
        0,
        300,
        "How far partitions stand back behind the bottom's front edge.",
    ),
    grain_choice(
        "partition_grain",
        "Grain of the partitions",
        "Partitions",
        UPRIGHT,
        FRONT_TO_BACK,
        "Of set-in ones too. Upright they move with top and bottom.",
        applies=lambda spec: spec.word("partition_made_of") == TIMBER,
    ),
    choice(
        "partition_made_of",
        "Partitions of",
        "Partitions",
        TIMBER,
        (TIMBER, SHEET),
        "Timber, or the back's sheet material with a lipping on the front edge.",
    ),
)


@dataclass(frozen=True, slots=True)
class Upright:
    """One vertical board: its left face, how far its back edge is in from y = 0, its end if any."""

    name: str
    title: str
    x_left: float
    back: float
    end: str  # "left" or "right" for a set-in partition, else empty


def uprights(c: CaseNumbers) -> tuple[Upright, ...]:
    """All uprights from left to right."""
    t = c.partition_thickness
    found: list[Upright] = []
    if not c.left.mitred:
        found.append(Upright("partition_left", "Set-in partition, left", c.left.inset, 0.0, LEFT))
    found += [
        Upright(f"partition_{k}", f"Partition {k}", x - t / 2.0, c.rebate_width, "")
        for k, x in enumerate(c.partitions, 1)
    ]
    if not c.right.mitred:
        x = c.length - c.right.inset - t
        found.append(Upright("partition_right", "Set-in partition, right", x, 0.0, RIGHT))
    return tuple(found)


def partition_lip(spec: BenchSpec) -> float:
    """Thickness of the lipping on the partitions' front edges; 0 for partitions of timber."""
    return spec.number("partition_lip") if spec.word("partition_made_of") == SHEET else 0.0


def _parts(spec: BenchSpec) -> tuple[Part, ...]:
    return partitions(spec)


def partitions(spec: BenchSpec) -> tuple[Part, ...]:
    """Each upright as it is before any joint; one of sheet without its lipping."""
    c, lip = case_numbers(spec), partition_lip(spec)
    return tuple(_part(spec, c, upright, lip) for upright in uprights(c))


def _part(spec: BenchSpec, c: CaseNumbers, at: Upright, lip: float) -> Part:
    low = c.inside_low - c.housing_depth
    if at.end == LEFT:
        # Its inside, the face with the rebate, is the face side.
        origin = (at.x_left + c.partition_thickness, 0.0, low + c.partition_height)
        frame = Frame.of(origin, (0, 0, -1), (0, -1, 0))
    else:
        frame = Frame.of((at.x_left, -at.back, low), (0, 0, 1), (0, -1, 0))
    whole = c.upright_front - at.back
    return Part(
        name=at.name,
        title=at.title,
        kind="partition",
        material=spec.word("sheet" if lip else "timber"),
        shape=Shape(Blank(c.partition_height, whole - lip, c.partition_thickness), ()),
        frame=frame,
        solid_timber=not lip,
        grain_across=not lip and spec.word("partition_grain") == FRONT_TO_BACK,
        notes=_notes(c, whole) if lip else (),
    )


def _notes(c: CaseNumbers, whole: float) -> tuple[str, ...]:
    """Of a partition of sheet; boards of sheet do not move either."""
    wide = with_strips(whole)
    return (wide,) if c.lips[0] > 0.0 and c.lips[1] > 0.0 else (wide, _GLUED)


def _joints(spec: BenchSpec, parts: Mapping[str, Part]) -> tuple[Joint, ...]:
    c = case_numbers(spec)
    return tuple(_housed(c, at, parts, up=up) for at in uprights(c) for up in (False, True))


def _housed(c: CaseNumbers, at: Upright, parts: Mapping[str, Part], *, up: bool) -> Joint:
    right = at.x_left + c.partition_thickness
    middle = (at.x_left + right) / 2.0
    if up:
        fronts = (c.depth_at(at.x_left), c.depth_at(middle), c.depth_at(right))
        inside_front = c.inside_depth_at(middle)
    else:
        fronts = (c.depth, c.depth, c.depth)
        inside_front = c.depth + c.bottom_bevel(middle)
    where = "top" if up else "bottom"
    end_lip = c.end_lip(where, LEFT)
    numbers = HousingNumbers(
        low=at.x_left,
        high=right,
        across=X_AXIS,
        back=at.back,
        front=c.upright_front,
        inside=c.inside_high if up else c.inside_low,
        into=(0.0, 0.0, 1.0) if up else (0.0, 0.0, -1.0),
        depth=c.housing_depth,
        cover=c.cover,
        cutter_radius=c.cutter_radius,
        fit=c.housing_fit,
        board_front=fronts,
        inside_front=inside_front,
        sides=(LEFT, RIGHT),
        place=Measure(
            "from_left_end",
            at.x_left,
            "mm",
            "upright's left face from the case's left end" + (LIPPING_ON if end_lip else ""),
        ),
        board_back=c.back_lip(where),
        lipped_first=c.back_lip(where) > 0.0,
    )
    return stopped_housing(f"housing_{where}_{at.name}", parts[where], parts[at.name], numbers)


def evenly(spec: BenchSpec) -> dict[str, Value]:
    """Partition places, to the millimetre, that share the inside of the case equally."""
    c = case_numbers(spec)
    n = spec.count("partition_count")
    t = c.partition_thickness
    clear = (c.inside_right - c.inside_left - n * t) / (n + 1)
    return {
        f"partition_{k}": round(c.inside_left + k * clear + (k - 0.5) * t, 1)
        for k in range(1, n + 1)
    }


def _least_bay(spec: BenchSpec) -> float:
    """The narrowest clear opening between uprights or end panels, less what it must have."""
    c = case_numbers(spec)
    half = c.partition_thickness / 2.0
    faces = [c.inside_left, *(f for x in c.partitions for f in (x - half, x + half))]
    faces.append(c.inside_right)
    return min(b - a for a, b in zip(faces[::2], faces[1::2], strict=True)) - LEAST_CLEAR


_PLACES = " ".join(f"partition_{k}" for k in range(1, MOST_PARTITIONS + 1))

CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "bays",
        "length left_end right_end left_inset right_inset board_thickness partition_thickness "
        f"partition_count {_PLACES}",
        _least_bay,
        "every opening between uprights needs at least {40 mm}",
    ),
    rule(
        "housing_within",
        "housing_depth board_thickness",
        lambda s: s.number("board_thickness") - s.number("housing_depth") - 3.0,
        "the housing would leave less than {3 mm} of the board",
    ),
    rule(
        "tongue",
        "depth reveal housing_cover cutter_diameter housing_fit back_thickness back_let_in",
        lambda s: _tongue(s) - 30.0,
        "the tongue in the housing would be shorter than {30 mm}",
    ),
)


def _tongue(spec: BenchSpec) -> float:
    c = case_numbers(spec)
    return c.upright_front - c.cover - c.cutter_radius - c.housing_fit / 2.0 - c.rebate_width


def _derived(spec: BenchSpec) -> tuple[Derived, ...]:
    c = case_numbers(spec)
    if not uprights(c):
        return ()
    return (
        derived_length(
            "partition_height",
            "Partition height",
            "Partitions",
            c.partition_height,
            "inside height + 2 × housing depth",
        ),
        derived_length(
            "partition_front",
            "Partition front",
            "Partitions",
            c.upright_front,
            "depth − reveal, from the back edges",
        ),
    )


MEMBER = Member(
    "partitions", PARAMETERS, CONSTRAINTS, _parts, _joints, derived=_derived, present=has_case
)
