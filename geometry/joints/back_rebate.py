"""A rebate that takes one edge of the back.

The rebate is as deep into the back edge as the sheet is thick (and as it is let in), so the
sheet's inside face lies on the wall of the rebate; round its edges there is the stated fit.
"""

from __future__ import annotations

from geometry.cuts.cut import Cut
from geometry.cuts.rebate import Rebate
from geometry.design.joint import FIRST, Contact, Joint, Measure
from geometry.design.part import Part
from geometry.joints.marking import span
from geometry.joints.reference_faces import start_of
from geometry.primitives.frame import Vec3
from shared.tolerances import COPLANAR


def back_rebate(
    name: str,
    board: Part,
    back: Part,
    *,
    along: tuple[Vec3, Vec3],
    into: float,
    width: float,
    fit: float,
    contact: tuple[Vec3, Vec3, Vec3, Vec3],
    lip: float = 0.0,
    cut: Cut | None = None,
) -> Joint:
    """Rebate the inside back arris of ``board`` for ``back``, through a lipping ``lip`` thick
    where it has one there.  ``board`` may be that lipping itself, which gets the ``cut`` told.

    ``along``: two bench points between which the rebate runs.  ``into`` is its depth from the
    board's face side, ``width`` its depth from the back edge, both in mm.  ``contact`` bounds the
    wall on which the sheet's inside face lies, in bench coordinates.
    """
    x_low, x_high = span(board, 0, *along)
    wide, deep = board.frame.y_axis, board.frame.z_axis
    if cut is not None:
        wide, deep = deep, wide  # a lipping lies with its face side to the back
    elif width - lip > COPLANAR:
        cut = Rebate(x_low, x_high, 0.0, width - lip, into)
    # Through a lipping it is routed once that is on, and no size of the sheet is left to mark.
    marked = FIRST if cut is not None and lip <= 0.0 else ()
    from_edge = "from the back edge" + (" with its lipping" if lip > 0.0 else "")
    length = Measure("rebate_length", x_high - x_low, "mm", "along the board")
    return Joint(
        name=name,
        kind="rebate",
        parts=(board.name, back.name),
        fit=fit,
        cuts_first=(cut,) if cut is not None else (),
        cuts_second=(),
        measures=(
            Measure("rebate_width", width, "mm", from_edge, marked, wide),
            Measure(
                "rebate_depth", into, "mm", "below the inside face", FIRST if cut else (), deep
            ),
            *((length, *start_of(board, x_low, x_high, "rebate")) if cut else ()),
        ),
        contacts=(Contact(contact, (0.0, 1.0, 0.0), 0.0),),
    )
