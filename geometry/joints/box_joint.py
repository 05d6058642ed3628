"""A box joint: straight fingers of side and end piece between one another.

The height is divided into an odd number of equal spaces; the side has a finger at both edges and
at every other space, the end piece those between.  Each notch is wider than its finger by the
fit, shared by both flanks.
"""

from __future__ import annotations

from dataclasses import dataclass

from geometry.cuts.end_gaps import EndGaps, Gap
from geometry.design.joint import FIRST, SECOND, Contact, Joint, Measure
from geometry.design.part import Part
from geometry.joints.corner import Corner
from geometry.primitives.frame import scale

LEAST_FINGER = 3.0  # mm; common practice, no source


@dataclass(frozen=True, slots=True)
class FingerNumbers:
    """``count`` is the number of the side's fingers, at least 2."""

    corner: Corner
    count: int

    @property
    def spaces(self) -> int:
        return 2 * self.count - 1

    @property
    def space(self) -> float:
        """Height of a finger with its share of the fit, in mm."""
        return self.corner.height / self.spaces


def count_for(height: float, width: float) -> int:
    """How many fingers a side has whose spaces come nearest to a wanted width; at least two.

    >>> count_for(90.0, 10.0)  # 9 spaces
    5
    >>> count_for(90.0, 80.0)  # 3 spaces
    2
    """
    fewer = int((height / width + 1.0) / 2.0)
    count = min(
        (max(2, fewer), max(2, fewer + 1)),
        key=lambda n: (abs(height / (2 * n - 1) - width), n),
    )
    while count > 2 and height / (2 * count - 1) < LEAST_FINGER:
        count -= 1
    return count


def box_joint(name: str, side: Part, end: Part, at: FingerNumbers) -> Joint:
    """Finger a side into an end piece."""
    c = at.corner
    ease = c.fit / 4.0
    return Joint(
        name=name,
        kind="box joint",
        parts=(side.name, end.name),
        fit=c.fit,
        cuts_first=(
            EndGaps(
                "fingers",
                c.on_side(side, 0.0),
                c.on_side(side, c.end_thickness),
                tuple(_gap(at, k, ease) for k in range(1, at.spaces, 2)),
            ),
        ),
        cuts_second=(
            EndGaps(
                "fingers",
                c.on_end(end, 0.0),
                c.on_end(end, c.side_thickness),
                tuple(_gap(at, k, ease) for k in range(0, at.spaces, 2)),
            ),
        ),
        measures=(
            Measure(
                "finger_width",
                at.space - c.fit / 2.0,
                "mm",
                f"across a finger; {at.count} on the side, {at.count - 1} on the end piece",
                along=c.up,
            ),
            Measure("notch_width", at.space + c.fit / 2.0, "mm", "across a notch", along=c.up),
            Measure(
                "side_depth",
                c.end_thickness,
                "mm",
                "base line on the side, from its end",
                FIRST,
                c.along_side,
            ),
            Measure(
                "end_depth",
                c.side_thickness,
                "mm",
                "base line on the end piece, from its end",
                SECOND,
                c.along_end,
            ),
        ),
        contacts=_contacts(at),
    )


def _gap(at: FingerNumbers, k: int, ease: float) -> Gap:
    """The notch over the k-th space from the lower edge."""
    low = 0.0 if k == 0 else round(k * at.space - ease, 9)
    high = at.corner.height if k == at.spaces - 1 else round((k + 1) * at.space + ease, 9)
    return Gap(low, high, low, high)


def _contacts(at: FingerNumbers) -> tuple[Contact, ...]:
    """At the two topmost fingers: both notch floors, and the flank between them."""
    c, ease = at.corner, at.corner.fit / 4.0
    inner, reach = c.side_thickness - c.groove, c.end_thickness - c.groove
    high = c.height - at.space
    low = high - at.space
    back = (-c.along_side[0], -c.along_side[1], -c.along_side[2])
    floor_of_side = c.across_side(c.end_thickness, (0.0, inner), (low + ease, high - ease))
    floor_of_end = c.across_end(c.side_thickness, (0.0, reach), (high + ease, c.height))
    flank = c.level(high + ease, (0.0, c.end_thickness), (0.0, inner))
    return (
        Contact(floor_of_side, back, 0.0),
        Contact(floor_of_end, c.along_end, 0.0),
        Contact(flank, scale(c.up, -1.0), c.fit / 2.0),
    )
