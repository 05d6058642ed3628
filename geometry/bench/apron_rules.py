"""What aprons and their legs must leave room for.

All four legs are mirror images, so what holds in one holds in all.
"""

from __future__ import annotations

from geometry.bench import feet_numbers
from geometry.bench.apron_numbers import (
    ENDS,
    ApronNumbers,
    apron_numbers,
    section,
    tenon_at,
)
from geometry.bench.constraint import Constraint, rule
from geometry.bench.four_leg_numbers import stand, taper_stations
from geometry.design.spec import BenchSpec
from geometry.primitives.frame import Frame, Vec3, dot, subtract

LEAST_WALL = 4.0  # mm of leg beside a mortise; common practice, no source
_CORNER = "front_right"
_SIDES = ("front", "right")


def _within_leg(a: ApronNumbers, points: list[Vec3], side: str, margin: float) -> float:
    """How far points of one apron keep inside the leg, across the face that it meets."""
    at = stand(a.legs, _CORNER)
    across = at.behind if side in ("front", "back") else at.beside
    places = [dot(subtract(point, at.origin), across) for point in points]
    return min(*places, a.legs.size - max(places)) - margin


def _shoulders(spec: BenchSpec) -> float:
    """The aprons' ends on the legs' faces, above the taper."""
    a = apron_numbers(spec)
    at = stand(a.legs, _CORNER)
    starts, _ = taper_stations(a.legs, at)
    room = []
    for side in _SIDES:
        tenon = tenon_at(a, side, _CORNER)
        ends = [tenon.frame.to_bench(tenon.point(y, z, 0.0)) for y, z in section(a, side)]
        room.append(_within_leg(a, ends, side, 0.0))
        room += [starts - dot(subtract(point, at.origin), at.down) for point in ends]
    return min(room)


def _mortises(a: ApronNumbers) -> list[tuple[str, Frame, list[Vec3]]]:
    found = []
    for side in _SIDES:
        tenon = tenon_at(a, side, _CORNER)
        mouth, floor = tenon.mortise()
        points = [tenon.frame.to_bench(point) for point in (*mouth, *floor)]
        found.append((side, tenon.frame, points))
    return found


def mortise_wall(spec: BenchSpec) -> float:
    """The thinnest wood of a leg beside a mortise, across the face that the apron meets; mm."""
    a = apron_numbers(spec)
    return min(_within_leg(a, points, side, 0.0) for side, _, points in _mortises(a))


def _mortises_apart(spec: BenchSpec) -> float:
    """Between the two mortises of a leg, measured square to the cheeks of either, less 1 mm."""
    a = apron_numbers(spec)
    (_, first, points), (_, second, others) = _mortises(a)
    inner = a.cheeks[1] + a.fit / 2.0
    return (
        max(
            min(second.to_local(point)[2] for point in points) - inner,
            min(first.to_local(point)[2] for point in others) - inner,
        )
        - 1.0
    )


def _between(spec: BenchSpec) -> float:
    """The shortest line of an apron between its shoulders, less the least."""
    a = apron_numbers(spec)
    runs = []
    for side in _SIDES:
        first, second = (tenon_at(a, side, corner) for corner in ENDS[side])
        runs += [
            second.point(y, z, 0.0)[0] - first.point(y, z, 0.0)[0] for y, z in section(a, side)
        ]
    return min(runs) - 40.0


_LEAN = "rake splay leg_size"
_APRON = "apron_height apron_thickness apron_reveal"
_TENON = "apron_tenon apron_tenon_length apron_shoulder apron_fit"

CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "apron_on_leg",
        f"base_height {feet_numbers.READS} {_LEAN} {_APRON} leg_taper_start",
        _shoulders,
        "an apron's end would not lie wholly on its leg",
    ),
    rule(
        "apron_walls",
        f"base_height {feet_numbers.READS} {_LEAN} {_APRON} {_TENON}",
        lambda s: mortise_wall(s) - LEAST_WALL,
        "a mortise would leave less than {4 mm} of the leg beside it",
    ),
    rule(
        "apron_mortises",
        f"base_height {feet_numbers.READS} {_LEAN} {_APRON} {_TENON}",
        _mortises_apart,
        "the two mortises would run into each other inside the leg",
    ),
    rule(
        "apron_cheeks",
        "apron_tenon apron_thickness",
        lambda s: (s.number("apron_thickness") - s.number("apron_tenon")) / 2.0 - 2.0,
        "the tenon would leave less than {2 mm} of shoulder on either side",
    ),
    rule(
        "apron_tenon_width",
        "apron_height apron_shoulder apron_thickness rake splay",
        lambda s: min(_tenon_widths(apron_numbers(s))) - 12.0,
        "the tenon would be narrower than {12 mm}",
    ),
    rule(
        "apron_between",
        "length depth inset_left inset_right inset_back inset_front base_height "
        f"{feet_numbers.READS} {_LEAN} {_APRON}",
        _between,
        "an apron would be shorter than {40 mm} between its legs",
    ),
)


def _tenon_widths(a: ApronNumbers) -> list[float]:
    tenons = [tenon_at(a, side, _CORNER) for side in _SIDES]
    return [tenon.y_high - tenon.y_low for tenon in tenons]
