"""What a cut hollows out of a piece, without the air before it, and where it is open.

Frame and units: the part's own frame, mm.  A mortise, a bore or a slot is open at its mouths; a
housing, a groove, a rebate or a hinge's mortise at every face of the blank that it reaches.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from geometry.cuts.bore import Bore
from geometry.cuts.contour import Face
from geometry.cuts.cut import Blank, Cut
from geometry.cuts.end_bore import EndBore
from geometry.cuts.groove import Groove
from geometry.cuts.hinge_mortise import HingeMortise
from geometry.cuts.housing import StoppedHousing
from geometry.cuts.leaning_bore import LeaningBore
from geometry.cuts.mortise import Mortise
from geometry.cuts.open_mortise import OpenMortise
from geometry.cuts.rebate import Rebate
from geometry.cuts.removal import HalfSpace, Hull, Prism
from geometry.cuts.screw_slot import ScrewSlot
from geometry.cuts.slot_mortise import SlotMortise
from geometry.primitives.frame import Vec3, add, cross, dot, scale, subtract, unit
from geometry.primitives.path import Path
from shared.tolerances import COPLANAR

Bored = SlotMortise | Mortise | Bore | EndBore | LeaningBore | ScrewSlot | OpenMortise
"""What a tenon, a screw or an insert goes into."""

Sunk = StoppedHousing | Groove | Rebate | HingeMortise
"""What is sunk into a face or along an edge of a board."""


@dataclass(frozen=True, slots=True)
class Cavity:
    """The hollow as one or two bodies; ``mouths`` are the planes it is open at, facing out.

    One that ``runs_out`` is open at whatever faces the way of a mouth, though it leans to it.
    """

    bodies: tuple[Prism | Hull, ...]
    mouths: tuple[HalfSpace, ...]
    runs_out: bool = False


@lru_cache(maxsize=4096)
def cavity_of(cut: Cut, blank: Blank) -> Cavity | None:
    """The hollow that a cut makes; None for one that makes none, such as a saw cut."""
    found: Cavity | None = None
    match cut:
        case SlotMortise():
            found = Cavity((cut.hollow(),), (HalfSpace(cut.middle, scale(cut.into, -1.0)),))
        case Mortise():
            found = _mortise(cut)
        case Bore():
            found = _bore(cut, blank)
        case EndBore() | ScrewSlot():
            found = _in_an_end(cut, blank)
        case LeaningBore():
            (body,) = (one for one in cut.removals(blank) if isinstance(one, Prism))
            ends = _faces(blank)[4:]
            within = Prism(body.path, body.z_low, body.z_high, body.frame, ends)
            found = Cavity((within,), ends, runs_out=True)
        case OpenMortise():
            ends = tuple(_faces(blank)[k] for k in (0, 2, 3))
            found = Cavity(_clipped(cut, blank), ends, runs_out=True)
        case StoppedHousing() | Groove() | Rebate() | HingeMortise():
            found = _sunk(cut, blank)
    return found


def _in_an_end(cut: EndBore | ScrewSlot, blank: Blank) -> Cavity:
    mouth = cut.middle if isinstance(cut, EndBore) else cut.screw
    mouths = [HalfSpace(mouth, scale(cut.into, -1.0))]
    if isinstance(cut, ScrewSlot):
        mouths.append(HalfSpace(add(mouth, scale(cut.into, cut.depth)), cut.into))
    return Cavity(_in_wood(cut, blank, cut.depth), tuple(mouths), runs_out=True)


def _mortise(cut: Mortise) -> Cavity:
    mouths = [_mouth(cut.mouth, cut.floor[0])]
    if cut.through:
        mouths.append(_mouth(cut.floor, cut.mouth[0]))
    return Cavity((Hull((*cut.mouth, *cut.floor)),), tuple(mouths))


def _mouth(corners: tuple[Vec3, ...], beyond: Vec3) -> HalfSpace:
    a, b, _, d = corners
    normal = unit(cross(subtract(b, a), subtract(d, a)))
    inside = dot(subtract(beyond, a), normal) > 0.0
    return HalfSpace(a, scale(normal, -1.0) if inside else normal)


def _bore(cut: Bore, blank: Blank) -> Cavity:
    through = cut.depth >= blank.thickness - COPLANAR
    near, far = _faces(blank)[4:]
    if cut.face is Face.REVERSE:
        near, far = far, near
    return Cavity(_clipped(cut, blank), (near, far) if through else (near,))


def _sunk(cut: Cut, blank: Blank) -> Cavity:
    bodies = _clipped(cut, blank)
    spans = [_span(body) for body in bodies]
    sizes = (blank.length, blank.width, blank.thickness)
    mouths = []
    for axis in range(3):
        if min(low[axis] for low, _ in spans) <= COPLANAR:
            mouths.append(_faces(blank)[2 * axis])
        if max(high[axis] for _, high in spans) >= sizes[axis] - COPLANAR:
            mouths.append(_faces(blank)[2 * axis + 1])
    return Cavity(bodies, tuple(mouths))


def _span(body: Prism | Hull) -> tuple[Vec3, Vec3]:
    """The box round a body that lies square in the part's frame."""
    assert isinstance(body, Prism)
    xs, ys = ([vertex[k] for vertex in body.path.vertices] for k in (0, 1))
    return (min(xs), min(ys), body.z_low), (max(xs), max(ys), body.z_high)


def _clipped(cut: Cut, blank: Blank) -> tuple[Prism, ...]:
    """The prisms of a cut that lies square in the part's frame, without what is in the air."""
    found = []
    for body in cut.removals(blank):
        assert isinstance(body, Prism)
        inside = tuple(
            (min(max(x, 0.0), blank.length), min(max(y, 0.0), blank.width), bulge)
            for x, y, bulge in body.path.vertices
        )
        low, high = max(body.z_low, 0.0), min(body.z_high, blank.thickness)
        found.append(Prism(Path(inside), low, high))
    return tuple(found)


def _in_wood(cut: EndBore | ScrewSlot, blank: Blank, depth: float) -> tuple[Prism, ...]:
    """The prisms of a cut that runs along their own z, from its mouth down to ``depth``."""
    return tuple(
        Prism(body.path, max(body.z_low, 0.0), min(body.z_high, depth), body.frame)
        for body in cut.removals(blank)
        if isinstance(body, Prism)
    )


@lru_cache(maxsize=256)
def _faces(blank: Blank) -> tuple[HalfSpace, ...]:
    """Left end, right end, face edge, far edge, face side and reverse, facing out."""
    corner = (0.0, 0.0, 0.0)
    far = (blank.length, blank.width, blank.thickness)
    found = []
    for axis in range(3):
        for point, sign in ((corner, -1.0), (far, 1.0)):
            x, y, z = (sign if k == axis else 0.0 for k in range(3))
            found.append(HalfSpace(point, (x, y, z)))
    return tuple(found)


def faces_of(blank: Blank) -> tuple[tuple[str, HalfSpace], ...]:
    """The six faces of a blank by name, facing out."""
    return tuple(zip(_NAMES, _faces(blank), strict=True))


_NAMES = ("left end", "right end", "face edge", "far edge", "face side", "reverse")
