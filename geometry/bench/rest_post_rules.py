"""What the posts of a back rest must leave room for in the seat, and between them."""

from __future__ import annotations

from geometry.bench.constraint import Constraint, rule
from geometry.bench.rest_numbers import (
    RestNumbers,
    bay_clear,
    mortise_in_seat,
    rest_numbers,
)
from geometry.bench.seat_back import SEAT_READS, Box
from geometry.design.spec import BenchSpec
from geometry.joints.leaning_tenon import GLUE_ROOM

# Common practice, no source, these:
LEAST_SEAT = 150.0  # mm of seat in front of the rest
LEAST_BEHIND = 6.0  # mm of seat behind a mortise
LEAST_END = 12.0  # mm of seat beyond a mortise, along it
LEAST_CLEAR = 3.0  # mm between a mortise or notch and whatever else is there
LEAST_HELD = 10.0  # mm of a post on the edge it is screwed to
LEAST_TENON = 10.0  # mm wide
LEAST_CHEEK = 2.0  # mm of shoulder before and behind a tenon
LEAST_FLOOR = 3.0  # mm under a blind mortise
LEAST_BAY = 60.0  # mm between posts
# A tenon (or a post) and a partition are in each other's way over the width of both and more.
FINEST = LEAST_TENON + 8.0

_FREE = 1.0  # what does not apply binds nothing


def _posts(r: RestNumbers) -> range:
    return range(r.posts)


def _in_front(spec: BenchSpec) -> float:
    r = rest_numbers(spec)
    return r.seat.depth + r.front - LEAST_SEAT


def _on_seat(spec: BenchSpec) -> float:
    """The lower back arris of the posts, which must stand on the seat."""
    r = rest_numbers(spec)
    return _FREE if r.behind else -r.front - r.post_depth / r.cosine


def _behind_mortise(spec: BenchSpec) -> float:
    r = rest_numbers(spec)
    if r.behind:
        return _FREE
    points = mortise_in_seat(r, 0)
    edge = max(y for _, y, _ in points)
    under = max(y for _, y, z in points if z < r.seat.top - r.tenon_depth / 2.0)
    return min(-edge - LEAST_BEHIND, r.seat.behind - LEAST_CLEAR - under)


def _mortised(r: RestNumbers) -> list[Box]:
    """What the mortises take of the seat."""
    found = []
    for post in _posts(r):
        xs, ys, _ = zip(*mortise_in_seat(r, post), strict=True)
        found.append(((min(xs), max(xs)), (min(ys), max(ys))))
    return found


def _mortise_ends(spec: BenchSpec) -> float:
    r = rest_numbers(spec)
    if r.behind:
        return _FREE
    boxes, (left, right) = _mortised(r), r.seat.mortised
    return min(boxes[0][0][0] - left, right - boxes[-1][0][1]) - LEAST_END


def _mortises_clear(spec: BenchSpec) -> float:
    r = rest_numbers(spec)
    if r.behind:
        return _FREE
    return _apart(_mortised(r), r.seat.under)


def _apart(boxes: list[Box], others: tuple[Box, ...]) -> float:
    """By how much they keep clear of one another, along the seat or across it."""
    gaps = [
        max(max(a[0] - b[1], b[0] - a[1]) for a, b in zip(box, other, strict=True)) - LEAST_CLEAR
        for box in boxes
        for other in others
    ]
    return min(gaps, default=_FREE)


def _blind(spec: BenchSpec) -> float:
    r = rest_numbers(spec)
    if r.behind or not r.blind:
        return _FREE
    return r.seat.thickness - r.tenon_depth - GLUE_ROOM - LEAST_FLOOR


def _notched(r: RestNumbers) -> list[Box]:
    half, deep = r.fit / 2.0, (-r.let_in, 0.0)
    return [((r.side(p, -1.0, 0.0) - half, r.side(p, 1.0, 0.0) + half), deep) for p in _posts(r)]


def _let_in(spec: BenchSpec) -> float:
    r = rest_numbers(spec)
    return r.seat.deepest - spec.number("post_let_in") if r.behind else _FREE


def _notch_ends(spec: BenchSpec) -> float:
    r = rest_numbers(spec)
    if not r.behind or r.let_in <= 0.0:
        return _FREE
    boxes, (left, right) = _notched(r), r.seat.edged
    return min(boxes[0][0][0] - left, right - boxes[-1][0][1]) - LEAST_CLEAR


def _notches_clear(spec: BenchSpec) -> float:
    r = rest_numbers(spec)
    if not r.behind or r.let_in <= 0.0:
        return _FREE
    return _apart(_notched(r), r.seat.at_the_edge)


def _held(spec: BenchSpec) -> float:
    r = rest_numbers(spec)
    if not r.behind:
        return _FREE
    left, right = r.seat.edged
    return min(
        min(r.side(p, 1.0, 0.0), right) - max(r.side(p, -1.0, 0.0), left) - LEAST_HELD
        for p in _posts(r)
    )


def _bays(spec: BenchSpec) -> float:
    r = rest_numbers(spec)
    return min(bay_clear(r, bay, 0.0) for bay in range(r.posts - 1)) - LEAST_BAY


_LEANS = "post_fixing rest_rake post_let_in"
PLACED = "length post_fixing post_count post_in_left post_in_right post_width post_splay rest_rake"
_MORTISE = (
    f"{SEAT_READS} {PLACED} rest_in post_depth post_tenon post_shoulder rest_fit post_tenon_kind "
    "post_tenon_depth"
)

POST_RULES: tuple[Constraint, ...] = (
    rule(
        "post_board",
        "seat post_fixing",
        lambda s: _FREE if rest_numbers(s).behind or rest_numbers(s).seat.board else -1.0,
        "a lid holds no posts: they must stand behind the box",
    ),
    rule(
        "rest_seat",
        f"{SEAT_READS} {_LEANS} rest_in",
        _in_front,
        "less than {150 mm} of the seat would be left in front of the back rest",
    ),
    rule(
        "post_on_seat",
        f"{_LEANS} rest_in post_depth",
        _on_seat,
        "the posts would stand out behind the seat",
    ),
    rule(
        "post_mortise_behind",
        _MORTISE,
        _behind_mortise,
        "the posts' mortises would come too near the back edge, or the rebate under it",
    ),
    rule(
        "post_mortise_ends",
        _MORTISE,
        _mortise_ends,
        "the posts' mortises would come within {12 mm} of the seat's end, or of its mitre",
    ),
    rule(
        "post_mortise_clear",
        _MORTISE,
        _mortises_clear,
        "a post's mortise would run into a partition's housing or a leg's tenon",
        FINEST,
    ),
    rule(
        "post_blind",
        f"{SEAT_READS} post_fixing post_tenon_kind post_tenon_depth",
        _blind,
        "a blind mortise would leave less than {3 mm} of the seat under it",
    ),
    rule(
        "post_tenon_cheeks",
        "post_fixing post_depth post_tenon",
        lambda s: (
            _FREE
            if rest_numbers(s).behind
            else (s.number("post_depth") - s.number("post_tenon")) / 2.0 - LEAST_CHEEK
        ),
        "the posts' tenons would leave less than {2 mm} of shoulder in front and behind",
    ),
    rule(
        "post_tenon_width",
        "post_fixing post_width post_shoulder",
        lambda s: (
            _FREE
            if rest_numbers(s).behind
            else s.number("post_width") - 2.0 * s.number("post_shoulder") - LEAST_TENON
        ),
        "the posts' tenons would be narrower than {10 mm}",
    ),
    rule(
        "post_let_in",
        f"{SEAT_READS} post_fixing post_let_in",
        _let_in,
        "the notches for the posts would reach what closes the back of the seat",
    ),
    rule(
        "post_notch_ends",
        f"{SEAT_READS} {PLACED} post_let_in rest_fit",
        _notch_ends,
        "the notches for the posts would run into a mitred corner, or out at the end",
    ),
    rule(
        "post_notch_clear",
        f"{SEAT_READS} {PLACED} post_let_in rest_fit",
        _notches_clear,
        "a notch for a post would run into a partition or a leg's tenon at the back edge",
        FINEST,
    ),
    rule(
        "post_held",
        f"{SEAT_READS} {PLACED}",
        _held,
        "a post would have less than {10 mm} of the seat's back edge to be screwed to",
    ),
    rule(
        "post_bays",
        PLACED,
        _bays,
        "the posts would stand less than {60 mm} apart",
    ),
)
