"""A closed body inside the solid kernel, and the check of what the kernel has made.

Frame and units: as the values given, mm.  The kernel never raises: a body it cannot make has a
status and no volume, so every result is checked and a bad one raises EngineFault.
"""

from __future__ import annotations

from dataclasses import dataclass

import manifold3d

from geometry.cuts.removal import HalfSpace
from geometry.primitives.frame import Frame, dot
from geometry.solids.solid import Floats, Indices


class EngineFault(AssertionError):
    """The solid kernel could not do what was asked: a mistake of ours, never the maker's."""


@dataclass(frozen=True, slots=True, eq=False)
class Rounded:
    """A cutter with arcs, standing at its path's first vertex, and the kernel's name for it.

    ``arcs`` (g,) and ``axes`` (k, 2, 3) as in a mesh.
    """

    manifold: manifold3d.Manifold
    origin: int
    arcs: Indices
    axes: Floats


@dataclass(frozen=True, slots=True, eq=False)
class Body:
    """A closed body inside the kernel, and the rounds among what it was cut with.

    Those are kept with it: the kernel knows a cutter by a name, and one made anew has another.
    """

    manifold: manifold3d.Manifold
    rounded: tuple[Rounded, ...] = ()


def placed(body: Body, frame: Frame) -> manifold3d.Manifold:
    return body.manifold.transform(frame.matrix())


def trimmed(manifold: manifold3d.Manifold, beyond: HalfSpace) -> manifold3d.Manifold:
    """What is left when everything in ``beyond`` is taken away."""
    inward = (-beyond.outward[0], -beyond.outward[1], -beyond.outward[2])
    return manifold.trim_by_plane(inward, dot(inward, beyond.point))


def check(manifold: manifold3d.Manifold, doing: str) -> None:
    status = manifold.status()
    if status != manifold3d.Error.NoError:
        raise EngineFault(f"the solid kernel failed while {doing}: {status}")
