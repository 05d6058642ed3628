"""Every form of seat on every base with as many of its options as go together: it can be made."""

from __future__ import annotations

import contextlib
import random
from itertools import product

import pytest

from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.catalogue import PARAMETERS, default_spec
from geometry.bench.limits import set_values
from geometry.bench.overall import BASES, SEATS, form_of
from geometry.design.spec import BenchSpec
from shared.errors import MakerError
from tests.laws.test_corner_cases import sound
from tests.laws.test_joints_meet import (
    test_a_good_part_of_the_faces_meets_in_the_end as faces_meet_in_the_end,
)
from tests.laws.test_joints_meet import test_faces_meet_within_their_gap as faces_meet

SWEEP = 4


def _pairs() -> list[tuple[str, str]]:
    """Each seat with each base; a form that stands on its own only once."""
    found = []
    for seat, base in product(SEATS, BASES):
        alone = not form_of(default_spec().changed({"seat": seat})).on_base
        if not alone or base == BASES[0]:
            found.append((seat, base))
    return found


CASES = [
    pytest.param(seat, base, seed, marks=() if seed == 0 else (pytest.mark.sweep,))
    for seed in range(SWEEP)
    for seat, base in _pairs()
]


def with_options(seat: str, base: str, seed: int) -> BenchSpec:
    """Choices turned away from their defaults one after another, where the bench allows it."""
    dice = random.Random(f"{seat} {base} {seed}")
    spec = set_values(default_spec(), {"seat": seat})
    if form_of(spec).on_base:
        spec = set_values(spec, {"base": base})
    rows = [row for row in PARAMETERS if row.unit == "choice" and row.name not in ("seat", "base")]
    for _ in range(2):  # some come in with others
        dice.shuffle(rows)
        for row in rows:
            if not row.applies(spec) or spec.value(row.name) != row.default:
                continue
            word = dice.choice([word for word in row.choices if word != row.default])
            with contextlib.suppress(MakerError):
                spec = set_values(spec, {row.name: word})
    return spec


@pytest.mark.parametrize(("seat", "base", "seed"), CASES)
def test_options_go_together(seat: str, base: str, seed: int) -> None:
    bench: Bench = build(with_options(seat, base, seed))
    assert bench.spec.value("seat") == seat
    sound(bench)
    faces_meet(bench)
    faces_meet_in_the_end(bench)
