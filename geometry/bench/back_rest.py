"""A raked back rest: posts behind the seat or tenoned into it, a top rail, further rails or slats.

All rails and slats lie in the plane of the lean, so their joints are square in that plane, mitred
where an outer post splays; the posts' own shoulders on the seat are compound.
"""

from __future__ import annotations

import math
from collections.abc import Mapping

from geometry.bench.derived import Derived, derived_angle, derived_length
from geometry.bench.lid import STRIP, down_screws
from geometry.bench.lid_box import has_lid_box
from geometry.bench.lid_box_numbers import lid_box
from geometry.bench.member import THE_REST, Member
from geometry.bench.rest_numbers import (
    RestNumbers,
    bay_clear,
    post_tenon,
    rail_space,
    rest_numbers,
    slat_space,
)
from geometry.bench.rest_parameters import CHOICE, PARAMETERS, has_rest
from geometry.bench.rest_post_rules import POST_RULES
from geometry.bench.rest_posts import Behind, post_joints, posts
from geometry.bench.rest_rail_rules import RAIL_RULES
from geometry.bench.rest_rails import rail_joints, rail_parts
from geometry.bench.seasons import seasons
from geometry.design.joint import Joint
from geometry.design.part import Part
from geometry.design.spec import BenchSpec


def _parts(spec: BenchSpec) -> tuple[Part, ...]:
    r, timber = rest_numbers(spec), spec.word("timber")
    return (*posts(r, timber), *rail_parts(r, timber))


def _joints(spec: BenchSpec, parts: Mapping[str, Part]) -> tuple[Joint, ...]:
    r = rest_numbers(spec)
    behind = Behind(seasons(spec), _down_screws(spec))
    return (*post_joints(r, parts, behind), *rail_joints(r, parts))


def _down_screws(spec: BenchSpec) -> dict[str, tuple[float, ...]]:
    """The screws that go down through a box's strip into its back, by their X."""
    if not has_lid_box(spec) or not lid_box(spec).has_strip:
        return {}
    return {STRIP: down_screws(lid_box(spec))}


def _derived(spec: BenchSpec) -> tuple[Derived, ...]:
    r = rest_numbers(spec)
    found = [
        derived_length(
            "rest_top",
            "Rest above the floor",
            "Back rest",
            r.seat.top + r.height,
            "seat height + rest height",
        ),
        derived_length(
            "rest_back",
            "Rest stands out behind",
            "Back rest",
            r.front + r.top * r.sine + r.post_depth * r.cosine,
            "rest height × tan(rake), and the posts' depth",
        ),
        derived_length(
            "rest_seat_depth",
            "Seat in front of the rest",
            "Back rest",
            r.seat.depth + r.front,
            "depth − rest in from the back (or posts let in)",
        ),
        derived_length(
            "rest_bay",
            "Between posts at the seat",
            "Back rest",
            bay_clear(r, 0, 0.0),
            "length, posts in, number and width of posts",
        ),
    ]
    if r.further:
        title = "Between top rail and lower rail" if r.slats else "Between rails"
        found.append(
            derived_length(
                "rest_rail_space",
                title,
                "Back rest",
                rail_space(r),
                "rest height / cos(rake), widths of the rails, gap; along the lean",
            )
        )
    if r.slats:
        found.append(
            derived_length(
                "slat_space",
                "Between slats",
                "Back rest",
                slat_space(r, 0),
                "between the posts, less the slats, shared equally",
            )
        )
    if not r.behind:
        found += _compound(r)
    return tuple(found)


def _compound(r: RestNumbers) -> list[Derived]:
    """The angles of an outer post that is tenoned into the seat."""
    at = post_tenon(r, 0)
    lean = math.degrees(math.atan(r.lean))
    rake, splay = (math.tan(math.radians(deg)) for deg in (r.rake_deg, r.splay_deg))
    return [
        derived_angle(
            "post_resultant",
            "Outer posts' resultant",
            "Back rest posts",
            math.degrees(math.atan(math.hypot(rake, splay))),
            "√(tan² rake + tan² splay): the posts' lean from the vertical",
        ),
        derived_angle(
            "post_mitre",
            "Outer posts' shoulder, mitre",
            "Back rest posts",
            at.mitre_deg,
            "across the post's face, from square; rake and splay",
        ),
        derived_angle(
            "post_tilt",
            "Outer posts' shoulder, blade tilt",
            "Back rest posts",
            at.tilt_deg,
            "from square with the post's face on the saw; the rake",
        ),
        derived_angle(
            "rest_rail_mitre",
            "Rails' shoulders at outer posts",
            "Back rest posts",
            lean,
            "atan(tan(splay) × cos(rake)), across the rail's face",
        ),
    ]


def _snug(_spec: BenchSpec) -> tuple[dict[str, float], ...]:
    ends = {"post_in_left": 50.0, "post_in_right": 50.0, "post_width": 20.0, "post_let_in": 0.0}
    return (
        ends,
        {
            **ends,
            "rest_height": 400.0,
            "rest_rake": 0.0,
            "rest_gap": 20.0,
            "post_depth": 30.0,
            "post_splay": 0.0,
            "post_over": 10.0,
            "top_rail_width": 30.0,
            "rest_rail_width": 24.0,
            "rest_rail_thickness": 16.0,
            "rest_set_back": 4.0,
            "rest_tenon": 6.0,
            "rest_tenon_length": 8.0,
            "rest_shoulder": 5.0,
            "rest_fit": 0.2,
            "slat_width": 12.0,
            "slat_thickness": 6.0,
            "slat_tenon_length": 6.0,
            "slat_shoulder": 2.0,
        },
    )


CHOICE_MEMBER = Member("back rest choice", (CHOICE,))

MEMBER = Member(
    "back rest",
    PARAMETERS,
    (*POST_RULES, *RAIL_RULES),
    _parts,
    _joints,
    derived=_derived,
    present=has_rest,
    snug=_snug,
    made_into=THE_REST,
)
