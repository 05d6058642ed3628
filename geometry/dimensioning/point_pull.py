"""A hand on a point of a carving: from a bench and a wish to a bench, or why it went no farther.

Pure, as ``drag`` is.  What is held: the point's corner or border, the picture, the face and the
carving's depth, the distance from other points, the least thickness of the fronts and the land
before their grooves.  What was already broken when the hand closed may stay so but not get worse.

Method: where a wish breaks a hold, the farthest place on the straight way to it that keeps all of
them is looked for by false position (the Illinois rule), which is exact in one step while the
facets stay the same and a point goes straight down.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from geometry.bench.carving_numbers import Carving, carving_of, groove_of
from geometry.bench.carving_pattern import Moved, moved_text, points_of, with_point
from geometry.bench.drawer_numbers import drawers
from geometry.bench.groove_land import least_land
from geometry.bench.left_of_front import thinnest
from geometry.bench.relief_surface import Spot, spots_of
from geometry.design.spec import BenchSpec
from geometry.dimensioning.drag import Dragged
from geometry.primitives.frame import Vec3
from shared.units import length_mark

APART = 3.0  # mm between two points; nearer ones make a step that nobody can plane
_TRIES = 14
_NEAR = 1e-5  # mm


@dataclass(frozen=True, slots=True)
class _Hold:
    """The tightest hold: how much room it leaves, and what to say when there is none."""

    slack: float
    because: str


def spot_of(carving: Carving, number: int) -> Spot | None:
    """A point where it lies in the picture; None for one that is left out or not there."""
    picture = carving.picture
    spots = spots_of(carving.pattern, picture.width, picture.height, carving.depth)
    return next((one for one in spots if one.number == number and not one.mirrored), None)


def pull_point(start: BenchSpec, number: int, to: Vec3) -> Dragged:
    """Put a point at (across, up, deep) mm of the picture, or as near to that as is held.

    The value is the point's depth.  ``start`` must have a carving with such a point.
    """
    carving = carving_of(start)
    assert carving is not None
    spot = spot_of(carving, number)
    assert spot is not None
    aim, said = _within(carving, to)
    holds = _holds(start, number)
    allowed = [min(hold.slack, 0.0) for hold in holds]

    def tightest(spec: BenchSpec) -> _Hold:
        now = _holds(spec, number)
        return min(
            (
                _Hold(one.slack - least, one.because)
                for one, least in zip(now, allowed, strict=True)
            ),
            key=lambda one: one.slack,
        )

    wanted = _put(start, carving, number, aim)
    worst = tightest(wanted)
    if worst.slack >= -_NEAR:
        return _dragged(wanted, number, said)
    good, bad = 0.0, 1.0
    at_good, at_bad = max(tightest(start).slack, 0.0), worst.slack
    found = start
    side = 0
    for _ in range(_TRIES):
        share = good + (bad - good) * at_good / (at_good - at_bad)
        tried = _put(start, carving, number, _between(spot.at, aim, share))
        hold = tightest(tried)
        if hold.slack >= -_NEAR:
            found, good, at_good = tried, share, max(hold.slack, 0.0)
            at_bad = at_bad / 2.0 if side == 1 else at_bad
            side = 1
        else:
            worst, bad, at_bad = hold, share, hold.slack
            at_good = at_good / 2.0 if side == -1 else at_good
            side = -1
        if hold.slack >= -_NEAR and hold.slack < 10.0 * _NEAR:
            break
    return _dragged(found, number, worst.because)


def _dragged(spec: BenchSpec, number: int, said: str) -> Dragged:
    carving = carving_of(spec)
    assert carving is not None
    spot = spot_of(carving, number)
    return Dragged(spec, spot.at[2] if spot else 0.0, said)


def _within(carving: Carving, to: Vec3) -> tuple[Vec3, str]:
    """The wish inside the picture and between face and depth, with what stopped it there."""
    right = carving.picture.width * (0.5 if carving.pattern.mirrored else 1.0)
    aim = (
        min(max(to[0], 0.0), right),
        min(max(to[1], 0.0), carving.picture.height),
        min(max(to[2], 0.0), carving.depth),
    )
    if to[2] > carving.depth + _NEAR:
        return aim, "the carving goes no deeper anywhere"
    if to[2] < -_NEAR:
        return aim, "no point stands out in front of the face"
    if aim[:2] != to[:2]:
        middle = carving.pattern.mirrored and to[0] > right
        return aim, "its image begins there" if middle else "the picture ends there"
    return aim, ""


def _put(spec: BenchSpec, carving: Carving, number: int, at: Vec3) -> BenchSpec:
    picture = carving.picture
    moved = Moved(
        number, at[0] / picture.width, at[1] / picture.height, min(at[2] / carving.depth, 1.0)
    )
    return spec.changed({"carving_moved": moved_text(with_point(carving.pattern, moved).moved)})


def _between(a: Vec3, b: Vec3, share: float) -> Vec3:
    x, y, z = (p + share * (q - p) for p, q in zip(a, b, strict=True))
    return (x, y, z)


def _holds(spec: BenchSpec, number: int) -> list[_Hold]:
    """All holds of a bench, always in the same order."""
    carving = carving_of(spec)
    assert carving is not None
    found = [_Hold(_room(carving, number), f"points keep {length_mark(APART)} apart")]
    least = spec.number("carving_least")
    for drawer in carving.fronts:
        found.append(
            _Hold(
                thinnest(spec, drawer).wood - least,
                f"{drawer.title} keeps {length_mark(least)} of its front",
            )
        )
    if groove_of(spec) is not None:
        land = spec.number("finger_land")
        for drawer in drawers(spec):
            found.append(
                _Hold(
                    least_land(spec, drawer).wood - land,
                    f"{drawer.title} keeps {length_mark(land)} of land in front of its groove",
                )
            )
    return found


def _room(carving: Carving, number: int) -> float:
    """Distance to the nearest other point, less what is kept."""
    wide, high = carving.picture.width, carving.picture.height
    points = [(one.number, one.across * wide, one.up * high) for one in points_of(carving.pattern)]
    _, x, y = points[number - 1]
    away = [math.hypot(x - u, y - v) for other, u, v in points if other != number]
    return min(away) - APART
