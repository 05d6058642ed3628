"""A parameter: one number or choice of the maker's, with its unit, limits and default."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from geometry.design.spec import BenchSpec

Value = float | str


@dataclass(frozen=True, slots=True)
class Parameter:
    """One row of the catalogue.

    ``unit`` is ``mm``, ``deg``, ``count``, ``choice`` or ``text``; ``read`` gives a text in the one
    way it is kept, and raises UnreadableValue for one that says nothing; ``tell`` puts what is kept
    into words that can be read back.  ``minimum`` and
    ``maximum`` are the widest that any bench allows; a particular bench may allow less (see
    ``limits``).  ``step`` is what a drag snaps to when millimetres are shown.  ``applies`` tells
    whether the value means something for this bench; one that does not is kept, and not shown.
    """

    name: str
    title: str
    group: str
    unit: str
    default: Value
    description: str
    minimum: float = 0.0
    maximum: float = 0.0
    step: float = 1.0
    choices: tuple[str, ...] = ()
    applies: Callable[[BenchSpec], bool] = lambda _spec: True
    read: Callable[[str], str] = str
    tell: Callable[[str], str] = str

    @property
    def is_number(self) -> bool:
        """Whether it has limits and steps."""
        return self.unit in ("mm", "deg", "count")


def length(
    name: str,
    title: str,
    group: str,
    default: float,
    minimum: float,
    maximum: float,
    description: str,
    *,
    step: float = 1.0,
    applies: Callable[[BenchSpec], bool] = lambda _spec: True,
) -> Parameter:
    """A parameter in millimetres."""
    return Parameter(
        name, title, group, "mm", default, description, minimum, maximum, step, (), applies
    )


def angle(
    name: str,
    title: str,
    group: str,
    default: float,
    minimum: float,
    maximum: float,
    description: str,
    *,
    step: float = 0.5,
    applies: Callable[[BenchSpec], bool] = lambda _spec: True,
) -> Parameter:
    """A parameter in degrees."""
    return Parameter(
        name, title, group, "deg", default, description, minimum, maximum, step, (), applies
    )


def count(
    name: str,
    title: str,
    group: str,
    default: int,
    minimum: int,
    maximum: int,
    description: str,
    *,
    applies: Callable[[BenchSpec], bool] = lambda _spec: True,
) -> Parameter:
    """A whole number of things."""
    return Parameter(
        name,
        title,
        group,
        "count",
        float(default),
        description,
        minimum,
        maximum,
        1.0,
        (),
        applies,
    )


def choice(
    name: str,
    title: str,
    group: str,
    default: str,
    choices: tuple[str, ...],
    description: str,
    *,
    applies: Callable[[BenchSpec], bool] = lambda _spec: True,
) -> Parameter:
    """One word out of a few."""
    return Parameter(
        name, title, group, "choice", default, description, choices=choices, applies=applies
    )


def text(
    name: str,
    title: str,
    group: str,
    default: str,
    description: str,
    *,
    read: Callable[[str], str],
    tell: Callable[[str], str] = str,
    applies: Callable[[BenchSpec], bool] = lambda _spec: True,
) -> Parameter:
    """A value that is more than one number: a list, written as the maker would type it."""
    return Parameter(
        name, title, group, "text", default, description, applies=applies, read=read, tell=tell
    )
