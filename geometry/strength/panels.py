"""What panel feet bear: pressed along their grain, bent edgewise, and pressed into what they carry.

N, mm, MPa.  Those who sit come to the panels by the lever along the bench, and sit as near to its
front or back edge as they can, off the middle of the panel's width by e.  So a panel is pressed by
P / A and bent in its own plane by P e; it may give way sideways as a column that is held at its top
alone (K = 2).  Where it is cut away at the floor the nearer pad may have all of it.

On its upper end the board above bears: the pressure runs evenly over the width, P / A (1 + 6 e / W)
at the edge, and where that would draw on the far side only a triangle of it is left, three times as
long as the load lies from the edge: 2 P / (3 T (W / 2 - e)) (Navier; any textbook of statics).  It
is taken as no shorter than what somebody bears on.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from geometry.bench.above import above
from geometry.bench.overall import PANEL_FEET, base_is
from geometry.bench.panel_numbers import PanelNumbers, panel_numbers
from geometry.design.spec import BenchSpec
from geometry.primitives.frame import Vec3
from geometry.strength.bases import bearing_lines, forces_on_lines
from geometry.strength.column import column_stress, euler_load, pressed_and_bent
from geometry.strength.legs import SWAYING, seat_edges
from geometry.strength.loads import NEAREST, Case, Loads
from geometry.strength.stuff import Section, Stuff, stuff_of

_BORNE_ON = 2.0 * NEAREST  # mm of the seat's depth; a test's pad, EN 1728, from memory

PRESSED, PAD, DENT = (
    "pressed and bent as a post",
    "pressed on one of its pads",
    "denting what lies on it",
)


@dataclass(frozen=True, slots=True)
class Stood:
    """``share`` of strength in %, in what way, of which parts, under ``force`` N, where."""

    parts: tuple[str, ...]
    share: float
    way: str
    force: float
    case: Case
    place: Vec3


def panels_under(spec: BenchSpec, loads: Loads, own: float) -> tuple[Stood, ...]:
    """Each panel in each way; none for another base."""
    if not base_is(PANEL_FEET, spec):
        return ()
    p, xs = panel_numbers(spec), bearing_lines(spec)
    names = ("left", "right") if p.middle is None else ("left", "middle", "right")
    forces = forces_on_lines(xs, spec.number("length"), loads, own)
    return tuple(
        stood
        for name, x, (force, case) in zip(names, xs, forces, strict=True)
        for stood in _panel(spec, p, f"panel_foot_{name}", x, force, case)
    )


def _panel(
    spec: BenchSpec, p: PanelNumbers, part: str, x: float, force: float, case: Case
) -> Iterator[Stood]:
    stuff = stuff_of(spec.word("timber"))
    assert stuff.crushing is not None, "panel feet are timber"
    off = off_middle(p, seat_edges(spec, x))
    high = p.height - p.ground
    middle = (p.front + p.back) / 2.0
    share = as_post(stuff, p.thickness, p.width, high, force, off)
    at = (x, middle, p.ground + high / 2.0)
    yield Stood((part,), share, PRESSED, force, case, at)
    if p.relief > 0.0:
        on_pad = force / (p.pad * p.thickness) / stuff.crushing
        foot = (x, p.front + p.pad / 2.0, p.ground)
        yield Stood((part,), 100.0 * on_pad, PAD, force, case, foot)
    board = above(spec)
    denting = stuff_of(spec.word("timber")).denting
    if denting is not None:
        dent = edge_pressure(force, p.thickness, p.width, off) / denting
        yield Stood((part, board.part), 100.0 * dent, DENT, force, case, (x, p.front, p.height))


def off_middle(p: PanelNumbers, edges: tuple[float, float]) -> float:
    """How far from the middle of a panel's width somebody sits who sits at an edge of the seat; no
    farther than that the pressure reaches over as much as somebody bears on."""
    front, back = edges
    middle = (p.front + p.back) / 2.0
    off = max(middle - (front + NEAREST), back - NEAREST - middle, 0.0)
    return min(off, max(0.0, p.width / 2.0 - _BORNE_ON / 3.0))


def as_post(
    stuff: Stuff, thickness: float, width: float, high: float, force: float, off: float
) -> float:
    """% of strength of a panel under ``force`` that acts ``off`` its middle."""
    assert stuff.crushing is not None
    section = Section(width, thickness)
    limit = euler_load(stuff.elasticity, section.inertia, SWAYING * high)
    stands = column_stress(stuff.crushing, limit / section.area)
    bent = force * off / Section(thickness, width).modulus
    return pressed_and_bent(force / section.area, stands, bent, stuff.rupture, force / limit)


def edge_pressure(force: float, thickness: float, width: float, off: float) -> float:
    """MPa at the more pressed edge of a panel's end, which can press and not draw.

    >>> edge_pressure(1200.0, 20.0, 300.0, 0.0)
    0.2
    >>> round(edge_pressure(1200.0, 20.0, 300.0, 50.0), 9)
    0.4
    >>> round(edge_pressure(1200.0, 20.0, 300.0, 100.0), 9)
    0.8
    """
    if off <= width / 6.0:
        return force / (thickness * width) * (1.0 + 6.0 * off / width)
    return 2.0 * force / (3.0 * thickness * (width / 2.0 - off))
