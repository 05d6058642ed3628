"""Dimensions made from a bench: bound ones from a parameter, derived ones from a derived size."""

from __future__ import annotations

from dataclasses import dataclass

from geometry.bench.bench import Bench
from geometry.bench.catalogue import parameter
from geometry.dimensioning.dimension import Dimension
from geometry.dimensioning.pull import Pull
from geometry.primitives.frame import Vec2
from geometry.views.view import View

LEVEL: Vec2 = (1.0, 0.0)
UPRIGHT: Vec2 = (0.0, 1.0)

ABOVE, RIGHT_OF, BELOW, LEFT_OF, WITHIN = 1, 1, -1, -1, 0


@dataclass(frozen=True, slots=True)
class Place:
    """Where a dimension stands: the view, the measured points, the direction, side and rank.

    ``grows`` is -1 where the value grows as the end point moves against ``along``.
    """

    view: View
    start: Vec2
    end: Vec2
    along: Vec2
    side: int
    rank: int
    grows: float = 1.0


def bound(bench: Bench, name: str, at: Place) -> Dimension:
    """A linear dimension that shows and sets a parameter; a drag moves its end point."""
    row = parameter(name)
    pull = Pull(name, (at.along[0] * at.grows, at.along[1] * at.grows))
    return Dimension(
        name=name,
        title=row.title,
        view=at.view.name,
        value=bench.spec.number(name),
        unit="mm",
        start=at.start,
        end=at.end,
        along=at.along,
        side=at.side,
        rank=at.rank,
        parameter=name,
        pull=pull,
    )


def follows(bench: Bench, name: str, at: Place, apex: Vec2 | None = None) -> Dimension:
    """A derived dimension, linear or (with an apex) of an angle; where the size can be set, a drag
    moves its end point."""
    found = next(one for one in bench.derived if one.name == name)
    pull = None
    if found.through:
        sign = at.grows if found.gain > 0.0 else -at.grows
        way = (at.along[0] * sign, at.along[1] * sign)
        pull = Pull(found.through, way, abs(1.0 / found.gain), told=name)
    return Dimension(
        name=name,
        title=found.title,
        view=at.view.name,
        value=found.value,
        unit=found.unit,
        start=at.start,
        end=at.end,
        along=at.along,
        side=at.side,
        rank=at.rank,
        follows_from=found.follows_from,
        apex=apex,
        pull=pull,
    )
