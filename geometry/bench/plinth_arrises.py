"""The outside arrises of a plinth, upper or lower, eased all round.

A moulding that is not stopped runs round the corners: it meets its neighbour in the mitre, and
where the sides are butted it turns onto the ends of front and back, which show there.  A stopped
one ends before the end of each board; one that is too short for its size is left sharp.
"""

from __future__ import annotations

from geometry.bench.arris_rows import SHARE, form_row, formed, run_row, size_row, snug_at, told
from geometry.bench.constraint import Constraint, rule
from geometry.bench.member import Member
from geometry.bench.plinth import has_plinth, plinth_numbers
from geometry.bench.rail_runs import Arris, Shoulder, along_stretches, face_side_arrises
from geometry.cuts.edge_moulding import EdgeMoulding, along_arris
from geometry.design.parameter import Parameter, choice
from geometry.design.part import Part
from geometry.design.spec import BenchSpec
from geometry.primitives.frame import Vec3

UPPER, LOWER, BOTH = "upper", "lower", "upper and lower"
_ROUND = ("plinth_front", "plinth_back")  # the boards whose ends show where sides are butted

PARAMETERS: tuple[Parameter, ...] = (
    form_row("plinth_edge", "Plinth arrises", "Outside arrises of the plinth's boards."),
    size_row("plinth_edge_size", "Plinth arris size", 4.0, 25, "On both faces of the arris."),
    choice(
        "plinth_edge_where",
        "Plinth arrises eased",
        "Edges",
        UPPER,
        (UPPER, LOWER, BOTH),
        "Under the bench, at the floor, or both.",
        applies=formed("plinth_edge"),
    ),
    run_row(
        "plinth_edge_stop",
        "Plinth arris stopped",
        0,
        "From the ends of each board to where it begins; 0 runs round the corners.",
        "plinth_edge",
    ),
)


def lower_taken(spec: BenchSpec) -> float:
    """How far the lower arris goes in on the boards' lower edges; 0 where it is sharp."""
    if not formed("plinth_edge")(spec) or spec.word("plinth_edge_where") == UPPER:
        return 0.0
    return spec.number("plinth_edge_size")


def _cuts(spec: BenchSpec, part: Part) -> tuple[EdgeMoulding, ...]:
    if part.kind != "plinth":
        return ()
    blank, p = part.shape.blank, plinth_numbers(spec)
    form, size = spec.word("plinth_edge"), spec.number("plinth_edge_size")
    stop, where = spec.number("plinth_edge_stop"), spec.word("plinth_edge_where")
    upper, lower = face_side_arrises(blank)
    arrises = {UPPER: (upper,), LOWER: (lower,), BOTH: (upper, lower)}[where]
    found = along_stretches(form, size, stop, arrises, ((Shoulder(0.0), Shoulder(blank.length)),))
    if not found or stop > 0.0 or p.mitred or part.name not in _ROUND:
        return found
    ends: tuple[tuple[float, Vec3], ...] = (
        (0.0, (-1.0, 0.0, 0.0)),
        (blank.length, (1.0, 0.0, 0.0)),
    )
    return (
        *found,
        *(
            _across(form, size, arris, x, blank.thickness, out)
            for arris in arrises
            for x, out in ends
        ),
    )


def _notes(spec: BenchSpec, part: Part) -> tuple[str, ...]:
    if part.kind != "plinth":
        return ()
    where, stop = spec.word("plinth_edge_where"), spec.number("plinth_edge_stop")
    which = "both outside arrises" if where == BOTH else f"{where} outside arris"
    return told(which, stop, "the ends", "round the corners", part)


def _across(
    form: str, size: float, arris: Arris, x: float, thickness: float, out: Vec3
) -> EdgeMoulding:
    """On the end of a board, from its outside to its inside."""
    ends = ((x, arris.y, 0.0), (x, arris.y, thickness))
    return along_arris(form, size, ends, (arris.edge, out))


def _within(spec: BenchSpec) -> float:
    p = plinth_numbers(spec)
    return min(p.thickness / 2.0, (p.height - p.ground) / SHARE) - spec.number("plinth_edge_size")


CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "plinth_edge_within",
        "plinth_edge plinth_edge_size plinth_thickness base_height foot foot_height",
        _within,
        "the edge would take more than half the plinth's thickness, or a third of its height",
    ),
)


def _has_edges(spec: BenchSpec) -> bool:
    return has_plinth(spec) and formed("plinth_edge")(spec)


CHOICE_MEMBER = Member("plinth arrises", PARAMETERS, present=has_plinth)

MEMBER = Member(
    "plinth edges",
    (),
    CONSTRAINTS,
    cuts=_cuts,
    notes=_notes,
    present=_has_edges,
    snug=snug_at(plinth_edge_size=2.0),
)
