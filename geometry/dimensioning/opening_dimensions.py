"""Dimensions of openings, shelves and drawers, all within the front elevation.

They stand inside their opening where there is room for them, and are left out where there is
none: the story stick has them all.
"""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

from geometry.bench.bench import Bench
from geometry.bench.drawer_numbers import Drawer, drawers, fronts_of
from geometry.bench.openings import DRAWERS, SHELF, Opening, filled_with, openings
from geometry.bench.shelves import height_name, lip_of, set_back_name, shelf_front
from geometry.dimensioning.dimension import Dimension
from geometry.dimensioning.making import LEVEL, UPRIGHT, WITHIN, Place, bound, follows
from geometry.dimensioning.pull import Handhold, Pull
from geometry.views.view import FRONT, PLAN

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
    """The height of each shelf above the bottom, and in plan its depth, which its front sets."""
    found = []
    for at in filled_with(bench.spec, SHELF):
        name = height_name(at.index)
        x = at.x_left + _LEFTWARD * at.width
        high = at.z_low + bench.spec.number(name)
        place = Place(FRONT, (x, at.z_low), (x, high), UPRIGHT, WITHIN, 1)
        found.append(replace(bound(bench, name, place), room=_LEFTWARD * at.width))
        front, _, _ = shelf_front(bench.spec, at)
        start, end = (x, -at.back), (x, -front)
        deep = follows(
            bench, f"shelf_{at.index}_depth", Place(PLAN, start, end, UPRIGHT, WITHIN, 1, -1.0)
        )
        found.append(replace(deep, room=_LEFTWARD * at.width))
    return tuple(found)


def shelf_handholds(bench: Bench) -> tuple[Handhold, ...]:
    """The undersides of shelves, which move them, and their upper faces, which thicken them; in
    plan their front edges, and the joint behind a lipping."""
    lip, found = lip_of(bench.spec), []
    for at in filled_with(bench.spec, SHELF):
        front, low, high = shelf_front(bench.spec, at)
        rows = [
            (FRONT, low, height_name(at.index), 1.0),
            (FRONT, high, "shelf_thickness", 1.0),
            (PLAN, -front, set_back_name(at.index), 1.0),
        ]
        if lip > 0.0:
            rows.append((PLAN, lip - front, "shelf_lip", 1.0))
        found += [
            Handhold(view.name, (at.x_left, v), (at.x_right, v), Pull(name, (0.0, way)))
            for view, v, name, way in rows
        ]
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


def drawer_handholds(bench: Bench) -> tuple[Handhold, ...]:
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
                found.append(Handhold(FRONT.name, (upper.x_low, z), (upper.x_high, z), pull))
    return tuple(found)


def drawer_front_handholds(bench: Bench) -> tuple[Handhold, ...]:
    """The sides, top and bottom of fronts, by the gap round them or their lap; in plan their
    thickness, which overlay fronts take toward the sitter and inset ones toward the back."""
    fronts, found = fronts_of(bench.spec), []
    for at in filled_with(bench.spec, DRAWERS):
        stack = _stack(bench, at)
        top, low = stack[0].z_high, stack[-1].z_low
        left, right = stack[0].x_low, stack[0].x_high
        for x, way, over in ((left, 1.0, left < at.x_left), (right, -1.0, right > at.x_right)):
            pull = Pull("drawer_lap", (-way, 0.0)) if over else Pull("drawer_gap", (way, 0.0))
            found.append(Handhold(FRONT.name, (x, low), (x, top), pull))
        for z, way in ((top, -1.0), (low, 1.0)):
            found.append(
                Handhold(FRONT.name, (left, z), (right, z), Pull("drawer_gap", (0.0, way)))
            )
        y, way = (-stack[0].face, -1.0) if fronts.overlay else (fronts.thickness - at.front, 1.0)
        thicker = Pull("drawer_front_thickness", (0.0, way))
        found.append(Handhold(PLAN.name, (left, y), (right, y), thicker))
    return tuple(found)


def _stack(bench: Bench, at: Opening) -> list[Drawer]:
    """The drawers of an opening, from the top down."""
    return [drawer for drawer in drawers(bench.spec) if drawer.opening.index == at.index]
