"""Whether a bench can be carried through a door and round the corner of a stair.

mm.  The bench is taken whole and by its convex outline, as seen along each of three ways of
carrying it: this is exact for a straight push through an opening; round a corner it is taken as a
box: as it stands, on its back, on its end, or tilted up at one end as far as the headroom lets it,
when it takes l cos t + h sin t in plan and l sin t + h cos t in height.  What a clever turn
halfway, legs first, could still do is left out, so 'no' is an estimate.

Door: the outline is turned in the plane of the opening until it is least too large.  Source of the
idea for rectangles: Carver, Am. Math. Monthly 64 (1957), from memory; here for any outline.

Corner: of two ways of widths a and b that meet at a right angle.  A box of length l and width w
whose long side slides along both outer walls, turned by t, is clear of the inner corner by
a sin t + b cos t − l sin t cos t − w, which must not fall below 0 at any t (plane trigonometry;
with w = 0 the greatest l is the ladder's (a^⅔ + b^⅔)^(3/2)).  A box that fits both ways without
being turned goes round as well.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
import shapely

from geometry.solids.solid import Floats

STEPS = 720  # angles tried over a half turn, before the best is looked at more closely
WAYS = ("end first", "back first", "top first")


@dataclass(frozen=True, slots=True)
class Passage:
    """``short`` is how much an opening lacks, in mm (less than 0: room to spare); ``way`` how."""

    short: float
    way: str


def through_door(points: Floats, width: float, height: float) -> Passage:
    """The best of three ways through an opening; ``points`` (n, 3) of what is carried."""
    return min(
        (
            Passage(_least_short(_outline(np.delete(points, axis, axis=1)), width, height), way)
            for axis, way in enumerate(WAYS)
        ),
        key=lambda one: one.short,
    )


def round_corner(size: tuple[float, float, float], a: float, b: float, height: float) -> Passage:
    """The best of three ways round a corner for a box of length, depth and height.

    ``height`` is the headroom; 0 where it is not known, and then any box is low enough.
    """
    found = []
    for up, way in ((2, "as it stands"), (1, "on its back"), (0, "on its end")):
        long, wide = sorted((size[k] for k in range(3) if k != up), reverse=True)
        over = size[up] - height if height else -math.inf
        found.append(Passage(max(over, _corner_short(long, wide, a, b)), way))
    found += [
        Passage(_corner_short(max(run, wide), min(run, wide), a, b), "tilted up at one end")
        for run, wide in _tilted(size, height)
    ]
    return min(found, key=lambda one: one.short)


def _tilted(size: tuple[float, float, float], height: float) -> list[tuple[float, float]]:
    """Lengths and widths in plan of a box that is tilted up on its end as far as it gets lower
    than ``height``: either of its smaller sizes may lie level.  None without a height, or where it
    goes under it standing on its end."""
    if not height:
        return []
    long = max(range(3), key=lambda k: size[k])
    found = []
    for upright in (k for k in range(3) if k != long):
        run, rise = size[long], size[upright]
        diagonal = math.hypot(run, rise)
        if not rise <= height < diagonal:
            continue
        tilt = math.asin(height / diagonal) - math.atan2(rise, run)
        plan = run * math.cos(tilt) + rise * math.sin(tilt)
        found.append((plan, size[3 - long - upright]))
    return found


def _corner_short(long: float, wide: float, a: float, b: float) -> float:
    straight = min(max(long - a, wide - b), max(wide - a, long - b))
    angles = np.linspace(0.0, math.pi / 2.0, STEPS + 1)
    sine, cosine = np.sin(angles), np.cos(angles)
    turned = wide - (a * sine + b * cosine - long * sine * cosine)
    at = int(turned.argmax())
    low, high = angles[max(at - 1, 0)], angles[min(at + 1, STEPS)]
    fine = np.linspace(low, high, STEPS)
    worst = wide - (a * np.sin(fine) + b * np.cos(fine) - long * np.sin(fine) * np.cos(fine))
    return min(straight, float(worst.max()))


def _outline(flat: Floats) -> Floats:
    """The convex outline of points in a plane, (k, 2)."""
    hull = shapely.convex_hull(shapely.MultiPoint(flat))
    return np.asarray(shapely.get_coordinates(hull))


def _least_short(outline: Floats, width: float, height: float) -> float:
    """By how much the opening is too small for the outline, turned as it fits best."""
    angles = np.linspace(0.0, math.pi, STEPS, endpoint=False)
    short = _short(outline, angles, width, height)
    best = angles[int(short.argmin())]
    step = math.pi / STEPS
    fine = np.linspace(best - step, best + step, STEPS)
    return float(min(short.min(), _short(outline, fine, width, height).min()))


def _short(outline: Floats, angles: Floats, width: float, height: float) -> Floats:
    """The same at each angle, (k,)."""
    across = np.outer(outline[:, 0], np.cos(angles)) + np.outer(outline[:, 1], np.sin(angles))
    upward = np.outer(outline[:, 1], np.cos(angles)) - np.outer(outline[:, 0], np.sin(angles))
    wide = across.max(axis=0) - across.min(axis=0) - width
    high = upward.max(axis=0) - upward.min(axis=0) - height
    return np.asarray(np.maximum(wide, high))
