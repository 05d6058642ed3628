"""Estimates of a bench that is pushed level: whether the joints below its seat keep it square.

N, mm, MPa.  Method: ``geometry.strength.racking``.
"""

from __future__ import annotations

from collections.abc import Iterator

from geometry.bench.bench import Bench
from geometry.bench.catalogue import parameter
from geometry.bench.overall import FOUR_LEGS, TRESTLES, base_is
from geometry.bench.panel_ends_numbers import has_panel_ends
from geometry.checks.check import Check
from geometry.checks.leg_strength import BORED
from geometry.checks.limits_of_standing import MOST_OF_RACKED, RACKING_PUSH
from geometry.checks.strengthening import Size, Told, Way, with_mends
from geometry.design.finding import Finding, Level
from geometry.design.spec import BenchSpec
from geometry.primitives.frame import Vec3
from geometry.solids.measure import bounding_box
from geometry.strength.joints import BENT, BORE
from geometry.strength.racking import ACROSS, ALONG, Racked, racked
from shared.units import quantity_mark

_MOST = 999.0  # %: beyond it only 'far too weak' is meant
_LARGEST = 2.0  # times as large is the most that is tried at once
_WAYS = {ALONG: "along its length", ACROSS: "across its depth"}


def _racks(bench: Bench) -> Iterator[Told]:
    push, limit = RACKING_PUSH.of(bench), MOST_OF_RACKED.of(bench)
    for one in racked(bench.spec, push):
        if one.share <= limit + 1e-9:
            continue
        share = min(one.share, _MOST)
        yield Told(
            Finding(
                check=f"racks_{one.way}",
                level=Level.THINK_AGAIN,
                message=(
                    f"A level push of {quantity_mark(push, 'N')} {_WAYS[one.way]} racks the bench: "
                    f"each joint that must hold it square bears "
                    f"{quantity_mark(one.moment / 1000.0, 'N m')}, and {one.fails} uses about "
                    f"{share:.0f} % of its strength. An estimate."
                ),
                parts=one.parts,
                place=_middle(bench, one.parts[0]),
                amount=share,
                limit=limit,
                unit="%",
                estimate=True,
            ),
            _stiffer(bench.spec, one, share / limit),
        )


def _middle(bench: Bench, name: str) -> Vec3:
    low, high = bounding_box(bench.part(name))
    x, y, z = ((a + b) / 2.0 for a, b in zip(low, high, strict=True))
    return (x, y, z)


def _stiffer(spec: BenchSpec, one: Racked, factor: float) -> tuple[Way, ...]:
    """What to make larger; how much of it is enough is tried."""
    if has_panel_ends(spec):
        sizes: tuple[Size, ...] = (Size("seat_rail_height", "Make the rail", "high"),)
    elif base_is(FOUR_LEGS, spec):
        aprons = (
            Size("apron_height", "Make the aprons", "high"),
            Size("apron_tenon_length", "Make the tenons", "long"),
        )
        sizes = aprons
        if one.fails in (BENT, BORE):
            sizes = (Size("leg_tenon", "Make the tenons"), BORED[one.parts[-1]])
    elif one.way == ALONG and base_is(TRESTLES, spec):
        sizes = (
            Size("rail_tenon_height", "Make the rail's tenons", "high"),
            Size("rail_width", "Make the rail", "wide"),
            Size("base_thickness", "Make legs and stretchers"),
        )
    else:
        sizes = (
            Size("stretcher_height", "Make the stretchers", "high"),
            Size("panel_rail_height", "Make the rail", "high"),
        )
    return tuple(
        size.grown(min(factor, _LARGEST)) for size in sizes if parameter(size.name).applies(spec)
    )


CHECKS: tuple[Check, ...] = (
    Check(
        "racks",
        "Racking under a level push",
        "Pushes the seat level, along and across, with {330 N} (ISO 7173:1989, 7.6, as quoted: at "
        "the front edge of a seat without a back), takes feet and seat to turn as on hinges, and "
        "reckons the moment in each joint that is left to keep the bench square: bridles, aprons, "
        "round tenons or a rail, as a share of what its glue, its tenon or the walls of its "
        "mortise stand. A plinth and upright panels are stiff in their own plane. Left out are "
        "what screws, housings and a seat's own joints add, how far it sways, and knocks. Half of "
        "the strength is the most for so short a push: common practice, no source. An estimate.",
        with_mends(_racks),
        limits=(RACKING_PUSH, MOST_OF_RACKED),
        quick=False,
    ),
)
