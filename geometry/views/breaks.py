"""Lines of a detail at which a piece only leaves off, told from its real edges.

Frame and units: (u, v) of the view, mm.

Method: the edges of a part cut short that lie in the plane of a break are laid in the view; a drawn
line of that part which lies on one of them, and on no real edge, is where the piece goes on.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from geometry.solids.cutting import placed
from geometry.solids.solid import Flags, Floats
from geometry.views.joint_scene import JointPart
from geometry.views.linework import Linework
from geometry.views.view import View

_IN_PLANE = 1e-4
_NEAR = 1e-3  # mm in the view
_STEPS = (0.5, 0.0, 1.0, 0.15, 0.35, 0.65, 0.85)  # where along a line it is looked at


@dataclass(frozen=True, slots=True, eq=False)
class Broken:
    """A view's real lines, and the lines (n, 4) at which pieces go on."""

    linework: Linework
    ends: Floats


def broken(linework: Linework, parts: Sequence[JointPart]) -> Broken:
    """The lines of a view of some parts cut short; owners are indices into ``parts``."""
    leaves_off = np.zeros(len(linework.segments), dtype=np.bool_)
    for index, part in enumerate(parts):
        mine = np.flatnonzero(linework.owner == index)
        if not part.breaks or not len(mine):
            continue
        ends, real = _edges(part, linework.view)
        drawn = linework.segments[mine]
        mine, drawn = mine[off := _on(drawn, ends)], drawn[off]  # few
        leaves_off[mine] = ~_on(drawn, real)
    kept = ~leaves_off
    lines = Linework(
        linework.view, linework.segments[kept], linework.visible[kept], linework.owner[kept]
    )
    return Broken(lines, linework.segments[leaves_off & linework.visible])


def at_break(points: Floats, part: JointPart) -> Flags:
    """Which of some points of a part (n, 3) lie in one of its breaks."""
    found = np.zeros(len(points), dtype=np.bool_)
    for one in part.breaks:
        found |= np.abs((points - one.point) @ np.array(one.outward)) < _IN_PLANE
    return found


def _edges(part: JointPart, view: View) -> tuple[Floats, Floats]:
    """The edges in the breaks and the real ones as they are seen, (n, 4) each."""
    solid = placed(part.part)
    flat = solid.vertices @ np.array((view.right, view.up)).T
    edges = solid.solid.edges
    in_break = np.zeros(len(edges), dtype=np.bool_)
    for one in part.breaks:
        on = np.abs((solid.vertices - one.point) @ np.array(one.outward)) < _IN_PLANE
        in_break |= on[edges].all(axis=1)
    lines = flat[edges].reshape(-1, 4)
    return lines[in_break], lines[~in_break]


def _on(lines: Floats, others: Floats) -> Flags:
    """Which of some lines (n, 4) lie along others (m, 4), each on one or on several in a row."""
    start, run = others[:, :2], others[:, 2:] - others[:, :2]
    size = np.hypot(*run.T)
    long = size > _NEAR
    start, size = start[long], size[long]
    way = run[long] / size[:, None]
    left = np.arange(len(lines))
    for step in _STEPS:
        at = lines[left, :2] + (lines[left, 2:] - lines[left, :2]) * step
        off = at[:, None] - start[None]
        along = (off * way).sum(axis=2)
        aside = off[..., 0] * way[:, 1] - off[..., 1] * way[:, 0]
        near = (np.abs(aside) < _NEAR) & (along > -_NEAR) & (along < size + _NEAR)
        left = left[near.any(axis=1)]  # fewer each time
    on = np.zeros(len(lines), dtype=np.bool_)
    on[left] = True
    return on
