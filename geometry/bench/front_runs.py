"""Mouldings on the front arrises of boards that are housed at both ends, and of their lippings.

Tongues in the housings stay whole.  On a board of sheet they lie on the lipping, and behind that on
the sheet where they reach so far.  Frame: the part's own, x from end to end; mm.
"""

from __future__ import annotations

from geometry.bench.arris_rows import FACE_EDGE, FACE_SIDE, FAR_EDGE, LEAST_RUN, REVERSE
from geometry.cuts.edge_moulding import EdgeMoulding, along_arris
from geometry.cuts.overrun import LAP
from geometry.cuts.removal import HalfSpace
from geometry.design.part import Part
from geometry.design.spec import BenchSpec
from geometry.primitives.frame import Vec3
from shared.tolerances import COPLANAR

Arrises = tuple[tuple[float, float, Vec3], ...]  # y and z, and the face beside the front


def on_lipping(
    spec: BenchSpec, name: str, strip: Part, *, both: bool = True
) -> tuple[EdgeMoulding, ...]:
    """The edge of this ``name`` on a strip, whose face side is the front: on both its arrises, or
    that at the board's face side alone."""
    arrises: Arrises = ((0.0, 0.0, FACE_EDGE), (strip.shape.blank.width, 0.0, FAR_EDGE))
    return _eased(spec, name, strip, 0.0, arrises if both else arrises[:1], FACE_SIDE)


def on_board(
    spec: BenchSpec, name: str, board: Part, lip: float, into: float, *, both: bool = True
) -> tuple[EdgeMoulding, ...]:
    """The same on a board that goes ``into`` its housings, behind a lipping ``lip`` thick."""
    if spec.number(f"{name}_size") <= lip + COPLANAR:
        return ()
    y = board.shape.blank.width + lip
    arrises: Arrises = ((y, 0.0, FACE_SIDE), (y, board.shape.blank.thickness, REVERSE))
    return _eased(spec, name, board, into, arrises if both else arrises[:1], FAR_EDGE)


def _eased(
    spec: BenchSpec, name: str, part: Part, into: float, arrises: Arrises, front: Vec3
) -> tuple[EdgeMoulding, ...]:
    """None on a part that is too short."""
    size, stop = spec.number(f"{name}_size"), spec.number(f"{name}_stop")
    low, high = into + stop, part.shape.blank.length - into - stop
    if high - low < LEAST_RUN * size:
        return ()
    planes = (
        HalfSpace((low - LAP, 0.0, 0.0), (-1.0, 0.0, 0.0)),
        HalfSpace((high + LAP, 0.0, 0.0), (1.0, 0.0, 0.0)),
    )
    return tuple(
        along_arris(
            spec.word(name),
            size,
            ((low, y, z), (high, y, z)),
            (face, front),
            stopped=(stop > 0.0, stop > 0.0),
            planes=() if stop > 0.0 or into <= 0.0 else planes,
        )
        for y, z, face in arrises
    )
