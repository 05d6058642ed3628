"""Random assemblies of parts that touch but never share volume; the same seed, the same parts.

Coordinates are often whole multiples of a coarse step, so that faces lie in one plane, edges
fall on one another and parts touch, as they do in furniture.
"""

from __future__ import annotations

import math
import random
from dataclasses import dataclass

from geometry.cuts.contour import Contour
from geometry.cuts.cut import Blank
from geometry.cuts.removal import HalfSpace, Hull, Prism, Removal
from geometry.design.part import Part, Shape
from geometry.primitives.frame import BENCH_FRAME, Frame, Vec3, unit
from geometry.primitives.path import HALF_TURN_BULGE, QUARTER_TURN_BULGE, Path


@dataclass(frozen=True, slots=True)
class Waste:
    """A cut that takes away whatever it is given."""

    removed: tuple[Removal, ...]
    title: str = "waste"

    def removals(self, blank: Blank) -> tuple[Removal, ...]:  # noqa: ARG002
        return self.removed

    def contours(self, blank: Blank) -> tuple[Contour, ...]:  # noqa: ARG002
        return ()


def part(
    name: str,
    size: Vec3,
    removed: tuple[Removal, ...] = (),
    frame: Frame = BENCH_FRAME,
) -> Part:
    """A part of this blank size with these removals, standing at ``frame``."""
    cuts = (Waste(removed),) if removed else ()
    return Part(name, name.capitalize(), "piece", "oak", Shape(Blank(*size), cuts), frame)


def box(name: str, low: Vec3, high: Vec3) -> Part:
    """A plain box between two corners."""
    size = (high[0] - low[0], high[1] - low[1], high[2] - low[2])
    return part(name, size, frame=Frame(low, (1, 0, 0), (0, 1, 0), (0, 0, 1)))


def stopped_housing(reach: float, y: float, width: float, z_low: float, z_high: float) -> Prism:
    """A slot from the end x = 0 to a rounded end that reaches ``reach``."""
    stop = reach - width / 2.0
    path = Path(
        (
            (-5.0, y, 0.0),
            (stop, y, HALF_TURN_BULGE),
            (stop, y + width, 0.0),
            (-5.0, y + width, 0.0),
        )
    )
    return Prism(path, z_low, z_high)


def blocks(seed: int, count: int = 7) -> list[Part]:
    """Boxes in a coarse grid, some with a corner sawn off, a pocket or a notch."""
    dice = random.Random(seed)
    steps = [[0.0], [0.0], [0.0]]
    for axis in steps:
        for _ in range(4):
            axis.append(axis[-1] + dice.choice((20.0, 30.0, 30.0, 40.0 + dice.random())))
    taken: set[tuple[int, int, int]] = set()
    parts: list[Part] = []
    for _ in range(count * 4):
        if len(parts) == count:
            break
        low = [dice.randrange(4) for _ in range(3)]
        high = [min(4, k + dice.choice((1, 1, 2, 3))) for k in low]
        cells = {
            (i, j, k)
            for i in range(low[0], high[0])
            for j in range(low[1], high[1])
            for k in range(low[2], high[2])
        }
        if cells & taken:
            continue
        taken |= cells
        corner = (steps[0][low[0]], steps[1][low[1]], steps[2][low[2]])
        far = (steps[0][high[0]], steps[1][high[1]], steps[2][high[2]])
        size = (far[0] - corner[0], far[1] - corner[1], far[2] - corner[2])
        frame = Frame(corner, (1, 0, 0), (0, 1, 0), (0, 0, 1))
        parts.append(part(f"block_{len(parts)}", size, _worked(dice, size), frame))
    return parts


def bars(seed: int, count: int = 6) -> list[Part]:
    """Square bars lying across one another at odd angles, each layer on the one below."""
    dice = random.Random(seed)
    parts = []
    height = 0.0
    for number in range(count):
        turn = math.radians(dice.uniform(0.0, 360.0) if number % 2 else dice.choice((0, 45, 90)))
        size = (dice.uniform(80.0, 200.0), dice.uniform(15.0, 40.0), dice.uniform(10.0, 30.0))
        along = (math.cos(turn), math.sin(turn), 0.0)
        across = (-math.sin(turn), math.cos(turn), 0.0)
        start = (
            -along[0] * size[0] / 2 - across[0] * size[1] / 2 + dice.uniform(-20, 20),
            -along[1] * size[0] / 2 - across[1] * size[1] / 2 + dice.uniform(-20, 20),
            height,
        )
        removed = _worked(dice, size) if dice.random() < 0.6 else ()
        parts.append(part(f"bar_{number}", size, removed, Frame.of(start, along, across)))
        height += size[2] if dice.random() < 0.7 else size[2] + 7.0
    # One bar leans across in front of the pile, in no plane with anything.
    lean = unit((0.6, 0.13, 0.9))
    sideways = unit((0.9, 0.0, -0.6))
    parts.append(part("prop", (160.0, 14.0, 9.0), frame=Frame.of((-60, -150, 3), lean, sideways)))
    return parts


def _worked(dice: random.Random, size: Vec3) -> tuple[Removal, ...]:
    """Nothing, or one to three cuts that leave most of the piece."""
    x, y, z = size
    removed: list[Removal] = []
    for _ in range(dice.choice((0, 0, 1, 1, 2, 3))):
        kind = dice.randrange(6)
        if kind == 0:
            lean = dice.uniform(0.1, 1.0)
            removed.append(HalfSpace((0.75 * x, y, 0.0), unit((1.0, 0.0, lean))))
        elif kind == 1:
            removed.append(HalfSpace((x, 0.8 * y, z / 2), unit((dice.random(), 1.0, 0.3))))
        elif kind == 2:
            removed.append(stopped_housing(0.6 * x, 0.3 * y, min(0.4 * y, x), 0.6 * z, z + 1.0))
        elif kind == 3:
            removed.append(Prism(Path.rectangle(-1, 0.25 * y, x + 1, 0.5 * y), -1.0, z / 2))
        elif kind == 4:
            removed.append(Prism(_rounded_notch(x, y), -1.0, z + 1.0))
        else:
            corner = ((x, y, z), (x - 9, y, z), (x, y - 7, z), (x, y, z - 8))
            removed.append(Hull(corner))
    return tuple(removed)


def _rounded_notch(x: float, y: float) -> Path:
    """A notch out of the corner at (x, y) with a rounded inner corner."""
    deep = 0.3 * min(x, y)
    round_off = 0.4 * deep
    return Path(
        (
            (x - deep, y - deep + round_off, QUARTER_TURN_BULGE),
            (x - deep + round_off, y - deep, 0.0),
            (x + 1.0, y - deep, 0.0),
            (x + 1.0, y + 1.0, 0.0),
            (x - deep, y + 1.0, 0.0),
        )
    )
