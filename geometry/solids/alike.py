"""Parts that are made alike: one piece as well as the other, laid the same way.

Method: shapes that are equal in every number are the same piece.  Others may differ by rounding,
or describe the same wood by other words; they are the same when their blanks are, and their solids
have one box and the same moments where they lie (``likeness``, without a turn).
"""

from __future__ import annotations

from collections.abc import Callable, Hashable, Sequence

from geometry.design.part import Part, Shape
from geometry.solids.likeness import same_as_laid


def made_alike(
    parts: Sequence[Part], otherwise: Callable[[Part], Hashable]
) -> tuple[tuple[Part, ...], ...]:
    """Groups of parts of one shape, in the order of their first ones.

    ``otherwise`` is what else must be equal: material, what is left on, what is noted.
    """
    groups: dict[tuple[Hashable, Shape], list[Part]] = {}
    for part in parts:
        own = otherwise(part)
        key = (own, part.shape)
        if key not in groups:
            like = (k for k in groups if k[0] == own and same_as_laid(k[1], part.shape))
            key = next(like, key)
        groups.setdefault(key, []).append(part)
    return tuple(tuple(group) for group in groups.values())
