"""Estimates of what is sat on: how far it bends, and how much of its strength is used.

Method: ``geometry.strength``, beams over several supports with bending and shear as in FPL-GTR-190
eq. 9-2, the loads tried in every place.  N, mm, MPa.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from geometry.bench.bench import Bench
from geometry.bench.overall import CASE, LID_BOX, PANEL_BENCH, SLAB
from geometry.bench.partitions import MOST_PARTITIONS, evenly
from geometry.checks.check import Check
from geometry.checks.limits_of_loads import AFTER_A_YEAR, MOST_OF_STRENGTH, SEAT_BENDS, SEAT_LOAD
from geometry.checks.limits_of_strength import HEAVY_SITTER, SITTERS_APART
from geometry.checks.strengthening import Size, Told, Way, loads_on, share_told, with_mends
from geometry.design.finding import Finding, Level, Mend
from geometry.design.parameter import Value
from geometry.design.spec import BenchSpec
from geometry.strength.line import HOUSED, Found, Line, Strain, strained
from geometry.strength.seats import seat_lines
from shared.units import length_mark

_WHOLE = 100.0  # % of a timber's strength


def level_of(share: float, way: str = "") -> Level:
    """By the share of its strength that a piece is strained to.

    Over a housing it cracks and hangs on, in two.
    """
    return Level.DO_NOT_CUT if share >= _WHOLE and way != HOUSED else Level.THINK_AGAIN


def _lines(bench: Bench) -> tuple[tuple[Line, Found], ...]:
    loads = loads_on(bench)
    return tuple((line, strained(line, loads)) for line in seat_lines(bench.spec))


def _bends(bench: Bench) -> Iterator[Told]:
    line, found = max(_lines(bench), key=lambda row: row[1].sag.slope)
    sag, most = found.sag, SEAT_BENDS.of(bench)
    limit = sag.span / most
    if sag.amount <= limit + 1e-9:
        return
    later = sag.amount * AFTER_A_YEAR.of(bench) / 100.0
    finding = Finding(
        check="seat_bends",
        level=Level.THINK_AGAIN,
        message=(
            f"Under {sag.case.words} the {bench.part(line.pieces[0].part).title.lower()} bends "
            f"about {tenth(sag.amount)} over a span of {tenth(sag.span)}, and more than "
            f"{tenth(limit)} feels weak; a load that stays for a year bends it "
            f"{tenth(later)}: an estimate."
        ),
        parts=tuple(piece.part for piece in line.pieces),
        place=(sag.at, line.y, line.z),
        amount=sag.amount,
        limit=limit,
        estimate=True,
    )
    factor = sag.amount / limit
    yield Told(finding, _ways(bench.spec, line.pieces[0].part, factor ** (1.0 / 3.0)))


def _strains(bench: Bench) -> Iterator[Told]:
    """Each piece that somebody sits on, at its worst: what breaks it before what cracks it."""
    worst: dict[str, tuple[Line, Strain]] = {}
    for line, found in _lines(bench):
        for strain in found.strains:
            if strain.part not in worst or _gravity(strain) > _gravity(worst[strain.part][1]):
                worst[strain.part] = (line, strain)
    limit = MOST_OF_STRENGTH.of(bench)
    for part, (line, strain) in worst.items():
        if strain.share <= limit + 1e-9:
            continue
        ways = _ways(bench.spec, part, (strain.share / limit) ** 0.5)
        yield share_told(
            "seat_strength",
            level_of(strain.share, strain.way),
            f"Under {strain.case.words} the {bench.part(part).title.lower()} is strained in "
            f"{strain.way} to about {strain.share:.0f} % of its strength",
            (part,),
            (strain.at, line.y, line.z),
            strain.share,
            limit,
            (*shallower(bench.spec, strain.way), *ways),
        )


def _gravity(strain: Strain) -> tuple[bool, float]:
    return level_of(strain.share, strain.way) is Level.DO_NOT_CUT, strain.share


def shallower(spec: BenchSpec, way: str) -> tuple[Mend, ...]:
    """Housings a third of the board deep, where they are deeper and it fails over them."""
    name = "board_thickness" if spec.value("seat") == CASE else "seat_thickness"
    third = math.floor(spec.number(name) / 3.0 * 2.0) / 2.0
    if way != HOUSED or spec.number("housing_depth") <= third:
        return ()
    return (Mend(f"Make the housings {length_mark(third)} deep.", (("housing_depth", third),)),)


_BOARDS = {
    CASE: Size("board_thickness", "Make the case's boards"),
    LID_BOX: Size("lid_thickness", "Make the lid"),
    SLAB: Size("seat_thickness", "Make the seat"),
    PANEL_BENCH: Size("seat_thickness", "Make the seat"),
}
_RAILS = {
    "rail": Size("seat_rail_height", "Make the rail", "high"),
    "apron_front": Size("apron_height", "Make the aprons", "high"),
    "apron_back": Size("apron_height", "Make the aprons", "high"),
    "plinth_front": Size("plinth_thickness", "Make the plinth's boards"),
    "plinth_back": Size("plinth_thickness", "Make the plinth's boards"),
}
_STRETCHERS = Size("stretcher_height", "Make the stretchers", "high")


def _ways(spec: BenchSpec, part: str, factor: float) -> tuple[Way, ...]:
    """A thicker board, or a deeper rail; under the top of a case another partition."""
    if part not in ("top", "lid", "seat"):
        return (_RAILS.get(part, _STRETCHERS).grown(factor),)
    thicker = _BOARDS[spec.word("seat")].grown(factor)
    if part == "lid":
        hinges = spec.count("hinge_count") + 1.0
        return (thicker, Mend(f"Hang it on {hinges:.0f} hinges.", (("hinge_count", hinges),)))
    return (thicker, *another_partition(spec)) if part == "top" else (thicker,)


def another_partition(spec: BenchSpec) -> tuple[Mend, ...]:
    """All partitions at equal distances, with one more; none where there is no more."""
    count = spec.count("partition_count")
    if count == MOST_PARTITIONS:
        return ()
    more: dict[str, Value] = {"partition_count": count + 1.0}
    more |= evenly(spec.changed(more))
    return (Mend("Set in another partition, all at equal distances.", tuple(more.items())),)


def tenth(length: float) -> str:
    """A reckoned length, to the tenth of a millimetre."""
    return length_mark(round(length, 1))


CHECKS: tuple[Check, ...] = (
    Check(
        "seat_bends",
        "Seat bending between its supports",
        "Reckons how far what is sat on bends between the ends, partitions, legs or panels that "
        "carry it, and where it stands out over them: with one load anywhere, the {1112 N} "
        "of the 2010 ADA Standards (903.6) or the brief's own if that is heavier, and with the "
        "brief's persons, or two, side by side. Aprons, crossed stretchers and a plinth on feet "
        "help a slab, and so does a rail that is glued on. More than 1/360 of the span feels weak: "
        "common practice, from memory. The beam formula is the Wood Handbook's, 9-2, with the "
        "timber's mean stiffness. An estimate.",
        with_mends(_bends),
        limits=(SEAT_LOAD, HEAVY_SITTER, SITTERS_APART, SEAT_BENDS, AFTER_A_YEAR),
        quick=False,
    ),
    Check(
        "seat_strength",
        "Seat under those who sit on it",
        "Reckons the bending and the shear of what is sat on, and of the rails that carry it, with "
        "the same loads in their worst places, as a share of the timber's strength in the Wood "
        "Handbook. That strength is of clear, straight wood broken in minutes; knots, slanting "
        "grain and years take most of it, so a third is the most to be used: common practice, no "
        "source. Over 100 % it breaks. An estimate: local codes and a licensed engineer go before "
        "it.",
        with_mends(_strains),
        limits=(SEAT_LOAD, HEAVY_SITTER, SITTERS_APART, MOST_OF_STRENGTH),
        quick=False,
    ),
)
