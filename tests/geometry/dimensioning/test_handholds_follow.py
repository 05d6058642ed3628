"""What is taken hold of stays under the hand, either way, and stops where its number does."""

from __future__ import annotations

import pytest

from geometry.bench.build import build
from geometry.bench.limits import limits
from geometry.design.parameter import Value
from geometry.dimensioning.drag import drag
from geometry.dimensioning.handholds import handholds
from geometry.dimensioning.pull import Handhold
from tests.held import HELD, held

FAR = 10_000.0  # mm: beyond any limit


each_bench = pytest.mark.parametrize(
    ("name", "changes"), HELD, ids=["-".join((name, *changes)) for name, changes in HELD]
)


@each_bench
@pytest.mark.parametrize("by", [0.75, -0.6])
def test_each_handhold_follows_the_hand(name: str, changes: dict[str, Value], by: float) -> None:
    """An end of the edge moves with the hand, 1 to 1, in the direction of the pull; each number
    once for each view of each bench."""
    spec = held(name, changes)
    all_held = handholds(build(spec))
    for number, handhold in _once(all_held):
        dragged = drag(spec, handhold.pull, _moved(handhold, by), None)
        if dragged.stopped_by:
            continue
        found = handholds(build(dragged.spec))
        if len(found) != len(all_held):
            continue  # a leg that turns shows another face
        assert found[number].pull.parameter == handhold.pull.parameter
        # A lean holds the leg's axis to the hand; the arris seen turns about that with the leg,
        # most on a sightline, which swings fast where the lean is small.
        near = 1e-6 if not handhold.pull.height else 0.3 * abs(by)
        assert min(abs(step - by) for step in _travels(handhold, found[number])) < near, handhold


@each_bench
def test_each_handhold_stops_where_its_number_stops(name: str, changes: dict[str, Value]) -> None:
    spec = held(name, changes)
    for _, handhold in _once(handholds(build(spec))):
        if handhold.pull.height:
            continue  # a lean grows ever slower with the hand
        allowed = limits(spec, handhold.pull.parameter)
        ends = [drag(spec, handhold.pull, _moved(handhold, by), None) for by in (-FAR, FAR)]
        assert [one.value for one in ends] == [allowed.minimum, allowed.maximum], handhold
        assert all(one.stopped_by for one in ends), handhold


def _once(every: tuple[Handhold, ...]) -> list[tuple[int, Handhold]]:
    first: dict[tuple[str, str], tuple[int, Handhold]] = {}
    for number, handhold in enumerate(every):
        first.setdefault((handhold.view, handhold.pull.parameter), (number, handhold))
    return list(first.values())


def _moved(handhold: Handhold, by: float) -> tuple[float, float]:
    return (handhold.pull.along[0] * by, handhold.pull.along[1] * by)


def _travels(before: Handhold, after: Handhold) -> tuple[float, float]:
    u, v = before.pull.along
    start, end = (
        (b[0] - a[0]) * u + (b[1] - a[1]) * v
        for a, b in ((before.start, after.start), (before.end, after.end))
    )
    return start, end
