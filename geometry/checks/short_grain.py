"""Checks of short grain: where pieces are sawn to a slant, at feet, and beyond cuts near an end."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from geometry.bench.bench import Bench
from geometry.bench.members import has
from geometry.checks.check import Check
from geometry.checks.limits_of_wood import LEAST_END_GRAIN, MOST_SHORT, SHORTEST_RUN
from geometry.cuts.cut import Cut
from geometry.cuts.groove import Groove
from geometry.cuts.housing import StoppedHousing
from geometry.cuts.mortise import Mortise
from geometry.cuts.removal import HalfSpace
from geometry.design.finding import Finding, Level, Mend
from geometry.design.part import Part
from geometry.primitives.frame import Vec3, dot, subtract
from geometry.solids.cavities import cavity_of, faces_of
from geometry.solids.grain import (
    ShortGrain,
    across_grain,
    at_end,
    runs_out_at_both,
    runs_out_from,
)
from geometry.solids.nearness import corners_of_cavity
from shared.units import length_mark

_HAIR = 1e-9
_ENDS = 0.7  # cosine of the slope up to which a plane is an end of the piece
# A wedge is all slope, and carries along its length.
_SLOPES = ("wedge",)


def _across(bench: Bench) -> Iterator[Finding]:
    """Pieces of alike kind are one finding, as they are sawn alike."""
    times, most = SHORTEST_RUN.of(bench), MOST_SHORT.of(bench)
    found: dict[str, list[tuple[ShortGrain, Part]]] = {}
    for part in bench.parts:
        if not part.solid_timber or part.kind in _SLOPES or not runs_out_at_both(part.shape):
            continue
        short = across_grain(part.shape, times)
        if short is not None and 100.0 * short.share > most + _HAIR:
            found.setdefault(part.kind, []).append((short, part))
    for kind, group in found.items():
        short, part = max(group, key=lambda one: one[0].share)
        yield Finding(
            check="short_grain",
            level=Level.THINK_AGAIN,
            message=(
                f"{part.title}: the grain runs out at both sides over {round(100 * short.share)} % "
                f"of the section, each fibre in less than {times:g} times the piece's lesser size; "
                "it splits there."
            ),
            parts=tuple(part.name for _, part in group),
            place=part.frame.to_bench(short.place),
            amount=100.0 * short.share,
            limit=most,
            unit="%",
            mend=_less_rake(bench, times) if kind == "post" else None,
        )


def _less_rake(bench: Bench, times: float) -> Mend | None:
    """Both arms of a knee'd post slope to the grain by half its rake."""
    if not has(bench.spec, "back rest"):
        return None
    rake = math.floor(2.0 * math.degrees(math.atan(1.0 / times)))
    return Mend(f"Rake the rest {rake} degrees.", (("rest_rake", float(rake)),))


def _feet(bench: Bench) -> Iterator[Finding]:
    times, most = SHORTEST_RUN.of(bench), MOST_SHORT.of(bench)
    for part in bench.parts:
        far = part.frame.x_axis[2] < 0.0
        if part.kind != "leg" or not runs_out_from(part.shape, far=far):
            continue
        short = at_end(part.shape, times, far=far)
        if short is None or 100.0 * short.share <= most + _HAIR:
            continue
        yield Finding(
            check="foot_short_grain",
            level=Level.DO_NOT_CUT,
            message=(
                f"{part.title}: over {round(100 * short.share)} % of its foot the grain runs out "
                "at the side just above the floor; the foot breaks off."
            ),
            parts=(part.name,),
            place=part.frame.to_bench(short.place),
            amount=100.0 * short.share,
            limit=most,
            unit="%",
        )


@dataclass(frozen=True, slots=True)
class _Beyond:
    """How much wood lies beyond a cut, along the grain, and where it begins."""

    run: float
    place: Vec3
    part: Part
    kind: str


_LOOKED_AT = (
    "apron tenon",
    "rail tenon",
    "post tenon",
    "slat tenon",
    "stub tenon",
    "wedged tenon",
    "through tenon",
    "housed rail",
    "rebate and groove",
    "stopped housing",
)


def _beyond_cuts(bench: Bench) -> Iterator[Finding]:
    least = LEAST_END_GRAIN.of(bench)
    found: dict[tuple[str, str], list[_Beyond]] = {}
    for joint in bench.joints:
        if joint.kind not in _LOOKED_AT:
            continue
        for name, cuts in zip(joint.parts, (joint.cuts_first, joint.cuts_second), strict=True):
            part = bench.part(name)
            for cut in cuts:
                if not isinstance(cut, Mortise | Groove | StoppedHousing):
                    continue
                beyond = _beyond(part, cut, joint.kind)
                if beyond is not None and beyond.run < least - 1e-6:
                    found.setdefault((part.kind, joint.kind), []).append(beyond)
    for group in found.values():
        worst = min(group, key=lambda one: one.run)
        article = "an" if worst.kind[0] in "aeiou" else "a"
        yield Finding(
            check="short_beyond_cut",
            level=Level.THINK_AGAIN,
            message=(
                f"Only {length_mark(worst.run)} of {worst.part.title.lower()} is left along the "
                f"grain between the cut for {article} {worst.kind} and its end: it breaks out."
            ),
            parts=tuple(dict.fromkeys(one.part.name for one in group)),
            place=worst.part.frame.to_bench(worst.place),
            amount=worst.run,
            limit=least,
            mend=_farther_in(bench, worst, least),
        )


def _beyond(part: Part, cut: Cut, kind: str) -> _Beyond | None:
    """To the nearer end, be it square or sawn at a slant; None for a cut that is open there."""
    cavity = cavity_of(cut, part.shape.blank)
    if cavity is None or any(abs(mouth.outward[0]) > _ENDS for mouth in cavity.mouths):
        return None
    corners = [(x, y, z) for x, y, z in corners_of_cavity(cut, part.shape.blank).tolist()]
    least: tuple[float, Vec3] | None = None
    for plane in _ends(part):
        across = plane.outward[0]
        for corner in corners:
            run = dot(subtract(plane.point, corner), plane.outward) / abs(across)
            middle = (corner[0] + math.copysign(run / 2.0, across), corner[1], corner[2])
            if run > 0.0 and (least is None or run < least[0]):
                least = run, middle
    return None if least is None else _Beyond(least[0], least[1], part, kind)


def _ends(part: Part) -> Iterator[HalfSpace]:
    """The planes in which the grain ends: those of the blank and of saw cuts across it."""
    for _, plane in faces_of(part.shape.blank)[:2]:
        yield plane
    for cut in part.shape.cuts:
        for removal in cut.removals(part.shape.blank):
            if isinstance(removal, HalfSpace) and abs(removal.outward[0]) > _ENDS:
                yield removal


def _farther_in(bench: Bench, worst: _Beyond, least: float) -> Mend | None:
    lacking = math.ceil((least - worst.run) * 10.0 - 1e-6) / 10.0
    name, words = {
        "apron tenon": ("apron_shoulder", "Give the aprons' tenons shoulders of {}."),
        "rail tenon": ("post_over", "Let the posts stand {} above the top rail."),
    }.get(worst.kind, ("", ""))
    if not name or not any(known == name for known, _ in bench.spec.entries):
        return None
    wanted = bench.spec.number(name) + lacking
    return Mend(words.format(length_mark(wanted)), ((name, wanted),))


CHECKS: tuple[Check, ...] = (
    Check(
        "short_grain",
        "Short grain in a piece sawn to a slant or a bend",
        "Follows the grain through every piece that is sawn at a slant or to a bend, and looks for "
        "the section of which most has its grain running out at both sides, within five times the "
        "piece's lesser size. A slope of 1 in 5 leaves about half the strength (Wood Handbook, "
        "slope of grain; value from memory), and what is split from side to side holds nothing.",
        _across,
        limits=(SHORTEST_RUN, MOST_SHORT),
    ),
    Check(
        "foot_short_grain",
        "Foot of short grain",
        "Follows the grain up from the floor through every leg that is tapered or sawn to a bend. "
        "Where most of it runs out at a side of the leg, within five times the foot's lesser size, "
        "the foot breaks off when the bench is dragged: common practice, no source.",
        _feet,
        limits=(SHORTEST_RUN, MOST_SHORT),
    ),
    Check(
        "short_beyond_cut",
        "Short grain beyond a mortise, groove or housing",
        "Measures the wood along the grain between a mortise, a groove or a housing and the end of "
        "its piece. With little left it breaks out as the joint is driven home. The limit of "
        "{6 mm} is common practice, no source.",
        _beyond_cuts,
        limits=(LEAST_END_GRAIN,),
    ),
)
