"""A wedge in a slot across the end of a through tenon, which may lean: it spreads the tenon.

The slot runs from cheek to cheek, and opens by as much as the wedge is thick; the wedge's thick end
is sawn off in line with the tenon's.  All in the frame of a leaning tenon that runs through at the
far end of its piece: x down the grain, y across, z from cheek to cheek; mm.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from geometry.cuts.cut import Blank
from geometry.cuts.saw import SawCut
from geometry.cuts.wedge_slot import WedgeSlot
from geometry.design.joint import FIRST, SECOND, Contact, Joint, Measure
from geometry.design.part import Part, Shape
from geometry.joints.leaning_tenon import LeaningTenon
from geometry.primitives.frame import Frame, Vec3, scale

_MET = 0.9  # of the slot's faces, clear of its slanting mouth, are said to meet the wedge
_SIDES = (-1.0, 1.0)


@dataclass(frozen=True, slots=True)
class TenonWedge:
    """A wedge with its middle at ``y`` of a tenon, ``thick`` where the slot's middle comes out at
    the tenon's end, ``slot`` deep from there along the grain."""

    tenon: LeaningTenon
    y: float
    thick: float
    slot: float

    @property
    def middle(self) -> float:
        """z of the middle of the tenon."""
        return (self.tenon.z_low + self.tenon.z_high) / 2.0

    @property
    def width(self) -> float:
        """Across the tenon, from cheek to cheek."""
        return self.tenon.z_high - self.tenon.z_low

    @property
    def root(self) -> Vec3:
        """Middle of the line in which the slot's faces meet."""
        x, y, z = self.tenon.point(self.y, self.middle, self.tenon.length)
        return (x - self.slot, y, z)

    @property
    def slope(self) -> float:
        """Half the wedge's thickness for each mm of its length."""
        return self.thick / 2.0 / self.slot

    def run(self, side: float, z: float) -> float:
        """How far from the root one of the slot's two faces comes out at the tenon's end."""
        level = self.tenon.point(self.y, z, self.tenon.length)[0] - self.root[0]
        i, j, _ = self.tenon.into
        return level / (1.0 + side * self.slope * j / i)

    @property
    def runs(self) -> tuple[tuple[float, float], ...]:
        """Each face of the slot and how far it comes, at either cheek."""
        cheeks = (self.tenon.z_low, self.tenon.z_high)
        return tuple((side, self.run(side, z)) for side in _SIDES for z in cheeks)

    @property
    def long(self) -> float:
        """Length of the wedge where it is longest.  Rounded, as all that a wedge is made by, far
        below anything that can be marked: wedges that are meant to be alike come out equal."""
        return round(max(run for _, run in self.runs), 9)

    @property
    def halves(self) -> tuple[float, float]:
        """How far it reaches to either side of the slot's middle."""
        low, high = (max(run for s, run in self.runs if s == side) * self.slope for side in _SIDES)
        return round(low, 9), round(high, 9)


def wedge_piece(name: str, title: str, timber: str, at: TenonWedge) -> Part:
    """The blank of a wedge: x from its thick end to its edge, y from cheek to cheek."""
    long, (low, high) = at.long, at.halves
    x, y, _ = at.root
    start = at.tenon.frame.to_bench((x + long, y - low, at.tenon.z_low))
    frame = Frame.of(start, scale(at.tenon.frame.x_axis, -1.0), at.tenon.frame.z_axis)
    return Part(
        name=name,
        title=title,
        kind="wedge",
        material=timber,
        shape=Shape(Blank(long, round(at.width, 9), round(low + high, 9)), ()),
        frame=frame,
    )


def tenon_wedge(name: str, piece: Part, wedge: Part, at: TenonWedge) -> Joint:
    """Slot the tenon of ``piece`` and saw the wedge to fill it."""
    frame = at.tenon.frame
    x, y, z = piece.frame.to_local(frame.to_bench(at.root))
    slot = WedgeSlot(
        (round(x, 9), round(y, 9), round(z, 9)),
        (0.0, 0.0, 1.0),
        at.width / 2.0,
        (0.0, 1.0, 0.0),
        at.slope,
        at_start=False,
    )
    return Joint(
        name=name,
        kind="wedge",
        parts=(piece.name, wedge.name),
        fit=0.0,
        cuts_first=(slot,),
        cuts_second=_sawn(at),
        measures=_measures(at),
        contacts=tuple(_contact(at, side) for side in _SIDES),
    )


def _measures(at: TenonWedge) -> tuple[Measure, ...]:
    """The slot as it is marked on the tenon that is cut, and the wedge."""
    frame = at.tenon.frame
    near, far = at.y - at.tenon.y_low, at.tenon.y_high - at.y
    mouth = frame.to_bench(at.tenon.point(at.y, at.middle, at.tenon.length))
    return (
        Measure(
            "slot_from_edge",
            min(near, far),
            "mm",
            "from the tenon's nearer edge to the slot's middle, which runs from cheek to cheek",
            FIRST,
            frame.y_axis,
            mouth,
        ),
        Measure(
            "slot_length",
            at.slot,
            "mm",
            "up from the tenon's end, along the grain",
            FIRST,
            frame.x_axis,
            mouth,
        ),
        Measure("wedge_thick", at.thick, "mm", "at the tenon's end", SECOND, frame.y_axis),
        Measure("wedge_long", at.slot, "mm", "from there to its edge", SECOND, frame.x_axis, mouth),
        Measure("wedge_wide", at.width, "mm", "across the tenon", SECOND, frame.z_axis),
    )


def _sawn(at: TenonWedge) -> tuple[SawCut, ...]:
    """Both slopes and the thick end of the wedge, in its own frame: x against the post's, y along
    its z and z along its y."""
    low, _ = at.halves
    middle = (at.long, 0.0, low)
    x, y, z = (round(one, 12) for one in at.tenon.into)
    slopes = tuple(_outward(at, side) for side in _SIDES)
    return (
        *(SawCut("slope", middle, (-along, 0.0, round(out, 12))) for along, out, _ in slopes),
        SawCut("level end", (round(at.long - at.slot, 9), at.width / 2.0, low), (-x, z, y)),
    )


def _outward(at: TenonWedge, side: float) -> Vec3:
    """The unit normal of one of the wedge's faces, out of it."""
    run = math.hypot(1.0, at.slope)
    return (round(-at.slope / run, 12), side / run, 0.0)


def _contact(at: TenonWedge, side: float) -> Contact:
    far = _MET * min(at.run(side, z) for z in (at.tenon.z_low, at.tenon.z_high))
    x, y, _ = at.root
    corners = tuple(
        at.tenon.frame.to_bench((x + along, y + side * at.slope * along, z))
        for along, z in (
            (0.0, at.tenon.z_low),
            (0.0, at.tenon.z_high),
            (far, at.tenon.z_high),
            (far, at.tenon.z_low),
        )
    )
    return Contact(corners, at.tenon.frame.turn_to_bench(scale(_outward(at, side), -1.0)), 0.0)
