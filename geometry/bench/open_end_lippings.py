"""Lippings and edge bands on the ends of a case's top and bottom of sheet that no panel closes.

Each lies between the lippings in front and behind, which lap over it, and is bevelled with the
front of a bottom that leans.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace

from geometry.bench.board_lippings import BOARD_LIPPING, Lip, has_board_lippings, lips
from geometry.bench.case_numbers import LEFT, LIP_READS, RIGHT, CaseNumbers, case_numbers
from geometry.bench.constraint import Constraint, rule
from geometry.bench.edges import edges_of, reaches_sheet
from geometry.bench.lipped import (
    LIPPED,
    EdgeOf,
    edge_strip,
    end_strip_measures,
    mouldings_on,
    strip_name,
)
from geometry.bench.member import Member
from geometry.cuts.chamfer import Chamfer
from geometry.cuts.cut import Cut
from geometry.cuts.edge_moulding import EdgeMoulding
from geometry.cuts.saw import SawCut
from geometry.design.joint import Joint
from geometry.design.part import Part, Shape
from geometry.design.spec import BenchSpec
from geometry.joints.glued_faces import glued_faces
from geometry.primitives.frame import Frame, Vec3, cross, dot, scale, subtract, unit

LEAST_SHEET = 2.0  # mm beside a housing; common practice, no source
_SIDES = {LEFT: EdgeOf.LEFT, RIGHT: EdgeOf.RIGHT}


def _beside_housings(spec: BenchSpec) -> float:
    """How much more than the least of sheet stays between the housings of set-in partitions and
    the lippings of the ends."""
    c = case_numbers(spec)
    return min(
        (
            end.inset - c.housing_fit / 2.0 - c.end_lip(board, end.side) - LEAST_SHEET
            for end in (c.left, c.right)
            for board in ("top", "bottom")
            if c.end_lip(board, end.side) > 0.0
        ),
        default=1.0,
    )


CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "board_lip_inset",
        f"{LIP_READS} left_inset right_inset housing_fit",
        _beside_housings,
        "less than {2 mm} of sheet would stay between a set-in partition and the end's lipping",
    ),
)


def _open_ends(spec: BenchSpec) -> Iterator[tuple[Lip, str]]:
    """The boards of sheet that have lipped ends, and on which side."""
    c = case_numbers(spec)
    for lip in lips(spec):
        if lip.core.kind != "end panel":
            yield from ((lip, side) for side in _SIDES if c.end_lip(lip.core.name, side) > 0.0)


def has_open_end_lippings(spec: BenchSpec) -> bool:
    return (
        has_board_lippings(spec)
        and case_numbers(spec).lipped_ends
        and any(True for _ in _open_ends(spec))
    )


def _parts(spec: BenchSpec) -> tuple[Part, ...]:
    return tuple(_strip(spec, lip, side) for lip, side in _open_ends(spec))


def _strip(spec: BenchSpec, lip: Lip, side: str) -> Part:
    core, timber = lip.core, spec.word("timber")
    strip = edge_strip(core, _SIDES[side], lip.thickness, (0.0, core.shape.blank.width), timber)
    cuts: tuple[Cut, ...] = ()
    if abs(lip.through) > 0.0:
        cuts = (_turned_cut(core, strip.frame, lip.point(0.0, 0.0, 0.0), (0.0, 1.0, -lip.through)),)
    return replace(strip, kind=BOARD_LIPPING, shape=Shape(strip.shape.blank, cuts))


def _turned_cut(core: Part, frame: Frame, point: Vec3, outward: Vec3) -> SawCut:
    """A plane of the board, on its strip."""
    return SawCut(
        "front bevel",
        frame.to_local(core.frame.to_bench(point)),
        frame.turn_to_local(core.frame.turn_to_bench(unit(outward))),
    )


def _joints(spec: BenchSpec, parts: Mapping[str, Part]) -> tuple[Joint, ...]:
    c = case_numbers(spec)
    return tuple(_glued(c, lip, side, parts) for lip, side in _open_ends(spec))


def _glued(c: CaseNumbers, lip: Lip, side: str, parts: Mapping[str, Part]) -> Joint:
    core, strip = parts[lip.core.name], parts[strip_name(lip.core.name, _SIDES[side])]
    sizes, inward = core.shape.blank, strip.frame.z_axis
    x = 0.0 if dot(inward, core.frame.x_axis) > 0.0 else sizes.length
    corners = tuple(
        core.frame.to_bench(place)
        for place in (
            (x, 0.0, 0.0),
            lip.point(x, 0.0, 0.0),
            lip.point(x, sizes.thickness, 0.0),
            (x, 0.0, sizes.thickness),
        )
    )
    measures = end_strip_measures(core, strip, corners, c.length)
    return glued_faces(strip.name, LIPPED, strip, core, corners, inward, measures)


def _cuts(spec: BenchSpec, part: Part) -> tuple[Cut, ...]:
    """The front edges of the whole board, where they reach past its front lipping."""
    if part.kind != BOARD_LIPPING:
        return ()
    return tuple(
        found
        for lip, side in _open_ends(spec)
        if part.name == strip_name(lip.core.name, _SIDES[side]) and reaches_sheet(spec, lip.core)
        for cut in edges_of(spec, lip.core)
        for found in _on_strip(cut, lip.core, part)
    )


def _on_strip(cut: Chamfer | EdgeMoulding, core: Part, strip: Part) -> tuple[Cut, ...]:
    """The same cut across the strip's end, if it goes so far; a chamfer's flat is sawn there."""
    if isinstance(cut, EdgeMoulding):
        return mouldings_on((cut,), core.frame, strip)
    along = subtract(cut.end.on_face, cut.start.on_face)
    outward = unit(cross(along, subtract(cut.start.on_edge, cut.start.on_face)))
    if dot(outward, subtract(cut.start.arris, cut.start.on_face)) < 0.0:
        outward = scale(outward, -1.0)
    sawn = _turned_cut(core, strip.frame, cut.start.on_face, outward)
    return (replace(sawn, title="chamfer"),)


MEMBER = Member(
    "open end lippings",
    (),
    CONSTRAINTS,
    _parts,
    _joints,
    _cuts,
    present=has_open_end_lippings,
    snug=lambda _spec: ({"board_lip": 0.4},),
)
