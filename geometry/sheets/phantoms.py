"""Where pieces that move stand too: the outline of an open lid with its stay, in the end elevation.

(u, v) of the view, mm.  Drawn in long-dashed double-dotted narrow lines, as ISO 128-24 has them for
the extreme positions of movable parts (line 05.1; from memory).
"""

from __future__ import annotations

from itertools import pairwise

import numpy as np

from geometry.bench.bench import Bench
from geometry.bench.lid import LID
from geometry.bench.lid_box_numbers import lid_box
from geometry.bench.lid_clear import open_corners
from geometry.bench.lid_stay import on_lid, stay_numbers
from geometry.bench.lid_swing import turned
from geometry.bench.members import has
from geometry.drawing.text_box import NO_LINES
from geometry.primitives.frame import Vec2
from geometry.sheets.view_grid import Floats
from geometry.views.bench_views import end_view
from geometry.views.view import View

PHANTOM_OWNER = f"part:{LID}"


def phantom_lines(bench: Bench, view: View) -> Floats:
    """Segments (n, 4) of a view; none where nothing moves or the view does not show it."""
    if not has(bench.spec, "lid") or view.name != end_view(bench).name:
        return NO_LINES
    b = lid_box(bench.spec)
    corners = open_corners(b)
    pin_y, pin_z = b.pin_place
    y, z = turned(on_lid(b), b.opening_deg)
    lines: list[tuple[Vec2, Vec2]] = list(pairwise((*corners, corners[0])))
    fixed = (-stay_numbers(b).from_back, b.rim - b.stay_down)
    lines.append((fixed, (pin_y + y, pin_z + z)))
    ends = [view.project((0.0, *point)) for line in lines for point in line]
    return np.array(ends, dtype=np.float64).reshape(-1, 4)
