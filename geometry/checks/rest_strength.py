"""Estimates of a back rest that is leaned on, and of what screws it to its seat.

N, mm, MPa.  Method: ``geometry.strength.rests`` and ``geometry.strength.screws``.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from geometry.bench.bench import Bench
from geometry.bench.rest_numbers import rest_numbers
from geometry.bench.rest_parameters import MOST_POSTS, TENONED
from geometry.checks.check import Check
from geometry.checks.limits_of_loads import MOST_OF_STRENGTH, PUSHED_UP
from geometry.checks.limits_of_strength import BACK_PUSH, SITTERS_APART
from geometry.checks.strength import level_of
from geometry.checks.strengthening import Size, Told, Way, share_told, with_mends
from geometry.design.finding import Level, Mend
from geometry.design.joint import Screws
from geometry.primitives.frame import Vec3, dot
from geometry.strength.rests import (
    HELD,
    POST,
    RAIL,
    RAIL_TENON,
    SLAT,
    Leaned,
    height_of_push,
    leaned_on,
    on_posts,
    pushes,
)
from geometry.strength.screws import pulls, stands_pulled
from shared.materials import density_of
from shared.units import length_mark, quantity_mark

_DEEPER = Size("post_depth", "Make the posts", "deep")
_WIDER = Size("post_width", "Make the posts", "wide")
_RAIL = Size("rest_rail_thickness", "Make the rails")

# How joints break is too rough a guess to forbid one.
_ROUGH = (HELD, RAIL_TENON)
_ALONG = 0.7  # cosine: an edge that the grain runs out of

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
    return share_told(
        "rest_strength",
        Level.THINK_AGAIN if worst.way in _ROUGH else level_of(worst.share),
        f"Leaned on with {quantity_mark(worst.force, 'N')}, “{bench.part(worst.part).title}” uses "
        f"about {worst.share:.0f} % of its strength in {worst.way}",
        tuple(one.part for one in found),
        worst.place,
        worst.share,
        limit,
        ways,
    )


@dataclass(frozen=True, slots=True)
class _Pulled:
    """One screw of a post behind a seat: where it stands in which part, how hard it is pulled by
    which push on its post, and what it stands; N."""

    part: str
    at: Vec3
    screws: Screws
    force: float
    pull: float
    stands: float

    @property
    def share(self) -> float:
        """In %."""
        return 100.0 * self.pull / self.stands


def _screws(bench: Bench) -> Iterator[Told]:
    """Posts that stand behind a seat, by the screws of their joints with its edges."""
    limit = MOST_OF_STRENGTH.of(bench)
    worst = max(_pulled(bench), key=lambda one: one.share, default=None)
    if worst is None or worst.share <= limit + 1e-9:
        return
    r = rest_numbers(bench.spec)
    posts = tuple(f"post_{post + 1}" for post in range(r.posts))
    ways: list[Way] = []
    if r.posts < MOST_POSTS:
        ways.append(Mend("Set up another post.", (("post_count", r.posts + 1.0),)))
    if r.seat.board:
        ways.append(Mend("Tenon the posts into the seat.", (("post_fixing", TENONED),)))
    yield share_told(
        "rest_screws",
        Level.THINK_AGAIN,  # a maker may still drive longer ones
        f"Leaned on with {quantity_mark(worst.force, 'N')}, a post pulls at its screws in "
        f"“{bench.part(worst.part).title}” with about {quantity_mark(worst.pull, 'N')}, and "
        f"no. {worst.screws.screw.gauge} screws with {length_mark(worst.screws.bite)} of thread "
        f"use about {worst.share:.0f} % of what they stand there",
        (*posts, worst.part),
        worst.at,
        worst.share,
        limit,
        tuple(ways),
    )


def _pulled(bench: Bench) -> Iterator[_Pulled]:
    """Every screw of every post behind the seat; none of one that is let in, as that is glued."""
    r = rest_numbers(bench.spec)
    if not r.behind:
        return
    arm = r.seat.top + height_of_push(r, PUSHED_UP.of(bench)) - r.seat.foot
    loads = pushes(bench.brief, BACK_PUSH.of(bench), SITTERS_APART.of(bench))
    for post, force in enumerate(on_posts(r, loads), 1):
        rows = [
            (joint.parts[0], joint.screws, at)
            for joint in bench.joints
            if joint.parts[1] == f"post_{post}" and joint.screws is not None
            for at in joint.screws.at
        ]
        drawn = pulls(force * arm, [at[2] - r.seat.foot for _, _, at in rows])
        for (part, screws, at), pull in zip(rows, drawn, strict=True):
            yield _Pulled(part, at, screws, force, pull, _stands(bench, part, screws))


def _stands(bench: Bench, name: str, screws: Screws) -> float:
    """N that one of a joint's screws stands in the part that holds it."""
    part = bench.part(name)
    return stands_pulled(
        density_of(part.material),
        screws.screw.shank,
        screws.bite,
        end_grain=abs(dot(part.grain, screws.into)) > _ALONG,
    )


CHECKS: tuple[Check, ...] = (
    Check(
        "rest_strength",
        "Back rest that is leaned on",
        "Reckons posts, rails and slats when all who sit lean back hard, each with {450 N} (EN "
        "12520, from memory) {300 mm} over the seat or {100 mm} under the rest's top: bending of "
        "the posts where they leave the seat, their tenons and the glue on them, bending of rails "
        "and slats, shear of the rails' tenons, as shares of the timber's strength. A third is the "
        "most to be used: common practice, no source. An estimate.",
        with_mends(_rest),
        ("back rest",),
        limits=(BACK_PUSH, PUSHED_UP, SITTERS_APART, MOST_OF_STRENGTH),
        quick=False,
    ),
    Check(
        "rest_screws",
        "Screws of posts behind a seat",
        "A post that is screwed to the back edges of a seat is levered off about its foot when "
        "somebody leans back, with the same force as above. It is held by the screws that its "
        "joints with the edges tell; each is pulled as much as it stands above the foot. What they "
        "stand follows from the wood's density, the screw's gauge and its thread (Wood Handbook, "
        "chapter 8, from memory). A third is the most to be used: common practice, no source. "
        "Posts that are let in are glued too, and are not looked at. An estimate.",
        with_mends(_screws),
        ("back rest",),
        limits=(BACK_PUSH, PUSHED_UP, SITTERS_APART, MOST_OF_STRENGTH),
        quick=False,
    ),
)
