"""Where a base stands under the bench, and how far its legs lean out: what several bases share.

A value here means the same under every base that has it, so it is kept when the base is changed.
Insets are measured at the underside of what stands on the base, inward from its outline.
"""

from __future__ import annotations

from collections.abc import Callable

from geometry.bench.member import Member
from geometry.bench.overall import base_form, stands_on_base
from geometry.design.parameter import Parameter, angle, length
from geometry.design.spec import BenchSpec


def _by_corner(spec: BenchSpec) -> bool:
    return base_form(spec).by_corner


def _by_edge(spec: BenchSpec) -> bool:
    return not base_form(spec).by_corner


def _inset(
    name: str,
    title: str,
    default: float,
    description: str,
    applies: Callable[[BenchSpec], bool] = lambda _spec: True,
) -> Parameter:
    return length(name, title, "Base", default, -200, 1500, description, applies=applies)


PARAMETERS: tuple[Parameter, ...] = (
    angle(
        "splay",
        "Splay",
        "Base",
        15,
        0,
        30,
        "How far the legs lean out from the vertical; of four legs, as seen from the front.",
        applies=lambda spec: base_form(spec).legs,
    ),
    _inset("inset_left", "Base in, left", 70, "From the left end to the base's outer top."),
    _inset("inset_right", "Base in, right", 70, "From the right end to the base's outer top."),
    _inset(
        "inset_back_left",
        "Back left leg in",
        60,
        "From the back edge to the leg's outer top.",
        _by_corner,
    ),
    _inset(
        "inset_back_right",
        "Back right leg in",
        60,
        "From the back edge to the leg's outer top.",
        _by_corner,
    ),
    _inset(
        "inset_front_left",
        "Front left leg in",
        60,
        "From the front edge underneath to the leg's outer top; less than 0 stands forward.",
        _by_corner,
    ),
    _inset(
        "inset_front_right",
        "Front right leg in",
        60,
        "From the front edge underneath to the leg's outer top; less than 0 stands forward.",
        _by_corner,
    ),
    _inset("inset_back", "Base in, back", 40, "From the back edge to the base's top.", _by_edge),
    _inset(
        "inset_front",
        "Base in, front",
        40,
        "From the front edge underneath to the base's top; less than 0 stands forward.",
        _by_edge,
    ),
)

# Numbers that fit under the smallest bench.
SNUG_ENDS = {"inset_left": 0.0, "inset_right": 0.0}
SNUG_EDGES = {**SNUG_ENDS, "inset_back": 0.0, "inset_front": 0.0}
SNUG_CORNERS = {
    **SNUG_ENDS,
    "inset_back_left": 0.0,
    "inset_back_right": 0.0,
    "inset_front_left": 0.0,
    "inset_front_right": 0.0,
}

MEMBER = Member("base place", PARAMETERS, present=stands_on_base)
