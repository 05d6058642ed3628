"""From a spec to a bench: parts laid out, joints made, each part given its cuts."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache

from geometry.bench.back import back_joints, back_part
from geometry.bench.bench import Bench
from geometry.bench.case import case_joints, case_parts
from geometry.bench.case_numbers import CaseNumbers, case_numbers
from geometry.bench.crossed_base import base_joints, base_numbers, base_parts
from geometry.bench.derived import derived
from geometry.bench.edges import chamfers
from geometry.bench.partitions import partition_joints, partition_parts
from geometry.cuts.cut import Cut
from geometry.design.joint import Joint
from geometry.design.part import Part, Shape
from geometry.design.spec import BenchSpec


@lru_cache(maxsize=64)
def build(spec: BenchSpec) -> Bench:
    """Lay out a bench whose values have passed ``set_values``."""
    c, b = case_numbers(spec), base_numbers(spec)
    timber, sheet = spec.word("timber"), spec.word("sheet")
    pieces = (
        *case_parts(c, timber),
        *partition_parts(c, timber),
        back_part(c, sheet),
        *base_parts(b, timber),
    )
    by_name = {piece.name: piece for piece in pieces}
    joints = (
        *case_joints(c, by_name),
        *partition_joints(c, by_name),
        *back_joints(c, by_name),
        *base_joints(b, by_name),
    )
    parts = tuple(_finished(c, piece, joints) for piece in pieces)
    return Bench(spec, parts, joints, derived(c, b))


def _finished(c: CaseNumbers, piece: Part, joints: tuple[Joint, ...]) -> Part:
    """A piece with the cuts of all its joints, then its chamfers."""
    cuts: list[Cut] = list(piece.shape.cuts)
    for joint in joints:
        first, second = joint.parts
        if piece.name == first:
            cuts += joint.cuts_first
        if piece.name == second:
            cuts += joint.cuts_second
    cuts += chamfers(c, piece)
    return replace(piece, shape=Shape(piece.shape.blank, tuple(cuts)))
