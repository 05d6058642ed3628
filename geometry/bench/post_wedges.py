"""The wedges of posts that are tenoned through the seat: one in the middle of each tenon, or two.

They are driven in from below, in slots across the seat's grain, so that a tenon is spread along
that grain and cannot split the seat (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Mapping

from geometry.bench.constraint import Constraint, rule
from geometry.bench.derived import Derived, derived_length
from geometry.bench.member import Member
from geometry.bench.rest_numbers import RestNumbers, post_tenon, rest_numbers
from geometry.bench.rest_parameters import has_wedges
from geometry.bench.round_legs import SLOT_SHARE
from geometry.bench.seat_back import SEAT_READS
from geometry.design.joint import Joint
from geometry.design.parameter import Parameter, count, length
from geometry.design.part import Part
from geometry.design.spec import BenchSpec
from geometry.joints.tenon_wedge import TenonWedge, tenon_wedge, wedge_piece

MOST_WEDGES = 2
STEEPEST = 4.0  # times as long as thick: a shorter wedge does not stay; common practice, no source
OF_POST = "wedge_post_"  # how the names of these wedges begin
_GROUP = "Back rest posts"

PARAMETERS: tuple[Parameter, ...] = (
    count(
        "post_wedge_count",
        "Wedges in a post tenon",
        _GROUP,
        2,
        1,
        MOST_WEDGES,
        "One in the middle of the tenon, or two a quarter of its width from either edge.",
    ),
    length(
        "post_wedge",
        "Post wedge",
        _GROUP,
        4,
        1.5,
        10,
        "Thickness of the wedges at the seat's underside.",
        step=0.5,
    ),
)


def post_wedges(spec: BenchSpec, post: int) -> tuple[TenonWedge, ...]:
    """The wedges of one post, from its face edge on."""
    r, wanted = rest_numbers(spec), spec.count("post_wedge_count")
    at = post_tenon(r, post)
    wide = at.y_high - at.y_low
    return tuple(
        TenonWedge(
            tenon=at,
            y=at.y_low + wide * (2 * k + 1) / (2 * wanted),
            thick=spec.number("post_wedge"),
            slot=_slot(r, post),
        )
        for k in range(wanted)
    )


def shortest_wedge(spec: BenchSpec) -> TenonWedge:
    """One in the most upright post, where slots are shortest: in the middle, where posts splay."""
    return min((post_wedges(spec, post)[0] for post in (0, 1)), key=lambda at: at.slot)


def _slot(r: RestNumbers, post: int) -> float:
    """Depth of the slots, along the post's grain."""
    at = post_tenon(r, post)
    return SLOT_SHARE * at.length / at.into[0]


def _named(spec: BenchSpec) -> list[tuple[str, str, int, TenonWedge]]:
    """Name, title, post and numbers of each wedge."""
    return [
        (f"{OF_POST}{post + 1}_{k}", f"Wedge {k}, post {post + 1}", post, at)
        for post in range(rest_numbers(spec).posts)
        for k, at in enumerate(post_wedges(spec, post), 1)
    ]


def _parts(spec: BenchSpec) -> tuple[Part, ...]:
    timber = spec.word("timber")
    return tuple(wedge_piece(name, title, timber, at) for name, title, _, at in _named(spec))


def _joints(spec: BenchSpec, parts: Mapping[str, Part]) -> tuple[Joint, ...]:
    return tuple(
        tenon_wedge(name, parts[f"post_{post + 1}"], parts[name], at)
        for name, _, post, at in _named(spec)
    )


def _thick_enough(spec: BenchSpec) -> float:
    at = shortest_wedge(spec)
    return at.slot - STEEPEST * at.thick


def _within(spec: BenchSpec) -> float:
    at = post_tenon(rest_numbers(spec), 0)
    wedges = spec.count("post_wedge_count") * spec.number("post_wedge")
    return (at.y_high - at.y_low) / 3.0 - wedges


CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "post_wedge_steep",
        f"{SEAT_READS} rest_rake post_splay post_count post_wedge",
        _thick_enough,
        "the seat is too thin for such wedges: they would be less than four times as long as thick",
    ),
    rule(
        "post_wedge_within",
        "post_width post_shoulder post_wedge post_wedge_count",
        _within,
        "the wedges would be more than a third of the posts' tenons",
    ),
)


def _derived(spec: BenchSpec) -> tuple[Derived, ...]:
    return (
        derived_length(
            "post_slot",
            "Slots in the post tenons",
            _GROUP,
            _slot(rest_numbers(spec), 0),
            "three quarters of the tenon, along the post",
        ),
    )


def _snug(_spec: BenchSpec) -> tuple[dict[str, float], ...]:
    """Two of the thinnest go into the narrowest tenon there is, and into the thinnest seat."""
    return ({"post_wedge": 1.5},)


MEMBER = Member(
    "post wedges",
    PARAMETERS,
    CONSTRAINTS,
    _parts,
    _joints,
    derived=_derived,
    present=has_wedges,
    snug=_snug,
)
