"""Every check of a bench, in the order in which findings are listed."""

from __future__ import annotations

from collections.abc import Generator, Sequence
from dataclasses import replace
from functools import lru_cache

from geometry.bench.bench import Bench
from geometry.checks import (
    alike,
    as_cut,
    back_rest,
    base,
    base_outline,
    base_strength,
    brief,
    carrying,
    carving,
    case,
    collisions,
    corner_blocks,
    cuts_near,
    drawer_fronts,
    drawer_load,
    drawer_motion,
    drawers,
    dry_fit,
    edges,
    feet,
    fixings,
    four_legs,
    grain_runs,
    housed_pieces,
    housings,
    leg_strength,
    lid,
    lippings,
    loose_tenons,
    mitres,
    movement,
    panel_bench,
    panel_strength,
    racking,
    rails,
    readings,
    rest_strength,
    screwed_faces,
    seat,
    shelf_strength,
    shelves,
    short_grain,
    slots,
    slow,
    stock,
    stops,
    strength,
    thin_wood,
    tipping,
)
from geometry.checks.check import Check
from geometry.checks.looked import looked_into
from geometry.checks.offers import offered
from geometry.checks.setting_aside import as_judged
from geometry.design.brief import NO_BRIEF, Brief
from geometry.design.finding import Finding, Level
from geometry.design.judging import Judging
from shared.units import SHOWN_MM, Shown

CHECKS: tuple[Check, ...] = (
    *collisions.CHECKS,
    *housings.CHECKS,
    *stops.CHECKS,
    *housed_pieces.CHECKS,
    *shelves.CHECKS,
    *lippings.CHECKS,
    *cuts_near.CHECKS,
    *thin_wood.CHECKS,
    *loose_tenons.CHECKS,
    *drawers.CHECKS,
    *drawer_fronts.CHECKS,
    *drawer_motion.CHECKS,
    *drawer_load.CHECKS,
    *carving.CHECKS,
    *back_rest.CHECKS,
    *seat.CHECKS,
    *panel_bench.CHECKS,
    *lid.CHECKS,
    *base.CHECKS,
    *rails.CHECKS,
    *four_legs.CHECKS,
    *short_grain.CHECKS,
    *base_outline.CHECKS,
    *fixings.CHECKS,
    *screwed_faces.CHECKS,
    *slots.CHECKS,
    *movement.CHECKS,
    *grain_runs.CHECKS,
    *stock.CHECKS,
    *corner_blocks.CHECKS,
    *edges.CHECKS,
    *feet.CHECKS,
    *case.CHECKS,
    *strength.CHECKS,
    *leg_strength.CHECKS,
    *base_strength.CHECKS,
    *panel_strength.CHECKS,
    *rest_strength.CHECKS,
    *shelf_strength.CHECKS,
    *tipping.CHECKS,
    *racking.CHECKS,
    *brief.CHECKS,
    *carrying.CHECKS,
    *dry_fit.CHECKS,
    *as_cut.CHECKS,
    *mitres.CHECKS,
    *alike.CHECKS,
    *readings.CHECKS,
)

# Looked into behind the others, as it takes seconds on a large bench.
SLOW_CHECKS: tuple[Check, ...] = slow.CHECKS

_ORDER = tuple(Level)
_BY_NAME = {check.name: check for check in (*CHECKS, *SLOW_CHECKS)}


@lru_cache(maxsize=64)
def findings(bench: Bench) -> tuple[Finding, ...]:
    """What a maker should know of a bench, the gravest first; the order is stable."""
    steps = mends_in_steps(bench, told(bench))
    while True:
        try:
            next(steps)
        except StopIteration as stop:
            found: tuple[Finding, ...] = stop.value
            return found


@lru_cache(maxsize=8)
def told(bench: Bench) -> tuple[Finding, ...]:
    """The findings in their order, before any mend has been tried: soon to be had.

    Their mends are proposals, or still to be sought.
    """
    found = [
        replace(finding, told_by=check.name)
        for check in CHECKS
        if check.applies(bench)
        for finding in check.run(bench)
    ]
    return tuple(sorted(found, key=lambda finding: _ORDER.index(finding.level)))


def mends_in_steps(
    bench: Bench, found: Sequence[Finding]
) -> Generator[None, None, tuple[Finding, ...]]:
    """What has been ``told``, with the mends that are worth offering; each step is a short one."""
    grave = frozenset(finding.key for finding in found if finding.level is Level.DO_NOT_CUT)
    tried = []
    for finding in found:
        tried.append((yield from offered(bench, check_of(finding), finding, CHECKS, grave)))
    return tuple(tried)


def slow_findings(bench: Bench) -> tuple[Finding, ...]:
    """What the slow checks find; quick when this bench has been looked into before."""
    return tuple(slow.findings_of(bench, looked_into(bench)))


def judged(
    bench: Bench,
    judging: Judging,
    brief: Brief = NO_BRIEF,
    slower: Sequence[Finding] = (),
    shown: Shown = SHOWN_MM,
) -> tuple[Finding, ...]:
    """The findings by the maker's own limits; those set aside carry their reason and come last.

    One that has grown clearly worse since stands again, and says so.

    ``slower`` are those of the slow checks, where they have been looked into; ``shown`` is how
    sizes are written on the drawings.
    """
    return weighed(findings(held_to(bench, judging, brief, shown)), judging, slower)


def held_to(bench: Bench, judging: Judging, brief: Brief, shown: Shown) -> Bench:
    """The bench with all that its findings go by."""
    return replace(bench, judged_by=judging.limits, brief=brief, shown=shown)


def weighed(
    found: Sequence[Finding], judging: Judging, slower: Sequence[Finding] = ()
) -> tuple[Finding, ...]:
    """Findings in one order with those of the slow checks, and with the maker's reasons."""
    together = sorted((*found, *slower), key=lambda one: _ORDER.index(one.level))
    reasoned = [as_judged(one, judging) for one in together]
    return tuple(sorted(reasoned, key=lambda one: bool(one.set_aside)))


def wholly_judged(
    bench: Bench, judging: Judging, brief: Brief = NO_BRIEF, shown: Shown = SHOWN_MM
) -> tuple[Finding, ...]:
    """The same with what the slow checks find, for whoever can wait: papers, commands."""
    slower = slow_findings(replace(bench, judged_by=judging.limits))
    return judged(bench, judging, brief, slower, shown)


def check_of(finding: Finding) -> Check:
    """The check that told of a finding, with its paragraph and its limits."""
    return _BY_NAME[finding.told_by]
