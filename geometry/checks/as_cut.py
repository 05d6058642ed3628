"""Checks of housings as they are marked and routed: whether each meets its partner."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from geometry.bench.as_cut import (
    BACK_EDGE,
    BOTTOM,
    FRONT_EDGE,
    INSIDE,
    LOWER_ENDS,
    TOP,
    Routed,
    along_name,
    as_drawn,
    drawn,
    front_arris,
    has_record,
    routed,
    stop_name,
)
from geometry.bench.bench import Bench
from geometry.bench.case_numbers import CaseNumbers, case_numbers
from geometry.bench.openings import SHELF, filled_with
from geometry.bench.partitions import Upright, uprights
from geometry.bench.shelves import height_name
from geometry.checks.check import Check
from geometry.checks.limits_of_joints import LEAST_COVER
from geometry.checks.limits_of_marking import MOST_MISSED
from geometry.design.finding import Finding, Level, Mend
from shared.units import length_mark


@dataclass(frozen=True, slots=True)
class _Miss:
    """What is wrong with an upright's housings: the amount in mm, in which board, in words."""

    amount: float
    where: str
    words: str
    level: Level
    mend: Mend | None


def _housings(bench: Bench) -> Iterator[Finding]:
    """One finding for each upright whose two housings do not stand opposite, or not where it is."""
    c = case_numbers(bench.spec)
    for at in uprights(c):
        misses = [*_sideways(bench, c, at), *_stops(bench, c, at)]
        if not misses:
            continue
        worst = max(misses, key=lambda miss: (miss.level is Level.DO_NOT_CUT, miss.amount))
        middle = at.x_left + c.partition_thickness / 2.0
        level = c.inside_high if worst.where == TOP else c.inside_low
        yield Finding(
            check="housing_misses",
            level=worst.level,
            message=f"{at.title}: {'; '.join(miss.words for miss in misses)}.",
            parts=(at.name, TOP, BOTTOM),
            place=(middle, -drawn(c, at).stop, level),
            amount=worst.amount,
            limit=MOST_MISSED.of(bench),
            mend=_mend(bench, at, misses),
        )


def _both(bench: Bench, at: Upright) -> dict[str, Routed]:
    return {where: routed(bench.spec, at, where) for where in (TOP, BOTTOM)}


def _sideways(bench: Bench, c: CaseNumbers, at: Upright) -> Iterator[_Miss]:
    """Housings that do not stand over one another, or that both stand where no upright is."""
    most, found, asked = MOST_MISSED.of(bench), _both(bench, at), drawn(c, at)
    apart = found[TOP].along - found[BOTTOM].along
    if abs(apart) > most:
        way = "right" if apart > 0.0 else "left"
        yield _Miss(
            abs(apart),
            TOP,
            f"its housing in the top lies {_mm(abs(apart))} farther {way} than the one in the "
            "bottom, and it would not stand upright",
            Level.DO_NOT_CUT,
            None,
        )
        return
    off = found[BOTTOM].along - asked.along
    if abs(off) > most:
        way = "right" if off > 0.0 else "left"
        yield _Miss(
            abs(off),
            BOTTOM,
            f"both of its housings are cut {_mm(abs(off))} farther {way} than it is drawn",
            Level.THINK_AGAIN,
            _where_it_is_cut(bench, c, at, found[BOTTOM].along),
        )


def _where_it_is_cut(bench: Bench, c: CaseNumbers, at: Upright, left: float) -> Mend:
    """The bench laid out anew, with the upright where its housings are."""
    name, value = at.name, left + c.partition_thickness / 2.0
    if at.end == "left":
        name, value = "left_inset", left
    elif at.end == "right":
        name, value = "right_inset", c.length - left - c.partition_thickness
    now = bench.spec.number(name)
    return Mend(f"Draw it where it is cut: {_mm(value)} instead of {_mm(now)}.", ((name, value),))


def _stops(bench: Bench, c: CaseNumbers, at: Upright) -> Iterator[_Miss]:
    """Housings that stop short of where the upright's tongue ends, or show in front of it."""
    most, hidden = MOST_MISSED.of(bench), max(0.0, c.cover - LEAST_COVER.of(bench))
    asked, found = drawn(c, at).stop, _both(bench, at)
    for where in (TOP, BOTTOM):
        forward = found[where].stop - asked
        if -most <= forward <= max(most, hidden):
            continue
        of = _because(bench, c, at, where)
        if forward < 0.0:
            words = f"in the {where} its housing stops {_mm(-forward)} short, and it stands out{of}"
        else:
            shows = max(0.0, forward - c.cover)
            bare = f"shows {_mm(shows)} long in front of it" if shows else "hardly hides its round"
            words = f"in the {where} its housing runs {_mm(forward)} too far and {bare}{of}"
        yield _Miss(abs(forward), where, words, Level.DO_NOT_CUT, None)


def _because(bench: Bench, c: CaseNumbers, at: Upright, where: str) -> str:
    """Why an equal distance from the front misses, where that is the reason."""
    spec = bench.spec
    if spec.word("stops_from") != FRONT_EDGE or (
        has_record(spec) and spec.number(stop_name(where, at.name))
    ):
        return ""
    more = front_arris(c, at, TOP) - front_arris(c, at, BOTTOM)
    deeper = "deeper" if more > 0.0 else "less deep"
    return (
        f", as the top's inside is {_mm(abs(more))} {deeper} here than the bottom's and both "
        "stops are marked from the front edges"
    )


def _mend(bench: Bench, at: Upright, misses: list[_Miss]) -> Mend | None:
    for miss in misses:
        if miss.mend is not None and len(misses) == 1:
            return miss.mend
    if not has_record(bench.spec):
        return Mend("Mark the stops from the back edges.", (("stops_from", BACK_EDGE),))
    names = {name(where, at.name) for name in (along_name, stop_name) for where in (TOP, BOTTOM)}
    asked = {name: value for name, value in as_drawn(bench.spec).items() if name in names}
    changes = [(name, v) for name, v in asked.items() if v != bench.spec.value(name)]
    return Mend("Fill them, rout them again as drawn, and record that.", tuple(changes))


def _mm(value: float) -> str:
    return length_mark(round(value, 2))


def _shelf_housings(bench: Bench) -> Iterator[Finding]:
    """The same height marked from lower ends that do not lie at one height."""
    if bench.spec.word("shelves_from") != LOWER_ENDS:
        return
    c = case_numbers(bench.spec)
    for at in filled_with(bench.spec, SHELF):
        low = {
            name: c.floor if name.startswith("end_panel") else c.inside_low - c.housing_depth
            for name in (at.left, at.right)
        }
        apart = low[at.right] - low[at.left]
        if abs(apart) <= MOST_MISSED.of(bench):
            continue
        higher = at.right if apart > 0.0 else at.left
        under = bench.spec.number(height_name(at.index))
        yield Finding(
            check="shelf_housing_misses",
            level=Level.DO_NOT_CUT,
            message=(
                f"The shelf in {at.title}: {bench.part(higher).title.lower()} begins "
                f"{_mm(abs(apart))} higher than the piece on its other side, so the same distance "
                "from the lower ends puts one of its housings as much higher than the other."
            ),
            parts=(f"shelf_{at.index}", at.left, at.right),
            place=(at.x_right if apart > 0.0 else at.x_left, -at.front, at.z_low + under),
            amount=abs(apart),
            limit=MOST_MISSED.of(bench),
            mend=Mend("Mark them from the inside of the bottom.", (("shelves_from", INSIDE),)),
        )


CHECKS: tuple[Check, ...] = (
    Check(
        "housings_meet",
        "Housings that miss their partners",
        "Compares the two housings of each partition, in top and bottom, as they are marked or "
        "were routed. Where the front leans, or one board is deeper, the same distance from the "
        "front edges is not the same place; a housing that starts elsewhere leaves the partition "
        "out of upright, one that stops short does not let it home, and one that runs too far "
        "shows. Half a millimetre is what a wide board gives: common practice, no source.",
        _housings,
        ("case", "partitions"),
        limits=(MOST_MISSED, LEAST_COVER),
    ),
    Check(
        "shelf_housings_meet",
        "Shelf housings at two heights",
        "An end panel reaches down past the bottom, and a partition only to the floor of its "
        "housing. The same distance marked from the lower ends of both puts a shelf's two housings "
        "at two heights, and the shelf slopes. The limit is half a millimetre, common practice, no "
        "source.",
        _shelf_housings,
        ("shelves",),
        limits=(MOST_MISSED,),
    ),
)
