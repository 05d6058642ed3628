"""A loose tenon: a slip glued into a mortise in each of two pieces, across the face they meet on.

The mortises have round ends and the slip round edges.  The slip is a little shorter than its two
mortises are deep together, so that glue and dust have room (common practice, no source).
"""

from __future__ import annotations

from dataclasses import dataclass

from geometry.cuts.cut import Blank
from geometry.cuts.rounded_edges import RoundedEdges
from geometry.cuts.slot_mortise import SlotMortise
from geometry.design.joint import FIRST, SECOND, Contact, Joint, Measure
from geometry.design.part import Part, Shape
from geometry.primitives.frame import Frame, Vec3, add, cross, rounded, scale

SHORT = 1.0  # mm that a slip is shorter than its mortises together; common practice, no source


@dataclass(frozen=True, slots=True)
class LooseTenon:
    """In bench coordinates, mm.

    ``middle`` is its middle on the face where the pieces meet, ``out`` the unit direction square
    to it from the first piece into the second, ``along`` that of its width.  ``depth_first`` and
    ``depth_second`` are those of the mortises; ``fit`` is how much these are larger than the slip
    each way.  ``places`` tell where on the face it is marked.
    """

    middle: Vec3
    out: Vec3
    along: Vec3
    width: float
    thickness: float
    depth_first: float
    depth_second: float
    fit: float
    places: tuple[Measure, ...]

    @property
    def length(self) -> float:
        """Of the slip."""
        return self.depth_first + self.depth_second - SHORT

    def depth(self, *, second: bool) -> float:
        return self.depth_second if second else self.depth_first


def slip(name: str, title: str, timber: str, at: LooseTenon) -> Part:
    """The loose tenon itself: x from the first piece into the second."""
    across = cross(at.out, at.along)
    corner = add(
        scale(at.out, SHORT / 2.0 - at.depth_first),
        add(scale(at.along, -at.width / 2.0), scale(across, -at.thickness / 2.0)),
    )
    return Part(
        name=name,
        title=title,
        kind="loose tenon",
        material=timber,
        shape=Shape(Blank(at.length, at.width, at.thickness), (RoundedEdges(),)),
        frame=Frame(add(at.middle, corner), at.out, at.along, across),
    )


def loose_tenon(name: str, holder: Part, tenon: Part, at: LooseTenon, *, second: bool) -> Joint:
    """The mortise in one of the two pieces, and the slip in it."""
    into = at.out if second else scale(at.out, -1.0)
    depth = at.depth(second=second)
    mortise = SlotMortise(
        rounded(holder.frame.to_local(at.middle)),
        rounded(holder.frame.turn_to_local(into)),
        rounded(holder.frame.turn_to_local(at.along)),
        at.width + at.fit,
        at.thickness + at.fit,
        depth,
    )
    return Joint(
        name=name,
        kind="loose tenon",
        parts=(holder.name, tenon.name),
        fit=at.fit,
        cuts_first=(mortise,),
        cuts_second=(),
        measures=(
            *at.places,
            Measure("mortise_depth", depth, "mm", "square to the face", FIRST, at.out),
            Measure(
                "mortise_width", at.width + at.fit, "mm", "over its round ends", FIRST, at.along
            ),
            Measure(
                "mortise_thickness",
                at.thickness + at.fit,
                "mm",
                "between its cheeks",
                FIRST,
                cross(at.out, at.along),
            ),
            Measure("tenon_length", at.length, "mm", "of the slip, end to end", SECOND, at.out),
        ),
        contacts=_cheeks(at, into, depth),
    )


def _cheeks(at: LooseTenon, into: Vec3, depth: float) -> tuple[Contact, ...]:
    """The flat part of both cheeks, from the face down to the slip's end."""
    across = cross(at.out, at.along)
    half = (at.width - at.thickness) / 2.0
    found = []
    for side in (1.0, -1.0):
        on_cheek = add(at.middle, scale(across, side * (at.thickness + at.fit) / 2.0))
        corners = tuple(
            add(on_cheek, add(scale(at.along, y), scale(into, x)))
            for x, y in (
                (0.0, -half),
                (depth - SHORT / 2.0, -half),
                (depth - SHORT / 2.0, half),
                (0.0, half),
            )
        )
        found.append(Contact(corners, scale(across, -side), at.fit / 2.0))
    return tuple(found)
