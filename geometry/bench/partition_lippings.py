"""Lippings and edge bands on the front edges of partitions of sheet.

A partition keeps its finished depth: its core is cut narrower by the lipping.  A lipping stands
between bottom and top; the partition's notches lie beside it, so it stays in front of the tongues.
Housings for shelves stop behind it.
"""

from __future__ import annotations

from collections.abc import Mapping

from geometry.bench.case import has_case
from geometry.bench.case_numbers import case_numbers
from geometry.bench.constraint import Constraint, rule
from geometry.bench.lipped import front_strip, glued_strip
from geometry.bench.lippings import LEAST_NOTCH, notch_length
from geometry.bench.member import Member
from geometry.bench.openings import SHELF, WIDTH_READS, filled_with
from geometry.bench.partitions import partition_lip, partitions, uprights
from geometry.bench.shelves import SET_BACKS, set_back_name
from geometry.design.joint import Joint
from geometry.design.parameter import Parameter, length
from geometry.design.part import Part
from geometry.design.spec import BenchSpec

PARAMETERS: tuple[Parameter, ...] = (
    length(
        "partition_lip",
        "Partition lipping",
        "Partitions",
        6,
        0.4,
        30,
        "Thickness of the lipping or edge band; the sheet behind it is so much narrower.",
        step=0.1,
    ),
)


def _behind_lipping(spec: BenchSpec) -> float:
    """How far behind a partition's lipping the housings for shelves stop."""
    stops = [
        spec.number(set_back_name(at.index)) + spec.number("housing_cover")
        for at in filled_with(spec, SHELF)
        if any(name.startswith("partition") for name in (at.left, at.right))
    ]
    return min(stops, default=spec.number("partition_lip")) - spec.number("partition_lip")


CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "partition_lip_notch",
        "partition_lip housing_cover cutter_diameter housing_fit",
        lambda s: notch_length(s) - LEAST_NOTCH - s.number("partition_lip"),
        "the lipping would be thicker than the notch in front of the partition's tongue",
    ),
    rule(
        "partition_lip_shelf",
        f"partition_lip housing_cover {SET_BACKS} {WIDTH_READS}",
        _behind_lipping,
        "the housing for a shelf would be cut into the partition's lipping",
    ),
)


def has_partition_lippings(spec: BenchSpec) -> bool:
    return has_case(spec) and partition_lip(spec) > 0.0 and bool(uprights(case_numbers(spec)))


def _parts(spec: BenchSpec) -> tuple[Part, ...]:
    """In front of what stands between bottom and top."""
    return tuple(_lipping(spec, core) for core in partitions(spec))


def _lipping(spec: BenchSpec, core: Part) -> Part:
    low = spec.number("housing_depth")
    high = core.shape.blank.length - low
    return front_strip(core, partition_lip(spec), low, high, spec.word("timber"))


def _joints(spec: BenchSpec, parts: Mapping[str, Part]) -> tuple[Joint, ...]:
    lip = partition_lip(spec)
    found = []
    for at in uprights(case_numbers(spec)):
        core = parts[at.name]
        whole = core.shape.blank.width + lip
        found.append(glued_strip(core, parts[f"{at.name}_lipping"], whole))
    return tuple(found)


MEMBER = Member(
    "partition lippings",
    PARAMETERS,
    CONSTRAINTS,
    _parts,
    _joints,
    present=has_partition_lippings,
    snug=lambda _spec: ({"partition_lip": 0.4},),
)
