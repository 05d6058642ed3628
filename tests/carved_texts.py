"""Texts for the parameters that are one: any that a maker could type."""

from __future__ import annotations

import random

from geometry.bench.carving_parameters import fronts_text
from geometry.bench.carving_pattern import MOST_POINTS, Moved, moved_text


def random_text(name: str, dice: random.Random) -> str:
    """A value of a text parameter; KeyError for one that this page does not know."""
    return {"carved_fronts": _fronts, "carving_moved": _moved}[name](dice)


def _fronts(dice: random.Random) -> str:
    named = {(dice.randint(1, 4), dice.randint(1, 3)) for _ in range(dice.randint(0, 4))}
    return fronts_text(frozenset(named))


def _moved(dice: random.Random) -> str:
    numbers = sorted(dice.sample(range(1, MOST_POINTS + 1), dice.randint(0, 6)))
    share = lambda: round(dice.choice((0.0, 1.0, dice.random())), 5)  # noqa: E731
    return moved_text(tuple(Moved(number, share(), share(), share()) for number in numbers))
