"""Checks of what cuts leave standing, whatever joint they belong to.

Tenons, pins, fingers and tongues, and the wood behind housings, grooves, rebates and hinges.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise

from geometry.bench.bench import Bench
from geometry.checks.check import Check
from geometry.checks.limits_of_joints import LEAST_WALL
from geometry.checks.limits_of_wood import LEAST_LEFT, LEAST_PIN, LEAST_TONGUE_IN_GROOVE
from geometry.cuts.cut import Blank, Cut
from geometry.cuts.end_gaps import EndGaps
from geometry.cuts.rebate import Rebate
from geometry.cuts.shouldered_tenon import ShoulderedTenon
from geometry.cuts.sockets import Sockets
from geometry.design.finding import Finding, Level, Mend
from geometry.design.part import Part, Shape
from geometry.primitives.frame import Vec3
from geometry.solids.cavities import Sunk
from geometry.solids.nearness import corners_of_cavity
from shared.units import length_mark

_HAIR = 1e-9
_FLAT = 1e-6  # mm


@dataclass(frozen=True, slots=True)
class _Left:
    """The least that one cut leaves: how much, where (in the part's frame), of which part."""

    size: float
    place: Vec3
    part: Part
    kind: str


def _least_by_kind(
    bench: Bench, measured: Callable[[Part, Cut, str], Iterator[tuple[float, Vec3]]]
) -> Iterator[tuple[_Left, tuple[str, ...]]]:
    """For each kind of part the thinnest of what is left, and all parts that have too little."""
    found: dict[str, list[_Left]] = {}
    for joint in bench.joints:
        for name, cuts in zip(joint.parts, (joint.cuts_first, joint.cuts_second), strict=True):
            part = bench.part(name)
            for cut in cuts:
                for size, place in measured(part, cut, joint.kind):
                    left = _Left(size, place, part, joint.kind)
                    found.setdefault(part.kind, []).append(left)
    for group in found.values():
        worst = min(group, key=lambda one: one.size)
        yield worst, tuple(dict.fromkeys(one.part.name for one in group))


# Those of bridles, of aprons and of rails under a seat have checks of their own.
_TENONS: dict[str, str] = {
    "rail tenon": "rest_tenon",
    "post tenon": "post_tenon",
    "slat tenon": "slat_thickness",
}


def _tenons(bench: Bench) -> Iterator[Finding]:
    least = LEAST_WALL.of(bench)

    def measured(part: Part, cut: Cut, kind: str) -> Iterator[tuple[float, Vec3]]:
        if isinstance(cut, ShoulderedTenon) and kind in _TENONS:
            y, z = _within(part.shape.blank, cut)
            size = min(y[1] - y[0], z[1] - z[0])
            if size < least - _HAIR:
                yield size, (cut.shoulder, sum(y) / 2.0, sum(z) / 2.0)

    for worst, parts in _least_by_kind(bench, measured):
        name = _TENONS[worst.kind]
        yield _thin(
            "thin_tenon_of_rest",
            worst,
            parts,
            least,
            f"The {worst.kind}s are only {length_mark(worst.size)} thick, less than "
            f"{length_mark(least)}.",
            Mend(f"Make them {length_mark(least)} thick.", ((name, least),)),
        )


def _within(blank: Blank, cut: ShoulderedTenon) -> tuple[tuple[float, float], tuple[float, float]]:
    """The tenon's extent across and through the piece."""
    return (
        (max(0.0, cut.y_low), min(blank.width, cut.y_high)),
        (max(0.0, cut.z_low), min(blank.thickness, cut.z_high)),
    )


def _thin(
    check: str,
    worst: _Left,
    parts: tuple[str, ...],
    least: float,
    message: str,
    mend: Mend | None = None,
) -> Finding:
    return Finding(
        check=check,
        level=Level.THINK_AGAIN,
        message=message,
        parts=parts,
        place=worst.part.frame.to_bench(worst.place),
        amount=worst.size,
        limit=least,
        mend=mend,
    )


def _pins(bench: Bench) -> Iterator[Finding]:
    least = LEAST_PIN.of(bench)

    def measured(part: Part, cut: Cut, kind: str) -> Iterator[tuple[float, Vec3]]:
        del kind
        if isinstance(cut, Sockets | EndGaps):
            for low, high in _standing(part.shape.blank, cut):
                if high - low < least - _HAIR:
                    yield high - low, (cut.x_end, (low + high) / 2.0, 0.0)

    for worst, parts in _least_by_kind(bench, measured):
        yield _thin(
            "thin_pin",
            worst,
            parts,
            least,
            f"{worst.part.title}: at its {worst.kind} only {length_mark(worst.size)} stand "
            f"between two cuts, less than {length_mark(least)}: it breaks off as it is cut.",
        )


def _standing(blank: Blank, cut: Sockets | EndGaps) -> Iterator[tuple[float, float]]:
    """From where to where across the piece something stands, each where it is narrowest."""
    if isinstance(cut, Sockets):
        gaps = [
            (min(one.face_low, one.deep_low), max(one.face_high, one.deep_high))
            for one in cut.sockets
        ]
    else:
        gaps = [
            (min(one.end_low, one.base_low), max(one.end_high, one.base_high)) for one in cut.gaps
        ]
    gaps.sort()
    for (_, low), (high, _) in pairwise([(0.0, 0.0), *gaps, (blank.width, blank.width)]):
        if high - low > 1e-6 and not math.isclose(low, high):
            yield low, high


def _tongues(bench: Bench) -> Iterator[Finding]:
    least = LEAST_TONGUE_IN_GROOVE.of(bench)

    def measured(part: Part, cut: Cut, kind: str) -> Iterator[tuple[float, Vec3]]:
        if isinstance(cut, Rebate) and kind == "rebate and groove":
            size = part.shape.blank.thickness - cut.depth
            if size < least - _HAIR:
                yield size, (cut.x_low, (cut.y_low + cut.y_high) / 2.0, cut.depth)

    for worst, parts in _least_by_kind(bench, measured):
        yield _thin(
            "thin_tongue",
            worst,
            parts,
            least,
            f"{worst.part.title}: its rebate leaves a tongue of only {length_mark(worst.size)}, "
            f"less than {length_mark(least)}.",
        )


def _behind(bench: Bench) -> Iterator[Finding]:
    least = LEAST_LEFT.of(bench)
    found: dict[str, list[tuple[float, Vec3, Part, str]]] = {}
    for part in bench.parts:
        for size, place, what in _left_behind(part.shape):
            if size < least - _HAIR:
                found.setdefault(part.kind, []).append((size, place, part, what))
    for group in found.values():
        size, place, part, what = min(group, key=lambda one: one[0])
        left = f"only {length_mark(size)} of wood is" if size > 0.0 else "no wood is"
        yield Finding(
            check="thin_behind_cut",
            level=Level.DO_NOT_CUT if size <= 0.0 else Level.THINK_AGAIN,
            message=f"{part.title}: {left} left {what}, less than {length_mark(least)}.",
            parts=tuple(dict.fromkeys(one[2].name for one in group)),
            place=part.frame.to_bench(place),
            amount=size,
            limit=least,
        )


@lru_cache(maxsize=1024)
def _left_behind(shape: Shape) -> tuple[tuple[float, Vec3, str], ...]:
    """Behind whatever is sunk into one side of a board: to its other side, and to what is sunk
    into that.  How much, in the middle of which place, behind or between what."""
    thick = shape.blank.thickness
    sunk = [(cut, _box(cut, shape.blank)) for cut in shape.cuts if isinstance(cut, Sunk)]
    near = [(cut, box) for cut, box in sunk if box[0][2] <= _FLAT and box[1][2] < thick - _FLAT]
    far = [(cut, box) for cut, box in sunk if box[0][2] > _FLAT and box[1][2] >= thick - _FLAT]
    found = []
    for cut, (low, high) in near:
        found.append((thick - high[2], _middle(low, high), f"behind the {cut.title}"))
        for other, (other_low, other_high) in far:
            low_both = (max(low[0], other_low[0]), max(low[1], other_low[1]), high[2])
            high_both = (min(high[0], other_high[0]), min(high[1], other_high[1]), other_low[2])
            # What runs out at an end stands in the tongue of a corner, and may go through it.
            ends = low_both[0] <= _FLAT or high_both[0] >= shape.blank.length - _FLAT
            crossing = all(low_both[axis] < high_both[axis] - _FLAT for axis in (0, 1))
            if crossing and not ends:
                what = f"between the {cut.title} and the {other.title} in the other side"
                found.append((high_both[2] - low_both[2], _middle(low_both, high_both), what))
    for cut, (low, high) in far:
        found.append((low[2], _middle(low, high), f"behind the {cut.title}"))
    return tuple(found)


def _box(cut: Cut, blank: Blank) -> tuple[Vec3, Vec3]:
    x, y, z = corners_of_cavity(cut, blank).T.tolist()
    return (min(x), min(y), min(z)), (max(x), max(y), max(z))


def _middle(low: Vec3, high: Vec3) -> Vec3:
    return (low[0] + high[0]) / 2.0, (low[1] + high[1]) / 2.0, (low[2] + high[2]) / 2.0


CHECKS: tuple[Check, ...] = (
    Check(
        "thin_tenon_of_rest",
        "Thin tenons of a back rest",
        "The tenons of posts, rails and slats hold the rest against everybody who leans back. "
        "Under {6 mm} they break easily: common practice, no source.",
        _tenons,
        ("back rest",),
        limits=(LEAST_WALL,),
    ),
    Check(
        "thin_pin",
        "Thin pin, tail or finger",
        "Measures what stands between the cuts of dovetails and box joints, each where it is "
        "narrowest, and the half pins at the edges. Under {3 mm} one breaks off as it is cut or "
        "driven home: common practice, no source.",
        _pins,
        limits=(LEAST_PIN,),
    ),
    Check(
        "thin_tongue",
        "Thin tongue in a groove",
        "The tongue that a rebate leaves at the end of a drawer's front or back holds the corner "
        "together. Under {3 mm} it breaks along its root: common practice, no source.",
        _tongues,
        limits=(LEAST_TONGUE_IN_GROOVE,),
    ),
    Check(
        "thin_behind_cut",
        "Little wood behind a housing, groove, rebate or hinge",
        "Measures what is left through the thickness behind whatever is sunk into a board, up to "
        "its other face or to what is sunk into that. Under {2 mm} it breaks through or shows as a "
        "line: common practice, no source.",
        _behind,
        limits=(LEAST_LEFT,),
    ),
)
