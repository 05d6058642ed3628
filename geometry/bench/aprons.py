"""Aprons between four raking and splaying legs: long ones front and back, short ones at the ends.

Each apron leans with its legs: front and back by the rake, the ends by the splay, so that their
faces follow the legs' outsides; the upper edges are bevelled level under what they carry, the
lower edges left square (common practice, no source).  Front and back aprons are parallel to the
legs' front faces, so their shoulders are mitred only; those of the ends are compound.
"""

from __future__ import annotations

from collections.abc import Mapping

from geometry.bench.apron_numbers import (
    ENDS,
    ApronNumbers,
    apron_frame,
    apron_numbers,
    reach,
    tenon_at,
)
from geometry.bench.apron_rules import CONSTRAINTS
from geometry.bench.base_place import SNUG_EDGES
from geometry.bench.derived import Derived, derived_angle, derived_length
from geometry.bench.four_leg_numbers import APRONS
from geometry.bench.member import THE_BASE, Member
from geometry.bench.overall import FOUR_LEGS, base_is
from geometry.cuts.cut import Blank
from geometry.cuts.saw import SawCut
from geometry.design.joint import Joint
from geometry.design.parameter import Parameter, length
from geometry.design.part import Part, Shape
from geometry.design.spec import BenchSpec
from geometry.joints.leaning_tenon import leaning_tenon
from geometry.primitives.frame import Frame

PARAMETERS: tuple[Parameter, ...] = (
    length(
        "apron_height",
        "Apron height",
        "Base",
        60,
        25,
        300,
        "From the top down to the aprons' lower outer arris, level.",
    ),
    length(
        "apron_thickness",
        "Apron thickness",
        "Base",
        22,
        10,
        60,
        "Thickness of the aprons.",
        step=0.5,
    ),
    length(
        "apron_reveal",
        "Apron set back",
        "Base",
        4,
        0,
        60,
        "How far the aprons' outsides lie in from the legs' outer arrises at the top.",
        step=0.5,
    ),
    length(
        "apron_tenon",
        "Apron tenon",
        "Base",
        8,
        4,
        40,
        "Thickness of the aprons' tenons.",
        step=0.5,
    ),
    length(
        "apron_tenon_length",
        "Apron tenon length",
        "Base",
        20,
        8,
        100,
        "Square to the leg's face.",
    ),
    length(
        "apron_shoulder",
        "Apron shoulder",
        "Base",
        10,
        2,
        80,
        "Of the tenons, above and below.",
        step=0.5,
    ),
    length(
        "apron_fit",
        "Apron fit",
        "Base",
        0.2,
        0,
        2,
        "Clearance of a tenon in its mortise, both cheeks together.",
        step=0.05,
    ),
)


def _parts(spec: BenchSpec) -> tuple[Part, ...]:
    a, timber = apron_numbers(spec), spec.word("timber")
    return tuple(_apron(a, side, timber) for side in ENDS)


def _apron(a: ApronNumbers, side: str, timber: str) -> Part:
    first, second = ENDS[side]
    low, high = reach(a, side, first)[0], reach(a, side, second)[1]
    flat = apron_frame(a, side)
    frame = Frame(flat.to_bench((low, 0.0, 0.0)), flat.x_axis, flat.y_axis, flat.z_axis)
    cuts: tuple[SawCut, ...] = ()
    if a.lean_deg(side) > 0.0:
        arris = (0.0, a.top(side), 0.0)
        cuts = (SawCut("bevel", arris, frame.turn_to_local((0.0, 0.0, 1.0))),)
    return Part(
        name=f"apron_{side}",
        title=f"Apron, {side}",
        kind="apron",
        material=timber,
        shape=Shape(Blank(high - low, a.width(side), a.thickness), cuts),
        frame=frame,
    )


def _joints(spec: BenchSpec, parts: Mapping[str, Part]) -> tuple[Joint, ...]:
    a = apron_numbers(spec)
    return tuple(
        leaning_tenon(
            f"apron_{side}_{corner}",
            "apron tenon",
            parts[f"apron_{side}"],
            parts[f"leg_{corner}"],
            tenon_at(a, side, corner),
        )
        for side, corners in ENDS.items()
        for corner in corners
    )


def _derived(spec: BenchSpec) -> tuple[Derived, ...]:
    a = apron_numbers(spec)
    rows = []
    for side, words in (("front", "front and back"), ("right", "ends")):
        first, second = (tenon_at(a, side, corner) for corner in ENDS[side])
        ends = [at.point(at.top, 0.0, 0.0)[0] for at in (first, second)]
        rows += [
            derived_length(
                f"apron_{side}_between",
                f"Aprons {words}, between shoulders",
                "Base",
                ends[1] - ends[0],
                "along the outer upper arris; insets and leg size",
            ),
            derived_length(
                f"apron_{side}_width",
                f"Aprons {words}, width",
                "Base",
                a.width(side),
                "apron height / cos(lean), and the bevel",
            ),
            derived_angle(
                f"apron_{side}_bevel",
                f"Aprons {words}, bevel",
                "Base",
                a.lean_deg(side),
                "of the upper edge from square; the lean",
            ),
            derived_angle(
                f"apron_{side}_mitre",
                f"Aprons {words}, shoulder mitre",
                "Base",
                second.mitre_deg,
                "across the face, from square; rake and splay",
            ),
            derived_angle(
                f"apron_{side}_tilt",
                f"Aprons {words}, shoulder tilt",
                "Base",
                second.tilt_deg,
                "blade tilt from square; rake and splay",
            ),
        ]
    return tuple(rows)


def _snug(_spec: BenchSpec) -> tuple[dict[str, float], ...]:
    return (
        {
            **SNUG_EDGES,
            "splay": 0.0,
            "rake": 0.0,
            "leg_size": 20.0,
            "leg_foot": 10.0,
            "leg_taper_start": 0.0,
            "apron_height": 25.0,
            "apron_thickness": 10.0,
            "apron_reveal": 2.0,
            "apron_tenon": 4.0,
            "apron_tenon_length": 8.0,
            "apron_shoulder": 2.0,
            "apron_fit": 0.2,
        },
    )


def has_aprons(spec: BenchSpec) -> bool:
    return base_is(FOUR_LEGS, spec) and spec.value("leg_joint") == APRONS


MEMBER = Member(
    "aprons",
    PARAMETERS,
    CONSTRAINTS,
    _parts,
    _joints,
    derived=_derived,
    present=has_aprons,
    snug=_snug,
    made_into=THE_BASE,
)
