"""The rails of each form of base, and of a panel bench: where they may be eased.

Each form says which of a rail's long arrises lie free, between which shoulders, and how large a
moulding may be that runs through into its joints.  Upper arrises that carry the bench do not lie
free.  mm.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

from geometry.bench.apron_numbers import ENDS, apron_numbers, tenon_at
from geometry.bench.aprons import has_aprons
from geometry.bench.base_numbers import DIAGONALS, base_numbers, crossing, outward
from geometry.bench.bridled_legs import has_bridled_legs, stretcher_words
from geometry.bench.crossed_base import has_crossed_base
from geometry.bench.panel_ends_numbers import has_panel_ends
from geometry.bench.panel_feet import has_panel_feet
from geometry.bench.panel_numbers import panel_numbers
from geometry.bench.rail_runs import (
    Arris,
    Shoulder,
    Stretch,
    face_edge_arrises,
    face_side_arrises,
    far_edge_arrises,
    reverse_arrises,
    tenon_shoulder,
)
from geometry.bench.seat_rail_numbers import HOUSED, seat_rail
from geometry.bench.trestles import has_trestles, rail_numbers
from geometry.cuts.cut import Blank
from geometry.design.part import Part
from geometry.design.spec import BenchSpec
from geometry.joints.angled_lap import LapNumbers, lap_notch
from geometry.joints.through_tenon import ThroughTenon
from shared.tolerances import COPLANAR

NOWHERE = -1.0  # the size of what may run through where nothing may


@dataclass(frozen=True, slots=True)
class RailForm:
    """Rails that are alike: those of ``kind``.

    ``upper_free`` tells whether their upper arrises lie free too; ``reads`` is what all the
    following depend on.  ``through`` is the largest moulding that may run into the joints,
    ``NOWHERE`` where it has to stop before them.  Rails stand on edge but for those that say which
    of their arrises are ``lower`` and ``upper``.
    """

    name: str
    kind: str
    present: Callable[[BenchSpec], bool]
    reads: str
    narrowest: Callable[[BenchSpec], float]
    through: Callable[[BenchSpec], float]
    stretches: Callable[[BenchSpec, Part], tuple[Stretch, ...]]
    upper_free: Callable[[BenchSpec], bool]
    lower: Callable[[Blank], tuple[Arris, Arris]] = far_edge_arrises
    upper: Callable[[Blank], tuple[Arris, Arris]] = face_edge_arrises

    def arrises(self, spec: BenchSpec, part: Part, *, upper_too: bool) -> tuple[Arris, ...]:
        """The lower ones, and the upper ones if asked for and free."""
        found = self.lower(part.shape.blank)
        if upper_too and self.upper_free(spec):
            return (*found, *self.upper(part.shape.blank))
        return found


def _carrying(_spec: BenchSpec) -> bool:
    return False


def _square(part: Part, ends: tuple[ThroughTenon, ThroughTenon]) -> Stretch:
    """Between two square shoulders."""
    first, last = (Shoulder(part.frame.to_local(at.face)[0]) for at in ends)
    return first, last


# Stretchers


def _stretcher_stretches(spec: BenchSpec, part: Part) -> tuple[Stretch, ...]:
    """Between the legs, and on either side of a lap."""
    b = base_numbers(spec)
    first, second = next(pair for pair in b.pairs if stretcher_words(b, *pair)[0] == part.name)
    ends = []
    for corner, way in ((first, -1.0), (second, 1.0)):
        out = outward(b, corner)
        x, y = b.tip(corner)
        back = b.leg_top / b.cosine
        inner = (x - out[0] * back, y - out[1] * back, b.height)
        ends.append(Shoulder(part.frame.to_local(inner)[0], way * b.tangent))
    if not b.crossed:
        return ((ends[0], ends[1]),)
    place = crossing(b)
    assert place is not None, "the constraints keep the stretchers crossed"
    other = next(pair for pair in DIAGONALS if pair != (first, second))
    at = LapNumbers((*place, b.height), b.stretcher_height, b.thickness, b.lap_fit)
    notch = lap_notch(part, outward(b, other[1]), at, from_top=True)
    slope = (notch.x_reverse - notch.x_face) / b.thickness
    low, high = (
        Shoulder(notch.x_face + side * notch.half_span, 0.0, slope) for side in (-1.0, 1.0)
    )
    return ((ends[0], low), (high, ends[1]))


STRETCHERS = RailForm(
    "stretcher edges",
    "stretcher",
    has_bridled_legs,
    "base base_thickness stretcher_height tenon_rule tenon_thickness bridle_fit",
    narrowest=lambda spec: min(spec.number("base_thickness"), spec.number("stretcher_height")),
    through=lambda spec: NOWHERE if has_crossed_base(spec) else base_numbers(spec).mortise_wall,
    stretches=_stretcher_stretches,
    upper_free=_carrying,
)


# The rails of trestles, of panel feet and of a panel bench


def _trestle_rail(spec: BenchSpec, part: Part) -> tuple[Stretch, ...]:
    r = rail_numbers(spec)
    return (_square(part, (r.end("left"), r.end("right"))),)


TRESTLE_RAIL = RailForm(
    "trestle rail edges",
    "rail",
    has_trestles,
    "rail_width rail_height rail_shoulder rail_tenon_height rail_fit",
    narrowest=lambda spec: min(spec.number("rail_width"), spec.number("rail_height")),
    through=lambda spec: max(
        spec.number("rail_shoulder"),
        (spec.number("rail_height") - spec.number("rail_tenon_height") - spec.number("rail_fit"))
        / 2.0,
    ),
    stretches=_trestle_rail,
    upper_free=lambda _spec: True,
    lower=reverse_arrises,
    upper=face_side_arrises,
)


def _panel_rail(spec: BenchSpec, part: Part) -> tuple[Stretch, ...]:
    """Between the panels; it passes whole through one in the middle."""
    p = panel_numbers(spec)
    first, last = _square(part, (p.end("left"), p.end("right")))
    if p.middle is None:
        return ((first, last),)
    middle, half = p.middle - part.frame.origin[0], p.thickness / 2.0
    return ((first, Shoulder(middle - half)), (Shoulder(middle + half), last))


def _panel_rail_through(spec: BenchSpec) -> float:
    p = panel_numbers(spec)
    if p.middle is not None:
        return NOWHERE
    return max(p.shoulder, (p.rail_thickness - p.tenon_thickness - p.fit) / 2.0)


PANEL_RAIL = RailForm(
    "panel rail edges",
    "rail",
    has_panel_feet,
    "panel_count panel_rail_height panel_rail_thickness panel_tenon_thickness panel_shoulder "
    "panel_fit",
    narrowest=lambda spec: min(
        spec.number("panel_rail_height"), spec.number("panel_rail_thickness")
    ),
    through=_panel_rail_through,
    stretches=_panel_rail,
    upper_free=lambda spec: spec.number("panel_rail_down") > COPLANAR,
)


def _seat_rail(spec: BenchSpec, part: Part) -> tuple[Stretch, ...]:
    r = seat_rail(spec)
    return (_square(part, (r.end("left"), r.end("right"))),)


def _seat_rail_through(spec: BenchSpec) -> float:
    r = seat_rail(spec)
    if r.joint == HOUSED:
        return NOWHERE
    return max(r.height / 2.0 - r.half_grain, r.thickness / 2.0 - r.half_cross - r.fit / 2.0)


SEAT_RAIL = RailForm(
    "seat rail edges",
    "rail",
    has_panel_ends,
    "seat_rail_joint seat_rail_height seat_rail_thickness seat_rail_tenon seat_rail_shoulder "
    "seat_rail_fit",
    narrowest=lambda spec: min(spec.number("seat_rail_height"), spec.number("seat_rail_thickness")),
    through=_seat_rail_through,
    stretches=_seat_rail,
    upper_free=lambda spec: seat_rail(spec).down > COPLANAR,
)


# Aprons


def _apron(spec: BenchSpec, part: Part) -> tuple[Stretch, ...]:
    a, side = apron_numbers(spec), part.name.removeprefix("apron_")
    first, last = (tenon_shoulder(part, tenon_at(a, side, corner)) for corner in ENDS[side])
    return ((first, last),)


def _apron_through(spec: BenchSpec) -> float:
    a = apron_numbers(spec)
    return max(a.shoulder, a.cheeks[0] - a.fit / 2.0)


APRONS = RailForm(
    "apron edges",
    "apron",
    has_aprons,
    "apron_height apron_thickness apron_tenon apron_shoulder apron_fit",
    narrowest=lambda spec: min(spec.number("apron_height"), spec.number("apron_thickness")),
    through=_apron_through,
    stretches=_apron,
    upper_free=_carrying,
)

RAIL_FORMS: tuple[RailForm, ...] = (STRETCHERS, TRESTLE_RAIL, PANEL_RAIL, APRONS, SEAT_RAIL)


def has_rails(spec: BenchSpec) -> bool:
    return any(form.present(spec) for form in RAIL_FORMS)


def behind_blocks(spec: BenchSpec) -> float:
    """How far aprons reach below the corner blocks, along their insides."""
    a = apron_numbers(spec)
    block = spec.number("corner_block_height")
    return min(
        (a.height - block) / math.cos(math.radians(lean))
        + a.thickness * math.tan(math.radians(lean))
        for lean in (a.lean_deg(side) for side in ENDS)
    )
