"""Marking out: what is known in bench coordinates, as it lies on a part."""

from __future__ import annotations

from geometry.cuts.mortise import Corners
from geometry.cuts.saw import SawCut
from geometry.design.part import Part
from geometry.primitives.frame import Vec3


def called(part: Part) -> str:
    """What a maker calls a part in a sentence: ``top rail`` for ``Top rail, bay 1``, ``slat`` for
    ``Slat 3``."""
    return part.title.split(",")[0].rstrip(" 0123456789").lower()


def saw_cut(part: Part, title: str, point: Vec3, outward: Vec3) -> SawCut:
    """The saw cut on ``part`` along a plane given in bench coordinates."""
    return SawCut(title, part.frame.to_local(point), part.frame.turn_to_local(outward))


def span(part: Part, axis: int, first: Vec3, second: Vec3) -> tuple[float, float]:
    """The range of one local coordinate between two bench points, low first.

    Rounded far below anything that can be marked, so that pieces which are meant to be alike come
    out equal wherever they stand.
    """
    a = part.frame.to_local(first)[axis]
    b = part.frame.to_local(second)[axis]
    return (round(min(a, b), 9), round(max(a, b), 9))


def corners_on(part: Part, corners: Corners) -> Corners:
    """Four bench points in the part's own frame."""
    a, b, c, d = (part.frame.to_local(corner) for corner in corners)
    return (a, b, c, d)
