"""Dimensions of openings, shelves and drawers, all within the front elevation.

They stand inside their opening where there is room for them, and are left out where there is
none: the story stick has them all.
"""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

from geometry.bench.bench import Bench
from geometry.bench.drawer_numbers import Drawer, drawers
from geometry.bench.openings import DRAWERS, SHELF, Opening, filled_with, openings
from geometry.bench.shelves import height_name
from geometry.dimensioning.dimension import Dimension
from geometry.dimensioning.making import LEVEL, UPRIGHT, WITHIN, Place, bound, follows
from geometry.dimensioning.pull import Grip, Pull
from geometry.views.view import FRONT

# Of an opening's width, from its left side: where upright dimensions stand.
_LEFTWARD = 0.2


def opening_dimensions(bench: Bench) -> tuple[Dimension, ...]:
    """The clear width of each opening."""
    return tuple(_width(bench, at) for at in openings(bench.spec))


def _width(bench: Bench, at: Opening) -> Dimension:
    low, high = at.z_low, at.z_high
    if at.fill == SHELF:
        under = bench.spec.number(height_name(at.index))
        top = at.z_low + under + bench.spec.number("shelf_thickness")
        low, high = (low, low + under) if under > high - top else (top, high)
    elif at.fill == DRAWERS:
        lowest = [d for d in drawers(bench.spec) if d.opening.index == at.index][-1]
        low, high = lowest.z_low, lowest.z_high
    level = (low + high) / 2.0
    place = Place(FRONT, (at.x_left, level), (at.x_right, level), LEVEL, WITHIN, 1)
    return replace(follows(bench, f"opening_{at.index}_width", place), room=(high - low) / 2.0)


def shelf_dimensions(bench: Bench) -> tuple[Dimension, ...]:
    """The height of each shelf above the bottom."""
    found = []
    for at in filled_with(bench.spec, SHELF):
        name = height_name(at.index)
        x = at.x_left + _LEFTWARD * at.width
        high = at.z_low + bench.spec.number(name)
        place = Place(FRONT, (x, at.z_low), (x, high), UPRIGHT, WITHIN, 1)
        found.append(replace(bound(bench, name, place), room=_LEFTWARD * at.width))
    return tuple(found)


def shelf_grips(bench: Bench) -> tuple[Grip, ...]:
    """The front edges of shelves."""
    thickness = bench.spec.number("shelf_thickness")
    found = []
    for at in filled_with(bench.spec, SHELF):
        name = height_name(at.index)
        low = at.z_low + bench.spec.number(name)
        pull = Pull(name, (0.0, 1.0))
        for z in (low, low + thickness):
            found.append(Grip(FRONT.name, (at.x_left, z), (at.x_right, z), pull))
    return tuple(found)


def drawer_dimensions(bench: Bench) -> tuple[Dimension, ...]:
    """The heights of fronts, once for openings that are divided alike."""
    seen: set[tuple[float, ...]] = set()
    found = []
    for at in filled_with(bench.spec, DRAWERS):
        stack = _stack(bench, at)
        heights = tuple(drawer.front_height for drawer in stack)
        if heights not in seen:
            seen.add(heights)
            found += [_front_height(bench, drawer) for drawer in stack]
    return tuple(found)


def _front_height(bench: Bench, drawer: Drawer) -> Dimension:
    x = drawer.x_low + _LEFTWARD * drawer.front_width
    place = Place(FRONT, (x, drawer.z_low), (x, drawer.z_high), UPRIGHT, WITHIN, 1)
    room = _LEFTWARD * drawer.front_width
    return replace(follows(bench, f"{drawer.name}_front_height", place), room=room)


def drawer_grips(bench: Bench) -> tuple[Grip, ...]:
    """The edges between fronts: they move with the graduation.

    Of n fronts, each the step s taller than the one above, the first i together are
    i h - s i (n - i) / 2 high, where h is the height of equal ones.  So the edge below the i-th
    rises by i (n - i) / 2 for each mm of step.
    """
    found = []
    for at in filled_with(bench.spec, DRAWERS):
        stack = _stack(bench, at)
        count = len(stack)
        for i, (upper, lower) in enumerate(pairwise(stack), 1):
            pull = Pull(f"opening_{at.index}_step", (0.0, 1.0), gain=2.0 / (i * (count - i)))
            for z in (upper.z_low, lower.z_high):
                found.append(Grip(FRONT.name, (upper.x_low, z), (upper.x_high, z), pull))
    return tuple(found)


def _stack(bench: Bench, at: Opening) -> list[Drawer]:
    """The drawers of an opening, from the top down."""
    return [drawer for drawer in drawers(bench.spec) if drawer.opening.index == at.index]
