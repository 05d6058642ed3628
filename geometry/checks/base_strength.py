"""Estimates of what a base bears beside its legs: bottom, trestles, rails.  N, mm, MPa.

Method: ``geometry.strength.bases``.
"""

from __future__ import annotations

from collections.abc import Iterator

from geometry.bench.bench import Bench
from geometry.bench.overall import PANEL_BENCH
from geometry.checks.check import Check
from geometry.checks.limits_of_loads import MOST_OF_STRENGTH, SEAT_LOAD
from geometry.checks.limits_of_strength import HEAVY_SITTER, SITTERS_APART
from geometry.checks.strength import another_partition, level_of, shallower
from geometry.checks.strengthening import (
    Size,
    Told,
    Way,
    loads_on,
    own_weight,
    share_told,
    with_mends,
)
from geometry.strength.bases import TENON, Borne, bottom, stepped_on, trestle_stretchers
from geometry.strength.line import SHEAR
from shared.units import quantity_mark

_STEP_IN = "somebody who steps on it"


def _bottom(bench: Bench) -> Iterator[Told]:
    borne = bottom(bench.spec, loads_on(bench), own_weight(bench))
    limit = MOST_OF_STRENGTH.of(bench)
    if borne is None or borne.share <= limit + 1e-9:
        return
    message = (
        f"With {borne.words} where it bears most, the base pushes up under the bottom with about "
        f"{quantity_mark(borne.force, 'N')} and strains it in {borne.way} to about "
        f"{borne.share:.0f} % of its strength, between the uprights beside that place"
    )
    power = 1.0 if borne.way == SHEAR else 0.5
    thicker = Size("board_thickness", "Make the case's boards").grown(
        (borne.share / limit) ** power
    )
    ways: tuple[Way, ...] = (
        *shallower(bench.spec, borne.way),
        thicker,
        *another_partition(bench.spec),
    )
    yield _told("bottom_strength", borne, limit, message, ways)


def _trestles(bench: Bench) -> Iterator[Told]:
    limit = MOST_OF_STRENGTH.of(bench)
    for borne in trestle_stretchers(bench.spec, loads_on(bench), own_weight(bench)):
        if borne.share <= limit + 1e-9:
            continue
        message = (
            f"With {borne.words} where it bears most, “{bench.part(borne.part).title}” carries "
            f"about {quantity_mark(borne.force, 'N')} and is strained in {borne.way} to about "
            f"{borne.share:.0f} % of what the rail's mortise leaves of its strength"
        )
        factor = (borne.share / limit) ** 0.5
        ways = (
            Size("stretcher_height", "Make the stretchers", "high").grown(factor),
            Size("base_thickness", "Make legs and stretchers").grown(factor**2.0),
        )
        yield _told("trestle_strength", borne, limit, message, ways)


def _rail(bench: Bench) -> Iterator[Told]:
    limit = MOST_OF_STRENGTH.of(bench)
    borne = stepped_on(bench.spec, SEAT_LOAD.of(bench))
    if borne is None or borne.share <= limit + 1e-9:
        return
    what = "its tenon in shear" if borne.way == TENON else "it in bending"
    message = (
        f"Under {quantity_mark(borne.force, 'N')}, {_STEP_IN}, the rail strains {what} to about "
        f"{borne.share:.0f} % of its strength"
    )
    yield _told("rail_strength", borne, limit, message, _rail_ways(bench, borne, limit))


def _rail_ways(bench: Bench, borne: Borne, limit: float) -> tuple[Way, ...]:
    under_seat = bench.spec.value("seat") == PANEL_BENCH
    names = (
        ("seat_rail_height", "seat_rail_tenon")
        if under_seat
        else (
            "panel_rail_height",
            "panel_tenon_thickness",
        )
    )
    deeper, tenon = Size(names[0], "Make the rail", "high"), Size(names[1], "Make its tenons")
    factor = borne.share / limit
    if borne.way == TENON:
        return (tenon.grown(factor), deeper.grown(factor))
    return (deeper.grown(factor**0.5),)


def _told(check: str, borne: Borne, limit: float, message: str, ways: tuple[Way, ...]) -> Told:
    level = level_of(borne.share, borne.way)
    return share_told(check, level, message, (borne.part,), borne.place, borne.share, limit, ways)


CHECKS: tuple[Check, ...] = (
    Check(
        "bottom_strength",
        "Bottom of a case over its base",
        "A base carries the bottom of a case where it stands, the load comes down at the ends and "
        "the partitions: between the two the bottom is bent. Reckons that with those who sit where "
        "it bears most, and with the bench's own weight, as a share of the timber's strength; "
        "housings and the bores of round tenons weaken it. Legs in the corners are borne by half "
        "of the depth. A case on a plinth is not looked at, nor how the whole case bends: its back "
        "makes a girder of it. An estimate.",
        with_mends(_bottom),
        ("case",),
        limits=(SEAT_LOAD, HEAVY_SITTER, SITTERS_APART, MOST_OF_STRENGTH),
        quick=False,
    ),
    Check(
        "trestle_strength",
        "Stretchers of trestles",
        "Puts those who sit over one trestle, as far as the seat is long, in the middle of its "
        "depth: the stretcher bends between its two legs, and the rail's mortise has weakened it "
        "there. A third of the strength is the most to be used: common practice, no source. An "
        "estimate.",
        with_mends(_trestles),
        ("trestles",),
        limits=(SEAT_LOAD, HEAVY_SITTER, SITTERS_APART, MOST_OF_STRENGTH),
        quick=False,
    ),
    Check(
        "rail_strength",
        "Rail that is stepped on",
        "Where there are {100 mm} or more over a rail, somebody will stand on it. Reckons its "
        "bending under the reference load in the middle of its longest span, and the shear of its "
        "tenon beside an end, as a share of the timber's strength. An estimate.",
        with_mends(_rail),
        limits=(SEAT_LOAD, MOST_OF_STRENGTH),
        quick=False,
    ),
)
