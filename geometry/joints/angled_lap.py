"""An angled lap: two pieces on edge cross and are each notched to half their height.

The notch is the crossing piece's own thickness (and the fit), seen at the angle of the
crossing; place and angle come from where the two really run.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from geometry.cuts.lap import AngledLap
from geometry.design.joint import FIRST, SECOND, Contact, Joint, Measure
from geometry.design.part import Part
from geometry.primitives.frame import Z_AXIS, Vec3, dot


@dataclass(frozen=True, slots=True)
class LapNumbers:
    """``crossing`` is the point of both middle planes at the top edges, in bench coordinates.

    ``height`` and ``thickness`` are those of either piece; ``fit`` widens each notch.  All mm.
    """

    crossing: Vec3
    height: float
    thickness: float
    fit: float


def angled_lap(name: str, lower: Part, upper: Part, at: LapNumbers) -> Joint:
    """Lap two level pieces; ``lower`` is notched from above and keeps its lower half.

    Both parts lie with x along their run, y downward from the top edge and z level.
    """
    notch_lower = lap_notch(lower, upper.frame.x_axis, at, from_top=True)
    notch_upper = lap_notch(upper, lower.frame.x_axis, at, from_top=False)
    angle = math.degrees(math.acos(abs(dot(lower.frame.x_axis, upper.frame.x_axis))))
    half = at.height / 2.0
    return Joint(
        name=name,
        kind="angled lap",
        parts=(lower.name, upper.name),
        fit=at.fit,
        cuts_first=(notch_lower,),
        cuts_second=(notch_upper,),
        measures=(
            Measure(
                "lap_angle", angle, "deg", "between the two pieces, seen from above", along=Z_AXIS
            ),
            Measure("lap_depth", half, "mm", "half the height", along=Z_AXIS),
            Measure(
                "notch_span",
                2.0 * notch_lower.half_span,
                "mm",
                "along each piece",
                FIRST,
                lower.frame.x_axis,
            ),
            Measure(
                "lap_place_first",
                (notch_lower.x_face + notch_lower.x_reverse) / 2.0,
                "mm",
                f"middle of the notch from the start of the blank, {lower.title}",
                FIRST,
                lower.frame.x_axis,
            ),
            Measure(
                "lap_place_second",
                (notch_upper.x_face + notch_upper.x_reverse) / 2.0,
                "mm",
                f"middle of the notch from the start of the blank, {upper.title}",
                SECOND,
                upper.frame.x_axis,
            ),
        ),
        contacts=(_floor(lower, upper, at),),
    )


def lap_notch(part: Part, crosses: Vec3, at: LapNumbers, *, from_top: bool) -> AngledLap:
    """The notch of one piece for the other, which ``crosses`` it in that direction."""
    along, _, across = part.frame.turn_to_local(crosses)
    middle = part.frame.to_local(at.crossing)[0]
    lean = along / across * at.thickness / 2.0
    half_span = (at.thickness + at.fit) / 2.0 / abs(across)
    return AngledLap(middle - lean, middle + lean, half_span, at.height / 2.0, from_top)


def _floor(lower: Part, upper: Part, at: LapNumbers) -> Contact:
    """The parallelogram where the two halves bear on each other."""
    a, b = lower.frame.x_axis, upper.frame.x_axis
    sine = abs(a[0] * b[1] - a[1] * b[0])
    reach = at.thickness / 2.0 / sine
    x, y, z = at.crossing
    floor = z - at.height / 2.0
    corners = tuple(
        (x + reach * (i * a[0] + j * b[0]), y + reach * (i * a[1] + j * b[1]), floor)
        for i, j in ((-1, -1), (1, -1), (1, 1), (-1, 1))
    )
    return Contact(corners, (0.0, 0.0, 1.0), 0.0)
