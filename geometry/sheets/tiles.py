"""Cutting a full-size drawing into sheets that overlap.

Frame: true mm (u to the right, v upward) for the drawing, sheet mm for the paper.

The drawing lies in the middle of its sheets, or at their left or right where that leaves more
room.  Sheets in one row may each lie as low as what they show allows, so that a drawing that climbs
or falls leaves its room in one piece.

Method: n sheets of a printable length h with overlap o cover n h - (n - 1) o, so
n = ceil((length - o) / (h - o)).  Portrait or landscape, whichever takes fewer sheets; a printer's
correction makes the printable length in true mm a little longer or shorter, and goes with the edges
of the paper, however it lies.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from geometry.sheets.printer import Edges, as_it_lies
from shared.paper import Paper

Box = tuple[float, float, float, float]  # least u, least v, greatest u, greatest v

OVERLAP = 15.0
MARGIN = 8.0  # mm: what printers leave white, with something to spare (common practice, no source)
_SHARES = (0.5, 0.0, 1.0)
STRIP = 16.0  # mm along the foot, for words


@dataclass(frozen=True, slots=True)
class Tile:
    """One sheet: its column from the left and row from the top, and the true mm that it shows."""

    column: int
    row: int
    box: Box


@dataclass(frozen=True, slots=True)
class Tiling:
    """The sheets of one drawing; ``width`` and ``height`` are those of the paper as it lies, and
    the ``correction`` is across it and up it."""

    width: float
    height: float
    correction: tuple[float, float]
    tiles: tuple[Tile, ...]

    def neighbour(self, tile: Tile, columns: int, rows: int) -> Tile | None:
        """The sheet so many columns to the right and rows down, None where there is none."""
        for other in self.tiles:
            if (other.column, other.row) == (tile.column + columns, tile.row + rows):
                return other
        return None


def tilings(
    content: Box,
    paper: Paper,
    correction: Edges,
    has_lines: Callable[[Box], bool],
    tops: Sequence[Callable[[float, float], float]] = (),
) -> tuple[Tiling, ...]:
    """The ways to lie the paper, those of the fewest sheets first; sheets with nothing on them left
    out.

    Each of ``tops`` tells how high the drawing reaches between two places along it, with more or
    less air above: that far up each sheet of a single row goes, for itself.
    """
    ways = [
        _laid(content, size, as_it_lies(correction, *size), has_lines, share)
        for share in _SHARES
        for size in ((paper.width, paper.height), (paper.height, paper.width))
    ]
    level = [way for way in ways if all(tile.row == 0 for tile in way.tiles)]
    ways += [_lowered(way, top) for top in tops for way in level]
    return tuple(sorted(ways, key=lambda way: len(way.tiles)))


def _lowered(way: Tiling, top_of: Callable[[float, float], float]) -> Tiling:
    """The same sheets, each with the top of what it shows at its upper edge."""
    tiles = []
    for tile in way.tiles:
        left, foot, right, top = tile.box
        down = max(0.0, top - top_of(left, right))
        tiles.append(replace(tile, box=(left, foot - down, right, top - down)))
    return replace(way, tiles=tuple(tiles))


def printable(width: float, height: float) -> Box:
    """The rectangle of a sheet that may carry lines of the drawing."""
    return (MARGIN, MARGIN + STRIP, width - MARGIN, height - MARGIN)


def _laid(
    content: Box,
    size: tuple[float, float],
    correction: tuple[float, float],
    has_lines: Callable[[Box], bool],
    share: float,
) -> Tiling:
    """One way; ``share`` is how much of what is to spare across is left of the drawing."""
    width, height = size
    left, bottom, right, top = printable(width, height)
    across, up = (right - left) / correction[0], (top - bottom) / correction[1]
    columns, start = _spread(content[0], content[2], across, share)
    rows, foot = _spread(content[1], content[3], up, _SHARES[0])
    spare = up - (content[3] - content[1])
    if rows == 1 and spare > 0.0:
        foot = content[3] - up  # all the room below, for the check squares
    tiles = []
    for row in range(rows):
        for column in range(columns):
            u = start + column * (across - OVERLAP)
            v = foot + (rows - 1 - row) * (up - OVERLAP)
            box = (u, v, u + across, v + up)
            if has_lines(box):
                tiles.append(Tile(column, row, box))
    return Tiling(width, height, correction, tuple(tiles))


def _spread(low: float, high: float, each: float, share: float) -> tuple[int, float]:
    """How many sheets cover a stretch, and where the first begins: what is to spare is shared out
    to both ends, ``share`` of it before the stretch."""
    length = high - low
    count = max(1, math.ceil((length - OVERLAP) / (each - OVERLAP) - 1e-9))
    covered = count * each - (count - 1) * OVERLAP
    return count, low - (covered - length) * share
