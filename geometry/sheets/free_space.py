"""The free room on a page, as all the largest empty rectangles that it holds.

Frame: sheet mm; a rectangle is (left, bottom, right, top).

Method: whatever is put down cuts each free rectangle that it meets into the up to four that are
left of it, right of it, below and above; rectangles inside another are dropped.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from geometry.primitives.frame import Vec2

Rectangle = tuple[float, float, float, float]
_SLACK = 1e-9


@dataclass(frozen=True, slots=True)
class FreeSpace:
    """The largest empty rectangles; they may overlap."""

    rectangles: tuple[Rectangle, ...]

    def corner_for(
        self, size: Vec2, preference: Callable[[Rectangle], tuple[float, ...]]
    ) -> Rectangle | None:
        """The free rectangle that holds a size and comes first by ``preference``, None if none."""
        width, height = size
        fitting = [
            r
            for r in self.rectangles
            if r[2] - r[0] >= width - _SLACK and r[3] - r[1] >= height - _SLACK
        ]
        return min(fitting, key=preference, default=None)

    def without(self, taken: Rectangle, air: float) -> FreeSpace:
        """What is left when a rectangle, with ``air`` round it, is taken."""
        left, bottom, right, top = (
            taken[0] - air,
            taken[1] - air,
            taken[2] + air,
            taken[3] + air,
        )
        pieces: list[Rectangle] = []
        for r in self.rectangles:
            if left >= r[2] or right <= r[0] or bottom >= r[3] or top <= r[1]:
                pieces.append(r)
                continue
            pieces += [
                (r[0], r[1], left, r[3]),
                (right, r[1], r[2], r[3]),
                (r[0], r[1], r[2], bottom),
                (r[0], top, r[2], r[3]),
            ]
        return FreeSpace(_largest([p for p in pieces if p[2] - p[0] > 1.0 and p[3] - p[1] > 1.0]))


def _largest(rectangles: Sequence[Rectangle]) -> tuple[Rectangle, ...]:
    """Each rectangle once, and none that lies inside another."""
    once = list(dict.fromkeys(rectangles))
    return tuple(r for r in once if not any(o is not r and _holds(o, r) for o in once))


def _holds(outer: Rectangle, inner: Rectangle) -> bool:
    return (
        outer[0] <= inner[0]
        and outer[1] <= inner[1]
        and outer[2] >= inner[2]
        and outer[3] >= inner[3]
    )
