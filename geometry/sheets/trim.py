"""What a part is left proud for trimming after the glue-up.

Frame: the part's own x, mm, and (u, v) of PART_FACE.

Method: the solid is the trimmed piece and the blank is longer, so the wood left proud is the
difference at either end or edge, sawn parallel to the finished one.
"""

from __future__ import annotations

import shapely
from shapely import affinity
from shapely.geometry.base import BaseGeometry

from geometry.cuts.trim import Trim
from geometry.design.faces import FACES
from geometry.design.part import Part
from geometry.sheets.marked_part import marked_part
from geometry.sheets.silhouette import silhouette
from geometry.views.view import PART_FACE
from shared.units import length_mark

_LEAST = 0.01  # mm
_FAR = 1e6  # mm


def proud_ends(part: Part) -> tuple[float, float]:
    """How much is left proud at the left and at the right end, mm."""
    if part.allowance < _LEAST:
        return (0.0, 0.0)
    marked = marked_part(part.shape)
    left, right = marked.low[0], part.shape.blank.length - marked.high[0]
    return (left if left > _LEAST else 0.0, right if right > _LEAST else 0.0)


def proud_edges(part: Part) -> tuple[float, float]:
    """How much is left on at the face edge and at the far edge, mm."""
    if part.allowance_across < _LEAST:
        return (0.0, 0.0)
    marked = marked_part(part.shape)
    near, far = marked.low[1], part.shape.blank.width - marked.high[1]
    return (near if near > _LEAST else 0.0, far if far > _LEAST else 0.0)


def proud_regions(part: Part) -> tuple[BaseGeometry, ...]:
    """The proud wood at each end and edge that has some, as regions of the face view."""
    left, right = proud_ends(part)
    near_edge, far_edge = proud_edges(part)
    if not any((left, right, near_edge, far_edge)):
        return ()
    shape = silhouette(part.shape, PART_FACE)
    near, far = (marked_part(part.shape).edge_ends(side) for side in (False, True))
    found: list[BaseGeometry] = []
    for amount, shift, low, high in (
        (left, -left, -_FAR, max(near[0][0], far[0][0])),
        (right, right, min(near[1][0], far[1][0]), _FAR),
    ):
        if amount:
            end = shapely.box(low, -_FAR, high, _FAR)
            found.append(affinity.translate(shape, xoff=shift).difference(shape).intersection(end))
    # v runs against y: the face edge is the upper one.
    for amount, shift in ((near_edge, near_edge), (far_edge, -far_edge)):
        if amount:
            found.append(affinity.translate(shape, yoff=shift).difference(shape))
    return tuple(found)


def proud_words(part: Part) -> tuple[str, ...]:
    """The allowance in words, empty when there is none."""
    along, across, _ = FACES
    places = list(zip(along, proud_ends(part), strict=True))
    places += zip(across, proud_edges(part), strict=True)
    left_on = [
        f"{length_mark(round(amount, 4))} on the {place}" for place, amount in places if amount
    ]
    if not left_on:
        return ()
    where = left_on[0] if len(left_on) == 1 else f"{', '.join(left_on[:-1])} and {left_on[-1]}"
    when = "to trim when it is fitted" if _is_fitted(part) else "to trim flush after the glue-up"
    return (f"Leave {where} proud, {when}; sizes are to the trim line.",)


def _is_fitted(part: Part) -> bool:
    return any(isinstance(cut, Trim) for cut in part.shape.cuts)
