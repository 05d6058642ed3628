"""What holds the base to the seat: screws in slots, or wooden buttons.

Screws go straight up through stretchers, from a counterbore; on aprons, plinths and panels they go
through a block that is glued to the inside.  Buttons have their tongues in mortises in the inside
of any of them.  Legs with round tenons need none of it.
"""

from __future__ import annotations

import math
from collections.abc import Mapping

from geometry.bench.above import above
from geometry.bench.bearers import can_be_fixed
from geometry.bench.constraint import Constraint, rule
from geometry.bench.derived import Derived, derived_length
from geometry.bench.fixing_numbers import (
    BACK,
    BUTTONS,
    EASE,
    MIDDLE,
    SCREWS,
    WITHOUT,
    FixingNumbers,
    Place,
    block_half,
    button,
    far_travel,
    fixed,
    fixing_numbers,
    screw,
)
from geometry.bench.member import THE_BASE, Member
from geometry.cuts.bore import Bore
from geometry.cuts.cut import Blank, Cut
from geometry.cuts.rebate import Rebate
from geometry.cuts.saw import SawCut
from geometry.design.joint import Joint
from geometry.design.parameter import Parameter, choice, count, length
from geometry.design.part import Part, Shape
from geometry.design.spec import BenchSpec
from geometry.joints.button import button_in, button_under, hole_middle
from geometry.joints.glued_faces import glued_block
from geometry.joints.slotted_screw import slotted_screw
from geometry.primitives.frame import Frame, Vec3, add, cross, rounded, scale
from shared.fixings import WOOD_SCREWS
from shared.movement import DAMPEST, DRIEST, FLAT_SAWN, QUARTER_SAWN

_DOWN: Vec3 = (0.0, 0.0, -1.0)


def has_fixings(spec: BenchSpec) -> bool:
    return can_be_fixed(spec) and spec.word("fixing") != WITHOUT


def _by(kind: str, spec: BenchSpec) -> bool:
    return spec.word("fixing") == kind


CHOICE: tuple[Parameter, ...] = (
    choice(
        "fixing",
        "Seat held to the base by",
        "Fixing",
        WITHOUT,
        (WITHOUT, SCREWS, BUTTONS),
        "Screws from below in slots, or wooden buttons in mortises; both let the seat move.",
    ),
)


def _size(
    name: str,
    title: str,
    default: float,
    span: tuple[float, float],
    description: str,
    kind: str,
) -> Parameter:
    return length(
        name,
        title,
        "Fixing",
        default,
        *span,
        description,
        step=0.5,
        applies=lambda spec: _by(kind, spec),
    )


def _moisture(name: str, title: str, default: int, description: str) -> Parameter:
    return count(name, title, "Fixing", default, DRIEST, DAMPEST, description)


PARAMETERS: tuple[Parameter, ...] = (
    count(
        "fixing_count",
        "Fixings in a stretch",
        "Fixing",
        1,
        1,
        4,
        "How many on each stretch of stretcher, apron, plinth or panel between its joints.",
    ),
    length(
        "fixing_in",
        "First fixing in",
        "Fixing",
        30,
        5,
        300,
        "From either end of a stretch to the fixing nearest to it, where there are several.",
    ),
    choice(
        "fixing_held",
        "Seat stays put at",
        "Fixing",
        MIDDLE,
        (MIDDLE, BACK),
        "The line that the seat is held on, from which it swells and shrinks.",
    ),
    choice(
        "fixing_sawn",
        "Seat boards are",
        "Fixing",
        FLAT_SAWN,
        (FLAT_SAWN, QUARTER_SAWN),
        "How the boards were sawn: flat sawn ones move about twice as much.",
    ),
    _moisture("moisture_low", "Driest, % moisture", 6, "Of the timber, in a heated room."),
    _moisture("moisture_made", "When made, % moisture", 9, "Of the timber, in the workshop."),
    _moisture("moisture_high", "Dampest, % moisture", 12, "Of the timber, in a damp season."),
    choice(
        "fixing_screw",
        "Screw",
        "Fixing",
        "no. 8",
        tuple(WOOD_SCREWS),
        "Gauge of the wood screws.",
    ),
    length(
        "fixing_bite",
        "Screw in the seat",
        "Fixing",
        12,
        6,
        60,
        "How deep a screw goes into the seat; it stays {3 mm} short of its upper face.",
        step=0.5,
    ),
    _size("fixing_land", "Wood under the head", 20, (8, 80), "Between head and seat.", SCREWS),
    _size(
        "fixing_block",
        "Block width",
        30,
        (15, 80),
        "From the inside of an apron, plinth or panel; a block is as high as the land.",
        SCREWS,
    ),
    _size(
        "button_land",
        "Mortise below the edge",
        9,
        (5, 40),
        "From the upper edge down to the mortises.",
        BUTTONS,
    ),
    _size("button_tongue", "Tongue", 7, (4, 20), "Thickness of the buttons' tongues.", BUTTONS),
    _size(
        "button_engaged",
        "Tongue in the mortise",
        9,
        (4, 30),
        "How deep a tongue stands in its mortise when it is made.",
        BUTTONS,
    ),
    _size("button_width", "Button width", 28, (15, 80), "Across the grain.", BUTTONS),
    _size("button_body", "Button body", 32, (15, 80), "From the face inward.", BUTTONS),
)

CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "moisture_order_low",
        "moisture_low moisture_made",
        lambda s: s.number("moisture_made") - s.number("moisture_low"),
        "timber is never drier than at its driest",
    ),
    rule(
        "moisture_order_high",
        "moisture_high moisture_made",
        lambda s: s.number("moisture_high") - s.number("moisture_made"),
        "timber is never damper than at its dampest",
    ),
    rule(
        "button_hole",
        "button_width button_body fixing fixing_screw",
        lambda s: (
            min(s.number("button_width"), s.number("button_body")) - fixing_numbers(s).shank - 8.0
            if _by(BUTTONS, s)
            else 0.0
        ),
        "the screw's hole would leave less than {4 mm} of the button beside it",
    ),
)


def _parts(spec: BenchSpec) -> tuple[Part, ...]:
    """Blocks or buttons."""
    f, timber = fixing_numbers(spec), spec.word("timber")
    make = _button if f.buttons else _block
    return tuple(
        make(f, place, timber)
        for place in fixed(spec).places
        if f.buttons or not place.bearer.solid
    )


def _words(place: Place) -> str:
    return place.name.replace("_", " ")


def _block(f: FixingNumbers, place: Place, timber: str) -> Part:
    """Its face side lies against the seat, its y runs inward from the bearer."""
    bearer, half = place.bearer, block_half(f, place)
    x_axis = cross(bearer.inward, _DOWN)
    back = f.land * bearer.slope
    origin = add(place.at, add(scale(x_axis, -half), scale(bearer.inward, -back)))
    frame = Frame.of(origin, x_axis, bearer.inward)
    part = Part(
        name=f"fixing_block_{place.name}",
        title=f"Fixing block, {_words(place)}",
        kind="fixing block",
        material=timber,
        shape=Shape(Blank(round(2.0 * half, 9), round(f.block + back, 9), f.land), ()),
        frame=frame,
    )
    if bearer.slope <= 0.0:
        return part
    cut = SawCut(
        "bevel",
        rounded(frame.to_local(place.at)),
        rounded(frame.turn_to_local(_into(place))),
    )
    return Part(
        part.name,
        part.title,
        part.kind,
        part.material,
        Shape(part.shape.blank, (cut,)),
        frame,
    )


def _into(place: Place) -> Vec3:
    """The unit normal of a bearer's inside face, into the bearer."""
    slope = place.bearer.slope
    run = math.hypot(1.0, slope)
    return add(scale(place.bearer.inward, -1.0 / run), scale(_DOWN, -slope / run))


def _button(f: FixingNumbers, place: Place, timber: str) -> Part:
    """x from the tongue's end inward, its face side against the seat."""
    at = button(f, place)
    y_axis = cross(_DOWN, at.inward)
    origin = add(place.at, add(scale(at.inward, -at.reach), scale(y_axis, -at.width / 2.0)))
    frame = Frame(origin, at.inward, y_axis, _DOWN)
    tongue = Rebate(0.0, at.reach + at.stand, 0.0, at.width, at.land)
    part = Part(
        name=f"button_{place.name}",
        title=f"Button, {_words(place)}",
        kind="button",
        material=timber,
        shape=Shape(Blank(at.length, at.width, at.land + at.tongue), (tongue,)),
        frame=frame,
    )
    x, y, _ = hole_middle(part, at)
    cuts: tuple[Cut, ...] = (tongue, Bore(x, y, f.shank + EASE, at.land + at.tongue))
    return Part(part.name, part.title, part.kind, timber, Shape(part.shape.blank, cuts), frame)


def _joints(spec: BenchSpec, parts: Mapping[str, Part]) -> tuple[Joint, ...]:
    f, board = fixing_numbers(spec), parts[above(spec).part]
    joints: list[Joint] = []
    for place in fixed(spec).places:
        bearer = parts[place.bearer.part]
        name = f"fixing_{place.name}"
        if f.buttons:
            piece, at = parts[f"button_{place.name}"], button(f, place)
            joints.append(button_in(f"{name}_tongue", piece, bearer, at))
            joints.append(button_under(name, piece, board, at))
        elif place.bearer.solid:
            joints.append(slotted_screw(name, bearer, board, screw(f, place)))
        else:
            piece = parts[f"fixing_block_{place.name}"]
            face = _block_face(f, place)
            joints.append(glued_block(f"{name}_block", piece, bearer, face, _into(place)))
            joints.append(slotted_screw(name, piece, board, screw(f, place)))
    return tuple(joints)


def _block_face(f: FixingNumbers, place: Place) -> tuple[Vec3, ...]:
    """Where a block lies against its bearer."""
    half, slope = block_half(f, place), place.bearer.slope
    return tuple(
        add(
            place.at,
            add(
                scale(place.bearer.along, a),
                add(scale(place.bearer.inward, -down * slope), scale(_DOWN, down)),
            ),
        )
        for a, down in ((-half, 0.0), (half, 0.0), (half, f.land), (-half, f.land))
    )


def _derived(spec: BenchSpec) -> tuple[Derived, ...]:
    f = fixing_numbers(spec)
    places = fixed(spec).places
    travel = far_travel(f, places)
    rows = [
        derived_length(
            "fixing_travel",
            "Seat moves at most",
            "Fixing",
            travel,
            "distance from the line it is held on, timber, how it was sawn, moisture: "
            "ΔD = D × C × ΔM",
        )
    ]
    if not f.buttons:
        rows += [
            derived_length(
                "fixing_slot",
                "Longest slot",
                "Fixing",
                travel + EASE + f.shank + EASE if places else 0.0,
                "travel, the screw's shank and {1.2 mm} of play",
            ),
            derived_length(
                "fixing_screw_length",
                "Screw length",
                "Fixing",
                f.land + f.bite,
                "wood under the head + screw in the seat",
            ),
        ]
    else:
        rows.append(
            derived_length(
                "fixing_screw_length",
                "Screw length",
                "Fixing",
                f.button_land + f.tongue + f.bite,
                "the button's thickness + screw in the seat",
            )
        )
    return tuple(rows)


CHOICE_MEMBER = Member("fixing", CHOICE, present=can_be_fixed)

MEMBER = Member(
    "fixings",
    PARAMETERS,
    CONSTRAINTS,
    _parts,
    _joints,
    derived=_derived,
    present=has_fixings,
    made_into=THE_BASE,
)
