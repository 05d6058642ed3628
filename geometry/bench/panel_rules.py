"""What panel feet and their rail must leave room for."""

from __future__ import annotations

from geometry.bench import feet_numbers
from geometry.bench.constraint import Constraint, rule
from geometry.bench.panel_numbers import PanelNumbers, panel_numbers
from geometry.design.spec import BenchSpec

LEAST_WALL = 10.0  # mm of panel above, below and beside a mortise; common practice, no source


def _mortise_walls(spec: BenchSpec) -> float:
    """The least wood above the mortises, beside them, and between them and the relief."""
    p = panel_numbers(spec)
    half = p.tenon_height / 2.0 + p.wedge_room
    if p.middle is not None:
        half = max(half, p.rail_height / 2.0)
    above = p.height - (p.rail_level + half)
    below = p.rail_level - half - p.relief - p.ground
    cheek = (p.rail_thickness if p.middle is not None else p.tenon_thickness) / 2.0
    beside = min(p.back - p.rail_middle, p.rail_middle - p.front) - cheek - p.fit / 2.0
    return min(above, below, beside) - LEAST_WALL


def _rail_within(p: PanelNumbers) -> float:
    """How far the rail keeps inside the panels' edges."""
    half = p.rail_thickness / 2.0
    return min(p.back - p.rail_middle, p.rail_middle - p.front) - half


def _clear_between(spec: BenchSpec) -> float:
    """The rail's shortest clear stretch, less what it must have."""
    p = panel_numbers(spec)
    if p.middle is None:
        return p.between - 40.0
    half = p.thickness / 2.0
    return (
        min(p.middle - half - (p.left + p.thickness), p.right - p.thickness - (p.middle + half))
        - 40.0
    )


_RAIL = (
    "base_height panel_count panel_relief panel_rail_height panel_rail_down panel_shoulder "
    "panel_tenon panel_wedge panel_tenon_thickness panel_rail_thickness panel_rail_forward "
    f"panel_fit depth inset_back inset_front {feet_numbers.READS}"
)

CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "panel_apart",
        "length inset_left inset_right panel_thickness panel_count panel_middle",
        _clear_between,
        "the panels would stand less than {40 mm} apart",
    ),
    rule(
        "panel_mortise",
        _RAIL,
        _mortise_walls,
        "the rail's mortise would leave less than {10 mm} of a panel",
    ),
    rule(
        "panel_rail_low",
        "base_height panel_relief panel_rail_height panel_rail_down",
        lambda s: (
            panel_numbers(s).rail_top - panel_numbers(s).rail_height - panel_numbers(s).relief
        ),
        "the rail would reach below the floor, or into the relief of the panels",
    ),
    rule(
        "panel_rail_within",
        "panel_rail_thickness panel_rail_forward depth inset_back inset_front",
        lambda s: _rail_within(panel_numbers(s)),
        "the rail would stand out beside the panels",
    ),
    rule(
        "panel_tenon_least",
        "panel_rail_height panel_shoulder",
        lambda s: panel_numbers(s).tenon_height - 10.0,
        "the tenon would be lower than {10 mm}",
    ),
    rule(
        "panel_tenon_within",
        "panel_tenon_thickness panel_rail_thickness",
        lambda s: s.number("panel_rail_thickness") - s.number("panel_tenon_thickness"),
        "the tenon would be thicker than the rail",
    ),
    rule(
        "panel_pads",
        "panel_relief panel_pad depth inset_back inset_front",
        lambda s: _relieved(panel_numbers(s)),
        "the pads would leave no relief between them",
    ),
    rule(
        "panel_width",
        "depth inset_back inset_front",
        lambda s: panel_numbers(s).width - 60.0,
        "the panels need at least {60 mm} of width",
    ),
)


def _relieved(p: PanelNumbers) -> float:
    """How long the relief is, less the least; no relief at all is no trouble."""
    return p.width - 2.0 * p.pad - 5.0 if p.relief > 0.0 else 1.0
