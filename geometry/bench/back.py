"""The back: a sheet, or a panel of timber, in rebates in top, bottom and what closes the ends."""

from __future__ import annotations

from collections.abc import Mapping

from geometry.bench.case import has_case
from geometry.bench.case_numbers import LEFT, CaseNumbers, case_numbers
from geometry.bench.constraint import Constraint, rule
from geometry.bench.derived import Derived, derived_length
from geometry.bench.grain import OF_TIMBER, SIDE_TO_SIDE, UPRIGHT, grain_choice, panel_choice
from geometry.bench.lipped import EdgeOf, strip_name
from geometry.bench.member import Member
from geometry.cuts.cut import Blank
from geometry.cuts.notch import Notch
from geometry.cuts.rebate import Rebate
from geometry.design.joint import Joint
from geometry.design.parameter import Parameter, length
from geometry.design.part import Part, Shape
from geometry.design.spec import BenchSpec
from geometry.joints.back_rebate import back_rebate
from geometry.joints.marking import span
from geometry.primitives.frame import Frame, Vec3
from shared.tolerances import COPLANAR

PARAMETERS: tuple[Parameter, ...] = (
    panel_choice(
        "back_of", "Back of", "Back", "Sheet, or a panel of the bench's timber that has to move."
    ),
    grain_choice(
        "back_grain",
        "Grain of the back",
        "Back",
        SIDE_TO_SIDE,
        UPRIGHT,
        "A panel of timber moves across it.",
        applies=lambda spec: spec.word("back_of") == OF_TIMBER,
    ),
    length(
        "back_thickness",
        "Back thickness",
        "Back",
        6.0,
        2,
        20,
        "Of a sheet the measured thickness, not its nominal size.",
        step=0.1,
    ),
    length(
        "rebate_depth",
        "Rebate depth",
        "Back",
        6.0,
        2,
        25,
        "How deep the rebates for the back are cut into the pieces around it.",
        step=0.5,
    ),
    length(
        "back_let_in",
        "Back let in",
        "Back",
        0.0,
        0,
        30,
        "How far the back's outside lies in from the back edges.",
        step=0.5,
    ),
    length(
        "back_fit",
        "Back fit",
        "Back",
        1.0,
        0,
        6,
        "Clearance of the back in its rebates, both edges together.",
        step=0.1,
    ),
)

DRY = "dry in its rebates, held in the middle of its width alone, so that it can move"

CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "rebate_board",
        "rebate_depth board_thickness",
        lambda s: s.number("board_thickness") - s.number("rebate_depth") - 3.0,
        "the rebate would leave less than {3 mm} of the board",
    ),
    rule(
        "rebate_partition",
        "rebate_depth partition_thickness left_end right_end",
        lambda s: (
            s.number("partition_thickness") - s.number("rebate_depth") - 3.0
            if "open" in (s.word("left_end"), s.word("right_end"))
            else 0.0
        ),
        "the rebate would leave less than {3 mm} of the set-in partition",
    ),
    rule(
        "back_held",
        "rebate_depth back_fit",
        lambda s: s.number("rebate_depth") - s.number("back_fit") / 2.0 - 1.0,
        "the back would be held by less than {1 mm}",
    ),
)


def back_edges(c: CaseNumbers) -> tuple[float, float, float, float]:
    """The rebates' outer walls: left, right in X, low, high in Z."""
    d = c.rebate_depth
    return (c.inside_left - d, c.inside_right + d, c.inside_low - d, c.inside_high + d)


def back_size(c: CaseNumbers) -> tuple[float, float]:
    """Length and height of the sheet."""
    left, right, low, high = back_edges(c)
    return right - left - c.back_fit, high - low - c.back_fit


def _parts(spec: BenchSpec) -> tuple[Part, ...]:
    c, timber = case_numbers(spec), spec.word("back_of") == OF_TIMBER
    left, _, _, high = back_edges(c)
    gap = c.back_fit / 2.0
    length_, height = back_size(c)
    back = Part(
        name="back",
        title="Back",
        kind="back",
        material=spec.word("timber" if timber else "sheet"),
        shape=Shape(Blank(length_, height, c.back_thickness), ()),
        frame=Frame.of((left + gap, -c.rebate_width, high - gap), (1, 0, 0), (0, 0, -1)),
        solid_timber=timber,
        notes=(DRY,) if timber else (),
        grain_across=timber and spec.word("back_grain") == UPRIGHT,
    )
    return (back,)


def rebate_run(c: CaseNumbers, name: str) -> tuple[Vec3, Vec3]:
    """From where to where the rebate runs in top, bottom or an end panel: through at a mitred end
    (the mitre has taken the rest away), stopped in the housing of a set-in partition at an open
    one."""
    left, right, _, _ = back_edges(c)
    if name in ("top", "bottom"):
        inside = c.inside_high if name == "top" else c.inside_low
        start = 0.0 if c.left.mitred else left
        stop = c.length if c.right.mitred else right
        return (start, 0.0, inside), (stop, 0.0, inside)
    inside = c.inside_left if name == f"end_panel_{LEFT}" else c.inside_right
    return (inside, 0.0, c.floor), (inside, 0.0, c.top)


def holder_of(c: CaseNumbers, name: str) -> str:
    """What the back's inside face lies on: a board, or its back lipping where that is thicker than
    the rebate is wide."""
    thicker = c.back_lip(name) > c.rebate_width + COPLANAR
    return strip_name(name, EdgeOf.BACK) if thicker else name


def lipped_rebate(c: CaseNumbers, name: str, strip: Part) -> Rebate | Notch:
    """As much of a board's rebate as is cut in its back lipping."""
    x_low, x_high = span(strip, 0, *rebate_run(c, name))
    thick = strip.shape.blank.width
    low = thick - c.rebate_depth
    if holder_of(c, name) == name:
        return Notch(x_low, x_high, low, thick)
    return Rebate(x_low, x_high, low, thick, c.rebate_width)


def _in_board(
    c: CaseNumbers,
    name: str,
    parts: Mapping[str, Part],
    along: tuple[Vec3, Vec3],
    contact: tuple[Vec3, Vec3, Vec3, Vec3],
) -> Joint:
    """The rebate in a board of the case, or in its back lipping."""
    holder = parts[holder_of(c, name)]
    return back_rebate(
        f"rebate_{name}",
        holder,
        parts["back"],
        along=along,
        into=c.rebate_depth,
        width=c.rebate_width,
        fit=c.back_fit,
        contact=contact,
        lip=c.back_lip(name) if holder.name == name else 0.0,
        cut=None if holder.name == name else lipped_rebate(c, name, holder),
    )


def _joints(spec: BenchSpec, parts: Mapping[str, Part]) -> tuple[Joint, ...]:
    """One rebate each in top, bottom and the pieces at the ends."""
    c = case_numbers(spec)
    back = parts["back"]
    left, right, low, high = back_edges(c)
    y, gap = -c.rebate_width, c.back_fit / 2.0
    joints = []
    for name, inside, wall in (("top", c.inside_high, high), ("bottom", c.inside_low, low)):
        held = wall - gap if name == "top" else wall + gap
        contact = _wall((c.inside_left, c.inside_right), (inside, held), y)
        joints.append(_in_board(c, name, parts, rebate_run(c, name), contact))
    for end, inside_x, wall in ((c.left, c.inside_left, left), (c.right, c.inside_right, right)):
        held = wall + gap if end.side == LEFT else wall - gap
        low_z, high_z = c.inside_low, c.inside_high
        contact = _wall((inside_x, held), (low_z, high_z), y)
        if end.mitred:
            name = f"end_panel_{end.side}"
            joints.append(_in_board(c, name, parts, rebate_run(c, name), contact))
            continue
        name, bounds = f"partition_{end.side}", (low_z - c.housing_depth, high_z + c.housing_depth)
        joints.append(
            back_rebate(
                f"rebate_{name}",
                parts[name],
                back,
                along=((inside_x, 0.0, bounds[0]), (inside_x, 0.0, bounds[1])),
                into=c.rebate_depth,
                width=c.rebate_width,
                fit=c.back_fit,
                contact=contact,
            )
        )
    return tuple(joints)


def _wall(
    x: tuple[float, float], z: tuple[float, float], y: float
) -> tuple[Vec3, Vec3, Vec3, Vec3]:
    return ((x[0], y, z[0]), (x[1], y, z[0]), (x[1], y, z[1]), (x[0], y, z[1]))


def _derived(spec: BenchSpec) -> tuple[Derived, ...]:
    c = case_numbers(spec)
    length_, height = back_size(c)
    return (
        derived_length(
            "back_length", "Back length", "Back", length_, "inside length, rebates, back fit"
        ),
        derived_length(
            "back_height", "Back height", "Back", height, "inside height, rebates, back fit"
        ),
        derived_length(
            "rebate_width",
            "Rebate width",
            "Back",
            c.rebate_width,
            "back thickness + how far it is let in",
        ),
    )


MEMBER = Member(
    "back", PARAMETERS, CONSTRAINTS, _parts, _joints, derived=_derived, present=has_case
)
