"""The numbers and choices of a back rest: its posts, its rails, its slats."""

from __future__ import annotations

from geometry.bench.seat_back import takes_rest
from geometry.design.parameter import Parameter, angle, choice, count, length
from geometry.design.spec import BenchSpec

NO_REST, RAILS, SLATS = "none", "rails", "slats"
BEHIND, TENONED = "behind the seat", "tenoned into the seat"
THROUGH, WEDGED, BLIND = "through", "wedged", "blind"

MOST_POSTS, MOST_RAILS, MOST_SLATS = 7, 6, 40


def has_rest(spec: BenchSpec) -> bool:
    return spec.value("back_rest") != NO_REST and takes_rest(spec)


def stands_behind(spec: BenchSpec) -> bool:
    return spec.value("post_fixing") == BEHIND


def _tenoned(spec: BenchSpec) -> bool:
    return spec.value("post_fixing") == TENONED


def has_wedges(spec: BenchSpec) -> bool:
    return has_rest(spec) and _tenoned(spec) and spec.value("post_tenon_kind") == WEDGED


def _has_slats(spec: BenchSpec) -> bool:
    return spec.value("back_rest") == SLATS


_GROUP, _POSTS = "Back rest", "Back rest posts"

CHOICE = choice(
    "back_rest",
    "Back rest",
    _GROUP,
    NO_REST,
    (NO_REST, RAILS, SLATS),
    "Posts with a top rail, and further rails or upright slats under it.",
    applies=takes_rest,
)

_WHOLE: tuple[Parameter, ...] = (
    length(
        "rest_height", "Rest height", _GROUP, 420, 120, 900, "From the seat up to the posts' tops."
    ),
    angle("rest_rake", "Rest rake", _GROUP, 12, 0, 25, "How far the back rest leans back."),
    length(
        "rest_gap",
        "Gap above the seat",
        _GROUP,
        60,
        0,
        500,
        "From the seat up to the lowest rail's lower front arris.",
    ),
)

_POST: tuple[Parameter, ...] = (
    choice(
        "post_fixing",
        "Posts stand",
        _POSTS,
        BEHIND,
        (BEHIND, TENONED),
        "Behind the seat, sawn with a knee and screwed to its back edges, or straight and tenoned "
        "into it from above.",
    ),
    count("post_count", "Posts", _POSTS, 2, 2, MOST_POSTS, "How many posts, equally spaced."),
    length("post_width", "Post width", _POSTS, 45, 20, 120, "Seen from the front.", step=0.5),
    length(
        "post_depth",
        "Post depth",
        _POSTS,
        35,
        18,
        90,
        "From front to back, square to the post.",
        step=0.5,
    ),
    length(
        "post_in_left",
        "Left post in",
        _POSTS,
        90,
        0,
        1500,
        "From the seat's left end to the outside of the post, at the seat.",
    ),
    length(
        "post_in_right",
        "Right post in",
        _POSTS,
        90,
        0,
        1500,
        "From the seat's right end to the outside of the post, at the seat.",
    ),
    length(
        "post_let_in",
        "Posts let in",
        _POSTS,
        0,
        0,
        30,
        "How deep the posts stand in notches in the seat's back edges; 0 for none.",
        step=0.5,
        applies=stands_behind,
    ),
    length(
        "rest_in",
        "Rest in from the back",
        _POSTS,
        70,
        20,
        400,
        "From the seat's back edge to the posts' front faces, at the seat.",
        applies=_tenoned,
    ),
    angle(
        "post_splay",
        "Post splay",
        _POSTS,
        0,
        0,
        15,
        "How far the outer posts lean out, as seen from the front.",
        applies=_tenoned,
    ),
    choice(
        "post_tenon_kind",
        "Post tenons",
        _POSTS,
        THROUGH,
        (THROUGH, WEDGED, BLIND),
        "Through the seat and flush below, there spread by wedges if wanted, or stopped within it.",
        applies=_tenoned,
    ),
    length(
        "post_tenon_depth",
        "Post tenon depth",
        _POSTS,
        12,
        6,
        80,
        "How deep a blind tenon goes into the seat, square to its face.",
        step=0.5,
        applies=lambda spec: _tenoned(spec) and spec.value("post_tenon_kind") == BLIND,
    ),
    length(
        "post_tenon",
        "Post tenon thickness",
        _POSTS,
        15,
        6,
        60,
        "From front to back, square to the post.",
        step=0.5,
        applies=_tenoned,
    ),
    length(
        "post_shoulder",
        "Post shoulder",
        _POSTS,
        6,
        0,
        40,
        "Of the posts' tenons, at each side of the post.",
        step=0.5,
        applies=_tenoned,
    ),
    length(
        "post_over",
        "Posts above the top rail",
        _POSTS,
        12,
        0,
        200,
        "From the top rail's upper edge to the posts' tops, along the lean.",
    ),
)

_RAIL: tuple[Parameter, ...] = (
    length("top_rail_width", "Top rail width", _GROUP, 80, 25, 300, "From edge to edge."),
    length("rest_rail_width", "Other rails' width", _GROUP, 55, 20, 200, "From edge to edge."),
    length(
        "rest_rail_thickness",
        "Rail thickness",
        _GROUP,
        22,
        10,
        60,
        "Of all rails of the back rest.",
        step=0.5,
    ),
    length(
        "rest_set_back",
        "Rails set back",
        _GROUP,
        4,
        0,
        60,
        "From the posts' front faces to those of the rails.",
        step=0.5,
    ),
    count(
        "rest_rail_count",
        "Rails under the top rail",
        _GROUP,
        2,
        0,
        MOST_RAILS,
        "How many, with equal spaces.",
        applies=lambda spec: not _has_slats(spec),
    ),
    length(
        "rest_tenon", "Rail tenon", _GROUP, 8, 4, 40, "Thickness of the rails' tenons.", step=0.5
    ),
    length(
        "rest_tenon_length",
        "Rail tenon length",
        _GROUP,
        25,
        8,
        100,
        "Square to the post.",
    ),
    length(
        "rest_shoulder",
        "Rail shoulder",
        _GROUP,
        8,
        2,
        60,
        "Of the rails' tenons, above and below.",
        step=0.5,
    ),
    length(
        "rest_fit",
        "Rest fit",
        _GROUP,
        0.2,
        0,
        2,
        "Clearance of the tenons in their mortises, both cheeks together.",
        step=0.05,
    ),
)

_SLAT: tuple[Parameter, ...] = (
    count(
        "slat_count",
        "Slats",
        _GROUP,
        9,
        1,
        MOST_SLATS,
        "How many stand between two posts, with equal spaces.",
        applies=_has_slats,
    ),
    length(
        "slat_width", "Slat width", _GROUP, 45, 12, 200, "Seen from the front.", applies=_has_slats
    ),
    length(
        "slat_thickness",
        "Slat thickness",
        _GROUP,
        12,
        5,
        40,
        "From front to back; the slats' tenons are as thick.",
        step=0.5,
        applies=_has_slats,
    ),
    length(
        "slat_tenon_length",
        "Slat tenon length",
        _GROUP,
        12,
        5,
        60,
        "Into the rails above and below.",
        step=0.5,
        applies=_has_slats,
    ),
    length(
        "slat_shoulder",
        "Slat shoulder",
        _GROUP,
        3,
        0,
        40,
        "Of the slats' tenons, at each edge.",
        step=0.5,
        applies=_has_slats,
    ),
)


PARAMETERS: tuple[Parameter, ...] = (*_WHOLE, *_POST, *_RAIL, *_SLAT)
