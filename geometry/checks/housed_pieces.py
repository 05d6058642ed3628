"""Checks of pieces in stopped housings, measured on the parts that there are.

Whether each goes in, without rattling; and whether its notch clears and hides the round that the
router leaves at the stop.  Frame and units: bench frame, mm; "forward" is toward the maker.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from geometry.bench.bench import Bench
from geometry.bench.lipped import LIPPED
from geometry.checks.check import Check
from geometry.checks.limits_of_joints import LEAST_COVER, SHORTEST_IN_HOUSINGS
from geometry.checks.limits_of_wood import LOOSEST_IN_HOUSING
from geometry.cuts.contour import Face
from geometry.cuts.housing import StoppedHousing
from geometry.cuts.notch import Notch
from geometry.design.finding import Finding, Level, Mend
from geometry.design.joint import Joint
from geometry.design.part import Part
from geometry.primitives.frame import Vec3, scale
from geometry.solids.cutting import placed
from shared.units import length_mark

_NEAR = 1e-6  # mm
_SHELF = "shelf"  # its length has a check of its own
_PARTITION = "partition"  # its cover has a check of its own


@dataclass(frozen=True, slots=True)
class _Housed:
    """A piece in one of its housings, as both are cut."""

    board: Part
    piece: Part
    housing: StoppedHousing
    notch: Notch | None
    lipping: Part | None

    @property
    def floor(self) -> Vec3:
        """A point of the housing's floor, at its stop."""
        cut, thickness = self.housing, self.board.shape.blank.thickness
        z = cut.depth if cut.face is Face.FACE_SIDE else thickness - cut.depth
        middle = (cut.x_low + cut.x_high) / 2.0
        return self.board.frame.to_bench((middle, cut.stop, z))

    @property
    def into(self) -> Vec3:
        """Square to the floor, into the board."""
        axis = self.board.frame.z_axis
        return axis if self.housing.face is Face.FACE_SIDE else scale(axis, -1.0)

    @property
    def beyond(self) -> float:
        """How far the piece reaches beyond the floor; less than 0 where it does not reach it."""
        reach = (placed(self.piece).vertices - np.array(self.floor)) @ np.array(self.into)
        return float(reach.max())

    @property
    def thickness(self) -> float:
        """Of the piece, across the housing."""
        along = placed(self.piece).vertices @ np.array(self.board.frame.x_axis)
        return float(np.ptp(along))

    @property
    def front(self) -> float:
        """How far forward the piece reaches; mm before y = 0."""
        return -float(placed(self.piece).low[1])

    @property
    def cover(self) -> float:
        """How far behind the front, with its lipping, the housing stops."""
        ends = [self.front, *([-float(placed(self.lipping).low[1])] if self.lipping else [])]
        return max(ends) - self.stop

    @property
    def stop(self) -> float:
        """How far forward the housing goes."""
        return -self.floor[1]

    @property
    def tongue(self) -> float:
        """How far forward the part goes that stands in the housing."""
        if self.notch is None:
            return self.front
        return -self.piece.frame.to_bench((0.0, self.notch.y_low, 0.0))[1]


@lru_cache(maxsize=64)
def _housed(bench: Bench) -> tuple[_Housed, ...]:
    found = []
    for joint in bench.joints:
        if joint.kind == "stopped housing":
            one = _as_cut(bench, joint)
            if one is not None:
                found.append(one)
    return tuple(found)


def _as_cut(bench: Bench, joint: Joint) -> _Housed | None:
    """The cuts that the parts really have, nearest to those of the joint."""
    board, piece = (bench.part(name) for name in joint.parts)
    (wanted,) = (cut for cut in joint.cuts_first if isinstance(cut, StoppedHousing))
    housings = [cut for cut in board.shape.cuts if isinstance(cut, StoppedHousing)]
    if not housings:
        return None
    housing = min(
        housings, key=lambda cut: abs(cut.x_low - wanted.x_low) + abs(_other(cut, wanted))
    )
    (at,) = (cut for cut in joint.cuts_second if isinstance(cut, Notch))
    notches = [
        cut
        for cut in piece.shape.cuts
        if isinstance(cut, Notch) and abs(cut.y_high - at.y_high) < 1.0
    ]
    middle = at.x_low + at.x_high
    near = [cut for cut in notches if abs(cut.x_low + cut.x_high - middle) < at.x_high - at.x_low]
    glued = [one.parts for one in bench.joints if one.kind == LIPPED and piece.name in one.parts]
    other = next((name for pair in glued for name in pair if name != piece.name), "")
    lipping = bench.part(other) if other else None
    return _Housed(board, piece, housing, near[0] if near else None, lipping)


def _other(cut: StoppedHousing, wanted: StoppedHousing) -> float:
    """Far away where two housings lie in opposite faces."""
    return 0.0 if cut.face is wanted.face else 1e6


def _lengths(bench: Bench) -> Iterator[Finding]:
    """Pieces between two housings, against the floors of both where they are nearest."""
    shortest = SHORTEST_IN_HOUSINGS.of(bench)
    pairs: dict[str, list[_Housed]] = {}
    for one in _housed(bench):
        if one.piece.kind != _SHELF:
            pairs.setdefault(one.piece.name, []).append(one)
    for name, ends in pairs.items():
        if len(ends) != 2:
            continue
        first, second = ends
        over = first.beyond + second.beyond
        if -shortest - _NEAR <= over <= _NEAR:
            continue
        along = placed(first.piece).vertices @ np.array(first.into)
        length = float(np.ptp(along))
        long = over > 0.0
        yield Finding(
            check="piece_too_long" if long else "piece_too_short",
            level=Level.DO_NOT_CUT if long else Level.THINK_AGAIN,
            message=(
                f"{first.piece.title} is {length_mark(length)} long; between the floors of its "
                f"housings there are {length_mark(length - over)} at the tightest place."
            ),
            parts=(name, first.board.name, second.board.name),
            place=first.floor if first.beyond >= second.beyond else second.floor,
            amount=length,
            limit=length - over,
        )


def _sideways(bench: Bench) -> Iterator[Finding]:
    """Pieces across their housings: tight ones do not go in, loose ones rattle."""
    loosest = LOOSEST_IN_HOUSING.of(bench)
    worst: dict[tuple[str, bool], tuple[float, _Housed]] = {}
    for one in _housed(bench):
        room = one.housing.width - one.thickness
        if -_NEAR <= room <= loosest + _NEAR:
            continue
        key = one.piece.kind, room < 0.0
        if key not in worst or abs(room) > abs(worst[key][0]):
            worst[key] = room, one
    for (_, tight), (room, one) in worst.items():
        yield Finding(
            check="housing_tight" if tight else "housing_loose",
            level=Level.DO_NOT_CUT if tight else Level.THINK_AGAIN,
            message=(
                f"{one.piece.title} is {length_mark(one.thickness)} thick and its housing in "
                f"{one.board.title.lower()} {length_mark(one.housing.width)} wide: "
                f"{'it does not go in' if tight else 'it rattles'}."
            ),
            parts=(one.piece.name, one.board.name),
            place=one.floor,
            amount=room,
            limit=0.0 if tight else loosest,
            mend=None if tight else _closer(loosest),
        )


def _closer(loosest: float) -> Mend:
    fit = min(0.2, loosest)
    room = f"{length_mark(fit)} of clearance" if fit > 0.0 else "no clearance"
    return Mend(f"Give the housings {room}.", (("housing_fit", fit),))


def _notches(bench: Bench) -> Iterator[Finding]:
    """Notches too short or too low for the round, or so high that a slit stays over it."""
    loosest, told = LOOSEST_IN_HOUSING.of(bench), set()
    for one in _housed(bench):
        if one.piece.name in told:
            continue
        found = _notch(one, loosest)
        if found is not None:
            told.add(one.piece.name)
            yield found


def _notch(one: _Housed, loosest: float) -> Finding | None:
    """What is wrong with the notch over one housing's stop; None for one that is right."""
    cut, title = one.housing, one.piece.title
    needed = one.front - one.stop + min(cut.corner_radius, cut.width / 2.0)
    length = one.front - one.tongue
    height = 0.0 if one.notch is None else one.notch.x_high - one.notch.x_low
    where = f"in {one.board.title.lower()}"
    if length < needed - _NEAR:
        check, level, amount, limit = "notch_short", Level.DO_NOT_CUT, length, needed
        what = (
            f"its notch is {length_mark(length)} long, and the round at the stop of its housing "
            f"{where} begins {length_mark(needed)} behind its front: it does not go home"
        )
    elif height < cut.depth - _NEAR:
        check, level, amount, limit = "notch_low", Level.DO_NOT_CUT, height, cut.depth
        what = (
            f"its notch is {length_mark(height)} high, and its housing {where} "
            f"{length_mark(cut.depth)} deep: it stands on its front corner"
        )
    elif height > cut.depth + loosest + _NEAR:
        check, level, amount, limit = "notch_high", Level.THINK_AGAIN, height, cut.depth
        what = (
            f"its notch is {length_mark(height)} high, and its housing {where} only "
            f"{length_mark(cut.depth)} deep: over the slit the router's round shows"
        )
    else:
        return None
    return Finding(
        check=check,
        level=level,
        message=f"{title}: {what}.",
        parts=(one.piece.name, one.board.name),
        place=one.floor,
        amount=amount,
        limit=limit,
    )


def _covers(bench: Bench) -> Iterator[Finding]:
    """Stops that pieces other than uprights hardly cover, or do not."""
    least = LEAST_COVER.of(bench)
    worst: dict[str, _Housed] = {}
    for one in _housed(bench):
        cover = one.cover
        if cover >= least - _NEAR or (one.piece.kind == _PARTITION and cover > 0.0):
            continue
        before = worst.get(one.piece.kind)
        if before is None or cover < before.cover:
            worst[one.piece.kind] = one
    for one in worst.values():
        cover = one.cover
        shows = cover <= _NEAR
        more = least + 3.0
        yield Finding(
            check="stop_shows" if shows else "stop_nearly_shows",
            level=Level.DO_NOT_CUT if shows else Level.THINK_AGAIN,
            message=(
                f"The housing for “{one.piece.title}” in “{one.board.title}” "
                f"{_ending(cover, shows=shows)}"
            ),
            parts=(one.piece.name, one.board.name),
            place=one.floor,
            amount=cover,
            limit=least,
            mend=Mend(f"Stop them {length_mark(more)} behind.", (("housing_cover", more),)),
        )


def _ending(cover: float, *, shows: bool) -> str:
    """Where a housing stops behind the front of what stands in it, or before it."""
    if not shows:
        return (
            f"stops only {length_mark(cover)} behind its front: easing the arris would bare the "
            "round that the router leaves."
        )
    where = "stops at" if cover > -_NEAR else f"goes {length_mark(-cover)} beyond"
    return f"{where} its front: the router's round shows."


CHECKS: tuple[Check, ...] = (
    Check(
        "partition_length",
        "Partition that does not go between its housings",
        "Measures each piece that stands in two housings, as it is cut, against the floors of both "
        "where they are nearest to each other. Too long and it holds the case open, too short and "
        "its tongues hold on little. It may be {2 mm} short: common practice, no source.",
        _lengths,
        limits=(SHORTEST_IN_HOUSINGS,),
    ),
    Check(
        "housing_width",
        "Piece that does not go into its housing, or rattles in it",
        "Compares the thickness of each housed piece with the width of its housing, as both are "
        "cut. A tight one splits the board when it is driven home, a loose one is held by glue "
        "alone and stands out of square. The limit of {0.5 mm} is common practice, no source.",
        _sideways,
        limits=(LOOSEST_IN_HOUSING,),
    ),
    Check(
        "notch_clears_round",
        "Notch too small for the round at a stop",
        "At the stop of a housing the router leaves a round, and the piece's front corner is "
        "notched so that it passes and hides it. A notch that is too short or too low keeps the "
        "piece from going home; one that is too high leaves a slit over the round. The limits are "
        "the round's beginning and the housing's depth, with {0.5 mm} over (common practice, no "
        "source).",
        _notches,
        limits=(LOOSEST_IN_HOUSING,),
    ),
    Check(
        "stop_covered",
        "Router's stop left showing",
        "Looks at how far each housing, as it is cut, stops behind the front of its piece, be it a "
        "shelf, a partition or an end. One that goes beyond shows its round; one that is hardly "
        "covered shows it as soon as the arris is eased. The limit of {1 mm} is common practice, "
        "no source.",
        _covers,
        limits=(LEAST_COVER,),
    ),
)
