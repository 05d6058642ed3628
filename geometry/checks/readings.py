"""A check of the sizes as they are read off the drawings: whether they add up as written."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from geometry.bench.bench import Bench
from geometry.checks.check import Check
from geometry.checks.limits_of_marking import READ_APART
from geometry.design.finding import Finding, Level, Mend
from geometry.dimensioning.sums import Sum, as_read, sums, written
from shared.units import Shown, length_mark

_MOST_TOLD = 6  # unlike terms that are written out
_SAME = 1e-6  # mm: of two that miss alike the first is told


def _adding_up(bench: Bench) -> Iterator[Finding]:
    most = READ_APART.of(bench)
    worst: dict[str, tuple[float, Sum]] = {}
    for one in sums(bench):
        read, total = as_read(one, bench.shown)
        apart = abs(read - total)
        if apart > most and apart > worst.get(one.name, (0.0, one))[0] + _SAME:
            worst[one.name] = apart, one
    for apart, one in worst.values():
        read, total = as_read(one, bench.shown)
        yield Finding(
            check=f"sum_of_{one.name}",
            level=Level.THINK_AGAIN,
            message=(
                f"As they are written, {_terms(one, bench.shown)} come to {length_mark(read)}, and "
                f"{one.title} is written {length_mark(total)}: {length_mark(apart)} apart. Set "
                "them so that they come out whole, or show sizes finer."
            ),
            parts=one.parts,
            place=one.place,
            amount=apart,
            limit=most,
            mend=_wholly(bench, one),
        )


def _terms(one: Sum, shown: Shown) -> str:
    """The sizes as written, those that are written alike together."""
    counted = Counter(round(written(term, shown), 6) for term in one.terms)
    rows = [
        f"{count} × {length_mark(size)}" if count > 1 else length_mark(size)
        for size, count in counted.items()
    ]
    more = [f"{len(rows) - _MOST_TOLD} more"] if len(rows) > _MOST_TOLD else []
    return " + ".join([*rows[:_MOST_TOLD], *more])


def _wholly(bench: Bench, one: Sum) -> Mend | None:
    """All numbers of a sum set to whole steps of what is shown."""
    step = bench.shown.printed_step
    changes = tuple(
        (name, value) for name, value in one.whole(step).items() if value != bench.spec.value(name)
    )
    if not changes:
        return None
    return Mend(f"Set their numbers to whole steps of {length_mark(step)}.", changes)


CHECKS: tuple[Check, ...] = (
    Check(
        "reading",
        "Sizes that do not add up as they are written",
        "Adds up sizes as a maker does who reads them off the drawing: openings and thicknesses "
        "against the length, boards against heights, fronts and gaps against their opening, each "
        "in the unit and to the fraction that is shown. Every written size is rounded, so they may "
        "miss a sum that is written too, and one of the two is cut. Less than {0.3 mm} is lost "
        "under a pencil line: common practice, no source.",
        _adding_up,
        limits=(READ_APART,),
    ),
)
