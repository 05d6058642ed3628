"""A rebate that takes one edge of the back.

The rebate is as deep into the back edge as the sheet is thick (and as it is let in), so the
sheet's inside face lies on the wall of the rebate; round its edges there is the stated fit.
"""

from __future__ import annotations

from geometry.cuts.rebate import Rebate
from geometry.design.joint import Contact, Joint, Measure
from geometry.design.part import Part
from geometry.joints.marking import span
from geometry.joints.reference_faces import start_of
from geometry.primitives.frame import Vec3


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
) -> Joint:
    """Rebate the inside back arris of ``board`` for ``back``.

    ``along``: two bench points between which the rebate runs.  ``into`` is its depth from the
    board's face side, ``width`` its depth from the back edge, both in mm.  ``contact`` bounds the
    wall on which the sheet's inside face lies, in bench coordinates.
    """
    x_low, x_high = span(board, 0, *along)
    rebate = Rebate(x_low, x_high, 0.0, width, into)
    return Joint(
        name=name,
        kind="rebate",
        parts=(board.name, back.name),
        fit=fit,
        cuts_first=(rebate,),
        cuts_second=(),
        measures=(
            Measure("rebate_width", width, "mm", "from the back edge", (0,), board.frame.y_axis),
            Measure("rebate_depth", into, "mm", "below the inside face", (0,), board.frame.z_axis),
            Measure("rebate_length", x_high - x_low, "mm", "along the board"),
            *start_of(board, x_low, x_high, "rebate"),
        ),
        contacts=(Contact(contact, (0.0, 1.0, 0.0), 0.0),),
    )
