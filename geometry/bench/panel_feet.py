"""Panel feet: two or three solid panels across the depth, tied by a rail on edge.

The panels' grain is upright.  The rail's tenons pass through the outer panels, wedged at their top
and bottom edges or plain; it passes whole through a middle panel.  Each panel may be relieved at
the floor, so that it stands on two pads.
"""

from __future__ import annotations

import math
from collections.abc import Mapping

from geometry.bench.base_place import SNUG_EDGES
from geometry.bench.derived import Derived, derived_angle, derived_length
from geometry.bench.member import THE_BASE, Member
from geometry.bench.overall import PANEL_FEET, base_is
from geometry.bench.panel_numbers import PanelNumbers, has_middle, is_wedged, panel_numbers
from geometry.bench.panel_rules import CONSTRAINTS
from geometry.bench.wedges import PLAIN, WEDGED, wedge_piece
from geometry.cuts.cut import Blank
from geometry.cuts.notch import Notch
from geometry.design.joint import Joint
from geometry.design.parameter import Parameter, choice, count, length
from geometry.design.part import Part, Shape
from geometry.design.spec import BenchSpec
from geometry.joints.passed_rail import passed_rail
from geometry.joints.through_tenon import through_tenon, wedge
from geometry.primitives.frame import Frame, Vec3

_UP: Vec3 = (0.0, 0.0, 1.0)


PARAMETERS: tuple[Parameter, ...] = (
    count("panel_count", "Panels", "Base", 2, 2, 3, "How many panels the bench stands on."),
    length(
        "panel_middle",
        "Middle panel to the right",
        "Base",
        0,
        -1500,
        1500,
        "How far the middle panel stands to the right of the middle between the outer two.",
        applies=has_middle,
    ),
    length(
        "panel_thickness",
        "Panel thickness",
        "Base",
        30,
        12,
        80,
        "Thickness of the panels.",
        step=0.5,
    ),
    length(
        "panel_relief",
        "Relief at the floor",
        "Base",
        10,
        0,
        300,
        "How high the panels are cut away between their pads; 0 leaves them straight.",
    ),
    length(
        "panel_pad",
        "Pad",
        "Base",
        45,
        15,
        300,
        "Length of each pad on the floor, from the panel's edge.",
        applies=lambda spec: spec.number("panel_relief") > 0.0,
    ),
    length("panel_rail_height", "Rail height", "Base", 70, 20, 300, "Height of the rail, on edge."),
    length(
        "panel_rail_thickness",
        "Rail thickness",
        "Base",
        26,
        12,
        80,
        "Thickness of the rail.",
        step=0.5,
    ),
    length(
        "panel_rail_down",
        "Rail down",
        "Base",
        12,
        0,
        500,
        "From the panels' top edges down to the rail.",
    ),
    length(
        "panel_rail_forward",
        "Rail forward",
        "Base",
        0,
        -400,
        400,
        "How far the rail lies in front of the panels' middle; less than 0 behind it.",
    ),
    choice(
        "panel_tenon",
        "Rail tenon",
        "Base",
        WEDGED,
        (PLAIN, WEDGED),
        "Plain through tenons, or wedged above and below from the outside.",
    ),
    length(
        "panel_tenon_thickness",
        "Rail tenon thickness",
        "Base",
        12,
        5,
        60,
        "Thickness of the rail's tenons.",
        step=0.5,
    ),
    length(
        "panel_shoulder",
        "Rail shoulder",
        "Base",
        8,
        0,
        60,
        "Of the rail's tenons, above and below.",
        step=0.5,
    ),
    length(
        "panel_wedge",
        "Wedge room",
        "Base",
        4,
        2,
        15,
        "How much longer a mortise is outside than inside, at each end: the wedge's thick end.",
        step=0.5,
        applies=is_wedged,
    ),
    length(
        "panel_fit",
        "Rail fit",
        "Base",
        0.2,
        0,
        2,
        "Clearance of the rail in its mortises, both cheeks together.",
        step=0.05,
    ),
)


def _parts(spec: BenchSpec) -> tuple[Part, ...]:
    """The panels, the rail, and its wedges."""
    p, timber = panel_numbers(spec), spec.word("timber")
    panels = [_panel(p, "left", p.left, timber), _panel(p, "right", p.right, timber)]
    if p.middle is not None:
        panels.insert(1, _panel(p, "middle", p.middle - p.thickness / 2.0, timber))
    rail = Part(
        name="rail",
        title="Rail",
        kind="rail",
        material=timber,
        shape=Shape(Blank(p.right - p.left, p.rail_height, p.rail_thickness), ()),
        frame=Frame.of(
            (p.left, p.rail_middle - p.rail_thickness / 2.0, p.rail_top),
            (1.0, 0.0, 0.0),
            (0.0, 0.0, -1.0),
        ),
    )
    wedges = tuple(
        wedge_piece(name, title, timber, p.end(side), high=high)
        for name, title, side, high in _wedges(p)
    )
    return (*panels, rail, *wedges)


def _panel(p: PanelNumbers, side: str, face_x: float, timber: str) -> Part:
    """Face side out (of the middle panel to the left), face edge at the front."""
    if side == "right":
        frame = Frame.of((face_x, p.front, p.ground), _UP, (0.0, 1.0, 0.0))
        low, high = 0.0, p.relief
    else:
        frame = Frame.of((face_x, p.front, p.height), (0.0, 0.0, -1.0), (0.0, 1.0, 0.0))
        low, high = p.height - p.ground - p.relief, p.height - p.ground
    relief = (Notch(low, high, p.pad, p.width - p.pad),) if p.relief > 0.0 else ()
    return Part(
        name=f"panel_foot_{side}",
        title=f"Panel foot, {side}",
        kind="panel foot",
        material=timber,
        shape=Shape(Blank(p.height - p.ground, p.width, p.thickness), relief),
        frame=frame,
    )


def _wedges(p: PanelNumbers) -> tuple[tuple[str, str, str, bool], ...]:
    """Name, title, panel and end of each wedge."""
    if p.wedge_room <= 0.0:
        return ()
    return tuple(
        (f"wedge_{side}_{edge}", f"Wedge, {side} {edge}", side, edge == "upper")
        for side in ("left", "right")
        for edge in ("upper", "lower")
    )


def _joints(spec: BenchSpec, parts: Mapping[str, Part]) -> tuple[Joint, ...]:
    p = panel_numbers(spec)
    rail = parts["rail"]
    joints = [
        through_tenon(f"rail_{side}", rail, parts[f"panel_foot_{side}"], p.end(side))
        for side in ("left", "right")
    ]
    if p.middle is not None:
        holder = parts["panel_foot_middle"]
        joints.append(passed_rail("rail_middle", rail, holder, p.passage(p.middle)))
    joints += [
        wedge(name, parts[name], rail, p.end(side), high=high) for name, _, side, high in _wedges(p)
    ]
    return tuple(joints)


def _derived(spec: BenchSpec) -> tuple[Derived, ...]:
    p = panel_numbers(spec)
    rows = [
        derived_length("panel_foot_width", "Panel width", "Base", p.width, "depth and insets"),
        derived_length(
            "panel_rail_between",
            "Rail between shoulders",
            "Base",
            p.between,
            "length, insets, panel thickness",
        ),
        derived_length(
            "panel_tenon_height",
            "Rail tenon height",
            "Base",
            p.tenon_height,
            "rail height − 2 × rail shoulder",
        ),
    ]
    if p.middle is not None:
        rows.append(
            derived_length(
                "panel_middle_place",
                "Middle panel",
                "Base",
                p.middle,
                "from the left end to its middle; insets, and how far it stands to the right",
            )
        )
    if p.wedge_room > 0.0:
        rows.append(
            derived_angle(
                "panel_wedge_slope",
                "Wedge slope",
                "Base",
                math.degrees(math.atan(p.wedge_room / p.thickness)),
                "wedge room over panel thickness",
            )
        )
    return tuple(rows)


def _snug(_spec: BenchSpec) -> tuple[dict[str, float], ...]:
    return (
        {
            **SNUG_EDGES,
            "panel_middle": 0.0,
            "panel_thickness": 12.0,
            "panel_relief": 0.0,
            "panel_pad": 15.0,
            "panel_rail_height": 20.0,
            "panel_rail_thickness": 12.0,
            "panel_rail_down": 10.0,
            "panel_rail_forward": 0.0,
            "panel_tenon_thickness": 5.0,
            "panel_shoulder": 2.0,
            "panel_wedge": 2.0,
            "panel_fit": 0.2,
        },
    )


def has_panel_feet(spec: BenchSpec) -> bool:
    return base_is(PANEL_FEET, spec)


MEMBER = Member(
    "panel feet",
    PARAMETERS,
    CONSTRAINTS,
    _parts,
    _joints,
    derived=_derived,
    present=has_panel_feet,
    snug=_snug,
    made_into=THE_BASE,
)
