"""Estimates of a back rest that is leaned on, and of what screws it to its seat.

N, mm, MPa.  Method: ``geometry.strength.rests`` and ``geometry.strength.screws``.
"""

from __future__ import annotations

from collections.abc import Iterator

from geometry.bench.bench import Bench
from geometry.bench.rest_numbers import rest_numbers
from geometry.bench.rest_parameters import MOST_POSTS, TENONED
from geometry.bench.seat_back import Edge
from geometry.checks.check import Check
from geometry.checks.limits_of_loads import MOST_OF_STRENGTH, PUSHED_UP
from geometry.checks.limits_of_strength import (
    BACK_PUSH,
    POST_SCREW,
    POST_SCREW_THREAD,
    SITTERS_APART,
)
from geometry.checks.strength import level_of
from geometry.checks.strengthening import Size, Told, Way, share_told, with_mends
from geometry.design.finding import Level, Mend
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
from shared.fixings import shank_of
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


def _screws(bench: Bench) -> Iterator[Told]:
    """Posts that stand behind a seat and are screwed to its edges, two screws to each."""
    r, limit = rest_numbers(bench.spec), MOST_OF_STRENGTH.of(bench)
    if not r.behind or r.let_in > 0.0:
        return
    arm = r.seat.top + height_of_push(r, PUSHED_UP.of(bench)) - r.seat.foot
    screws = [(edge, at) for edge in r.seat.edges for at in _screw_levels(edge, r.post_width)]
    above = [at - r.seat.foot for _, at in screws]
    stand = [_stands(bench, edge) for edge, _ in screws]
    loads = pushes(bench.brief, BACK_PUSH.of(bench), SITTERS_APART.of(bench))
    force = max(on_posts(r, loads))
    drawn = pulls(force * arm, above)
    k = max(range(len(screws)), key=lambda one: drawn[one] / stand[one])
    share = 100.0 * drawn[k] / stand[k]
    if share <= limit + 1e-9:
        return
    posts = tuple(f"post_{post + 1}" for post in range(r.posts))
    ways: list[Way] = []
    if r.posts < MOST_POSTS:
        ways.append(Mend("Set up another post.", (("post_count", r.posts + 1.0),)))
    if r.seat.board:
        ways.append(Mend("Tenon the posts into the seat.", (("post_fixing", TENONED),)))
    thread = length_mark(POST_SCREW_THREAD.of(bench))
    yield share_told(
        "rest_screws",
        Level.THINK_AGAIN,  # which screws they are is the maker's to choose
        f"Leaned on with {quantity_mark(force, 'N')}, a post pulls at its screws in "
        f"“{bench.part(screws[k][0].part).title}” with about {quantity_mark(drawn[k], 'N')}, and "
        f"no. {POST_SCREW.of(bench):.0f} screws with {thread} of thread use about {share:.0f} % of "
        "what they stand there",
        (*posts, screws[k][0].part),
        (r.middle(0), r.front, screws[k][1]),
        share,
        limit,
        tuple(ways),
    )


def _screw_levels(edge: Edge, width: float) -> tuple[float, float]:
    """Heights of the two screws of a post in an edge: beside each other, or one above the other
    in its quarters where it is higher than the post is wide."""
    high = edge.high - edge.low
    quarter = high / 4.0 if high > width else 0.0
    middle = (edge.low + edge.high) / 2.0
    return middle - quarter, middle + quarter


def _stands(bench: Bench, edge: Edge) -> float:
    """N that one screw stands in an edge that looks to the back."""
    part = bench.part(edge.part)
    return stands_pulled(
        density_of(part.material),
        shank_of(POST_SCREW.of(bench)),
        POST_SCREW_THREAD.of(bench),
        end_grain=abs(part.grain[1]) > _ALONG,
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
        "somebody leans back, with the same force as above. Two screws hold it on each edge; each "
        "is pulled as much as it stands above the foot. What they stand follows from the wood's "
        "density, the screw's gauge and its thread (Wood Handbook, chapter 8, from memory); gauge "
        "and thread are limits to be set to the maker's own. A third is the most to be used: "
        "common practice, no source. Posts that are let in are glued too, and are not looked at. "
        "An estimate.",
        with_mends(_screws),
        ("back rest",),
        limits=(
            BACK_PUSH,
            PUSHED_UP,
            SITTERS_APART,
            POST_SCREW,
            POST_SCREW_THREAD,
            MOST_OF_STRENGTH,
        ),
        quick=False,
    ),
)
