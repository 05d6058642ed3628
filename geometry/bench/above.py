"""What lies on the base: the board that round tenons go into, and where in it they may come up.

The one place where a base asks what it carries; a new form of seat adds itself here.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from geometry.bench.case_numbers import LEFT, RIGHT, case_numbers
from geometry.bench.overall import CASE, LID_BOX, SLAB, seat_is
from geometry.bench.partitions import uprights
from geometry.design.spec import BenchSpec

LEAST_EDGE = 12.0  # mm between a bore and the edge of its board; common practice, no source
# Of a leg's size: half the diagonal of its section, cut level at the strongest lean there is, where
# rake and splay are both 30 degrees: sqrt(1/2) x sqrt(1 + 2 tan² 30).
_SHOULDER = 0.92
_CLEAR = 1.0  # mm between a bore and what stands on the board


@dataclass(frozen=True, slots=True)
class Above:
    """The board whose underside is at the base's height; mm.

    ``part`` is its name, ``thickness`` how deep a tenon goes that ends flush with the board's
    upper face.  Bores of the left legs keep to the range of X ``left``, those of the right legs to
    ``right``, all to Y from ``front`` to ``back``.
    """

    part: str
    thickness: float
    left: tuple[float, float]
    right: tuple[float, float]
    back: float
    front: float


def above(spec: BenchSpec) -> Above:
    """What lies on the base of this bench; KeyError for a form that has none."""
    return _ABOVE[spec.word("seat")](spec)


@dataclass(frozen=True, slots=True)
class Lipped:
    """How far inside the bench's outline the sheet of the board above begins, at its underside; 0
    where it has no lipping.  mm."""

    left: float
    right: float
    back: float
    front: float


_BARE = Lipped(0.0, 0.0, 0.0, 0.0)


def lipped(spec: BenchSpec) -> Lipped:
    """The lippings round the underside of what lies on the base."""
    if not seat_is(CASE, spec):
        return _BARE
    c, name = case_numbers(spec), "bottom"
    left, right = (c.end_lip(name, side) for side in (LEFT, RIGHT))
    return Lipped(left, right, c.back_lip(name), c.behind(name))


def _bottom(spec: BenchSpec) -> Above:
    """The bottom of a case: tenons come up inside its first and its last opening."""
    c = case_numbers(spec)
    t, half_fit = c.partition_thickness, c.housing_fit / 2.0
    between = [at.x_left for at in uprights(c) if not at.end]
    ends = (c.inside_left + half_fit, c.inside_right - half_fit)
    back_lip = c.back_lip("bottom")
    edges = (c.end_lip("bottom", LEFT) + LEAST_EDGE, c.end_lip("bottom", RIGHT) + LEAST_EDGE)
    low, high = max(ends[0] + _CLEAR, edges[0]), min(ends[1] - _CLEAR, c.length - edges[1])
    return Above(
        part="bottom",
        thickness=c.thickness,
        left=(low, between[0] - half_fit - _CLEAR if between else high),
        right=(between[-1] + t + half_fit + _CLEAR if between else low, high),
        back=-max(c.rebate_width + _CLEAR, back_lip + LEAST_EDGE if back_lip > 0.0 else 0.0),
        front=LEAST_EDGE - c.depth + c.behind("bottom"),
    )


def _slab(spec: BenchSpec) -> Above:
    """A seat board: tenons come up anywhere but too near its edges."""
    return _board(spec, "seat", spec.number("seat_thickness"), LEAST_EDGE)


def _box_bottom(spec: BenchSpec) -> Above:
    """The bottom of a box: tenons come up where the legs' shoulders lie wholly on it."""
    walls = spec.number("box_thickness") + _SHOULDER * spec.number("leg_size")
    return _board(spec, "box_bottom", spec.number("box_bottom_thickness"), walls)


def _board(spec: BenchSpec, part: str, thickness: float, inside: float) -> Above:
    """A board as large as the bench, all of it but what is nearer than ``inside`` to its edges."""
    across = (inside, spec.number("length") - inside)
    return Above(
        part=part,
        thickness=thickness,
        left=across,
        right=across,
        back=-inside,
        front=inside - spec.number("depth"),
    )


_ABOVE: dict[str, Callable[[BenchSpec], Above]] = {
    CASE: _bottom,
    SLAB: _slab,
    LID_BOX: _box_bottom,
}
