"""The lines at which chamfers, round-overs and coves begin, and where stopped ones end.

They are read from the cuts themselves, in each view that sees the face they lie on nearly flat.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from itertools import chain

from geometry.bench.arris_rows import EDGE_ON
from geometry.bench.bench import Bench
from geometry.bench.board_lippings import BOARD_LIPPING, Lip, lips
from geometry.bench.case_numbers import case_numbers
from geometry.bench.edges import size_name
from geometry.cuts.chamfer import Chamfer
from geometry.cuts.contour import Face
from geometry.cuts.edge_moulding import EdgeMoulding
from geometry.design.part import Part
from geometry.dimensioning.pull import Handhold, Pull
from geometry.primitives.frame import Vec3, add, cross, dot, scale, subtract, unit
from geometry.views.bench_views import bench_views, end_view
from geometry.views.view import END_LEFT, FRONT, PLAN, View
from shared.tolerances import COPLANAR

_FLAT = 0.8  # cosine of the steepest a face may lie in a view to be taken hold of there
_DOWN: Vec3 = (0.0, 0.0, -1.0)

# The size of mouldings, and how far in they are stopped.
_LEGS = ("leg_edge_size", "leg_edge_down")
_LEG_ENDS = ("foot_edge_size", "")
_CASE = ("top", "bottom", "end panel", BOARD_LIPPING)


def moulding_handholds(bench: Bench) -> tuple[Handhold, ...]:
    """Of all parts with mouldings on their arrises: the ends of stopped ones before their lines."""
    stops: list[Handhold] = []
    lines: list[Handhold] = []
    for part in bench.parts:
        for cut in part.shape.cuts:
            if not isinstance(cut, EdgeMoulding):
                continue
            size, stop = _names(bench, part, cut)
            for view in bench_views(bench):
                for on_face, on_other in _faces(cut):
                    if not _faces_viewer(part, cut, on_face, on_other, view):
                        continue
                    lines.append(_line(part, cut, on_face, view, size))
                    if stop and cut.stopped:
                        stops += _ends(bench, part, cut, on_face, view, stop)
    return (*stops, *lines)


def chamfer_handholds(bench: Bench) -> tuple[Handhold, ...]:
    """Of the case's front arrises, in the front view: how far down the flat comes."""
    cuts = chain.from_iterable(
        ((part, cut) for cut in part.shape.cuts if isinstance(cut, Chamfer))
        for part in bench.parts
        if part.kind in _CASE
    )
    size = bench.spec.number("chamfer")
    return tuple(_down_the_front(part, cut, size) for part, cut in cuts)


def lipping_handholds(bench: Bench) -> tuple[Handhold, ...]:
    """The joints behind the lippings of the case's boards, of ends as seen from there."""
    found, end = [], end_view(bench)
    for lip in lips(bench.spec):
        core = bench.part(lip.core.name)
        side = "left" if end is END_LEFT else "right"
        if core.kind == "end panel" and core.name != f"end_panel_{side}":
            continue
        view = end if core.kind == "end panel" else PLAN
        t, long = core.shape.blank.thickness, core.shape.blank.length
        line = lip.point(0.0, t, 0.0), lip.point(long, t, 0.0)
        inward = (0.0, -lip.behind / lip.thickness, 0.0)
        found.append(_handhold(core, view, line, inward, "board_lip"))
        for ends, moves in _other_joints(bench, lip, core):
            found.append(_handhold(core, view, ends, moves, "board_lip"))
    return tuple(found)


def _other_joints(bench: Bench, lip: Lip, core: Part) -> Iterator[tuple[tuple[Vec3, Vec3], Vec3]]:
    """The joints behind lippings on a board's back edge and its ends, and how they move."""
    c, blank = case_numbers(bench.spec), core.shape.blank
    t, long = blank.thickness, blank.length
    if c.back_lip(core.name) > 0.0:
        yield ((0.0, 0.0, t), (long, 0.0, t)), (0.0, 1.0, 0.0)
    for x, lipped, way in ((0.0, lip.run[0] < 0.0, 1.0), (long, lip.run[1] > long, -1.0)):
        if lipped:
            yield ((x, 0.0, t), lip.point(x, t, 0.0)), (way, 0.0, 0.0)


def _down_the_front(part: Part, cut: Chamfer, size: float) -> Handhold:
    """On a lipping the front is the face that is marked, and may lean: the size is upright."""
    if cut.face is Face.REVERSE:
        return _handhold(
            part, FRONT, _within(part, cut.start.on_edge, cut.end.on_edge), _DOWN, "chamfer"
        )
    down = scale(subtract(cut.start.on_face, cut.start.arris), 1.0 / size)
    return _handhold(
        part, FRONT, _within(part, cut.start.on_face, cut.end.on_face), down, "chamfer"
    )


def _within(part: Part, start: Vec3, end: Vec3) -> tuple[Vec3, Vec3]:
    """What of a line along the part is not in the air past its ends, where the cutter runs on."""
    run = subtract(end, start)
    shares = (
        (min(max(point[0], 0.0), part.shape.blank.length) - start[0]) / run[0]
        for point in (start, end)
    )
    first, last = (add(start, scale(run, share)) for share in shares)
    return first, last


def _names(bench: Bench, part: Part, cut: EdgeMoulding) -> tuple[str, str]:
    """A leg's long mouldings are stopped above, those round its end are not."""
    if part.kind in _CASE:
        return size_name(bench.spec), "edge_stop"
    if part.kind == "leg":
        return _LEGS if cut.stopped_start else _LEG_ENDS
    return f"{EDGE_ON[part.kind]}_size", f"{EDGE_ON[part.kind]}_stop"


def _faces(cut: EdgeMoulding) -> tuple[tuple[Vec3, Vec3], tuple[Vec3, Vec3]]:
    return ((cut.on_first, cut.on_second), (cut.on_second, cut.on_first))


def _faces_viewer(part: Part, cut: EdgeMoulding, on_face: Vec3, on_other: Vec3, view: View) -> bool:
    normal = unit(cross(on_face, subtract(cut.end, cut.start)))
    outward = scale(normal, -1.0) if dot(normal, on_other) > 0.0 else normal
    return dot(part.frame.turn_to_bench(outward), view.toward) > _FLAT


def _line(part: Part, cut: EdgeMoulding, on_face: Vec3, view: View, name: str) -> Handhold:
    inward = scale(on_face, cut.size)
    return _handhold(part, view, (add(cut.start, inward), add(cut.end, inward)), on_face, name)


def _ends(
    bench: Bench, part: Part, cut: EdgeMoulding, on_face: Vec3, view: View, name: str
) -> Iterator[Handhold]:
    """A stopped end moves along the arris by as much as its station along the board."""
    run = subtract(cut.end, cut.start)
    if abs(run[0]) <= COPLANAR:
        return  # across a lipping on an end; the one in front of it has the same stops
    board = bench.part(part.name.removesuffix("_lipping")) if part.kind == BOARD_LIPPING else part
    stations = dot(part.frame.turn_to_bench(run), board.frame.x_axis)
    along = scale(run, 1.0 / abs(stations))
    stopped = ((cut.start, cut.stopped_start, 1.0), (cut.end, cut.stopped_end, -1.0))
    for point, there, way in stopped:
        if there:
            across = (point, add(point, scale(on_face, cut.size)))
            yield _handhold(part, view, across, scale(along, way), name)


def _handhold(part: Part, view: View, ends: tuple[Vec3, Vec3], moves: Vec3, name: str) -> Handhold:
    """Between two points of the part, which move by ``moves`` for each mm of value."""
    start, end = (view.project(part.frame.to_bench(point)) for point in ends)
    u, v = view.project(part.frame.turn_to_bench(moves))
    seen = math.hypot(u, v)
    return Handhold(view.name, start, end, Pull(name, (u / seen, v / seen), 1.0 / seen))
