"""What lists say about pieces: which are cut alike, and how large they are when finished."""

from __future__ import annotations

from collections.abc import Sequence

from geometry.design.part import Part
from geometry.solids.alike import made_alike
from geometry.solids.cutting import solid_of


def cut_alike(parts: Sequence[Part]) -> tuple[tuple[Part, ...], ...]:
    """Groups of interchangeable pieces, in the order of their first ones."""
    return made_alike(
        parts,
        lambda part: (
            part.kind,
            part.material,
            (part.allowance, part.allowance_across),
            part.notes,
            part.grain_across,
        ),
    )


def finished_size(part: Part) -> tuple[float, float, float]:
    """Length, width and thickness in mm with all cuts made, what was left on trimmed off."""
    vertices = solid_of(part.shape).vertices
    length, width, thickness = (vertices.max(axis=0) - vertices.min(axis=0)).tolist()
    return length, width, thickness
