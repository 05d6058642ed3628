"""A tenon whose shoulder lies on the other piece's face, whatever the slant between the two.

An apron in a leaning leg, a leaning post in a seat, a rail between leaning posts.  The shoulder and
the end of the tenon are sawn by two planes parallel to that face, at one setting of the saw; the
tenon runs along its own grain, and so does its mortise.  A blind mortise is a little deeper than
the tenon is long, for glue.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from geometry.cuts.mortise import Corners, Mortise
from geometry.cuts.saw import SawCut
from geometry.cuts.shouldered_tenon import ShoulderedTenon
from geometry.design.joint import FIRST, SECOND, Contact, Joint, Measure
from geometry.design.part import Part
from geometry.joints.marking import called
from geometry.primitives.frame import (
    X_AXIS,
    Y_AXIS,
    Z_AXIS,
    Frame,
    Vec3,
    cross,
    dot,
    norm,
    subtract,
    unit,
)

GLUE_ROOM = 1.0  # mm a blind mortise is deeper than the tenon; common practice, no source
_WORTH_IT = 0.5  # mm: a narrower shoulder is no face to declare
_WIDER = 0.05  # mm: less is not marked
_TURNED_DEG = 0.05


@dataclass(frozen=True, slots=True)
class LeaningTenon:
    """In a frame that runs with the tenoned piece: face side z = 0, first edge y = 0, x its grain.

    ``into`` is the unit direction into the mortised piece, square to its face, in that frame, and
    ``face`` the x at which the line y = z = 0 meets the face.  ``length`` of the tenon is square to
    the face too.  The tenon fills ``y_low``..``y_high`` and ``z_low``..``z_high``; ``fit`` widens
    its mortise in z.  ``top`` is the y at which the piece's outer face begins, beyond any bevel.  A
    ``through`` tenon ends on the other side of the mortised piece.  mm.
    """

    frame: Frame
    into: Vec3
    face: float
    length: float
    y_low: float
    y_high: float
    z_low: float
    z_high: float
    top: float
    fit: float
    through: bool = False

    @property
    def mitre_deg(self) -> float:
        """How far the shoulder is turned from square across the piece's face."""
        return math.degrees(math.atan2(abs(self.into[1]), abs(self.into[0])))

    @property
    def tilt_deg(self) -> float:
        """Blade tilt from square that saws the shoulder, the piece flat on its face."""
        return math.degrees(math.asin(min(1.0, abs(self.into[2]))))

    @property
    def mortise_depth(self) -> float:
        """Square to the face."""
        return self.length if self.through else self.length + GLUE_ROOM

    def point(self, y: float, z: float, depth: float) -> Vec3:
        """Where the line at (y, z) is ``depth`` into the mortised piece, in the piece's frame."""
        i, j, k = self.into
        return (self.face + (depth - j * y - k * z) / i, y, z)

    def mortise(self) -> tuple[tuple[Vec3, ...], tuple[Vec3, ...]]:
        """The corners of the mortise's mouth and floor, in the piece's frame."""
        half = self.fit / 2.0
        low, high = self.z_low - half, self.z_high + half
        edges = ((self.y_low, low), (self.y_high, low), (self.y_high, high), (self.y_low, high))
        return (
            tuple(self.point(y, z, 0.0) for y, z in edges),
            tuple(self.point(y, z, self.mortise_depth) for y, z in edges),
        )


def leaning_tenon(name: str, kind: str, piece: Part, holder: Part, at: LeaningTenon) -> Joint:
    """Tenon ``piece`` into ``holder``; the piece's own frame may start elsewhere along its grain.

    ``kind`` is the joint in the trade's words, such as ``apron tenon``.
    """
    shift = piece.frame.to_local(at.frame.origin)[0]
    i, j, k = at.into
    tenon = ShoulderedTenon(
        shift + at.face, -j / i, -k / i, at.y_low, at.y_high, at.z_low, at.z_high, i < 0.0
    )
    end = (shift + at.face + at.length / i, 0.0, 0.0)
    mouth, floor = (_in_holder(holder, at, corners) for corners in at.mortise())
    tenoned, face = called(piece), f"the {called(holder)}'s face"
    turn, frame = at.frame.turn_to_bench, at.frame
    into, arris = turn(at.into), cross(Z_AXIS, at.into)  # of the shoulder on the piece's face
    return Joint(
        name=name,
        kind=kind,
        parts=(piece.name, holder.name),
        fit=at.fit,
        cuts_first=(SawCut("end cut", end, at.into), tenon),
        cuts_second=(Mortise(mouth, floor, through=at.through),),
        measures=(
            Measure(
                "shoulder_mitre",
                at.mitre_deg,
                "deg",
                f"across the {tenoned}'s face, from square",
                FIRST,
                frame.z_axis,
            ),
            Measure(
                "shoulder_tilt",
                at.tilt_deg,
                "deg",
                "blade tilt from square",
                FIRST,
                turn(unit(arris)) if norm(arris) > 0.0 else None,
            ),
            Measure(
                "tenon_thickness",
                at.z_high - at.z_low,
                "mm",
                "between the cheeks",
                FIRST,
                frame.z_axis,
            ),
            Measure(
                "tenon_width",
                at.y_high - at.y_low,
                "mm",
                f"across the {tenoned}",
                FIRST,
                frame.y_axis,
            ),
            Measure("tenon_length", at.length, "mm", f"square to {face}", FIRST, into),
            Measure(
                "mortise_width",
                at.z_high - at.z_low + at.fit,
                "mm",
                "between the cheeks",
                SECOND,
                frame.z_axis,
            ),
            *_mouth(holder, mouth, at),
            Measure("mortise_depth", at.mortise_depth, "mm", f"square to {face}", SECOND, into),
            Measure(
                "from_face_side",
                at.z_low,
                "mm",
                f"from the {tenoned}'s face side to the tenon",
                FIRST,
                frame.z_axis,
            ),
        ),
        contacts=_contacts(piece, at),
    )


def _mouth(holder: Part, corners: Corners, at: LeaningTenon) -> tuple[Measure, ...]:
    """The mouth of the mortise as it is marked on the holder's face; its corners in the holder's
    frame.  It is larger than the mortise where that leans, and turned where the pieces are."""
    long, wide = subtract(corners[1], corners[0]), subtract(corners[3], corners[0])
    turn = holder.frame.turn_to_bench
    rows = [
        Measure(
            "mortise_length", norm(long), "mm", "at its mouth, along it", SECOND, turn(unit(long))
        )
    ]
    if norm(wide) - (at.z_high - at.z_low + at.fit) > _WIDER:
        rows.append(
            Measure(
                "mouth_width",
                norm(wide),
                "mm",
                "of the mortise, across it",
                SECOND,
                turn(unit(wide)),
            )
        )
    off_deg = min(_off_deg(long, axis) for axis in (X_AXIS, Y_AXIS, Z_AXIS))
    if off_deg > _TURNED_DEG:
        rows.append(
            Measure(
                "mouth_turn",
                off_deg,
                "deg",
                f"of the mortise, from the {called(holder)}'s edge",
                SECOND,
                turn(unit(cross(long, wide))),
            )
        )
    return tuple(rows)


def _off_deg(way: Vec3, axis: Vec3) -> float:
    return math.degrees(math.acos(min(1.0, abs(dot(unit(way), axis)))))


def _in_holder(holder: Part, at: LeaningTenon, corners: tuple[Vec3, ...]) -> Corners:
    a, b, c, d = (holder.frame.to_local(at.frame.to_bench(corner)) for corner in corners)
    return (a, b, c, d)


def _contacts(piece: Part, at: LeaningTenon) -> tuple[Contact, ...]:
    """A shoulder (that on the outer side of the tenon, if there is one), and the inner cheek."""
    blank = piece.shape.blank
    low, high = at.top, blank.width
    clear = at.z_low - at.fit / 2.0 - 0.1
    into = at.frame.turn_to_bench(at.into)
    found = []
    if clear > _WORTH_IT:
        edges = ((low, 0.0), (high, 0.0), (high, clear), (low, clear))
        found.append(Contact(_on_face(at, edges), into, 0.0))
    elif at.y_low - low > _WORTH_IT:
        thick = blank.thickness
        edges = ((low, 0.0), (at.y_low, 0.0), (at.y_low, thick), (low, thick))
        found.append(Contact(_on_face(at, edges), into, 0.0))
    deep = at.length
    sides = ((at.y_low, 0.0), (at.y_high, 0.0), (at.y_high, deep), (at.y_low, deep))
    cheek = tuple(at.frame.to_bench(at.point(y, at.z_high, depth)) for y, depth in sides)
    found.append(Contact(cheek, at.frame.z_axis, at.fit / 2.0))
    return tuple(found)


def _on_face(at: LeaningTenon, edges: tuple[tuple[float, float], ...]) -> tuple[Vec3, ...]:
    """Places (y, z) of the piece's section where its shoulder lies, in bench coordinates."""
    return tuple(at.frame.to_bench(at.point(y, z, 0.0)) for y, z in edges)
