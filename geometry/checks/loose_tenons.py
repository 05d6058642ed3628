"""A check of the loose tenons of a glued-up panel: which later cut comes near a mortise.

They lie inside the panel, so its own cuts are measured against them; what comes near those of a
mitre is seen like that of any other mortise (see ``cuts_near``).
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from geometry.bench.bench import Bench
from geometry.bench.glue_ups import glue_ups
from geometry.checks.check import Check
from geometry.checks.limits_of_wood import LEAST_BESIDE
from geometry.cuts.slot_mortise import SlotMortise
from geometry.design.finding import Finding, Level
from geometry.design.part import Part
from geometry.solids.nearness import Near, is_in_wood, nearest
from shared.units import length_mark


@dataclass(frozen=True, slots=True)
class _Met:
    """A mortise in a panel, and what comes near it."""

    panel: Part
    near: Near


def _in_glue_ups(bench: Bench) -> Iterator[Finding]:
    least = LEAST_BESIDE.of(bench)
    met: dict[tuple[str, bool], list[_Met]] = {}
    for glue_up in glue_ups(bench):
        panel = bench.part(glue_up.panel)
        for board, mortise in _mortises(glue_up.bench):
            there = _in_the_panel(mortise, board, panel)
            near = nearest(panel.shape, there, least - 1e-9)
            # What goes off with the waste, by whichever cuts, is opened by none.
            if near is not None and (near.distance > 0.0 or is_in_wood(panel.shape, there)):
                met.setdefault((panel.name, near.distance <= 0.0), []).append(_Met(panel, near))
    for group in met.values():
        yield _finding(group, least)


def _mortises(bench: Bench) -> Iterator[tuple[Part, SlotMortise]]:
    for joint in bench.joints:
        if joint.kind == "loose tenon":
            for cut in joint.cuts_first:
                assert isinstance(cut, SlotMortise)
                yield bench.part(joint.parts[0]), cut


def _in_the_panel(mortise: SlotMortise, board: Part, panel: Part) -> SlotMortise:
    """A board's mortise in the frame of its panel."""
    place = panel.frame.to_local(board.frame.to_bench(mortise.middle))
    return replace(mortise, middle=place)


def _finding(group: list[_Met], least: float) -> Finding:
    worst = min(group, key=lambda one: one.near.distance)
    panel, near = worst.panel, worst.near
    opened = near.distance <= 0.0
    many = f" ({len(group)} of them)" if len(group) > 1 else ""
    if opened:
        what = f"The {near.title} opens a mortise for a loose tenon in {panel.title.lower()}"
    else:
        what = (
            f"Only {length_mark(near.distance)} of wood is left between a mortise for a loose "
            f"tenon in {panel.title.lower()} and the {near.title}"
        )
    return Finding(
        check="glue_up_mortise_opened" if opened else "glue_up_mortise_near",
        level=Level.DO_NOT_CUT if opened else Level.THINK_AGAIN,
        message=f"{what}{many}.",
        parts=(panel.name,),
        place=panel.frame.to_bench(near.place),
        amount=near.distance,
        limit=least,
    )


CHECKS: tuple[Check, ...] = (
    Check(
        "glue_up_mortises",
        "Cuts near a glue-up's mortises",
        "Measures the wood between each mortise for a loose tenon in a glued-up panel and every "
        "later cut of the panel: housing, rebate, chamfer, bevel, the flare's edge, the outside "
        "faces. A cut that meets one shows the tenon; less than {3 mm} tears out under the cutter "
        "(common practice, no source).",
        _in_glue_ups,
        ("glue-up tenons",),
        limits=(LEAST_BESIDE,),
    ),
)
