"""The members of a bench, in the order of the story stick and of the lists of parts."""

from __future__ import annotations

from geometry.bench import back, case, crossed_base, edges, materials, partitions
from geometry.bench.member import Member

MEMBERS: tuple[Member, ...] = (
    case.MEMBER,
    partitions.MEMBER,
    back.MEMBER,
    edges.MEMBER,
    crossed_base.MEMBER,
    materials.MEMBER,
)
