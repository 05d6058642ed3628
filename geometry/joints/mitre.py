"""A mitre: two boards meet on one plane, each sawn to it.

The plane is taken from the corner's own edges, so whatever the boards do, the two cut faces lie
on each other.
"""

from __future__ import annotations

from geometry.design.joint import FIRST, SECOND, Contact, Joint, Measure
from geometry.design.part import Part
from geometry.joints.marking import saw_cut
from geometry.primitives.frame import Vec3, cross, norm, subtract, unit


def mitre(name: str, first: Part, second: Part, corners: tuple[Vec3, Vec3, Vec3, Vec3]) -> Joint:
    """Join two boards on the plane through ``corners``.

    ``corners`` in bench coordinates: outside arris at the back, at the front, inside arris at the
    front, at the back, turning so that the right-hand normal points from ``first`` into
    ``second``.  They bound the faces that meet.
    """
    normal = unit(cross(subtract(corners[1], corners[0]), subtract(corners[3], corners[0])))
    opposite = (-normal[0], -normal[1], -normal[2])
    cut_first = saw_cut(first, "mitre", corners[0], normal)
    cut_second = saw_cut(second, "mitre", corners[0], opposite)
    # Square to the arrises: where the boards flare, their front slants across the mitre.
    arris = unit(subtract(corners[1], corners[0]))
    slant = cross(subtract(corners[3], corners[0]), arris)
    width = norm(slant)
    return Joint(
        name=name,
        kind="mitre",
        parts=(first.name, second.name),
        fit=0.0,
        cuts_first=(cut_first,),
        cuts_second=(cut_second,),
        measures=(
            Measure(
                "tilt_first",
                cut_first.tilt_deg,
                "deg",
                f"blade tilt from square, {first.title}",
                FIRST,
                arris,
            ),
            Measure(
                "tilt_second",
                cut_second.tilt_deg,
                "deg",
                f"blade tilt from square, {second.title}",
                SECOND,
                arris,
            ),
            Measure(
                "mitre_width",
                width,
                "mm",
                "from the outside to the inside arris, square to both",
                along=unit(cross(arris, slant)),
            ),
        ),
        contacts=(Contact(corners, normal, 0.0),),
    )
