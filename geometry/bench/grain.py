"""Which way the grain of a piece may run, as a maker chooses it, and of what a panel is made.

The blank of a piece stays as it is: its x runs along its length wherever the grain does.
"""

from __future__ import annotations

from collections.abc import Callable

from geometry.design.parameter import Parameter, choice
from geometry.design.spec import BenchSpec

UPRIGHT, FRONT_TO_BACK, SIDE_TO_SIDE = "upright", "front to back", "side to side"
OF_SHEET, OF_TIMBER = "sheet", "timber"


def grain_choice(
    name: str,
    title: str,
    group: str,
    default: str,
    other: str,
    description: str,
    applies: Callable[[BenchSpec], bool] = lambda _spec: True,
) -> Parameter:
    """A choice of two directions of the grain."""
    return choice(name, title, group, default, (default, other), description, applies=applies)


def panel_choice(name: str, title: str, group: str, description: str) -> Parameter:
    """Whether a panel is of sheet, as it is by default, or of solid timber."""
    return choice(name, title, group, OF_SHEET, (OF_SHEET, OF_TIMBER), description)
