"""From a spec to a bench: parts laid out, joints made, each part given its cuts."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache

from geometry.bench.bench import Bench
from geometry.bench.member import Member
from geometry.bench.members import present_members
from geometry.cuts.cut import Cut
from geometry.design.joint import Joint
from geometry.design.part import Part, Shape
from geometry.design.spec import BenchSpec


@lru_cache(maxsize=64)
def build(spec: BenchSpec) -> Bench:
    """Lay out a bench whose values have passed ``set_values``."""
    members = present_members(spec)
    pieces = tuple(piece for member in members for piece in member.parts(spec))
    by_name = {piece.name: piece for piece in pieces}
    joints = tuple(joint for member in members for joint in member.joints(spec, by_name))
    return Bench(
        spec,
        tuple(_finished(spec, piece, joints, members) for piece in pieces),
        joints,
        tuple(size for member in members for size in member.derived(spec)),
    )


def _finished(
    spec: BenchSpec, piece: Part, joints: tuple[Joint, ...], members: tuple[Member, ...]
) -> Part:
    """A piece with the cuts of all its joints, then those that come last of all."""
    cuts: list[Cut] = list(piece.shape.cuts)
    for joint in joints:
        first, second = joint.parts
        if piece.name == first:
            cuts += joint.cuts_first
        if piece.name == second:
            cuts += joint.cuts_second
    for member in members:
        cuts += member.cuts(spec, piece)
    return replace(piece, shape=Shape(piece.shape.blank, tuple(cuts)))
