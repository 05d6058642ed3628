"""A lid on hinges: a leaf let into the lid and one into what it hangs on, opposite each other.

Both mortises of a hinge are equally deep; what the leaves are thicker than both stands between the
two pieces as a gap.
"""

from __future__ import annotations

from dataclasses import dataclass

from geometry.cuts.hinge_mortise import HingeMortise
from geometry.design.joint import Contact, Joint, Measure
from geometry.design.part import Part
from geometry.joints.marking import span
from geometry.joints.reference_faces import Told, on_its_sheet, places_of
from geometry.primitives.frame import Vec2, Vec3, add, scale
from shared.tolerances import COPLANAR


@dataclass(frozen=True, slots=True)
class HingedNumbers:
    """In bench coordinates, mm.

    ``pin`` is a point on the arris of the fixed piece that the pins lie along, in X = 0; ``into``
    the unit direction from the lid into the fixed piece, square to the faces that meet, and
    ``leafward`` that from the pin over a leaf.  Hinges start at X ``starts`` and are ``length``
    long; leaves are ``leaf`` wide from the fixed piece's arris, each let in by ``deep``.  Between
    the pieces is ``gap``; they face each other from ``lipped`` to ``overlap`` away from the pin.
    """

    pin: Vec3
    into: Vec3
    leafward: Vec3
    starts: tuple[float, ...]
    length: float
    leaf: float
    deep: float
    gap: float
    overlap: float
    lipped: float = 0.0

    def box(self, start: float, low: float, high: float) -> tuple[Vec3, Vec3]:
        """Two opposite corners of a leaf's room, from ``low`` to ``high`` along ``into``."""
        near = add(self.pin, add((start, 0.0, 0.0), scale(self.into, low)))
        far = add(self.pin, add((start + self.length, 0.0, 0.0), scale(self.into, high)))
        return near, add(far, scale(self.leafward, self.leaf))


def hinged(name: str, lid: Part, holder: Part, at: HingedNumbers) -> Joint:
    """Hang ``lid`` on ``holder``."""
    return Joint(
        name=name,
        kind="hinged lid",
        parts=(lid.name, holder.name),
        fit=at.gap,
        cuts_first=leaves_in(lid, at),
        cuts_second=tuple(_mortise(holder, *at.box(start, 0.0, at.deep)) for start in at.starts),
        measures=(
            Measure(
                "hinge_mortise_length", at.length, "mm", "along the edge", along=(1.0, 0.0, 0.0)
            ),
            Measure(
                "hinge_mortise_width",
                at.leaf,
                "mm",
                "from the arris that the pin lies on",
                along=at.leafward,
            ),
            Measure("hinge_mortise_depth", at.deep, "mm", "of each leaf", along=at.into),
            *on_its_sheet(lid, _places(lid, at, 0)),
            *_places(holder, at, 1),
        ),
        contacts=(_between(at),),
    )


def leaves_in(lid: Part, at: HingedNumbers) -> tuple[HingeMortise, ...]:
    """The mortises in a lid, or in a piece of it, for as much of the leaves as lies there."""
    found = (_mortise(lid, *at.box(start, -at.gap - at.deep, -at.gap)) for start in at.starts)
    return tuple(one for one in found if all(high - low > COPLANAR for low, high in _bounds(one)))


def _bounds(one: HingeMortise) -> tuple[Vec2, Vec2, Vec2]:
    return one.x, one.y, one.z


def _places(part: Part, at: HingedNumbers, which: int) -> tuple[Measure, ...]:
    """Where along a part each hinge is let in."""
    return tuple(
        one
        for k, start in enumerate(at.starts, 1)
        for one in places_of(
            part,
            at.box(start, 0.0, at.deep),
            at.into,
            Told(f"hinge_{k}", f"hinge {k}", f"hinge {k}"),
            which,
        )
        if one.name == f"hinge_{k}_from_end"
    )


def _mortise(part: Part, near: Vec3, far: Vec3) -> HingeMortise:
    """As much of the room between two corners as lies in a part."""
    blank = part.shape.blank
    sizes = (blank.length, blank.width, blank.thickness)
    spans = (span(part, axis, near, far) for axis in (0, 1, 2))
    return HingeMortise(
        *((max(low, 0.0), min(high, most)) for (low, high), most in zip(spans, sizes, strict=True))
    )


def _between(at: HingedNumbers) -> Contact:
    """Where lid and holder face each other between the first two hinges."""
    low, high = at.starts[0] + at.length, at.starts[1]
    lid = add(at.pin, scale(at.into, -at.gap))
    near, far = (add(lid, scale(at.leafward, over)) for over in (at.lipped, at.overlap))
    corners = (
        add(near, (low, 0.0, 0.0)),
        add(near, (high, 0.0, 0.0)),
        add(far, (high, 0.0, 0.0)),
        add(far, (low, 0.0, 0.0)),
    )
    return Contact(corners, at.into, at.gap)
