"""Advice on the seat: how high, how deep, how long.

mm.  Height: a share of the lower leg, for what the bench is for, and the shoe.  Depth: the upper
leg of the smallest less a gap, and enough of the largest's.  Length: shoulders and elbow room.  The
shares, gaps and their sources are in ``shared.seating``.
"""

from __future__ import annotations

from dataclasses import dataclass

from geometry.advice.advised import Advice
from geometry.advice.sitters import Sitters, Spread, sitters
from geometry.advice.taking import for_height, for_value
from geometry.bench.overall import seat_height
from geometry.bench.rest_numbers import rest_numbers
from geometry.bench.rest_parameters import has_rest
from geometry.design.brief import ADA_BENCH, LONG_SIT, SHORT_SIT, WEAK_KNEES, Brief
from geometry.design.spec import BenchSpec
from shared.seating import (
    ADA,
    ADA_DEPTH,
    ADA_HEIGHT,
    ADA_LENGTH,
    BEST_RISING,
    ELBOW_ROOM,
    KNEE_GAP,
    LEAST_LEG,
    LEG_RISING,
    PRACTICE,
    SHORT_THIGH_SHARE,
    THIGH_SHARE,
    Span,
)
from shared.units import length_mark


@dataclass(frozen=True, slots=True)
class _Use:
    """Shares of the lower leg: the least and the greatest, and what is best; and why."""

    least: float
    most: float
    best: float
    thigh: float
    why: str
    source: str


_LEAST, _RISING_LOW, _RISING_HIGH = LEAST_LEG.low or 0.0, LEG_RISING.low or 0.0, LEG_RISING.high
assert _RISING_HIGH is not None

_USES = {
    SHORT_SIT: _Use(
        _LEAST,
        BEST_RISING,
        1.0,
        SHORT_THIGH_SHARE,
        "on a short sit feet should stand flat and getting up be easy, which it is from 100 to "
        "110 % of the lower leg and hard below 80 %",
        f"{LEG_RISING.source}; {LEAST_LEG.source}",
    ),
    LONG_SIT: _Use(
        _LEAST,
        1.0,
        1.0,
        THIGH_SHARE,
        "on a long sit a seat higher than the lower leg presses under the thigh, and one lower "
        "than 80 % of it is hard to leave",
        f"{PRACTICE} for the upper end; {LEAST_LEG.source}",
    ),
    WEAK_KNEES: _Use(
        _RISING_LOW,
        _RISING_HIGH,
        BEST_RISING,
        SHORT_THIGH_SHARE,
        "older people stood up more often from seats of 100 to 120 % of the lower leg, and no "
        "better from 120 than from 110 %",
        LEG_RISING.source,
    ),
}


def height_advice(spec: BenchSpec, brief: Brief) -> Advice | None:
    """How high one should sit; None where nothing that bears on it has been said."""
    people, use = sitters(brief), _USES[brief.use]
    span, best, why, source = None, None, "", ""
    if people is not None and people.lower_leg.small > 0.0:
        leg, shoes = people.lower_leg, brief.shoes
        low, high = use.least * leg.large + shoes, use.most * leg.small + shoes
        best = use.best * leg.middle + shoes
        why = (
            f"For {people.called}, {_legs(people, leg)} and {length_mark(shoes)} of shoe: {use.why}"
        )
        if low > high:
            low, high = high, low
            best = (low + high) / 2.0
            why += (
                "; no one height suits the smallest and the largest of them, and this lies between"
            )
        span, source = (low, high), f"{people.source}; {use.source}"
    span, why, source = _held_to(brief, ADA_HEIGHT, span, why, source)
    if span is None:
        return None
    wanted = _nearest(best if best is not None else seat_height(spec), span)
    changes, hindrance = for_height(spec, wanted)
    now = seat_height(spec)
    return _advice(
        "seat_height", "Seat height", now, span, wanted, f"{why}.", source, changes, hindrance
    )


def depth_advice(spec: BenchSpec, brief: Brief) -> Advice | None:
    """How deep the seat should be where it is no deeper than its bottom."""
    people, use = sitters(brief), _USES[brief.use]
    span, best, why, source = None, None, "", ""
    if people is not None and people.upper_leg.small > 0.0:
        leg = people.upper_leg
        low, high = use.thigh * leg.large, leg.small - KNEE_GAP
        carried = "two thirds" if use.thigh == THIGH_SHARE else "half"
        why = (
            f"For {people.called}: {length_mark(KNEE_GAP)} should stay free behind the knee of an "
            f"upper leg of {length_mark(leg.small)}, and {carried} of one of "
            f"{length_mark(leg.large)} be carried"
        )
        best = high if brief.use == LONG_SIT else (low + high) / 2.0
        if low > high:
            low, high = high, low
            best = (low + high) / 2.0
            why += "; both at once cannot be, and this lies between"
        span, source = (low, high), f"{people.source}; {PRACTICE}"
    span, why, source = _held_to(brief, ADA_DEPTH, span, why, source)
    if span is None:
        return None
    taken = _behind_rest(spec)
    now = spec.number("depth") - taken
    wanted = _nearest(best if best is not None else now, span)
    changes, hindrance = for_value(spec, "depth", wanted + taken)
    title = "Seat depth in front of the back rest" if taken > 0.0 else "Seat depth"
    return _advice("seat_depth", title, now, span, wanted, f"{why}.", source, changes, hindrance)


def _behind_rest(spec: BenchSpec) -> float:
    """How much of the seat lies behind the front of a back rest's posts, at the seat's height."""
    return max(0.0, -rest_numbers(spec).front) if has_rest(spec) else 0.0


def length_advice(spec: BenchSpec, brief: Brief) -> Advice | None:
    """How long the seat should be for those who sit on it at once."""
    people, now = sitters(brief), spec.number("length")
    low, why, source = 0.0, "", ""
    if people is not None and people.shoulders.large > 0.0 and brief.persons:
        each = people.shoulders.large + ELBOW_ROOM
        low = brief.persons * each
        why = (
            f"{brief.persons:g} beside each other need {length_mark(each)} each: shoulders of "
            f"{length_mark(people.shoulders.large)} and {length_mark(ELBOW_ROOM)} for the elbows"
        )
        source = f"{people.source}; {PRACTICE}"
    least = ADA_LENGTH.low or 0.0
    if brief.standard == ADA_BENCH and low < least:
        low, source = least, ADA_LENGTH.source
        why = f"{ADA} asks for at least {length_mark(low)}"
    if not low:
        return None
    high = brief.room_length or None
    if high is not None and high < low:
        why += f"; the room leaves {length_mark(high)}"
    wanted = max(now, low) if high is None else min(max(now, low), high)
    changes, hindrance = for_value(spec, "length", wanted)
    return Advice(
        "seat_length",
        "Length",
        "mm",
        f"{why}.",
        source,
        now,
        min(low, high) if high is not None else low,
        high,
        wanted,
        changes,
        hindrance,
    )


def _legs(people: Sitters, leg: Spread) -> str:
    if not people.several:
        return f"a lower leg of {length_mark(leg.middle)}"
    return f"lower legs of {length_mark(leg.small)} to {length_mark(leg.large)}"


_Pair = tuple[float, float]


def _held_to(
    brief: Brief, rule: Span, span: _Pair | None, why: str, source: str
) -> tuple[_Pair | None, str, str]:
    """The span within that of the standard, where the brief is held to it; the standard wins."""
    if brief.standard != ADA_BENCH or rule.low is None or rule.high is None:
        return span, why, source
    asks = f"{ADA} asks for {length_mark(rule.low)} to {length_mark(rule.high)}"
    if span is None:
        return (rule.low, rule.high), asks, rule.source
    low, high = max(span[0], rule.low), min(span[1], rule.high)
    if low > high:
        # Nothing suits both: the nearest that the standard allows.
        low = high = rule.low if span[1] < rule.low else rule.high
    return (low, high), f"{why}; {asks}", f"{source}; {rule.source}"


def _nearest(value: float, span: _Pair) -> float:
    """The value within the span, to the millimetre where the span has one."""
    held = min(max(value, span[0]), span[1])
    whole = float(round(held))
    return whole if span[0] <= whole <= span[1] else held


def _advice(
    name: str,
    title: str,
    now: float,
    span: _Pair,
    wanted: float,
    reason: str,
    source: str,
    changes: tuple[tuple[str, float | str], ...],
    hindrance: str,
) -> Advice:
    return Advice(
        name, title, "mm", reason, source, now, span[0], span[1], wanted, changes, hindrance
    )
