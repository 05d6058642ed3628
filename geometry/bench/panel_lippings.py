"""Lippings and edge bands round the seat and the ends of a panel bench of sheet.

On the front edges, on the back edges too if the maker says so, and on the ends of a seat that stand
out over a housed end.  Boards keep their finished sizes.  Lippings turn a mitred corner with the
boards; those of a housed end stop under the seat, in front of the tongue and behind it.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import product

from geometry.bench.constraint import Constraint, rule
from geometry.bench.lipped import LIPPED, strip_measures, strip_sizes, strip_word
from geometry.bench.member import Member
from geometry.bench.panel_ends import end_parts
from geometry.bench.panel_ends_numbers import (
    BOTH_EDGES,
    DOVETAILED,
    FRONT_EDGES,
    HOUSED,
    LEFT,
    LIP_READS,
    MITRED,
    PanelEnd,
    PanelEnds,
    panel_ends,
    panels_of_sheet,
)
from geometry.bench.rest_parameters import has_rest, stands_behind
from geometry.bench.seat_board import SEAT, seat_parts
from geometry.bench.seat_rail_numbers import seat_rail
from geometry.cuts.cut import Blank
from geometry.design.joint import Joint, Measure
from geometry.design.parameter import Parameter, choice, length
from geometry.design.part import Part, Shape
from geometry.design.spec import BenchSpec
from geometry.joints.glued_faces import glued_faces
from geometry.joints.marking import saw_cut
from geometry.joints.mitred_strips import mitred_strips
from geometry.primitives.frame import Frame, Vec2, Vec3, cross, opposite, unit

# Common practice, no source, these:
LEAST_NOTCH = 0.5  # mm of sheet in front of a housing's round that the notch still takes
LEAST_PAD = 5.0  # mm of sheet in a pad

PARAMETERS: tuple[Parameter, ...] = (
    length(
        "panel_lip",
        "Panel lipping",
        "Panel ends",
        6,
        0.4,
        30,
        "Thickness of the lippings or edge bands; the sheet between them is so much narrower.",
        step=0.1,
    ),
    choice(
        "panel_lipped",
        "Lippings on",
        "Panel ends",
        BOTH_EDGES,
        (BOTH_EDGES, FRONT_EDGES),
        "A bench that stands free shows its back edges; one against a wall does not.",
    ),
)


def _housed(n: PanelEnds) -> Iterator[PanelEnd]:
    return (end for end in n.ends if end.joint == HOUSED)


def _notched(spec: BenchSpec) -> float:
    """By how much the notch in front of a housed end's tongue is longer than the lipping."""
    n = panel_ends(spec)
    notch = n.cover + n.cutter_radius + n.housing_fit / 2.0
    return min((notch - LEAST_NOTCH - n.lip for _ in _housed(n)), default=1.0)


def _behind(spec: BenchSpec) -> float:
    """How far behind the seat's lipping the housings for its ends stop."""
    n = panel_ends(spec)
    return min((n.depth - n.lip - end.front + n.cover for end in _housed(n)), default=1.0)


def _pads(spec: BenchSpec) -> float:
    n = panel_ends(spec)
    return n.pad - n.lip - LEAST_PAD if n.relief > 0.0 else 1.0


def _rail_on_sheet(spec: BenchSpec) -> float:
    """How far the rail keeps off the lippings of the ends, and so of the seat."""
    n, r = panel_ends(spec), seat_rail(spec)
    room = min(n.least_front - n.lip - r.front, r.front - r.thickness - n.back_lip)
    return room - r.fit / 2.0


def _posts(spec: BenchSpec) -> float:
    screwed = has_rest(spec) and stands_behind(spec)
    return -1.0 if screwed and panel_ends(spec).back_lip > 0.0 else 1.0


_JOINED = "left_joint right_joint"

CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "panel_sheet_tails",
        f"panel_made_of {_JOINED}",
        lambda s: -1.0 if any(e.joint == DOVETAILED for e in panel_ends(s).ends) else 1.0,
        "seat and ends of sheet can be mitred or housed; tails and pins of sheet break along its "
        "layers",
    ),
    rule(
        "panel_lip_notch",
        f"{LIP_READS} {_JOINED} housing_cover cutter_diameter housing_fit",
        _notched,
        "the lipping would be thicker than the notch in front of a housed end's tongue",
    ),
    rule(
        "panel_lip_housing",
        f"{LIP_READS} {_JOINED} end_reveal housing_cover",
        _behind,
        "the housing for an end would be cut into the seat's lipping",
    ),
    rule(
        "panel_lip_pad",
        f"{LIP_READS} end_relief end_pad",
        _pads,
        "the lipping would leave less than {5 mm} of sheet in the pads",
    ),
    rule(
        "panel_lip_rail",
        f"{LIP_READS} {_JOINED} depth end_reveal seat_rail_back seat_rail_thickness seat_rail_fit",
        _rail_on_sheet,
        "the rail would stand against the lippings of the ends",
    ),
    rule(
        "panel_lip_posts",
        f"{LIP_READS} back_rest post_fixing",
        _posts,
        "posts behind the seat would be screwed to its back lipping: tenon them into the seat, or "
        "lip the front edges alone",
    ),
)


@dataclass(frozen=True, slots=True)
class Strip:
    """A lipping along an edge of ``core``, in its part frame: from ``low`` to ``high`` in x, each
    at the core's face side and at its reverse, which differ at a mitre."""

    core: Part
    lip: float
    back: bool
    low: Vec2
    high: Vec2

    @property
    def name(self) -> str:
        return f"{self.core.name}_{'back_' if self.back else ''}lipping"

    @property
    def edge(self) -> float:
        """y of the edge that it is glued to."""
        return 0.0 if self.back else self.core.shape.blank.width

    @property
    def frame(self) -> Frame:
        """x along the core, face side outward; y through the core from its face side, or at the
        back from its reverse."""
        core, thick = self.core.frame, self.core.shape.blank.thickness
        start = min(self.low)
        if self.back:
            origin = core.to_bench((start, -self.lip, thick))
            return Frame(origin, core.x_axis, opposite(core.z_axis), core.y_axis)
        origin = core.to_bench((start, self.edge + self.lip, 0.0))
        return Frame(origin, core.x_axis, core.z_axis, opposite(core.y_axis))

    @property
    def blank(self) -> Blank:
        long = max(self.high) - min(self.low)
        return Blank(long, self.core.shape.blank.thickness, self.lip)


def strips(spec: BenchSpec, core: Part) -> tuple[Strip, ...]:
    """Those along the edges of the seat or of an end, the front one first."""
    n = panel_ends(spec)
    low, high = _seat_span(n) if core.kind == SEAT else _end_span(n, core)
    front = Strip(core, n.lip, False, low, high)
    return (front, replace(front, back=True)) if n.back_lip > 0.0 else (front,)


def _seat_span(n: PanelEnds) -> tuple[Vec2, Vec2]:
    """From mitre to mitre, or over the lipping of an end that stands out."""
    start = n.seat_ends[0]
    left, right = (n.thickness if end.joint == MITRED else 0.0 for end in n.ends)
    return (0.0 - start, left - start), (n.length - start, n.length - right - start)


def _end_span(n: PanelEnds, core: Part) -> tuple[Vec2, Vec2]:
    end = n.left if core.name == f"end_{LEFT}" else n.right
    whole, thick = end.height, n.seat_thickness
    upper = (thick, 0.0) if end.joint == MITRED else (n.housing_depth, n.housing_depth)
    if end.side == LEFT:
        return upper, (whole, whole)
    return (0.0, 0.0), (whole - upper[0], whole - upper[1])


def _along(spec: BenchSpec, strip: Strip, *, closes: bool) -> Part:
    where = " at the back" if strip.back else ""
    return Part(
        name=strip.name,
        title=f"{strip_word(strip.lip)}{where}, {_called(strip.core)}",
        kind=f"{strip.core.kind} lipping",
        material=spec.word("timber"),
        shape=Shape(strip.blank, ()),
        frame=strip.frame,
        notes=("glued on after the housings are cut, which it closes at the back",)
        if closes
        else (),
    )


def _called(core: Part) -> str:
    return "seat" if core.kind == SEAT else f"{core.name.removeprefix('end_')} end"


def _across(spec: BenchSpec, core: Part, end: PanelEnd) -> Part:
    """On the seat's end that stands out over a housed end, between the long lippings."""
    n, wide = panel_ends(spec), core.shape.blank.width
    x, back = (0.0 if end.side == LEFT else n.length), 0.0 - n.back_lip
    level = n.top if end.side == LEFT else n.underside
    inward: Vec3 = (1.0 if end.side == LEFT else -1.0, 0.0, 0.0)
    forward: Vec3 = (0.0, -1.0, 0.0)
    return Part(
        name=f"seat_{end.side}_lipping",
        title=f"{strip_word(n.lip)}, {end.side} end of the seat",
        kind="seat lipping",
        material=spec.word("timber"),
        shape=Shape(Blank(wide, n.seat_thickness, n.lip), ()),
        frame=Frame((x, back, level), forward, cross(inward, forward), inward),
    )


def _parts(spec: BenchSpec) -> tuple[Part, ...]:
    n = panel_ends(spec)
    cores = cores_of(spec)
    housed = tuple(_housed(n))
    found = [
        _along(spec, strip, closes=strip.back and core.kind == SEAT and bool(housed))
        for core in cores
        for strip in strips(spec, core)
    ]
    return (*found, *(_across(spec, cores[0], end) for end in housed))


@lru_cache(maxsize=512)
def cores_of(spec: BenchSpec) -> tuple[Part, ...]:
    """The seat and its two ends, of sheet, as they are before any joint."""
    return (*seat_parts(spec), *end_parts(spec))


def _joints(spec: BenchSpec, parts: Mapping[str, Part]) -> tuple[Joint, ...]:
    n = panel_ends(spec)
    whole = {"seat": n.depth, "end_left": n.left.front, "end_right": n.right.front}
    return (
        *(
            _glued(strip, parts, whole[core.name])
            for core in cores_of(spec)
            for strip in strips(spec, core)
        ),
        *(_end_glued(n, end, parts) for end in _housed(n)),
        *_corners(n, parts),
    )


def _glued(strip: Strip, parts: Mapping[str, Part], whole: float) -> Joint:
    core, part = parts[strip.core.name], parts[strip.name]
    thick, y = core.shape.blank.thickness, strip.edge
    # Not where the lipping goes on over that of a free end.
    long = core.shape.blank.length
    places = (
        (max(strip.low[0], 0.0), 0.0),
        (min(strip.high[0], long), 0.0),
        (min(strip.high[1], long), thick),
        (max(strip.low[1], 0.0), thick),
    )
    corners = tuple(core.frame.to_bench((x, y, z)) for x, z in places)
    measures = strip_measures(core, part, corners, whole)
    return glued_faces(strip.name, LIPPED, part, core, corners, part.frame.z_axis, measures)


def _end_glued(n: PanelEnds, end: PanelEnd, parts: Mapping[str, Part]) -> Joint:
    core, strip = parts["seat"], parts[f"seat_{end.side}_lipping"]
    wide, thick, lip = strip.shape.blank.length, n.seat_thickness, n.lip
    corners = tuple(
        strip.frame.to_bench((x, y, lip))
        for x, y in ((0.0, 0.0), (wide, 0.0), (wide, thick), (0.0, thick))
    )
    long = core.shape.blank.length
    measures = (
        *strip_sizes(core, strip, corners),
        Measure("core_length", long, "mm", "of the sheet under the lipping", (1,)),
    )
    return glued_faces(strip.name, LIPPED, strip, core, corners, strip.frame.z_axis, measures)


def _corners(n: PanelEnds, parts: Mapping[str, Part]) -> Iterator[Joint]:
    """Where the lippings of the seat and of a mitred end meet."""
    edges = [("", n.lip - n.depth, 0.0 - n.depth)]
    if n.back_lip > 0.0:
        edges.append(("back_", 0.0, 0.0 - n.back_lip))
    for end, (back, near, far) in product(n.ends, edges):
        if end.joint != MITRED:
            continue
        corners = (
            (end.outside, near, n.top),
            (end.outside, far, n.top),
            (end.inside, far, n.underside),
            (end.inside, near, n.underside),
        )
        way = -1.0 if end.side == LEFT else 1.0
        normal = unit((way * n.seat_thickness, 0.0, 0.0 - n.thickness))
        first, second = (parts[f"{name}_{back}lipping"] for name in ("seat", f"end_{end.side}"))
        name = f"mitre_{back}lipping_{end.side}"
        cuts = (
            saw_cut(first, "mitre", corners[0], normal),
            saw_cut(second, "mitre", corners[0], opposite(normal)),
        )
        yield mitred_strips(name, (first, second), cuts, corners, normal)


MEMBER = Member(
    "panel lippings",
    PARAMETERS,
    CONSTRAINTS,
    _parts,
    _joints,
    present=panels_of_sheet,
    snug=lambda _spec: ({"panel_lip": 0.4},),
)
