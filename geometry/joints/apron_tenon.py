"""An apron's tenon in a leaning leg: the shoulder lies on the leg's face, whatever its slant.

The apron's shoulder and the end of its tenon are sawn by two planes parallel to the leg's face, at
one setting of the saw; the tenon runs along the apron's grain, and so does its mortise.  The
mortise is a little deeper than the tenon is long, for glue.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from geometry.cuts.mortise import Corners, Mortise
from geometry.cuts.saw import SawCut
from geometry.cuts.shouldered_tenon import ShoulderedTenon
from geometry.design.joint import Contact, Joint, Measure
from geometry.design.part import Part
from geometry.primitives.frame import Frame, Vec3

GLUE_ROOM = 1.0  # mm the mortise is deeper than the tenon; common practice, no source


@dataclass(frozen=True, slots=True)
class ApronTenon:
    """In a frame that runs with the apron: face side z = 0, upper edge y = 0, x along its grain.

    ``into`` is the unit direction into the leg, square to its face, in that frame, and ``face`` the
    x at which the line y = z = 0 meets the face.  ``length`` of the tenon is square to the face
    too.  The tenon fills ``y_low``..``y_high`` and ``z_low``..``z_high``; ``fit`` widens its
    mortise in z.  ``top`` is the y of the apron's outer upper arris.  mm.
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

    @property
    def mitre_deg(self) -> float:
        """How far the shoulder is turned from square across the apron's face."""
        return math.degrees(math.atan2(abs(self.into[1]), abs(self.into[0])))

    @property
    def tilt_deg(self) -> float:
        """Blade tilt from square that saws the shoulder, the apron flat on its face."""
        return math.degrees(math.asin(min(1.0, abs(self.into[2]))))

    def point(self, y: float, z: float, depth: float) -> Vec3:
        """Where the line at (y, z) is ``depth`` into the leg, in the apron's frame."""
        i, j, k = self.into
        return (self.face + (depth - j * y - k * z) / i, y, z)

    def mortise(self) -> tuple[tuple[Vec3, ...], tuple[Vec3, ...]]:
        """The corners of the mortise's mouth and floor, in the apron's frame."""
        half = self.fit / 2.0
        low, high = self.z_low - half, self.z_high + half
        edges = ((self.y_low, low), (self.y_high, low), (self.y_high, high), (self.y_low, high))
        deep = self.length + GLUE_ROOM
        return (
            tuple(self.point(y, z, 0.0) for y, z in edges),
            tuple(self.point(y, z, deep) for y, z in edges),
        )


def apron_tenon(name: str, apron: Part, leg: Part, at: ApronTenon) -> Joint:
    """Tenon ``apron`` into ``leg``; the apron's own frame may start elsewhere along its grain."""
    shift = apron.frame.to_local(at.frame.origin)[0]
    i, j, k = at.into
    tenon = ShoulderedTenon(
        shift + at.face, -j / i, -k / i, at.y_low, at.y_high, at.z_low, at.z_high, i < 0.0
    )
    end = (shift + at.face + at.length / i, 0.0, 0.0)
    mouth, floor = (_in_leg(leg, at, corners) for corners in at.mortise())
    return Joint(
        name=name,
        kind="apron tenon",
        parts=(apron.name, leg.name),
        fit=at.fit,
        cuts_first=(SawCut("end cut", end, at.into), tenon),
        cuts_second=(Mortise(mouth, floor, through=False),),
        measures=(
            Measure("shoulder_mitre", at.mitre_deg, "deg", "across the apron's face, from square"),
            Measure("shoulder_tilt", at.tilt_deg, "deg", "blade tilt from square"),
            Measure("tenon_thickness", at.z_high - at.z_low, "mm", "between the cheeks"),
            Measure("tenon_width", at.y_high - at.y_low, "mm", "across the apron"),
            Measure("tenon_length", at.length, "mm", "square to the leg's face"),
            Measure("mortise_width", at.z_high - at.z_low + at.fit, "mm", "between the cheeks"),
            Measure("mortise_depth", at.length + GLUE_ROOM, "mm", "square to the leg's face"),
            Measure("from_face_side", at.z_low, "mm", "from the apron's face side to the tenon"),
        ),
        contacts=_contacts(apron, at),
    )


def _in_leg(leg: Part, at: ApronTenon, corners: tuple[Vec3, ...]) -> Corners:
    a, b, c, d = (leg.frame.to_local(at.frame.to_bench(corner)) for corner in corners)
    return (a, b, c, d)


def _contacts(apron: Part, at: ApronTenon) -> tuple[Contact, ...]:
    """The shoulder on the outer side of the tenon, and the inner cheek."""
    low, high = at.top, apron.shape.blank.width
    clear = at.z_low - at.fit / 2.0 - 0.1
    found = []
    if clear > 0.5:
        edges = ((low, 0.0), (high, 0.0), (high, clear), (low, clear))
        corners = tuple(at.frame.to_bench(at.point(y, z, 0.0)) for y, z in edges)
        found.append(Contact(corners, at.frame.turn_to_bench(at.into), 0.0))
    deep = at.length
    sides = ((at.y_low, 0.0), (at.y_high, 0.0), (at.y_high, deep), (at.y_low, deep))
    cheek = tuple(at.frame.to_bench(at.point(y, at.z_high, depth)) for y, depth in sides)
    found.append(Contact(cheek, at.frame.z_axis, at.fit / 2.0))
    return tuple(found)
