"""From a spec to a bench: parts laid out, joints made, each part given its cuts."""

from __future__ import annotations

from collections.abc import Iterable
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
    jointed = _cuts_of_joints(by_name, joints)
    finishing = tuple(member for member in members if member.cuts_last)
    noting = tuple(member for member in members if member.notes_pieces)
    finished = (_finished(spec, piece, jointed[piece.name], finishing) for piece in pieces)
    return Bench(
        spec,
        tuple(_noted(spec, piece, noting) for piece in finished),
        joints,
        tuple(size for member in members for size in member.derived(spec)),
    )


def _cuts_of_joints(names: Iterable[str], joints: tuple[Joint, ...]) -> dict[str, list[Cut]]:
    """By part, the cuts that its joints give it, in the order of the joints."""
    found: dict[str, list[Cut]] = {name: [] for name in names}
    for joint in joints:
        first, second = joint.parts
        found[first] += joint.cuts_first
        found[second] += joint.cuts_second
    return found


def _finished(
    spec: BenchSpec, piece: Part, jointed: list[Cut], members: tuple[Member, ...]
) -> Part:
    """A piece with the cuts of all its joints, then those that come last of all."""
    last = [cut for member in members for cut in member.cuts(spec, piece)]
    if not jointed and not last:
        return piece
    shape = Shape(piece.shape.blank, (*piece.shape.cuts, *jointed, *last))
    return replace(piece, shape=shape)


def _noted(spec: BenchSpec, piece: Part, members: tuple[Member, ...]) -> Part:
    """A piece with what members say of it besides."""
    notes = [note for member in members for note in member.notes(spec, piece)]
    return replace(piece, notes=(*piece.notes, *notes)) if notes else piece
