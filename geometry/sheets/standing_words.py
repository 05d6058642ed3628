"""How a part stands in the bench, in words: where its face side, its left end and its face edge go.

Method: each is a direction of the part's frame; what of it runs more than 30° along a direction of
the bench is named, so that what stands at 45° has two.
"""

from __future__ import annotations

from collections.abc import Sequence

from geometry.design.part import Part
from geometry.primitives.frame import Vec3, scale

_NAMED = 0.5  # of a unit direction: the sine of 30°
_MOST = 4  # different ways that are told one by one
_ASIDE = (("to the left", "to the right"), ("to the front", "to the back"), ("down", "up"))
_AND = (("left", "right"), ("front", "back"))


def way(direction: Vec3) -> str:
    """'to the front', 'up', 'to the front left' for a unit direction of the bench."""
    along = [axis for axis in range(3) if abs(direction[axis]) > _NAMED]
    words = {axis: direction[axis] > 0.0 for axis in along}
    if 0 in words and 1 in words:
        level = f"{_ASIDE[1][words[1]]} {_AND[0][words[0]]}"
    else:
        level = "".join(_ASIDE[axis][words[axis]] for axis in (0, 1) if axis in words)
    upright = _ASIDE[2][words[2]] if 2 in words else ""
    return " and ".join(filter(None, (upright, level)))


def standing(part: Part) -> tuple[str, str, str]:
    """Where a part's face side, left end and face edge are in the bench."""
    frame = part.frame
    face, end, edge = (
        way(scale(axis, -1.0)) for axis in (frame.z_axis, frame.x_axis, frame.y_axis)
    )
    return (f"face side {face}", f"left end {end}", f"face edge {edge}")


def standings(parts: Sequence[Part], names: Sequence[str]) -> str:
    """How parts made alike stand, what all have in common once; empty if too many ways differ."""
    found: dict[tuple[str, ...], list[str]] = {}
    for part, name in zip(parts, names, strict=True):
        found.setdefault(standing(part), []).append(name)
    shared = [told[0] for told in zip(*found, strict=True) if len(set(told)) == 1]
    if len(found) == 1:
        return f"In the bench: {', '.join(shared)}."
    if len(found) > _MOST:
        return ""
    each = (
        f"{', '.join(who)}: {', '.join(one for one in how if one not in shared)}"
        for how, who in found.items()
    )
    return f"In the bench: {'; '.join([', '.join(shared), *each] if shared else each)}."
