"""What each cut of a part takes away, laid flat: the region of waste on the face and the reverse.

Frame: the part's own, mm; regions in its xy plane, clipped to the blank.

Method: every removal is a half-space, a prism or a convex hull, so its sections by the lowest and
the highest plane in which it meets the blank tell all that a maker marks out.  A path with rounded
corners counts as the rectangle round it, because that is what is measured.  A prism that runs
askew is taken for the hull of its corners; one that is not convex is left to the words, and so is
a faceted surface.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import pairwise, product

import numpy as np
import shapely

from geometry.cuts.cut import Blank, Cut
from geometry.cuts.removal import PART_FRAME, HalfSpace, Hollow, Hull, Prism, Removal
from geometry.cuts.screw_slot import ScrewSlot
from geometry.design.part import Shape
from geometry.primitives.frame import Vec2, Vec3
from geometry.primitives.path import Path
from shared.tolerances import CHORD_ERROR, MERGE

Side = tuple[Vec2, Vec2]
_COARSE = 0.2  # mm, for a hole askew: only its rectangle is used
_NEARLY = 1e-6
_KEPT = 256  # shapes of one bench and the one before


@dataclass(frozen=True, slots=True)
class Waste:
    """One removal of one cut.

    ``number`` counts the part's cuts from 1, ``title`` is the cut's.  ``flat`` is True for a saw
    cut by one plane.  ``low`` and ``high`` are the corners of the region at the two heights
    ``z_low`` and ``z_high``, the ends of its reach within the thickness.  ``middle`` is that of a
    round hole square to the face, or the screw's place in a slot for one, None for anything else.
    """

    number: int
    title: str
    flat: bool
    z_low: float
    z_high: float
    low: tuple[Vec2, ...]
    high: tuple[Vec2, ...]
    middle: Vec2 | None = None

    @property
    def upright(self) -> bool:
        """Whether the walls stand square to the face, so both regions are one."""
        return len(self.low) == len(self.high) and all(
            math.dist(a, b) < MERGE for a, b in zip(self.low, self.high, strict=True)
        )


@lru_cache(maxsize=_KEPT)
def wastes(shape: Shape) -> tuple[Waste, ...]:
    """The waste of every removal that meets the blank, in the order of the cuts."""
    found: list[Waste] = []
    for number, cut in enumerate(shape.cuts, start=1):
        for removal in cut.removals(shape.blank):
            waste = _waste(number, cut.title, removal, shape.blank)
            if waste is not None:
                found.append(_marked_by_its_screw(waste, cut))
    return tuple(found)


def inner_sides(region: Sequence[Vec2], blank: Blank) -> list[Side]:
    """The sides of a region of waste that are cut into the blank, not along its own edges."""
    sides: list[Side] = []
    for a, b in pairwise([*region, *region[:1]]):
        along_an_edge = any(
            abs(a[axis] - at) < MERGE and abs(b[axis] - at) < MERGE
            for axis, at in ((0, 0.0), (0, blank.length), (1, 0.0), (1, blank.width))
        )
        if not along_an_edge and math.dist(a, b) > MERGE:
            sides.append((a, b))
    return sides


def _marked_by_its_screw(waste: Waste, cut: Cut) -> Waste:
    """A slot for a screw square to the face is set out from where its screw stands."""
    if isinstance(cut, ScrewSlot) and abs(abs(cut.into[2]) - 1.0) < _NEARLY:
        return replace(waste, middle=cut.screw[:2])
    return waste


def _waste(number: int, title: str, removal: Removal, blank: Blank) -> Waste | None:
    if isinstance(removal, Hollow):
        return None
    middle = _round_middle(removal)
    if isinstance(removal, Prism) and removal.frame != PART_FRAME:
        if not _is_convex(removal.path):
            return None
        removal = Hull(_corners(removal))
    z_low, z_high = _reach(removal, blank)
    if z_low >= z_high:
        return None
    low = _clipped(_section(removal, z_low, blank), blank)
    high = _clipped(_section(removal, z_high, blank), blank)
    if not low and not high:
        return None
    return Waste(number, title, isinstance(removal, HalfSpace), z_low, z_high, low, high, middle)


def _is_convex(path: Path) -> bool:
    polygon = shapely.Polygon(path.flattened(CHORD_ERROR))
    return bool(polygon.convex_hull.area - polygon.area < MERGE)


def _corners(prism: Prism) -> tuple[Vec3, ...]:
    """The corners of a prism in the part's frame."""
    return tuple(
        prism.frame.to_bench((x, y, z))
        for x, y in prism.path.flattened(_COARSE)
        for z in (prism.z_low, prism.z_high)
    )


def _round_middle(removal: Removal) -> Vec2 | None:
    """The centre of a hole bored square to the face, which arcs round one point make."""
    if not isinstance(removal, Prism) or abs(abs(removal.frame.z_axis[2]) - 1.0) > _NEARLY:
        return None
    corners = removal.path.vertices
    if not all(bulge for _, _, bulge in corners):
        return None
    x, y = (sum(corner[k] for corner in corners) / len(corners) for k in (0, 1))
    turn = 4.0 * sum(math.atan(bulge) for _, _, bulge in corners)
    far = [math.hypot(px - x, py - y) for px, py, _ in corners]
    if max(far) - min(far) > _NEARLY or abs(abs(turn) - math.tau) > _NEARLY:
        return None
    return removal.frame.to_bench((x, y, 0.0))[:2]


def _reach(removal: HalfSpace | Prism | Hull, blank: Blank) -> tuple[float, float]:
    match removal:
        case HalfSpace():
            low, high = _reach_beyond(removal, blank)
        case Prism():
            low, high = removal.z_low, removal.z_high
        case Hull():
            heights = [z for _, _, z in removal.points]
            low, high = min(heights), max(heights)
    return max(low, 0.0), min(high, blank.thickness)


def _reach_beyond(plane: HalfSpace, blank: Blank) -> tuple[float, float]:
    """The heights between which wood lies beyond a plane: a taper along a face may begin within."""
    nx, ny, nz = plane.outward
    px, py, pz = plane.point
    if abs(nz) < _NEARLY:
        return 0.0, blank.thickness
    corners = product((0.0, blank.length), (0.0, blank.width))
    heights = [pz - (nx * (x - px) + ny * (y - py)) / nz for x, y in corners]
    return (min(heights), blank.thickness) if nz > 0.0 else (0.0, max(heights))


def _section(removal: HalfSpace | Prism | Hull, z: float, blank: Blank) -> shapely.Geometry:
    match removal:
        case HalfSpace():
            return _half_plane(removal, z, blank)
        case Prism():
            return _flat(removal.path)
        case Hull():
            return _hull_section(removal.points, z)


def _flat(path: Path) -> shapely.Geometry:
    points = path.flattened(CHORD_ERROR)
    if any(bulge for _, _, bulge in path.vertices):
        xs, ys = [x for x, _ in points], [y for _, y in points]
        return shapely.box(min(xs), min(ys), max(xs), max(ys))
    return shapely.Polygon(points)


def _half_plane(removal: HalfSpace, z: float, blank: Blank) -> shapely.Geometry:
    """The part of the blank's face at height ``z`` that lies beyond the plane."""
    nx, ny, nz = removal.outward
    px, py, pz = removal.point
    size = math.hypot(nx, ny)
    if size < 1e-9:
        return shapely.Polygon()
    far = 4.0 * (blank.length + blank.width)
    foot = (nz * (pz - z)) / size
    ux, uy = nx / size, ny / size
    x, y = px + ux * foot, py + uy * foot
    return shapely.Polygon(
        [
            (x - uy * far, y + ux * far),
            (x + uy * far, y - ux * far),
            (x + uy * far + ux * far, y - ux * far + uy * far),
            (x - uy * far + ux * far, y + ux * far + uy * far),
        ]
    )


def _hull_section(points: Sequence[Vec3], z: float) -> shapely.Geometry:
    corners = np.array(points)
    off = corners[:, 2] - z
    first, second = np.nonzero(np.triu(off[:, None] * off < 0.0))  # on either side of the plane
    a, b = corners[first], corners[second]
    share = ((z - a[:, 2]) / (b[:, 2] - a[:, 2]))[:, None]
    crossing = a[:, :2] + share * (b[:, :2] - a[:, :2])
    found = np.concatenate([corners[np.abs(off) < MERGE, :2], crossing])
    return shapely.multipoints(found).convex_hull if len(found) else shapely.Polygon()


def _clipped(region: shapely.Geometry, blank: Blank) -> tuple[Vec2, ...]:
    """The corners of a region's larger piece on the blank, counter-clockwise, none on a line."""
    board = shapely.box(0.0, 0.0, blank.length, blank.width)
    pieces = [
        piece
        for piece in shapely.get_parts(region.intersection(board))
        if piece.geom_type == "Polygon" and piece.area > MERGE
    ]
    if not pieces:
        return ()
    largest = max(pieces, key=lambda piece: float(piece.area))
    ring = shapely.normalize(largest.simplify(MERGE)).exterior.coords[:-1]
    return tuple((float(x), float(y)) for x, y in ring)
