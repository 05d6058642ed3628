"""How the maker works, and what has been cut already: set beside what the bench asks for.

Both halves of a joint are laid out from the same numbers, so on paper they never miss each other.
At the bench they do, when a stop is marked from an edge that leans, from ends that lie at different
heights, or when a saw was not set as drawn.  Nothing here changes a piece; the checks compare.

Millimetres and degrees; a recorded value of 0 stands for a cut that is not made yet, or made as
drawn.  Distances along are from the left end to the upright's left face; stops are from the front
arris of the housed face, on the middle of the upright.  A fence stands at 90 degrees for a cut
square to the back edge, at more for one that leaves the board longer at its front.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

from geometry.bench.case import has_case
from geometry.bench.case_numbers import LEFT, RIGHT, CaseNumbers, case_numbers
from geometry.bench.case_numbers import MITRED as MITRED_END
from geometry.bench.member import Member
from geometry.bench.openings import SHELF, filled_with
from geometry.bench.panel_ends_numbers import MITRED, has_panel_ends
from geometry.bench.partitions import MOST_PARTITIONS, Upright, uprights
from geometry.design.parameter import Parameter, angle, choice, length
from geometry.design.spec import BenchSpec

BACK_EDGE, FRONT_EDGE = "back edge", "front edge"
INSIDE, LOWER_ENDS = "inside of the bottom", "lower ends"
NOTHING, RECORDED = "nothing yet", "as recorded"
TOP, BOTTOM = "top", "bottom"

SQUARE = 90.0  # degrees of the fence, for a cut square across
_GROUP, _RECORD = "At the bench", "As cut"
_FIGURES = 4  # decimals that a number drawn is recorded with


def _has_uprights(spec: BenchSpec) -> bool:
    return has_case(spec) and bool(uprights(case_numbers(spec)))


def _has_mitre(spec: BenchSpec) -> bool:
    return any(place.there(spec) for place in MITRES)


CHOICES: tuple[Parameter, ...] = (
    choice(
        "stops_from",
        "Housing stops marked from",
        _GROUP,
        BACK_EDGE,
        (BACK_EDGE, FRONT_EDGE),
        "The edge from which the same distance to a housing's stop is marked in top and bottom.",
        applies=_has_uprights,
    ),
    choice(
        "shelves_from",
        "Shelf housings marked from",
        _GROUP,
        INSIDE,
        (INSIDE, LOWER_ENDS),
        "Where the same height of a shelf's housing is marked from, in the pieces at its sides.",
        applies=lambda spec: bool(filled_with(spec, SHELF)),
    ),
    choice(
        "mitre_fence",
        "Fence for the mitres",
        _GROUP,
        BACK_EDGE,
        (BACK_EDGE, FRONT_EDGE),
        "The edge of the board that lies against the fence while a mitre is sawn.",
        applies=lambda spec: has_case(spec) and _has_mitre(spec),
    ),
    choice(
        "cut_already",
        "Cut already",
        _GROUP,
        NOTHING,
        (NOTHING, RECORDED),
        "A record of housings and mitres as they were cut, filled in from the bench as drawn.",
        applies=lambda spec: _has_uprights(spec) or _has_mitre(spec),
    ),
)


@dataclass(frozen=True, slots=True)
class MitrePlace:
    """A mitre that can be recorded, and whether a bench has it.  ``joint`` is its name."""

    joint: str
    words: str
    there: Callable[[BenchSpec], bool]


def _case_end(side: str) -> Callable[[BenchSpec], bool]:
    return lambda spec: has_case(spec) and spec.word(f"{side}_end") == MITRED_END


def _panel_end(side: str) -> Callable[[BenchSpec], bool]:
    return lambda spec: has_panel_ends(spec) and spec.word(f"{side}_joint") == MITRED


MITRES: tuple[MitrePlace, ...] = (
    *(
        MitrePlace(f"mitre_{where}_{side}", f"Mitre, {where} {side}", _case_end(side))
        for side in (LEFT, RIGHT)
        for where in (TOP, BOTTOM)
    ),
    *(MitrePlace(f"mitre_{side}", f"Mitre, {side}", _panel_end(side)) for side in (LEFT, RIGHT)),
)

BOARD, END = "board", "end"


def tilt_name(joint: str, piece: str) -> str:
    """The blade's tilt from square as it was set for one piece of a mitre."""
    return f"sawn_{joint}_{piece}_tilt"


def fence_name(joint: str, piece: str) -> str:
    return f"sawn_{joint}_{piece}_fence"


def along_name(where: str, upright: str) -> str:
    """From the left end of top or bottom to an upright's left face."""
    return f"cut_{where}_{upright}_along"


def stop_name(where: str, upright: str) -> str:
    """From the front arris of the housed face to a housing's stop."""
    return f"cut_{where}_{upright}_stop"


_UPRIGHTS = ("partition_left", *(f"partition_{k}" for k in range(1, MOST_PARTITIONS + 1)))
_UPRIGHTS = (*_UPRIGHTS, "partition_right")


def _stands(upright: str) -> Callable[[BenchSpec], bool]:
    return lambda spec: (
        has_case(spec) and any(at.name == upright for at in uprights(case_numbers(spec)))
    )


def _of_upright(upright: str) -> tuple[Parameter, ...]:
    words = upright.capitalize().replace("_", " ")
    if upright in ("partition_left", "partition_right"):
        words = f"Set-in partition, {upright.removeprefix('partition_')}"
    there = _stands(upright)
    return tuple(
        row
        for where in (TOP, BOTTOM)
        for row in (
            length(
                along_name(where, upright),
                f"{words}: {where}, from left",
                _RECORD,
                0,
                0,
                3600,
                f"From the {where}'s left end to the upright's left face, as routed; 0 if it is "
                "not.",
                step=0.5,
                applies=there,
            ),
            length(
                stop_name(where, upright),
                f"{words}: {where}, stop",
                _RECORD,
                0,
                0,
                1200,
                f"In the {where}, from the front arris of the housed face to the stop, as routed; "
                "0 if it is not.",
                step=0.5,
                applies=there,
            ),
        )
    )


def _of_mitre(place: MitrePlace) -> tuple[Parameter, ...]:
    return tuple(
        row
        for piece in (BOARD, END)
        for row in (
            angle(
                tilt_name(place.joint, piece),
                f"{place.words}: tilt, {piece}",
                _RECORD,
                0,
                0,
                89,
                "Blade tilt from square, as it was sawn; 0 if it is not.",
                step=0.1,
                applies=place.there,
            ),
            angle(
                fence_name(place.joint, piece),
                f"{place.words}: fence, {piece}",
                _RECORD,
                0,
                0,
                150,
                "From the back edge to the cut: 90 is square, more is longer at the front; 0 if it "
                "is not sawn.",
                step=0.1,
                applies=place.there,
            ),
        )
    )


PARAMETERS: tuple[Parameter, ...] = (
    *(row for upright in _UPRIGHTS for row in _of_upright(upright)),
    *(row for place in MITRES for row in _of_mitre(place)),
)


def has_record(spec: BenchSpec) -> bool:
    return spec.word("cut_already") == RECORDED


@dataclass(frozen=True, slots=True)
class Routed:
    """A housing in top or bottom, in the case's frame: ``along`` is X of the upright's left face,
    ``stop`` how far in front of the back edge the housing ends."""

    along: float
    stop: float


def drawn(c: CaseNumbers, at: Upright) -> Routed:
    """The housing that the bench asks for, the same in both boards."""
    return Routed(at.x_left, c.upright_front - c.cover)


def front_arris(c: CaseNumbers, at: Upright, where: str) -> float:
    """How far in front of the back edge the housed face of a board reaches, at an upright."""
    middle = at.x_left + c.partition_thickness / 2.0
    return c.inside_depth_at(middle) if where == TOP else c.depth + c.bottom_bevel(middle)


def routed(spec: BenchSpec, at: Upright, where: str) -> Routed:
    """The housing as it is, or is going to be, routed in one board."""
    c = case_numbers(spec)
    asked = drawn(c, at)
    stop, along = asked.stop, asked.along
    if spec.word("stops_from") == FRONT_EDGE:
        # The distance of the drawing of the bottom, marked in both.
        stop += front_arris(c, at, where) - front_arris(c, at, BOTTOM)
    if has_record(spec):
        along = spec.number(along_name(where, at.name)) or along
        measured = spec.number(stop_name(where, at.name))
        stop = front_arris(c, at, where) - measured if measured else stop
    return Routed(along, stop)


def as_drawn(spec: BenchSpec) -> dict[str, float]:
    """The record of a bench that was cut as it is drawn now."""
    found: dict[str, float] = {}
    if has_case(spec):
        c = case_numbers(spec)
        for at in uprights(c):
            asked = drawn(c, at)
            for where in (TOP, BOTTOM):
                found[along_name(where, at.name)] = asked.along
                found[stop_name(where, at.name)] = front_arris(c, at, where) - asked.stop
    for place in MITRES:
        if place.there(spec):
            board = drawn_tilt(spec)
            found[tilt_name(place.joint, BOARD)] = board
            found[tilt_name(place.joint, END)] = 90.0 - board
            found |= {fence_name(place.joint, piece): SQUARE for piece in (BOARD, END)}
    return {name: round(value, _FIGURES) for name, value in found.items()}


def drawn_tilt(spec: BenchSpec) -> float:
    """Tilt of the board's mitre, from square: boards of one thickness share the right angle."""
    if has_case(spec):
        return 45.0
    return math.degrees(math.atan2(spec.number("end_thickness"), spec.number("seat_thickness")))


CHOICE_MEMBER = Member("at the bench", CHOICES, present=lambda s: has_case(s) or has_panel_ends(s))
MEMBER = Member(
    "as cut",
    PARAMETERS,
    present=lambda spec: (has_case(spec) or has_panel_ends(spec)) and has_record(spec),
)
