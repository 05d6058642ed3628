"""Checks of what holds the base to the seat."""

from __future__ import annotations

from collections.abc import Iterator

from geometry.bench.above import above
from geometry.bench.bench import Bench
from geometry.bench.fixing_numbers import (
    LEAST_EDGE,
    fixed,
    fixing_numbers,
    least_tongue,
    screw_at,
)
from geometry.checks.check import Check
from geometry.checks.limits_of_wood import LEAST_THREAD, LEAST_TONGUE
from geometry.checks.where import middle_of_named
from geometry.design.finding import Finding, Level, Mend
from shared.units import length_mark


def _lacking(bench: Bench) -> Iterator[Finding]:
    found = fixed(bench.spec)
    by_reason: dict[str, list[tuple[str, int]]] = {}
    for bearer, number, why in found.lacking:
        by_reason.setdefault(why, []).append((bearer.part, number))
    # Reasons that concern the same pieces are one finding: it is told apart by its pieces.
    by_parts: dict[tuple[str, ...], list[tuple[str, int]]] = {}
    for why, rows in by_reason.items():
        parts = tuple(dict.fromkeys(part for part, _ in rows))
        by_parts.setdefault(parts, []).append((why, sum(number for _, number in rows)))
    for parts, reasons in by_parts.items():
        number = sum(number for _, number in reasons)
        why = "; ".join(why for why, _ in reasons)
        names = " and ".join(f"“{bench.part(part).title}”" for part in parts[:4])
        what = "fixing finds" if number == 1 else "fixings find"
        yield Finding(
            check="fixing_lacking",
            level=Level.THINK_AGAIN,
            message=f"{number} {what} no place on {names}: {why}.",
            parts=parts,
            place=middle_of_named(bench, parts[0]),
            amount=float(len(found.places)),
            limit=float(len(found.places) + number),
            unit="",
        )


def _tongues(bench: Bench) -> Iterator[Finding]:
    f = fixing_numbers(bench.spec)
    places = fixed(bench.spec).places
    if not f.buttons or not places:
        return
    worst = min(places, key=lambda place: least_tongue(f, place))
    left, least = least_tongue(f, worst), LEAST_TONGUE.of(bench)
    if left >= least - 1e-9:
        return
    needed = f.engaged + least - left
    yield Finding(
        check="button_slips",
        level=Level.THINK_AGAIN,
        message=(
            f"When the seat has moved, only {length_mark(max(0.0, left))} of a button's tongue is "
            "left in its mortise."
        ),
        parts=(f"button_{worst.name}", worst.bearer.part),
        place=worst.at,
        amount=left,
        limit=least,
        mend=Mend(f"Let them stand in by {length_mark(needed)}.", (("button_engaged", needed),)),
    )


def _threads(bench: Bench) -> Iterator[Finding]:
    f, board = fixing_numbers(bench.spec), above(bench.spec)
    places, least = fixed(bench.spec).places, LEAST_THREAD.of(bench)
    if not places or f.bite >= least - 1e-9:
        return
    mend = None
    if board.thickness - 3.0 >= least:
        mend = Mend(f"Let them go in {length_mark(least)}.", (("fixing_bite", least),))
    yield Finding(
        check="short_thread",
        level=Level.THINK_AGAIN,
        message=f"The screws hold in only {length_mark(f.bite)} of the seat.",
        parts=(board.part,),
        place=screw_at(f, places[0]),
        amount=f.bite,
        limit=least,
        mend=mend,
    )


CHECKS: tuple[Check, ...] = (
    Check(
        "fixing_lacking",
        "Fixings without a place",
        "Counts the fixings that were asked for and have no place: where the stretch between two "
        "joints is too short, the piece too thin or too low, or the hole less than "
        f"{length_mark(LEAST_EDGE)} from the seat's edge. The limit is the number asked for.",
        _lacking,
        ("fixings",),
    ),
    Check(
        "button_slips",
        "Button slipping out",
        "As the seat shrinks, a button that stands square to the movement draws out of its "
        "mortise. The movement is that of the Wood Handbook, equation 13-2; {5 mm} should stay in: "
        "common practice, no source.",
        _tongues,
        ("fixings",),
        limits=(LEAST_TONGUE,),
    ),
    Check(
        "short_thread",
        "Screws that hold in little wood",
        "A screw holds by the thread in the seat; it cannot go deeper than {3 mm} under the upper "
        "face. Less than {8 mm} pulls out: common practice, no source.",
        _threads,
        ("fixings",),
        limits=(LEAST_THREAD,),
    ),
)
