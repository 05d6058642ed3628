"""Lippings and edge bands on the front edges of shelves of sheet.

A shelf keeps its finished depth: its core is cut narrower by the lipping.  A lipping fills the
clear width between the uprights; the shelf's notches lie beside it, so it stays in front of the
tongue.  An edge band is a thin lipping.
"""

from __future__ import annotations

from collections.abc import Mapping

from geometry.bench.case_numbers import case_numbers
from geometry.bench.constraint import Constraint, rule
from geometry.bench.lipped import LIPPED, strip_measures
from geometry.bench.member import Member
from geometry.bench.openings import SHELF, Opening, filled_with
from geometry.bench.shelves import has_shelves, lip_of, shelf_front
from geometry.cuts.cut import Blank
from geometry.design.joint import Joint
from geometry.design.parameter import Parameter, length
from geometry.design.part import Part, Shape
from geometry.design.spec import BenchSpec
from geometry.joints.glued_faces import glued_faces
from geometry.primitives.frame import Frame, Vec3

# common practice, no source
LEAST_NOTCH = 0.5  # mm of core in front of a housing's round that the notch still takes

PARAMETERS: tuple[Parameter, ...] = (
    length(
        "shelf_lip",
        "Lipping",
        "Shelves",
        6,
        0.4,
        30,
        "Thickness of the lipping or edge band; the sheet under it is so much narrower.",
        step=0.1,
    ),
)


def notch_length(spec: BenchSpec) -> float:
    """How far behind its front a shelf or a partition is notched."""
    c = case_numbers(spec)
    return c.cover + c.cutter_radius + c.housing_fit / 2.0


CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "lip_notch",
        "shelf_lip housing_cover cutter_diameter housing_fit",
        lambda s: notch_length(s) - LEAST_NOTCH - s.number("shelf_lip"),
        "the lipping would be thicker than the notch in front of the shelf's tongue",
    ),
)


def has_lippings(spec: BenchSpec) -> bool:
    return has_shelves(spec) and lip_of(spec) > 0.0


def _parts(spec: BenchSpec) -> tuple[Part, ...]:
    return tuple(_lipping(spec, at) for at in filled_with(spec, SHELF))


def _lipping(spec: BenchSpec, at: Opening) -> Part:
    """Face side to the front, face edge up."""
    front, low, high = shelf_front(spec, at)
    return Part(
        name=f"lipping_{at.index}",
        title=f"Lipping, {at.title}",
        kind="lipping",
        material=spec.word("timber"),
        shape=Shape(Blank(at.width, high - low, lip_of(spec)), ()),
        frame=Frame.of((at.x_left, -front, high), (1, 0, 0), (0, 0, -1)),
    )


def _joints(spec: BenchSpec, parts: Mapping[str, Part]) -> tuple[Joint, ...]:
    return tuple(_glued(spec, at, parts) for at in filled_with(spec, SHELF))


def _glued(spec: BenchSpec, at: Opening, parts: Mapping[str, Part]) -> Joint:
    front, low, high = shelf_front(spec, at)
    lip = lip_of(spec)
    y = lip - front
    corners: tuple[Vec3, ...] = (
        (at.x_left, y, low),
        (at.x_right, y, low),
        (at.x_right, y, high),
        (at.x_left, y, high),
    )
    core, strip = parts[f"shelf_{at.index}"], parts[f"lipping_{at.index}"]
    measures = strip_measures(core, strip, corners, front - at.back)
    return glued_faces(strip.name, LIPPED, strip, core, corners, (0.0, 1.0, 0.0), measures)


MEMBER = Member(
    "lippings",
    PARAMETERS,
    CONSTRAINTS,
    _parts,
    _joints,
    present=has_lippings,
    snug=lambda _spec: ({"shelf_lip": 0.4},),
)
