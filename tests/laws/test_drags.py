"""Drags: there and back is no change, and what is under the hand follows the hand."""

from __future__ import annotations

import random

import pytest

from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.catalogue import PARAMETERS
from geometry.bench.limits import limits
from geometry.design.spec import BenchSpec
from geometry.dimensioning.bench_dimensions import dimensions
from geometry.dimensioning.drag import drag
from geometry.dimensioning.handholds import handholds
from geometry.dimensioning.pull import Handhold, Pull

FAR = 10_000.0  # mm: beyond any limit


def pulls(bench: Bench) -> tuple[Pull, ...]:
    """Each that dimensions and handholds have, once."""
    found = [one.pull for one in dimensions(bench) if one.pull is not None]
    found += [one.pull for one in handholds(bench)]
    return tuple(dict.fromkeys(found))


def moved(pull: Pull, by: float) -> tuple[float, float]:
    return (pull.along[0] * by, pull.along[1] * by)


def test_a_hand_that_returns_leaves_the_bench_as_it_was(bench: Bench) -> None:
    for pull in pulls(bench):
        for step in (None, 1.0):
            assert drag(bench.spec, pull, (0.0, 0.0), step).spec == bench.spec


def test_dragged_there_let_go_and_dragged_back(bench: Bench) -> None:
    """Two drags, each from where the last one let go: the same bench to a hair."""
    dice = random.Random(bench.spec.number("depth"))
    for pull in pulls(bench):
        by = dice.uniform(-40.0, 40.0)
        there = drag(bench.spec, pull, moved(pull, by), None)
        if there.stopped_by:
            continue
        back = drag(there.spec, pull, moved(pull, -by), None)
        same(back.spec, bench.spec, pull)


def same(first: BenchSpec, second: BenchSpec, pull: Pull) -> None:
    for name, value in second.entries:
        if isinstance(value, str):
            assert first.value(name) == value, (pull, name)
        else:
            # Limits are written to a millionth, which is where a drag along one of them ends.
            assert first.number(name) == pytest.approx(value, abs=1e-6), (pull, name)


def test_a_drag_past_the_limit_stops_at_it_and_says_why(bench: Bench) -> None:
    for pull in pulls(bench):
        allowed = limits(bench.spec, pull.parameter)
        ends = []
        for by in (-FAR, FAR):
            dragged = drag(bench.spec, pull, moved(pull, by), None)
            if pull.height:
                continue  # a lean grows ever slower with the hand
            assert dragged.stopped_by, pull
            assert dragged.spec.number(pull.parameter) == dragged.value
            ends.append(dragged.value)
        assert sorted(ends) in ([], [allowed.minimum, allowed.maximum]), pull


def test_steps_are_multiples_unless_a_limit_is_nearer(bench: Bench) -> None:
    for pull in pulls(bench):
        dragged = drag(bench.spec, pull, moved(pull, 13.7), 5.0)
        if not dragged.stopped_by:
            assert dragged.value / 5.0 == pytest.approx(round(dragged.value / 5.0), abs=1e-9)


def test_the_edge_in_hand_follows_the_hand(bench: Bench) -> None:
    """One end of a held edge at least moves as far as the hand, in its direction."""
    by = 0.75
    for number, handhold in enumerate(handholds(bench)):
        dragged = drag(bench.spec, handhold.pull, moved(handhold.pull, by), None)
        if dragged.stopped_by or handhold.pull.height:
            continue
        found = handholds(build(dragged.spec))
        if len(found) != len(handholds(bench)):
            continue  # one came or went, as a boring for a foot that finds room
        after = found[number]
        assert after.pull.parameter == handhold.pull.parameter
        assert travel(handhold, after) == pytest.approx(by, abs=1e-6), handhold


def test_the_point_of_a_dragged_dimension_follows_the_hand(bench: Bench) -> None:
    by = 0.75
    for one in dimensions(bench):
        if one.pull is None or one.pull.height or one.unit != "mm":
            continue
        dragged = drag(bench.spec, one.pull, moved(one.pull, by), None)
        if dragged.stopped_by:
            continue
        after = next(d for d in dimensions(build(dragged.spec)) if d.name == one.name)
        u, v = one.pull.along
        ends = (
            (after.end[0] - one.end[0]) * u + (after.end[1] - one.end[1]) * v,
            -(after.start[0] - one.start[0]) * u - (after.start[1] - one.start[1]) * v,
        )
        # Either the end moves, or (where the end is fixed) the start moves the other way.
        assert ends[0] + ends[1] == pytest.approx(by * one.pull.gain, abs=1e-6), one.name


def travel(before: Handhold, after: Handhold) -> float:
    u, v = before.pull.along
    return max(
        (b[0] - a[0]) * u + (b[1] - a[1]) * v
        for a, b in ((before.start, after.start), (before.end, after.end))
    )


def test_dimensions_show_what_they_measure(bench: Bench) -> None:
    """The distance of the measured points along the dimension is the number it shows."""
    bound = {row.name for row in PARAMETERS}
    for one in dimensions(bench):
        if one.unit != "mm":
            continue
        du, dv = one.end[0] - one.start[0], one.end[1] - one.start[1]
        shown = abs(du * one.along[0] + dv * one.along[1])
        assert shown == pytest.approx(abs(one.value), abs=1e-6), one.name
        if one.parameter:
            assert one.parameter in bound
            assert bench.spec.number(one.parameter) == pytest.approx(one.value)
