"""What a value may be: the catalogue's own limits and the rules that bind values together.

For one value at a time, the range that the rules leave around the value of now is found from each
rule's slack.  Most are straight lines, and three values tell where they end; along a bent one the
first value that fails is looked for step by step, and the limit by halving the interval before it.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import lru_cache

from geometry.bench.catalogue import SLACK, broken_rules, parameter, rules
from geometry.bench.constraint import Constraint
from geometry.bench.follow import changed
from geometry.design.parameter import Parameter, Value
from geometry.design.spec import BenchSpec
from shared.errors import CannotBuild, UnreadableValue, ValueOutOfRange

_WRITTEN_OUT = 1e7  # a larger number is not repeated: it may have hundreds of figures
STEPS = 32  # at how many places, at least, a rule that is no straight line is asked


@dataclass(frozen=True, slots=True)
class Limits:
    """The least and greatest value that can be built now, each with its reason."""

    minimum: float
    maximum: float
    why_minimum: str
    why_maximum: str


def set_values(spec: BenchSpec, changes: Mapping[str, Value]) -> BenchSpec:
    """``spec`` with some values changed, all at once, so that their order does not matter.

    What follows from the change (see ``follow``) moves along, unless it is given too.
    UnknownName, UnreadableValue for a word where a number belongs (or the other way round),
    ValueOutOfRange with the nearest limit, CannotBuild when the values do not go together.
    """
    for name, value in changes.items():
        try:
            _check_alone(parameter(name), value)
        except ValueOutOfRange as refused:
            if len(changes) > 1 or broken_rules(spec):
                raise
            raise _for_this_bench(spec, name, refused) from None
    wanted = changed(spec, changes)
    broken = broken_rules(wanted)
    if not broken:
        return wanted
    if len(changes) == 1:
        (name, value), *_ = changes.items()
        _refuse_one(spec, name, value, broken[0])
    raise CannotBuild(
        f"These numbers make no bench together: {broken[0].because}.",
        where=", ".join(parameter(name).title for name in sorted(broken[0].reads & set(changes))),
        remedy="Change one of them, or set the values they depend on as well.",
    )


def _for_this_bench(spec: BenchSpec, name: str, refused: ValueOutOfRange) -> ValueOutOfRange:
    """The same refusal of what no bench has, with the limit that this one has."""
    row, allowed = parameter(name), limits(spec, name)
    low, high = _written(row, allowed.minimum), _written(row, allowed.maximum)
    return ValueOutOfRange(
        refused.what,
        where=refused.where,
        remedy=f"On this bench it goes from {low} to {high}.",
        limit=allowed.minimum if refused.limit == row.minimum else allowed.maximum,
    )


def _refuse_one(spec: BenchSpec, name: str, value: Value, broken: Constraint) -> None:
    row = parameter(name)
    if isinstance(value, str) or broken_rules(spec):
        return
    allowed = limits(spec, name)
    if value > allowed.maximum:
        bound, words, why = allowed.maximum, "The most it can be is", allowed.why_maximum
    elif value < allowed.minimum:
        bound, words, why = allowed.minimum, "The least it can be is", allowed.why_minimum
    else:
        return
    raise ValueOutOfRange(
        f"{_written(row, value)} can't be built: {why or broken.because}.",
        where=row.title,
        remedy=f"{words} {_written(row, bound)}.",
        limit=bound,
    )


def _check_alone(row: Parameter, value: Value) -> None:
    if row.unit == "text":
        if not isinstance(value, str) or row.read(value) != value:
            raise UnreadableValue(
                f"{str(value)[:40]!r} is not written as it is kept.", where=row.title
            )
        return
    if row.unit == "choice":
        if value not in row.choices:
            raise UnreadableValue(
                f"{value!r} is not one of its choices.",
                where=row.title,
                remedy=f"Choose {' or '.join(row.choices)}.",
            )
        return
    if isinstance(value, str) or not math.isfinite(value):
        raise UnreadableValue(f"{value!r} is not a number.", where=row.title)
    if row.unit == "count" and value != round(value):
        raise UnreadableValue(f"{value} is not a whole number.", where=row.title)
    if not row.minimum <= value <= row.maximum:
        low = value < row.minimum
        bound = row.minimum if low else row.maximum
        size = _written(row, value) if abs(value) < _WRITTEN_OUT else "This"
        raise ValueOutOfRange(
            f"{size} is {'less' if low else 'more'} than any bench has.",
            where=row.title,
            remedy=f"It goes from {_written(row, row.minimum)} to {_written(row, row.maximum)}.",
            limit=bound,
        )


def _written(row: Parameter, value: float) -> str:
    if row.unit == "count":
        return str(round(value))
    return f"{{{value:.6g} {row.unit}}}"


@lru_cache(maxsize=4096)
def limits(spec: BenchSpec, name: str) -> Limits:
    """The range of one number, all others staying as they are; UnknownName, or AssertionError
    for a choice or a text.  ``spec`` itself must be one that can be built."""
    row = parameter(name)
    assert row.is_number, name
    if row.unit == "count":
        return _count_limits(spec, row)
    now = spec.number(name)
    known: dict[float, BenchSpec] = {}  # most rules are asked at the same few values

    def with_value(value: float) -> BenchSpec:
        if value not in known:
            known[value] = changed(spec, {name: value})
        return known[value]

    low, why_low = row.minimum, "that is the least for any bench"
    high, why_high = row.maximum, "that is the most for any bench"
    for rule in rules(spec):
        if name not in rule.reads:
            continue
        reach = _reach(with_value, rule, now, high)
        if reach < high:
            high, why_high = reach, rule.because
        reach = _reach(with_value, rule, now, low)
        if reach > low:
            low, why_low = reach, rule.because
    return Limits(low, high, why_low, why_high)


def _reach(
    with_value: Callable[[float], BenchSpec], rule: Constraint, good: float, bad: float
) -> float:
    """The farthest value from ``good`` toward ``bad`` up to which the rule holds all the way."""

    def slack(value: float) -> float:
        return rule.slack(with_value(value))

    start, downward, at_good, at_bad = good, bad < good, slack(good), slack(bad)
    # Where rounding has left a rule a hair short already, no more is asked than it holds now.
    enough = min(0.0, at_good)
    middle = slack((good + bad) / 2.0)
    straight = not rule.finest and abs(middle - (at_good + at_bad) / 2.0) < SLACK
    if straight and at_bad >= -SLACK:
        return bad
    if not straight:
        # A bent rule may give way in between and hold again farther on.
        steps = max(STEPS, math.ceil(abs(bad - good) / rule.finest)) if rule.finest else STEPS
        gap = _first_gap(slack, good, bad, steps)
        if gap is None:
            return bad
        good, bad = gap
        at_good, at_bad = slack(good), slack(bad)
    if at_good <= at_bad:
        return good
    guess = good + (bad - good) * at_good / (at_good - at_bad)
    if straight and abs(slack(guess)) < SLACK:
        good = guess
    else:
        for _ in range(60):
            middle = (good + bad) / 2.0
            if slack(middle) >= enough:
                good = middle
            else:
                bad = middle
            if abs(good - bad) < 1e-8:
                break
    # Written with six decimals, never beyond the rule and never short of the value of now.
    written = round(good, 6)
    if slack(written) < -SLACK:
        written += math.copysign(1e-6, start - good)
    if slack(written) < -SLACK:
        written = good
    return min(written, start) if downward else max(written, start)


def _first_gap(
    slack: Callable[[float], float], good: float, bad: float, steps: int
) -> tuple[float, float] | None:
    """The last value that holds before the first that does not, going from ``good`` to ``bad``."""
    last = good
    for k in range(1, steps + 1):
        value = good + (bad - good) * k / steps
        if slack(value) < -SLACK:
            return last, value
        last = value
    return None


def _count_limits(spec: BenchSpec, row: Parameter) -> Limits:
    now = spec.count(row.name)
    low, why_low = _counted(spec, row, now, round(row.minimum))
    high, why_high = _counted(spec, row, now, round(row.maximum))
    return Limits(
        float(low),
        float(high),
        why_low or "there can't be fewer",
        why_high or "that is the most for any bench",
    )


def _counted(spec: BenchSpec, row: Parameter, now: int, end: int) -> tuple[int, str]:
    """The farthest number from ``now`` toward ``end`` that fits, and the rule that ends it."""
    if _concerns_no_rule(spec, row.name, end):
        return end, ""
    step = 1 if end > now else -1
    reached = now
    for number in range(now + step, end + step, step) if end != now else ():
        broken = broken_rules(changed(spec, {row.name: float(number)}))
        if broken:
            return reached, broken[0].because
        reached = number
    return reached, ""


def _concerns_no_rule(spec: BenchSpec, name: str, end: int) -> bool:
    """Whether no rule reads a number, and nothing else follows it: a seed has thousands of values
    that need no trying."""
    if any(name in rule.reads for rule in rules(spec)):
        return False
    there = changed(spec, {name: float(end)})
    return there == spec.changed({name: float(end)}) and rules(there) == rules(spec)
