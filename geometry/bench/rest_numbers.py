"""The numbers of a back rest, and the places that follow from them.

Rest frame: its plane is that of the posts' front faces, leaning back by the rake.  x runs along the
bench, y up along the lean from the height of the seat, z forward out of the plane; wood lies at z
less than 0.  Outer posts may splay in that plane.  Bench coordinates otherwise; mm and degrees.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache

from geometry.bench.rest_parameters import BLIND, RAILS, SLATS, stands_behind
from geometry.bench.seat_back import SeatBack, seat_back
from geometry.design.spec import BenchSpec
from geometry.joints.leaning_tenon import LeaningTenon
from geometry.primitives.frame import Frame, Vec3

LEAST_NOTCH = 0.01  # mm: no tool cuts a shallower one, and no drawing shows it


@dataclass(frozen=True, slots=True)
class RestNumbers:
    """Names as in the catalogue; ``front`` is the Y of the posts' front faces at the seat."""

    seat: SeatBack
    length: float
    behind: bool
    height: float
    rake_deg: float
    gap: float
    posts: int
    post_width: float
    post_depth: float
    in_left: float
    in_right: float
    let_in: float
    front: float
    splay_deg: float
    blind: bool
    tenon_depth: float
    post_tenon: float
    post_shoulder: float
    over: float
    top_width: float
    rail_width: float
    rail_thickness: float
    set_back: float
    further: int
    tenon: float
    tenon_length: float
    shoulder: float
    fit: float
    slats: int
    slat_width: float
    slat_thickness: float
    slat_tenon: float
    slat_shoulder: float

    @property
    def cosine(self) -> float:
        return math.cos(math.radians(self.rake_deg))

    @property
    def sine(self) -> float:
        return math.sin(math.radians(self.rake_deg))

    @property
    def top(self) -> float:
        """y of the posts' tops."""
        return self.height / self.cosine

    @property
    def lean(self) -> float:
        """How far an outer post runs out along x for each mm of y.

        In its own plane a post with splay s stands at atan(tan s x cos rake): the plane's y rises
        by cos rake for each mm.
        """
        return math.tan(math.radians(self.splay_deg)) * self.cosine

    @property
    def lowest(self) -> float:
        """y of the lowest rail's lower edge."""
        return (self.gap + self.set_back * self.sine) / self.cosine

    def lean_of(self, post: int) -> float:
        """The lean of a post, counted from 0 at the left; more than 0 to the right."""
        if post == 0:
            return -self.lean
        return self.lean if post == self.posts - 1 else 0.0

    def half(self, post: int) -> float:
        """Half the width of a post, measured along x."""
        return self.post_width / 2.0 * math.hypot(1.0, self.lean_of(post))

    def middle(self, post: int) -> float:
        """x of a post's middle at the height of the seat."""
        first = self.in_left + self.half(0)
        last = self.length - self.in_right - self.half(self.posts - 1)
        return first + (last - first) * post / (self.posts - 1)

    def side(self, post: int, way: float, y: float) -> float:
        """x of a post's left (``way`` -1) or right (1) side."""
        return self.middle(post) + way * self.half(post) + self.lean_of(post) * y


@dataclass(frozen=True, slots=True)
class Rail:
    """A row of rails, one between each two posts: its lower and upper edge (y)."""

    name: str
    title: str
    low: float
    high: float


@lru_cache(maxsize=512)
def rest_numbers(spec: BenchSpec) -> RestNumbers:
    """Read the back rest from a spec."""
    seat, number = seat_back(spec), spec.number
    behind, blind = stands_behind(spec), spec.value("post_tenon_kind") == BLIND
    let_in = number("post_let_in") if behind and number("post_let_in") >= LEAST_NOTCH else 0.0
    return RestNumbers(
        seat=seat,
        length=number("length"),
        behind=behind,
        height=number("rest_height"),
        rake_deg=number("rest_rake"),
        gap=number("rest_gap"),
        posts=spec.count("post_count"),
        post_width=number("post_width"),
        post_depth=number("post_depth"),
        in_left=number("post_in_left"),
        in_right=number("post_in_right"),
        let_in=let_in,
        front=-let_in if behind else -number("rest_in"),
        splay_deg=0.0 if behind else number("post_splay"),
        blind=blind,
        tenon_depth=number("post_tenon_depth") if blind else seat.thickness,
        post_tenon=number("post_tenon"),
        post_shoulder=number("post_shoulder"),
        over=number("post_over"),
        top_width=number("top_rail_width"),
        rail_width=number("rest_rail_width"),
        rail_thickness=number("rest_rail_thickness"),
        set_back=number("rest_set_back"),
        further=spec.count("rest_rail_count") if spec.value("back_rest") == RAILS else 1,
        tenon=number("rest_tenon"),
        tenon_length=number("rest_tenon_length"),
        shoulder=number("rest_shoulder"),
        fit=number("rest_fit"),
        slats=spec.count("slat_count") if spec.value("back_rest") == SLATS else 0,
        slat_width=number("slat_width"),
        slat_thickness=number("slat_thickness"),
        slat_tenon=number("slat_tenon_length"),
        slat_shoulder=number("slat_shoulder"),
    )


@lru_cache(maxsize=512)
def rest_frame(r: RestNumbers) -> Frame:
    """The rest frame in the bench."""
    return Frame(
        (0.0, r.front, r.seat.top),
        (1.0, 0.0, 0.0),
        (0.0, r.sine, r.cosine),
        (0.0, -r.cosine, r.sine),
    )


@lru_cache(maxsize=512)
def rails(r: RestNumbers) -> tuple[Rail, ...]:
    """The rows of rails from the top down; a gap of equal height between each two."""
    high = r.top - r.over
    found = [Rail("top_rail", "Top rail", high - r.top_width, high)]
    for k in range(r.further):
        low = r.lowest + (r.further - 1 - k) * (r.rail_width + rail_space(r))
        found.append(Rail(f"rest_rail_{k + 1}", f"Rest rail {k + 1}", low, low + r.rail_width))
    return tuple(found)


def rail_space(r: RestNumbers) -> float:
    """Clear height between rails, along the lean; of a top rail alone, above the seat's gap."""
    clear = r.top - r.over - r.top_width - r.lowest - r.further * r.rail_width
    return clear / r.further if r.further else clear


def rail_frame(r: RestNumbers, y: float) -> Frame:
    """That of rails (and slats) with an edge at y: x along the bench, y down, z to the back."""
    flat = rest_frame(r)
    origin = flat.to_bench((0.0, y, -r.set_back))
    down = (0.0, -r.sine, -r.cosine)
    return Frame(origin, (1.0, 0.0, 0.0), down, (0.0, r.cosine, -r.sine))


@lru_cache(maxsize=4096)
def rail_tenon(r: RestNumbers, rail: Rail, bay: int, way: float) -> LeaningTenon:
    """The tenon at the left (``way`` -1) or right (1) end of the rail in a bay."""
    post = bay if way < 0.0 else bay + 1
    lean, run = r.lean_of(post), math.hypot(1.0, r.lean_of(post))
    low = (r.rail_thickness - r.tenon) / 2.0
    return LeaningTenon(
        frame=rail_frame(r, rail.high),
        # Square to the post's side: (1, -lean) in the rest's x and y, and y turned down.
        into=(way / run, way * lean / run, 0.0),
        face=r.side(post, -way, rail.high),
        length=r.tenon_length,
        y_low=r.shoulder,
        y_high=rail.high - rail.low - r.shoulder,
        z_low=low,
        z_high=low + r.tenon,
        top=0.0,
        fit=r.fit,
    )


def rail_reach(r: RestNumbers, rail: Rail, bay: int, way: float) -> float:
    """x of the outermost point of a rail's end: of its tenon, or of a long shoulder."""
    at = rail_tenon(r, rail, bay, way)
    xs = [at.point(y, 0.0, 0.0)[0] for y in (0.0, rail.high - rail.low)]
    xs += [at.point(y, 0.0, at.length)[0] for y in (at.y_low, at.y_high)]
    return way * max(way * x for x in xs)


def bay_clear(r: RestNumbers, bay: int, y: float) -> float:
    """Between two posts at y."""
    return r.side(bay + 1, -1.0, y) - r.side(bay, 1.0, y)


def slat_space(r: RestNumbers, bay: int) -> float:
    """Between the slats of a bay, and from them to the posts, at the lower rail's upper edge."""
    clear = bay_clear(r, bay, rails(r)[-1].high)
    return (clear - r.slats * r.slat_width) / (r.slats + 1)


def slat_middles(r: RestNumbers, bay: int) -> tuple[float, ...]:
    """x of the slats of a bay."""
    space, start = slat_space(r, bay), r.side(bay, 1.0, rails(r)[-1].high)
    step = space + r.slat_width
    return tuple(start + space + r.slat_width / 2.0 + k * step for k in range(r.slats))


def slat_tenons(r: RestNumbers, middle: float) -> tuple[LeaningTenon, LeaningTenon]:
    """The upper and the lower tenon of a slat, in a frame with x down it from the upper rail."""
    upper, lower = rails(r)[0], rails(r)[-1]
    flat = rail_frame(r, upper.low)
    inset = (r.rail_thickness - r.slat_thickness) / 2.0
    origin = flat.to_bench((middle + r.slat_width / 2.0, 0.0, inset))
    frame = Frame(origin, flat.y_axis, (-1.0, 0.0, 0.0), flat.z_axis)
    first, second = (
        LeaningTenon(
            frame=frame,
            into=into,
            face=face,
            length=r.slat_tenon,
            y_low=r.slat_shoulder,
            y_high=r.slat_width - r.slat_shoulder,
            z_low=0.0,
            z_high=r.slat_thickness,
            top=0.0,
            fit=r.fit,
        )
        for into, face in (((-1.0, 0.0, 0.0), 0.0), ((1.0, 0.0, 0.0), upper.low - lower.high))
    )
    return first, second


@lru_cache(maxsize=2048)
def post_frame(r: RestNumbers, post: int) -> Frame:
    """That of a straight post: x down its grain, y to its left, z to the back; it starts at the
    middle of the upper end of its right front arris."""
    flat, lean = rest_frame(r), r.lean_of(post)
    run = math.hypot(1.0, lean)
    down = flat.turn_to_bench((-lean / run, -1.0 / run, 0.0))
    left = flat.turn_to_bench((-1.0 / run, lean / run, 0.0))
    y = r.top
    axis = (r.middle(post) + lean * y, y, 0.0)
    side = (axis[0] + r.post_width / 2.0 / run, y - r.post_width / 2.0 * lean / run, 0.0)
    back = flat.turn_to_bench((0.0, 0.0, -1.0))
    return Frame(flat.to_bench(side), down, left, back)


@lru_cache(maxsize=2048)
def post_tenon(r: RestNumbers, post: int) -> LeaningTenon:
    """The tenon of a straight post in the seat: its shoulder is level, so compound."""
    frame = post_frame(r, post)
    into = frame.turn_to_local((0.0, 0.0, -1.0))
    seat = frame.to_local((r.middle(post), r.front, r.seat.top))
    low = (r.post_depth - r.post_tenon) / 2.0
    return LeaningTenon(
        frame=frame,
        into=into,
        face=sum(a * b for a, b in zip(seat, into, strict=True)) / into[0],
        length=r.tenon_depth,
        y_low=r.post_shoulder,
        y_high=r.post_width - r.post_shoulder,
        z_low=low,
        z_high=low + r.post_tenon,
        top=0.0,
        fit=r.fit,
        through=not r.blind,
    )


def mortise_in_seat(r: RestNumbers, post: int) -> tuple[Vec3, ...]:
    """The eight corners of a post's mortise, in the bench."""
    at = post_tenon(r, post)
    mouth, floor = at.mortise()
    return tuple(at.frame.to_bench(corner) for corner in (*mouth, *floor))
