"""The ends of a panel bench: two solid panels on the floor that carry the seat's board.

Each is joined to the seat in its own way: mitred or dovetailed at the seat's end, or set in and
housed in its underside.  The panels' grain is upright, so that it runs on round a mitre.  The
tails are on the seat: it goes down on the pins, and the ends cannot spread under a load (common
practice, no source).  An end may be relieved at the floor, so that it stands on two pads.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace

from geometry.bench.derived import Derived, derived_angle, derived_length
from geometry.bench.grain import FRONT_TO_BACK, UPRIGHT, grain_choice
from geometry.bench.lipped import SHEET, TIMBER, with_strips
from geometry.bench.member import Member
from geometry.bench.panel_ends_numbers import (
    DOVETAILED,
    HOUSED,
    LEFT,
    MITRED,
    RIGHT,
    PanelEnd,
    PanelEnds,
    has_panel_ends,
    panel_ends,
    panels_of_sheet,
)
from geometry.bench.panel_ends_rules import CONSTRAINTS
from geometry.cuts.cut import Blank
from geometry.cuts.notch import Notch
from geometry.design.joint import Joint, Measure
from geometry.design.parameter import Parameter, choice, length
from geometry.design.part import Part, Shape
from geometry.design.spec import BenchSpec
from geometry.joints.corner import Corner
from geometry.joints.dovetail import DovetailNumbers, dovetail
from geometry.joints.mitre import mitre
from geometry.joints.stopped_housing import HousingNumbers, stopped_housing
from geometry.primitives.frame import X_AXIS, Frame, Vec3


def _joint(side: str) -> Parameter:
    return choice(
        f"{side}_joint",
        f"{side.capitalize()} end joined",
        "Panel ends",
        MITRED,
        (MITRED, HOUSED, DOVETAILED),
        "Mitred to the seat, set in and housed in its underside, or dovetailed to it.",
    )


PARAMETERS: tuple[Parameter, ...] = (
    _joint(LEFT),
    _joint(RIGHT),
    length(
        "end_thickness",
        "End thickness",
        "Panel ends",
        32,
        12,
        80,
        "Thickness of the two ends.",
        step=0.5,
    ),
    length(
        "end_relief",
        "Relief at the floor",
        "Panel ends",
        20,
        0,
        300,
        "How high the ends are cut away between their pads; 0 leaves them straight.",
    ),
    length(
        "end_pad",
        "Pad",
        "Panel ends",
        60,
        15,
        300,
        "Length of each pad on the floor, from the end's edge.",
        applies=lambda spec: spec.number("end_relief") > 0.0,
    ),
    grain_choice(
        "panel_end_grain",
        "Grain of the ends",
        "Panel ends",
        UPRIGHT,
        FRONT_TO_BACK,
        "Upright they move with the seat.",
        applies=lambda spec: not panels_of_sheet(spec),
    ),
    choice(
        "panel_made_of",
        "Seat and ends of",
        "Panel ends",
        TIMBER,
        (TIMBER, SHEET),
        "Timber, or the back's sheet material with lippings on the edges that show.",
    ),
)


def end_parts(spec: BenchSpec) -> tuple[Part, ...]:
    n = panel_ends(spec)
    if n.of_sheet:
        return tuple(
            replace(
                _panel(n, end, spec.word("sheet")),
                solid_timber=False,
                notes=(with_strips(end.front, "lippings"),),
            )
            for end in n.ends
        )
    across = spec.word("panel_end_grain") == FRONT_TO_BACK
    return tuple(
        replace(_panel(n, end, spec.word("timber")), grain_across=across) for end in n.ends
    )


def _panel(n: PanelEnds, end: PanelEnd, material: str) -> Part:
    """Face side in, face edge at the back; one of sheet without its lippings."""
    back = n.back_lip
    if end.side == LEFT:
        frame = Frame.of((end.inside, 0.0 - back, end.height), (0, 0, -1), (0, -1, 0))
        low, high = end.height - n.relief, end.height
    else:
        frame = Frame.of((end.inside, 0.0 - back, 0.0), (0, 0, 1), (0, -1, 0))
        low, high = 0.0, n.relief
    relief = (Notch(low, high, n.pad - back, end.front - n.pad - back),) if n.relief > 0.0 else ()
    return Part(
        name=f"end_{end.side}",
        title=f"End, {end.side}",
        kind="end",
        material=material,
        shape=Shape(Blank(end.height, end.front - n.lip - back, n.thickness), relief),
        frame=frame,
    )


def _joints(spec: BenchSpec, parts: Mapping[str, Part]) -> tuple[Joint, ...]:
    n = panel_ends(spec)
    seat = parts["seat"]
    return tuple(_JOINED[end.joint](n, end, seat, parts[f"end_{end.side}"]) for end in n.ends)


def _mitred(n: PanelEnds, end: PanelEnd, seat: Part, panel: Part) -> Joint:
    back, front = 0.0 - n.back_lip, n.lip - n.depth
    corners: tuple[Vec3, Vec3, Vec3, Vec3] = (
        (end.outside, back, n.top),
        (end.outside, front, n.top),
        (end.inside, front, n.underside),
        (end.inside, back, n.underside),
    )
    if end.side == LEFT:
        # Turned round, so that the normal points from the seat into the end.
        corners = (corners[1], corners[0], corners[3], corners[2])
    return mitre(f"mitre_{end.side}", seat, panel, corners)


def _housed(n: PanelEnds, end: PanelEnd, seat: Part, panel: Part) -> Joint:
    low, high = min(end.outside, end.inside), max(end.outside, end.inside)
    at = HousingNumbers(
        low=low,
        high=high,
        across=X_AXIS,
        back=n.back_lip,
        front=end.front,
        inside=n.underside,
        into=(0.0, 0.0, 1.0),
        depth=n.housing_depth,
        cover=n.cover,
        cutter_radius=n.cutter_radius,
        fit=n.housing_fit,
        board_front=(n.depth, n.depth, n.depth),
        inside_front=n.depth,
        sides=(LEFT, RIGHT),
        place=Measure("from_left_end", low, "mm", "the end's left face from the seat's left end"),
        board_back=n.back_lip,
    )
    return stopped_housing(f"housing_{end.side}", seat, panel, at)


def corner_of(n: PanelEnds, end: PanelEnd) -> Corner:
    """The corner in which the seat meets an end, from the back edges forward."""
    return Corner(
        arris=(end.outside, 0.0, n.top),
        along_side=(1.0 if end.side == LEFT else -1.0, 0.0, 0.0),
        along_end=(0.0, 0.0, -1.0),
        height=n.depth,
        side_thickness=n.seat_thickness,
        end_thickness=n.thickness,
        fit=n.tail_fit,
        groove=0.0,
        clear=0.0,
        up=(0.0, -1.0, 0.0),
        edge="back edge",
    )


def _dovetailed(n: PanelEnds, end: PanelEnd, seat: Part, panel: Part) -> Joint:
    at = DovetailNumbers(corner_of(n, end), n.tails, n.tail_count, n.tail_lap)
    return dovetail(f"dovetail_{end.side}", seat, panel, at)


_JOINED = {MITRED: _mitred, HOUSED: _housed, DOVETAILED: _dovetailed}


def _derived(spec: BenchSpec) -> tuple[Derived, ...]:
    n = panel_ends(spec)
    rows = [
        derived_length(
            "between_ends",
            "Between the ends",
            "Panel ends",
            n.between,
            "length, end thickness, and how far housed ends are set in",
        )
    ]
    if any(end.joint == MITRED for end in n.ends):
        rows.append(
            derived_angle(
                "end_mitre_tilt",
                "Mitre on the seat",
                "Panel ends",
                math.degrees(math.atan2(n.thickness, n.seat_thickness)),
                "atan(end thickness / seat thickness): blade tilt from square",
            )
        )
    if any(end.joint == HOUSED for end in n.ends):
        rows.append(
            derived_length(
                "housed_end_height",
                "Housed end, height",
                "Panel ends",
                n.underside + n.housing_depth,
                "base height + housing depth",
            )
        )
    if any(end.joint == DOVETAILED for end in n.ends):
        rows.append(
            derived_length(
                "seat_tail_width",
                "Tail width",
                "Panel ends",
                n.tails.tail_width(n.tail_count),
                "(depth − 2 × half pin − (tails − 1) × pin) / tails",
            )
        )
    return tuple(rows)


def _snug(spec: BenchSpec) -> tuple[dict[str, float], ...]:
    """Ends that fit under the smallest bench; as thick as the seat where a mitre asks for it."""
    thickness = min(max(12.0, spec.number("seat_thickness")), 80.0)
    return ({"end_relief": 0.0, "end_pad": 15.0, "end_thickness": thickness},)


MEMBER = Member(
    "panel ends",
    PARAMETERS,
    CONSTRAINTS,
    end_parts,
    _joints,
    derived=_derived,
    present=has_panel_ends,
    snug=_snug,
)
