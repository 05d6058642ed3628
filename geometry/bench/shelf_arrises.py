"""The upper arris of every shelf's front eased, or both of them, between the uprights.

The tongues in the housings stay whole.  A run that is too short for its size is left sharp.  On
shelves of sheet they lie on the lipping, and behind that on the sheet where they reach so far.
"""

from __future__ import annotations

from geometry.bench.arris_rows import (
    FACE_EDGE,
    FACE_SIDE,
    FAR_EDGE,
    REVERSE,
    SHARE,
    form_row,
    formed,
    run_row,
    size_row,
    snug_at,
)
from geometry.bench.constraint import Constraint, rule
from geometry.bench.member import Member
from geometry.bench.rail_runs import told
from geometry.bench.shelves import has_shelves, lip_of
from geometry.cuts.edge_moulding import EdgeMoulding, along_arris
from geometry.cuts.removal import HalfSpace
from geometry.design.parameter import Parameter, choice
from geometry.design.part import Part
from geometry.design.spec import BenchSpec
from geometry.primitives.frame import Vec3
from shared.tolerances import COPLANAR

UPPER, BOTH = "upper", "upper and lower"
SHELF_LIPPING = "lipping"  # the kind of part
_LAP = 1e-5  # mm: two cuts run into one another by no more, so that no skin stays between

PARAMETERS: tuple[Parameter, ...] = (
    form_row("shelf_edge", "Shelf fronts", "The front arrises of every shelf."),
    size_row("shelf_edge_size", "Shelf front size", 2.0, 30, "On both faces of the arris."),
    choice(
        "shelf_edge_where",
        "Shelf front arrises",
        "Edges",
        UPPER,
        (UPPER, BOTH),
        "The upper one, which hands and things slide over, or both.",
        applies=formed("shelf_edge"),
    ),
    run_row(
        "shelf_edge_stop",
        "Shelf front stopped",
        0,
        "From the uprights to where it begins; 0 runs through from one to the other.",
        "shelf_edge",
    ),
)


def _left(spec: BenchSpec) -> float:
    """How much more than a third of the thickness the front keeps."""
    thickness, each = spec.number("shelf_thickness"), spec.number("shelf_edge_size")
    taken = 2.0 * each if spec.word("shelf_edge_where") == BOTH else each
    return thickness - taken - thickness / SHARE


CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "shelf_edge_within",
        "shelf_edge shelf_edge_size shelf_edge_where shelf_thickness",
        _left,
        "the edges would leave less than a third of the shelf's thickness",
    ),
)


def _has_edges(spec: BenchSpec) -> bool:
    return has_shelves(spec) and formed("shelf_edge")(spec)


def _cuts(spec: BenchSpec, part: Part) -> tuple[EdgeMoulding, ...]:
    if part.kind == SHELF_LIPPING:
        # Face side to the front, face edge up.
        wide = part.shape.blank.width
        arrises: tuple[tuple[float, float, Vec3], ...] = ((0.0, 0.0, FACE_EDGE),)
        return _eased(spec, part, 0.0, (*arrises, (wide, 0.0, FAR_EDGE)), FACE_SIDE)
    lip = lip_of(spec)
    if part.kind != "shelf" or spec.number("shelf_edge_size") <= lip + COPLANAR:
        return ()
    y = part.shape.blank.width + lip
    thick = part.shape.blank.thickness
    arrises = ((y, 0.0, FACE_SIDE), (y, thick, REVERSE))
    return _eased(spec, part, spec.number("shelf_housing_depth"), arrises, FAR_EDGE)


def _eased(
    spec: BenchSpec,
    part: Part,
    into: float,
    arrises: tuple[tuple[float, float, Vec3], ...],
    front: Vec3,
) -> tuple[EdgeMoulding, ...]:
    """On the upper of two arrises, each at its y and z below a face, or on both; between the
    uprights, which begin ``into`` from the part's ends."""
    size, stop = spec.number("shelf_edge_size"), spec.number("shelf_edge_stop")
    low, high = into + stop, part.shape.blank.length - into - stop
    if high - low < 4.0 * size:
        return ()
    planes = (
        HalfSpace((low - _LAP, 0.0, 0.0), (-1.0, 0.0, 0.0)),
        HalfSpace((high + _LAP, 0.0, 0.0), (1.0, 0.0, 0.0)),
    )
    chosen = arrises if spec.word("shelf_edge_where") == BOTH else arrises[:1]
    return tuple(
        along_arris(
            spec.word("shelf_edge"),
            size,
            ((low, y, z), (high, y, z)),
            (face, front),
            stopped=(stop > 0.0, stop > 0.0),
            planes=() if stop > 0.0 or into <= 0.0 else planes,
        )
        for y, z, face in chosen
    )


def _notes(spec: BenchSpec, part: Part) -> tuple[str, ...]:
    if part.kind not in ("shelf", SHELF_LIPPING):
        return ()
    both = spec.word("shelf_edge_where") == BOTH
    which = "both front arrises" if both else "upper front arris"
    stop = spec.number("shelf_edge_stop")
    return told(which, stop, "the uprights", "from upright to upright", part)


CHOICE_MEMBER = Member("shelf fronts", PARAMETERS, present=has_shelves)

MEMBER = Member(
    "shelf edges",
    (),
    CONSTRAINTS,
    cuts=_cuts,
    notes=_notes,
    present=_has_edges,
    snug=snug_at(shelf_edge_size=2.0),
)
