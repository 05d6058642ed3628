"""What the joints of a base or of panel ends bear when somebody pushes the seat level.  N, mm, MPa.

Method: the feet stand on the floor as on hinges, and what lies on the base, or the seat of a panel
bench, is held as by hinges too: what screws, housings and glue up there hold against turning is
left out.  A push H at the seat then goes down as H / n through each of n uprights, and turns each
of them by H h / n, h from the floor to the underside of what it carries.  For legs in pairs under a
stiff beam this is the portal frame with hinged feet, H h / 2 in each knee (by statics alone, as
both legs are alike).  Crossed stretchers share a push as two forces along their own lines do.

A glued joint is judged as in ``joints``.  A rail's tenon is bent where it enters, and held by the
walls of its mortise, against which it is pressed with 6 M / (d T²), or by the glue on its cheeks,
whichever holds longer.  In an upright panel those walls are end grain and the cheeks side grain; in
a level stretcher it is the other way about, and the cheeks' glue counts for nothing.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from geometry.bench.above import above
from geometry.bench.apron_numbers import ENDS, apron_numbers, tenon_at
from geometry.bench.base_numbers import base_numbers, outward
from geometry.bench.bridled_legs import stretcher_words
from geometry.bench.four_leg_numbers import APRONS, CORNERS
from geometry.bench.overall import CROSSED, FOUR_LEGS, PANEL_FEET, TRESTLES, base_is
from geometry.bench.panel_ends_numbers import has_panel_ends, panel_ends
from geometry.bench.panel_numbers import panel_numbers
from geometry.bench.seat_rail_numbers import seat_rail
from geometry.bench.trestles import rail_numbers
from geometry.design.spec import BenchSpec
from geometry.joints.through_tenon import ThroughTenon
from geometry.strength.joints import BENT, BORE, GLUE, opened_glue, round_modulus
from geometry.strength.stuff import stuff_of

ALONG, ACROSS = "along", "across"

RAIL_BENT, RAIL_WALL = "bending its tenon", "denting the walls of its mortise"


@dataclass(frozen=True, slots=True)
class Racked:
    """Joints that a push ``way`` bears on: a moment in N mm on each, the way the worst of them
    fails first and its share of the strength in %; ``parts`` are those they join."""

    way: str
    parts: tuple[str, ...]
    moment: float
    fails: str
    share: float


def racked(spec: BenchSpec, push: float) -> tuple[Racked, ...]:
    """By direction; none where panels or a plinth's boards are stiff in themselves."""
    if has_panel_ends(spec):
        n, rail = panel_ends(spec), seat_rail(spec)
        moment = push * n.underside / 2.0
        parts = ("rail", "end_left", "end_right")
        tenon = rail.end("left")
        # Of sheet no table says what presses its layers in.
        walls = not n.of_sheet
        return (_tenoned(spec, ALONG, parts, moment, tenon, end_grain=True, walls=walls),)
    return tuple(_of_base(spec, push))


def _of_base(spec: BenchSpec, push: float) -> Iterator[Racked]:
    turning = push * spec.number("base_height")
    if base_is(FOUR_LEGS, spec):
        yield from _four(spec, turning / 4.0)
    elif base_is(CROSSED, spec):
        for way, direction in ((ALONG, (1.0, 0.0)), (ACROSS, (0.0, 1.0))):
            yield _bridled(spec, way, max(_shares_of(spec, direction)) * turning / 2.0)
    elif base_is(TRESTLES, spec):
        rail = rail_numbers(spec)
        yield _bridled(spec, ACROSS, turning / 4.0)
        parts = ("rail", "stretcher_left", "stretcher_right")
        yield _tenoned(spec, ALONG, parts, turning / 2.0, rail.end("left"), end_grain=False)
    elif base_is(PANEL_FEET, spec):
        p = panel_numbers(spec)
        panels = 2 if p.middle is None else 3
        parts = ("rail", "panel_foot_left", "panel_foot_right")
        yield _tenoned(spec, ALONG, parts, turning / panels, p.end("left"), end_grain=True)


def _shares_of(spec: BenchSpec, way: tuple[float, float]) -> tuple[float, float]:
    """How much of a push each of two crossed stretchers bears along its own line."""
    b = base_numbers(spec)
    (ax, ay, _), (bx, by, _) = (outward(b, far) for _, far in b.pairs)
    sine = ax * by - ay * bx
    return (
        abs(way[0] * by - way[1] * bx) / abs(sine),
        abs(ax * way[1] - ay * way[0]) / abs(sine),
    )


def _bridled(spec: BenchSpec, way: str, moment: float) -> Racked:
    b, stuff = base_numbers(spec), stuff_of(spec.word("timber"))
    stress = opened_glue(moment, b.stretcher_height, b.leg_top / b.cosine)
    stretchers = (stretcher_words(b, *pair)[0] for pair in b.pairs)
    parts = (*stretchers, *(f"leg_{corner}" for corner, _ in b.tips))
    return Racked(way, parts, moment, GLUE, 100.0 * stress / _known(stuff.rolling))


def _four(spec: BenchSpec, moment: float) -> Iterator[Racked]:
    """Four legs, alike in their joints; each direction has its own pair of aprons."""
    stuff, legs = stuff_of(spec.word("timber")), tuple(f"leg_{corner}" for corner in CORNERS)
    if spec.value("leg_joint") != APRONS:
        board, diameter = above(spec), spec.number("leg_tenon")
        shares = {
            BENT: moment / round_modulus(diameter) / stuff.rupture,
            BORE: 6.0 * moment / (diameter * board.thickness**2) / _known(stuff.denting),
        }
        for way in (ALONG, ACROSS):
            yield _worst(way, (*legs, board.part), moment, shares)
        return
    a = apron_numbers(spec)
    for way, sides in ((ALONG, ("front", "back")), (ACROSS, ("left", "right"))):
        at = tenon_at(a, sides[0], ENDS[sides[0]][0])
        stress = opened_glue(moment, at.y_high - at.y_low, a.tenon_length)
        aprons = tuple(f"apron_{side}" for side in sides)
        yield _worst(way, (*aprons, *legs), moment, {GLUE: stress / _known(stuff.rolling)})


def _tenoned(
    spec: BenchSpec,
    way: str,
    parts: tuple[str, ...],
    moment: float,
    tenon: ThroughTenon,
    *,
    end_grain: bool,
    walls: bool = True,
) -> Racked:
    """A rail's tenon in an upright panel (``end_grain`` above and below it) or in a stretcher;
    without ``walls`` only the glue on its cheeks is known to hold it."""
    stuff = stuff_of(spec.word("timber"))
    grain, cross = 2.0 * tenon.half_grain, 2.0 * tenon.half_cross
    high, wide = (grain, cross) if end_grain else (cross, grain)
    wall = _known(stuff.crushing if end_grain else stuff.denting)
    shares = {
        RAIL_BENT: moment / (wide * high**2 / 6.0) / stuff.rupture,
        RAIL_WALL: 6.0 * moment / (wide * tenon.depth**2) / wall,
    }
    glue = opened_glue(moment, high, tenon.depth) / _known(stuff.rolling)
    if end_grain and (glue < shares[RAIL_WALL] or not walls):
        del shares[RAIL_WALL]
        shares[GLUE] = glue
    return _worst(way, parts, moment, shares)


def _known(strength: float | None) -> float:
    """A base is timber, whose table has them."""
    assert strength is not None
    return strength


def _worst(way: str, parts: tuple[str, ...], moment: float, shares: dict[str, float]) -> Racked:
    fails = max(shares, key=lambda name: shares[name])
    return Racked(way, parts, moment, fails, 100.0 * shares[fails])
