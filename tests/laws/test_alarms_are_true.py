"""'Do not cut' is true: each is judged on the finished pieces by another library.

Of the judges themselves is asked that they can say no: once the mend is made, the same words are
no longer true of the solids.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.checks.all_checks import findings, told
from geometry.design.finding import Finding, Level
from geometry.primitives.frame import Frame, Vec3, add
from tests.judges.alarms import JUDGES, STILL
from tests.random_benches import random_spec, sound_spec

SOUND, ANYWHERE = range(30), range(30)

# Drawers of 300 in the first and third of three openings, a front or a side moved by hand.
DRAWERS = {
    "partition_count": 2.0,
    "opening_1_fill": "drawers",
    "opening_3_fill": "drawers",
    "opening_1_drawers": 2.0,
}
PIECES = ("drawer_1_1_front", "drawer_3_1_front")


@pytest.mark.parametrize(
    ("check", "pieces", "by", "limit", "true"),
    [
        # The other front stands 50 in front of this one, right across it, or 50 above it.
        ("drawer_blocked", PIECES, (-790.0, -50.0, 0.0), 300.0, True),
        ("drawer_blocked", PIECES, (-790.0, -50.0, 400.0), 300.0, False),
        ("drawer_blocked", PIECES, (-790.0, -350.0, 0.0), 300.0, False),
        # The other box's back, 16 behind this one's; the runners need 3 or 20.
        ("drawer_hits", ("drawer_1_1_back", "drawer_3_1_back"), (-790.0, 16.0, 0.0), 3.0, True),
        ("drawer_hits", ("drawer_1_1_back", "drawer_3_1_back"), (-790.0, 40.0, 0.0), 3.0, False),
    ],
)
def test_a_judge_moves_what_moves(
    check: str, pieces: tuple[str, str], by: Vec3, limit: float, true: bool
) -> None:
    bench = build(set_values(default_spec(), DRAWERS))
    frame = bench.part(pieces[1]).frame
    moved = Frame(add(frame.origin, by), frame.x_axis, frame.y_axis, frame.z_axis)
    parts = tuple(replace(p, frame=moved) if p.name == pieces[1] else p for p in bench.parts)
    told = Finding(check, Level.DO_NOT_CUT, "Made up.", pieces, limit=limit)
    assert JUDGES[check](replace(bench, parts=parts), told) is true


def _judged_false(bench: Bench) -> list[str]:
    return [
        f"{one.check} {one.parts}"
        for one in told(bench)
        if one.level is Level.DO_NOT_CUT
        and one.check in JUDGES
        and not JUDGES[one.check](bench, one)
    ]


@pytest.mark.parametrize(
    "seed", [pytest.param(seed, marks=pytest.mark.sweep) for seed in SOUND], ids="sound{}".format
)
def test_no_false_alarm_on_a_sound_bench(seed: int) -> None:
    assert _judged_false(build(sound_spec(seed))) == []


@pytest.mark.parametrize(
    "seed",
    [pytest.param(seed, marks=pytest.mark.sweep) for seed in ANYWHERE],
    ids="anywhere{}".format,
)
def test_no_false_alarm_where_much_is_wrong(seed: int) -> None:
    """And what has been mended is judged to be no longer so."""
    bench = build(random_spec(seed))
    assert _judged_false(bench) == []
    for one in findings(bench):
        if one.level is Level.DO_NOT_CUT and one.mend is not None and one.check in JUDGES:
            mended = build(set_values(bench.spec, dict(one.mend.values)))
            assert not STILL[one.check](mended, one), one.check
