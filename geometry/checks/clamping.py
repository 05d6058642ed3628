"""Whether a clamp can press each glued joint: two outer faces, square to one line through it.

mm and degrees.  A joint that cannot slide may be pressed aslant.  One that can slide needs the line
square to its faces, or two clamps whose pressures together are square to them, as across a mitre.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations

from geometry.bench.bench import Bench
from geometry.checks.check import Check
from geometry.checks.limits_of_glue_ups import LONGEST_CLAMP, MOST_SLANT, STEEPEST_CAUL
from geometry.checks.looked import Looked, looked_into
from geometry.checks.pressed import Pressed
from geometry.design.finding import Finding, Level
from geometry.joints.closing import Closing, closing_of
from geometry.primitives.frame import Vec3, cross, dot, norm, unit
from geometry.solids.pressing import Pads

_NONE = 1e-6  # mm or degrees: rounding
_ALIKE_CAULS = 0.5  # degrees: sawn as one
_SAME = 0.02  # two ways nearer than this are one


@dataclass(frozen=True, slots=True)
class _Judged:
    """The caul that a joint wants, 0 for none, and how long its clamp is."""

    caul_deg: float
    reach: float


def _judge(one: Pressed, slant: float) -> tuple[_Judged, ...]:
    """What it takes to press a joint, in every way that there is."""
    found = []
    keyed = closing_of(one.joint) is Closing.KEYED
    for press in one.presses:
        off = math.degrees(math.acos(min(1.0, dot(press.way, one.square))))
        if keyed or off <= slant:
            found.append(_Judged(_caul(press.pads, slant), press.pads.reach))
    if not keyed:
        for first, second in combinations(one.presses, 2):
            if _between(one.square, first.way, second.way) <= slant:
                caul = max(_caul(first.pads, slant), _caul(second.pads, slant))
                found.append(_Judged(caul, max(first.pads.reach, second.pads.reach)))
    return tuple(found)


def _caul(pads: Pads, slant: float) -> float:
    return pads.slant_deg if pads.slant_deg > slant else 0.0


def _between(square: Vec3, first: Vec3, second: Vec3) -> float:
    """How far, in degrees, a way is from lying between two others; 180 if it is beyond them."""
    across = cross(first, second)
    if norm(across) < _SAME:
        return 180.0
    aside = dot(square, unit(across))
    inside = dot(cross(first, square), across) >= 0.0 and dot(cross(square, second), across) >= 0.0
    return math.degrees(math.asin(min(1.0, abs(aside)))) if inside else 180.0


def findings_of(bench: Bench, looked: Looked) -> Iterator[Finding]:
    """Joints that no clamp can press, and those that want cauls, each glue-up's together."""
    slant, steepest = MOST_SLANT.of(bench), STEEPEST_CAUL.of(bench)
    longest = LONGEST_CLAMP.of(bench)
    bare: dict[str, list[tuple[Pressed, float]]] = {}
    long: dict[str, list[tuple[Pressed, float]]] = {}
    cauls: dict[str, list[tuple[Pressed, float]]] = {}
    for one in looked.pressed:
        ways = _judge(one, slant)
        good = [judged for judged in ways if judged.caul_deg <= steepest + _NONE]
        within = [judged for judged in good if judged.reach <= longest + _NONE]
        if not good:
            caul = min((judged.caul_deg for judged in ways), default=math.inf)
            bare.setdefault(one.title, []).append((one, caul))
        elif not within:
            reach = min(judged.reach for judged in good)
            long.setdefault(one.title, []).append((one, reach))
        elif (caul := min(judged.caul_deg for judged in within)) > 0.0:
            cauls.setdefault(one.title, []).append((one, caul))
    for leaning in bare.values():
        some = [one for one, _ in leaning]
        least = min(caul for _, caul in leaning)
        yield _finding(
            "no_clamp",
            Level.THINK_AGAIN,
            f"No clamp can press {_told(bench, some)}: no two outer faces lie across from each "
            f"other within {{{steepest:.6g} deg}} of square to a line through the joint. Leave "
            "ears or blocks on to clamp to, or hold it by a drawbore, wedges or screws.",
            some,
            least if math.isfinite(least) else None,
            steepest,
            "deg",
        )
    for reached in long.values():
        some = [one for one, _ in reached]
        far = min(reach for _, reach in reached)
        yield _finding(
            "clamp_too_short",
            Level.THINK_AGAIN,
            f"The clamps for {_told(bench, some)} have to reach {{{far:.6g} mm}}, and the longest "
            f"there is opens {{{longest:.6g} mm}}. Join two, pull it together with a band, or "
            "hold the joint by a drawbore or wedges.",
            some,
            far,
            longest,
        )
    for wanted in cauls.values():
        wanted.sort(key=lambda each: -each[1])
        some = [one for one, _ in wanted]
        least, caul = wanted[-1][1], wanted[0][1]
        alike = caul - least < _ALIKE_CAULS
        wedge = f"{{{caul:.6g} deg}}" if alike else f"{{{least:.6g} deg}} to {{{caul:.6g} deg}}"
        yield _finding(
            "caul_wanted",
            Level.GOOD_TO_KNOW,
            f"To clamp {_told(bench, some)}, saw cauls to a wedge of {wedge}: the "
            "outer faces are not square to the clamp, and it would slide.",
            some,
            caul,
            slant,
            "deg",
        )


def _finding(
    check: str,
    level: Level,
    message: str,
    some: list[Pressed],
    amount: float | None = None,
    limit: float | None = None,
    unit_of: str = "mm",
) -> Finding:
    parts = dict.fromkeys(name for one in some for name in one.joint.parts)
    return Finding(
        check=check,
        level=level,
        message=message,
        parts=tuple(parts),
        place=some[0].place,
        amount=amount,
        limit=limit,
        unit=unit_of,
    )


def _told(bench: Bench, some: list[Pressed]) -> str:
    """The first joint by its parts, and how many more."""
    first, second = (bench.part(name).title for name in some[0].joint.parts)
    more = f", and {len(some) - 1} more joints of {some[0].title}" if len(some) > 1 else ""
    return f"“{first}” to “{second}”{more.replace('1 more joints', '1 more joint')}"


def _run(bench: Bench) -> Iterator[Finding]:
    return findings_of(bench, looked_into(bench))


CHECKS: tuple[Check, ...] = (
    Check(
        "clamping",
        "Whether a clamp can press it",
        "Looks along the way in which each glued joint closes for two outer faces that a clamp can "
        "press, with room for its jaws and within its reach: a joint that is not pressed while it "
        "dries stays open. Where the faces lean, the clamp wants cauls sawn to a wedge of that "
        "angle, or it slides. A mitre is pressed by two clamps across each other. Joints that hold "
        "themselves, by wedges, screws or rubbing, need none. How far a clamp may lean, how steep "
        "a caul may be and how long a clamp there is are common practice, and yours to change.",
        _run,
        limits=(MOST_SLANT, STEEPEST_CAUL, LONGEST_CLAMP),
    ),
)
