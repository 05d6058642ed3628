"""Feet under every leg, plinth or panel: pads, or levelling feet in threaded inserts.

The seat stays as high as it is set: what stands on the feet is so much shorter.  An insert that
finds no room in the end of its leg is left out, the foot bears flat, and a check tells.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import lru_cache

from geometry.bench.base_numbers import base_numbers, outward, straight_edge
from geometry.bench.constraint import Constraint, rule
from geometry.bench.derived import Derived, derived_length
from geometry.bench.feet_numbers import LEVELLING, PADS, WITHOUT, ground, has_feet
from geometry.bench.four_leg_numbers import CORNERS, foot_low, foot_stations, four_legs, stand
from geometry.bench.member import Member
from geometry.bench.overall import (
    CROSSED,
    FOUR_LEGS,
    PANEL_FEET,
    PLINTH,
    TRESTLES,
    stands_on_base,
)
from geometry.bench.panel_numbers import panel_numbers
from geometry.bench.plinth import plinth_numbers
from geometry.cuts.cut import Blank
from geometry.cuts.turned import Section, Turned
from geometry.design.joint import Joint
from geometry.design.parameter import Parameter, choice, length
from geometry.design.part import Part, Shape
from geometry.design.spec import BenchSpec
from geometry.joints.foot import PLAY, FootNumbers, foot
from geometry.primitives.frame import Frame, Vec3, add, scale

LEAST_BASE = 60.0  # mm of base that must stay above the feet
STEEL = "steel"
_FLANGE, _FLANGE_THICK = 4.0, 2.0  # of an insert, round its boring; common practice, no source
_LEAST_SKIN = 1.0  # mm of wood round an insert
_LEAST_RING = 1.5  # mm of flange that bears on the end
_CLEAR = 5.0  # mm between a boring and the joint above it
_FROM_END = 40.0  # mm from the corner of a plinth without blocks to its feet


def _levelling(spec: BenchSpec) -> bool:
    return spec.word("foot") == LEVELLING


CHOICE: tuple[Parameter, ...] = (
    choice(
        "foot",
        "Feet",
        "Feet",
        WITHOUT,
        (WITHOUT, PADS, LEVELLING),
        "Under every leg, plinth or panel; the seat stays as high, the base is so much shorter.",
    ),
)

PARAMETERS: tuple[Parameter, ...] = (
    length(
        "foot_height",
        "Foot height",
        "Feet",
        15,
        3,
        60,
        "From the floor to the ends of legs, plinth or panels.",
        step=0.5,
    ),
    length("foot_diameter", "Foot diameter", "Feet", 24, 10, 80, "On the floor.", step=0.5),
)

LEVELLING_PARAMETERS: tuple[Parameter, ...] = (
    length(
        "foot_insert",
        "Boring for the insert",
        "Feet",
        10,
        5,
        25,
        "Diameter of the boring for the threaded insert.",
        step=0.5,
    ),
    length(
        "foot_insert_depth",
        "Boring depth",
        "Feet",
        15,
        6,
        40,
        "Depth of the boring, straight up from the end.",
        step=0.5,
    ),
)

CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "foot_base",
        "base_height foot foot_height",
        lambda s: s.number("base_height") - s.number("foot_height") - LEAST_BASE,
        "less than {60 mm} of the base would be left above the feet",
    ),
)

LEVELLING_CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "foot_screw",
        "foot_height",
        lambda s: s.number("foot_height") - 10.0,
        "a levelling foot needs {10 mm} for its plate, its thread and the insert's flange",
    ),
    rule(
        "foot_thread",
        "foot_diameter foot_insert",
        lambda s: s.number("foot_diameter") - s.number("foot_insert") - 2.0 * _FLANGE,
        "the insert's flange would be wider than the foot",
    ),
)


@dataclass(frozen=True, slots=True)
class FootPlace:
    """``part`` ends at ``middle``; ``inside`` is the radius of the largest circle on its end,
    ``lean`` how far it leans for each mm up, ``free`` how far up nothing else is cut.  From
    ``beside`` up something else stands round the foot, as far off as ``inside``.  mm."""

    name: str
    part: str
    middle: Vec3
    inside: float
    lean: float
    free: float
    beside: float | None = None


@lru_cache(maxsize=512)
def foot_places(spec: BenchSpec) -> tuple[FootPlace, ...]:
    """Where the feet of a bench stand; KeyError for a base that has none."""
    return _PLACES[spec.word("base")](spec) if has_feet(spec) else ()


def _bridled(spec: BenchSpec) -> tuple[FootPlace, ...]:
    b = base_numbers(spec)
    found = []
    for corner, _ in b.tips:
        edge = straight_edge(b, corner)[1]
        half = b.leg_foot / (2.0 * b.cosine)
        way = -half if b.tapered_inside else half
        found.append(
            FootPlace(
                name=corner,
                part=f"leg_{corner}",
                middle=add(edge, scale(outward(b, corner), way)),
                inside=min(half, b.thickness / 2.0),
                lean=b.tangent,
                free=b.rise - b.stretcher_height - _CLEAR,
            )
        )
    return tuple(found)


def _four(spec: BenchSpec) -> tuple[FootPlace, ...]:
    n = four_legs(spec)
    found = []
    for corner in CORNERS:
        at = stand(n, corner)
        frame, low = at.frame(0.0), foot_low(n)
        sides = [(low + y * n.foot, low + z * n.foot) for y in (0.0, 1.0) for z in (0.0, 1.0)]
        points = [
            frame.to_bench((x, y, z)) for x, (y, z) in zip(foot_stations(n, at), sides, strict=True)
        ]
        middle = (
            sum(p[0] for p in points) / 4.0,
            sum(p[1] for p in points) / 4.0,
            n.ground,
        )
        found.append(
            FootPlace(
                name=corner,
                part=f"leg_{corner}",
                middle=middle,
                inside=0.9 * n.foot / 2.0,
                lean=math.hypot(*n.tangents),
                free=n.rise - n.joint_depth - _CLEAR,
            )
        )
    return tuple(found)


def _under_plinth(spec: BenchSpec) -> tuple[FootPlace, ...]:
    """Under the corner blocks, or under front and back a little from the corners."""
    p = plinth_numbers(spec)
    found = []
    for corner in CORNERS:
        fore, side = corner.split("_")
        if p.block > 0.0:
            x, y = p.corner(corner, p.thickness + p.block / 2.0)
            part, inside, level = f"corner_block_{corner}", p.block / 2.0, p.block_foot
        else:
            x, y = p.corner(corner, p.thickness / 2.0)
            x += _FROM_END if side == "left" else -_FROM_END
            part, inside, level = f"plinth_{fore}", p.thickness / 2.0, p.ground
        free = p.height - level - 3.0 * _CLEAR
        beside = p.ground if level > p.ground else None
        found.append(FootPlace(corner, part, (x, y, level), inside, 0.0, free, beside))
    return tuple(found)


def _under_panels(spec: BenchSpec) -> tuple[FootPlace, ...]:
    p = panel_numbers(spec)
    half = p.thickness / 2.0
    panels = [("left", p.left + half), ("right", p.right - half)]
    if p.middle is not None:
        panels.insert(1, ("middle", p.middle))
    pad = p.pad if p.relief > 0.0 else min(2.0 * p.thickness, p.width / 3.0)
    under_rail = p.rail_top - p.rail_height - p.ground - _CLEAR
    whole = p.height - p.ground - 3.0 * _CLEAR
    near = (p.rail_thickness + spec.number("foot_insert")) / 2.0 + _CLEAR
    return tuple(
        FootPlace(
            name=f"{side}_{fore}",
            part=f"panel_foot_{side}",
            middle=(x, y, p.ground),
            inside=min(half, pad / 2.0),
            lean=0.0,
            free=under_rail if abs(y - p.rail_middle) < near else whole,
        )
        for side, x in panels
        for fore, y in (("back", p.back - pad / 2.0), ("front", p.front + pad / 2.0))
    )


_PLACES: dict[str, Callable[[BenchSpec], tuple[FootPlace, ...]]] = {
    CROSSED: _bridled,
    TRESTLES: _bridled,
    FOUR_LEGS: _four,
    PLINTH: _under_plinth,
    PANEL_FEET: _under_panels,
}


def insert_skin(spec: BenchSpec, place: FootPlace) -> float:
    """The least wood beside an insert: at the upper end of its boring, on the side it leans to."""
    drift = place.lean * spec.number("foot_insert_depth")
    return place.inside - drift - spec.number("foot_insert") / 2.0


def has_insert(spec: BenchSpec, place: FootPlace) -> bool:
    """Whether a levelling foot's insert has room in the end it stands under."""
    ring = min(place.inside, spec.number("foot_insert") / 2.0 + _FLANGE)
    return (
        _levelling(spec)
        and insert_skin(spec, place) >= _LEAST_SKIN
        and ring - spec.number("foot_insert") / 2.0 >= _LEAST_RING
        and spec.number("foot_insert_depth") <= place.free
    )


def _numbers(spec: BenchSpec, place: FootPlace) -> FootNumbers:
    radius = spec.number("foot_diameter") / 2.0
    if not has_insert(spec, place):
        return FootNumbers(place.middle, 0.0, min(radius, place.inside), 0.0, 0.0)
    bore = spec.number("foot_insert")
    outer = min(bore / 2.0 + _FLANGE, place.inside)
    depth = spec.number("foot_insert_depth")
    return FootNumbers(place.middle, bore / 2.0 + 0.1, outer, bore, depth)


def _parts(spec: BenchSpec) -> tuple[Part, ...]:
    return tuple(_foot(spec, place) for place in foot_places(spec))


def _foot(spec: BenchSpec, place: FootPlace) -> Part:
    """x up from the floor."""
    diameter, high = spec.number("foot_diameter"), place.middle[2]
    inserted, steel = has_insert(spec, place), _levelling(spec)
    depth = spec.number("foot_insert_depth") - 1.0 if inserted else 0.0
    sections = _sections(spec, place, depth) if inserted else _pad(spec, place)
    x, y, _ = place.middle
    half = diameter / 2.0
    kind = "levelling foot" if steel else "pad"
    return Part(
        name=f"foot_{place.name}",
        title=f"{kind.capitalize()}, {place.name.replace('_', ' ')}",
        kind=kind,
        material=STEEL if steel else spec.word("timber"),
        shape=Shape(Blank(high + depth, diameter, diameter), (Turned(sections),)),
        frame=Frame.of((x - half, y - half, 0.0), (0.0, 0.0, 1.0), (1.0, 0.0, 0.0)),
        solid_timber=not steel,
        notes=("bought: check your foot's sheet",) if steel else (),
    )


def _pad(spec: BenchSpec, place: FootPlace) -> tuple[Section, ...]:
    """Of one diameter; narrower where something stands beside it."""
    radius, high, beside = spec.number("foot_diameter") / 2.0, place.middle[2], place.beside
    if beside is None or radius <= place.inside:
        return (Section(0.0, high, radius),)
    return (Section(0.0, beside, radius), Section(beside, high, place.inside))


def _sections(spec: BenchSpec, place: FootPlace, depth: float) -> tuple[Section, ...]:
    """Plate, thread, the insert's flange, and the insert."""
    bore, high = spec.number("foot_insert"), place.middle[2]
    ring = bore / 2.0 + _FLANGE
    if place.beside is not None:
        ring = min(ring, place.inside)
    plate = min(6.0, 0.4 * high)
    flange = high - _FLANGE_THICK
    return (
        Section(0.0, plate, spec.number("foot_diameter") / 2.0),
        Section(plate, flange, 0.4 * bore),
        Section(flange, high, ring),
        Section(high, high + depth, (bore - PLAY) / 2.0),
    )


def _joints(spec: BenchSpec, parts: Mapping[str, Part]) -> tuple[Joint, ...]:
    return tuple(
        foot(
            f"foot_{place.name}",
            parts[f"foot_{place.name}"],
            parts[place.part],
            _numbers(spec, place),
        )
        for place in foot_places(spec)
    )


def _derived(spec: BenchSpec) -> tuple[Derived, ...]:
    return (
        derived_length(
            "base_on_feet",
            "Base without its feet",
            "Feet",
            spec.number("base_height") - ground(spec),
            "base height − foot height; the seat stays as high",
        ),
    )


def _has_levelling(spec: BenchSpec) -> bool:
    return has_feet(spec) and _levelling(spec)


def _lowest(_spec: BenchSpec) -> tuple[dict[str, float], ...]:
    return ({"foot_height": 3.0},)


def _least_levelling(_spec: BenchSpec) -> tuple[dict[str, float], ...]:
    return ({"foot_height": 10.0, "foot_diameter": 24.0, "foot_insert": 5.0},)


CHOICE_MEMBER = Member("foot", CHOICE, present=stands_on_base)

MEMBER = Member(
    "feet",
    PARAMETERS,
    CONSTRAINTS,
    _parts,
    _joints,
    derived=_derived,
    present=has_feet,
    snug=_lowest,
)

LEVELLING_MEMBER = Member(
    "levelling feet",
    LEVELLING_PARAMETERS,
    LEVELLING_CONSTRAINTS,
    present=_has_levelling,
    snug=_least_levelling,
)
