"""The numbers of blocks in the corners between aprons, and the places that follow from them.

Seen from the outer arris of a leg at the aprons' height, ``p`` runs inward along the length, ``q``
inward across the depth and ``d`` down: all four corners are alike in these.  The aprons' insides
are the planes p = end_in - d tan(splay) and q = side_in - d tan(rake); a block's other faces are
upright.  mm.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache

from geometry.bench.apron_numbers import apron_numbers
from geometry.bench.four_leg_numbers import FourLegs, four_legs, outward_signs, stand
from geometry.design.spec import BenchSpec
from geometry.primitives.frame import Vec2, Vec3, add, dot, scale, subtract
from shared.fixings import WOOD_SCREWS

WITHOUT, DIAGONAL, SQUARE = "without", "at 45°", "square"
_LEAST_FREE = 6.0  # mm between a diagonal block and the corner of the aprons, about
_PASSING = 6.0  # mm between two screws' heads, as if one stood under the other
_ROOT2 = math.sqrt(2.0)


@dataclass(frozen=True, slots=True)
class CornerBlocks:
    """mm and degrees.

    ``leg_p`` and ``leg_q`` are how far the leg reaches inward at the top, ``leg_both`` the greatest
    p + q of it.
    """

    legs: FourLegs
    diagonal: bool
    height: float
    thickness: float
    gap: float
    end_in: float
    side_in: float
    leg_p: float
    leg_q: float
    leg_both: float
    screws: int
    shank: float
    head: float
    pilot: float
    land: float
    bite: float

    def end_at(self, d: float) -> float:
        """p of the inside of the apron at the end, ``d`` below the top."""
        return self.end_in - d * self.legs.tangents[0]

    def side_at(self, d: float) -> float:
        """q of the inside of the apron in front or at the back."""
        return self.side_in - d * self.legs.tangents[1]

    @property
    def near(self) -> float:
        """p + q on a diagonal block's face toward the leg: past the leg and off the aprons' own
        corner, so that it lies on both of them."""
        return max(
            self.leg_both + _ROOT2 * self.gap,
            self.leg_q + self.gap + self.end_in,
            self.leg_p + self.gap + self.side_in,
            self.end_in + self.side_in + _LEAST_FREE,
        )

    @property
    def far(self) -> float:
        """p + q on a diagonal block's face side."""
        return self.near + _ROOT2 * self.thickness

    @property
    def notched(self) -> bool:
        """Whether a square block has to be cut out round the leg."""
        return self.leg_p > self.end_in and self.leg_q > self.side_in

    @property
    def notch(self) -> Vec2:
        """p and q to which a square block is cut out."""
        return (self.leg_p + self.gap, self.leg_q + self.gap)

    @property
    def outer(self) -> Vec2:
        """p and q of a square block's two upright faces."""
        return (
            max(self.notch[0], self.end_in) + self.thickness,
            max(self.notch[1], self.side_in) + self.thickness,
        )

    @property
    def reach(self) -> Vec2:
        """How far from the outer arris a block goes along front or back, and along an end."""
        if self.diagonal:
            return (self.far - self.side_at(self.height), self.far - self.end_at(self.height))
        return self.outer

    def on_end(self, d: float) -> tuple[float, float]:
        """From which q to which a block lies on the apron at the end."""
        if self.diagonal:
            return self.near - self.end_at(d), self.far - self.end_at(d)
        return (self.notch[1] if self.notched else self.side_in), self.outer[1]

    def on_side(self, d: float) -> tuple[float, float]:
        """From which p to which it lies on the apron in front or at the back."""
        if self.diagonal:
            return self.near - self.side_at(d), self.far - self.side_at(d)
        return (self.notch[0] if self.notched else self.end_in), self.outer[0]

    def levels(self, *, end: bool) -> tuple[float, ...]:
        """How far below the top the screws leave the block, so that the middle of their way from
        head to point is at even heights; in a square block those into front and back pass under
        those into the ends."""
        up = (self.wood_along(end=end) - self.bite) / 2.0 * self.sine(end=end)
        pitch, first = self.height / self.screws, self.height / self.screws / 2.0
        if not self.diagonal:
            pitch, row = 2.0 * self.passing, 2.0 * self.screws - 1.0
            first = (self.height - row * self.passing) / 2.0 + (0.0 if end else self.passing)
        return tuple(first + k * pitch - up for k in range(self.screws))

    @property
    def passing(self) -> float:
        """Between the middles of two screws that pass each other in a square block."""
        return self.head + _PASSING

    def sine(self, *, end: bool) -> float:
        """Of the lean of an apron at the end, or in front and at the back."""
        return math.sin(math.radians(self.legs.splay_deg if end else self.legs.rake_deg))

    def wood_along(self, *, end: bool) -> float:
        """How much wood of the block a screw into an apron passes, to the face it is put in at; of
        a square block half way down."""
        cosine = math.sqrt(1.0 - self.sine(end=end) ** 2)
        if self.diagonal:
            return self.thickness / _ROOT2 / cosine
        d = self.height / 2.0
        here = self.end_at(d) if end else self.side_at(d)
        return (self.outer[0 if end else 1] - here) / cosine


def has_corner_blocks(spec: BenchSpec) -> bool:
    return spec.value("corner_blocks") != WITHOUT


@lru_cache(maxsize=512)
def corner_blocks(spec: BenchSpec) -> CornerBlocks:
    """Read the blocks from a spec with aprons."""
    a, n = apron_numbers(spec), four_legs(spec)
    within = a.reveal + a.thickness
    screw = WOOD_SCREWS[spec.word("corner_block_screw")]
    section = _leg_section(n)
    return CornerBlocks(
        legs=n,
        diagonal=spec.value("corner_blocks") == DIAGONAL,
        height=spec.number("corner_block_height"),
        thickness=spec.number("corner_block_thickness"),
        gap=spec.number("corner_block_gap"),
        end_in=within / math.cos(math.radians(n.splay_deg)),
        side_in=within / math.cos(math.radians(n.rake_deg)),
        leg_p=max(p for p, _ in section),
        leg_q=max(q for _, q in section),
        leg_both=max(p + q for p, q in section),
        screws=spec.count("corner_block_screws"),
        shank=screw.shank,
        head=screw.head,
        pilot=screw.root,
        land=spec.number("corner_block_land"),
        bite=spec.number("corner_block_bite"),
    )


_CORNER = "front_right"


def _leg_section(n: FourLegs) -> list[Vec2]:
    """p and q of a leg's four arrises at the top, where it reaches farthest inward."""
    at = stand(n, _CORNER)
    ex, ey = inward(_CORNER)
    top = (*n.place(_CORNER), n.height)
    found = []
    for y in (0.0, n.size):
        for z in (0.0, n.size):
            first, second = at.across
            down = scale(at.down, at.station(y, z, n.height))
            point = add(add(at.origin, down), add(scale(first, y), scale(second, z)))
            off = subtract(point, top)
            found.append((dot(off, ex), dot(off, ey)))
    return found


def inward(corner: str) -> tuple[Vec3, Vec3]:
    """The directions in which p and q run at a corner."""
    sx, sy = outward_signs(corner)
    return (-sx, 0.0, 0.0), (0.0, -sy, 0.0)


def place(b: CornerBlocks, corner: str, p: float, q: float, d: float) -> Vec3:
    """A point seen from a corner, in bench coordinates."""
    ex, ey = inward(corner)
    x, y = b.legs.place(corner)
    return add((x, y, b.legs.height - d), add(scale(ex, p), scale(ey, q)))


def into_block(b: CornerBlocks, corner: str, *, end: bool) -> Vec3:
    """The unit normal of an apron's inside, into the block."""
    ex, ey = inward(corner)
    lean = math.radians(b.legs.splay_deg if end else b.legs.rake_deg)
    return add(scale(ex if end else ey, math.cos(lean)), (0.0, 0.0, -math.sin(lean)))


def head_room(b: CornerBlocks, *, end: bool) -> float:
    """The most wood that can be left under a head that is sunk wholly into the block."""
    lean = math.radians(b.legs.splay_deg if end else b.legs.rake_deg)
    cosine = math.cos(lean) / (_ROOT2 if b.diagonal else 1.0)
    return b.wood_along(end=end) - b.head / 2.0 * math.sqrt(1.0 - cosine**2) / cosine
