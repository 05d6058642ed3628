"""A stay between a lid and an end of its box: a screw in the lid's underside, one in the end.

The lid is shown closed, and lies on the end beside the stay.  A stay is bought: how it folds is on
its sheet, and further screws of its plates are bored through them.  Bench coordinates, mm.
"""

from __future__ import annotations

from dataclasses import dataclass

from geometry.cuts.bore import Bore
from geometry.cuts.contour import Face
from geometry.design.joint import BOTH, FIRST, SECOND, Contact, Joint, Measure
from geometry.design.part import Part
from geometry.joints.face_to_face import Corners
from geometry.joints.reference_faces import Told, on_its_sheet, places_of
from geometry.primitives.frame import X_AXIS, Z_AXIS, Vec3, rounded
from shared.fixings import WoodScrew

LID_STAY = "lid stay"
_SCREW = "the middle of the stay's screw"


@dataclass(frozen=True, slots=True)
class LidStay:
    """``on_end`` and ``on_lid`` are the middles of the screws where they enter the inside of the
    end and the underside of the closed lid, each as deep as its ``bite``.

    ``down`` is how far the first is below the rim, ``reach`` how far apart they are when the lid
    is open by ``opening_deg``.  ``corners`` bound what of the lid lies on the end beside them.
    """

    on_end: Vec3
    on_lid: Vec3
    end_bite: float
    lid_bite: float
    screw: WoodScrew
    down: float
    reach: float
    opening_deg: float
    corners: Corners


def lid_stay(name: str, end: Part, lid: Part, at: LidStay) -> Joint:
    """Bore for a stay in the face side of ``end`` and the reverse of ``lid``."""
    gauge = f"no. {at.screw.gauge}"
    return Joint(
        name=name,
        kind=LID_STAY,
        parts=(end.name, lid.name),
        fit=0.0,
        cuts_first=(_pilot(end, at.on_end, at.screw, at.end_bite, Face.FACE_SIDE),),
        cuts_second=(_pilot(lid, at.on_lid, at.screw, at.lid_bite, Face.REVERSE),),
        measures=(
            *_places(end, at.on_end, X_AXIS, "box_screw", FIRST[0]),
            Measure("box_screw_down", at.down, "mm", f"from the rim to {_SCREW}", FIRST, Z_AXIS),
            *on_its_sheet(lid, _places(lid, at.on_lid, Z_AXIS, "lid_screw", SECOND[0])),
            Measure("pilot", at.screw.root, "mm", f"diameter, for a {gauge} screw", BOTH),
            Measure("pilot_depth", at.end_bite, "mm", f"in the {end.kind}", FIRST, X_AXIS),
            Measure("lid_pilot_depth", at.lid_bite, "mm", f"in the {lid.kind}", SECOND, Z_AXIS),
            Measure(
                "stay_reach", at.reach, "mm", "between the two screws when it is taut, lid open", ()
            ),
            Measure("lid_opening", at.opening_deg, "deg", "where the stay holds the lid", ()),
        ),
        contacts=(Contact(at.corners, Z_AXIS, 0.0),),
    )


def _pilot(part: Part, at: Vec3, screw: WoodScrew, bite: float, face: Face) -> Bore:
    x, y, _ = rounded(part.frame.to_local(at))
    return Bore(x, y, screw.root, bite, face)


def _places(part: Part, at: Vec3, into: Vec3, name: str, which: int) -> tuple[Measure, ...]:
    return places_of(part, (at,), into, Told(name, _SCREW, _SCREW), which)
