"""Both front arrises of every partition, eased between top and bottom.

A run that is too short for its size is left sharp.
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
from geometry.bench.case import has_case
from geometry.bench.constraint import Constraint, rule
from geometry.bench.member import Member
from geometry.bench.partitions import PARTITION_LIPPING, partition_lip
from geometry.cuts.edge_moulding import EdgeMoulding, along_arris
from geometry.cuts.removal import HalfSpace
from geometry.design.parameter import Parameter
from geometry.design.part import Part
from geometry.design.spec import BenchSpec
from shared.tolerances import COPLANAR

_LAP = 1e-5  # mm: two cuts run into one another by no more, so that no skin stays between

PARAMETERS: tuple[Parameter, ...] = (
    form_row("partition_edge", "Partition fronts", "The two front arrises of every partition."),
    size_row("partition_edge_size", "Partition front size", 2.0, 15, "On both faces of the arris."),
    run_row(
        "partition_edge_stop",
        "Partition front stopped",
        0,
        "From top and bottom to where it begins; 0 runs through.",
        "partition_edge",
    ),
)

CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "partition_edge_within",
        "partition_edge partition_edge_size partition_thickness",
        lambda s: s.number("partition_thickness") / SHARE - s.number("partition_edge_size"),
        "the edges would take more than two thirds of the partition's thickness",
    ),
)


def _has_edges(spec: BenchSpec) -> bool:
    return has_case(spec) and formed("partition_edge")(spec)


def _cuts(spec: BenchSpec, part: Part) -> tuple[EdgeMoulding, ...]:
    """On a partition, or on its lipping, and behind that on the sheet where it reaches so far."""
    if part.kind not in ("partition", PARTITION_LIPPING):
        return ()
    blank, lip = part.shape.blank, partition_lip(spec)
    size, stop = spec.number("partition_edge_size"), spec.number("partition_edge_stop")
    strip = part.kind == PARTITION_LIPPING
    low = stop if strip else spec.number("housing_depth") + stop
    high = blank.length - low
    if high - low < 4.0 * size or (not strip and size <= lip + COPLANAR):
        return ()
    planes = (
        HalfSpace((low - _LAP, 0.0, 0.0), (-1.0, 0.0, 0.0)),
        HalfSpace((high + _LAP, 0.0, 0.0), (1.0, 0.0, 0.0)),
    )
    if strip:
        arrises = ((0.0, 0.0, FACE_EDGE), (blank.width, 0.0, FAR_EDGE))
        front = FACE_SIDE
    else:
        y = blank.width + lip
        arrises = ((y, 0.0, FACE_SIDE), (y, blank.thickness, REVERSE))
        front = FAR_EDGE
    return tuple(
        along_arris(
            spec.word("partition_edge"),
            size,
            ((low, y, z), (high, y, z)),
            (face, front),
            stopped=(stop > 0.0, stop > 0.0),
            planes=() if stop > 0.0 or strip else planes,
        )
        for y, z, face in arrises
    )


CHOICE_MEMBER = Member("partition fronts", PARAMETERS, present=has_case)

MEMBER = Member(
    "partition edges",
    (),
    CONSTRAINTS,
    cuts=_cuts,
    present=_has_edges,
    snug=snug_at(partition_edge_size=2.0),
)
