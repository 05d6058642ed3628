"""Both front arrises of every partition, eased between top and bottom.

A run that is too short for its size is left sharp.
"""

from __future__ import annotations

from geometry.bench.arris_rows import SHARE, form_row, formed, run_row, size_row, snug_at
from geometry.bench.case import has_case
from geometry.bench.constraint import Constraint, rule
from geometry.bench.front_runs import on_board, on_lipping
from geometry.bench.member import Member
from geometry.bench.partitions import PARTITION_LIPPING, partition_lip
from geometry.cuts.edge_moulding import EdgeMoulding
from geometry.design.parameter import Parameter
from geometry.design.part import Part
from geometry.design.spec import BenchSpec

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
    if part.kind == PARTITION_LIPPING:
        return on_lipping(spec, "partition_edge", part)
    if part.kind != "partition":
        return ()
    lip, into = partition_lip(spec), spec.number("housing_depth")
    return on_board(spec, "partition_edge", part, lip, into)


CHOICE_MEMBER = Member("partition fronts", PARAMETERS, present=has_case)

MEMBER = Member(
    "partition edges",
    (),
    CONSTRAINTS,
    cuts=_cuts,
    present=_has_edges,
    snug=snug_at(partition_edge_size=2.0),
)
