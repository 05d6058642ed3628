"""Solids of shapes, made once for each shape and kept.

Frame and units: the part's own frame, mm, until placed.
"""

from __future__ import annotations

from functools import lru_cache
from itertools import chain

from geometry.cuts.removal import Removal
from geometry.design.part import Part, Shape
from geometry.primitives.frame import Frame
from geometry.solids.kernel.body import Body, EngineFault
from geometry.solids.kernel.carving import carve
from geometry.solids.kernel.mesh import mesh_of
from geometry.solids.solid import PlacedSolid, Solid, place
from geometry.solids.surface import solid_from
from shared.errors import CannotBuild

_KEPT = 2048
"""A drag of a few hundred steps over a large bench stays in memory; older shapes are forgotten."""


@lru_cache(maxsize=_KEPT)
def removals_by_cut(shape: Shape) -> tuple[tuple[Removal, ...], ...]:
    """What each cut of a shape takes away."""
    return tuple(cut.removals(shape.blank) for cut in shape.cuts)


def removals_of(shape: Shape) -> tuple[Removal, ...]:
    """All that the cuts of a shape take away, in the order of the cuts."""
    return tuple(chain.from_iterable(removals_by_cut(shape)))


@lru_cache(maxsize=_KEPT)
def body_of(shape: Shape) -> Body:
    """The carved body inside the kernel; may be empty."""
    return carve(shape.blank, removals_of(shape))


@lru_cache(maxsize=_KEPT)
def solid_of(shape: Shape) -> Solid:
    """The solid that ``shape`` comes out as.

    Raises CannotBuild when its cuts leave nothing of the blank.
    """
    mesh = mesh_of(body_of(shape))
    if not len(mesh.triangles):
        titles = ", ".join(cut.title for cut in shape.cuts)
        raise CannotBuild(
            f"The cuts ({titles}) leave nothing of the piece.",
            remedy="Make the piece larger or the cuts smaller.",
        )
    return solid_from(mesh)


@lru_cache(maxsize=_KEPT)
def placed_shape(shape: Shape, frame: Frame) -> PlacedSolid:
    """The solid of ``shape`` standing at ``frame``."""
    return place(solid_of(shape), frame)


def placed(part: Part) -> PlacedSolid:
    """The part's solid in the bench frame.

    Raises CannotBuild or EngineFault, naming the part.
    """
    try:
        return placed_shape(part.shape, part.frame)
    except CannotBuild as error:
        raise CannotBuild(error.what, where=part.title, remedy=error.remedy) from error
    except EngineFault as fault:
        raise EngineFault(f"{part.name}: {fault}") from fault
