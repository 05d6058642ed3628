"""Lippings and edge bands on the back edges of the case's boards of sheet.

They are glued on before anything is cut: the rebate for the back and the housings, which begin at
the back edges, are then routed through lipping and sheet alike.  One that the rebate would narrow
from end to end is as wide as what is left of it.  They turn a mitred corner with the boards, and
lap over lippings on open ends.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import replace
from itertools import product

from geometry.bench.back import holder_of, lipped_rebate
from geometry.bench.board_lippings import (
    BOARD_LIPPING,
    Lip,
    corner_of,
    has_board_lippings,
    lips,
    mitre_cut,
)
from geometry.bench.case_numbers import LEFT, LIP_READS, CaseNumbers, case_numbers
from geometry.bench.constraint import Constraint, rule
from geometry.bench.lipped import LIPPED, EdgeOf, edge_strip, strip_measures, strip_name
from geometry.bench.member import Member
from geometry.bench.openings import SHELF, filled_with
from geometry.bench.partitions import uprights
from geometry.bench.rest_parameters import has_rest, stands_behind
from geometry.bench.shelves import shelf_front
from geometry.cuts.cut import Cut
from geometry.cuts.notch import Notch
from geometry.design.joint import Joint
from geometry.design.part import Part, Shape
from geometry.design.spec import BenchSpec
from geometry.joints.glued_faces import glued_faces
from geometry.joints.marking import span
from geometry.joints.mitred_strips import mitred_strips
from geometry.primitives.frame import Vec3
from shared.tolerances import COPLANAR
from shared.units import length_mark

_ROOT = math.sqrt(0.5)
_FIRST = "glued on before its board is rebated and housed"


def _posts(spec: BenchSpec) -> float:
    """Posts behind the seat are screwed to the back edges of top and bottom."""
    c = case_numbers(spec)
    lipped = c.back_lip("top") > 0.0 or c.back_lip("bottom") > 0.0
    return -1.0 if lipped and has_rest(spec) and stands_behind(spec) else 1.0


CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "board_lip_posts",
        f"{LIP_READS} back_rest post_fixing",
        _posts,
        "posts behind the seat would be screwed to the back lippings of top and bottom: tenon them "
        "into the seat, or leave the back edges without",
    ),
)


def has_back_lippings(spec: BenchSpec) -> bool:
    return has_board_lippings(spec) and case_numbers(spec).lipped_back


def _parts(spec: BenchSpec) -> tuple[Part, ...]:
    return tuple(_strip(spec, lip) for lip in lips(spec))


def _strip(spec: BenchSpec, lip: Lip) -> Part:
    """Its y runs from the outside face in."""
    strip = edge_strip(lip.core, EdgeOf.BACK, lip.thickness, lip.run, spec.word("timber"))
    less = _narrowed(case_numbers(spec), lip.core.name)
    wide = strip.shape.blank.width - less
    shape = Shape(replace(strip.shape.blank, width=round(wide, 9)), ())
    return replace(strip, kind=BOARD_LIPPING, shape=shape, notes=(_note(less),))


def _note(less: float) -> str:
    if less <= 0.0:
        return _FIRST
    left = length_mark(round(less, 9))
    return f"glued on flush with the outside before its board is housed, {left} left for the rebate"


def _narrowed(c: CaseNumbers, name: str) -> float:
    """What the rebate takes of a lipping's width from end to end."""
    through = name.startswith("end_panel") or (c.left.mitred and c.right.mitred)
    return c.rebate_depth if through and holder_of(c, name) == name else 0.0


def _joints(spec: BenchSpec, parts: Mapping[str, Part]) -> tuple[Joint, ...]:
    c, found = case_numbers(spec), {lip.core.name: lip for lip in lips(spec)}
    return (*(_glued(c, lip, parts) for lip in found.values()), *_turned(c, found, parts))


def _glued(c: CaseNumbers, lip: Lip, parts: Mapping[str, Part]) -> Joint:
    """On all of the edge that is not mitred away; what the rebate leaves of it stays glued."""
    core, strip = parts[lip.core.name], parts[strip_name(lip.core.name, EdgeOf.BACK)]
    sizes = core.shape.blank
    whole = sizes.width + lip.behind + lip.thickness
    lies = _edge(lip, core, _narrowed(c, core.name))
    measures = strip_measures(core, strip, lies, whole)
    taken = c.rebate_depth if holder_of(c, core.name) == core.name else 0.0
    left = _edge(lip, core, taken)
    return glued_faces(strip.name, LIPPED, strip, core, left, strip.frame.z_axis, measures)


def _edge(lip: Lip, core: Part, low: float) -> tuple[Vec3, ...]:
    """Corners of a back edge, from ``low`` below the inside face to the outside."""
    t, long = core.shape.blank.thickness, core.shape.blank.length
    near, far = (t - low if lip.low else 0.0), (long - t + low if lip.high else long)
    places = ((near, low), (far, low), (long, t), (0.0, t))
    return tuple(core.frame.to_bench((x, 0.0, z)) for x, z in places)


def _turned(c: CaseNumbers, found: Mapping[str, Lip], parts: Mapping[str, Part]) -> Iterator[Joint]:
    """Where lippings meet in a mitre, or one of them meets the board that has none."""
    for end, where in product((c.left, c.right), ("top", "bottom")):
        names = (where, f"end_panel_{end.side}")
        if not end.mitred or not any(name in found for name in names):
            continue
        first, second = (
            parts[strip_name(name, EdgeOf.BACK) if name in found else name] for name in names
        )
        lip = max(found[name].thickness for name in names if name in found)
        cut_first, cut_second = (
            mitre_cut(found[name], part.frame, low=corner_of(name, low=True) == (end.side, where))
            if name in found
            else None
            for name, part in zip(names, (first, second), strict=True)
        )
        sx, sz = (-1.0 if end.side == LEFT else 1.0), (-1.0 if where == "top" else 1.0)
        yield mitred_strips(
            f"mitre_back_lipping_{where}_{end.side}",
            (first, second),
            (cut_first, cut_second),
            _meeting(c, end.side, where, lip),
            (sx * _ROOT, 0.0, sz * _ROOT),
        )


def _meeting(c: CaseNumbers, side: str, where: str, lip: float) -> tuple[Vec3, ...]:
    """What the rebate leaves of a mitre, from its outside arris inward."""
    inward = c.thickness - c.rebate_depth
    x, dx = (0.0, inward) if side == LEFT else (c.length, -inward)
    z, dz = (c.top, -inward) if where == "top" else (c.floor, inward)
    back = 0.0 - lip
    return ((x, 0.0, z), (x, back, z), (x + dx, back, z + dz), (x + dx, 0.0, z + dz))


def _cuts(spec: BenchSpec, part: Part) -> tuple[Cut, ...]:
    """What is routed through lipping and sheet, as far as it lies in the lipping."""
    if part.kind != BOARD_LIPPING:
        return ()
    c = case_numbers(spec)
    names = (lip.core.name for lip in lips(spec))
    return tuple(
        cut
        for name in names
        if part.name == strip_name(name, EdgeOf.BACK)
        for cut in _routed(spec, c, name, part)
    )


def _routed(spec: BenchSpec, c: CaseNumbers, name: str, strip: Part) -> Iterator[Cut]:
    narrowed, wide = _narrowed(c, name), strip.shape.blank.width
    if holder_of(c, name) == name and narrowed <= 0.0:
        yield lipped_rebate(c, name, strip)
    half = c.housing_fit / 2.0
    for low, high, deep in _housings(spec, c, name):
        x_low, x_high = span(strip, 0, _along(name, low - half), _along(name, high + half))
        if deep > narrowed + COPLANAR:
            yield Notch(x_low, x_high, wide + narrowed - deep, wide)


def _housings(spec: BenchSpec, c: CaseNumbers, name: str) -> Iterator[tuple[float, float, float]]:
    """From where to where along a board of the bench something is housed in it, and how deep."""
    if name in ("top", "bottom"):
        for at in uprights(c):
            yield at.x_left, at.x_left + c.partition_thickness, c.housing_depth
        return
    for opening in filled_with(spec, SHELF):
        if name in (opening.left, opening.right):
            _, low, high = shelf_front(spec, opening)
            yield low, high, spec.number("shelf_housing_depth")


def _along(name: str, place: float) -> Vec3:
    return (place, 0.0, 0.0) if name in ("top", "bottom") else (0.0, 0.0, place)


MEMBER = Member(
    "back lippings",
    (),
    CONSTRAINTS,
    _parts,
    _joints,
    _cuts,
    present=has_back_lippings,
)
