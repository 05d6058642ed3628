"""The posts of a back rest: straight ones tenoned into the seat, and knee'd ones behind it.

A post behind the seat is sawn from a wide board: upright along the back edges, leaning from the
seat's height up.  Its grain runs half way between the two (common practice, no source), so that
neither part has it shorter than it must be.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache

from geometry.bench.rest_numbers import (
    RestNumbers,
    post_frame,
    post_tenon,
    rest_frame,
)
from geometry.bench.seasons import Seasons
from geometry.bench.seat_back import Edge
from geometry.cuts.cut import Blank, Cut
from geometry.cuts.saw import SawCut
from geometry.cuts.shaped_edge import ShapedEdge
from geometry.design.joint import Joint
from geometry.design.part import Part, Shape
from geometry.joints.face_to_face import SCREWED, SLOTTED, Corners
from geometry.joints.leaning_tenon import leaning_tenon
from geometry.joints.let_in import LetInNumbers, let_in
from geometry.joints.screw_rows import (
    LEAST_OVER,
    bite_in,
    has_room,
    screw_for,
    stations,
)
from geometry.joints.screwed_faces import ScrewedFaces, ScrewPlace, laid_on, screwed_faces
from geometry.primitives.frame import X_AXIS, Frame, Vec2, Vec3
from shared.fixings import WOOD_SCREWS

UP: Vec3 = (0.0, 0.0, 1.0)
_DOWN: Vec3 = (0.0, 0.0, -1.0)
# Whoever leans back levers posts off: thicker and longer screws than elsewhere; common practice, no
# source.
_SCREW = WOOD_SCREWS["no. 10"]
_BITE = 40.0  # mm
_CLEAR = 8.0  # mm between the middles of two screws that cross; common practice, no source
_SLOTS = "screwed fast to the top of the wall behind it and in slots below, as that moves"
_STRAIGHT = 1e-6  # degrees: a knee of less is none
# mm: a blank is larger by this than the outline whose corners lie on its sides, so that rounding
# leaves no hair of the blank's own faces at them.
_AIR = 1e-7


def posts(r: RestNumbers, timber: str) -> tuple[Part, ...]:
    """All posts from left to right."""
    make = _knee_post if r.behind else _straight_post
    return tuple(
        Part(
            name=f"post_{post + 1}",
            title=f"Post {post + 1}",
            kind="post",
            material=timber,
            shape=shape,
            frame=frame,
            notes=(_SLOTS,) if r.behind and any(edge.moves for edge in r.seat.edges) else (),
        )
        for post in range(r.posts)
        for shape, frame in (make(r, post),)
    )


def _straight_post(r: RestNumbers, post: int) -> tuple[Shape, Frame]:
    """From its top, sawn in line with the rails, to the end of its tenon, which the joint saws."""
    at, w, d = post_tenon(r, post), r.post_width, r.post_depth
    flat = rest_frame(r)
    frame = post_frame(r, post)
    up = frame.turn_to_local(flat.y_axis)
    # The top is level with the rails: x where the end's plane crosses both edges.
    starts = [-up[1] * (y - w / 2.0) / up[0] for y in (0.0, w)]
    middle = frame.to_local(flat.to_bench((r.middle(post) + r.lean_of(post) * r.top, r.top, 0.0)))
    start = middle[0] + min(starts)
    ends = [at.point(y, z, 0.0)[0] for y in (0.0, w) for z in (0.0, d)]
    ends += [
        at.point(y, z, at.length)[0] for y in (at.y_low, at.y_high) for z in (at.z_low, at.z_high)
    ]
    moved = Frame(frame.to_bench((start, 0.0, 0.0)), frame.x_axis, frame.y_axis, frame.z_axis)
    cuts: tuple[Cut, ...] = ()
    if max(starts) - min(starts) > 0.0:
        cuts = (SawCut("top end", (middle[0] - start, w / 2.0, 0.0), up),)
    return Shape(Blank(max(ends) - start, w, d), cuts), moved


@lru_cache(maxsize=256)
def _outline(r: RestNumbers) -> tuple[Vec2, ...]:
    """A knee'd post seen from the side, in bench Y and Z: up the front, over, and down the back."""
    front, top, foot, d = r.front, r.seat.top, r.seat.foot, r.post_depth
    run = r.top
    knee = d * math.tan(math.radians(r.rake_deg) / 2.0)
    head = (front + run * r.sine, top + run * r.cosine)
    return (
        (front, foot),
        (front, top),
        head,
        (head[0] + d * r.cosine, head[1] - d * r.sine),
        (front + d, top - knee),
        (front + d, foot),
    )


def _knee_post(r: RestNumbers, post: int) -> tuple[Shape, Frame]:
    """x up along the grain, y to the back, face side to the right."""
    right = r.side(post, 1.0, 0.0)
    if r.rake_deg < _STRAIGHT:
        blank = Blank(r.seat.top + r.height - r.seat.foot, r.post_depth, r.post_width)
        return Shape(blank, ()), Frame.of((right, r.front, r.seat.foot), UP, (0.0, 1.0, 0.0))
    turn = math.radians(r.rake_deg) / 2.0
    along, across = (math.sin(turn), math.cos(turn)), (math.cos(turn), -math.sin(turn))
    points = [(y * along[0] + z * along[1], y * across[0] + z * across[1]) for y, z in _outline(r)]
    low, near = min(x for x, _ in points) - _AIR, min(y for _, y in points) - _AIR
    flat = tuple((x - low, y - near) for x, y in points)
    long, wide = (max(point[axis] for point in flat) + _AIR for axis in (0, 1))
    size = Blank(long, wide, r.post_width)
    origin = (
        right,
        low * along[0] + near * across[0],
        low * along[1] + near * across[1],
    )
    frame = Frame.of(origin, (0.0, *along), (0.0, *across))
    lean = rest_frame(r).y_axis
    cuts: tuple[Cut, ...] = (
        ShapedEdge(flat[:3], far=False),
        ShapedEdge(flat[5:2:-1], far=True),
        SawCut("level foot", (*flat[0], 0.0), frame.turn_to_local((0.0, 0.0, -1.0))),
        SawCut("top end", (*flat[2], 0.0), frame.turn_to_local(lean)),
    )
    return Shape(size, cuts), frame


@dataclass(frozen=True, slots=True)
class Behind:
    """What posts behind a seat ask of it: how its boards move, and the X of what else goes down
    into the parts of its edge, by their names."""

    seasons: Seasons
    taken: Mapping[str, Sequence[float]]


def post_joints(r: RestNumbers, parts: Mapping[str, Part], behind: Behind) -> tuple[Joint, ...]:
    """Each post with the seat."""
    found: list[Joint] = []
    for post in range(r.posts):
        name = f"post_{post + 1}"
        if r.behind:
            found += [_on_edge(r, post, edge, parts, behind) for edge in r.seat.edges]
        else:
            at = post_tenon(r, post)
            board = parts[r.seat.board]
            found.append(leaning_tenon(f"{name}_seat", "post tenon", parts[name], board, at))
    return tuple(found)


def _on_edge(
    r: RestNumbers, post: int, edge: Edge, parts: Mapping[str, Part], behind: Behind
) -> Joint:
    """A post on a back edge, or let into it; of a corner's mitre it keeps off."""
    name = f"post_{post + 1}"
    left, right = r.side(post, -1.0, 0.0), r.side(post, 1.0, 0.0)
    if r.let_in > 0.0:
        numbers = LetInNumbers(left, right, r.let_in, edge.low, edge.high, r.fit)
        return let_in(f"{name}_{edge.part}", parts[edge.part], parts[name], numbers)
    low, high = max(left, r.seat.edged[0]), min(right, r.seat.edged[1])
    corners: Corners = (
        (low, 0.0, edge.low),
        (high, 0.0, edge.low),
        (high, 0.0, edge.high),
        (low, 0.0, edge.high),
    )
    held = SLOTTED if edge.moves else SCREWED
    screwed = _screwed(r, edge, corners, (parts[edge.part], behind))
    return screwed_faces(f"{name}_{edge.part}", held, parts[edge.part], parts[name], screwed)


def _screwed(
    r: RestNumbers, edge: Edge, corners: Corners, told: tuple[Part, Behind]
) -> ScrewedFaces:
    """From behind through the post: into an edge side by side, into a wall one below another, the
    first of them fast and the others in slots."""
    board, behind = told
    (low, _, foot), (high, _, _), (_, _, top), _ = corners
    screw = screw_for(high - low, _SCREW)
    deep = board.shape.blank.thickness if edge.moves else board.shape.blank.width
    bite = bite_in(deep, _BITE)
    screws: tuple[ScrewPlace, ...] = ()
    holds = has_room(screw, high - low) and bite > 0.0
    holds = holds and top - foot >= screw.root + 2.0 * LEAST_OVER
    if holds and edge.moves:
        x = (low + high) / 2.0
        downs = stations(top - foot)
        screws = tuple(
            ScrewPlace((x, 0.0, top - down), _DOWN, *behind.seasons.moved(far), far <= 0.0)
            for down, far in ((one, one - downs[0]) for one in downs)
        )
    elif holds:
        places = _beside(low, high, behind.taken.get(edge.part, ()))
        screws = tuple(ScrewPlace((x, 0.0, (foot + top) / 2.0), X_AXIS) for x in places)
    return laid_on(corners, (0.0, 1.0, 0.0), screws, screw, through=r.post_depth, bite=bite)


def _beside(low: float, high: float, taken: Sequence[float]) -> tuple[float, ...]:
    """The usual places across a post; a single one aside where another screw goes down there."""
    places = stations(high - low)
    if len(places) > 1 or not taken:
        return tuple(low + one for one in places)
    tried = [low + share * (high - low) for share in (0.5, 0.3, 0.7)]
    free = next((x for x in tried if min(abs(x - t) for t in taken) >= _CLEAR), None)
    return (free if free is not None else tried[0],)
