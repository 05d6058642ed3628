"""Finding a free spot in a view already dimensioned, for numbers of cuts, letters and symbols.

Frame: sheet mm about the view's own origin, as its block.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np

from geometry.dimensioning.angle_places import chords
from geometry.drawing.marks import Arc, Role
from geometry.drawing.text_box import NO_LINES, Ground, TextBox
from geometry.primitives.frame import Vec2
from geometry.sheets.view_grid import Block

CLEAR = 0.8  # mm between what is put down and what is there
_CHORDS = 72  # of a ring
_RING_AIR = 0.4  # mm between a ring and a text that interrupts it


def ground_of(block: Block) -> Ground:
    """All lines and texts of a view, to keep clear of."""
    return _with_dimensions(Ground(block.linework.segments * block.scale), block)


def margin_of(block: Block) -> Ground:
    """The same without the drawing itself, for what stands outside it."""
    return _with_dimensions(Ground(NO_LINES), block)


def _with_dimensions(ground: Ground, block: Block) -> Ground:
    for one in block.placed.dimensions:
        ground.add([*one.lines, *chords(one.sweeps)], [one.box])
    return ground


def free_spot(
    ground: Ground, spots: Sequence[TextBox], *, over_lines: bool = False
) -> TextBox | None:
    """The first of some boxes that touches nothing; ``over_lines`` then tries off text alone."""
    for spot, free in zip(spots, ground.clear(spots, CLEAR), strict=True):
        if free:
            ground.add([], [spot])
            return spot
    for spot in spots if over_lines else ():
        if not ground.crosses_text(spot.outline(), 0.2):
            ground.add([], [spot])
            return spot
    return None


def ring_around(middle: Vec2, radius: float, texts: Sequence[TextBox]) -> list[Arc]:
    """A circle, interrupted where it would run through a text."""
    turns = np.linspace(0.0, 2.0 * math.pi, _CHORDS + 1)
    rim = [(middle[0] + radius * math.cos(t), middle[1] + radius * math.sin(t)) for t in turns]
    kept = [
        (turn, turn + 360.0 / _CHORDS)
        for k, turn in enumerate(np.degrees(turns[:-1]).tolist())
        if not any(text.stretch_of((*rim[k], *rim[k + 1]), _RING_AIR) for text in texts)
    ]
    if len(kept) == _CHORDS:
        return [Arc(Role.DIMENSION, middle, radius, 0.0, 360.0)]
    arcs: list[tuple[float, float]] = []
    for start, end in kept:
        goes_on = bool(arcs) and abs(arcs[-1][1] - start) < 1e-6
        arcs.append((arcs.pop()[0] if goes_on else start, end))
    return [Arc(Role.DIMENSION, middle, radius, start, end) for start, end in arcs]
