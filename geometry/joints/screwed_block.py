"""A block glued to the inside of another piece and screwed to it from its own far side.

The block's face is sawn to lie on the other piece, whatever that leans; the screws stand square to
it, in holes that are counterbored for their heads.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from geometry.cuts.cut import Cut
from geometry.cuts.end_bore import EndBore
from geometry.cuts.saw import SawCut
from geometry.cuts.screw_hole import ScrewHole
from geometry.design.joint import Contact, Joint, Measure
from geometry.design.part import Part
from geometry.joints.reference_faces import Told, places_of
from geometry.primitives.frame import Vec3, rounded, scale

_FLAT = 0.9  # cosine to the block's face beyond which the cut is a bevel along it
_NEAR = 1e-9
_BLOCK = Told("block", "the block", "the block")


@dataclass(frozen=True, slots=True)
class ScrewedBlock:
    """In bench coordinates, mm.

    ``faces`` are the corners of the block's face on the other piece, to both sides of its screws,
    or of the whole; ``into`` is the unit normal from that into the block.  Screws leave the block
    at ``screws``, ``downs`` below its top; ``toward`` is a level direction in the face.  ``land``
    is the wood under their heads, ``through`` all that they pass.
    """

    faces: tuple[tuple[Vec3, ...], ...]
    into: Vec3
    toward: Vec3
    screws: tuple[Vec3, ...]
    downs: tuple[float, ...]
    from_edge: float
    hole: float
    pilot: float
    head: float
    land: float
    through: float
    bite: float


def screwed_block(name: str, block: Part, holder: Part, at: ScrewedBlock) -> Joint:
    """Fix ``block`` to the inside of ``holder``."""
    outward = rounded(block.frame.turn_to_local(scale(at.into, -1.0)))
    saw = SawCut("end cut", rounded(block.frame.to_local(at.faces[0][0])), outward)
    flush = sum(abs(one) > _NEAR for one in outward) == 1
    holes = tuple(
        ScrewHole(
            mouth=rounded(block.frame.to_local(screw)),
            into=rounded(block.frame.turn_to_local(at.into)),
            toward=rounded(block.frame.turn_to_local(at.toward)),
            shank=at.hole,
            land=at.land,
            head=at.head,
            depth=at.through + at.head,
        )
        for screw in at.screws
    )
    pilots = tuple(
        EndBore(
            middle=rounded(holder.frame.to_local(screw)),
            into=rounded(holder.frame.turn_to_local(scale(at.into, -1.0))),
            toward=rounded(holder.frame.turn_to_local(at.toward)),
            diameter=at.pilot,
            depth=at.bite,
        )
        for screw in at.screws
    )
    cuts: tuple[Cut, ...] = holes if flush else (saw, *holes)
    return Joint(
        name=name,
        kind="glued and screwed block" if at.screws else "glued block",
        parts=(block.name, holder.name),
        fit=0.0,
        cuts_first=cuts,
        cuts_second=pilots,
        measures=(*_sawn(saw), *_placed(at, holder), *_screwed(at, holder)),
        contacts=tuple(Contact(face, scale(at.into, -1.0), 0.0) for face in at.faces),
    )


def _placed(at: ScrewedBlock, holder: Part) -> tuple[Measure, ...]:
    """Where the block stands on the other piece."""
    corners = [corner for face in at.faces for corner in face]
    return places_of(holder, corners, at.into, _BLOCK, 1)


def _sawn(saw: SawCut) -> tuple[Measure, ...]:
    if abs(saw.outward[2]) > _FLAT:
        bevel = math.degrees(math.acos(min(1.0, abs(saw.outward[2]))))
        return (Measure("bevel", bevel, "deg", "of the glued face from the upright"),)
    return (
        Measure("end_mitre", saw.swing_deg, "deg", "across the block's face, from square"),
        Measure("end_tilt", saw.tilt_deg, "deg", "blade tilt from square"),
    )


def _screwed(at: ScrewedBlock, holder: Part) -> tuple[Measure, ...]:
    if not at.screws:
        return ()
    top = "from the block's top to the middle of a screw"
    inner = "from the glued face's inner edge to the screws"
    downs = tuple(
        Measure(f"screw_{k}_down", down, "mm", top, (0,)) for k, down in enumerate(at.downs, 1)
    )
    return (
        *downs,
        Measure("screw_in", at.from_edge, "mm", inner, (0,)),
        Measure("land", at.land, "mm", "of wood under a screw's head", (0,), at.into),
        Measure("screw_length", at.land + at.bite, "mm", "from under its head to its point", ()),
        Measure("hole", at.hole, "mm", "diameter of the hole in the block", (0,)),
        Measure("pilot", at.pilot, "mm", f"diameter of the pilot hole in the {holder.kind}", (1,)),
        Measure(
            "pilot_depth",
            at.bite,
            "mm",
            f"into the {holder.kind}, square to its inside",
            (1,),
            at.into,
        ),
    )
