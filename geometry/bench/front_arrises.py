"""The arrises round the faces of drawer fronts eased, or those along top and bottom alone.

They are moulded once a front is fitted, along its finished edges.  A carved front has none: its
facets run out over its edges.  A front that is too low or too narrow for their size is left sharp.
"""

from __future__ import annotations

from geometry.bench.arris_rows import (
    FACE_EDGE,
    FACE_SIDE,
    FAR_EDGE,
    LEAST_RUN,
    form_row,
    formed,
    size_row,
    snug_at,
    taken_by,
    told,
)
from geometry.bench.carving_numbers import chosen_fronts, finished_edges, groove_of
from geometry.bench.constraint import Constraint, rule
from geometry.bench.drawer_numbers import Drawer, drawers, fronts_of
from geometry.bench.drawers import has_drawers
from geometry.bench.member import Member
from geometry.cuts.edge_moulding import EdgeMoulding, along_arris
from geometry.design.parameter import Parameter, choice
from geometry.design.part import Part
from geometry.design.spec import BenchSpec
from geometry.primitives.frame import Vec3

ALL_ROUND, TOP_AND_BOTTOM = "all round", "top and bottom"
# Common practice, no source, these:
_MOST = 0.5  # of the front's thickness
_LEAST_WOOD = 1.0  # mm between the edge and a finger groove behind it

PARAMETERS: tuple[Parameter, ...] = (
    form_row(
        "drawer_edge",
        "Drawer front edges",
        "The arrises round the faces of drawer fronts; those of carved ones stay as they are.",
    ),
    size_row(
        "drawer_edge_size", "Drawer front edge size", 3.0, 25, "On the face and on the edges."
    ),
    choice(
        "drawer_edge_where",
        "Drawer front edges along",
        "Edges",
        ALL_ROUND,
        (ALL_ROUND, TOP_AND_BOTTOM),
        "All four edges of the face, or top and bottom alone.",
        applies=formed("drawer_edge"),
    ),
)


def _within(spec: BenchSpec) -> float:
    return _MOST * fronts_of(spec).thickness - spec.number("drawer_edge_size")


def _before_groove(spec: BenchSpec) -> float:
    groove = groove_of(spec)
    if groove is None:
        return 1.0
    taken = groove.radius + spec.number("drawer_edge_size")
    return fronts_of(spec).thickness - taken - _LEAST_WOOD


CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "drawer_edge_within",
        "drawer_edge drawer_edge_size drawer_front_thickness",
        _within,
        "the edges would take more than half the front's thickness",
    ),
    rule(
        "drawer_edge_groove",
        "drawer_edge drawer_edge_size drawer_front_thickness finger_groove finger_radius",
        _before_groove,
        "the edges would leave less than {1 mm} before the finger groove",
    ),
)


def eased_by(spec: BenchSpec, drawer: Drawer) -> float:
    """How far a front's edges are taken in along top and bottom; 0 for a sharp or a carved one."""
    size = taken_by(spec, "drawer_edge")
    if size <= 0.0 or drawer in chosen_fronts(spec):
        return 0.0
    short = min(drawer.front_height, drawer.front_width) < LEAST_RUN * size
    return 0.0 if short else size


def _cuts(spec: BenchSpec, part: Part) -> tuple[EdgeMoulding, ...]:
    if part.kind != "drawer front":
        return ()
    drawer = next(one for one in drawers(spec) if f"{one.name}_front" == part.name)
    size = eased_by(spec, drawer)
    if size <= 0.0:
        return ()
    left, top, right, bottom = finished_edges(spec, drawer)
    runs: list[tuple[tuple[Vec3, Vec3], Vec3]] = [
        (((left, top, 0.0), (right, top, 0.0)), FACE_EDGE),
        (((left, bottom, 0.0), (right, bottom, 0.0)), FAR_EDGE),
    ]
    if spec.word("drawer_edge_where") == ALL_ROUND:
        runs += [
            (((x, top, 0.0), (x, bottom, 0.0)), (way, 0.0, 0.0))
            for x, way in ((left, -1.0), (right, 1.0))
        ]
    form = spec.word("drawer_edge")
    return tuple(along_arris(form, size, ends, (FACE_SIDE, beside)) for ends, beside in runs)


def _notes(spec: BenchSpec, part: Part) -> tuple[str, ...]:
    """When to do it, where something is left on to be taken off first."""
    if part.kind != "drawer front":
        return ()
    all_round = spec.word("drawer_edge_where") == ALL_ROUND
    which = "all arrises of the face" if all_round else "upper and lower arris of the face"
    when = "once it is fitted" if fronts_of(spec).left_on > 0.0 else "before it is screwed on"
    return told(which, 0.0, "", when, part)


CHOICE_MEMBER = Member("drawer front edge", PARAMETERS, present=has_drawers)

MEMBER = Member(
    "drawer front edges",
    (),
    CONSTRAINTS,
    cuts=_cuts,
    notes=_notes,
    present=lambda spec: has_drawers(spec) and formed("drawer_edge")(spec),
    snug=snug_at(drawer_edge_size=0.5),
)
