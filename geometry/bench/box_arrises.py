"""The outside arrises of a box with a lid, upper or lower, eased on its front and its ends.

They stop before the corners, so that tails, fingers and tongues stay whole, and on either side of
a notch for the fingers.  The back stays sharp: it stands against a wall, posts of a rest lie on
it, or hinges are let into its upper arris.  A stretch too short for its size is left sharp.
"""

from __future__ import annotations

from geometry.bench.arris_rows import form_row, formed, run_row, size_row, snug_at, told
from geometry.bench.constraint import Constraint, rule
from geometry.bench.lid_box import FRONT, LEFT, RIGHT, has_lid_box
from geometry.bench.lid_box_numbers import LidBox, lid_box
from geometry.bench.member import Member
from geometry.bench.rail_runs import (
    CLEAR,
    LEAST_STOP,
    Shoulder,
    Stretch,
    along_stretches,
    reverse_arrises,
)
from geometry.cuts.edge_moulding import EdgeMoulding
from geometry.design.parameter import Parameter, choice
from geometry.design.part import Part
from geometry.design.spec import BenchSpec

UPPER, LOWER = "upper", "lower"
_EASED = (FRONT, LEFT, RIGHT)

PARAMETERS: tuple[Parameter, ...] = (
    form_row("box_edge", "Box arrises", "Outside arrises of the box's front and ends."),
    size_row("box_edge_size", "Box arris size", 3.0, 20, "On both faces of the arris."),
    choice(
        "box_edge_where",
        "Box arris eased",
        "Edges",
        UPPER,
        (UPPER, LOWER),
        "Under the lid, or at the bottom.",
        applies=formed("box_edge"),
    ),
    run_row(
        "box_edge_stop",
        "Box arris stopped",
        12,
        "From the corner joints, and from a notch, to where it begins.",
        "box_edge",
    ),
)


def _cuts(spec: BenchSpec, part: Part) -> tuple[EdgeMoulding, ...]:
    if part.name not in _EASED:
        return ()
    lower, upper = reverse_arrises(part.shape.blank)
    at_rim = spec.word("box_edge_where") == UPPER
    return along_stretches(
        spec.word("box_edge"),
        spec.number("box_edge_size"),
        spec.number("box_edge_stop"),
        (upper if at_rim else lower,),
        _stretches(lid_box(spec), part, at_rim=at_rim),
    )


def _notes(spec: BenchSpec, part: Part) -> tuple[str, ...]:
    if part.name not in _EASED:
        return ()
    upper = spec.word("box_edge_where") == UPPER
    which = "upper outside arris" if upper else "lower outside arris"
    notched = upper and part.name == FRONT and lid_box(spec).notch_width > 0.0
    before = "the corner joints and the notch" if notched else "the corner joints"
    return told(which, spec.number("box_edge_stop"), before, "", part)


def _stretches(b: LidBox, part: Part, *, at_rim: bool) -> tuple[Stretch, ...]:
    """Between the corner joints, and beside a notch in the rim."""
    into = b.thickness - (0.0 if part.name == FRONT else b.end_start)
    first, last = Shoulder(into), Shoulder(part.shape.blank.length - into)
    if part.name != FRONT or not at_rim or b.notch_width <= 0.0:
        return ((first, last),)
    middle, half = part.shape.blank.length / 2.0, b.notch_width / 2.0
    return ((first, Shoulder(middle - half)), (Shoulder(middle + half), last))


def _below(spec: BenchSpec) -> float:
    """The wood outside the bottom's rebate, less what must be left of it."""
    b = lid_box(spec)
    if spec.word("box_edge_where") == UPPER:
        return 1.0
    return b.thickness - b.rebate - CLEAR - spec.number("box_edge_size")


CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "box_edge_within",
        "box_edge box_edge_size box_thickness",
        lambda s: s.number("box_thickness") / 2.0 - s.number("box_edge_size"),
        "the edge would take more than half the box's thickness",
    ),
    rule(
        "box_edge_rebate",
        "box_edge box_edge_size box_edge_where box_thickness box_rebate",
        _below,
        "the edge would leave less than {2 mm} of wood outside the bottom",
    ),
    rule(
        "box_edge_corner",
        "box_edge box_edge_stop",
        lambda s: s.number("box_edge_stop") - LEAST_STOP,
        "the edge would run into the corner joints: it must stop {3 mm} before them or more",
    ),
)


def _has_edges(spec: BenchSpec) -> bool:
    return has_lid_box(spec) and formed("box_edge")(spec)


CHOICE_MEMBER = Member("box arrises", PARAMETERS, present=has_lid_box)

MEMBER = Member(
    "box edges",
    (),
    CONSTRAINTS,
    cuts=_cuts,
    notes=_notes,
    present=_has_edges,
    snug=snug_at(box_edge_size=2.0, box_edge_stop=10.0),
)
