"""The carving in words: a point under the hand, a place, and the whole for those who can't see."""

from __future__ import annotations

from app.scene.notes import sentence
from app.scene.preferences import Preferences
from app.scene.wording import said
from geometry.bench.carving_numbers import carving_of
from geometry.bench.carving_pattern import Hold, points_of
from geometry.bench.drawer_numbers import fronts_of
from geometry.bench.raising import raised_for_land
from geometry.bench.relief_surface import spots_of, surface_of
from geometry.checks.carving import raise_points
from geometry.design.spec import BenchSpec
from geometry.dimensioning.point_pull import spot_of
from geometry.primitives.facets import trimmed
from geometry.primitives.frame import Vec2
from shared.units import length_mark

NOTHING = "No front is carved: set the carving of the fronts to faceted."
_MOVES = {
    Hold.CORNER: "held in its corner",
    Hold.LEVEL: "slides along its border",
    Hold.UPRIGHT: "slides along its border",
    Hold.FREE: "",
}


def point_note(
    spec: BenchSpec, number: int, at: Vec2, preferences: Preferences, stopped_by: str = ""
) -> str:
    """A point of the pattern, or with number 0 a place on a front: how deep, what is left."""
    carving = carving_of(spec)
    if carving is None:
        return ""
    thickness = fronts_of(spec).thickness
    spot = spot_of(carving, number) if number else None
    if spot is not None:
        across, up, deep = spot.at
        held = _MOVES[points_of(carving.pattern)[number - 1].hold]
        first = (
            f"Point {number}: {length_mark(across)} across, {length_mark(up)} up, "
            f"{length_mark(deep)} deep"
        )
        lines = [f"{first}, {held}" if held else first, f"{length_mark(thickness - deep)} left"]
    else:
        found = _depth(spec, at)
        if found is None:
            return ""
        lines = [f"{length_mark(found)} deep, {length_mark(thickness - found)} left"]
    if stopped_by:
        lines.append(sentence(stopped_by))
    return said("\n".join(lines), preferences)


def _depth(spec: BenchSpec, at: Vec2) -> float | None:
    """How deep the carving is at a place of the picture; None between and beside the fronts."""
    carving = carving_of(spec)
    assert carving is not None
    picture = carving.picture
    x, z = picture.x_low + at[0], picture.z_low + at[1]
    if not any(d.x_low <= x <= d.x_high and d.z_low <= z <= d.z_high for d in carving.fronts):
        return None
    surface = surface_of(carving.pattern, picture.width, picture.height, carving.depth)
    small = 1e-3
    around = trimmed(surface, (at[0] - small, at[1] - small, at[0] + small, at[1] + small))
    return sum(point[2] for point in around.points) / len(around.points)


def advice_note(spec: BenchSpec, preferences: Preferences) -> str:
    """What change of the pattern would give the fingers more; empty where they have it all."""
    raised = raised_for_land(spec)
    if raised is None:
        return ""
    return said(f"{raise_points(raised).sentence[:-1]}: the land is kept everywhere.", preferences)


def whole_text(spec: BenchSpec, preferences: Preferences) -> str:
    """The carving in words: every point, and how they are moved."""
    carving = carving_of(spec)
    if carving is None:
        return NOTHING
    picture = carving.picture
    spots = spots_of(carving.pattern, picture.width, picture.height, carving.depth)
    points = "; ".join(
        f"{spot.number}: {length_mark(spot.at[0])} across, {length_mark(spot.at[1])} up, "
        f"{length_mark(spot.at[2])} deep"
        for spot in spots
        if not spot.mirrored
    )
    how = (
        "Tab goes from point to point, arrow keys move one, Page Up and Page Down raise and lower "
        "it, Enter goes to its numbers."
    )
    return said(f"Points {points}. {how}", preferences)
