"""Checks of rails (between trestles or panel feet, under a panel bench's seat), and of wedges."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from geometry.bench.bench import Bench
from geometry.bench.members import has
from geometry.bench.panel_numbers import panel_numbers
from geometry.bench.post_wedges import OF_POST, shortest_wedge
from geometry.bench.seat_rail_numbers import HOUSED, seat_rail
from geometry.bench.trestles import rail_numbers
from geometry.checks.check import Check
from geometry.checks.limits_of_joints import LEAST_WALL, STEEPEST_WEDGE, TALLEST_MORTISE
from geometry.design.finding import Finding, Level, Mend
from geometry.joints.through_tenon import ThroughTenon
from geometry.primitives.frame import Vec3
from shared.units import angle_mark, length_mark


@dataclass(frozen=True, slots=True)
class _Rail:
    """What the checks look at: a tenon, and the parameters that set its thickness and wedge."""

    tenon: ThroughTenon
    thickness_name: str
    wedge_name: str


def _rail(bench: Bench) -> _Rail | None:
    if has(bench.spec, "trestles"):
        return _Rail(rail_numbers(bench.spec).end("right"), "rail_tenon_height", "rail_wedge")
    if has(bench.spec, "panel feet"):
        return _Rail(panel_numbers(bench.spec).end("right"), "panel_tenon_thickness", "panel_wedge")
    if has(bench.spec, "seat rail"):
        r = seat_rail(bench.spec)
        if r.joint != HOUSED:
            return _Rail(r.end("right"), "seat_rail_tenon", "seat_rail_wedge")
    return None


def _thin_tenon(bench: Bench) -> Iterator[Finding]:
    rail = _rail(bench)
    if rail is None:
        return
    thick, least = 2.0 * rail.tenon.half_cross, LEAST_WALL.of(bench)
    if thick >= least - 1e-9:
        return
    mend = None
    if bench.part("rail").shape.blank.thickness >= least:
        sentence = f"Make it {length_mark(least)}."
        mend = Mend(sentence, ((rail.thickness_name, least),))
    yield Finding(
        check="thin_rail_tenon",
        level=Level.THINK_AGAIN,
        message=(
            f"The rail's tenons are only {length_mark(thick)} thick, less than "
            f"{length_mark(least)}."
        ),
        parts=("rail",),
        place=rail.tenon.face,
        amount=thick,
        limit=least,
        mend=mend,
    )


@dataclass(frozen=True, slots=True)
class _Wedges:
    """Wedges of one kind: how thick and long, where, and the parameter that makes them thicker."""

    thick: float
    long: float
    place: Vec3
    name: str
    mend: str
    parts: tuple[str, ...]


def _wedges(bench: Bench) -> Iterator[_Wedges]:
    """Those beside the tenons of a rail, and those in the tenons of a back rest's posts."""
    names = [part.name for part in bench.parts if part.kind == "wedge"]
    posts = tuple(name for name in names if name.startswith(OF_POST))
    rail = _rail(bench)
    if rail is not None and rail.tenon.wedge_room > 0.0:
        at, beside = rail.tenon, tuple(name for name in names if name not in posts)
        leave = "Leave {} of room for them."
        yield _Wedges(at.wedge_room, at.depth, at.face, rail.wedge_name, leave, beside)
    if posts:
        inside = shortest_wedge(bench.spec)
        root = inside.tenon.frame.to_bench(inside.root)
        make = "Make them {} thick."
        yield _Wedges(inside.thick, inside.slot, root, "post_wedge", make, posts)


def _steep_wedge(bench: Bench) -> Iterator[Finding]:
    for wedges in _wedges(bench):
        yield from _steep(bench, wedges)


def _steep(bench: Bench, at: _Wedges) -> Iterator[Finding]:
    slope, steepest = at.thick / at.long, STEEPEST_WEDGE.of(bench) / 100.0
    if slope <= steepest + 1e-9:
        return
    room = math.floor(at.long * steepest * 2.0) / 2.0
    angles = [math.degrees(math.atan(share)) for share in (slope, steepest)]
    yield Finding(
        check="steep_wedge",
        level=Level.THINK_AGAIN,
        message=(
            f"The wedges slope {angle_mark(angles[0])}: steeper than "
            f"{angle_mark(angles[1])} they work loose again."
        ),
        parts=at.parts,
        place=at.place,
        amount=angles[0],
        limit=angles[1],
        unit="deg",
        mend=Mend(at.mend.format(length_mark(room)), ((at.name, room),)),
    )


def _tall_mortise(bench: Bench) -> Iterator[Finding]:
    r = rail_numbers(bench.spec)
    limit = r.legs.stretcher_height * TALLEST_MORTISE.of(bench) / 100.0
    if r.tenon_height <= limit + 1e-9:
        return
    yield Finding(
        check="tall_rail_mortise",
        level=Level.THINK_AGAIN,
        message=(
            f"The rail's mortises take {length_mark(r.tenon_height)} out of stretchers of "
            f"{length_mark(r.legs.stretcher_height)}."
        ),
        parts=("stretcher_left", "stretcher_right"),
        place=r.end("right").face,
        amount=r.tenon_height,
        limit=limit,
        mend=Mend(f"Make the tenons {length_mark(limit)} high.", (("rail_tenon_height", limit),)),
    )


CHECKS: tuple[Check, ...] = (
    Check(
        "thin_rail_tenon",
        "Thin tenons of a rail",
        "The tenons of a rail hold the two ends of a base upright. Under {6 mm} they bend and "
        "break when somebody drops onto the bench's end: common practice, no source.",
        _thin_tenon,
        limits=(LEAST_WALL,),
    ),
    Check(
        "steep_wedge",
        "Wedge too steep to hold",
        "A wedge holds by friction. Steeper than about 1 in 5 it is pushed out again by what it "
        "should hold: common practice, no source.",
        _steep_wedge,
        limits=(STEEPEST_WEDGE,),
    ),
    Check(
        "tall_rail_mortise",
        "Mortise taking half the stretcher",
        "A trestle's stretcher carries the bench between its legs, and the rail's mortise weakens "
        "it just there. A third of the height is usual and a half the most: common practice, no "
        "source.",
        _tall_mortise,
        ("trestles",),
        limits=(TALLEST_MORTISE,),
    ),
)
