"""Wide panels glued up from boards, edge to edge, with or without loose tenons in the edges.

A panel is glued up before any of its joints is cut: the boards are plain, and what is housed in
the panel later, bored through it or sawn off it may come upon a tenon.  So a glue-up is a small
bench of its own, boards and tenons and the lines between them, standing where the panel stands.
The boards of a panel are all of one width, as few as their widest allows; a seat's board has at
least as many as the maker says.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import lru_cache

from geometry.bench.bench import Bench
from geometry.bench.constraint import Constraint, rule
from geometry.bench.member import Member
from geometry.bench.overall import SLAB, seat_is
from geometry.bench.seat_board import SEAT, boards_across, boards_in_seat
from geometry.cuts.cut import Blank
from geometry.design.joint import FIRST, Joint, Measure
from geometry.design.parameter import Parameter, choice, length
from geometry.design.part import Part, Shape
from geometry.design.spec import BenchSpec
from geometry.joints.glued_faces import glued_faces
from geometry.joints.loose_tenon import LooseTenon, loose_tenon, slip
from geometry.primitives.frame import Frame, Vec3, scale

GLUE, TENONS = "glue alone", "loose tenons"
WOOD_BETWEEN = 5.0  # mm between two mortises at the least; common practice, no source
_MOST = 0.5  # of a panel's thickness that a mortise may take; common practice, no source


def _with_tenons(spec: BenchSpec) -> bool:
    return spec.word("glue_up_hold") == TENONS


PARAMETERS: tuple[Parameter, ...] = (
    length(
        "glue_up_width",
        "Widest board",
        "Glue-ups",
        1200,
        60,
        1200,
        "Panels that are wider than this are glued up from equal boards.",
    ),
    choice(
        "glue_up_hold",
        "Edges held by",
        "Glue-ups",
        GLUE,
        (GLUE, TENONS),
        "Glue alone, or loose tenons in the edges as well.",
    ),
)


def _size(
    name: str, title: str, default: float, span: tuple[float, float], description: str
) -> Parameter:
    return length(name, title, "Glue-ups", default, *span, description, step=0.5)


def _seat_thickness(spec: BenchSpec) -> float:
    """Of the boards that are sat on."""
    return spec.number("seat_thickness" if seat_is(SLAB, spec) else "board_thickness")


TENON_PARAMETERS: tuple[Parameter, ...] = (
    _size(
        "glue_tenon_in",
        "First tenon in",
        80,
        (10, 600),
        "From either end of the panel to the middle of the first tenon.",
    ),
    _size(
        "glue_tenon_spacing",
        "Tenons at most apart",
        200,
        (30, 800),
        "From middle to middle; they are spread evenly.",
    ),
    _size("glue_tenon_width", "Tenon width", 30, (5, 100), "Along the boards."),
    _size("glue_tenon_thickness", "Tenon thickness", 5, (3, 20), "In the middle of the boards."),
    _size("glue_tenon_depth", "Depth in each edge", 15, (4, 60), "Of each mortise."),
    length(
        "glue_tenon_fit",
        "Tenon fit",
        "Glue-ups",
        0.2,
        0.2,
        2,
        "How much the mortises are larger than the tenons, each way.",
        step=0.05,
    ),
)

TENON_CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "glue_tenon_thick",
        "seat board_thickness seat_thickness glue_tenon_thickness glue_tenon_fit",
        lambda s: (
            _MOST * _seat_thickness(s)
            - s.number("glue_tenon_thickness")
            - s.number("glue_tenon_fit")
        ),
        "the mortise would take more than half the board's thickness",
    ),
    rule(
        "glue_tenon_deep",
        "glue_up_width glue_tenon_depth",
        lambda s: s.number("glue_up_width") / 2.0 - 2.0 * s.number("glue_tenon_depth") - 10.0,
        "boards can come out half as wide as the widest, and the mortises in both edges of one "
        "would leave less than {10 mm} between them",
    ),
    rule(
        "glue_tenon_shape",
        "glue_tenon_width glue_tenon_thickness",
        lambda s: s.number("glue_tenon_width") - s.number("glue_tenon_thickness") - 2.0,
        "the tenon would be all round edges and hold no more than a dowel",
    ),
    rule(
        "glue_tenon_apart",
        "glue_tenon_spacing glue_tenon_width glue_tenon_fit",
        lambda s: (
            s.number("glue_tenon_spacing") / 2.0
            - s.number("glue_tenon_width")
            - s.number("glue_tenon_fit")
            - WOOD_BETWEEN
        ),
        "spread evenly the tenons can come half as far apart, and less than {5 mm} of wood would "
        "stay between two mortises",
    ),
    rule(
        "glue_tenon_end",
        "glue_tenon_in glue_tenon_width glue_tenon_fit",
        lambda s: (
            s.number("glue_tenon_in")
            - (s.number("glue_tenon_width") + s.number("glue_tenon_fit")) / 2.0
            - WOOD_BETWEEN
        ),
        "the first mortise would come within {5 mm} of the board's end",
    ),
)


@dataclass(frozen=True, slots=True)
class GlueUp:
    """A panel, by its name and title, and the boards and tenons it is glued up from."""

    panel: str
    title: str
    bench: Bench

    @property
    def boards(self) -> tuple[Part, ...]:
        return tuple(part for part in self.bench.parts if part.kind == "board")

    @property
    def tenons(self) -> tuple[Part, ...]:
        return tuple(part for part in self.bench.parts if part.kind == "loose tenon")


@lru_cache(maxsize=64)
def glue_ups(bench: Bench) -> tuple[GlueUp, ...]:
    """Every panel of a bench that is glued up of more than one board."""
    counted = ((part, boards_in(bench.spec, part)) for part in bench.parts)
    return tuple(_glue_up(bench.spec, part, count) for part, count in counted if count > 1)


def boards_in(spec: BenchSpec, part: Part) -> int:
    """How many boards a part is glued up of, side by side."""
    if not part.solid_timber:
        return 1
    if part.kind == SEAT:
        return boards_in_seat(spec)
    return boards_across(spec, part.across_grain)


def boards_of(bench: Bench) -> Bench:
    """All boards, tenons and lines of a bench's glue-ups together."""
    benches = [one.bench for one in glue_ups(bench)]
    return Bench(
        bench.spec,
        tuple(part for one in benches for part in one.parts),
        tuple(joint for one in benches for joint in one.joints),
        (),
    )


def pieces_to_cut(bench: Bench) -> tuple[Part, ...]:
    """All parts, and the boards and tenons that panels are glued up from."""
    return (*bench.parts, *boards_of(bench).parts)


def _glue_up(spec: BenchSpec, panel: Part, count: int) -> GlueUp:
    boards = [_board(panel, k, count) for k in range(count)]
    tenons = [
        (f"{panel.name}_tenon_{line}_{place}", line, at)
        for line in range(1, count)
        for place, at in enumerate(_line(spec, panel, line, count), 1)
    ]
    slips = {
        name: slip(
            name,
            f"Loose tenon, {panel.title.lower()} {name.split('_tenon_')[1].replace('_', ', ')}",
            panel.material,
            at,
        )
        for name, _, at in tenons
    }
    joints = [_edge(panel, boards[k], boards[k + 1]) for k in range(count - 1)]
    joints += [
        loose_tenon(f"{name}_in_{holder.name}", holder, slips[name], at, second=second)
        for name, line, at in tenons
        for holder, second in ((boards[line - 1], False), (boards[line], True))
    ]
    cut = [_with_cuts(board, joints) for board in boards]
    return GlueUp(panel.name, panel.title, Bench(spec, (*cut, *slips.values()), tuple(joints), ()))


def _lying(panel: Part) -> tuple[Frame, Blank]:
    """The panel's blank with x along its grain, and where that stands."""
    blank, frame = panel.shape.blank, panel.frame
    if not panel.grain_across:
        return frame, blank
    turned = Frame.of(
        frame.to_bench((blank.length, 0.0, 0.0)), frame.y_axis, scale(frame.x_axis, -1.0)
    )
    return turned, Blank(blank.width, blank.length, blank.thickness)


def _board(panel: Part, k: int, count: int) -> Part:
    frame, blank = _lying(panel)
    width = blank.width / count
    return Part(
        name=f"{panel.name}_board_{k + 1}",
        title=f"Board {k + 1}, {panel.title.lower()}",
        kind="board",
        material=panel.material,
        shape=Shape(Blank(blank.length, width, blank.thickness), ()),
        frame=Frame(
            frame.to_bench((0.0, k * width, 0.0)), frame.x_axis, frame.y_axis, frame.z_axis
        ),
        notes=(f"one of {count} to be glued up, before any joint of the panel is cut",),
    )


def _with_cuts(board: Part, joints: list[Joint]) -> Part:
    given: Mapping[bool, str] = {False: "cuts_first", True: "cuts_second"}
    cuts = [
        cut
        for joint in joints
        for second, name in given.items()
        if joint.parts[second] == board.name
        for cut in getattr(joint, name)
    ]
    return replace(board, shape=Shape(board.shape.blank, tuple(cuts)))


def _places(spec: BenchSpec, length_: float) -> list[float]:
    """Middles of the tenons along a panel so long; none where it is too short for one."""
    width = spec.number("glue_tenon_width") + spec.number("glue_tenon_fit") + WOOD_BETWEEN
    first = spec.number("glue_tenon_in")
    span = length_ - 2.0 * first
    if span < width:
        return [length_ / 2.0] if length_ >= width + WOOD_BETWEEN else []
    steps = math.ceil(span / spec.number("glue_tenon_spacing") - 1e-9)
    return [first + k * span / steps for k in range(steps + 1)]


def _line(spec: BenchSpec, panel: Part, line: int, count: int) -> list[LooseTenon]:
    """The tenons in one line between two boards."""
    frame, blank = _lying(panel)
    thickness, fit = spec.number("glue_tenon_thickness"), spec.number("glue_tenon_fit")
    if not _with_tenons(spec) or thickness + fit > _MOST * blank.thickness + 1e-9:
        return []
    places = _places(spec, blank.length)
    apart = places[1] - places[0] if len(places) > 1 else 0.0
    way = frame.x_axis
    told = [
        Measure("first_tenon", x, "mm", "from the end to its middle", FIRST, way)
        for x in places[:1]
    ]
    if apart:
        between = f"between {len(places)} tenons' middles"
        told.append(Measure("spacing", apart, "mm", between, FIRST, way))
    return [
        LooseTenon(
            middle=frame.to_bench((x, line * blank.width / count, blank.thickness / 2.0)),
            out=frame.y_axis,
            along=frame.x_axis,
            width=spec.number("glue_tenon_width"),
            thickness=thickness,
            depth_first=spec.number("glue_tenon_depth"),
            depth_second=spec.number("glue_tenon_depth"),
            fit=fit,
            places=tuple(told),
        )
        for x in places
    ]


def _edge(panel: Part, first: Part, second: Part) -> Joint:
    """The two edges that are glued."""
    blank = first.shape.blank
    corners: tuple[Vec3, ...] = tuple(
        first.frame.to_bench((x, blank.width, z))
        for x, z in (
            (0.0, 0.0),
            (blank.length, 0.0),
            (blank.length, blank.thickness),
            (0.0, blank.thickness),
        )
    )
    return glued_faces(
        f"glue_line_{first.name}",
        "glued edges",
        first,
        second,
        corners,
        _lying(panel)[0].y_axis,
        (Measure("board_width", blank.width, "mm", "of each board, planed to it"),),
    )


def _snug(_spec: BenchSpec) -> tuple[dict[str, float], ...]:
    return (
        {
            "glue_tenon_in": 20.0,
            "glue_tenon_width": 5.0,
            "glue_tenon_thickness": 3.0,
            "glue_tenon_depth": 4.0,
            "glue_tenon_fit": 0.2,
        },
    )


MEMBER = Member("glue-ups", PARAMETERS)
TENON_MEMBER = Member(
    "glue-up tenons", TENON_PARAMETERS, TENON_CONSTRAINTS, present=_with_tenons, snug=_snug
)
