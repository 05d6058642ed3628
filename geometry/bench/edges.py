"""Chamfers, round-overs or coves on the outside front arrises of top, bottom and end panels.

Both legs of a chamfer are the same number: one along the outside face, square to the back edge, one
down into the thickness.  Measured so, the flats of two mitred boards meet in one line at the mitre,
however the front leans.  Round-overs and coves are cut square to each arris and mitred at the
knees; where the front leans they meet at the case's mitres but nearly, with a step that is told.
Stopped ones, chamfers too, are cut square to each arris and do not come to the mitres, so that each
board may have them or not.
"""

from __future__ import annotations

import math
from itertools import pairwise

from geometry.bench.arris_rows import told
from geometry.bench.case import has_case, top_front
from geometry.bench.case_numbers import LEFT, RIGHT, CaseNumbers, case_numbers
from geometry.bench.constraint import Constraint, rule
from geometry.bench.derived import Derived, derived_length
from geometry.bench.member import Member
from geometry.bench.stopped_runs import between, square_ends
from geometry.cuts.chamfer import Chamfer, ChamferEnd
from geometry.cuts.contour import Face
from geometry.cuts.cut import Cut
from geometry.cuts.edge_moulding import CHAMFER, FORMS, EdgeMoulding, along_arris
from geometry.cuts.overrun import LAP, OVERRUN
from geometry.cuts.removal import HalfSpace
from geometry.design.parameter import Parameter, choice, length
from geometry.design.part import Part
from geometry.design.spec import BenchSpec
from geometry.primitives.frame import Vec2, Vec3, cross, scale, unit
from shared.tolerances import COPLANAR

ALL_BOARDS, TOP_AND_BOTTOM, TOP_ALONE = "all boards", "top and bottom", "top alone"
ON_BOARDS = {  # by choice, the kinds of parts
    ALL_BOARDS: ("top", "bottom", "end panel"),
    TOP_AND_BOTTOM: ("top", "bottom"),
    TOP_ALONE: ("top",),
}
_LEAST = 0.01  # mm: no edge tool takes off less, and no drawing shows it


def _moulded(spec: BenchSpec) -> bool:
    """Whether the edges are other than chamfered."""
    return spec.word("edge_form") != CHAMFER


def _stop(spec: BenchSpec) -> float:
    return spec.number("edge_stop")


PARAMETERS: tuple[Parameter, ...] = (
    choice(
        "edge_form",
        "Front edges",
        "Edges",
        CHAMFER,
        FORMS,
        "The form of the outside front arrises of top, bottom and end panels.",
    ),
    length(
        "chamfer",
        "Chamfer",
        "Edges",
        2.0,
        0,
        12,
        "On the outside front arrises of top, bottom and end panels; 0 leaves them sharp.",
        step=0.5,
        applies=lambda spec: not _moulded(spec),
    ),
    length(
        "edge_size",
        "Front edge size",
        "Edges",
        5.0,
        0.5,
        25,
        "Radius of the round-over or cove; measured on both faces from the arris.",
        step=0.5,
        applies=_moulded,
    ),
    length(
        "edge_stop",
        "Front edges stopped",
        "Edges",
        0,
        0,
        400,
        "Along each board, from its corners to where they begin; 0 runs through and turns the "
        "corners.",
    ),
    choice(
        "edge_where",
        "Front edges on",
        "Edges",
        ALL_BOARDS,
        (ALL_BOARDS, TOP_AND_BOTTOM, TOP_ALONE),
        "Where they are stopped, the boards that have them.",
        applies=lambda spec: _stop(spec) > 0.0,
    ),
)

CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "chamfer_board",
        "chamfer edge_form board_thickness",
        lambda s: 1.0 if _moulded(s) else s.number("board_thickness") / 2.0 - s.number("chamfer"),
        "the chamfer would take more than half the board's thickness",
    ),
)


MOULDED_CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "edge_board",
        "edge_size board_thickness",
        lambda s: s.number("board_thickness") / 2.0 - s.number("edge_size"),
        "the edge would take more than half the board's thickness",
    ),
)


def _cuts(spec: BenchSpec, part: Part) -> tuple[Cut, ...]:
    """The edges of one part of the case; on a board of sheet only those that its lipping is too
    thin for."""
    if part.kind not in ("top", "bottom", "end panel"):
        return ()
    return edges_of(spec, part) if reaches_sheet(spec, part) else ()


def reaches_sheet(spec: BenchSpec, part: Part) -> bool:
    """Whether the edges of a board of the case are cut in it, not in its lipping alone."""
    c = case_numbers(spec)
    behind = c.behind(part.name)
    if behind <= 0.0:
        return True
    # What is moulded is measured square to the arris, a chamfer that runs through square to the
    # back edge.
    if (_moulded(spec) or _stop(spec) > 0.0) and part.kind == "end panel":
        behind = c.lips[2]
    return spec.number(size_name(spec)) > behind + COPLANAR


def edges_of(spec: BenchSpec, part: Part) -> tuple[Chamfer | EdgeMoulding, ...]:
    """The edges of a whole board of the case, in its own frame."""
    c, size, stop = case_numbers(spec), spec.number(size_name(spec)), _stop(spec)
    if size < _LEAST:
        return ()
    arris = _arris(c, part)
    if stop > 0.0:
        if part.kind not in ON_BOARDS[spec.word("edge_where")]:
            return ()
        arris = between(arris, stop, size)
    elif not _moulded(spec):
        return _along(c, part, arris)
    return _mouldings(c, part, arris, spec.word("edge_form"), size, stopped=stop > 0.0)


def size_name(spec: BenchSpec) -> str:
    """The number that is the size of the edges."""
    return "edge_size" if _moulded(spec) else "chamfer"


def _arris(c: CaseNumbers, part: Part) -> tuple[Vec2, ...]:
    """The outside front arris of a part of the case, in its own x, y."""
    found = _whole_arris(c, part)
    back = c.back_lip(part.name)
    low = c.end_lip(part.name, RIGHT if part.kind == "top" else LEFT)
    if part.kind == "end panel":
        low = 0.0
    # Of sheet it begins behind the lippings on its back edge and its end.
    return tuple((x - low, y - back) for x, y in found) if back or low else found


def _whole_arris(c: CaseNumbers, part: Part) -> tuple[Vec2, ...]:
    """The same with the lippings that it has at the back and on its ends."""
    if part.kind == "top":
        return top_front(c)
    if part.kind == "bottom":
        changes = c.bevel_changes
        middle = () if changes is None else ((changes, c.depth),)
        return ((0.0, c.depth), *middle, (c.length, c.depth))
    return _panel_arris(c, part)


def _mouldings(
    c: CaseNumbers, part: Part, arris: tuple[Vec2, ...], form: str, size: float, *, stopped: bool
) -> tuple[EdgeMoulding, ...]:
    """A moulding for each stretch of the arris, cut off at the knees on the plane halfway, and
    stopped at both ends or run out there."""
    t = part.shape.blank.thickness
    ways = [_way(p, q) for p, q in pairwise(arris)]
    knees = [
        unit((ways[k][0] + ways[k + 1][0], ways[k][1] + ways[k + 1][1], 0.0))
        for k in range(len(ways) - 1)
    ]
    found = []
    for k, (p, q) in enumerate(pairwise(arris)):
        stops = (stopped and k == 0, stopped and k == len(knees))
        down: Vec3 = (0.0, _shift(c, part, p, q), -1.0)
        outward = unit(cross((ways[k][0], ways[k][1], 0.0), down))
        if outward[1] < 0.0:
            outward = scale(outward, -1.0)
        planes = list(square_ends(p, q, t, stops))
        if k > 0:
            on = (p[0] - LAP * knees[k - 1][0], p[1] - LAP * knees[k - 1][1], 0.0)
            planes.append(HalfSpace(on, scale(knees[k - 1], -1.0)))
        if k < len(knees):
            on = (q[0] + LAP * knees[k][0], q[1] + LAP * knees[k][1], 0.0)
            planes.append(HalfSpace(on, knees[k]))
        found.append(
            along_arris(
                form,
                size,
                ((*p, t), (*q, t)),
                ((0.0, 0.0, 1.0), outward),
                stopped=stops,
                past=4.0 * size + OVERRUN,
                planes=tuple(planes),
            )
        )
    return tuple(found)


def _way(p: Vec2, q: Vec2) -> Vec2:
    run = math.dist(p, q)
    return ((q[0] - p[0]) / run, (q[1] - p[1]) / run)


def _panel_arris(c: CaseNumbers, part: Part) -> tuple[Vec2, ...]:
    blank = part.shape.blank
    return ((0.0, _panel_front(c, part, 0.0)), (blank.length, _panel_front(c, part, blank.length)))


def _panel_front(c: CaseNumbers, part: Part, x: float) -> float:
    height = part.frame.to_bench((x, 0.0, 0.0))[2] - c.floor
    return c.depth + c.flare_of(part.name.removeprefix("end_panel_")).amount * height / c.height


def _along(c: CaseNumbers, part: Part, arris: tuple[Vec2, ...]) -> tuple[Chamfer, ...]:
    """A chamfer for each stretch of the arris, on the reverse, mitred where stretches meet.

    A deep stretch of the top, and all of the bottom, has its edge on a leaning front plane, so the
    flat's lower line moves with it.
    """
    t, leg = part.shape.blank.thickness, c.chamfer
    first = _stretched(arris[1], arris[0])
    last = _stretched(arris[-2], arris[-1])
    points = (first, *arris[1:-1], last)
    inner = _inset(points, leg)
    found = []
    past = _past_knees(points)
    for at, ((p, q), (i, j)) in enumerate(zip(pairwise(points), pairwise(inner), strict=True)):
        shift = _shift(c, part, p, q) * leg
        run = math.dist(p, q)
        dx, dy = (q[0] - p[0]) / run, (q[1] - p[1]) / run
        # A leaning flat carried on would bite into the square edge beyond its knee.
        farthest = math.inf if shift == 0.0 else LAP
        before, after = min(past[at], farthest), min(past[at + 1], farthest)
        ends = tuple(
            ChamferEnd((x, y, t), (u, v, t), (x, y + shift, t - leg))
            for x, y, u, v in (
                (p[0] - dx * before, p[1] - dy * before, i[0] - dx * before, i[1] - dy * before),
                (q[0] + dx * after, q[1] + dy * after, j[0] + dx * after, j[1] + dy * after),
            )
        )
        found.append(Chamfer(ends[0], ends[1], Face.REVERSE))
    return tuple(found)


def _past_knees(points: tuple[Vec2, ...]) -> list[float]:
    """How far the cutters at each point run past it, in mm.

    At an outward knee they may: the two flats then meet in their own line.  At an inward knee they
    would bite; there they run into one another by no more than it takes to leave no skin between
    them, as thin as rounding.
    """
    past = [0.0] * len(points)
    reach = math.dist(points[0], points[-1])  # at a slight knee that line runs far along
    for k in range(1, len(points) - 1):
        a, b, c = points[k - 1], points[k], points[k + 1]
        turn = (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0])
        past[k] = reach if turn < 0.0 else LAP
    return past


def _shift(c: CaseNumbers, part: Part, p: Vec2, q: Vec2) -> float:
    """How the edge recedes (or comes forward) per mm below the outside face, along a stretch."""
    if part.kind == "bottom":
        return c.bottom_bevel((p[0] + q[0]) / 2.0) / c.thickness
    if part.kind == "top" and p[1] == q[1]:
        # The top's x runs from the right end.
        for side, from_end in ((RIGHT, p[0]), (LEFT, c.length - q[0])):
            flare = c.flare_of(side)
            if flare.amount > 0.0 and from_end < flare.straight:
                return -flare.amount / c.height
    return 0.0


def _stretched(inner: Vec2, end: Vec2) -> Vec2:
    """The end of an arris, moved on into the air in its own direction."""
    run = math.dist(inner, end)
    factor = OVERRUN / run
    return (end[0] + (end[0] - inner[0]) * factor, end[1] + (end[1] - inner[1]) * factor)


def _inset(points: tuple[Vec2, ...], leg: float) -> tuple[Vec2, ...]:
    """The line on the face: ``leg`` back from the arris, measured in y on every stretch's ends.

    Stretches parallel to the back edge and those of end panels are measured along y; a run-out is
    measured square to itself, and meets its neighbours on the mitre.
    """
    if len(points) == 2:
        return tuple((x, y - leg) for x, y in points)
    offsets = [_offset(p, q, leg) for p, q in pairwise(points)]
    inner = [offsets[0][0]]
    for (a, b), (d, e) in pairwise(offsets):
        inner.append(_meeting(a, b, d, e))
    inner.append(offsets[-1][1])
    return tuple(inner)


def _offset(p: Vec2, q: Vec2, leg: float) -> tuple[Vec2, Vec2]:
    run = math.dist(p, q)
    dx, dy = (q[0] - p[0]) / run, (q[1] - p[1]) / run
    step = (dy * leg, -dx * leg)
    return ((p[0] + step[0], p[1] + step[1]), (q[0] + step[0], q[1] + step[1]))


def _meeting(a: Vec2, b: Vec2, d: Vec2, e: Vec2) -> Vec2:
    """Where the lines a-b and d-e cross; b, where d begins, for lines of one direction."""
    ux, uy = b[0] - a[0], b[1] - a[1]
    vx, vy = e[0] - d[0], e[1] - d[1]
    turn = ux * vy - uy * vx
    if abs(turn) <= COPLANAR * math.dist(a, b):
        return b
    t = ((d[0] - a[0]) * vy - (d[1] - a[1]) * vx) / turn
    return (a[0] + t * ux, a[1] + t * uy)


def _derived(spec: BenchSpec) -> tuple[Derived, ...]:
    """On an end that leans, the cutter's profile is square to the end's own arris and so reaches
    farther level than on the top: that much is eased by hand."""
    if _stop(spec) > 0.0:
        return ()
    c, size = case_numbers(spec), spec.number("edge_size")
    leans = [math.radians(c.lean_deg(end.side)) for end in (c.left, c.right) if end.mitred]
    if max(leans, default=0.0) <= 0.0:
        return ()
    return (
        derived_length(
            "edge_step",
            "Step in the front edges at a mitre",
            "Edges",
            size / math.cos(max(leans)) - size,
            "edge size / cos(front lean) − edge size; eased by hand",
        ),
    )


def _notes(spec: BenchSpec, part: Part) -> tuple[str, ...]:
    """Where a stopped edge begins; one that runs through says so beside its number."""
    if part.kind not in (*ON_BOARDS[ALL_BOARDS], "board lipping"):
        return ()
    return told("outside front arris", _stop(spec), "the ends", "", part)


MEMBER = Member("edges", PARAMETERS, CONSTRAINTS, cuts=_cuts, present=has_case)

MOULDED_MEMBER = Member(
    "moulded edges",
    (),
    MOULDED_CONSTRAINTS,
    derived=_derived,
    present=lambda spec: has_case(spec) and _moulded(spec),
    snug=lambda _spec: ({"edge_size": 5.0},),
)

STOPPED_MEMBER = Member(
    "stopped edges",
    (),
    notes=_notes,
    present=lambda spec: has_case(spec) and _stop(spec) > 0.0,
)
