"""Dimensions and handholds of panel feet and the rail between them."""

from __future__ import annotations

from geometry.bench.bench import Bench
from geometry.bench.panel_numbers import PanelNumbers, panel_numbers
from geometry.dimensioning.dimension import Dimension
from geometry.dimensioning.making import BELOW, LEVEL, UPRIGHT, WITHIN, Place, bound, follows
from geometry.dimensioning.pull import Handhold, Pull
from geometry.views.bench_views import end_view
from geometry.views.view import FRONT, PLAN


def panel_dimensions(bench: Bench) -> tuple[Dimension, ...]:
    p = panel_numbers(bench.spec)
    return (*_front(bench, p), *_end(bench, p))


def _front(bench: Bench, p: PanelNumbers) -> list[Dimension]:
    inner, far = p.left + p.thickness, p.right - p.thickness
    low = p.rail_top - p.rail_height
    x, other = inner + 0.12 * (far - inner), inner + 0.3 * (far - inner)
    found = [
        bound(
            bench,
            "panel_thickness",
            Place(FRONT, (p.left, 0.0), (inner, 0.0), LEVEL, BELOW, 1),
        ),
        follows(
            bench, "panel_rail_between", Place(FRONT, (inner, low), (far, low), LEVEL, BELOW, 2)
        ),
        bound(
            bench,
            "panel_rail_height",
            Place(FRONT, (x, p.rail_top), (x, low), UPRIGHT, WITHIN, 1, -1.0),
        ),
    ]
    if p.height > p.rail_top:
        at = Place(FRONT, (other, p.height), (other, p.rail_top), UPRIGHT, WITHIN, 1, -1.0)
        found.append(bound(bench, "panel_rail_down", at))
    if p.middle is not None:
        at = Place(FRONT, (0.0, 0.0), (p.middle, 0.0), LEVEL, BELOW, 2)
        found.append(follows(bench, "panel_middle_place", at))
    return found


def _end(bench: Bench, p: PanelNumbers) -> list[Dimension]:
    view = end_view(bench)

    def seen(y: float, z: float) -> tuple[float, float]:
        return view.project((0.0, y, z))

    found = [
        follows(
            bench,
            "panel_foot_width",
            Place(view, seen(p.back, 0.0), seen(p.front, 0.0), LEVEL, BELOW, 2),
        )
    ]
    if p.relief > 0.0:
        middle = (p.back + p.front) / 2.0
        grows = 1.0 if seen(1.0, 0.0)[0] > 0.0 else -1.0
        found += [
            bound(
                bench,
                "panel_pad",
                Place(
                    view,
                    seen(p.front, p.ground),
                    seen(p.front + p.pad, p.ground),
                    LEVEL,
                    BELOW,
                    1,
                    grows,
                ),
            ),
            bound(
                bench,
                "panel_relief",
                Place(
                    view,
                    seen(middle, p.ground),
                    seen(middle, p.ground + p.relief),
                    UPRIGHT,
                    WITHIN,
                    1,
                ),
            ),
        ]
    return found


def panel_handholds(bench: Bench) -> tuple[Handhold, ...]:
    p = panel_numbers(bench.spec)
    view = end_view(bench)
    inner, far = p.left + p.thickness, p.right - p.thickness
    low = p.rail_top - p.rail_height
    found = [
        Handhold(FRONT.name, (inner, low), (far, low), Pull("panel_rail_height", (0.0, -1.0))),
        Handhold(
            FRONT.name, (inner, p.rail_top), (far, p.rail_top), Pull("panel_rail_down", (0, -1))
        ),
        Handhold(FRONT.name, (inner, 0.0), (inner, p.height), Pull("panel_thickness", (1.0, 0.0))),
        Handhold(FRONT.name, (far, 0.0), (far, p.height), Pull("panel_thickness", (-1.0, 0.0))),
    ]
    for way in (-1.0, 1.0):
        y = p.rail_middle + way * p.rail_thickness / 2.0
        thicker = Pull("panel_rail_thickness", (0.0, way), 2.0)
        found.append(Handhold(PLAN.name, (inner, y), (far, y), thicker))
    y = p.rail_middle
    found.append(Handhold(PLAN.name, (inner, y), (far, y), Pull("panel_rail_forward", (0.0, -1.0))))
    if p.middle is not None:
        moved = Pull("panel_middle", (1.0, 0.0))
        for x in (p.middle - p.thickness / 2.0, p.middle + p.thickness / 2.0):
            found.append(Handhold(FRONT.name, (x, 0.0), (x, p.height), moved))
    if p.relief > 0.0:
        start = view.project((0.0, p.back - p.pad, p.ground + p.relief))
        end = view.project((0.0, p.front + p.pad, p.ground + p.relief))
        found.append(Handhold(view.name, start, end, Pull("panel_relief", (0.0, 1.0))))
        for y, sign in ((p.back - p.pad, -1.0), (p.front + p.pad, 1.0)):
            a, b = view.project((0.0, y, p.ground)), view.project((0.0, y, p.ground + p.relief))
            found.append(
                Handhold(view.name, a, b, Pull("panel_pad", view.project((0.0, sign, 0.0))))
            )
    return tuple(found)
