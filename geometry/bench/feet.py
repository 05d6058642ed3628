"""Feet under every leg, plinth or panel: pads, or levelling feet in threaded inserts.

The seat stays as high as it is set: what stands on the feet is so much shorter.  An insert that
finds no room in the end of its leg is left out, the foot bears flat, and a check tells.
"""

from __future__ import annotations

from collections.abc import Mapping

from geometry.bench.constraint import Constraint, rule
from geometry.bench.derived import Derived, derived_length
from geometry.bench.feet_numbers import LEVELLING, PADS, WITHOUT, ground, has_feet
from geometry.bench.foot_places import PLACED, feet_apart, foot_places
from geometry.bench.member import THE_BASE, Member
from geometry.bench.overall import (
    stands_on_base,
)
from geometry.bench.standing import FootPlace
from geometry.cuts.cut import Blank
from geometry.cuts.turned import Section, Turned
from geometry.design.joint import Joint
from geometry.design.parameter import Parameter, choice, length
from geometry.design.part import Part, Shape
from geometry.design.spec import BenchSpec
from geometry.joints.foot import PLAY, FootNumbers, foot
from geometry.primitives.frame import Frame

LEAST_BASE = 60.0  # mm of base that must stay above the feet; common practice, no source
STEEL = "steel"
_FLANGE, _FLANGE_THICK = 4.0, 2.0  # of an insert, round its boring; common practice, no source
_LEAST_SKIN = 1.0  # mm of wood round an insert; common practice, no source
LEAST_RING = 1.5  # mm of flange that bears on the end; common practice, no source


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
        "feet_apart",
        f"foot_diameter {PLACED}",
        feet_apart,
        "two feet would stand less than {2 mm} from each other",
    ),
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


def insert_skin(spec: BenchSpec, place: FootPlace) -> float:
    """The least wood beside an insert: at the upper end of its boring, on the side it leans to."""
    drift = place.lean * spec.number("foot_insert_depth")
    return place.inside - drift - spec.number("foot_insert") / 2.0


def has_insert(spec: BenchSpec, place: FootPlace) -> bool:
    """Whether a levelling foot's insert has room in the end it stands under."""
    ring = min(place.bears, spec.number("foot_insert") / 2.0 + _FLANGE)
    return (
        _levelling(spec)
        and insert_skin(spec, place) >= _LEAST_SKIN
        and ring - spec.number("foot_insert") / 2.0 >= LEAST_RING
        and spec.number("foot_insert_depth") <= place.free
    )


def _numbers(spec: BenchSpec, place: FootPlace) -> FootNumbers:
    radius = spec.number("foot_diameter") / 2.0
    if not has_insert(spec, place):
        return FootNumbers(place.middle, 0.0, min(radius, place.bears), 0.0, 0.0)
    bore = spec.number("foot_insert")
    outer = min(bore / 2.0 + _FLANGE, place.bears)
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
    return ({"foot_height": 3.0, "foot_diameter": 10.0},)


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
    made_into=THE_BASE,
)

LEVELLING_MEMBER = Member(
    "levelling feet",
    LEVELLING_PARAMETERS,
    LEVELLING_CONSTRAINTS,
    present=_has_levelling,
    snug=_least_levelling,
)
