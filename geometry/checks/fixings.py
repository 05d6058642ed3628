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
from geometry.cuts.bore import Bore
from geometry.cuts.housing import StoppedHousing
from geometry.design.finding import Finding, Level, Mend
from shared.units import length_mark

LEAST_TONGUE = 5.0  # mm of tongue that must stay in its mortise; common practice, no source
LEAST_THREAD = 8.0  # mm of screw in the seat; common practice, no source
LEAST_OVER = 1.0  # mm between a pilot hole and the floor of a housing above it


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
        names = " and ".join(bench.part(part).title.lower() for part in parts[:4])
        what = "fixing finds" if number == 1 else "fixings find"
        yield Finding(
            check="fixing_lacking",
            level=Level.THINK_AGAIN,
            message=f"{number} {what} no place on {names}: {why}.",
            parts=parts,
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
    left = least_tongue(f, worst)
    if left >= LEAST_TONGUE - 1e-9:
        return
    needed = f.engaged + LEAST_TONGUE - left
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
        limit=LEAST_TONGUE,
        mend=Mend(f"Let them stand {length_mark(needed)} in.", (("button_engaged", needed),)),
    )


def _threads(bench: Bench) -> Iterator[Finding]:
    f, board = fixing_numbers(bench.spec), above(bench.spec)
    places = fixed(bench.spec).places
    if not places or f.bite >= LEAST_THREAD - 1e-9:
        return
    mend = None
    if board.thickness - 3.0 >= LEAST_THREAD:
        sentence = f"Let them go {length_mark(LEAST_THREAD)} in."
        mend = Mend(sentence, (("fixing_bite", LEAST_THREAD),))
    yield Finding(
        check="short_thread",
        level=Level.THINK_AGAIN,
        message=f"The screws hold in only {length_mark(f.bite)} of the seat.",
        parts=(board.part,),
        place=screw_at(f, places[0]),
        amount=f.bite,
        limit=LEAST_THREAD,
        mend=mend,
    )


def _into_housings(bench: Bench) -> Iterator[Finding]:
    """Pilot holes that come up through the floor of a housing."""
    f, name = fixing_numbers(bench.spec), above(bench.spec).part
    board = bench.part(name)
    thickness = board.shape.blank.thickness
    bores = {
        (cut.x, cut.y): cut
        for joint in bench.joints
        if joint.name.startswith("fixing_") and joint.parts[1] == name
        for cut in joint.cuts_second
        if isinstance(cut, Bore)
    }
    for cut in board.shape.cuts:
        if not isinstance(cut, StoppedHousing):
            continue
        left = thickness - cut.depth - f.bite
        for bore in bores.values():
            r = bore.diameter / 2.0
            beside = max(cut.x_low - bore.x, bore.x - cut.x_high, bore.y - cut.stop)
            if beside >= r or left >= LEAST_OVER - 1e-9:
                continue
            yield Finding(
                check="screw_in_housing",
                level=Level.DO_NOT_CUT,
                message=(
                    f"A screw would come up under an upright: {length_mark(max(0.0, left))} is "
                    "left between its hole and the housing."
                ),
                parts=(name,),
                place=board.frame.to_bench((bore.x, bore.y, thickness)),
                amount=left,
                limit=LEAST_OVER,
                mend=_shorter(thickness - cut.depth - LEAST_OVER),
            )
            return


def _shorter(bite: float) -> Mend | None:
    if bite < 6.0:
        return None
    return Mend(f"Let the screws go {length_mark(bite)} in.", (("fixing_bite", bite),))


CHECKS: tuple[Check, ...] = (
    Check(
        "fixing_lacking",
        "Fixings without a place",
        "Counts the fixings that were asked for and have no place: where the stretch between two "
        "joints is too short, the piece too thin or too low, or the hole less than "
        f"{LEAST_EDGE:g} mm from the seat's edge. The limit is the number asked for.",
        _lacking,
        ("fixings",),
    ),
    Check(
        "button_slips",
        "Button slipping out",
        "As the seat shrinks, a button that stands square to the movement draws out of its "
        "mortise. The movement is that of the Wood Handbook, equation 13-2; 5 mm should stay in: "
        "common practice, no source.",
        _tongues,
        ("fixings",),
    ),
    Check(
        "short_thread",
        "Screws that hold in little wood",
        "A screw holds by the thread in the seat; it cannot go deeper than 3 mm under the upper "
        "face. Less than 8 mm pulls out: common practice, no source.",
        _threads,
        ("fixings",),
    ),
    Check(
        "screw_in_housing",
        "Screw coming up into a housing",
        "A pilot hole in the underside of the bottom and a housing in its inside can meet. The "
        "limit is 1 mm of wood between them.",
        _into_housings,
        ("fixings", "partitions"),
    ),
)
