"""A plinth: four boards on edge, set back under the bench, mitred or butted at the corners.

The boards follow each other round: left, front, right, back; each has its outside as face side
and its top edge, on which the bench stands, as face edge.  Butted, front and back run through and
hide the ends of the sides.  Corner blocks stand a little off the floor.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

from geometry.bench.base_place import SNUG_EDGES
from geometry.bench.constraint import Constraint, rule
from geometry.bench.derived import Derived, derived_length
from geometry.bench.feet_numbers import ground
from geometry.bench.member import THE_BASE, Member
from geometry.bench.overall import PLINTH, base_is
from geometry.cuts.cut import Blank
from geometry.design.joint import Joint
from geometry.design.parameter import Parameter, choice, length
from geometry.design.part import Part, Shape
from geometry.design.spec import BenchSpec
from geometry.joints.glued_faces import glued_block, glued_faces
from geometry.joints.mitre import mitre
from geometry.primitives.frame import Frame, Vec2, Vec3, opposite

MITRED, BUTTED = "mitred", "butted"
WITHOUT, GLUED = "without", "glued in"
OFF_THE_FLOOR = 5.0  # mm that corner blocks end above the floor; common practice, no source

_UP: Vec3 = (0.0, 0.0, 1.0)
_DOWN: Vec3 = (0.0, 0.0, -1.0)

# Each board with the direction it runs in and the board that follows it round.
_ROUND: tuple[tuple[str, Vec2, str], ...] = (
    ("left", (0.0, -1.0), "front"),
    ("front", (1.0, 0.0), "right"),
    ("right", (0.0, 1.0), "back"),
    ("back", (-1.0, 0.0), "left"),
)

# The corner at the start of each board's run.
_STARTS = {"left": "back_left", "front": "front_left", "right": "front_right", "back": "back_right"}
_ENDS = {"left": "front_left", "front": "front_right", "right": "back_right", "back": "back_left"}


def _has_blocks(spec: BenchSpec) -> bool:
    return spec.value("plinth_blocks") == GLUED


PARAMETERS: tuple[Parameter, ...] = (
    length(
        "plinth_thickness",
        "Plinth thickness",
        "Base",
        20,
        8,
        60,
        "Thickness of the plinth's boards; they are as wide as the base is high.",
        step=0.5,
    ),
    choice(
        "plinth_corner",
        "Plinth corners",
        "Base",
        MITRED,
        (MITRED, BUTTED),
        "Mitred, or the sides butted between front and back.",
    ),
    choice(
        "plinth_blocks",
        "Corner blocks",
        "Base",
        GLUED,
        (WITHOUT, GLUED),
        "Blocks glued into the corners, through which the bench can be screwed down.",
    ),
    length(
        "plinth_block",
        "Corner block",
        "Base",
        35,
        12,
        100,
        "Width and thickness of the corner blocks.",
        applies=_has_blocks,
    ),
)


@dataclass(frozen=True, slots=True)
class PlinthNumbers:
    """mm; the outsides in plan, X to the right, Y toward the back; ``ground`` is the height of the
    boards' lower edges."""

    left: float
    right: float
    back: float
    front: float
    height: float
    ground: float
    thickness: float
    mitred: bool
    block: float

    @property
    def block_foot(self) -> float:
        """Height at which the corner blocks end."""
        return self.ground + OFF_THE_FLOOR

    def corner(self, name: str, inward: float = 0.0) -> Vec2:
        """A corner in plan, moved inward along both edges."""
        fore, side = name.split("_")
        x = self.left + inward if side == "left" else self.right - inward
        y = self.back - inward if fore == "back" else self.front + inward
        return (x, y)


@lru_cache(maxsize=512)
def plinth_numbers(spec: BenchSpec) -> PlinthNumbers:
    """Read the plinth from a spec; ``block`` is 0 without corner blocks."""
    return PlinthNumbers(
        left=spec.number("inset_left"),
        right=spec.number("length") - spec.number("inset_right"),
        back=-spec.number("inset_back"),
        front=spec.number("inset_front") - spec.number("depth"),
        height=spec.number("base_height"),
        ground=ground(spec),
        thickness=spec.number("plinth_thickness"),
        mitred=spec.value("plinth_corner") == MITRED,
        block=spec.number("plinth_block") if _has_blocks(spec) else 0.0,
    )


def _parts(spec: BenchSpec) -> tuple[Part, ...]:
    """Four boards, and the corner blocks."""
    p, timber = plinth_numbers(spec), spec.word("timber")
    boards = tuple(_board(p, name, run, timber) for name, run, _ in _ROUND)
    blocks = tuple(_block(p, corner, timber) for corner in _STARTS.values()) if p.block else ()
    return (*boards, *blocks)


def _board(p: PlinthNumbers, name: str, run: Vec2, timber: str) -> Part:
    # A butted side lies between front and back: its corners are a thickness in.
    between = 0.0 if p.mitred or name in ("front", "back") else p.thickness
    (x0, y0), (x1, y1) = p.corner(_STARTS[name]), p.corner(_ENDS[name])
    origin = (x0 + run[0] * between, y0 + run[1] * between, p.height)
    size = math.dist((x0, y0), (x1, y1)) - 2.0 * between
    return Part(
        name=f"plinth_{name}",
        title=f"Plinth, {name}",
        kind="plinth",
        material=timber,
        shape=Shape(Blank(size, p.height - p.ground, p.thickness), ()),
        frame=Frame.of(origin, (*run, 0.0), _DOWN),
    )


def _block(p: PlinthNumbers, corner: str, timber: str) -> Part:
    """Grain upright, from a little off the floor to the underside of the bench."""
    x, y = p.corner(corner, p.thickness)
    fore, side = corner.split("_")
    sx, sy = (1.0 if side == "left" else -1.0), (-1.0 if fore == "back" else 1.0)
    # Both faces in the corner are reference ones; which comes first keeps the frame right-handed.
    inward: tuple[Vec3, Vec3] = ((sx, 0.0, 0.0), (0.0, sy, 0.0))
    across = inward[0] if sx * sy > 0.0 else inward[1]
    return Part(
        name=f"corner_block_{corner}",
        title=f"Corner block, {fore} {side}",
        kind="corner block",
        material=timber,
        shape=Shape(Blank(p.height - p.block_foot, p.block, p.block), ()),
        frame=Frame.of((x, y, p.block_foot), _UP, across),
    )


def _joints(spec: BenchSpec, parts: Mapping[str, Part]) -> tuple[Joint, ...]:
    p = plinth_numbers(spec)
    joints: list[Joint] = []
    for name, _, following in _ROUND:
        first, second = parts[f"plinth_{name}"], parts[f"plinth_{following}"]
        corner = _ENDS[name]
        if p.mitred:
            joints.append(mitre(f"mitre_{corner}", first, second, _mitre_face(p, corner)))
        elif name in ("left", "right"):
            joints.append(_butt(p, corner, first, second, end=True))
        else:
            joints.append(_butt(p, corner, second, first, end=False))
    if p.block:
        for name, run, _ in _ROUND:
            for corner, along in ((_STARTS[name], 1.0), (_ENDS[name], -1.0)):
                joints.append(_blocked(p, parts, name, corner, (run[0] * along, run[1] * along)))
    return tuple(joints)


def _mitre_face(p: PlinthNumbers, corner: str) -> tuple[Vec3, Vec3, Vec3, Vec3]:
    outside, inside = p.corner(corner), p.corner(corner, p.thickness)
    return (
        (*outside, p.height),
        (*outside, p.ground),
        (*inside, p.ground),
        (*inside, p.height),
    )


def _butt(p: PlinthNumbers, corner: str, side: Part, through: Part, *, end: bool) -> Joint:
    """The end of a side against the inside of front or back."""
    x = p.corner(corner)[0]
    inside = p.corner(corner, p.thickness)
    toward = side.frame.x_axis if end else opposite(side.frame.x_axis)
    face = (
        (x, inside[1], p.height),
        (inside[0], inside[1], p.height),
        (inside[0], inside[1], p.ground),
        (x, inside[1], p.ground),
    )
    return glued_faces(f"butt_{corner}", "butt joint", side, through, face, toward)


def _blocked(
    p: PlinthNumbers, parts: Mapping[str, Part], name: str, corner: str, run: Vec2
) -> Joint:
    """A corner block on the inside of one board."""
    block, board = parts[f"corner_block_{corner}"], parts[f"plinth_{name}"]
    x, y = p.corner(corner, p.thickness)
    far = (x + run[0] * p.block, y + run[1] * p.block)
    face = (
        (x, y, p.block_foot),
        (*far, p.block_foot),
        (*far, p.height),
        (x, y, p.height),
    )
    return glued_block(f"block_{corner}_{name}", block, board, face, opposite(board.frame.z_axis))


def _inner_room(spec: BenchSpec) -> float:
    """The plinth's inside, the smaller way, less what must be left between corner blocks."""
    p = plinth_numbers(spec)
    span = min(p.right - p.left, p.back - p.front)
    return span - 2.0 * (p.thickness + p.block) - 20.0


CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "plinth_room",
        "length depth inset_left inset_right inset_back inset_front plinth_thickness plinth_block "
        "plinth_blocks",
        _inner_room,
        "the plinth needs at least {20 mm} of room inside",
    ),
)


def _derived(spec: BenchSpec) -> tuple[Derived, ...]:
    p = plinth_numbers(spec)
    return (
        derived_length(
            "plinth_length", "Plinth length", "Base", p.right - p.left, "length and insets"
        ),
        derived_length(
            "plinth_depth", "Plinth depth", "Base", p.back - p.front, "depth and insets"
        ),
    )


def _snug(_spec: BenchSpec) -> tuple[dict[str, float], ...]:
    return ({**SNUG_EDGES, "plinth_thickness": 8.0, "plinth_block": 12.0},)


def has_plinth(spec: BenchSpec) -> bool:
    return base_is(PLINTH, spec)


MEMBER = Member(
    "plinth",
    PARAMETERS,
    CONSTRAINTS,
    _parts,
    _joints,
    derived=_derived,
    present=has_plinth,
    snug=_snug,
    made_into=THE_BASE,
)
