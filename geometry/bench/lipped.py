"""Strips glued on the edges of boards of sheet: lippings, and edge bands, which are thin.

A board keeps its finished size; the sheet under the strip is narrower by as much.  Frame of a
strip: x along the board's edge, face side outward, y through the board from its face side, or at
the back from its reverse.  mm.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from enum import Enum

from geometry.cuts.chamfer import Chamfer, ChamferEnd
from geometry.cuts.contour import Face
from geometry.cuts.cut import Blank
from geometry.cuts.edge_moulding import EdgeMoulding
from geometry.cuts.removal import HalfSpace
from geometry.design.joint import Joint, Measure
from geometry.design.later import Later
from geometry.design.part import Part, Shape
from geometry.joints.glued_faces import glued_faces
from geometry.joints.reference_faces import Told, places_of
from geometry.primitives.frame import Frame, Vec3, add, dot, opposite, scale
from shared.tolerances import COPLANAR
from shared.units import length_mark

TIMBER, SHEET = "timber", "sheet"
_STRIP = Told("lipping", "the lipping", "the lipping")
LIPPED = "glued lipping"  # the joint of a strip and its board
# Which edges of a board are lipped.  What runs along it laps over what lies on its ends.
FRONT_ALONE, FRONT_AND_BACK = "front", "front and back"
FRONT_AND_ENDS, ALL_ROUND = "front and ends", "all round"
LIPPED_ALONG = (FRONT_ALONE, FRONT_AND_BACK, FRONT_AND_ENDS, ALL_ROUND)
BAND = 1.0  # mm: what is thinner is a band of veneer, bought and not sawn
# By the kind of a strip, its thickness.
LIP_OF = {
    "lipping": "shelf_lip",
    "partition lipping": "partition_lip",
    "board lipping": "board_lip",
    "lid lipping": "lid_lip",
    "seat lipping": "panel_lip",
    "end lipping": "panel_lip",
}


def strip_word(lip: float) -> str:
    """What a strip of this thickness is called."""
    return "Edge band" if lip < BAND else "Lipping"


class EdgeOf(Enum):
    """An edge of a board, by the words that its strip is called by."""

    FRONT = ""
    BACK = "back"
    LEFT = "left"
    RIGHT = "right"


def lips_back(along: str) -> bool:
    """Whether a board that is lipped so has a strip on its back edge."""
    return along in (FRONT_AND_BACK, ALL_ROUND)


def lips_ends(along: str) -> bool:
    """Whether a board that is lipped so has strips on its ends."""
    return along in (FRONT_AND_ENDS, ALL_ROUND)


def strip_name(core: str, edge: EdgeOf = EdgeOf.FRONT) -> str:
    """The name of the strip on an edge of a board."""
    return "_".join(word for word in (core, edge.value, "lipping") if word)


def strip_title(core: Part, edge: EdgeOf, lip: float) -> str:
    """Its title."""
    board = f"{core.title[:1].lower()}{core.title[1:]}"
    if edge in (EdgeOf.LEFT, EdgeOf.RIGHT):
        return f"{strip_word(lip)}, {board}, {edge.value} end"
    where = " at the back" if edge is EdgeOf.BACK else ""
    return f"{strip_word(lip)}{where}, {board}"


def with_strips(wide: float, strips: str = "lipping", long: float | None = None) -> str:
    """The note of what a board of sheet measures once it has them; along only if they change it."""
    along = "" if long is None else f"{length_mark(round(long, 9))} long and "
    return f"with its {strips} {along}{length_mark(round(wide, 9))} wide"


def front_strip(core: Part, lip: float, low: float, high: float, timber: str) -> Part:
    """The strip on the far edge of a board of sheet, from ``low`` to ``high`` of its x."""
    return edge_strip(core, EdgeOf.FRONT, lip, (low, high), timber)


def edge_strip(core: Part, edge: EdgeOf, lip: float, run: tuple[float, float], timber: str) -> Part:
    """The strip on an edge of a board of sheet, along ``run`` of its x, or on an end of its y."""
    return Part(
        name=strip_name(core.name, edge),
        title=strip_title(core, edge, lip),
        kind=f"{core.kind} lipping",
        material=timber,
        shape=Shape(Blank(round(run[1] - run[0], 9), core.shape.blank.thickness, lip), ()),
        frame=_strip_frame(core, edge, lip, run),
    )


def _strip_frame(core: Part, edge: EdgeOf, lip: float, run: tuple[float, float]) -> Frame:
    blank, frame = core.shape.blank, core.frame
    if edge is EdgeOf.FRONT:
        start = frame.to_bench((run[0], blank.width + lip, 0.0))
        return Frame(start, frame.x_axis, frame.z_axis, opposite(frame.y_axis))
    if edge is EdgeOf.BACK:
        start = frame.to_bench((run[0], -lip, blank.thickness))
        return Frame(start, frame.x_axis, opposite(frame.z_axis), frame.y_axis)
    if (edge is EdgeOf.LEFT) == (frame.x_axis[0] > 0.0):
        start = frame.to_bench((-lip, run[0], 0.0))
        return Frame(start, frame.y_axis, frame.z_axis, frame.x_axis)
    start = frame.to_bench((blank.length + lip, run[1], 0.0))
    return Frame(start, opposite(frame.y_axis), frame.z_axis, opposite(frame.x_axis))


def glued_strip(core: Part, strip: Part, whole: float) -> Joint:
    """The joint of the two, as far as the strip lies on the board; ``whole`` is the board's
    finished size square to the strip's edge."""
    sizes, z = strip.shape.blank, strip.shape.blank.thickness
    ends = [core.frame.to_bench(at) for at in ((0.0, 0.0, 0.0), _far(core.shape.blank))]
    # What runs past the board laps over other strips there.
    reach = sorted(strip.frame.to_local(at)[0] for at in ends)
    low, high = max(0.0, round(reach[0], 9)), min(sizes.length, round(reach[1], 9))
    corners: tuple[Vec3, ...] = (
        strip.frame.to_bench((low, 0.0, z)),
        strip.frame.to_bench((high, 0.0, z)),
        strip.frame.to_bench((high, sizes.width, z)),
        strip.frame.to_bench((low, sizes.width, z)),
    )
    into = strip.frame.z_axis
    across = abs(dot(into, core.frame.y_axis)) > 0.5
    measured = strip_measures if across else end_strip_measures
    measures = Later(measured, core, strip, corners, whole)
    return glued_faces(strip.name, LIPPED, strip, core, corners, into, measures)


def _far(blank: Blank) -> Vec3:
    return (blank.length, blank.width, blank.thickness)


def end_strip_measures(
    core: Part, strip: Part, corners: Sequence[Vec3], whole: float
) -> tuple[Measure, ...]:
    """As ``strip_measures``, of a strip on an end; ``whole`` is the board's finished length."""
    return (
        *strip_sizes(core, strip, corners),
        Measure("core_length", core.shape.blank.length, "mm", "of the sheet under it", (1,)),
        Measure("finished_length", whole, "mm", f"of the {core.kind} with its lippings"),
    )


def strip_measures(
    core: Part, strip: Part, corners: Sequence[Vec3], whole: float
) -> tuple[Measure, ...]:
    """The strip's sizes and place, and what is measured of a board of sheet before and after it is
    glued on to the face with these ``corners``; ``whole`` is the board's finished width."""
    return (
        *strip_sizes(core, strip, corners),
        Measure("core_width", core.shape.blank.width, "mm", "of the sheet under the lipping", (1,)),
        Measure("finished_width", whole, "mm", f"of the {core.kind} with its lipping"),
    )


def strip_sizes(core: Part, strip: Part, corners: Sequence[Vec3]) -> tuple[Measure, ...]:
    """The strip's sizes, and its place on the board."""
    sizes = strip.shape.blank
    return (
        Measure(
            "lipping_thick", sizes.thickness, "mm", "square to the joint", (0,), strip.frame.z_axis
        ),
        Measure("lipping_wide", sizes.width, "mm", "through the board", (0,), strip.frame.y_axis),
        *places_of(core, corners, strip.frame.z_axis, _STRIP, 1),
    )


def moved(cut: Chamfer | EdgeMoulding, old: Frame, new: Frame) -> Chamfer | EdgeMoulding:
    """The same cut in another frame; a chamfer is marked on the front there."""
    if isinstance(cut, EdgeMoulding):
        return moved_moulding(cut, old, new)

    def point(place: Vec3) -> Vec3:
        return new.to_local(old.to_bench(place))

    start, end = (
        ChamferEnd(point(at.arris), point(at.on_edge), point(at.on_face))
        for at in (cut.start, cut.end)
    )
    return Chamfer(start, end, Face.FACE_SIDE)


def mouldings_on(
    cuts: Iterable[EdgeMoulding], whole: Frame, piece: Part
) -> tuple[EdgeMoulding, ...]:
    """Of a whole board's mouldings those that take something off a piece of it, in its frame."""
    found = (moved_moulding(cut, whole, piece.frame) for cut in cuts)
    return tuple(cut for cut in found if _takes_from(cut, piece.shape.blank))


def _takes_from(cut: EdgeMoulding, blank: Blank) -> bool:
    """Whether it reaches into a blank, as far as the box about it tells."""
    points = [cut.start, cut.end]
    points += [
        add(at, scale(way, cut.size)) for at in points for way in (cut.on_first, cut.on_second)
    ]
    return all(
        min(along) < most - COPLANAR and max(along) > COPLANAR
        for along, most in zip(zip(*points, strict=True), _far(blank), strict=True)
    )


def moved_moulding(cut: EdgeMoulding, old: Frame, new: Frame) -> EdgeMoulding:
    """The same moulding in another frame."""

    def point(place: Vec3) -> Vec3:
        return new.to_local(old.to_bench(place))

    def turned(way: Vec3) -> Vec3:
        return new.turn_to_local(old.turn_to_bench(way))

    return replace(
        cut,
        start=point(cut.start),
        end=point(cut.end),
        on_first=turned(cut.on_first),
        on_second=turned(cut.on_second),
        ends=tuple(HalfSpace(point(at.point), turned(at.outward)) for at in cut.ends),
    )
