"""How the plane of a section is seen, how far it reaches, and where it stands in words.

Frame and units: bench coordinates, mm, degrees.

A plane stands square to one of the views, its key view, in which it is a line that can be pulled
and turned.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

import numpy as np

from geometry.bench.bench import Bench
from geometry.design.cutting_plane import NORMAL, TOWARD, Plane, Way, half_turn, normal_of
from geometry.primitives.frame import Vec2, Vec3, add, dot, scale
from geometry.solids.cutting import placed
from geometry.views.bench_views import end_view
from geometry.views.view import FRONT, PLAN, View
from shared.units import angle_mark, length_mark

_ROUNDING = 1e-6  # mm


def key_view_of(bench: Bench, way: Way) -> View:
    """The view in which the plane is a line."""
    if way is Way.ALONG:
        return end_view(bench)
    return PLAN if way is Way.ASKEW else FRONT


def view_of(bench: Bench, way: Way, turn: float) -> View:
    """The view square at the plane: an elevation or the plan, turned with it about the direction of
    its key view."""
    base = {
        Way.ACROSS: end_view(bench),
        Way.ALONG: FRONT,
        Way.LEVEL: PLAN,
        Way.ASKEW: FRONT,
    }[way]
    if turn == 0.0:
        return base
    return View(
        "section",
        _turned(way, turn, base.right),
        _turned(way, turn, base.up),
        _turned(way, turn, base.toward),
    )


def _turned(way: Way, turn: float, direction: Vec3) -> Vec3:
    """Rotated so that the plane's unturned normal becomes its turned one."""
    normal, toward = NORMAL[way], TOWARD[way]
    a, b = dot(direction, normal), dot(direction, toward)
    cos, sin = math.cos(math.radians(turn)), math.sin(math.radians(turn))
    moved = add(
        scale(normal, a * cos - b * sin - a),
        scale(toward, a * sin + b * cos - b),
    )
    return add(direction, moved)


def reach_of(bench: Bench, way: Way, turn: float = 0.0) -> tuple[float, float]:
    """From where to where a plane so turned meets the bench."""
    normal = np.array(normal_of(way, turn))
    heights = [placed(part).vertices @ normal for part in bench.parts]
    return float(min(h.min() for h in heights)), float(max(h.max() for h in heights))


def turn_of_line(way: Way, view: View, run: Vec2) -> float:
    """How a plane is turned whose line in its key view has the direction ``run``."""
    across = add(scale(view.right, -run[1]), scale(view.up, run[0]))
    return half_turn(math.degrees(math.atan2(dot(across, TOWARD[way]), dot(across, NORMAL[way]))))


@dataclass(frozen=True, slots=True)
class Standing:
    """Where a plane stands: its manner in words, and how far it is from something of the bench.

    ``size`` is in mm, less than nothing ``beyond`` it; it changes by ``slope`` for a mm along the
    plane's normal.
    """

    manner: str
    size: float
    on: str
    beyond: str
    slope: float

    @property
    def words(self) -> str:
        """With lengths and angles as marks."""
        where = self.on if self.size >= -_ROUNDING else self.beyond
        return f"{self.manner} {length_mark(abs(self.size))} {where}"


def told(bench: Bench, plane: Plane) -> str:
    """Where the plane stands, in words, with lengths and angles as marks."""
    return standing_of(bench, plane).words


def standing_at(bench: Bench, plane: Plane, size: float) -> Plane:
    """The plane where its words tell of another size, measured from the same thing."""
    standing = standing_of(bench, plane)
    return replace(plane, at=plane.at + (size - standing.size) / standing.slope)


def standing_of(bench: Bench, plane: Plane) -> Standing:
    """What the plane's place is measured from."""
    left, right = reach_of(bench, Way.ACROSS)
    front, back = reach_of(bench, Way.ALONG)
    nx, ny, nz = plane.normal
    if plane.way is Way.ASKEW:
        return _askew(plane, (left, right), (front, back))
    if plane.turn:
        if plane.way is Way.ALONG:
            return _turned_standing(_Ends(back, front, *_BACK_TO_FRONT), (-ny, nz, plane.at), -1.0)
        return _turned_standing(_Ends(left, right, *_LEFT_TO_RIGHT), (nx, nz, plane.at), 1.0)
    if plane.way is Way.ACROSS:
        return Standing("Cut across,", plane.at - left, *_FROM_LEFT, 1.0)
    if plane.way is Way.ALONG:
        return Standing("Cut along,", back - plane.at, *_FROM_BACK, -1.0)
    return Standing("Cut level,", plane.at, *_FROM_FLOOR, 1.0)


@dataclass(frozen=True, slots=True)
class _Ends:
    """What a leaning plane is measured from: where the bench begins and ends along its key view,
    and the words for that and for either way a plane may lean."""

    first: float
    last: float
    at_first: str
    at_last: str
    towards: str
    away: str
    on: str
    beyond: str


_FROM_LEFT = ("from the left end", "beyond the left end")
_FROM_BACK = ("in front of the back", "behind the back")
_FROM_FLOOR = ("above the floor", "below the floor")
_LEFT_TO_RIGHT = ("left end", "right end", "to the left", "to the right", *_FROM_LEFT)
_BACK_TO_FRONT = ("back", "front", "backward", "forward", *_FROM_BACK)


def _turned_standing(ends: _Ends, plane: tuple[float, float, float], way: float) -> Standing:
    """A plane that leans: where it meets the floor; one that slopes: how high it is at an end.

    ``plane`` is how far its normal leads away from the first end and up, and where it stands;
    ``way`` is +1 where coordinates grow away from the first end, else -1.
    """
    out, up, at = plane
    if abs(out) >= abs(up):
        angle = angle_mark(math.degrees(math.atan(abs(up / out))))
        lean = ends.towards if out * up > 0.0 else ends.away
        meets = (at / (way * out) - ends.first) * way
        manner = f"Cut leaning {angle} {lean}, on the floor"
        return Standing(manner, meets, ends.on, ends.beyond, 1.0 / out)
    angle = angle_mark(math.degrees(math.atan(abs(out / up))))
    falls = ends.towards if out * up < 0.0 else ends.away
    heights = [(at - way * out * end) / up for end in (ends.first, ends.last)]
    place = 0 if heights[0] >= 0.0 else 1
    manner = f"Cut falling {angle} {falls}, at the {(ends.at_first, ends.at_last)[place]}"
    return Standing(manner, heights[place], *_FROM_FLOOR, 1.0 / up)


def _askew(plane: Plane, along: Vec2, deep: Vec2) -> Standing:
    """By where it meets an end of the bench, or else its back."""
    nx, ny, _ = plane.normal
    angle = angle_mark(math.degrees(math.atan2(abs(nx), abs(ny))))
    cut = f"Cut upright at {angle} to the length"
    front, back = deep
    for end, words in zip(along, ("left end", "right end"), strict=True):
        if ny and front <= (meets := (plane.at - nx * end) / ny) <= back:
            return Standing(f"{cut}, at the {words}", back - meets, *_FROM_BACK, -1.0 / ny)
    meets = (plane.at - ny * back) / nx - along[0]
    return Standing(f"{cut}, at the back", meets, *_FROM_LEFT, 1.0 / nx)
