"""The runners' numbers in a spec: those of a row of the table, which the maker may then change.

A project keeps the numbers and not the row, so that it stays what it was when a table changes.
"""

from __future__ import annotations

from dataclasses import fields
from functools import lru_cache

from geometry.design.parameter import Parameter, Value, choice, count, length
from geometry.design.spec import BenchSpec
from shared.runners import (
    RUNNER_KINDS,
    SIDE,
    TO_INSIDE,
    TO_OUTSIDE,
    UNDER,
    WOODEN,
    Runner,
    generic,
)

_COUNTED = ("load", "travel")
_FIRST = generic(SIDE)


def _is_under(spec: BenchSpec) -> bool:
    return spec.word("runner_kind") == UNDER


def _is_wooden(spec: BenchSpec) -> bool:
    return spec.word("runner_kind") == WOODEN


def _is_metal(spec: BenchSpec) -> bool:
    return not _is_wooden(spec)


PARAMETERS: tuple[Parameter, ...] = (
    choice(
        "runner_kind",
        "Runners",
        "Runners",
        SIDE,
        RUNNER_KINDS,
        "What the drawers run on; a new kind brings its generic row: check your runner's sheet.",
    ),
    length(
        "runner_side",
        "Clearance each side",
        "Runners",
        _FIRST.side,
        0.2,
        60,
        "From the opening to the box, at each side.",
        step=0.1,
    ),
    choice(
        "runner_side_to",
        "Measured to",
        "Runners",
        _FIRST.side_to,
        (TO_OUTSIDE, TO_INSIDE),
        "Whether the clearance goes to the outside or to the inside of the box's sides.",
        applies=_is_under,
    ),
    length(
        "runner_thickest_side",
        "Thickest side",
        "Runners",
        _FIRST.thickest_side,
        0,
        40,
        "The thickest drawer side that the runner takes; 0 for any.",
        step=0.1,
        applies=_is_under,
    ),
    length(
        "runner_below",
        "Clearance below",
        "Runners",
        _FIRST.below,
        0,
        60,
        "Below a box; a wooden runner fills it.",
        step=0.5,
    ),
    length(
        "runner_above",
        "Clearance above",
        "Runners",
        _FIRST.above,
        0,
        60,
        "Above a box, to tilt or to lift it out.",
        step=0.5,
    ),
    length(
        "runner_behind",
        "Clearance behind",
        "Runners",
        _FIRST.behind,
        0,
        100,
        "From the box to the inside face of the back, at least.",
        step=0.5,
    ),
    length(
        "runner_recess",
        "Bottom at least up",
        "Runners",
        _FIRST.recess,
        0,
        40,
        "What the runner needs between the sides' lower edges and the bottom.",
        step=0.1,
        applies=_is_under,
    ),
    length(
        "runner_notch_width",
        "Notch width",
        "Runners",
        _FIRST.notch_width,
        0,
        120,
        "Of the notches in the box's back, from the inside of the side; 0 for none.",
        applies=_is_under,
    ),
    length(
        "runner_notch_height",
        "Notch height",
        "Runners",
        _FIRST.notch_height,
        0,
        40,
        "Of the notches in the box's back, from its lower edge; 0 for none.",
        step=0.1,
        applies=_is_under,
    ),
    length(
        "runner_bore_diameter",
        "Hole for the hook",
        "Runners",
        _FIRST.bore_diameter,
        0,
        20,
        "Diameter of the holes in the box's back; 0 for none.",
        step=0.1,
        applies=_is_under,
    ),
    length(
        "runner_bore_depth",
        "Hole's depth",
        "Runners",
        _FIRST.bore_depth,
        0,
        30,
        "Depth of the holes for the hooks.",
        step=0.5,
        applies=_is_under,
    ),
    length(
        "runner_bore_in",
        "Hole from the side",
        "Runners",
        _FIRST.bore_in,
        0,
        60,
        "From the inside of the side to the middle of the hole.",
        step=0.1,
        applies=_is_under,
    ),
    length(
        "runner_bore_up",
        "Hole up",
        "Runners",
        _FIRST.bore_up,
        0,
        60,
        "From the box's lower edge to the middle of the hole.",
        step=0.1,
        applies=_is_under,
    ),
    length(
        "runner_strip_width",
        "Runner width",
        "Runners",
        generic(WOODEN).strip_width,
        5,
        60,
        "Of a wooden runner, level, from the upright.",
        step=0.5,
        applies=_is_wooden,
    ),
    length(
        "runner_shortest",
        "Shortest",
        "Runners",
        _FIRST.shortest,
        50,
        800,
        "The shortest runner there is; a box is as long as its runner.",
    ),
    length(
        "runner_longest", "Longest", "Runners", _FIRST.longest, 50, 1200, "The longest there is."
    ),
    length(
        "runner_step",
        "Length step",
        "Runners",
        _FIRST.step,
        0,
        300,
        "From one length to the next; 0 for any length.",
        step=0.1,
    ),
    count(
        "runner_load",
        "Load of a pair, kg",
        "Runners",
        round(_FIRST.load),
        0,
        500,
        "What a pair of runners carries, in kilograms.",
    ),
    count(
        "runner_travel",
        "Travel, %",
        "Runners",
        round(_FIRST.travel),
        10,
        130,
        "How far a drawer opens, in percent of its runner's length.",
        applies=_is_metal,
    ),
)


def runner_values(row: Runner) -> dict[str, Value]:
    """The values that a row of the table gives to a spec, by parameter.

    What the row's kind has no use for is left as it stands in the spec.
    """
    values: dict[str, Value] = {}
    for field in fields(Runner):
        name = f"runner_{field.name}"
        if field.name in ("name", "source") or not means_something(row, field.name):
            continue
        value = getattr(row, field.name)
        if isinstance(value, str):
            values[name] = value
        else:
            values[name] = float(round(value) if field.name in _COUNTED else value)
    return values


_UNDER_ONLY = (
    "side_to",
    "thickest_side",
    "recess",
    "notch_width",
    "notch_height",
    "bore_diameter",
    "bore_depth",
    "bore_in",
    "bore_up",
)


def means_something(row: Runner, field: str) -> bool:
    """Whether runners of this row's kind have a use for one of its numbers."""
    if field in _UNDER_ONLY:
        return row.kind == UNDER
    if field == "strip_width":
        return row.kind == WOODEN
    return not (field == "travel" and row.kind == WOODEN)


@lru_cache(maxsize=512)
def runner_of(spec: BenchSpec) -> Runner:
    """The runners of a spec as a row, with 0 for what its kind has no use for."""
    kind = spec.word("runner_kind")
    sizes = {
        field.name: spec.number(f"runner_{field.name}")
        for field in fields(Runner)
        if field.name not in ("name", "kind", "side_to", "source")
    }
    if kind != UNDER:
        sizes |= {name: 0.0 for name in _UNDER_ONLY if name != "side_to"}
    if kind != WOODEN:
        sizes["strip_width"] = 0.0
    side_to = spec.word("runner_side_to") if kind == UNDER else TO_OUTSIDE
    return Runner(name=kind, kind=kind, side_to=side_to, source="the project", **sizes)
