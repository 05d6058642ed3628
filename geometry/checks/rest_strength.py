"""An estimate of a back rest that is leaned on.

N, mm, MPa.  Method: ``geometry.strength.rests``.
"""

from __future__ import annotations

from collections.abc import Iterator

from geometry.bench.bench import Bench
from geometry.bench.rest_parameters import MOST_POSTS
from geometry.checks.check import Check
from geometry.checks.limits_of_loads import MOST_OF_STRENGTH, PUSHED_UP
from geometry.checks.limits_of_strength import BACK_PUSH, SITTERS_APART
from geometry.checks.strength import level_of
from geometry.checks.strengthening import Size, Told, Way, with_mends
from geometry.design.finding import Finding, Level, Mend
from geometry.strength.rests import (
    HELD,
    POST,
    RAIL,
    RAIL_TENON,
    SLAT,
    Leaned,
    leaned_on,
    pushes,
)

_DEEPER = Size("post_depth", "Make the posts", "deep")
_WIDER = Size("post_width", "Make the posts", "wide")
_RAIL = Size("rest_rail_thickness", "Make the rails")

# How joints break is too rough a guess to forbid one.
_ROUGH = (HELD, RAIL_TENON)

# What to make larger for each way to fail, with the power by which it counts.
_WAYS: dict[str, tuple[tuple[Size, float], ...]] = {
    POST: ((_DEEPER, 2.0), (_WIDER, 1.0)),
    HELD: ((Size("post_tenon", "Make the tenons"), 1.5), (_DEEPER, 1.0), (_WIDER, 1.0)),
    RAIL: ((_RAIL, 2.0),),
    RAIL_TENON: ((Size("rest_tenon", "Make the tenons"), 1.0), (_RAIL, 1.0)),
    SLAT: ((Size("slat_thickness", "Make the slats"), 2.0),),
}


def _rest(bench: Bench) -> Iterator[Told]:
    """One finding for all posts, one for all rails, one for the slats."""
    limit = MOST_OF_STRENGTH.of(bench)
    loads = pushes(bench.brief, BACK_PUSH.of(bench), SITTERS_APART.of(bench))
    found = [
        one for one in leaned_on(bench.spec, loads, PUSHED_UP.of(bench)) if one.share > limit + 1e-9
    ]
    for kind in ("post", "rail", "slat"):
        told = [one for one in found if one.kind == kind]
        if told:
            yield _told(bench, told, limit)


def _told(bench: Bench, found: list[Leaned], limit: float) -> Told:
    worst = max(found, key=lambda one: one.share)
    factor = worst.share / limit
    ways: tuple[Way, ...] = tuple(
        size.grown(factor ** (1.0 / power)) for size, power in _WAYS[worst.way]
    )
    posts = bench.spec.count("post_count")
    if worst.way in (RAIL, RAIL_TENON) and posts < MOST_POSTS:
        ways = (*ways, Mend("Set up another post.", (("post_count", posts + 1.0),)))
    return Told(
        Finding(
            check="rest_strength",
            level=Level.THINK_AGAIN if worst.way in _ROUGH else level_of(worst.share),
            message=(
                f"Leaned on with {worst.force:.0f} N, “{bench.part(worst.part).title}” uses about "
                f"{worst.share:.0f} % of its strength in {worst.way}: an estimate."
            ),
            parts=tuple(one.part for one in found),
            place=worst.place,
            amount=worst.share,
            limit=limit,
            unit="%",
            estimate=True,
        ),
        ways,
    )


CHECKS: tuple[Check, ...] = (
    Check(
        "rest_strength",
        "Back rest that is leaned on",
        "Reckons posts, rails and slats when all who sit lean back hard, each with 450 N (EN "
        "12520, from memory) 300 mm over the seat or 100 mm under the rest's top: bending of the "
        "posts where they leave the seat, their tenons and the glue on them, bending of rails and "
        "slats, shear of the rails' tenons, as shares of the timber's strength. A third is the "
        "most to be used: common practice, no source. What screws posts to the back of a seat is "
        "not known here, so it is not reckoned. An estimate.",
        with_mends(_rest),
        ("back rest",),
        limits=(BACK_PUSH, PUSHED_UP, SITTERS_APART, MOST_OF_STRENGTH),
        quick=False,
    ),
)
