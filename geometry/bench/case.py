"""The case's outside: top, bottom and the mitred end panels.

The back edges lie in one plane.  The front edges of the bottom, of the end panel at a deep end
and of the top's deep stretch lie in one plane that leans from the depth at the case's underside
to the depth and the flare at its top face; from the end of the deep stretch on, the top's edge is
cut square.  Where both ends flare by unlike amounts the bottom leans with each to half way between
their run-outs.  Top and bottom have their inside faces as face sides, so that the housings of both
can be marked across the two boards laid back to back.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace
from itertools import pairwise

from geometry.bench.case_numbers import LEFT, MITRED, OPEN, RIGHT, CaseNumbers, case_numbers
from geometry.bench.constraint import Constraint, rule
from geometry.bench.derived import Derived, derived_length
from geometry.bench.grain import FRONT_TO_BACK, UPRIGHT, grain_choice
from geometry.bench.lipped import SHEET, TIMBER, with_strips
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


def has_mitred_end(spec: BenchSpec) -> bool:
    return MITRED in (spec.word("left_end"), spec.word("right_end"))


# Where a housing or a rebate is cut through sheet and lipping, and its page draws the sheet.
_ON_SHEET = "cut with these on, places here are on the sheet without them"
_OF_SHEET = "Timber, or the back's sheet material with lippings on its edges."

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
    grain_choice(
        "end_grain",
        "Grain of the end panels",
        "Ends",
        UPRIGHT,
        FRONT_TO_BACK,
        "Upright it turns the corner with that of top and bottom.",
        applies=lambda spec: has_mitred_end(spec) and spec.word("ends_made_of") == TIMBER,
    ),
    choice("top_made_of", "Top of", "Case", TIMBER, (TIMBER, SHEET), _OF_SHEET),
    choice("bottom_made_of", "Bottom of", "Case", TIMBER, (TIMBER, SHEET), _OF_SHEET),
    choice(
        "ends_made_of",
        "End panels of",
        "Ends",
        TIMBER,
        (TIMBER, SHEET),
        _OF_SHEET,
        applies=has_mitred_end,
    ),
)


CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "case_open",
        "case_height board_thickness",
        lambda s: s.number("case_height") - 2.0 * s.number("board_thickness") - 40.0,
        "the case needs at least {40 mm} inside its height",
    ),
)


def _parts(spec: BenchSpec) -> tuple[Part, ...]:
    """Top, bottom and the end panels that there are; those of sheet without their lippings."""
    return tuple(_made(spec, part) for part in boards(case_numbers(spec), spec.word("timber")))


def boards(c: CaseNumbers, timber: str) -> tuple[Part, ...]:
    """The same as of timber, but as narrow as they are cut."""
    panels = tuple(_end_panel(c, end.side, timber) for end in (c.left, c.right) if end.mitred)
    return (_top(c, timber), _bottom(c, timber), *panels)


def _made(spec: BenchSpec, part: Part) -> Part:
    """A board of what it is made of."""
    c = case_numbers(spec)
    if c.behind(part.name) <= 0.0:
        across = part.kind == "end panel" and spec.word("end_grain") == FRONT_TO_BACK
        return replace(part, grain_across=across) if across else part
    return replace(
        part, material=spec.word("sheet"), solid_timber=False, notes=(_finished(c, part),)
    )


def _finished(c: CaseNumbers, part: Part) -> str:
    """What a board of sheet measures once it is lipped."""
    back, blank = c.back_lip(part.name), part.shape.blank
    wide = blank.width + c.behind(part.name) + back
    if part.kind != "end panel" and blank.length < c.length - COPLANAR:
        return f"{with_strips(wide, 'lippings', c.length)}; {_ON_SHEET}"
    return f"{with_strips(wide, 'lippings')}; {_ON_SHEET}" if back > 0.0 else with_strips(wide)


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
    back, right = c.back_lip("top"), c.end_lip("top", RIGHT)
    full = c.depth + c.greatest_flare - c.behind("top") - back
    return Part(
        name="top",
        title="Top",
        kind="top",
        material=timber,
        shape=Shape(Blank(_between_ends(c, "top"), full, c.thickness), _top_cuts(c, full)),
        frame=Frame.of((c.length - right, 0.0 - back, c.inside_high), (-1, 0, 0), (0, -1, 0)),
    )


def _between_ends(c: CaseNumbers, board: str) -> float:
    """Length of top or bottom without the lippings on its ends."""
    lips = c.end_lip(board, LEFT) + c.end_lip(board, RIGHT)
    return round(c.length - lips, 9) if lips > 0.0 else c.length


def _top_cuts(c: CaseNumbers, full: float) -> tuple[Cut, ...]:
    """A bevel along each deep stretch, and one sawn outline for all run-outs.

    The top's x runs from the right end, so a deep left end lies at high x.
    """
    if not c.flared:
        return ()
    bevels = []
    for side in (RIGHT, LEFT):
        flare = c.flare_of(side)
        if flare.amount <= 0.0:
            continue
        low, high = (
            (0.0, flare.straight) if side == RIGHT else (c.length - flare.straight, c.length)
        )
        deep = c.depth + flare.amount
        bevels.append(StoppedBevel(low, high, deep - c.bevel(side), deep))
    front = top_front(c)
    # What lies on the blank's own far edge is not sawn.
    if front[0][1] == full:
        front = front[1:]
    if front[-1][1] == full:
        front = front[:-1]
    return (*bevels, RunOut(front))


def top_front(c: CaseNumbers) -> tuple[Vec2, ...]:
    """The top's outside front arris in its own x, y, from the right end to the left."""
    found: list[Vec2] = []
    for side in (RIGHT, LEFT):
        flare = c.flare_of(side)
        stations: list[Vec2] = [(0.0, c.depth)]
        if flare.amount > 0.0:
            deep = c.depth + flare.amount
            stations = [(0.0, deep), (flare.straight, deep), (flare.end, c.depth)]
        if side == LEFT:
            stations = [(c.length - s, y) for s, y in reversed(stations)]
        found += stations
    # A run-out to the very end, or to where the other begins, leaves no stretch between.
    later = [point for before, point in pairwise(found) if point[0] > before[0] + COPLANAR]
    return (found[0], *later)


def _bottom(c: CaseNumbers, timber: str) -> Part:
    back, left = c.back_lip("bottom"), c.end_lip("bottom", LEFT)
    frame = Frame.of((left, 0.0 - back, c.inside_low), (1, 0, 0), (0, -1, 0))
    bevel = c.greatest_flare * c.thickness / c.height
    deep = c.depth + bevel - c.behind("bottom") - back
    return Part(
        name="bottom",
        title="Bottom",
        kind="bottom",
        material=timber,
        shape=Shape(Blank(_between_ends(c, "bottom"), deep, c.thickness), _bottom_cuts(c, frame)),
        frame=frame,
    )


def _bottom_cuts(c: CaseNumbers, frame: Frame) -> tuple[Cut, ...]:
    """One lean from end to end, or one from each end to where they change."""
    changes = c.bevel_changes
    if not c.flared:
        return ()
    if changes is None:
        front = c.depth - c.behind("bottom")
        return (_front_cut(c, front, c.greatest_flare, frame, "front bevel"),)
    return tuple(
        StoppedBevel(low, high, c.depth + c.bevel(side), c.depth)
        for side, low, high in ((LEFT, 0.0, changes), (RIGHT, changes, c.length))
    )


def _end_panel(c: CaseNumbers, side: str, timber: str) -> Part:
    back = c.back_lip(f"end_panel_{side}")
    if side == LEFT:
        frame = Frame.of((c.thickness, 0.0 - back, c.top), (0, 0, -1), (0, -1, 0))
    else:
        frame = Frame.of((c.length - c.thickness, 0.0 - back, c.floor), (0, 0, 1), (0, -1, 0))
    flare, front = c.flare_of(side).amount, c.depth - c.behind(f"end_panel_{side}")
    return Part(
        name=f"end_panel_{side}",
        title=f"End panel, {side}",
        kind="end panel",
        material=timber,
        shape=Shape(
            Blank(c.height, front + flare - back, c.thickness),
            (_front_cut(c, front, flare, frame, "front taper"),) if flare > 0.0 else (),
        ),
        frame=frame,
    )


def _front_cut(c: CaseNumbers, front: float, flare: float, frame: Frame, title: str) -> SawCut:
    """A leaning front plane, ``front`` deep at the case's underside, as a cut on one part."""
    run = math.hypot(c.height, flare)
    outward = (0.0, -c.height / run, -flare / run)
    return SawCut(title, frame.to_local((0.0, -front, c.floor)), frame.turn_to_local(outward))


def _mitre(c: CaseNumbers, side: str, board: Part, panel: Part, *, at_top: bool) -> Joint:
    outside_x = 0.0 if side == LEFT else c.length
    inside_x = c.thickness if side == LEFT else c.length - c.thickness
    outside_z, inside_z = (c.top, c.inside_high) if at_top else (c.floor, c.inside_low)
    outside_front, inside_front = _mitre_fronts(c, side, at_top)
    back = 0.0 - max(c.back_lip(board.name), c.back_lip(panel.name))
    corners: tuple[Vec3, Vec3, Vec3, Vec3] = (
        (outside_x, back, outside_z),
        (outside_x, -outside_front, outside_z),
        (inside_x, -inside_front, inside_z),
        (inside_x, back, inside_z),
    )
    if (side == LEFT) == at_top:
        # Turned round, so that the normal points from the board into the panel.
        corners = (corners[1], corners[0], corners[3], corners[2])
    where = "top" if at_top else "bottom"
    return mitre(f"mitre_{where}_{side}", board, panel, corners)


def _mitre_fronts(c: CaseNumbers, side: str, at_top: bool) -> tuple[float, float]:
    """How far forward both boards of a mitre reach, at the outside and the inside arris."""
    flare, bevel = c.flare_of(side).amount, c.bevel(side)
    panel = c.behind(f"end_panel_{side}")
    if at_top:
        deep = c.depth + flare - max(c.behind("top"), panel)
        return deep, deep - bevel
    board = c.behind("bottom")
    # The bottom may lean more than this end does.
    inside = min(bevel - panel, c.bottom_bevel(0.0 if side == LEFT else c.length) - board)
    return c.depth - max(board, panel), c.depth + inside


def _derived(spec: BenchSpec) -> tuple[Derived, ...]:
    c = case_numbers(spec)
    return (
        derived_length(
            "inside_height",
            "Inside height",
            "Case",
            c.inside_height,
            "case height − 2 × board thickness",
        ),
    )


MEMBER = Member(
    "case", PARAMETERS, CONSTRAINTS, _parts, _joints, derived=_derived, present=has_case
)
