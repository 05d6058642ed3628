"""Dimensions and handholds of a panel bench: its ends, and the rail between them."""

from __future__ import annotations

from geometry.bench.bench import Bench
from geometry.bench.panel_ends_numbers import HOUSED, LEFT, PanelEnds, panel_ends
from geometry.bench.seat_rail_numbers import seat_rail
from geometry.dimensioning.dimension import Dimension
from geometry.dimensioning.making import (
    BELOW,
    LEVEL,
    UPRIGHT,
    WITHIN,
    Place,
    bound,
    follows,
)
from geometry.dimensioning.pull import Handhold, Pull
from geometry.primitives.frame import Vec2
from geometry.views.bench_views import end_view
from geometry.views.view import FRONT, PLAN

_ACROSS = (0.12, 0.3)  # of the way between the ends: where the rail's sizes stand


def end_dimensions(bench: Bench) -> tuple[Dimension, ...]:
    n = panel_ends(bench.spec)
    return (*_front(bench, n), *_end(bench, n))


def _front(bench: Bench, n: PanelEnds) -> list[Dimension]:
    left, right = n.left, n.right
    found = [
        bound(
            bench,
            "end_thickness",
            Place(FRONT, (left.outside, 0.0), (left.inside, 0.0), LEVEL, BELOW, 1),
        ),
        follows(
            bench,
            "between_ends",
            Place(FRONT, (left.inside, 0.0), (right.inside, 0.0), LEVEL, BELOW, 2),
        ),
    ]
    for end, start, grows in ((left, 0.0, 1.0), (right, n.length, -1.0)):
        if end.joint == HOUSED:
            z = n.underside
            at = Place(FRONT, (start, z), (end.outside, z), LEVEL, BELOW, 1, grows)
            found.append(bound(bench, f"{end.side}_end_in", at))
    return found


def _end(bench: Bench, n: PanelEnds) -> list[Dimension]:
    view = end_view(bench)

    def seen(forward: float, z: float) -> Vec2:
        return view.project((0.0, -forward, z))

    toward_back = 1.0 if seen(0.0, 0.0)[0] > seen(1.0, 0.0)[0] else -1.0
    shown = n.right
    found: list[Dimension] = []
    if n.relief > 0.0:
        found += [
            bound(
                bench,
                "end_pad",
                Place(view, seen(0.0, 0.0), seen(n.pad, 0.0), LEVEL, BELOW, 1, -toward_back),
            ),
            bound(
                bench,
                "end_relief",
                Place(
                    view,
                    seen(shown.front / 3.0, 0.0),
                    seen(shown.front / 3.0, n.relief),
                    UPRIGHT,
                    WITHIN,
                    1,
                ),
            ),
        ]
    reveal = bench.spec.number("end_reveal")
    if any(end.joint == HOUSED for end in n.ends) and reveal > 0.0:
        at = Place(
            view,
            seen(n.depth, n.underside),
            seen(n.depth - reveal, n.underside),
            LEVEL,
            BELOW,
            1,
            toward_back,
        )
        found.append(bound(bench, "end_reveal", at))
    return found


def end_handholds(bench: Bench) -> tuple[Handhold, ...]:
    n = panel_ends(bench.spec)
    found: list[Handhold] = []
    for end in n.ends:
        inward = 1.0 if end.side == LEFT else -1.0
        low, high = (end.inside, 0.0), (end.inside, n.underside)
        found.append(Handhold(FRONT.name, low, high, Pull("end_thickness", (inward, 0.0))))
        if end.joint == HOUSED:
            low, high = (end.outside, 0.0), (end.outside, n.underside)
            found.append(Handhold(FRONT.name, low, high, Pull(f"{end.side}_end_in", (inward, 0.0))))
    return (*found, *_end_handholds(bench, n))


def _end_handholds(bench: Bench, n: PanelEnds) -> list[Handhold]:
    """What is taken hold of in the end elevation, which shows the right end."""
    view = end_view(bench)

    def seen(forward: float, z: float) -> Vec2:
        return view.project((0.0, -forward, z))

    front = n.right.front
    found: list[Handhold] = []
    if n.relief > 0.0:
        start, end = seen(n.pad, n.relief), seen(front - n.pad, n.relief)
        found.append(Handhold(view.name, start, end, Pull("end_relief", (0.0, 1.0))))
        for forward, sign in ((n.pad, 1.0), (front - n.pad, -1.0)):
            low, high = seen(forward, 0.0), seen(forward, n.relief)
            found.append(Handhold(view.name, low, high, Pull("end_pad", seen(sign, 0.0))))
    if n.right.joint == HOUSED:
        low, high = seen(front, 0.0), seen(front, n.underside)
        found.append(Handhold(view.name, low, high, Pull("end_reveal", seen(-1.0, 0.0))))
    return found


def panel_lipping_handholds(bench: Bench) -> tuple[Handhold, ...]:
    """The joints behind the lippings of a seat of sheet, seen from above."""
    n = panel_ends(bench.spec)
    left, right = n.seat_ends
    front = n.lip - n.depth
    found = [Handhold(PLAN.name, (left, front), (right, front), Pull("panel_lip", (0.0, 1.0)))]
    if n.back_lip > 0.0:
        y = 0.0 - n.back_lip
        found.append(Handhold(PLAN.name, (left, y), (right, y), Pull("panel_lip", (0.0, -1.0))))
    return tuple(found)


def rail_dimensions(bench: Bench) -> tuple[Dimension, ...]:
    r = seat_rail(bench.spec)
    left, right = r.inside
    x, other = (left + share * (right - left) for share in _ACROSS)
    low = r.top - r.height
    view = end_view(bench)
    edge = view.project((0.0, -(r.front + r.set_back), low))
    face = view.project((0.0, -r.front, low))
    toward_back = 1.0 if face[0] > edge[0] else -1.0
    found = [
        bound(
            bench,
            "seat_rail_height",
            Place(FRONT, (x, r.top), (x, low), UPRIGHT, WITHIN, 1, -1.0),
        ),
        bound(bench, "seat_rail_back", Place(view, edge, face, LEVEL, WITHIN, 1, toward_back)),
    ]
    if r.down > 0.0:
        at = Place(FRONT, (other, r.underside), (other, r.top), UPRIGHT, WITHIN, 1, -1.0)
        found.append(bound(bench, "seat_rail_down", at))
    return tuple(found)


def rail_handholds(bench: Bench) -> tuple[Handhold, ...]:
    r = seat_rail(bench.spec)
    (left, right), low = r.inside, r.top - r.height
    behind = r.thickness - r.front
    found = [
        Handhold(FRONT.name, (left, low), (right, low), Pull("seat_rail_height", (0.0, -1.0))),
        Handhold(
            PLAN.name, (left, behind), (right, behind), Pull("seat_rail_thickness", (0.0, 1.0))
        ),
        Handhold(
            PLAN.name, (left, -r.front), (right, -r.front), Pull("seat_rail_back", (0.0, 1.0))
        ),
    ]
    if r.down > 0.0:
        pull = Pull("seat_rail_down", (0.0, -1.0))
        found.append(Handhold(FRONT.name, (left, r.top), (right, r.top), pull))
    return tuple(found)
