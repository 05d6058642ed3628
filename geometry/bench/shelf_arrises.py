"""The upper arris of every shelf's front eased, or both of them, between the uprights.

A run that is too short for its size is left sharp.
"""

from __future__ import annotations

from geometry.bench.arris_rows import SHARE, form_row, formed, run_row, size_row, snug_at, told
from geometry.bench.constraint import Constraint, rule
from geometry.bench.front_runs import on_board, on_lipping
from geometry.bench.member import Member
from geometry.bench.shelves import has_shelves, lip_of
from geometry.cuts.edge_moulding import EdgeMoulding
from geometry.design.parameter import Parameter, choice
from geometry.design.part import Part
from geometry.design.spec import BenchSpec

UPPER, BOTH = "upper", "upper and lower"
SHELF_LIPPING = "lipping"  # the kind of part

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
    """Face side and face edge are up."""
    both = spec.word("shelf_edge_where") == BOTH
    if part.kind == SHELF_LIPPING:
        return on_lipping(spec, "shelf_edge", part, both=both)
    if part.kind != "shelf":
        return ()
    into = spec.number("shelf_housing_depth")
    return on_board(spec, "shelf_edge", part, lip_of(spec), into, both=both)


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
