"""An estimate of panel feet under those who sit.  N, mm, MPa.

Method: ``geometry.strength.panels``.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from geometry.bench.bench import Bench
from geometry.checks.check import Check
from geometry.checks.limits_of_loads import MOST_OF_STRENGTH, SEAT_LOAD
from geometry.checks.limits_of_strength import HEAVY_SITTER, SITTERS_APART
from geometry.checks.strength import level_of
from geometry.checks.strengthening import (
    Size,
    Told,
    Way,
    loads_on,
    own_weight,
    share_told,
    with_mends,
)
from geometry.design.finding import Level
from geometry.strength.panels import DENT, PAD, Stood, panels_under
from shared.units import quantity_mark

_NAMES = {PAD: "panel_pad_strength", DENT: "panel_dents"}
_MOST = 999.0  # %: beyond it only 'far too weak' is meant
_THICKER = Size("panel_thickness", "Make the panels")
_LARGEST = 2.0  # times as large is the most that is tried at once


def _panels(bench: Bench) -> Iterator[Told]:
    """One finding for each way in which panels are too weak, by the worst of them."""
    limit = MOST_OF_STRENGTH.of(bench)
    found: dict[str, list[Stood]] = {}
    for one in panels_under(bench.spec, loads_on(bench), own_weight(bench)):
        if one.share > limit + 1e-9:
            found.setdefault(one.way, []).append(one)
    for way, group in found.items():
        yield _told(bench, way, group, limit)


def _told(bench: Bench, way: str, group: list[Stood], limit: float) -> Told:
    worst = max(group, key=lambda one: one.share)
    share = min(worst.share, _MOST)
    times, title = share / limit, bench.part(worst.parts[0]).title
    # Pressed on an area it counts once; a slender one gives way by its cube.
    grown = times if way in (PAD, DENT) else math.cbrt(times)
    ways: list[Way] = [_THICKER.grown(min(grown, _LARGEST))]
    if way == PAD:
        ways.insert(0, Size("panel_pad", "Make the pads", "long").grown(times))
    return share_told(
        _NAMES.get(way, "panel_strength"),
        Level.THINK_AGAIN if way == DENT else level_of(share),
        f"With {worst.case.words} where it bears most, “{title}” carries about "
        f"{quantity_mark(worst.force, 'N')}, {way}: about {share:.0f} % of its strength",
        tuple(dict.fromkeys(part for one in group for part in one.parts)),
        worst.place,
        share,
        limit,
        tuple(ways),
    )


CHECKS: tuple[Check, ...] = (
    Check(
        "panel_strength",
        "Panel feet under those who sit",
        "Puts those who sit where each panel bears most and as near to the front or back edge as "
        "they can, and reckons the panel as a post that is pressed along its grain, bent in its "
        "own plane and free to give way sideways (Euler), its pads where it is cut away at the "
        "floor, and how hard it presses into what lies on it. A third of the strength is the most "
        "to be used: common practice, no source. An estimate.",
        with_mends(_panels),
        ("panel feet",),
        limits=(SEAT_LOAD, HEAVY_SITTER, SITTERS_APART, MOST_OF_STRENGTH),
        quick=False,
    ),
)
