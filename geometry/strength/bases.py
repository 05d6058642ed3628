"""What a base does to the case on it, and what its cross pieces and rails bear.  N, mm, MPa.

The bottom of a case is held down by its uprights and pushed up by the base where that bears on it:
a beam over the uprights, upside down.  A trestle's stretcher is a beam across the depth between its
two legs, weakened in its middle by the rail's mortise.  A rail with room for a foot above it is
stepped on: one load in its middle, and one beside its tenon.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from geometry.bench.base_numbers import base_numbers
from geometry.bench.bridled_legs import stretcher_words
from geometry.bench.case_numbers import case_numbers
from geometry.bench.four_leg_numbers import CORNERS, four_legs
from geometry.bench.overall import (
    CASE,
    CROSSED,
    FOUR_LEGS,
    PANEL_BENCH,
    PANEL_FEET,
    TRESTLES,
    base_is,
)
from geometry.bench.panel_numbers import panel_numbers
from geometry.bench.seat_rail_numbers import seat_rail
from geometry.bench.trestles import rail_numbers
from geometry.design.spec import BenchSpec
from geometry.primitives.frame import Vec3
from geometry.strength.beam import Beam, Floats, respond
from geometry.strength.legs import greatest_forces
from geometry.strength.line import BENDING, HOUSED, SHEAR
from geometry.strength.loads import NEAREST, Case, Loads
from geometry.strength.seats import case_supports
from geometry.strength.stuff import SHEAR_PEAK, Section, Stuff, stuff_of

FOOT_ROOM = 100.0  # mm over a rail that a foot needs to stand on it; common practice, no source
TENON = "shearing its tenon"
_STEPS = 40


@dataclass(frozen=True, slots=True)
class Borne:
    """``share`` of a part's strength in %, in what way, under ``force`` N, and where."""

    part: str
    share: float
    way: str
    force: float
    words: str
    place: Vec3


def forces_on_lines(
    xs: tuple[float, ...], length: float, loads: Loads, own: float
) -> tuple[tuple[float, Case], ...]:
    """The greatest force on each of two or more lines across the bench, at ``xs`` ascending.

    By the lever between neighbours, no more than all that sit; ``own`` weight shared alike.
    """
    at = np.array(xs)
    best: list[tuple[float, Case]] = []
    for case in loads.cases(length):
        inside = min(max(NEAREST, case.half), length / 2.0)
        middles = np.linspace(inside, length - inside, _STEPS + 1)
        places = middles[:, None] + np.array(case.offsets)
        sums = case.force * _levers(at, places).sum(axis=1)
        for k, most in enumerate(sums.max(axis=0)):
            force = min(float(most), case.whole) + own / len(xs)
            if k == len(best):
                best.append((force, case))
            elif force > best[k][0]:
                best[k] = (force, case)
    return tuple(best)


def _levers(at: Floats, places: Floats) -> Floats:
    """What of a load at each place goes to each line, (cases, loads, lines); beyond the outer lines
    they lift each other."""
    span = np.clip(np.searchsorted(at, places) - 1, 0, len(at) - 2)
    along = (places - at[span]) / (at[span + 1] - at[span])
    lines = np.arange(len(at))
    left = (span[..., None] == lines) * (1.0 - along)[..., None]
    right = (span[..., None] + 1 == lines) * along[..., None]
    return np.asarray(left + right)


# --- the bottom of a case -------------------------------------------------------------------------


def bottom(spec: BenchSpec, loads: Loads, own: float) -> Borne | None:
    """The bottom of a case where its base pushes hardest; None where it lies on it all along."""
    if spec.value("seat") != CASE:
        return None
    c = case_numbers(spec)
    found = [
        _pushed_up(spec, x, y, width, force, case)
        for x, y, width, force, case in _pushes(spec, c.depth, loads, own)
    ]
    return max(found, key=lambda one: one.share, default=None)


def _pushes(
    spec: BenchSpec, depth: float, loads: Loads, own: float
) -> Iterator[tuple[float, float, float, float, Case]]:
    """X, Y, the width of bottom that bears, and the force, at each place the base bears on."""
    if base_is(TRESTLES, spec) or base_is(PANEL_FEET, spec):
        xs = bearing_lines(spec)
        for x, (force, case) in zip(
            xs, forces_on_lines(xs, spec.number("length"), loads, own), strict=True
        ):
            yield x, -depth / 2.0, depth, force, case
    if base_is(CROSSED, spec) or base_is(FOUR_LEGS, spec):
        # A leg in each corner: half of the depth bears it.
        bore = 0.0
        if base_is(FOUR_LEGS, spec) and four_legs(spec).round:
            bore = spec.number("leg_tenon") + spec.number("leg_tenon_fit")
        forces = greatest_forces(spec, loads, own)
        for corner in CORNERS:
            x, y = _leg_place(spec, corner)
            yield (x, y, depth / 2.0 - bore, *forces[f"leg_{corner}"])


def bearing_lines(spec: BenchSpec) -> tuple[float, ...]:
    """X of the middles of trestles or panels."""
    if base_is(TRESTLES, spec):
        b = base_numbers(spec)
        return (b.tip("back_left")[0], b.tip("back_right")[0])
    p = panel_numbers(spec)
    half = p.thickness / 2.0
    middle = () if p.middle is None else (p.middle,)
    return (p.left + half, *middle, p.right - half)


def _leg_place(spec: BenchSpec, corner: str) -> tuple[float, float]:
    """X and Y of the middle of a leg's top."""
    side = 1.0 if corner.endswith("left") else -1.0
    if base_is(FOUR_LEGS, spec):
        n = four_legs(spec)
        x, y = n.place(corner)
        half = 0.0 if n.round else n.size / 2.0
        return x + side * half, y + (-half if corner.startswith("back") else half)
    b = base_numbers(spec)
    x, y = b.tip(corner)
    return x + side * b.leg_top / 2.0, y


def _pushed_up(
    spec: BenchSpec, x: float, y: float, width: float, force: float, case: Case
) -> Borne:
    c = case_numbers(spec)
    stuff = stuff_of(spec.word("sheet" if c.lips[1] > 0.0 else "timber"))
    section = Section(width, c.thickness)
    supports = tuple(case_supports(spec))
    place = min(max(x, 0.0), c.length)
    beam = Beam(
        0.0,
        c.length,
        supports,
        stuff.elasticity * section.inertia,
        stuff.rigidity * section.shear_area,
        marked=(place,),
    )
    response = respond(beam, np.array([[place]]), np.array([force]))
    held = np.isin(response.stations, np.array(supports))
    housed = Section(width, c.thickness - c.housing_depth)
    moment = np.abs(response.moment[0])
    at: Vec3 = (place, y, c.floor)
    bent = float(moment[~held].max()) / section.modulus
    found = _borne("bottom", stuff, bent, force / section.area, force, case.words, at)
    over = 100.0 * float(moment[held].max()) / housed.modulus / stuff.rupture
    # What breaks it goes before what only cracks it.
    if found.share >= 100.0 or over <= found.share:
        return found
    return Borne("bottom", over, HOUSED, force, case.words, at)


def _borne(
    part: str,
    stuff: Stuff,
    bent: float,
    across: float,
    force: float,
    words: str,
    place: Vec3,
) -> Borne:
    """The worse of a bending stress and of a mean shear, in MPa."""
    shares = {BENDING: bent / stuff.rupture}
    if stuff.shear is not None:
        shares[SHEAR] = SHEAR_PEAK * across / stuff.shear
    way = max(shares, key=lambda name: shares[name])
    return Borne(part, 100.0 * shares[way], way, force, words, place)


# --- trestles and rails ---------------------------------------------------------------------------


def trestle_stretchers(spec: BenchSpec, loads: Loads, own: float) -> tuple[Borne, ...]:
    """Both stretchers of a bench on trestles, those who sit all at their middles."""
    if not base_is(TRESTLES, spec):
        return ()
    b, r, stuff = base_numbers(spec), rail_numbers(spec), stuff_of(spec.word("timber"))
    forces = forces_on_lines(bearing_lines(spec), spec.number("length"), loads, own)
    pairs = sorted(b.pairs, key=lambda pair: stretcher_words(b, *pair)[0])
    found = []
    for pair, (force, case) in zip(pairs, forces, strict=True):
        (x, back), (_, front) = sorted((b.tip(corner) for corner in pair), key=lambda t: -t[1])
        span = back - front - b.leg_top / b.cosine
        cut = r.tenon_height + r.fit
        modulus = b.thickness * (b.stretcher_height**3 - cut**3) / (6.0 * b.stretcher_height)
        area = b.thickness * (b.stretcher_height - cut)
        found.append(
            _borne(
                stretcher_words(b, *pair)[0],
                stuff,
                force * span / 4.0 / modulus,
                force / 2.0 / area,
                force,
                case.words,
                (x, (back + front) / 2.0, b.height),
            )
        )
    return tuple(found)


@dataclass(frozen=True, slots=True)
class _Rail:
    """A rail to step on: clear length, section, its tenon's section, and where its middle is."""

    span: float
    section: Section
    tenon: float
    place: Vec3


def stepped_on(spec: BenchSpec, force: float) -> Borne | None:
    """The rail of a base or of a panel bench under somebody who steps on it; None without room."""
    rail = _rail(spec)
    if rail is None:
        return None
    stuff = stuff_of(spec.word("timber"))
    assert stuff.shear is not None, "a rail is timber"
    bent = force * rail.span / 4.0 / rail.section.modulus / stuff.rupture
    cut = SHEAR_PEAK * force / rail.tenon / stuff.shear
    way, share = max(((BENDING, bent), (TENON, cut)), key=lambda row: row[1])
    return Borne("rail", 100.0 * share, way, force, "", rail.place)


def _rail(spec: BenchSpec) -> _Rail | None:
    if base_is(PANEL_FEET, spec):
        p = panel_numbers(spec)
        if p.height - p.rail_top < FOOT_ROOM:
            return None
        inner = [p.left + p.thickness, p.right - p.thickness]
        marks = inner if p.middle is None else [inner[0], p.middle, inner[1]]
        span = max(b - a for a, b in pairwise(marks))
        return _Rail(
            span,
            Section(p.rail_thickness, p.rail_height),
            p.tenon_thickness * p.tenon_height,
            ((p.left + p.right) / 2.0, p.rail_middle, p.rail_top),
        )
    if spec.value("seat") == PANEL_BENCH:
        r = seat_rail(spec)
        if r.down < FOOT_ROOM:
            return None
        return _Rail(
            r.inside[1] - r.inside[0],
            Section(r.thickness, r.height),
            4.0 * r.half_grain * r.half_cross,
            ((r.inside[0] + r.inside[1]) / 2.0, -r.middle, r.top),
        )
    return None
