"""What a shop's machine has to follow on one part: closed contours and marked lines, by layer.

Plane coordinates in mm as the board lies on the machine, *face side up*: x along the grain to the
right, y away from the operator, the blank's corner at the origin.  The part's own frame has its z
axis running from the face side into the wood, so y is turned round (``width - y``); without that
every part would be cut as its own mirror image.  Work on the reverse is drawn in the same place,
as if the board were glass, on layers of its own.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

import shapely
from shapely.affinity import scale
from shapely.geometry import LineString, MultiPolygon, Polygon
from shapely.geometry.base import BaseGeometry

from exporters.arcs import Circle, circles_of, with_arcs
from exporters.dxf_layers import INSIDE_LAYER, OUTLINE_LAYER, Layer, layer_named, layer_of
from exporters.run_over import run_over
from exporters.shadow import outline_paths, shadow, straightened
from geometry.cuts.chamfer import Chamfer
from geometry.cuts.contour import Contour, Operation
from geometry.cuts.cut import Cut
from geometry.cuts.leaning_bore import LeaningBore
from geometry.cuts.screw_hole import ScrewHole
from geometry.cuts.trim import Trim
from geometry.design.part import Part, Shape
from geometry.primitives.path import Path
from geometry.sheets.trim import proud_regions
from geometry.solids.cutting import solid_of
from shared.tolerances import MERGE, SHORTEST_SEGMENT

_ROUNDING = 2e-6  # a line along an edge of the outline is on the part
_FINE = 1e-4  # chord error when pockets are joined: a hundredth of the solids' own


@dataclass(frozen=True, slots=True)
class CuttingLine:
    """One path on one layer."""

    layer: Layer
    path: Path


def cutting_lines(part: Part, run_over_by: float) -> tuple[CuttingLine, ...]:
    """The outline first, then holes, pockets, saw lines and marks, in the order of their layers.

    ``run_over_by`` in mm is how far a pocket that leaves an edge is carried past it; at least the
    radius of the cutter that clears it.  No two contours of a layer touch or overlap.
    """
    blank = part.shape.blank
    pieces = shadow(solid_of(_off_the_machine(part.shape)), _left_proud(part))
    region = MultiPolygon(pieces)
    outlines = [outline_paths(piece, part) for piece in pieces]
    lines = [CuttingLine(layer_named(OUTLINE_LAYER), outer) for outer, _ in outlines]
    lines += [CuttingLine(layer_named(INSIDE_LAYER), h) for _, holes in outlines for h in holes]
    closed: dict[Layer, list[Path]] = {}
    open_: dict[Layer, list[Path]] = {}
    for contour in (c for cut in part.shape.cuts for c in cut.contours(blank)):
        match contour.operation:
            case Operation.OUTLINE | Operation.INSIDE:
                pass  # cut right through, so they show in the solid's outline already
            case Operation.POCKET:
                closed.setdefault(layer_of(contour), []).append(
                    _carried_out(contour, region, run_over_by)
                )
            case Operation.SAW_LINE | Operation.SCRIBE:
                open_.setdefault(layer_of(contour), []).append(contour.path)
    for layer in sorted(closed, key=lambda layer: layer.name):
        lines += [CuttingLine(layer, path) for path in _joined(closed[layer])]
    for layer in sorted(open_, key=lambda layer: layer.name):
        lines += [CuttingLine(layer, path) for path in _on_the_part(open_[layer], region)]
    return tuple(CuttingLine(line.layer, _face_up(line.path, blank.width)) for line in lines)


def _off_the_machine(shape: Shape) -> Shape:
    """Arrises come off and allowances are trimmed when the outline has been cut, not with it.

    A leaning hole is bored along its sightline; its shadow is no hole that a machine could cut.
    """
    return Shape(shape.blank, tuple(cut for cut in shape.cuts if not _by_hand(cut)))


def _by_hand(cut: Cut) -> bool:
    if isinstance(cut, LeaningBore | ScrewHole):
        return cut.leans
    return isinstance(cut, Chamfer | Trim)


def _left_proud(part: Part) -> list[BaseGeometry]:
    """The wood beyond the ends that is trimmed flush after the glue-up, in the part's plane."""
    return [scale(region, 1.0, -1.0, origin=(0.0, 0.0)) for region in proud_regions(part)]


def _carried_out(contour: Contour, region: MultiPolygon, distance: float) -> Path:
    return run_over(contour.path, region, distance) if contour.runs_out else contour.path


def _joined(paths: list[Path]) -> list[Path]:
    """Pockets of one depth: those that touch become one, the others stay as they were drawn."""
    areas = [Polygon(path.flattened(_FINE)) for path in paths]
    groups: list[list[int]] = []
    for i, area in enumerate(areas):
        touching = [g for g in groups if any(area.distance(areas[j]) < MERGE for j in g)]
        groups = [g for g in groups if g not in touching]
        groups.append(sorted([i, *(j for g in touching for j in g)]))
    joined: list[Path] = []
    for group in sorted(groups):
        if len(group) == 1:
            joined.append(paths[group[0]])
            continue
        circles: tuple[Circle, ...] = tuple(c for i in group for c in circles_of(paths[i]))
        union = shapely.union_all([areas[i] for i in group])
        for piece in shapely.get_parts(union):
            rings = [piece.exterior, *piece.interiors]
            joined += [with_arcs(straightened(r.coords[:-1]), circles, _FINE) for r in rings]
    return joined


def _on_the_part(paths: list[Path], region: MultiPolygon) -> list[Path]:
    """The straight stretches of open lines that lie on the finished part, each once."""
    near = region.buffer(_ROUNDING)
    lines = shapely.union_all([LineString(path.flattened(_FINE)) for path in paths])
    kept = shapely.line_merge(shapely.intersection(lines, near))
    return [
        Path(tuple((x, y, 0.0) for x, y in _simplified(line)), closed=False)
        for line in shapely.get_parts(kept)
        if isinstance(line, LineString) and line.length > SHORTEST_SEGMENT
    ]


def _simplified(line: LineString) -> Iterable[tuple[float, float]]:
    return [(float(x), float(y)) for x, y in line.simplify(MERGE / 10.0).coords]


def _face_up(path: Path, width: float) -> Path:
    """A path of the part's xy plane as the machine sees it, closed ones counter-clockwise again."""
    count = len(path.vertices)
    turned = [(x, width - y) for x, y, _ in path.vertices]
    if not path.closed:
        bulges = [0.0 - bulge for _, _, bulge in path.vertices]
        return Path(
            tuple((x, y, b) for (x, y), b in zip(turned, bulges, strict=True)), closed=False
        )
    return Path(tuple((*turned[-i], path.vertices[-i - 1][2]) for i in range(count)))
