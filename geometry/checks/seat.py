"""Checks of a seat that is one board: the boards it is glued up from, and how far it bends.

The bending is that of a beam on two supports with the load in the middle: F L^3 / (48 E I)
(Wood Handbook, FPL-GTR-190, table 9-1: k_b = 1/48), I = width x thickness^3 / 12.  The load is the
one that the 2010 ADA Standards ask a bench to bear at any point, 903.6: 250 lbf, 1112 N.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from geometry.bench.base_numbers import base_numbers
from geometry.bench.bench import Bench
from geometry.bench.catalogue import broken_rules, parameter
from geometry.bench.four_leg_numbers import four_legs
from geometry.bench.members import has
from geometry.bench.overall import seat_height
from geometry.bench.panel_ends_numbers import panel_ends
from geometry.bench.panel_numbers import panel_numbers
from geometry.bench.seat_board import board_width
from geometry.bench.seat_rail_numbers import seat_rail
from geometry.checks.check import Check
from geometry.checks.limits_of_handling import WIDEST_BOARD
from geometry.checks.limits_of_loads import SEAT_BENDS, SEAT_LOAD
from geometry.design.finding import Finding, Level, Mend
from geometry.primitives.frame import Vec2
from shared.timber_stiffness import stiffness_of
from shared.tolerances import COPLANAR
from shared.units import length_mark

_STEP = 0.5  # mm, to which the thickness that a mend gives is rounded up


def _wide_board(bench: Bench) -> Iterator[Finding]:
    width, widest = board_width(bench.spec), WIDEST_BOARD.of(bench)
    if width <= widest + 1e-9:
        return
    boards = float(math.ceil(bench.spec.number("depth") / widest))
    mend = Mend(f"Glue it up of {boards:.0f} boards.", (("seat_boards", boards),))
    yield Finding(
        check="wide_seat_board",
        level=Level.THINK_AGAIN,
        message=(
            f"The seat is glued up of boards {length_mark(width)} wide: over "
            f"{length_mark(widest)} each of them cups by itself as it dries."
        ),
        parts=("seat",),
        amount=width,
        limit=widest,
        mend=mend,
    )


def clear_spans(bench: Bench) -> tuple[Vec2, ...]:
    """Where the seat lies free, from X to X; none where a base carries it all along."""
    spec = bench.spec
    if has(spec, "panel ends"):
        n = panel_ends(spec)
        return ((n.left.inside, n.right.inside),)
    if has(spec, "trestles"):
        b = base_numbers(spec)
        half = b.thickness / 2.0
        return ((b.tip("back_left")[0] + half, b.tip("back_right")[0] - half),)
    if has(spec, "panel feet"):
        p = panel_numbers(spec)
        inner, far = p.left + p.thickness, p.right - p.thickness
        if p.middle is None:
            return ((inner, far),)
        half = p.thickness / 2.0
        return ((inner, p.middle - half), (p.middle + half, far))
    if has(spec, "round legs"):
        legs = four_legs(spec)
        return ((legs.left, legs.right),)
    return ()


def _bends(bench: Bench) -> Iterator[Finding]:
    spans = clear_spans(bench)
    if not spans:
        return
    low, high = max(spans, key=lambda span: span[1] - span[0])
    span = high - low
    spec = bench.spec
    elasticity = stiffness_of(spec.word("timber")).elasticity
    width, thickness = spec.number("depth"), spec.number("seat_thickness")
    # A rail glued under the seat bends with it, taken as a board beside it.
    rail = _rail_inertia(bench)
    inertia = width * thickness**3 / 12.0 + rail
    load, limit = SEAT_LOAD.of(bench), span / SEAT_BENDS.of(bench)
    sag = load * span**3 / (48.0 * elasticity * inertia)
    if sag <= limit + 1e-9:
        return
    needed = load * span**3 / (48.0 * elasticity * limit) - rail
    thick = math.ceil((12.0 * needed / width) ** (1.0 / 3.0) / _STEP) * _STEP
    yield Finding(
        check="seat_bends",
        level=Level.THINK_AGAIN,
        message=(
            f"Under somebody heavy the seat bends {length_mark(round(sag, 1))} between its "
            f"supports, which stand {length_mark(round(span, 1))} apart."
        ),
        parts=("seat",),
        place=((low + high) / 2.0, -width / 2.0, seat_height(spec)),
        amount=sag,
        limit=limit,
        mend=_thicker(bench, thick),
    )


def _rail_inertia(bench: Bench) -> float:
    """mm⁴ of a rail on which the seat is glued."""
    if not has(bench.spec, "seat rail"):
        return 0.0
    r = seat_rail(bench.spec)
    return r.thickness * r.height**3 / 12.0 if r.down < COPLANAR else 0.0


def _thicker(bench: Bench, thickness: float) -> Mend | None:
    """A seat of this thickness, where it can be built."""
    if thickness > parameter("seat_thickness").maximum:
        return None
    values: tuple[tuple[str, float | str], ...] = (("seat_thickness", thickness),)
    if broken_rules(bench.spec.changed(dict(values))):
        return None
    return Mend(f"Make it {length_mark(thickness)} thick.", values)


CHECKS: tuple[Check, ...] = (
    Check(
        "wide_seat_board",
        "Wide boards in the seat",
        "A seat that is glued up of wide boards turns hollow as each of them dries. Narrower ones, "
        "laid in turn heart up and heart down, keep it flat. The limit of 200 mm is common "
        "practice, no source.",
        _wide_board,
        ("seat board",),
        limits=(WIDEST_BOARD,),
    ),
    Check(
        "seat_bends",
        "Seat bending between its supports",
        "Reckons the seat as a board on two supports with one load in the middle, the 1112 N that "
        "the 2010 ADA Standards ask of a bench (903.6), with the timber's mean stiffness at 12 % "
        "moisture. More than 1/360 of the span feels weak: common practice, from memory. Not "
        "reckoned where aprons, a plinth or crossed stretchers carry the seat.",
        _bends,
        ("seat board",),
        limits=(SEAT_LOAD, SEAT_BENDS),
    ),
)
