"""Estimates of shelves under books: their sag a year later, and how much of their strength is used.

N, mm, MPa.  A shelf is a beam on its two uprights under an even load, FPL-GTR-190 eq. 9-2 with
table 9-1: k_b = 5/384, k_s = 1/8; a lipping as deep as the shelf is thick bends with it.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from geometry.bench.bench import Bench
from geometry.bench.grain import SIDE_TO_SIDE
from geometry.bench.openings import SHELF, Opening, filled_with
from geometry.bench.shelves import lip_of
from geometry.checks.check import Check
from geometry.checks.limits_of_loads import (
    AFTER_A_YEAR,
    MOST_OF_STRENGTH,
    SHELF_LOAD,
    VISIBLE_SAG,
)
from geometry.checks.strength import another_partition, level_of, tenth
from geometry.checks.strengthening import Size, Told, Way, with_mends
from geometry.design.finding import Finding, Level, Mend
from geometry.design.spec import BenchSpec
from geometry.strength.stuff import Section, across_grain, stuff_of
from shared.units import quantity_mark

_THICKNESS = Size("shelf_thickness", "Make the shelves")


@dataclass(frozen=True, slots=True)
class Bent:
    """Of a shelf: ``sag`` in mm at first, and what it uses of its strength in %."""

    sag: float
    share: float


def even_sag(load: float, span: float, bending: float, shearing: float) -> float:
    """Sag in mm in the middle under ``load`` N spread evenly; E I in N mm², G A' in N."""
    return 5.0 / 384.0 * load * span**3 / bending + load * span / 8.0 / shearing


def bent(bench: Bench, at: Opening, load: float) -> Bent:
    """The shelf in an opening under ``load`` N in all."""
    part = bench.part(f"shelf_{at.index}")
    blank, lip = part.shape.blank, lip_of(bench.spec)
    board = across_grain if part.grain_across else stuff_of
    pieces = [(board(part.material), Section(blank.width, blank.thickness))]
    if lip > 0.0:
        timber = stuff_of(bench.spec.word("timber"))
        pieces.append((timber, Section(lip, blank.thickness)))
    bending = sum(stuff.elasticity * section.inertia for stuff, section in pieces)
    shearing = sum(stuff.rigidity * section.shear_area for stuff, section in pieces)
    moment = load * at.width / 8.0
    # All bend alike: stress is E h / 2 times the curvature.
    curved = moment / bending * blank.thickness / 2.0
    share = max(stuff.elasticity * curved / stuff.rupture for stuff, _ in pieces)
    return Bent(even_sag(load, at.width, bending, shearing), 100.0 * share)


def _sags(bench: Bench) -> Iterator[Told]:
    for at in filled_with(bench.spec, SHELF):
        load = SHELF_LOAD.of(bench) * at.width / 1000.0
        sag = bent(bench, at, load).sag * AFTER_A_YEAR.of(bench) / 100.0
        limit = VISIBLE_SAG.of(bench) * at.width / 1000.0
        if sag <= limit:
            continue
        finding = Finding(
            check="shelf_sag",
            level=Level.THINK_AGAIN,
            message=(
                f"The shelf in {at.title} sags about {tenth(sag)} under books after a year, and "
                f"more than {tenth(limit)} is seen: an estimate."
            ),
            parts=(f"shelf_{at.index}",),
            place=_middle(at),
            amount=sag,
            limit=limit,
            estimate=True,
        )
        yield Told(finding, _ways(bench.spec, (sag / limit) ** (1.0 / 3.0)))


def _strains(bench: Bench) -> Iterator[Told]:
    for at in filled_with(bench.spec, SHELF):
        load = SHELF_LOAD.of(bench) * at.width / 1000.0
        share, limit = bent(bench, at, load).share, MOST_OF_STRENGTH.of(bench)
        if share <= limit:
            continue
        finding = Finding(
            check="shelf_strength",
            level=level_of(share),
            message=(
                f"Full of books, {quantity_mark(load, 'N')}, the shelf in {at.title} is strained "
                f"in bending to about {share:.0f} % of its strength: an estimate."
            ),
            parts=(f"shelf_{at.index}",),
            place=_middle(at),
            amount=share,
            limit=limit,
            unit="%",
            estimate=True,
        )
        yield Told(finding, _ways(bench.spec, (share / limit) ** 0.5))


def _middle(at: Opening) -> tuple[float, float, float]:
    return ((at.x_left + at.x_right) / 2.0, -at.front, at.z_low)


def _ways(spec: BenchSpec, factor: float) -> tuple[Way, ...]:
    """Its grain the other way first, where that runs from front to back."""
    turned = Mend("Turn the shelves' grain from side to side.", (("shelf_grain", SIDE_TO_SIDE),))
    across = spec.word("shelf_grain") != SIDE_TO_SIDE
    thicker: tuple[Way, ...] = (_THICKNESS.grown(factor), *another_partition(spec))
    return (turned, *thicker) if across else thicker


CHECKS: tuple[Check, ...] = (
    Check(
        "shelf_sag",
        "Shelf sagging under books",
        "Reckons how far each shelf sags when it is full of books, a year on, when timber has "
        "crept about as far again. An eye sees a shelf that hangs by 1/32 inch in a foot. Load and "
        "limit are trade guidelines, the beam formula is the Wood Handbook's, 9-2; sheet is taken "
        "along its face grain, with the stiffness that its makers or the handbook give, from "
        "memory. An estimate.",
        with_mends(_sags),
        ("shelves",),
        limits=(SHELF_LOAD, VISIBLE_SAG, AFTER_A_YEAR),
        quick=False,
    ),
    Check(
        "shelf_strength",
        "Shelf breaking under books",
        "Reckons the bending of each shelf full of books as a share of its strength, as under "
        "somebody sitting. It sags long before it breaks, so this speaks only of heavy loads. An "
        "estimate.",
        with_mends(_strains),
        ("shelves",),
        limits=(SHELF_LOAD, MOST_OF_STRENGTH),
        quick=False,
    ),
)
