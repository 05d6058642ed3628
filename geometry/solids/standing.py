"""The solids of all parts where they stand, cut anew only where they have to be.

Frame and units: the bench frame, mm.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from geometry.design.part import Part, Shape
from geometry.solids.cutting import placed
from geometry.solids.following import differently_made, follow, make_ready
from geometry.solids.solid import PlacedSolid, place

_TRIED_IN_VAIN = 2
"""Times in a row that a shape would not follow, after which it is rarely tried."""

_RARELY = 16
"""Of so many steps one is tried then: getting ready to be followed costs as much as a cut."""


@dataclass(frozen=True, slots=True, eq=False)
class Standing:
    """``solids`` in the order of the parts; ``cut``, by the parts' names, the shapes that were
    cut last and whose solids the others follow; ``in_vain``, how many steps in a row a part whose
    shape changed had to be cut."""

    solids: tuple[PlacedSolid, ...]
    cut: Mapping[str, Shape]
    in_vain: Mapping[str, int]


def make_ready_to_move(standing: Standing) -> None:
    """Do now, while nothing moves yet, what the first step would have to do."""
    for shape in standing.cut.values():
        make_ready(shape)


def stand(parts: Sequence[Part], before: Standing | None = None) -> Standing:
    """The solids of ``parts``; those of shapes like ones ``before`` follow them.

    The surface of a solid that followed is the same but for rounding; its triangles may be
    others.  So nothing that is kept or printed is made from one.  Raises CannotBuild or
    EngineFault, naming the part.
    """
    cut = dict(before.cut) if before else {}
    in_vain = dict(before.in_vain) if before else {}
    changed = [
        k
        for k, part in enumerate(parts)
        if (known := cut.get(part.name)) is not None and known != part.shape
    ]
    trying = [k for k in changed if _worth_trying(in_vain.get(parts[k].name, 0))]
    followed = follow([cut[parts[k].name] for k in trying], [parts[k].shape for k in trying])
    found = {
        k: place(solid, parts[k].frame)
        for k, solid in zip(trying, followed, strict=True)
        if solid is not None
    }
    tried = set(trying)
    for k in changed:
        name = parts[k].name
        # What has another tail than before was no trial: from now on it may follow again.
        new = k in tried and differently_made(cut[name], parts[k].shape)
        in_vain[name] = 0 if k in found or new else in_vain.get(name, 0) + 1
    solids = []
    for k, part in enumerate(parts):
        if k not in found:
            cut[part.name] = part.shape
        solids.append(found.get(k) or placed(part))
    return Standing(tuple(solids), cut, in_vain)


def _worth_trying(in_vain: int) -> bool:
    return in_vain < _TRIED_IN_VAIN or in_vain % _RARELY == 0
