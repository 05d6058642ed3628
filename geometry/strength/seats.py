"""What is sat on as beams: the seat of every form over its bearings on every base.

Bench coordinates, mm.  A load near the front (or back) edge of a seat that lies on rails along both
edges goes to the nearer one by the lever; else the seat's whole depth carries.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from functools import lru_cache

from geometry.bench.apron_numbers import apron_numbers
from geometry.bench.base_numbers import base_numbers
from geometry.bench.bridled_legs import stretcher_words
from geometry.bench.case_numbers import case_numbers
from geometry.bench.feet_numbers import has_feet
from geometry.bench.foot_places import foot_places
from geometry.bench.four_leg_numbers import four_legs
from geometry.bench.lid import lid_lip
from geometry.bench.lid_box_numbers import lid_box
from geometry.bench.overall import (
    CASE,
    CROSSED,
    FOUR_LEGS,
    LID_BOX,
    PANEL_BENCH,
    PANEL_FEET,
    PLINTH,
    SLAB,
    TRESTLES,
    seat_height,
)
from geometry.bench.panel_ends_numbers import panel_ends, panels_of_sheet
from geometry.bench.panel_numbers import panel_numbers
from geometry.bench.partitions import uprights
from geometry.bench.plinth import PlinthNumbers, plinth_numbers
from geometry.bench.seat_rail_numbers import seat_rail
from geometry.design.spec import BenchSpec
from geometry.strength.line import Line, Piece
from geometry.strength.loads import NEAREST
from geometry.strength.stuff import Section
from shared.tolerances import COPLANAR

_PLACES_ON_PLINTH = 7  # supports taken along a board that the seat lies on all along


@lru_cache(maxsize=64)
def seat_lines(spec: BenchSpec) -> tuple[Line, ...]:
    """The beams that somebody sits on; the first is that of the seat itself."""
    return _SEATS[spec.word("seat")](spec)


def _board(spec: BenchSpec, width: float, at_supports: Section | None = None) -> Piece:
    """A lipping is left out, as it may be but a band: the sheet is taken as wide as the seat."""
    section = Section(width, spec.number("seat_thickness"))
    material = spec.word("sheet" if panels_of_sheet(spec) else "timber")
    return Piece("seat", material, section, section, at_supports or section)


def _line(
    spec: BenchSpec,
    pieces: tuple[Piece, ...],
    supports: list[float],
    *,
    ends: tuple[float, float] | None = None,
    y: float | None = None,
    share: float = 1.0,
) -> Line:
    """Supports beyond the seat's ends carry it at its ends."""
    low, high = ends or (0.0, spec.number("length"))
    held = sorted({min(max(x, low), high) for x in supports})
    middle = -spec.number("depth") / 2.0
    return Line(
        pieces, low, high, tuple(held), middle if y is None else y, seat_height(spec), share
    )


# --- cases, boxes, panel benches ------------------------------------------------------------------


def case_supports(spec: BenchSpec) -> list[float]:
    """X of the middles of uprights and end panels."""
    c = case_numbers(spec)
    found = [at.x_left + c.partition_thickness / 2.0 for at in uprights(c)]
    if c.left.mitred:
        found.insert(0, c.thickness / 2.0)
    if c.right.mitred:
        found.append(c.length - c.thickness / 2.0)
    return found


def _case(spec: BenchSpec) -> tuple[Line, ...]:
    """The top over its uprights, whose housings weaken it there."""
    c = case_numbers(spec)
    whole = Section(c.depth, c.thickness)
    housed = Section(c.depth, c.thickness - c.housing_depth)
    # A lipping is left out, as it may be but a band.
    material = spec.word("sheet" if c.lips[0] > 0.0 else "timber")
    return (_line(spec, (Piece("top", material, whole, whole, housed),), case_supports(spec)),)


def _lid(spec: BenchSpec) -> tuple[Line, ...]:
    """The back half of the lid between ends and hinges; its front half lies on the box's front."""
    b = lid_box(spec)
    material = spec.word("sheet" if lid_lip(spec) > 0.0 else "timber")
    half = Section((b.lid_back - b.lid_front) / 2.0, b.lid)
    t = b.thickness
    hinges = [x + b.hinge_length / 2.0 for x in b.hinge_starts()]
    wall = -b.depth + t / 2.0
    return (
        _line(
            spec,
            (Piece("lid", material, half, half, half),),
            [t / 2.0, *hinges, b.length - t / 2.0],
            ends=(-b.over_ends, b.length + b.over_ends),
            y=b.lid_back,
            share=_lever(b.lid_back - NEAREST, b.lid_back, wall),
        ),
    )


def _panel_bench(spec: BenchSpec) -> tuple[Line, ...]:
    """The seat over its two ends, with the rail where that is glued under it."""
    n = panel_ends(spec)
    half = n.thickness / 2.0
    housed = Section(n.depth, n.seat_thickness - n.housing_depth)
    pieces = [_board(spec, n.depth, housed)]
    r = seat_rail(spec)
    if r.down < COPLANAR:
        rail = Section(r.thickness, r.height)
        pieces.append(Piece("rail", spec.word("timber"), rail, rail, rail))
    supports = [n.left.inside - half, n.right.inside + half]
    return (_line(spec, tuple(pieces), supports, ends=n.seat_ends),)


# --- slabs, by base -------------------------------------------------------------------------------


def _slab(spec: BenchSpec) -> tuple[Line, ...]:
    return _SLABS[spec.word("base")](spec)


def _on_trestles(spec: BenchSpec) -> tuple[Line, ...]:
    b = base_numbers(spec)
    supports = [b.tip("back_left")[0], b.tip("back_right")[0]]
    return (_line(spec, (_board(spec, spec.number("depth")),), supports),)


def _on_panels(spec: BenchSpec) -> tuple[Line, ...]:
    p = panel_numbers(spec)
    supports = [p.left + p.thickness / 2.0, p.right - p.thickness / 2.0]
    if p.middle is not None:
        supports.insert(1, p.middle)
    return (_line(spec, (_board(spec, spec.number("depth")),), supports),)


def _on_plinth(spec: BenchSpec) -> tuple[Line, ...]:
    """Carried all along, so that only what stands out over its ends bends; on feet, its front and
    back bend with the seat between them."""
    p = plinth_numbers(spec)
    if has_feet(spec):
        return _on_footed_plinth(spec, p)
    low, high = p.left + p.thickness / 2.0, p.right - p.thickness / 2.0
    step = (high - low) / (_PLACES_ON_PLINTH - 1)
    supports = [low + k * step for k in range(_PLACES_ON_PLINTH)]
    return (_line(spec, (_board(spec, spec.number("depth")),), supports),)


def _on_footed_plinth(spec: BenchSpec, p: PlinthNumbers) -> tuple[Line, ...]:
    """As on aprons: half of the seat and one board on edge, from foot to foot."""
    half, depth = p.thickness / 2.0, spec.number("depth")
    board = Section(p.thickness, p.height - p.ground)
    feet = {place.name: place.middle[0] for place in foot_places(spec)}
    rows = {"front": p.front + half, "back": p.back - half}
    loads = {"front": NEAREST - depth, "back": -NEAREST}
    found = []
    for side, other in (("front", "back"), ("back", "front")):
        pieces = (
            _board(spec, depth / 2.0),
            Piece(f"plinth_{side}", spec.word("timber"), board, board, board),
        )
        share = _lever(loads[side], rows[side], rows[other])
        supports = [feet[f"{side}_left"], feet[f"{side}_right"]]
        found.append(_line(spec, pieces, supports, y=rows[side], share=share))
    return tuple(found)


def _on_crossed(spec: BenchSpec) -> tuple[Line, ...]:
    """The seat and both stretchers, which run aslant and are lapped where they cross.

    A beam aslant by α is cos³ α as stiff along the bench, and bears cos α as much.
    """
    b = base_numbers(spec)
    pieces = [_board(spec, spec.number("depth"))]
    for first, second in b.pairs:
        (x0, y0), (x1, y1) = b.tip(first), b.tip(second)
        cosine = abs(x1 - x0) / math.hypot(x1 - x0, y1 - y0)
        t, h = b.thickness, b.stretcher_height
        pieces.append(
            Piece(
                stretcher_words(b, first, second)[0],
                spec.word("timber"),
                Section(t * cosine**3, h),
                Section(t * cosine, h / 2.0),
                Section(t * cosine, h),
            )
        )
    leg = b.leg_top / b.cosine / 2.0
    left, right = (
        [b.tip(f"{fore}_{side}")[0] for fore in ("back", "front")] for side in ("left", "right")
    )
    return (_line(spec, tuple(pieces), [sum(left) / 2.0 + leg, sum(right) / 2.0 - leg]),)


def _on_legs(spec: BenchSpec) -> tuple[Line, ...]:
    n = four_legs(spec)
    depth, thickness = spec.number("depth"), spec.number("seat_thickness")
    if n.round:
        bore = spec.number("leg_tenon") + spec.number("leg_tenon_fit")
        bored = Section(max(depth - 2.0 * bore, 1.0), thickness)
        return (_line(spec, (_board(spec, depth, bored),), [n.left, n.right]),)
    a = apron_numbers(spec)
    half = n.size / 2.0
    lean = math.cos(math.radians(n.rake_deg))
    rail = Section(a.thickness / lean, a.height)
    rows = {"front": n.front + half, "back": n.back - half}
    loads = {"front": NEAREST - depth, "back": -NEAREST}
    found = []
    for side, other in (("front", "back"), ("back", "front")):
        pieces = (
            _board(spec, depth / 2.0),
            Piece(f"apron_{side}", spec.word("timber"), rail, rail, rail),
        )
        share = _lever(loads[side], rows[side], rows[other])
        supports = [n.left + half, n.right - half]
        found.append(_line(spec, pieces, supports, y=rows[side], share=share))
    return tuple(found)


def _lever(load: float, near: float, far: float) -> float:
    """What of a load at a place goes to the nearer of two lines, no less than half of it."""
    return max(0.5, abs(load - far) / abs(near - far))


_SEATS: dict[str, Callable[[BenchSpec], tuple[Line, ...]]] = {
    CASE: _case,
    SLAB: _slab,
    PANEL_BENCH: _panel_bench,
    LID_BOX: _lid,
}
_SLABS: dict[str, Callable[[BenchSpec], tuple[Line, ...]]] = {
    CROSSED: _on_crossed,
    TRESTLES: _on_trestles,
    FOUR_LEGS: _on_legs,
    PLINTH: _on_plinth,
    PANEL_FEET: _on_panels,
}
