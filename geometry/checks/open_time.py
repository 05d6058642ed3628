"""Whether a glue-up is closed before its glue has skinned over."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from functools import partial

from geometry.bench.bench import Bench
from geometry.checks.check import Check
from geometry.checks.glue_stages import Stage, goes, stages, time_for
from geometry.checks.limits_of_glue_ups import MINUTES_A_DOVETAIL, MINUTES_A_JOINT, OPEN_TIME
from geometry.checks.looked import Looked, looked_into
from geometry.design.finding import Finding, Level
from geometry.design.joint import Joint
from geometry.joints.closing import MANY_FACED
from geometry.primitives.frame import Vec3


def findings_of(bench: Bench, looked: Looked) -> Iterator[Finding]:
    """Closings that take too long, and glue-ups that have to be done in several goes."""
    if looked.assembly.locked:
        return  # there is no order to glue it in
    minutes = partial(_minutes, MINUTES_A_JOINT.of(bench), MINUTES_A_DOVETAIL.of(bench))
    open_time = OPEN_TIME.of(bench)
    for stage in stages(bench, looked.assembly):
        spoiled = False
        for closing in stage.last.all_closings():
            takes = time_for(closing.joints, minutes)
            if takes <= open_time:
                continue
            spoiled = True
            rest = [one for one in goes(stage, minutes, open_time) if closing.joints[0] not in one]
            yield Finding(
                check="too_many_at_once",
                level=Level.THINK_AGAIN,
                message=(
                    f"{len(closing.joints)} glued joints close at once when "
                    f"{_titles(bench, closing.coming)} {_comes(closing.coming)} on: about "
                    f"{takes:.3g} minutes of spreading, and the glue stays open for "
                    f"{open_time:.3g}. {_apart(rest)}Use a slower glue or a second pair of hands."
                ),
                parts=_names(closing.joints),
                place=_place(closing.joints),
                amount=takes,
                limit=open_time,
                unit="min",
                estimate=True,
            )
        if not spoiled:
            yield from _in_goes(bench, stage, minutes, open_time)


def _in_goes(
    bench: Bench, stage: Stage, minutes: partial[float], open_time: float
) -> Iterator[Finding]:
    """A glue-up that is too long as one, and how it is divided."""
    joints = stage.last.all_joints()
    takes = time_for(joints, minutes)
    if takes <= open_time:
        return
    done = goes(stage, minutes, open_time)
    told = "; then ".join(f"{_kinds(bench, _names(one))} ({_joints(one)})" for one in done)
    yield Finding(
        check="glued_in_goes",
        level=Level.GOOD_TO_KNOW,
        message=(
            f"Glue up {stage.title} in {len(done)} goes: its {len(joints)} glued joints take about "
            f"{takes:.3g} minutes, and the glue stays open for {open_time:.3g}. First {told}. "
            "Put the rest on dry each time, to keep it square."
        ),
        parts=_names(joints),
        place=_place(joints),
        amount=takes,
        limit=open_time,
        unit="min",
        estimate=True,
    )


def _minutes(plain: float, many_faced: float, joint: Joint) -> float:
    return many_faced if joint.kind in MANY_FACED else plain


def _apart(rest: list[tuple[Joint, ...]]) -> str:
    """What can be glued before or after."""
    count = sum(len(one) for one in rest)
    return f"The other {_joints_words(count)} can be glued by themselves. " if count else ""


def _joints(joints: tuple[Joint, ...]) -> str:
    return _joints_words(len(joints))


def _joints_words(count: int) -> str:
    return f"{count} joint{'s' if count != 1 else ''}"


def _comes(names: tuple[str, ...]) -> str:
    return "goes" if len(names) == 1 else "go"


def _names(joints: tuple[Joint, ...]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(name for joint in joints for name in joint.parts))


def _titles(bench: Bench, names: tuple[str, ...]) -> str:
    """The first few by their titles, and how many more."""
    titles = [bench.part(name).title for name in names[:3]]
    more = len(names) - 3
    if more > 0:
        return f"{', '.join(titles)} and {more} more"
    return " and ".join((", ".join(titles[:-1]), titles[-1])) if len(titles) > 1 else titles[0]


def _kinds(bench: Bench, names: tuple[str, ...]) -> str:
    """What parts there are, and how many of each."""
    there = Counter(part.kind for part in bench.parts)
    counted = Counter(bench.part(name).kind for name in names)
    return ", ".join(
        f"{count} {kind}s" if count > 1 else f"{'the' if there[kind] == 1 else 'one'} {kind}"
        for kind, count in counted.items()
    )


def _place(joints: tuple[Joint, ...]) -> Vec3 | None:
    """A corner of the first of them that has a face."""
    corners = [corner for joint in joints for one in joint.contacts for corner in one.corners]
    return corners[0] if corners else None


def _run(bench: Bench) -> Iterator[Finding]:
    return findings_of(bench, looked_into(bench))


CHECKS: tuple[Check, ...] = (
    Check(
        "open_time",
        "Glued before the glue has set",
        "Counts the glued joints that close at one time, in the order in which the bench goes "
        "together, and reckons a time for each: glue that has skinned over holds little, and a "
        "joint that has grabbed half way cannot be driven home. What is made by itself, as a base, "
        "a drawer or a back rest, is counted by itself. If a whole glue-up takes too long but can "
        "be divided, it says in which goes; if joints that close in one movement take too long, it "
        "cannot be divided. The times are estimates from common practice, and the glue's own sheet "
        "knows better: change the limits to it.",
        _run,
        limits=(OPEN_TIME, MINUTES_A_JOINT, MINUTES_A_DOVETAIL),
    ),
)
