"""What a back rest bears when those who sit lean back hard.  N, mm, MPa.

Each pushes with one force at one height over the seat; posts take it by the lever between them.
A post is bent where it leaves the seat.  A tenoned one is held there in two ways at once, and the
joint breaks when both give: the tenon bends (Z R), and glue holds it down while the post tips over
the back edge of its shoulder, half the post's depth behind the tenon; glue lies there against the
seat's side grain, so it holds as much as that rolls.  A rail is a beam between two posts, the top
one taking all, another half of the push; a slat one of three that a back lies on.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from geometry.bench.rest_numbers import Rail, RestNumbers, bay_clear, rails, rest_numbers
from geometry.design.brief import Brief
from geometry.design.spec import BenchSpec
from geometry.primitives.frame import Vec3
from geometry.strength.bases import forces_on_lines
from geometry.strength.beam import Beam, Floats, respond
from geometry.strength.loads import Case, Loads, persons_of
from geometry.strength.stuff import SHEAR_PEAK, Section, Stuff, stuff_of

POST, HELD, RAIL, RAIL_TENON, SLAT = (
    "bending where it leaves the seat",
    "bending and drawing out its tenon",
    "bending",
    "shearing its tenons",
    "bending across its face",
)
_BELOW_TOP = 100.0  # mm that a push stays below the rest's top; EN 1728, from memory
_OTHERS = 0.5  # of a push on a rail that is not the top one; common practice, no source
_SLATS = 3.0  # slats that a back lies on; common practice, no source


@dataclass(frozen=True, slots=True)
class Leaned:
    """``share`` of a part's strength in %, in what way, under ``force`` N, where; ``kind`` is post,
    rail or slat."""

    kind: str
    part: str
    share: float
    way: str
    force: float
    place: Vec3


def pushes(brief: Brief, push: float, room: float) -> Loads:
    """As many as sit, each pushing back."""
    return Loads(push, push, persons_of(brief), room)


def height_of_push(r: RestNumbers, height: float) -> float:
    """Over the seat, no nearer to the top than may be."""
    return max(0.0, min(height, r.height - _BELOW_TOP))


def leaned_on(spec: BenchSpec, loads: Loads, height: float) -> tuple[Leaned, ...]:
    """Every post, row of rails and bay of slats, under ``pushes``."""
    r, stuff = rest_numbers(spec), stuff_of(spec.word("timber"))
    return (*_posts(r, stuff, loads, height), *_rails(r, stuff, loads), *_slats(r, stuff, loads))


def on_posts(r: RestNumbers, loads: Loads) -> tuple[float, ...]:
    """The greatest force on each post, in N."""
    xs = tuple(r.middle(post) for post in range(r.posts))
    return tuple(force for force, _ in forces_on_lines(xs, r.length, loads, 0.0))


def _posts(r: RestNumbers, stuff: Stuff, loads: Loads, height: float) -> Iterator[Leaned]:
    arm = height_of_push(r, height)
    for post, force in enumerate(on_posts(r, loads)):
        moment = force * arm
        bears = Section(r.post_width, r.post_depth).modulus * stuff.rupture
        shares = {POST: moment / bears}
        if not r.behind:
            shares[HELD] = moment / _tenon_bears(r, stuff)
        way = max(shares, key=lambda name: shares[name])
        place = (r.middle(post), r.front, r.seat.top)
        yield Leaned("post", f"post_{post + 1}", 100.0 * shares[way], way, force, place)


def _tenon_bears(r: RestNumbers, stuff: Stuff) -> float:
    """N mm."""
    assert stuff.rolling is not None, "posts and seats are timber"
    wide = r.post_width - 2.0 * r.post_shoulder
    glued = 2.0 * wide * r.tenon_depth * stuff.rolling
    return Section(wide, r.post_tenon).modulus * stuff.rupture + glued * r.post_depth / 2.0


def _rails(r: RestNumbers, stuff: Stuff, loads: Loads) -> Iterator[Leaned]:
    assert stuff.shear is not None, "rails are timber"
    for row, rail in enumerate(rails(r)):
        part = 1.0 if row == 0 else _OTHERS
        high = rail.high - rail.low
        section = Section(high, r.rail_thickness)
        tenon = (high - 2.0 * r.shoulder) * r.tenon
        for bay in range(r.posts - 1):
            span = bay_clear(r, bay, rail.low)
            moment, across, force = _greatest(span, section, stuff, loads)
            shares = {
                RAIL: part * moment / section.modulus / stuff.rupture,
                RAIL_TENON: SHEAR_PEAK * part * across / tenon / stuff.shear,
            }
            way = max(shares, key=lambda name: shares[name])
            yield Leaned(
                "rail",
                f"{rail.name}_bay_{bay + 1}" if r.posts > 2 else rail.name,
                100.0 * shares[way],
                way,
                part * force,
                _middle(r, rail, bay),
            )


def _greatest(
    span: float, section: Section, stuff: Stuff, loads: Loads
) -> tuple[float, float, float]:
    """Greatest moment and force at an end of a beam on two supports, and all the force on it."""
    beam = Beam(
        0.0,
        span,
        (0.0, span),
        stuff.elasticity * section.inertia,
        stuff.rigidity * section.shear_area,
    )
    best = (0.0, 0.0, 0.0)
    for case in loads.cases(span):
        forces = np.full(len(case.offsets), case.force)
        response = respond(beam, _middles(beam, case), forces, case.width)
        moment = float(np.abs(response.moment).max())
        if moment > best[0]:
            best = (moment, float(response.reactions.max()), case.whole)
    return best


def _middles(beam: Beam, case: Case) -> Floats:
    x = beam.stations()
    inside = x[(x >= case.half - 1e-9) & (x <= beam.high - case.half + 1e-9)]
    return np.asarray(inside[:, None] + np.array(case.offsets))


def _middle(r: RestNumbers, rail: Rail, bay: int) -> Vec3:
    y = (rail.low + rail.high) / 2.0
    x = (r.middle(bay) + r.middle(bay + 1)) / 2.0
    return (x, r.front + y * r.sine, r.seat.top + y * r.cosine)


def _slats(r: RestNumbers, stuff: Stuff, loads: Loads) -> Iterator[Leaned]:
    if not r.slats:
        return
    upper, lower = rails(r)[0], rails(r)[-1]
    span, section = upper.low - lower.high, Section(r.slat_width, r.slat_thickness)
    force = loads.single / min(_SLATS, float(r.slats))
    share = force * span / 4.0 / section.modulus / stuff.rupture
    name = "slat_1_1" if r.posts > 2 else "slat_1"
    yield Leaned("slat", name, 100.0 * share, SLAT, force, _middle(r, lower, 0))
