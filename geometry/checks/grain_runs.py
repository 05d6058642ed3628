"""Checks of which way the grain runs: round a corner, along what bears, along what is long."""

from __future__ import annotations

import math
from collections.abc import Iterator

from geometry.bench.bench import Bench
from geometry.checks.check import Check
from geometry.checks.limits_of_timber import MOST_ACROSS, MOST_OFF_GRAIN
from geometry.checks.movement import GRAIN_CHOICES
from geometry.checks.where import middle_of
from geometry.design.finding import Finding, Level, Mend
from geometry.design.part import Part
from geometry.primitives.frame import X_AXIS, Z_AXIS, Vec3, cross, dot, norm, unit
from shared.units import angle_mark, length_mark

_CORNERS = frozenset(
    {"mitre", "through dovetail", "half-blind dovetail", "box joint", "rebate and groove"}
)
# The direction in which pieces of these kinds bear, from end to end.
_BEARS: dict[str, Vec3] = {
    "end panel": Z_AXIS,
    "end": Z_AXIS,
    "partition": Z_AXIS,
    "panel foot": Z_AXIS,
    "leg": Z_AXIS,
    "post": Z_AXIS,
    "shelf": X_AXIS,
}
_BEAMS = frozenset(
    {"top", "bottom", "seat", "lid", "stretcher", "rail", "apron", "rest rail", "slat", "plinth"}
)
_HAIR = 1e-6
_LEVEL = 1e-3  # sine of the angle between two boards below which they make no corner


def _off(grain: Vec3, way: Vec3) -> float:
    """Degrees between two lines."""
    return math.degrees(math.acos(min(1.0, abs(dot(grain, way)))))


def _corner(bench: Bench) -> Iterator[Finding]:
    """Corners in which the grain of one piece runs along the arris and that of the other not."""
    most, parts = MOST_OFF_GRAIN.of(bench), {part.name: part for part in bench.parts}
    wrong: dict[str, tuple[float, list[Part]]] = {}
    for joint in bench.joints:
        first, second = parts[joint.parts[0]], parts[joint.parts[1]]
        if joint.kind not in _CORNERS or not (first.solid_timber and second.solid_timber):
            continue
        arris = cross(first.frame.z_axis, second.frame.z_axis)
        if norm(arris) < _LEVEL:
            continue
        # How far each is from running square to the arris, and so on round the corner.
        leans = [90.0 - _off(part.grain, unit(arris)) for part in (first, second)]
        if (leans[0] > most) == (leans[1] > most):
            continue
        stray = first if leans[0] > leans[1] else second
        worst, known = wrong.get(stray.kind, (0.0, []))
        wrong[stray.kind] = (max(worst, *leans), [*known, stray])
    for kind, (lean, strays) in wrong.items():
        named = tuple(dict.fromkeys(part.name for part in strays))
        yield Finding(
            check="grain_corner",
            level=Level.THINK_AGAIN,
            message=(
                f"{strays[0].title}: its grain runs along the corner, {angle_mark(lean)} from the "
                "way round it. The neighbour's runs on round it: the one moves and the other does "
                "not."
            ),
            parts=named,
            place=middle_of(strays[0]),
            amount=lean,
            limit=most,
            unit="deg",
            mend=_mend(kind),
        )


def _bears(bench: Bench) -> Iterator[Finding]:
    """Pieces that stand or span with their grain across that; like ones are one finding."""
    most = MOST_OFF_GRAIN.of(bench)
    wrong: dict[str, list[tuple[float, Part]]] = {}
    for part in bench.parts:
        way = _BEARS.get(part.kind)
        if way is None or not part.solid_timber:
            continue
        lean = _off(part.grain, way)
        if lean > most + _HAIR:
            wrong.setdefault(part.kind, []).append((lean, part))
    for kind, rows in wrong.items():
        lean, part = max(rows, key=lambda row: row[0])
        how = "stands with its grain" if _BEARS[kind] == Z_AXIS else "spans with its grain"
        yield Finding(
            check="grain_bears",
            level=Level.THINK_AGAIN,
            message=(
                f"{part.title} {how} {angle_mark(lean)} off the way that it bears: across the "
                "grain timber has a small part of its strength."
            ),
            parts=tuple(part.name for _, part in rows),
            place=middle_of(part),
            amount=lean,
            limit=most,
            unit="deg",
            mend=_mend(kind),
        )


def _long_across(bench: Bench) -> Iterator[Finding]:
    """Boards and rails that are much longer across their grain than along it."""
    most = MOST_ACROSS.of(bench)
    wrong: dict[str, list[tuple[float, Part]]] = {}
    for part in bench.parts:
        if part.kind not in _BEAMS or not part.solid_timber:
            continue
        share = 100.0 * part.across_grain / part.along_grain
        if share > most + _HAIR:
            wrong.setdefault(part.kind, []).append((share, part))
    for rows in wrong.values():
        share, part = max(rows, key=lambda row: row[0])
        yield Finding(
            check="long_across",
            level=Level.THINK_AGAIN,
            message=(
                f"{part.title} is {length_mark(round(part.across_grain, 1))} across its grain and "
                f"{length_mark(round(part.along_grain, 1))} along it: short grain breaks easily."
            ),
            parts=tuple(part.name for _, part in rows),
            place=middle_of(part),
            amount=share,
            limit=most,
            unit="%",
        )


def _mend(kind: str) -> Mend | None:
    if kind not in GRAIN_CHOICES:
        return None
    return Mend(f"Let the grain run {GRAIN_CHOICES[kind][1]}.", (GRAIN_CHOICES[kind],))


CHECKS: tuple[Check, ...] = (
    Check(
        "grain_corner",
        "Grain that does not turn the corner",
        "At a mitred, dovetailed or tongued corner the grain of both pieces should run round the "
        "corner, or that of both along it: then they move together. Where one runs round and the "
        "other along, the joint is end grain on long grain and is torn open by the seasons. More "
        "than 45 degrees is nearer to wrong than to right: common practice, no source.",
        _corner,
        limits=(MOST_OFF_GRAIN,),
    ),
    Check(
        "grain_bears",
        "Grain across the way a piece bears",
        "What stands should have its grain upright, and a shelf's should run from upright to "
        "upright: across the grain timber has a small part of its stiffness and strength. More "
        "than 45 degrees is nearer to wrong than to right: common practice, no source.",
        _bears,
        limits=(MOST_OFF_GRAIN,),
    ),
    Check(
        "long_across",
        "Piece longer across its grain than along it",
        "A board or rail that is much longer across its grain than along it has short grain over "
        "its whole length. Twice as long is the most: common practice, no source.",
        _long_across,
        limits=(MOST_ACROSS,),
    ),
)
