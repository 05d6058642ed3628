"""Placed dimensions as marks on the sheet, and as places to point at.

Input about the view's origin, output in sheet mm.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from geometry.dimensioning.placed import Arrow, Placed, PlacedDimension
from geometry.drawing.marks import Anchor, Arc, Fill, Label, Mark, Role, Strokes
from geometry.drawing.text_box import Line
from geometry.primitives.frame import Vec2

ARROW_LENGTH = 3.0
_ARROW_HALF_WIDTH = 0.4  # mm; a slim closed arrowhead, about 15 degrees


@dataclass(frozen=True, slots=True)
class Target:
    """Where a dimension can be pointed at, in sheet mm.

    ``name`` is the dimension's; ``text_corners`` run counter-clockwise round its text, ``line`` is
    the dimension line, or the chord of its arc.
    """

    name: str
    text_corners: tuple[Vec2, Vec2, Vec2, Vec2]
    line: Line


def owner_of(name: str) -> str:
    """The owner that the marks of a dimension carry."""
    return f"dimension:{name}"


def dimension_marks(placed: Placed, origin: Vec2) -> tuple[Mark, ...]:
    """Lines (one mark a role), then arcs, arrowheads and texts, each with its owner."""
    marks: list[Mark] = []
    for role in (Role.DERIVED, Role.DIMENSION):
        group = [one for one in placed.dimensions if one.role is role]
        segments = [line for one in group for line in one.lines]
        if segments:
            owner_of_line = [i for i, one in enumerate(group) for _ in one.lines]
            marks.append(
                Strokes(
                    role,
                    np.array(segments, dtype=np.float64) + np.array(origin * 2),
                    owners=tuple(owner_of(one.name) for one in group),
                    owner_of=np.array(owner_of_line, dtype=np.intp),
                )
            )
    for one in placed.dimensions:
        marks.extend(_details(one, origin, placed.text_height))
    return tuple(marks)


def targets(placed: Placed, origin: Vec2) -> tuple[Target, ...]:
    """The hit boxes of the dimensions, in sheet mm."""
    ox, oy = origin
    found: list[Target] = []
    for one in placed.dimensions:
        a, b, c, d = ((x + ox, y + oy) for x, y in one.box.corners())
        x0, y0, x1, y1 = one.line
        found.append(Target(one.name, (a, b, c, d), (x0 + ox, y0 + oy, x1 + ox, y1 + oy)))
    return tuple(found)


def arrowhead(tip: Vec2, pointing: Vec2) -> tuple[Vec2, Vec2, Vec2]:
    """The three corners of an arrowhead."""
    (x, y), (dx, dy) = tip, pointing
    bx, by = x - dx * ARROW_LENGTH, y - dy * ARROW_LENGTH
    wx, wy = -dy * _ARROW_HALF_WIDTH, dx * _ARROW_HALF_WIDTH
    return ((x, y), (bx + wx, by + wy), (bx - wx, by - wy))


def _details(one: PlacedDimension, origin: Vec2, height: float) -> list[Mark]:
    ox, oy = origin
    owner = owner_of(one.name)
    marks: list[Mark] = [
        Arc(
            one.role,
            (sweep.centre[0] + ox, sweep.centre[1] + oy),
            sweep.radius,
            sweep.start_deg,
            sweep.end_deg,
            owner,
        )
        for sweep in one.sweeps
    ]
    marks += [_fill(arrow, one.role, origin, owner) for arrow in one.arrows]
    x, y = one.box.baseline_middle(height)
    turn = _turn_deg(one)
    marks.append(
        Label(one.role, one.text, (x + ox, y + oy), height, Anchor.MIDDLE, turn, owner=owner)
    )
    return marks


def _fill(arrow: Arrow, role: Role, origin: Vec2, owner: str) -> Fill:
    ox, oy = origin
    tip = (arrow.tip[0] + ox, arrow.tip[1] + oy)
    return Fill(role, arrowhead(tip, arrow.pointing), owner)


def _turn_deg(one: PlacedDimension) -> float:
    if one.box.sin == 0.0:
        return 0.0
    if one.box.cos == 0.0:
        return 90.0
    return float(np.degrees(np.arctan2(one.box.sin, one.box.cos)))
