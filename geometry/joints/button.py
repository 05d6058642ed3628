"""A wooden button: screwed to the board above, its tongue in a mortise in the piece below.

The tongue holds the piece up to the board and slides in its mortise as the board moves.
"""

from __future__ import annotations

from dataclasses import dataclass

from geometry.cuts.mortise import Mortise
from geometry.design.joint import Contact, Joint, Measure
from geometry.design.part import Part
from geometry.joints.reference_faces import Told, places_of
from geometry.joints.slotted_screw import UP, pilot_bore, pilot_measures, rectangle
from geometry.primitives.frame import Vec3, add, rounded, scale

_MORTISE = Told("mortise", "the mortise", "the mortise")


@dataclass(frozen=True, slots=True)
class ButtonNumbers:
    """In bench coordinates, mm.

    ``arris`` is where the button stands on the upper inside arris of the piece; ``along`` and
    ``inward`` the level unit directions along it and into the open; ``slope`` how far the inside
    face goes outward for each mm down.  ``land`` is the wood over the mortise, ``tongue`` the
    tongue's thickness, ``engaged`` how deep it stands in the mortise and ``stand`` how far the
    body stays off the face.  ``width`` is the button's, ``body`` its length beyond the face.
    ``room_along`` is how much longer the mortise is than the button is wide, ``room_in`` how much
    deeper than the tongue stands.
    """

    arris: Vec3
    along: Vec3
    inward: Vec3
    slope: float
    land: float
    tongue: float
    engaged: float
    stand: float
    width: float
    body: float
    room_along: float
    room_in: float
    ease: float
    shank: float
    pilot: float
    bite: float

    @property
    def reach(self) -> float:
        """From the arris outward to the tongue's end."""
        return self.land * self.slope + self.engaged

    @property
    def length(self) -> float:
        return self.reach + self.stand + self.body

    @property
    def screw(self) -> Vec3:
        """Where the screw enters the board."""
        return add(self.arris, scale(self.inward, self.stand + self.body / 2.0))

    def point(self, along: float, inward: float, down: float) -> Vec3:
        level = add(scale(self.along, along), scale(self.inward, inward))
        return add(self.arris, add(level, (0.0, 0.0, -down)))


def button_in(name: str, button: Part, bearer: Part, at: ButtonNumbers) -> Joint:
    """The button's tongue in the piece that it holds."""
    half = (at.width + at.room_along) / 2.0
    low, high = at.land + at.tongue + at.ease, at.land
    deep = at.engaged + at.room_in
    mouth = tuple(
        at.point(a, -down * at.slope, down)
        for a, down in ((-half, high), (half, high), (half, low), (-half, low))
    )
    a, b, c, d = (bearer.frame.to_local(p) for p in mouth)
    e, f, g, h = (bearer.frame.to_local(add(p, scale(at.inward, -deep))) for p in mouth)
    roof = tuple(
        at.point(along, inward, at.land)
        for along, inward in (
            (-at.width / 2.0, -at.reach),
            (at.width / 2.0, -at.reach),
            (at.width / 2.0, -at.land * at.slope),
            (-at.width / 2.0, -at.land * at.slope),
        )
    )
    return Joint(
        name=name,
        kind="button",
        parts=(button.name, bearer.name),
        fit=0.0,
        cuts_first=(),
        cuts_second=(Mortise((a, b, c, d), (e, f, g, h), through=False),),
        measures=(
            Measure(
                "mortise_down",
                at.land,
                "mm",
                "from the upper edge to the mortise, upright",
                (1,),
                UP,
            ),
            Measure("mortise_height", low - high, "mm", "of the mortise, upright", (1,), UP),
            Measure("mortise_length", 2.0 * half, "mm", "along the piece", (1,), at.along),
            Measure("mortise_depth", deep, "mm", "level, from the inside face", (1,), at.inward),
            *(
                one
                for one in places_of(bearer, mouth, at.inward, _MORTISE, 1)
                if one.name == "mortise_from_end"
            ),
            Measure("tongue_engaged", at.engaged, "mm", "of the tongue in the mortise when made"),
        ),
        contacts=(Contact(roof, UP, 0.0),),
    )


def button_under(name: str, button: Part, board: Part, at: ButtonNumbers) -> Joint:
    """The button screwed to the underside of the board."""
    return Joint(
        name=name,
        kind="screwed button",
        parts=(button.name, board.name),
        fit=0.0,
        cuts_first=(),
        cuts_second=(pilot_bore(board, at.screw, at.pilot, at.bite),),
        measures=(
            Measure(
                "screw_length", at.land + at.tongue + at.bite, "mm", "from its head to its point"
            ),
            *pilot_measures(board, at.screw, at.pilot, at.bite),
        ),
        contacts=tuple(Contact(corners, UP, 0.0) for corners in button_bearing(at)),
    )


def button_bearing(at: ButtonNumbers) -> tuple[tuple[Vec3, ...], ...]:
    """Where a button's body bears on the board, on either side of its screw."""
    clear = at.shank / 2.0 + 1.0
    half = ((at.width / 2.0 - clear) / 2.0, at.body / 2.0)
    return tuple(
        rectangle(
            at.point(side * (clear + half[0]), at.stand + half[1], 0.0), at.along, at.inward, half
        )
        for side in (-1.0, 1.0)
    )


def hole_middle(button: Part, at: ButtonNumbers) -> Vec3:
    """Of the clearance hole, in the button's frame."""
    return rounded(button.frame.to_local(at.screw))
