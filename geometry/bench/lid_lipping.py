"""A lipping or an edge band on the front edge of a lid of sheet, which keeps its finished depth."""

from __future__ import annotations

from collections.abc import Mapping

from geometry.bench.constraint import Constraint, rule
from geometry.bench.lid import LID, lid_lip, lid_part
from geometry.bench.lid_box import has_lid_box
from geometry.bench.lid_box_numbers import lid_box
from geometry.bench.lipped import front_strip, glued_strip
from geometry.bench.member import Member
from geometry.design.joint import Joint
from geometry.design.parameter import Parameter, length
from geometry.design.part import Part
from geometry.design.spec import BenchSpec

PARAMETERS: tuple[Parameter, ...] = (
    length(
        "lid_lip",
        "Lid lipping",
        "Lid",
        6,
        0.4,
        30,
        "Thickness of the lipping or edge band; the sheet behind it is so much narrower.",
        step=0.1,
    ),
)


def _on_the_box(spec: BenchSpec) -> float:
    """How much more than half of the box's front lies under the sheet."""
    b = lid_box(spec)
    return -b.depth + b.thickness / 2.0 - (b.lid_front + lid_lip(spec))


CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "lid_lip_front",
        "lid_lip lid_front box_thickness depth",
        _on_the_box,
        "the joint of the lid's lipping would lie behind the middle of the box's front",
    ),
)


def has_lid_lipping(spec: BenchSpec) -> bool:
    return has_lid_box(spec) and lid_lip(spec) > 0.0


def _parts(spec: BenchSpec) -> tuple[Part, ...]:
    core = lid_part(spec)
    return (front_strip(core, lid_lip(spec), 0.0, core.shape.blank.length, spec.word("timber")),)


def _joints(spec: BenchSpec, parts: Mapping[str, Part]) -> tuple[Joint, ...]:
    core = parts[LID]
    whole = core.shape.blank.width + lid_lip(spec)
    return (glued_strip(core, parts[f"{LID}_lipping"], whole),)


MEMBER = Member(
    "lid lipping",
    PARAMETERS,
    CONSTRAINTS,
    _parts,
    _joints,
    present=has_lid_lipping,
    snug=lambda _spec: ({"lid_lip": 0.4},),
)
