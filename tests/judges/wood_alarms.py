"""Whether a 'do not cut' about wood between two cuts is true, judged point by point.

The piece is made once for each of its cuts alone; where a point is air in two of those, the two
cuts meet, and where it is air right under a face, the cut comes out there.  How near two hollows
come is the least distance between points of one and of the other, to the grain of the points.
"""

from __future__ import annotations

import re
from dataclasses import replace

import numpy as np
import trimesh
from scipy.spatial import cKDTree

from geometry.bench.bench import Bench
from geometry.bench.glue_ups import glue_ups
from geometry.cuts.cut import Cut
from geometry.design.finding import Finding
from geometry.design.part import Part, Shape
from geometry.solids.cavities import Bored
from geometry.solids.cutting import placed
from tests.judges.meshes import Floats

_POINTS = 12_000
_ROUND = (4.0, 1.0, 0.3)  # mm round the place that is told, ever finer
_SKIN = 0.05  # mm below a face of the blank
_GRAIN = 0.35  # mm from point to point, about
_OF_A_FACE = re.compile(r"[Tt]he (left end|right end|face edge|far edge|face side|reverse)\b")


def cuts_meet(bench: Bench, finding: Finding) -> bool:
    """Near the place told, a point is in a hollow and in the waste of another cut; or, where a face
    is told of, in a hollow right under a face."""
    return any(_meet_within(bench, finding, size) for size in _ROUND)


def _meet_within(bench: Bench, finding: Finding, size: float) -> bool:
    part, at = _points(bench, finding, size)
    hollow, wastes = _wastes(part, _boards(bench, part), at)
    if _OF_A_FACE.search(finding.message):
        blank = part.shape.blank
        sizes = np.array([blank.length, blank.width, blank.thickness])
        local = np.array([part.frame.to_local((x, y, z)) for x, y, z in at.tolist()])
        at_face = ((local < _SKIN) | (local > sizes - _SKIN)).any(axis=1)
        return bool(wastes[hollow][:, at_face].any())
    return bool(((wastes.sum(axis=0) >= 2) & wastes[hollow].any(axis=0)).any())


def hollows_come_near(bench: Bench, finding: Finding) -> bool:
    """Near the place told, two cuts come as near to each other, or to a face, as is said."""
    assert finding.limit is not None
    part, at = _points(bench, finding, _ROUND[0])
    hollow, wastes = _wastes(part, (), at)
    for k in np.flatnonzero(hollow & wastes.any(axis=1)):
        for other, waste in enumerate(wastes):
            if other == k or not waste.any():
                continue
            if cKDTree(at[wastes[k]]).query(at[waste])[0].min() < finding.limit + _GRAIN:
                return True
    return cuts_meet(bench, finding)


def _points(bench: Bench, finding: Finding, size: float) -> tuple[Part, Floats]:
    """The piece, and points of its blank in a cube round the place, in the bench."""
    assert finding.place is not None
    part = bench.part(finding.parts[0])
    blank = part.shape.blank
    middle = np.array(part.frame.to_local(finding.place))
    dice = np.random.default_rng(1)
    local = middle + dice.uniform(-size, size, (_POINTS, 3))
    sizes = np.array([blank.length, blank.width, blank.thickness])
    if _OF_A_FACE.search(finding.message):
        # What lies outside goes to just below the face, where a hollow shows.
        local = np.clip(local, _SKIN / 2.0, sizes - _SKIN / 2.0)
    return part, np.array([part.frame.to_bench((x, y, z)) for x, y, z in local.tolist()])


def _boards(bench: Bench, part: Part) -> tuple[Part, ...]:
    """The boards of a glued-up panel, whose mortises the panel's own cuts may come upon."""
    return tuple(
        board
        for glue_up in glue_ups(bench)
        if glue_up.panel == part.name
        for board in glue_up.bench.parts
    )


def _wastes(part: Part, boards: tuple[Part, ...], at: Floats) -> tuple[np.ndarray, np.ndarray]:
    """Which of the cuts are hollows for tenons, screws or pins, (cuts,); and for each cut, which of
    the points it takes away, (cuts, points)."""
    alone = [(part, cut) for cut in dict.fromkeys(part.shape.cuts)]
    alone += [(board, cut) for board in boards for cut in board.shape.cuts]
    hollow = np.array([isinstance(cut, Bored) for _, cut in alone], dtype=bool)
    wastes = [_taken(one, cut, at) for one, cut in alone]
    return hollow, np.array(wastes, dtype=bool).reshape(-1, len(at))


def _taken(part: Part, cut: Cut, at: Floats) -> np.ndarray:
    whole = _inside(replace(part, shape=Shape(part.shape.blank, ())), at)
    left = _inside(replace(part, shape=Shape(part.shape.blank, (cut,))), at)
    return np.asarray(whole & ~left)


def _inside(part: Part, at: Floats) -> np.ndarray:
    solid = placed(part)
    mesh = trimesh.Trimesh(solid.vertices, solid.solid.triangles, process=False)
    return np.asarray(mesh.contains(at))
