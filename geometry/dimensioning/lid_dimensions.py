"""Dimensions and handholds of a storage box and its lid; the arc of its opening in the end view."""

from __future__ import annotations

import math

from geometry.bench.bench import Bench
from geometry.bench.lid import lid_back_lip, lid_end_lip, lid_lip
from geometry.bench.lid_box_numbers import LidBox, lid_box
from geometry.bench.lid_stay import on_lid, stay_numbers
from geometry.bench.lid_swing import turned
from geometry.dimensioning.dimension import Dimension
from geometry.dimensioning.making import (
    LEFT_OF,
    LEVEL,
    RIGHT_OF,
    UPRIGHT,
    WITHIN,
    Place,
    bound,
)
from geometry.dimensioning.pull import Handhold, Pull
from geometry.primitives.frame import Vec2
from geometry.views.bench_views import end_view
from geometry.views.view import FRONT, PLAN, View


def lid_dimensions(bench: Bench) -> tuple[Dimension, ...]:
    b, view = lid_box(bench.spec), end_view(bench)
    x = b.length
    found = [
        bound(bench, "box_height", Place(FRONT, (x, b.floor), (x, b.top), UPRIGHT, RIGHT_OF, 1)),
        bound(
            bench,
            "lid_thickness",
            Place(FRONT, (-b.over_ends, b.top), (-b.over_ends, b.rim), UPRIGHT, LEFT_OF, 1, -1.0),
        ),
        bound(bench, "depth", Place(PLAN, (x, 0.0), (x, -b.depth), UPRIGHT, RIGHT_OF, 2, -1.0)),
        _opening(b, view),
    ]
    if b.over_front > 0.0:
        start, end = (x, -b.depth), (x, b.lid_front)
        found.append(bound(bench, "lid_front", Place(PLAN, start, end, UPRIGHT, RIGHT_OF, 1, -1.0)))
    if b.has_strip:
        start, end = (0.0, 0.0), (0.0, -b.strip)
        found.append(bound(bench, "lid_strip", Place(PLAN, start, end, UPRIGHT, LEFT_OF, 1, -1.0)))
    if b.notch_width > 0.0:
        left, right = _notch(b)
        at = Place(
            FRONT, (left, b.rim - b.notch_depth), (right, b.rim - b.notch_depth), LEVEL, 0, 1
        )
        found.append(bound(bench, "lid_notch_width", at))
    return tuple(found)


def _notch(b: LidBox) -> tuple[float, float]:
    return (b.length - b.notch_width) / 2.0, (b.length + b.notch_width) / 2.0


def _opening(b: LidBox, view: View) -> Dimension:
    """From the closed lid's front edge to the open one's, about the pins."""
    pin_y, pin_z = b.pin_place
    reach = pin_y - b.lid_front
    y, z = turned((-reach, 0.0), b.opening_deg)

    def seen(point: Vec2) -> Vec2:
        return view.project((0.0, point[0], point[1]))

    return Dimension(
        name="lid_opening",
        title="Lid opens to",
        view=view.name,
        value=b.opening_deg,
        unit="deg",
        start=seen((pin_y - reach, pin_z)),
        end=seen((pin_y + y, pin_z + z)),
        along=LEVEL,
        side=WITHIN,
        rank=1,
        parameter="lid_opening",
        apex=seen((pin_y, pin_z)),
        pull=Pull("lid_opening", view.project((0.0, 1.0, 0.0)), math.degrees(1.0 / reach)),
    )


def lid_handholds(bench: Bench) -> tuple[Handhold, ...]:
    b, view = lid_box(bench.spec), end_view(bench)
    left, right = -b.over_ends, b.length + b.over_ends
    forward, deeper = (0.0, -1.0), view.project((0.0, -1.0, 0.0))
    low, high = view.project((0.0, -b.depth, b.floor)), view.project((0.0, -b.depth, b.rim))
    found = [
        Handhold(FRONT.name, (left, b.rim), (right, b.rim), Pull("lid_thickness", forward)),
        Handhold(FRONT.name, (left, b.top), (right, b.top), Pull("box_height", (0.0, 1.0))),
        Handhold(PLAN.name, (left, b.lid_front), (right, b.lid_front), Pull("lid_front", forward)),
        Handhold(view.name, low, high, Pull("depth", deeper)),
    ]
    for x, way in ((b.thickness, 1.0), (b.length - b.thickness, -1.0)):
        # The insides of the end walls, below the lid.
        inside = ((x, -b.thickness), (x, b.thickness - b.depth))
        found.append(Handhold(PLAN.name, *inside, Pull("box_thickness", (way, 0.0))))
    if b.has_strip:
        strip = Handhold(PLAN.name, (left, -b.strip), (right, -b.strip), Pull("lid_strip", forward))
        found.append(strip)
    lip = lid_lip(bench.spec)
    if lip > 0.0:
        y = b.lid_front + lip
        found.append(Handhold(PLAN.name, (left, y), (right, y), Pull("lid_lip", (0.0, 1.0))))
        found += _lid_lippings(bench, left, right)
    if b.notch_width > 0.0:
        for x, way in zip(_notch(b), (-1.0, 1.0), strict=True):
            wider = Pull("lid_notch_width", (way, 0.0), 2.0)
            found.append(Handhold(FRONT.name, (x, b.rim - b.notch_depth), (x, b.rim), wider))
    for x, way in ((left, -1.0), (right, 1.0)):
        found.append(Handhold(FRONT.name, (x, b.rim), (x, b.top), Pull("lid_ends", (way, 0.0))))
    return tuple(found)


def _lid_lippings(bench: Bench, left: float, right: float) -> list[Handhold]:
    """The joints of the lippings on the lid's back edge and its ends."""
    b, found = lid_box(bench.spec), []
    back, ends = lid_back_lip(bench.spec), lid_end_lip(bench.spec)
    if back > 0.0:
        y = b.lid_back - back
        found.append(Handhold(PLAN.name, (left, y), (right, y), Pull("lid_lip", (0.0, -1.0))))
    for x, way in ((left + ends, 1.0), (right - ends, -1.0)) if ends > 0.0 else ():
        across = ((x, b.lid_back - back), (x, b.lid_front + ends))
        found.append(Handhold(PLAN.name, *across, Pull("lid_lip", (way, 0.0))))
    return found


def lid_inside_handholds(bench: Bench) -> tuple[Handhold, ...]:
    """What lies under the lid or close beside its edges: the notch's floor, the bottom, the gap at
    the strip, the outer hinges' ends, and the stay's two ends."""
    b, view = lid_box(bench.spec), end_view(bench)
    left, right = -b.over_ends, b.length + b.over_ends
    found = []
    pin_y, pin_z = b.pin_place
    y, z = turned(on_lid(b), b.opening_deg)
    in_box = view.project((0.0, -stay_numbers(b).from_back, b.rim - b.stay_down))
    open_lid = view.project((0.0, pin_y + y, pin_z + z))
    along = turned((-1.0, 0.0), b.opening_deg)
    found += [
        Handhold(view.name, in_box, in_box, Pull("stay_down", (0.0, -1.0))),
        Handhold(
            view.name,
            open_lid,
            open_lid,
            Pull("stay_on_lid", view.project((0.0, along[0], along[1]))),
        ),
    ]
    if b.notch_width > 0.0:
        (low, high), z = _notch(b), b.rim - b.notch_depth
        found.append(
            Handhold(FRONT.name, (low, z), (high, z), Pull("lid_notch_depth", (0.0, -1.0)))
        )
    floor = b.floor + b.bottom
    found.append(
        Handhold(
            FRONT.name,
            (b.thickness, floor),
            (b.length - b.thickness, floor),
            Pull("box_bottom_thickness", (0.0, 1.0)),
        )
    )
    starts = b.hinge_starts()
    for x, way in ((starts[0], 1.0), (starts[-1] + b.hinge_length, -1.0)):
        # A leaf in the lid's edge hangs down in the front view, one in its underside lies in plan.
        hinge = (
            (FRONT, (x, b.top), (x, b.top - b.hinge_leaf))
            if b.has_strip
            else (PLAN, (x, 0.0), (x, -b.hinge_leaf))
        )
        shown, start, end = hinge
        found.append(Handhold(shown.name, start, end, Pull("hinge_in", (way, 0.0))))
    if b.has_strip:
        gap = Pull("lid_gap", (0.0, -1.0))
        found.append(Handhold(PLAN.name, (left, b.lid_back), (right, b.lid_back), gap))
    return tuple(found)
