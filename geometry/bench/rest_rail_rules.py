"""What the rails and slats of a back rest must leave room for: in the posts, in each other."""

from __future__ import annotations

from geometry.bench.constraint import Constraint, rule
from geometry.bench.rest_numbers import (
    rail_space,
    rails,
    rest_numbers,
    slat_space,
)
from geometry.bench.rest_post_rules import (
    LEAST_CHEEK,
    LEAST_CLEAR,
    LEAST_FLOOR,
    LEAST_TENON,
    PLACED,
)
from geometry.design.spec import BenchSpec
from geometry.joints.leaning_tenon import GLUE_ROOM

# Common practice, no source, these:
LEAST_WALL = 4.0  # mm of post before and behind a rail's mortise
LEAST_BETWEEN = 5.0  # mm of post between or beyond mortises
LEAST_OVER = 8.0  # mm of post above the uppermost mortise
LEAST_SPACE = 15.0  # mm between rails
LEAST_SLAT_SPACE = 6.0  # mm between slats
LEAST_SLAT = 50.0  # mm of slat between its rails

_FREE = 1.0  # what does not apply binds nothing


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


_ROWS = (
    "back_rest rest_rail_count rest_height rest_rake rest_gap rest_set_back post_over "
    "top_rail_width rest_rail_width"
)

RAIL_RULES: tuple[Constraint, ...] = (
    rule(
        "rest_mortise_walls",
        "post_depth rest_rail_thickness rest_set_back rest_tenon rest_fit",
        _rail_in_post,
        "the rails' mortises would leave less than {4 mm} of the posts in front of or behind them",
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
        "the rails' tenons would leave less than {2 mm} of shoulder in front and behind",
    ),
    rule(
        "slats_apart",
        f"{PLACED} {_ROWS} slat_count slat_width",
        _slats_apart,
        "the slats would stand less than {6 mm} apart",
    ),
    rule(
        "slat_walls",
        "back_rest rest_rail_thickness slat_thickness rest_fit",
        _slat_walls,
        "the slats' mortises would leave less than {3 mm} of the rails in front of and behind them",
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
