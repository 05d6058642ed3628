"""The solids of all parts where they stand, cut anew only where they have to be.

Frame and units: the bench frame, mm.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from geometry.design.part import Part, Shape
from geometry.solids.cutting import placed
from geometry.solids.following import follow, make_ready
from geometry.solids.solid import PlacedSolid, place


@dataclass(frozen=True, slots=True, eq=False)
class Standing:
    """``solids`` in the order of the parts; ``cut``, by the parts' names, the shapes that were
    cut last and whose solids the others follow."""

    solids: tuple[PlacedSolid, ...]
    cut: Mapping[str, Shape]


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
    trying = [
        k
        for k, part in enumerate(parts)
        if (known := cut.get(part.name)) is not None and known != part.shape
    ]
    found: dict[int, PlacedSolid] = {}
    moved = follow([cut[parts[k].name] for k in trying], [parts[k].shape for k in trying])
    for k, solid in zip(trying, moved, strict=True):
        if solid is not None:
            found[k] = place(solid, parts[k].frame)
    solids = []
    for k, part in enumerate(parts):
        if k not in found:
            cut[part.name] = part.shape
        solids.append(found.get(k) or placed(part))
    return Standing(tuple(solids), cut)
