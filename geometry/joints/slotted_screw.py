"""A screw from below in a slot, so that the board above may swell and shrink across its grain."""

from __future__ import annotations

from dataclasses import dataclass

from geometry.cuts.bore import Bore
from geometry.cuts.contour import Face
from geometry.cuts.screw_slot import ScrewSlot
from geometry.design.joint import Contact, Joint, Measure
from geometry.design.part import Part
from geometry.joints.reference_faces import Told, places_of
from geometry.primitives.frame import Vec3, add, cross, rounded, scale

UP: Vec3 = (0.0, 0.0, 1.0)
DOWN: Vec3 = (0.0, 0.0, -1.0)

_SLOT = Told("slot", "the middle of the slot", "the nearer end of the slot")
_PILOT = Told("pilot", "the middle of the pilot hole", "the pilot hole")


@dataclass(frozen=True, slots=True)
class SlottedScrew:
    """In bench coordinates, mm.

    ``screw`` is where it enters the board's underside; ``away`` the level unit direction in which
    the board grows there, ``shrink`` and ``swell`` how far it may move either way from its place
    when made, ``travel`` how far it does, from the driest to the dampest.  ``shank``, ``pilot`` and
    ``head`` are diameters; ``ease`` is how much wider than the shank the slot is.  ``land`` is the
    wood under the head, ``depth`` the piece's height there, ``bite`` how deep the screw goes into
    the board.  ``bearing`` are level rectangles where the piece bears on the board.
    """

    screw: Vec3
    away: Vec3
    shrink: float
    swell: float
    travel: float
    shank: float
    pilot: float
    head: float
    ease: float
    land: float
    depth: float
    bite: float
    bearing: tuple[tuple[Vec3, ...], ...]


def slotted_screw(name: str, piece: Part, board: Part, at: SlottedScrew) -> Joint:
    """Hold ``piece`` to the ``board`` that lies on it."""
    slot = ScrewSlot(
        screw=rounded(piece.frame.to_local(at.screw)),
        into=rounded(piece.frame.turn_to_local(DOWN)),
        along=rounded(piece.frame.turn_to_local(at.away)),
        before=round(at.shrink + at.ease / 2.0, 9),
        after=round(at.swell + at.ease / 2.0, 9),
        width=at.shank + at.ease,
        land=at.land,
        head=at.head,
        depth=at.depth,
    )
    round_ends = (
        add(at.screw, scale(at.away, -slot.before - slot.width / 2.0)),
        add(at.screw, scale(at.away, slot.after + slot.width / 2.0)),
    )
    return Joint(
        name=name,
        kind="slotted screw",
        parts=(piece.name, board.name),
        fit=0.0,
        cuts_first=(slot,),
        cuts_second=(pilot_bore(board, at.screw, at.pilot, at.bite),),
        measures=(
            Measure(
                "slot_length",
                slot.length,
                "mm",
                "over its round ends, across the board",
                (0,),
                at.away,
            ),
            Measure(
                "slot_width", slot.width, "mm", "for the screw's shank", (0,), cross(UP, at.away)
            ),
            *places_of(piece, round_ends, UP, _SLOT, 0),
            Measure("travel", at.travel, "mm", "of the board here, driest to dampest", ()),
            Measure(
                "screw_from_end",
                slot.before + slot.width / 2.0,
                "mm",
                "the screw from the slot's inner end when it is put in",
                (),
            ),
            Measure("land", at.land, "mm", "of wood under the screw's head", (0,), UP),
            Measure(
                "screw_length", at.land + at.bite, "mm", "from under its head to its point", ()
            ),
            *pilot_measures(board, at.screw, at.pilot, at.bite),
        ),
        contacts=tuple(Contact(corners, UP, 0.0) for corners in at.bearing),
    )


def pilot_bore(board: Part, screw: Vec3, diameter: float, bite: float) -> Bore:
    """The pilot hole in a board's underside."""
    x, y, _ = rounded(board.frame.to_local(screw))
    face = Face.FACE_SIDE if board.frame.z_axis[2] > 0.0 else Face.REVERSE
    return Bore(x, y, diameter, bite, face)


def pilot_measures(board: Part, screw: Vec3, diameter: float, bite: float) -> tuple[Measure, ...]:
    """Size and place of such a hole; the board is the second part of its joint."""
    return (
        Measure("pilot", diameter, "mm", "diameter of the pilot hole in the board", (1,)),
        Measure("pilot_depth", bite, "mm", "of the pilot hole", (1,), UP),
        *places_of(board, (screw,), UP, _PILOT, 1),
    )


def rectangle(
    middle: Vec3, along: Vec3, across: Vec3, half: tuple[float, float]
) -> tuple[Vec3, ...]:
    """The corners of a rectangle with these unit directions and half sizes."""
    return tuple(
        add(middle, add(scale(along, i * half[0]), scale(across, j * half[1])))
        for i, j in ((-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0))
    )
