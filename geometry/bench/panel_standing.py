"""How panel feet stand under a bench."""

from __future__ import annotations

from geometry.bench.panel_numbers import panel_numbers
from geometry.bench.standing import (
    CLEAR,
    CLEAR_OF_BORING,
    Bearer,
    FootPlace,
    Standing,
    Top,
)
from geometry.design.spec import BenchSpec


def _bearers(spec: BenchSpec, _inward_by: float) -> tuple[Bearer, ...]:
    """The outer panels, on both sides of the rail."""
    p = panel_numbers(spec)
    half_rail = p.rail_thickness / 2.0 + CLEAR
    found = []
    for side, x, sign in (
        ("left", p.left + p.thickness, 1.0),
        ("right", p.right - p.thickness, -1.0),
    ):
        next_x = (p.left + p.right) / 2.0
        if p.middle is not None:
            next_x = p.middle - sign * p.thickness / 2.0
        for fore, y, other in (
            ("back", p.back - CLEAR, p.rail_middle + half_rail),
            ("front", p.front + CLEAR, p.rail_middle - half_rail),
        ):
            way = -1.0 if fore == "back" else 1.0
            run = max(0.0, (other - y) * way)
            found.append(
                Bearer(
                    name=f"panel_foot_{side}_{fore}",
                    part=f"panel_foot_{side}",
                    start=(x, y, p.height),
                    end=(x, y + way * run, p.height),
                    along=(0.0, way, 0.0),
                    inward=(sign, 0.0, 0.0),
                    slope=0.0,
                    thickness=p.thickness,
                    height=p.height - p.ground - p.relief,
                    room=abs(next_x - x) - CLEAR,
                    solid=False,
                )
            )
    return tuple(found)


def _feet(spec: BenchSpec) -> tuple[FootPlace, ...]:
    p = panel_numbers(spec)
    half = p.thickness / 2.0
    panels = [("left", p.left + half), ("right", p.right - half)]
    if p.middle is not None:
        panels.insert(1, ("middle", p.middle))
    pad = p.pad if p.relief > 0.0 else min(2.0 * p.thickness, p.width / 3.0)
    under_rail = p.rail_top - p.rail_height - p.ground - CLEAR_OF_BORING
    whole = p.height - p.ground - 3.0 * CLEAR_OF_BORING
    near = (p.rail_thickness + spec.number("foot_insert")) / 2.0 + CLEAR_OF_BORING
    return tuple(
        FootPlace(
            name=f"{side}_{fore}",
            part=f"panel_foot_{side}",
            middle=(x, y, p.ground),
            inside=min(half, pad / 2.0),
            lean=0.0,
            free=under_rail if abs(y - p.rail_middle) < near else whole,
        )
        for side, x in panels
        for fore, y in (("back", p.back - pad / 2.0), ("front", p.front + pad / 2.0))
    )


def _tops(spec: BenchSpec) -> tuple[Top, ...]:
    p = panel_numbers(spec)
    return tuple(
        Top(f"panel_foot_{side}", f"the {side} panel foot", ((x, p.back), (x, p.front)))
        for side, x in (("left", p.left), ("right", p.right))
    )


_FEET_READ = (
    "inset_back inset_front panel_thickness panel_pad panel_relief panel_middle panel_count"
)
STANDING = Standing(_bearers, _feet, _FEET_READ, _tops)
