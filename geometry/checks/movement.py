"""Checks of timber held across its grain: fast to what does not move, or in too little room."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from geometry.bench.bench import Bench
from geometry.bench.grain import OF_SHEET, SIDE_TO_SIDE, UPRIGHT
from geometry.bench.limits import set_values
from geometry.checks.check import Check
from geometry.checks.limits_of_timber import DAMPEST, DRIEST, LEAST_LAP, MOST_HELD
from geometry.checks.moving import Air, Apart, across, air_of, distinct, moved_apart
from geometry.checks.where import middle_of
from geometry.design.finding import Finding, Level, Mend
from geometry.design.joint import Joint
from geometry.design.part import Part
from geometry.joints.holds import Hold, hold_of
from geometry.primitives.frame import Vec3, dot
from shared.errors import MakerError
from shared.units import length_mark

_MEETS = 0.5  # mm: faces no farther apart than a joint's clearance are held together
_STEP = 0.1  # mm, to which room in a mend is rounded up
_HAIR = 1e-6
_END_GRAIN = 0.9  # cosine between a face's normal and the grain, above which it is end grain

# By the kind of a part, the choice of its grain and how it should run.
GRAIN_CHOICES: dict[str, tuple[str, str]] = {
    "end panel": ("end_grain", UPRIGHT),
    "end": ("panel_end_grain", UPRIGHT),
    "partition": ("partition_grain", UPRIGHT),
    "shelf": ("shelf_grain", SIDE_TO_SIDE),
    "back": ("back_grain", SIDE_TO_SIDE),
    "drawer bottom": ("drawer_bottom_grain", SIDE_TO_SIDE),
}
# By the kind of a panel: its clearance, and the choice of what it is made of.
_ROOM_OF = {
    "back": ("back_fit", "back_of"),
    "drawer bottom": ("drawer_bottom_fit", "drawer_bottom_of"),
}


@dataclass(frozen=True, slots=True)
class _Held:
    """Two pieces, the joint that holds them, and how far they move on each other."""

    first: Part
    second: Part
    kind: str
    apart: Apart


def _held_fast(bench: Bench) -> Iterator[Finding]:
    """Pieces glued or screwed fast that move on each other; like ones are one finding."""
    air, limit = air_of(bench), MOST_HELD.of(bench)
    found: dict[tuple[str, ...], list[_Held]] = {}
    for held in _pairs(bench, air):
        if held.apart.moves > limit + _HAIR:
            found.setdefault(_cause(held), []).append(held)
    for alike in found.values():
        worst, more = max(alike, key=lambda held: held.apart.moves), len(alike) - 1
        parts = tuple(
            dict.fromkeys(part.name for held in alike for part in (held.first, held.second))
        )
        yield Finding(
            check="held_across",
            level=Level.THINK_AGAIN,
            message=(
                f"“{worst.first.title}” and “{worst.second.title}” are held fast over "
                f"{length_mark(round(worst.apart.width, 1))} across the grain of one of them: "
                f"{air.words} they move {length_mark(round(worst.apart.moves, 1))} on each other "
                f"({worst.kind}{f', and {more} more like it' if more else ''})."
            ),
            parts=parts,
            place=worst.apart.place,
            amount=worst.apart.moves,
            limit=limit,
            mend=_turned([part for held in alike for part in (held.first, held.second)]),
            estimate=True,
        )


def _cause(held: _Held) -> tuple[str, ...]:
    """What is the same of those that are told as one: a piece whose grain is turned does it to all
    that it is joined to in this way."""
    pair = (held.first, held.second)
    stray = [part.kind for part in pair if part.grain_across and part.kind in GRAIN_CHOICES]
    return (held.kind, *(stray if len(stray) == 1 else [part.kind for part in pair]))


def _pairs(bench: Bench, air: Air) -> Iterator[_Held]:
    """Every two pieces that are held fast, with all the places at which they are."""
    parts = {part.name: part for part in bench.parts}
    joints: dict[tuple[str, str], list[Joint]] = {}
    for joint in bench.joints:
        if hold_of(joint, parts[joint.parts[1]]) is Hold.FAST:
            joints.setdefault(joint.parts, []).append(joint)
    for (one, other), held in joints.items():
        first, second = parts[one], parts[other]
        if first.grain == second.grain and first.material == second.material:
            continue  # they move alike
        places = distinct(_corners(held, first, second))
        if places:
            yield _Held(first, second, held[0].kind, moved_apart(first, second, places, air))


def _corners(joints: list[Joint], first: Part, second: Part) -> Iterator[Vec3]:
    """Where they hold: shoulders and other end grain hardly do, if anything else does."""
    meeting = [c for joint in joints for c in joint.contacts if c.gap <= _MEETS]
    holding = [
        contact
        for contact in meeting
        if max(abs(dot(contact.normal, part.grain)) for part in (first, second)) < _END_GRAIN
    ]
    for contact in holding or meeting:
        yield from contact.corners


def _turned(parts: list[Part]) -> Mend | None:
    """Those pieces whose grain was turned, turned back."""
    kinds = {part.kind for part in parts if part.grain_across}
    chosen = [GRAIN_CHOICES[kind] for kind in sorted(kinds) if kind in GRAIN_CHOICES]
    if not chosen:
        return None
    words = " and ".join(dict.fromkeys(word for _, word in chosen))
    return Mend(f"Let the grain run {words}.", tuple(chosen))


def _panels(bench: Bench) -> Iterator[tuple[Part, tuple[Joint, ...]]]:
    """Panels of timber that stand dry in grooves or rebates, with the joints round them."""
    parts = {part.name: part for part in bench.parts}
    found: dict[str, list[Joint]] = {}
    for joint in bench.joints:
        panel = parts[joint.parts[1]]
        if panel.solid_timber and hold_of(joint, panel) is Hold.ROOM:
            found.setdefault(joint.parts[1], []).append(joint)
    for name, joints in found.items():
        yield parts[name], tuple(joints)


def _no_room(bench: Bench) -> Iterator[Finding]:
    """Panels that swell more than the room in their grooves or rebates; like ones are one."""
    air = air_of(bench)
    tight: dict[str, list[tuple[float, Part, float]]] = {}
    for panel, joints in _panels(bench):
        moves, fit = across(panel, air), joints[0].fit
        if moves > fit + _HAIR:
            tight.setdefault(panel.kind, []).append((moves - fit, panel, fit))
    for kind, rows in tight.items():
        lacks, panel, fit = max(rows, key=lambda row: row[0])
        yield Finding(
            check="panel_no_room",
            level=Level.THINK_AGAIN,
            message=(
                f"{panel.title} is {length_mark(round(panel.across_grain, 1))} of timber across "
                f"the grain and moves {length_mark(round(lacks + fit, 1))} {air.words}; it has "
                f"{length_mark(fit)} of room."
            ),
            parts=tuple(part.name for _, part, _ in rows),
            place=middle_of(panel),
            amount=lacks + fit,
            limit=fit,
            mend=_roomier(bench, kind, lacks + fit),
            estimate=True,
        )


def _roomier(bench: Bench, kind: str, needed: float) -> Mend | None:
    """More room, where the rebate or groove allows it, or else a sheet."""
    if kind not in _ROOM_OF:
        return None
    fit, made_of = _ROOM_OF[kind]
    room = round(math.ceil(needed / _STEP - _HAIR) * _STEP, 6)
    try:
        set_values(bench.spec, {fit: room})
    except MakerError:
        return Mend("Make it of sheet.", ((made_of, OF_SHEET),))
    return Mend(f"Give it {length_mark(room)} of room.", ((fit, room),))


def _drops_out(bench: Bench) -> Iterator[Finding]:
    """Panels that shrink out of their grooves or rebates."""
    air, least = air_of(bench), LEAST_LAP.of(bench)
    loose: dict[str, list[tuple[float, Part]]] = {}
    for panel, joints in _panels(bench):
        deep = min(
            measure.value
            for joint in joints
            for measure in joint.measures
            if measure.name in ("rebate_depth", "groove_depth")
        )
        left = deep - (joints[0].fit + across(panel, air)) / 2.0
        if left < least - _HAIR:
            loose.setdefault(panel.kind, []).append((left, panel))
    for kind, rows in loose.items():
        left, panel = min(rows, key=lambda row: row[0])
        moves, held = round(across(panel, air), 1), round(left, 1)
        then = f"{length_mark(held)} of it are held at each side"
        if held <= 0.0:
            then = "it comes out at the sides"
        yield Finding(
            check="panel_drops_out",
            level=Level.THINK_AGAIN,
            message=(
                f"{panel.title} moves {length_mark(moves)} {air.words}: when it is driest {then}."
            ),
            parts=tuple(part.name for _, part in rows),
            place=middle_of(panel),
            amount=left,
            limit=least,
            mend=Mend("Make it of sheet.", ((_ROOM_OF[kind][1], OF_SHEET),))
            if kind in _ROOM_OF
            else None,
            estimate=True,
        )


_AIR = (
    "The movement is that of the Wood Handbook, equation 13-2, for flat-sawn boards, between what "
    "timber comes to in the driest and the dampest air of the brief; an estimate, as the equation "
    "is good from 6 to 14 %."
)

CHECKS: tuple[Check, ...] = (
    Check(
        "held_across",
        "Held fast across the grain",
        "Timber moves across its grain and not along it. Where two pieces are glued, or screwed in "
        "plain holes, and their grain runs differently, one tears the other or the joint. For "
        f"every joint the farthest places at which it holds are compared. {_AIR}",
        _held_fast,
        limits=(MOST_HELD, DRIEST, DAMPEST),
    ),
    Check(
        "panel_no_room",
        "Solid panel without room",
        "A panel of timber in grooves or rebates swells across its grain; without room it bursts "
        f"the joints round it or bows. The limit is the room that it has. {_AIR}",
        _no_room,
        limits=(DRIEST, DAMPEST),
    ),
    Check(
        "panel_drops_out",
        "Solid panel that shrinks out of its groove",
        "What is left of a panel of timber in its groove or rebate at each side when it is driest, "
        f"the room and all its movement taken off. {_AIR}",
        _drops_out,
        limits=(LEAST_LAP, DRIEST, DAMPEST),
    ),
)
