"""Two flat faces that lie on each other, held by screws that each have their place.

A hole goes through the piece that the heads are in, a slot where the other swells and shrinks along
its face; in the other piece stands a pilot hole.  Where a piece is deep the head goes into it.
Frame: bench coordinates, mm.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

from geometry.cuts.bore import Bore
from geometry.cuts.contour import Face
from geometry.cuts.cut import Cut
from geometry.cuts.end_bore import EndBore
from geometry.cuts.screw_hole import ScrewHole
from geometry.cuts.screw_slot import ScrewSlot
from geometry.cuts.trim import finished
from geometry.design.joint import Contact, Joint, Measure, Screws
from geometry.design.later import Later
from geometry.design.part import Part
from geometry.joints.face_to_face import Corners, face_to_face
from geometry.joints.reference_faces import Told, places_of
from geometry.joints.screw_rows import LONGEST_LAND
from geometry.primitives.frame import Vec3, add, cross, dot, norm, rounded, scale, subtract, unit
from shared.fixings import SCREW_EASE, WoodScrew

_SQUARE = 1.0 - 1e-9  # of a direction's part along the thickness
_NEAR = 1e-6  # mm
_BESIDE = 0.5  # mm between a hole and the faces that are said to meet
_LEAST_FACE = 2.0  # mm: a narrower strip of a face is not said to meet


@dataclass(frozen=True, slots=True)
class ScrewPlace:
    """``at`` lies in the faces that meet.  The piece that holds the screw grows along the unit
    direction ``away`` there: it may go back ``shrink`` and on ``swell``; a ``fast`` one has a plain
    hole."""

    at: Vec3
    away: Vec3
    shrink: float = 0.0
    swell: float = 0.0
    fast: bool = True


@dataclass(frozen=True, slots=True)
class ScrewedFaces:
    """``corners`` bound the rectangle in which the pieces touch, ``normal`` points from the first
    into the second; ``heads`` tells which of them the heads are in, 0 or 1.

    ``land`` is the wood under a head, ``through`` how far it is to the far side; ``bite`` how deep
    a screw goes into the other piece.  ``laid`` are corners of the one with the heads on the other.
    """

    corners: Corners
    normal: Vec3
    heads: int
    screws: tuple[ScrewPlace, ...]
    screw: WoodScrew
    land: float
    through: float
    bite: float
    laid: tuple[Vec3, ...]

    @property
    def hole(self) -> float:
        """Diameter of a hole, width of a slot."""
        return self.screw.shank + SCREW_EASE

    @property
    def into(self) -> Vec3:
        """From the piece with the heads into the other."""
        return self.normal if self.heads == 0 else scale(self.normal, -1.0)

    @property
    def driven(self) -> Screws:
        """For whoever asks the joint what holds it."""
        places = tuple(one.at for one in self.screws)
        return Screws(self.heads, self.screw, self.bite, self.into, places)


def laid_on(
    corners: Corners,
    normal: Vec3,
    screws: tuple[ScrewPlace, ...],
    screw: WoodScrew,
    *,
    through: float,
    bite: float,
) -> ScrewedFaces:
    """The second piece, ``through`` deep, screwed to the first by all that it lies on."""
    return ScrewedFaces(
        corners=corners,
        normal=normal,
        heads=1,
        screws=screws,
        screw=screw,
        land=min(LONGEST_LAND, through),
        through=through,
        bite=bite,
        laid=corners,
    )


@lru_cache(maxsize=4096)
def screwed_faces(name: str, kind: str, first: Part, second: Part, at: ScrewedFaces) -> Joint:
    """Lay ``second`` on ``first`` and screw them together; without a screw they only meet."""
    if not at.screws:
        plain = face_to_face(name, kind, first, second, at.corners, at.normal)
        return replace(plain, screws=at.driven)
    head, holder = (first, second) if at.heads == 0 else (second, first)
    bored: tuple[Cut, ...] = tuple(_through(head, one, at) for one in at.screws)
    pilots: tuple[Cut, ...] = tuple(_pilot(holder, one, at) for one in at.screws)
    cuts = (bored, pilots) if at.heads == 0 else (pilots, bored)
    return Joint(
        name=name,
        kind=kind,
        parts=(first.name, second.name),
        fit=0.0,
        cuts_first=cuts[0],
        cuts_second=cuts[1],
        measures=Later(_measures, head, holder, at),
        contacts=Later(_contacts, at),
        screws=at.driven,
    )


def _toward(at: ScrewedFaces) -> Vec3:
    return unit(subtract(at.corners[1], at.corners[0]))


def _through(head: Part, one: ScrewPlace, at: ScrewedFaces) -> Cut:
    mouth = rounded(head.frame.to_local(one.at))
    into = rounded(head.frame.turn_to_local(scale(at.into, -1.0)))
    if one.fast and at.land >= at.through and (side := _face_of(head, mouth, into)):
        return Bore(*mouth[:2], at.hole, at.through, side)
    if one.fast:
        toward = rounded(head.frame.turn_to_local(_toward(at)))
        # Past the far side even where that leans.
        deep = at.through + at.screw.head
        return ScrewHole(mouth, into, toward, at.hole, at.land, at.screw.head, deep)
    before, after = _play(one)
    along = rounded(head.frame.turn_to_local(one.away))
    wide = at.screw.head
    return ScrewSlot(mouth, into, along, before, after, at.hole, at.land, wide, at.through)


def _play(one: ScrewPlace) -> tuple[float, float]:
    """How far a screw may go back and on in its slot."""
    return round(one.shrink + SCREW_EASE / 2.0, 9), round(one.swell + SCREW_EASE / 2.0, 9)


def _pilot(holder: Part, one: ScrewPlace, at: ScrewedFaces) -> Cut:
    middle = rounded(holder.frame.to_local(one.at))
    into = rounded(holder.frame.turn_to_local(at.into))
    if side := _face_of(holder, middle, into):
        return Bore(*middle[:2], at.screw.root, at.bite, side)
    toward = rounded(holder.frame.turn_to_local(_toward(at)))
    return EndBore(middle, into, toward, at.screw.root, at.bite)


def _face_of(part: Part, at: Vec3, into: Vec3) -> Face | None:
    """The face of the blank that a hole goes square into; None where it goes into none."""
    for face, level, way in (
        (Face.FACE_SIDE, 0.0, 1.0),
        (Face.REVERSE, part.shape.blank.thickness, -1.0),
    ):
        if abs(at[2] - level) < _NEAR and into[2] * way > _SQUARE:
            return face
    return None


def _ends(one: ScrewPlace, at: ScrewedFaces) -> tuple[Vec3, ...]:
    """What a screw's place is measured to: the middle of a hole, or both round ends of a slot."""
    if one.fast:
        return (one.at,)
    before, after = _play(one)
    half = at.hole / 2.0
    return (
        add(one.at, scale(one.away, -before - half)),
        add(one.at, scale(one.away, after + half)),
    )


def _measures(head: Part, holder: Part, at: ScrewedFaces) -> Iterator[Measure]:
    which, other = at.heads, 1 - at.heads
    told: set[tuple[str, float]] = set()
    for k, one in enumerate(at.screws, 1):
        word = "hole" if one.fast else "slot"
        words = Told(f"screw_{k}", f"the middle of {word} {k}", f"the nearer end of {word} {k}")
        for place in places_of(head, _ends(one, at), at.into, words, which):
            # A row of screws has one distance from the edge that it runs along.
            key = (place.meaning.split(" to ")[0], round(place.value, 3))
            if key not in told:
                told.add(key)
                yield place
    yield from _of_holes(at)
    yield Measure("pilot", at.screw.root, "mm", f"diameter, in the {holder.kind}", (other,))
    deep = f"into the {holder.kind}, bored through the {head.kind}'s holes"
    yield Measure("pilot_depth", at.bite, "mm", deep, (other,), at.into)
    laid = _laid(head, holder, at)
    for place in places_of(holder, laid, at.into, _laid_words(head), other):
        yield replace(place, at=_where_seen(place, at.laid))


def _laid(head: Part, holder: Part, at: ScrewedFaces) -> Sequence[Vec3]:
    """What tells where the piece with the heads lies: its own ends and edges, which may reach
    beyond the faces that touch; of one that leans, only those."""
    square = all(
        max(abs(dot(one, other)) for other in _axes(holder)) > _SQUARE for one in _axes(head)
    )
    if not square:
        return at.laid
    sizes, deep = finished(head.shape.blank, head.shape.cuts), head.shape.blank.thickness
    return tuple(
        head.frame.to_bench((x, y, z))
        for x in (sizes.x_low, sizes.x_high)
        for y in (sizes.y_low, sizes.y_high)
        for z in (0.0, deep)
    )


def _where_seen(place: Measure, laid: Sequence[Vec3]) -> Vec3 | None:
    """Where what is measured to also bounds the faces that meet, and so is seen on the other
    piece; None where it lies beyond those."""
    at, along = place.at, place.along
    if at is None or along is None:
        return None
    return next((one for one in laid if abs(dot(subtract(one, at), along)) < _NEAR), None)


def _axes(part: Part) -> tuple[Vec3, Vec3, Vec3]:
    return part.frame.x_axis, part.frame.y_axis, part.frame.z_axis


def _laid_words(head: Part) -> Told:
    return Told(head.kind.replace(" ", "_"), f"the {head.kind}", f"the {head.kind}")


def _of_holes(at: ScrewedFaces) -> Iterator[Measure]:
    which = (at.heads,)
    gauge = f"no. {at.screw.gauge}"
    if any(one.fast for one in at.screws):
        yield Measure("hole", at.hole, "mm", f"diameter, for a {gauge} screw", which)
    slots = [one for one in at.screws if not one.fast]
    for k, one in enumerate(at.screws, 1):
        if not one.fast:
            long = sum(_play(one)) + at.hole
            yield Measure(f"slot_{k}_length", long, "mm", "over its round ends", which, one.away)
    if slots:
        across = cross(at.into, slots[0].away)
        yield Measure("slot_width", at.hole, "mm", f"for a {gauge} screw", which, across)
    if at.land < at.through:
        yield Measure("land", at.land, "mm", "of wood under a screw's head", which, at.into)
        yield Measure("head", at.screw.head, "mm", "diameter of the room for a head", which)
    yield Measure("screw_length", at.land + at.bite, "mm", f"{gauge}, from head to point", ())


def _contacts(at: ScrewedFaces) -> Iterator[Contact]:
    return (Contact(face, at.normal, 0.0) for face in _meeting(at))


def _meeting(at: ScrewedFaces) -> tuple[tuple[Vec3, ...], ...]:
    """What of the rectangle lies between the screws, as strips square to its longer side."""
    start, beside, _, above = at.corners
    sides = sorted((subtract(beside, start), subtract(above, start)), key=norm)
    across, along = sides
    way, long = unit(along), norm(along)
    taken = sorted(_reach(one, at, start, way) for one in at.screws)
    strips: list[tuple[Vec3, ...]] = []
    low = 0.0
    for near, far in (*taken, (long, long)):
        if near - low > _LEAST_FACE:
            a, b = add(start, scale(way, low)), add(start, scale(way, near))
            face = (a, b, add(b, across), add(a, across))
            turned = dot(cross(subtract(b, a), across), at.normal) < 0.0
            strips.append(tuple(reversed(face)) if turned else face)
        low = max(low, far)
    return tuple(strips) or (at.corners,)


def _reach(one: ScrewPlace, at: ScrewedFaces, start: Vec3, way: Vec3) -> tuple[float, float]:
    """From where to where along the longer side a hole or slot takes of the faces."""
    middle, half = dot(subtract(one.at, start), way), at.hole / 2.0 + _BESIDE
    if not one.fast:
        half += abs(dot(one.away, way)) * max(_play(one))
    return middle - half, middle + half
