"""Checks of a lid: whether it opens as far as it should, and stays open."""

from __future__ import annotations

from collections.abc import Iterator

from geometry.bench.bench import Bench
from geometry.bench.lid import LID, LID_LIPPING
from geometry.bench.lid_box_numbers import lid_box
from geometry.bench.lid_box_parameters import ON_STRIP
from geometry.checks.check import Check
from geometry.checks.limits_of_handling import LEAST_GRIP
from geometry.design.finding import Finding, Level, Mend
from geometry.solids.swinging import first_strike
from shared.units import angle_mark, length_mark

_HAIR = 1e-6  # degrees


def _blocked(bench: Bench) -> Iterator[Finding]:
    b = lid_box(bench.spec)
    # Its lippings turn with it.
    turning = tuple(p for p in bench.parts if p.name == LID or p.kind == LID_LIPPING)
    others = tuple(part for part in bench.parts if part not in turning)
    pin = (0.0, *b.pin_place)
    strikes = [first_strike(part, others, pin, b.opening_deg) for part in turning]
    met = min((one for one in strikes if one), key=lambda one: one.turn_deg, default=None)
    if met is None or met.turn_deg >= b.opening_deg - _HAIR:
        return
    yield Finding(
        check="lid_blocked",
        level=Level.DO_NOT_CUT,
        message=(
            f"{_struck(met.other.title, round(met.turn_deg, 1))} Its stay holds it at "
            f"{angle_mark(b.opening_deg)}."
        ),
        parts=(LID, met.other.name),
        place=met.place,
        amount=met.turn_deg,
        limit=b.opening_deg,
        unit="deg",
        mend=None if b.has_strip else _on_a_strip(),
    )


def _struck(other: str, turn_deg: float) -> str:
    if turn_deg <= 0.0:
        return f"The lid cannot be opened at all: “{other}” is in its way."
    return f"The lid strikes “{other}” when it is open {angle_mark(turn_deg)}."


def _on_a_strip() -> Mend:
    return Mend("Hang the lid on a fixed strip in front of the rest.", (("lid_hung", ON_STRIP),))


def _falls(bench: Bench) -> Iterator[Finding]:
    b = lid_box(bench.spec)
    balance = next(size.value for size in bench.derived if size.name == "lid_balance")
    if b.opening_deg >= balance:
        return
    yield Finding(
        check="lid_falls",
        level=Level.GOOD_TO_KNOW,
        message=(
            f"Open {angle_mark(b.opening_deg)} the lid has not passed its balance at "
            f"{angle_mark(balance)}: it falls shut unless the stay holds or slows it."
        ),
        parts=("lid",),
        place=(b.length / 2.0, b.pin_place[0], b.top),
        amount=b.opening_deg,
        limit=balance,
        unit="deg",
    )


def _grip(bench: Bench) -> Iterator[Finding]:
    b = lid_box(bench.spec)
    room, least = max(b.over_front, b.notch_depth), LEAST_GRIP.of(bench)
    if room >= least - 1e-9:
        return
    name = "lid_notch_depth" if b.notch_width > 0.0 else "lid_front"
    yield Finding(
        check="lid_grip",
        level=Level.THINK_AGAIN,
        message=f"Fingers find only {length_mark(room)} to lift the lid by.",
        parts=("lid", "box_front"),
        place=(b.length / 2.0, -b.depth, b.rim),
        amount=room,
        limit=least,
        mend=Mend(f"Give them {length_mark(least)}.", ((name, least),)),
    )


CHECKS: tuple[Check, ...] = (
    Check(
        "lid_blocked",
        "Lid that strikes something",
        "Turns the closed lid, as it is cut, about its hinges' pins until it first meets any other "
        "part of the bench: posts, rails and slats of a back rest, the box, its strip. It must "
        "open as far as its stay lets it; the limit is that angle. Walls behind the bench and "
        "things on the lid are not known here.",
        _blocked,
        ("lid",),
    ),
    Check(
        "lid_falls",
        "Lid that falls shut",
        "A lid stays open by itself once its middle has passed over the hinges' pins. Opened less, "
        "it needs a stay that locks, or slows its fall.",
        _falls,
        ("lid",),
    ),
    Check(
        "lid_grip",
        "Nothing to lift the lid by",
        "Looks for what fingers find to lift the lid by: its overhang in front, or a notch in the "
        "box. Fingertips need about {12 mm}: common practice, no source.",
        _grip,
        ("lid",),
        limits=(LEAST_GRIP,),
    ),
)
