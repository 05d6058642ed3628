"""Checks of loose tenons: which later cut comes near a mortise."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

from geometry.bench.bench import Bench
from geometry.bench.case_numbers import case_numbers
from geometry.bench.glue_ups import glue_ups
from geometry.bench.mitre_tenons import mitre_tenons
from geometry.checks.check import Check
from geometry.cuts.slot_mortise import SlotMortise
from geometry.design.finding import Finding, Level, Mend
from geometry.design.part import Part
from geometry.solids.nearness import Near, nearest
from shared.units import length_mark

LEAST_WOOD = 3.0  # mm between a mortise and any other cut; common practice, no source


@dataclass(frozen=True, slots=True)
class _Met:
    """A mortise in a piece, and what comes near it."""

    holder: Part
    mortise: SlotMortise
    near: Near


def _in_mitres(bench: Bench) -> Iterator[Finding]:
    met = []
    for holder, mortise in _mortises(bench):
        near = nearest(holder.shape, mortise, LEAST_WOOD - 1e-9)
        if near is not None:
            met.append(_Met(holder, mortise, near))
    for group in _grouped(met):
        yield _finding("mortise", group, _shallower(bench, group))


def _in_glue_ups(bench: Bench) -> Iterator[Finding]:
    met = []
    for glue_up in glue_ups(bench):
        panel = bench.part(glue_up.panel)
        for board, mortise in _mortises(glue_up.bench):
            in_panel = _in_the_panel(mortise, board, panel)
            near = nearest(panel.shape, in_panel, LEAST_WOOD - 1e-9)
            if near is not None:
                met.append(_Met(panel, in_panel, near))
    for group in _grouped(met):
        yield _finding("glue_up_mortise", group, None)


def _mortises(bench: Bench) -> Iterator[tuple[Part, SlotMortise]]:
    for joint in bench.joints:
        if joint.kind == "loose tenon":
            for cut in joint.cuts_first:
                assert isinstance(cut, SlotMortise)
                yield bench.part(joint.parts[0]), cut


def _grouped(met: list[_Met]) -> list[list[_Met]]:
    """What the later cuts of one piece open, or come near, the worst first."""
    groups: dict[tuple[str, bool], list[_Met]] = {}
    for one in met:
        key = (one.holder.name, one.near.distance <= 0.0)
        groups.setdefault(key, []).append(one)
    return [sorted(group, key=lambda one: one.near.distance) for group in groups.values()]


def _shallower(bench: Bench, group: list[_Met]) -> Mend | None:
    """Where only the outside face comes near, as much less depth as it takes."""
    if any(one.near.title != "reverse" for one in group):
        return None
    c, m = case_numbers(bench.spec), mitre_tenons(bench.spec)
    fitting = (c.thickness - LEAST_WOOD) * math.sqrt(2.0) - m.inward - m.half_mouth
    if fitting < 4.0:
        return None
    changes = tuple(
        (name, fitting)
        for name, depth in (("mitre_tenon_board", m.board), ("mitre_tenon_panel", m.panel))
        if depth > fitting
    )
    return Mend(f"Make the mortises {length_mark(fitting)} deep.", changes)


def _in_the_panel(mortise: SlotMortise, board: Part, panel: Part) -> SlotMortise:
    """A board's mortise in the frame of its panel."""
    place = panel.frame.to_local(board.frame.to_bench(mortise.middle))
    return replace(mortise, middle=place)


def _finding(name: str, group: list[_Met], mend: Mend | None) -> Finding:
    worst = group[0]
    holder, near = worst.holder, worst.near
    opened = near.distance <= 0.0
    many = f" ({len(group)} of them)" if len(group) > 1 else ""
    if opened:
        what = f"The {near.title} opens a mortise for a loose tenon in {holder.title.lower()}"
    else:
        what = (
            f"Only {length_mark(near.distance)} of wood is left between a mortise for a loose "
            f"tenon in {holder.title.lower()} and the {near.title}"
        )
    return Finding(
        check=f"{name}_opened" if opened else f"{name}_near",
        level=Level.DO_NOT_CUT if opened else Level.THINK_AGAIN,
        message=f"{what}{many}.",
        parts=(holder.name,),
        place=holder.frame.to_bench(worst.mortise.middle),
        amount=near.distance,
        limit=LEAST_WOOD,
        mend=mend,
    )


_ABOUT = (
    "Measures the wood between each mortise for a loose tenon and every later cut of its piece: "
    "housing, rebate, chamfer, bevel, the flare's edge, the outside faces. A cut that meets one "
    "shows the tenon; less than 3 mm tears out under the cutter (common practice, no source)."
)

CHECKS: tuple[Check, ...] = (
    Check("mitre_mortises", "Cuts near a mitre's mortises", _ABOUT, _in_mitres, ("mitre tenons",)),
    Check(
        "glue_up_mortises",
        "Cuts near a glue-up's mortises",
        _ABOUT,
        _in_glue_ups,
        ("glue-up tenons",),
    ),
)
