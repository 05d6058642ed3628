"""Blanks with all their removals taken away.

Frame and units: the part's own frame, mm.  Method: what goes right through is cut in the plane; saw
cuts trim by a plane, which is cheapest; then the simple cutters, those that stand apart in one go,
as each go costs about as much as the surface it meets; last the many-sided ones together, as they
seldom meet one another.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TypeGuard

import manifold3d

from geometry.cuts.cut import Blank
from geometry.cuts.removal import PART_FRAME, HalfSpace, Prism, Removal
from geometry.solids.kernel.body import Body, Rounded, check, trimmed
from geometry.solids.kernel.cutters import waste_of
from shared.tolerances import COPLANAR

_SIMPLE = 20  # triangles: a prism of up to six sides


def carve(blank: Blank, removals: Sequence[Removal]) -> Body:
    """The blank, one corner at the origin, with all removals taken away; may come out empty."""
    right_through = [removal for removal in removals if _goes_through(removal, blank)]
    body = _sawn_out(blank, right_through)
    simple: list[manifold3d.Manifold] = []
    many_sided: list[manifold3d.Manifold] = []
    rounded: list[Rounded] = []
    for removal in removals:
        if isinstance(removal, HalfSpace):
            body = trimmed(body, removal)
        elif removal not in right_through:
            cutter = waste_of(removal)
            few = cutter.manifold.num_tri() <= _SIMPLE
            (simple if few else many_sided).append(cutter.manifold)
            rounded += cutter.rounded
    for apart in _apart(simple):
        body -= apart[0] if len(apart) == 1 else manifold3d.Manifold.compose(apart)
        body.num_tri()  # done now: left alone, the kernel would first unite all cutters
    if many_sided:
        body = manifold3d.Manifold.batch_boolean([body, *many_sided], manifold3d.OpType.Subtract)
    check(body, "cutting a blank")
    return Body(body, tuple(rounded))


def _goes_through(removal: Removal, blank: Blank) -> TypeGuard[Prism]:
    """Whether a removal is a straight-sided hole or notch through the whole thickness."""
    return (
        isinstance(removal, Prism)
        and removal.frame is PART_FRAME
        and not removal.ends
        and removal.z_low < 0.0
        and removal.z_high > blank.thickness
        and not any(bulge for _, _, bulge in removal.path.vertices)
    )


def _sawn_out(blank: Blank, removals: Sequence[Prism]) -> manifold3d.Manifold:
    """The blank less what goes right through it, done in the plane, which is much quicker."""
    if not removals:
        return manifold3d.Manifold.cube((blank.length, blank.width, blank.thickness))
    corners = ((0.0, 0.0), (blank.length, 0.0), (blank.length, blank.width), (0.0, blank.width))
    waste = manifold3d.CrossSection(
        [[(x, y) for x, y, _ in removal.path.vertices] for removal in removals],
        manifold3d.FillRule.NonZero,
    )
    left = manifold3d.CrossSection([corners]) - waste
    if left.is_empty():
        return manifold3d.Manifold()
    return manifold3d.Manifold.extrude(left, blank.thickness)


def _apart(cutters: Sequence[manifold3d.Manifold]) -> list[list[manifold3d.Manifold]]:
    """Cutters in groups whose bounding boxes do not touch: each group cuts in one go."""
    groups: list[list[tuple[manifold3d.Manifold, tuple[float, ...]]]] = []
    for cutter in cutters:
        box = cutter.bounding_box()
        for group in groups:
            if all(_boxes_apart(box, other) for _, other in group):
                group.append((cutter, box))
                break
        else:
            groups.append([(cutter, box)])
    return [[cutter for cutter, _ in group] for group in groups]


def _boxes_apart(a: tuple[float, ...], b: tuple[float, ...]) -> bool:
    return any(
        a[axis + 3] < b[axis] - COPLANAR or b[axis + 3] < a[axis] - COPLANAR for axis in range(3)
    )
