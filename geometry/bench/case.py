"""The case's outside: top, bottom and the mitred end panels.

The back edges lie in one plane.  The front edges of the bottom, of the end panel at the deep end
and of the top's deep stretch lie in one plane that leans from the depth at the case's underside
to the depth and the flare at its top face; from the end of the deep stretch on, the top's edge is
cut square.  Top and bottom have their inside faces as face sides, so that the housings of both
can be marked across the two boards laid back to back.
"""

from __future__ import annotations

import math
from collections.abc import Mapping

from geometry.bench.case_numbers import LEFT, MITRED, OPEN, RIGHT, CaseNumbers, case_numbers
from geometry.bench.constraint import Constraint, rule
from geometry.bench.derived import Derived, derived_angle, derived_length
from geometry.bench.member import Member
from geometry.bench.overall import CASE, seat_is
from geometry.cuts.cut import Blank, Cut
from geometry.cuts.run_out import RunOut
from geometry.cuts.saw import SawCut
from geometry.cuts.stopped_bevel import StoppedBevel
from geometry.design.joint import Joint
from geometry.design.parameter import Parameter, choice, length
from geometry.design.part import Part, Shape
from geometry.design.spec import BenchSpec
from geometry.joints.mitre import mitre
from geometry.primitives.frame import Frame, Vec2, Vec3
from shared.tolerances import COPLANAR


def has_case(spec: BenchSpec) -> bool:
    return seat_is(CASE, spec)


def _flared(spec: BenchSpec) -> bool:
    return spec.number("flare") > 0.0


PARAMETERS: tuple[Parameter, ...] = (
    length("case_height", "Case height", "Case", 300, 90, 800, "Outside height of the case."),
    length(
        "board_thickness",
        "Board thickness",
        "Case",
        20,
        10,
        50,
        "Thickness of top, bottom and end panels.",
        step=0.5,
    ),
    choice(
        "left_end",
        "Left end",
        "Ends",
        MITRED,
        (MITRED, OPEN),
        "A panel mitred to top and bottom, or open with a set-in partition.",
    ),
    choice(
        "right_end",
        "Right end",
        "Ends",
        OPEN,
        (MITRED, OPEN),
        "A panel mitred to top and bottom, or open with a set-in partition.",
    ),
    length(
        "left_inset",
        "Left partition set in",
        "Ends",
        60,
        5,
        1200,
        "From the left end to the outside of the set-in partition.",
        applies=lambda spec: spec.word("left_end") == OPEN,
    ),
    length(
        "right_inset",
        "Right partition set in",
        "Ends",
        60,
        5,
        1200,
        "From the right end to the outside of the set-in partition.",
        applies=lambda spec: spec.word("right_end") == OPEN,
    ),
    length("flare", "Flare", "Flare", 60, 0, 300, "How much deeper the top is at its deep end."),
    choice(
        "deep_end",
        "Deep end",
        "Flare",
        LEFT,
        (LEFT, RIGHT),
        "The end at which the top is deeper.",
        applies=_flared,
    ),
    length(
        "flare_straight",
        "Deep stretch",
        "Flare",
        240,
        20,
        3500,
        "From the deep end to where the run-out begins.",
        applies=_flared,
    ),
    length(
        "flare_end",
        "Run-out ends",
        "Flare",
        700,
        40,
        3600,
        "From the deep end to where the top is back to the depth of the bottom.",
        applies=_flared,
    ),
)


def _if_flared(spec: BenchSpec, slack: float) -> float:
    """The stations of a plain bench are kept, and bind nothing."""
    return slack if _flared(spec) else 1.0


CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "flare_order",
        "flare flare_straight flare_end",
        lambda s: _if_flared(s, s.number("flare_end") - s.number("flare_straight") - 20.0),
        "the run-out needs at least {20 mm} after the deep stretch",
    ),
    rule(
        "flare_within",
        "flare flare_end length",
        lambda s: _if_flared(s, s.number("length") - s.number("flare_end")),
        "the run-out must end on the bench",
    ),
    rule(
        "flare_slope",
        "flare flare_straight flare_end",
        lambda s: _if_flared(
            s, s.number("flare_end") - s.number("flare_straight") - s.number("flare") / 2.0
        ),
        "the run-out would be steeper than 2 to 1",
    ),
    rule(
        "flare_lean",
        "flare case_height",
        lambda s: s.number("case_height") - s.number("flare"),
        "the front would lean more than {45 deg}, which no saw tilts to",
    ),
    rule(
        "case_open",
        "case_height board_thickness",
        lambda s: s.number("case_height") - 2.0 * s.number("board_thickness") - 40.0,
        "the case needs at least {40 mm} inside its height",
    ),
)


def _parts(spec: BenchSpec) -> tuple[Part, ...]:
    """Top, bottom and the end panels that there are."""
    c, timber = case_numbers(spec), spec.word("timber")
    panels = tuple(_end_panel(c, end.side, timber) for end in (c.left, c.right) if end.mitred)
    return (_top(c, timber), _bottom(c, timber), *panels)


def _joints(spec: BenchSpec, parts: Mapping[str, Part]) -> tuple[Joint, ...]:
    """The mitres between top, bottom and end panels."""
    c = case_numbers(spec)
    joints: list[Joint] = []
    for end in (c.left, c.right):
        if end.mitred:
            panel = parts[f"end_panel_{end.side}"]
            joints.append(_mitre(c, end.side, parts["top"], panel, at_top=True))
            joints.append(_mitre(c, end.side, parts["bottom"], panel, at_top=False))
    return tuple(joints)


def _top(c: CaseNumbers, timber: str) -> Part:
    full = c.depth + c.flare
    return Part(
        name="top",
        title="Top",
        kind="top",
        material=timber,
        shape=Shape(Blank(c.length, full, c.thickness), _top_cuts(c, full)),
        frame=Frame.of((c.length, 0.0, c.inside_high), (-1, 0, 0), (0, -1, 0)),
    )


def _top_cuts(c: CaseNumbers, full: float) -> tuple[Cut, ...]:
    if c.flare <= 0.0:
        return ()
    # The top's x runs from the right end, so a deep left end lies at high x.
    stations: list[Vec2] = [(c.straight, full), (c.flare_end, c.depth)]
    if c.flare_end < c.length - COPLANAR:
        stations.append((c.length, c.depth))
    knees = tuple(((c.length - s) if c.deep_left else s, y) for s, y in stations)
    if c.deep_left:
        knees = knees[::-1]
    low, high = (c.length - c.straight, c.length) if c.deep_left else (0.0, c.straight)
    return (StoppedBevel(low, high, full - c.bevel, full), RunOut(knees))


def _bottom(c: CaseNumbers, timber: str) -> Part:
    frame = Frame.of((0.0, 0.0, c.inside_low), (1, 0, 0), (0, -1, 0))
    cuts: tuple[Cut, ...] = (_front_cut(c, frame, "front bevel"),) if c.flare > 0.0 else ()
    return Part(
        name="bottom",
        title="Bottom",
        kind="bottom",
        material=timber,
        shape=Shape(Blank(c.length, c.depth + c.bevel, c.thickness), cuts),
        frame=frame,
    )


def _end_panel(c: CaseNumbers, side: str, timber: str) -> Part:
    if side == LEFT:
        frame = Frame.of((c.thickness, 0.0, c.top), (0, 0, -1), (0, -1, 0))
    else:
        frame = Frame.of((c.length - c.thickness, 0.0, c.floor), (0, 0, 1), (0, -1, 0))
    deep = c.flare > 0.0 and side == c.deep_side
    return Part(
        name=f"end_panel_{side}",
        title=f"End panel, {side}",
        kind="end panel",
        material=timber,
        shape=Shape(
            Blank(c.height, c.depth + (c.flare if deep else 0.0), c.thickness),
            (_front_cut(c, frame, "front taper"),) if deep else (),
        ),
        frame=frame,
    )


def _front_cut(c: CaseNumbers, frame: Frame, title: str) -> SawCut:
    """The leaning front plane, as a cut on one part."""
    run = math.hypot(c.height, c.flare)
    outward = (0.0, -c.height / run, -c.flare / run)
    return SawCut(title, frame.to_local((0.0, -c.depth, c.floor)), frame.turn_to_local(outward))


def _mitre(c: CaseNumbers, side: str, board: Part, panel: Part, *, at_top: bool) -> Joint:
    outside_x = 0.0 if side == LEFT else c.length
    inside_x = c.thickness if side == LEFT else c.length - c.thickness
    outside_z, inside_z = (c.top, c.inside_high) if at_top else (c.floor, c.inside_low)
    outside_front, inside_front = _mitre_fronts(c, side, at_top)
    corners: tuple[Vec3, Vec3, Vec3, Vec3] = (
        (outside_x, 0.0, outside_z),
        (outside_x, -outside_front, outside_z),
        (inside_x, -inside_front, inside_z),
        (inside_x, 0.0, inside_z),
    )
    if (side == LEFT) == at_top:
        # Turned round, so that the normal points from the board into the panel.
        corners = (corners[1], corners[0], corners[3], corners[2])
    where = "top" if at_top else "bottom"
    return mitre(f"mitre_{where}_{side}", board, panel, corners)


def _mitre_fronts(c: CaseNumbers, side: str, at_top: bool) -> tuple[float, float]:
    """How far forward both boards of a mitre reach, at the outside and the inside arris."""
    if c.flare <= 0.0 or side != c.deep_side:
        return c.depth, c.depth
    if at_top:
        return c.depth + c.flare, c.depth + c.flare - c.bevel
    return c.depth, c.depth + c.bevel


def _derived(spec: BenchSpec) -> tuple[Derived, ...]:
    c = case_numbers(spec)
    rows = [
        derived_length(
            "inside_height",
            "Inside height",
            "Case",
            c.inside_height,
            "case height − 2 × board thickness",
        ),
    ]
    if c.flare > 0.0:
        rows += [
            derived_length(
                "greatest_depth", "Greatest depth", "Flare", c.depth + c.flare, "depth + flare"
            ),
            derived_angle(
                "front_lean",
                "Front lean",
                "Flare",
                c.front_lean_deg,
                "atan(flare / case height), from the vertical",
            ),
            derived_length(
                "front_slant",
                "Front slant",
                "Flare",
                math.hypot(c.height, c.flare),
                "case height and flare",
            ),
            derived_angle(
                "run_out_angle",
                "Run-out angle",
                "Flare",
                math.degrees(math.atan2(c.flare, c.flare_end - c.straight)),
                "flare over the run-out's length, from the back edge",
            ),
        ]
    return tuple(rows)


MEMBER = Member(
    "case", PARAMETERS, CONSTRAINTS, _parts, _joints, derived=_derived, present=has_case
)
