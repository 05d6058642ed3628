"""What a part is left proud for trimming after the glue-up.

Frame: the part's own x, mm, and (u, v) of PART_FACE.

Method: the solid is the trimmed piece and the blank is longer, so the wood left proud is the
difference at either end, with its end sawn parallel to the finished one.
"""

from __future__ import annotations

import shapely
from shapely import affinity
from shapely.geometry.base import BaseGeometry

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


def proud_regions(part: Part) -> tuple[BaseGeometry, ...]:
    """The proud wood at each end that has some, as regions of the face view."""
    left, right = proud_ends(part)
    if not left and not right:
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
    return tuple(found)


def proud_words(part: Part) -> tuple[str, ...]:
    """The allowance in words, empty when there is none."""
    left, right = proud_ends(part)
    if left and right:
        if abs(left - right) < _LEAST:
            where = f"both ends {length_mark(round(left, 4))}"
        else:
            where = (
                f"the left end {length_mark(round(left, 4))} and the right end "
                f"{length_mark(round(right, 4))}"
            )
    elif left or right:
        end = "left" if left else "right"
        where = f"the {end} end {length_mark(round(left or right, 4))}"
    else:
        return ()
    return (f"Leave {where} proud and trim flush after the glue-up; sizes are to the trim line.",)
