"""What a back rest must leave room for: in its seat, in its posts, in its rails."""

from __future__ import annotations

from geometry.bench.constraint import Constraint, rule
from geometry.bench.rest_numbers import (
    RestNumbers,
    bay_clear,
    mortise_in_seat,
    rail_space,
    rails,
    rest_numbers,
    slat_space,
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
LEAST_WALL = 4.0  # mm of post before and behind a rail's mortise
LEAST_BETWEEN = 5.0  # mm of post between or beyond mortises
LEAST_OVER = 8.0  # mm of post above the uppermost mortise
LEAST_BAY = 60.0  # mm between posts
LEAST_SPACE = 15.0  # mm between rails
LEAST_SLAT_SPACE = 6.0  # mm between slats
LEAST_SLAT = 50.0  # mm of slat between its rails
LEAST_TENON = 10.0  # mm wide
LEAST_CHEEK = 2.0  # mm of shoulder before and behind a tenon
LEAST_FLOOR = 3.0  # mm under a blind mortise
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


def _rail_in_post(spec: BenchSpec) -> float:
    """Wood of the post before and behind the rails' mortises."""
    r = rest_numbers(spec)
    spare = (r.rail_thickness - r.tenon - r.fit) / 2.0
    front = r.set_back + spare
    back = r.post_depth - r.set_back - r.rail_thickness + spare
    return min(front, back) - LEAST_WALL


def _rail_within(spec: BenchSpec) -> float:
    r = rest_numbers(spec)
    return r.post_depth - r.set_back - r.rail_thickness


def _mortise_depth(spec: BenchSpec) -> float:
    """Wood between two mortises of a post in the middle, or beyond that of an outer one."""
    r = rest_numbers(spec)
    deep = r.tenon_length + GLUE_ROOM
    return r.post_width - (2.0 * deep if r.posts > 2 else deep) - LEAST_BETWEEN


def _rows(spec: BenchSpec) -> float:
    r = rest_numbers(spec)
    least = LEAST_SLAT if r.slats else LEAST_SPACE
    return rail_space(r) - least if r.further else rail_space(r)


def _above_seat(spec: BenchSpec) -> float:
    """The lowest rail's lower back arris over the seat."""
    r = rest_numbers(spec)
    return r.gap - r.rail_thickness * r.sine


def _tenon_widths(spec: BenchSpec) -> float:
    r = rest_numbers(spec)
    least = min(r.top_width, r.rail_width) if r.further else r.top_width
    return least - 2.0 * r.shoulder - LEAST_TENON


def _slats_apart(spec: BenchSpec) -> float:
    r = rest_numbers(spec)
    if not r.slats:
        return _FREE
    return min(slat_space(r, bay) for bay in range(r.posts - 1)) - LEAST_SLAT_SPACE


def _slat_walls(spec: BenchSpec) -> float:
    r = rest_numbers(spec)
    if not r.slats:
        return _FREE
    return (r.rail_thickness - r.slat_thickness - r.fit) / 2.0 - LEAST_CLEAR


def _slat_floor(spec: BenchSpec) -> float:
    r = rest_numbers(spec)
    if not r.slats:
        return _FREE
    least = min(rail.high - rail.low for rail in rails(r))
    return least - r.slat_tenon - GLUE_ROOM - LEAST_FLOOR


_LEANS = "post_fixing rest_rake post_let_in"
_PLACED = "length post_fixing post_count post_in_left post_in_right post_width post_splay rest_rake"
_ROWS = (
    "back_rest rest_rail_count rest_height rest_rake rest_gap rest_set_back post_over "
    "top_rail_width rest_rail_width"
)
_MORTISE = (
    f"{SEAT_READS} {_PLACED} rest_in post_depth post_tenon post_shoulder rest_fit post_tenon_kind "
    "post_tenon_depth"
)

CONSTRAINTS: tuple[Constraint, ...] = (
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
        "the posts' tenons would leave less than {2 mm} of shoulder before and behind",
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
        f"{SEAT_READS} {_PLACED} post_let_in rest_fit",
        _notch_ends,
        "the notches for the posts would run into a mitred corner, or out at the end",
    ),
    rule(
        "post_notch_clear",
        f"{SEAT_READS} {_PLACED} post_let_in rest_fit",
        _notches_clear,
        "a notch for a post would run into a partition or a leg's tenon at the back edge",
        FINEST,
    ),
    rule(
        "post_held",
        f"{SEAT_READS} {_PLACED}",
        _held,
        "a post would have less than {10 mm} of the seat's back edge to be screwed to",
    ),
    rule(
        "post_bays",
        _PLACED,
        _bays,
        "the posts would stand less than {60 mm} apart",
    ),
    rule(
        "rest_mortise_walls",
        "post_depth rest_rail_thickness rest_set_back rest_tenon rest_fit",
        _rail_in_post,
        "the rails' mortises would leave less than {4 mm} of the posts before or behind them",
    ),
    rule(
        "rest_rail_within",
        "post_depth rest_rail_thickness rest_set_back",
        _rail_within,
        "the rails would stand out behind the posts",
    ),
    rule(
        "rest_mortise_depth",
        "post_width post_count rest_tenon_length",
        _mortise_depth,
        "the rails' mortises would leave less than {5 mm} of a post between or beyond them",
    ),
    rule(
        "rest_rows",
        _ROWS,
        _rows,
        "there would be too little room between the rails, or between a rail and the seat",
    ),
    rule(
        "rest_above_seat",
        "rest_gap rest_rail_thickness rest_rake",
        _above_seat,
        "the lowest rail would run into the seat",
    ),
    rule(
        "rest_top_end",
        "post_over rest_shoulder",
        lambda s: s.number("post_over") + s.number("rest_shoulder") - LEAST_OVER,
        "the top rail's mortises would come within {8 mm} of the posts' ends",
    ),
    rule(
        "rest_tenon_width",
        "back_rest rest_rail_count top_rail_width rest_rail_width rest_shoulder",
        _tenon_widths,
        "the rails' tenons would be narrower than {10 mm}",
    ),
    rule(
        "rest_tenon_cheeks",
        "rest_rail_thickness rest_tenon",
        lambda s: (s.number("rest_rail_thickness") - s.number("rest_tenon")) / 2.0 - LEAST_CHEEK,
        "the rails' tenons would leave less than {2 mm} of shoulder before and behind",
    ),
    rule(
        "slats_apart",
        f"{_PLACED} {_ROWS} slat_count slat_width",
        _slats_apart,
        "the slats would stand less than {6 mm} apart",
    ),
    rule(
        "slat_walls",
        "back_rest rest_rail_thickness slat_thickness rest_fit",
        _slat_walls,
        "the slats' mortises would leave less than {3 mm} of the rails before and behind them",
    ),
    rule(
        "slat_floor",
        f"{_ROWS} slat_tenon_length",
        _slat_floor,
        "the slats' mortises would leave less than {3 mm} of a rail's width beyond them",
    ),
    rule(
        "slat_tenon_width",
        "back_rest slat_width slat_shoulder",
        lambda s: (
            s.number("slat_width") - 2.0 * s.number("slat_shoulder") - 8.0
            if rest_numbers(s).slats
            else _FREE
        ),
        "the slats' tenons would be narrower than {8 mm}",
    ),
)
