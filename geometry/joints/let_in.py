"""A post let into the edge of a board: a notch as wide as the post, and the post stands in it.

The notch is cut right through the board's thickness from its face edge; the post is not cut.
"""

from __future__ import annotations

from dataclasses import dataclass

from geometry.cuts.notch import Notch
from geometry.design.joint import FIRST, Contact, Joint, Measure
from geometry.design.part import Part
from geometry.joints.marking import span
from geometry.primitives.frame import X_AXIS, Y_AXIS, Vec3


@dataclass(frozen=True, slots=True)
class LetInNumbers:
    """In bench coordinates, mm.

    The post fills X from ``left`` to ``right`` and stands ``deep`` in front of the board's back
    edge, which lies in y = 0; ``low`` and ``high`` bound the height in which the edge is whole.
    ``fit`` widens the notch, both sides together.
    """

    left: float
    right: float
    deep: float
    low: float
    high: float
    fit: float


def let_in(name: str, board: Part, post: Part, at: LetInNumbers) -> Joint:
    """Notch ``board`` for ``post``."""
    half = at.fit / 2.0
    corner, inner = (at.left - half, 0.0, at.low), (at.right + half, -at.deep, at.low)
    x_low, x_high = span(board, 0, corner, inner)
    y_low, y_high = span(board, 1, corner, inner)
    return Joint(
        name=name,
        kind="let in",
        parts=(board.name, post.name),
        fit=at.fit,
        cuts_first=(Notch(x_low, x_high, y_low, y_high),),
        cuts_second=(),
        measures=(
            Measure(
                "notch_width",
                at.right - at.left + at.fit,
                "mm",
                "along the back edge",
                FIRST,
                X_AXIS,
            ),
            Measure("notch_depth", at.deep, "mm", "from the back edge", FIRST, Y_AXIS),
            Measure(
                "from_left_end",
                at.left - half,
                "mm",
                "notch from the bench's left end",
                FIRST,
                X_AXIS,
            ),
        ),
        contacts=_contacts(at),
    )


def _contacts(at: LetInNumbers) -> tuple[Contact, ...]:
    """The floor of the notch, and its left side."""
    wall = -at.deep
    floor: tuple[Vec3, ...] = (
        (at.left, wall, at.low),
        (at.right, wall, at.low),
        (at.right, wall, at.high),
        (at.left, wall, at.high),
    )
    side = at.left - at.fit / 2.0
    cheek: tuple[Vec3, ...] = (
        (side, 0.0, at.low),
        (side, wall, at.low),
        (side, wall, at.high),
        (side, 0.0, at.high),
    )
    return (
        Contact(floor, (0.0, 1.0, 0.0), 0.0),
        Contact(cheek, (1.0, 0.0, 0.0), at.fit / 2.0),
    )
