"""Strips glued on the front edges of boards of sheet: lippings, and edge bands, which are thin.

A board keeps its finished size; the sheet under the strip is narrower by as much.  Frame of a
strip: x along its board, face side to the front, y through the board from its face side.  mm.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from geometry.cuts.chamfer import Chamfer, ChamferEnd
from geometry.cuts.contour import Face
from geometry.cuts.cut import Blank
from geometry.cuts.edge_moulding import EdgeMoulding
from geometry.cuts.removal import HalfSpace
from geometry.design.joint import Joint, Measure
from geometry.design.part import Part, Shape
from geometry.joints.glued_faces import glued_faces
from geometry.joints.reference_faces import Told, places_of
from geometry.primitives.frame import Frame, Vec3, opposite

TIMBER, SHEET = "timber", "sheet"
_STRIP = Told("lipping", "the lipping", "the lipping")
LIPPED = "glued lipping"  # the joint of a strip and its board
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


def front_strip(core: Part, lip: float, low: float, high: float, timber: str) -> Part:
    """The strip on the far edge of a board of sheet, from ``low`` to ``high`` of its x."""
    blank, frame = core.shape.blank, core.frame
    return Part(
        name=f"{core.name}_lipping",
        title=f"{strip_word(lip)}, {core.title[:1].lower()}{core.title[1:]}",
        kind=f"{core.kind} lipping",
        material=timber,
        shape=Shape(Blank(high - low, blank.thickness, lip), ()),
        frame=Frame(
            frame.to_bench((low, blank.width + lip, 0.0)),
            frame.x_axis,
            frame.z_axis,
            opposite(core.frame.y_axis),
        ),
    )


def glued_strip(core: Part, strip: Part, whole: float) -> Joint:
    """The joint of the two, over the whole strip; ``whole`` is the board's finished width."""
    sizes, z = strip.shape.blank, strip.shape.blank.thickness
    corners: tuple[Vec3, ...] = (
        strip.frame.to_bench((0.0, 0.0, z)),
        strip.frame.to_bench((sizes.length, 0.0, z)),
        strip.frame.to_bench((sizes.length, sizes.width, z)),
        strip.frame.to_bench((0.0, sizes.width, z)),
    )
    measures = strip_measures(core, strip, corners, whole)
    into = opposite(core.frame.y_axis)
    return glued_faces(strip.name, LIPPED, strip, core, corners, into, measures)


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
