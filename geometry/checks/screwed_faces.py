"""A check of screws between two faces that lie together: whether they find wood there.

Bench frame, mm.  A drawer's front on its box, a hinge strip on its walls, a post on the back edges
of a seat and a wooden runner on its upright are held by the screws that their joint tells, each in
its place.  It is good where the hole in the one piece, as deep as the least thread, and the thread
in the other, as deep as the joint bores it and no less, keep off every cut and face of theirs but
those of the joint itself.  Where the joint has found no room for screws, two are looked for as a
maker would who bores for them when the pieces are together: each in one half of the face, first a
quarter of it from its ends, then elsewhere.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

import numpy as np

from geometry.bench.bench import Bench
from geometry.checks.check import Check
from geometry.checks.limits_of_wood import LEAST_OVER_SCREW, LEAST_THREAD
from geometry.cuts.cut import Cut
from geometry.cuts.end_bore import EndBore
from geometry.design.finding import Finding, Level, Mend
from geometry.design.joint import Joint, Screws
from geometry.design.part import Part, Shape
from geometry.primitives.frame import Vec3, add, scale, subtract, unit
from geometry.solids.nearness import Near, nearest
from shared.fixings import SCREW_EASE, WoodScrew
from shared.units import length_mark

_HAIR = 1e-9
_FRONT = "drawer front"
_DOWN_A_HALF = (0.25, 0.15, 0.35, 0.08, 0.45)  # of the face's length, from the end of a half
_ACROSS = (0.5, 0.25, 0.75)


@dataclass(frozen=True, slots=True)
class _Screw:
    """Where a screw passes from one piece into another, and the way it goes; bench frame."""

    at: Vec3
    into: Vec3
    toward: Vec3
    head: Part
    holder: Part
    screw: WoodScrew
    deep: float  # of the thread
    least: float  # of one that holds
    bored: bool  # whether the joint says that it stands there

    def thread(self, over: float) -> Cut:
        """In the piece that holds it."""
        return self._bore(self.holder, self.into, self.screw.root, self.deep, over)

    def hole(self, over: float) -> Cut | None:
        """In the piece under its head, as deep but no farther than that goes; None where that is
        too thin to be looked into."""
        way = scale(self.into, -1.0)
        frame = self.head.frame
        through = _through(self.head, frame.to_local(self.at), frame.turn_to_local(way)) - over
        deep = min(self.least, through)
        if deep <= over:
            return None
        return self._bore(self.head, way, self.screw.shank + SCREW_EASE, deep, over)

    def _bore(self, part: Part, way: Vec3, wide: float, deep: float, over: float) -> Cut:
        """From just under the face, which may be sawn itself."""
        frame = part.frame
        start = frame.to_local(add(self.at, scale(way, over)))
        into, aside = frame.turn_to_local(way), frame.turn_to_local(self.toward)
        return EndBore(start, into, aside, wide, deep - over)


@dataclass(frozen=True, slots=True)
class _Lacking:
    """A half of a face in which no screw finds a place: the best there is, and what is near it."""

    screw: _Screw
    near: Near
    part: Part


def _through(part: Part, mouth: Vec3, way: Vec3) -> float:
    """How far a piece goes on from a place along a direction, both in its own frame."""
    blank = part.shape.blank
    far = [
        ((size if step > 0.0 else 0.0) - start) / step
        for size, start, step in zip(
            (blank.length, blank.width, blank.thickness), mouth, way, strict=True
        )
        if abs(step) > _HAIR
    ]
    return max(0.0, min(far))


def _without(part: Part, cuts: Sequence[Cut]) -> Part:
    """A part as it is before some of its cuts."""
    if not cuts:
        return part
    kept = tuple(cut for cut in part.shape.cuts if cut not in cuts)
    return replace(part, shape=Shape(part.shape.blank, kept))


def _halves(
    bench: Bench, joint: Joint, screws: Screws, least: float
) -> Iterator[tuple[_Screw, ...]]:
    """For each half of the face the places to be tried, the first one before all."""
    contact = joint.contacts[0]
    corner, beside, _, above = contact.corners
    sides = sorted((subtract(beside, corner), subtract(above, corner)), key=np.linalg.norm)
    across, along = sides[0], sides[1]
    own = (joint.cuts_first, joint.cuts_second)
    first, second = (
        _without(bench.part(name), cuts) for name, cuts in zip(joint.parts, own, strict=True)
    )
    head, holder = (first, second) if screws.heads == 0 else (second, first)

    def tried(at: Vec3, *, bored: bool) -> _Screw:
        deep = max(least, screws.bite) if bored else least
        way, screw = unit(along), screws.screw
        return _Screw(at, screws.into, way, head, holder, screw, deep, least, bored)

    for at in screws.at:
        yield (tried(at, bored=True),)
    if screws.at:
        return
    for near_end in (True, False):
        yield tuple(
            tried(
                add(corner, add(scale(along, s if near_end else 1.0 - s), scale(across, t))),
                bored=False,
            )
            for s in _DOWN_A_HALF
            for t in _ACROSS
        )


def _in_the_way(screw: _Screw, over: float) -> tuple[Near, Part] | None:
    """What comes too near to a screw, and in which of the two pieces."""
    for part, cut in ((screw.holder, screw.thread(over)), (screw.head, screw.hole(over))):
        near = nearest(part.shape, cut, over - _HAIR) if cut is not None else None
        if near is not None:
            return near, part
    return None


def _no_room(bench: Bench) -> Iterator[Finding]:
    thread, over = LEAST_THREAD.of(bench), LEAST_OVER_SCREW.of(bench)
    lacking: dict[tuple[str, str], list[_Lacking]] = {}
    for joint in bench.joints:
        if joint.screws is None:
            continue
        for places in _halves(bench, joint, joint.screws, thread):
            best: _Lacking | None = None
            for screw in places:
                met = _in_the_way(screw, over)
                if met is None:
                    break
                if best is None or met[0].distance > best.near.distance:
                    best = _Lacking(screw, *met)
            else:
                assert best is not None, "a half has places to be tried"
                kinds = best.screw.head.kind, best.screw.holder.kind
                lacking.setdefault(kinds, []).append(best)
    for group in lacking.values():
        yield _finding(group, over)


def _finding(group: list[_Lacking], over: float) -> Finding:
    """Of like pieces the worst, with all of them."""
    worst = min(group, key=lambda one: one.near.distance)
    screw, near = worst.screw, worst.near
    many = f" ({len(group)} of them)" if len(group) > 1 else ""
    left = f"leaves only {length_mark(round(near.distance, 2))} of wood at it"
    sides = dict(zip(("left end", "right end"), worst.part.ends, strict=True))
    what = f"the {sides.get(near.title, near.title)} of “{worst.part.title}” "
    what += left if near.distance > 0.0 else "is where it would be"
    parts = tuple(
        dict.fromkeys(p.name for one in group for p in (one.screw.head, one.screw.holder))
    )
    return Finding(
        check="screw_finds_no_place",
        level=Level.THINK_AGAIN,
        message=(
            f"{_where(screw)} of no. {screw.screw.gauge} that holds in {length_mark(screw.deep)}"
            f"{many}: {what}."
        ),
        parts=parts,
        place=screw.at,
        amount=near.distance,
        limit=over,
        mend=_mend(worst, screw.deep + over),
    )


def _where(screw: _Screw) -> str:
    head, holder = screw.head.title, screw.holder.title
    if screw.bored:
        return f"Where “{head}” is bored for a screw into “{holder}” there is no place for one"
    return f"In half of where “{head}” lies on “{holder}” no place is left for a screw"


def _mend(worst: _Lacking, thickness: float) -> Mend | None:
    """A front thick enough for the thread."""
    blank = worst.part.shape.blank
    if worst.part.kind != _FRONT or worst.near.cut is not None or blank.thickness >= thickness:
        return None
    return Mend(
        f"Make the fronts {length_mark(thickness)} thick.",
        (("drawer_front_thickness", thickness),),
    )


CHECKS: tuple[Check, ...] = (
    Check(
        "screwed_faces",
        "No place for a screw between two faces",
        "A drawer's front, a hinge strip, posts behind a seat and wooden runners are screwed to "
        "what they lie on, each screw in its place on the joint's detail. Looks whether each, of "
        "the gauge and as deep as told there, keeps off every cut of both pieces (carving, groove, "
        "taper, housing, mortise) and does not come out: {8 mm} of thread at least and {1 mm} of "
        "wood round it, common practice, no source. Where the faces are too small for screws with "
        "set places it looks in each half of them for one that the maker may choose.",
        _no_room,
        limits=(LEAST_THREAD, LEAST_OVER_SCREW),
        quick=False,
    ),
)
