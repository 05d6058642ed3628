"""Mends of what bends too far or is strained too much: a size that is enough, found by trying.

How much more is needed follows from the power law of what fails; what else changes with it (a
housing's depth stays, a span shrinks) is why it is tried on the bench itself.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Generator, Iterable, Iterator
from dataclasses import dataclass, replace
from functools import partial

from geometry.bench.bench import Bench
from geometry.bench.catalogue import parameter
from geometry.checks.limits_of_loads import SEAT_LOAD
from geometry.checks.limits_of_strength import HEAVY_SITTER, SITTERS_APART
from geometry.checks.offers import bench_with
from geometry.design.finding import Finding, Level, Mend, Seeking
from geometry.primitives.frame import Vec3
from geometry.strength.loads import Loads, loads_of
from shared.materials import weight_of
from shared.seating import GRAVITY
from shared.units import length_mark

_STEP = 0.5  # mm, to which sizes are rounded up
_TRIES = 5
_NEAR = 4  # steps below it that are tried
_MORE = 1.12  # how much larger the next size is where one is not enough


@dataclass(frozen=True, slots=True)
class Grown:
    """A parameter to be made larger by a factor, in these words before and after the length."""

    name: str
    words: str
    way: str
    factor: float


@dataclass(frozen=True, slots=True)
class Size:
    """A parameter that can be made larger, and the words for it."""

    name: str
    words: str
    way: str = "thick"

    def grown(self, factor: float) -> Grown:
        return Grown(self.name, self.words, self.way, factor)


Way = Grown | Mend


def loads_on(bench: Bench) -> Loads:
    """Who sits on a bench, by its brief and by the maker's limits."""
    return loads_of(
        bench.brief,
        single=SEAT_LOAD.of(bench),
        sitter=HEAVY_SITTER.of(bench),
        room=SITTERS_APART.of(bench),
    )


def own_weight(bench: Bench) -> float:
    """N, of the pieces before they are cut: a little too much."""
    return GRAVITY * sum(
        weight_of(blank.length * blank.width * blank.thickness, part.material)
        for part in bench.parts
        for blank in (part.shape.blank,)
    )


@dataclass(frozen=True, slots=True)
class Told:
    """A finding, and the ways to mend it in the order in which they are tried."""

    finding: Finding
    ways: tuple[Way, ...]


def share_told(
    check: str,
    level: Level,
    message: str,
    parts: tuple[str, ...],
    place: Vec3,
    share: float,
    limit: float,
    ways: tuple[Way, ...],
) -> Told:
    """An estimated share of strength in %, against the most of it that is to be used."""
    finding = Finding(
        check=check,
        level=level,
        message=f"{message}: an estimate.",
        parts=parts,
        place=place,
        amount=share,
        limit=limit,
        unit="%",
        estimate=True,
    )
    return Told(finding, ways)


Look = Callable[[Bench], Iterable[Told]]
_Trying = Generator[None, None, bool]


def with_mends(look: Look) -> Callable[[Bench], Iterator[Finding]]:
    """A check that tells what ``look`` finds; the first way that cures it is sought when asked."""

    def run(bench: Bench) -> Iterator[Finding]:
        for told in look(bench):
            yield replace(told.finding, seek=partial(_strengthened, bench, told, look))

    return run


def _strengthened(bench: Bench, told: Told, look: Look) -> Seeking:
    """None if no way cures."""

    def cures(mend: Mend) -> _Trying:
        yield
        mended = bench_with(bench, mend)
        return mended is not None and not any(
            _of_same_parts(still.finding, told.finding) for still in look(mended)
        )

    for way in told.ways:
        if isinstance(way, Mend):
            if (yield from cures(way)):
                return way
            continue
        least = yield from _least(bench.spec.number(way.name), way, cures)
        if least is not None:
            return least
    return None


def _of_same_parts(one: Finding, other: Finding) -> bool:
    return one.check == other.check and not set(one.parts).isdisjoint(other.parts)


def _least(now: float, way: Grown, cures: Callable[[Mend], _Trying]) -> Seeking:
    """The least size in whole steps that cures, near what the law says is enough."""
    most = math.floor(parameter(way.name).maximum / _STEP)
    steps = min(math.ceil(now * way.factor / _STEP), most)
    failed = max(math.floor(now / _STEP), steps - _NEAR)
    for _ in range(_TRIES):
        if (yield from cures(_sized(way, steps))):
            break
        if steps == most:
            return None
        failed, steps = steps, min(most, math.ceil(steps * _MORE))
    else:
        return None
    while steps - failed > 1:
        middle = (steps + failed) // 2
        if (yield from cures(_sized(way, middle))):
            steps = middle
        else:
            failed = middle
    return _sized(way, steps)


def _sized(way: Grown, steps: int) -> Mend:
    size = steps * _STEP
    return Mend(f"{way.words} {length_mark(size)} {way.way}.", ((way.name, size),))
