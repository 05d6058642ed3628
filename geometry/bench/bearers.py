"""What of a base bears on the board above, and where along it a fixing may stand.

A bearer is a stretch of a piece's upper inside arris that is free of joints; the one place that
knows every base for the sake of fixing it.  A new base adds itself here.  Bench coordinates, mm.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from functools import lru_cache

from geometry.bench.apron_numbers import ENDS, apron_frame, apron_numbers
from geometry.bench.base_numbers import BaseNumbers, base_numbers, crossing, outward
from geometry.bench.bridled_legs import stretcher_words
from geometry.bench.corner_block_numbers import corner_blocks, has_corner_blocks
from geometry.bench.four_leg_numbers import APRONS
from geometry.bench.overall import (
    CROSSED,
    FOUR_LEGS,
    LID_BOX,
    PANEL_FEET,
    PLINTH,
    TRESTLES,
    stands_on_base,
)
from geometry.bench.panel_numbers import panel_numbers
from geometry.bench.plinth import plinth_numbers
from geometry.bench.trestles import rail_numbers
from geometry.design.spec import BenchSpec
from geometry.primitives.frame import Vec2, Vec3, add, dot, scale, unit

# common practice, no source
CLEAR = 2.0  # mm between a fixing and whatever joint or piece is next to it


@dataclass(frozen=True, slots=True)
class Bearer:
    """A stretch of a piece.

    ``start`` and ``end`` lie on the upper inside arris; ``along`` and ``inward`` are level unit
    directions along it and from the inside face into the open; ``slope`` is how far that face goes
    outward for each mm down.  ``thickness`` is level, at the top; ``height`` what the piece goes
    down; ``room`` how far inward a fixing may reach.  Screws go right through a ``solid`` piece;
    others have a block glued to their inside.
    """

    name: str
    part: str
    start: Vec3
    end: Vec3
    along: Vec3
    inward: Vec3
    slope: float
    thickness: float
    height: float
    room: float
    solid: bool

    @property
    def length(self) -> float:
        return math.dist(self.start, self.end)


def can_be_fixed(spec: BenchSpec) -> bool:
    """Whether there is a base, and one that nothing else holds to the seat already.

    A box stands on the lower edges of its walls, and is screwed down through its bottom.
    """
    if not stands_on_base(spec) or spec.value("seat") == LID_BOX:
        return False
    return spec.value("base") != FOUR_LEGS or spec.value("leg_joint") == APRONS


@lru_cache(maxsize=512)
def bearers(spec: BenchSpec, inward_by: float) -> tuple[Bearer, ...]:
    """The bearers of a base; fixings reach ``inward_by`` inside them, and must not meet at corners.

    KeyError for a base that has none.
    """
    return _BEARERS[spec.word("base")](spec, inward_by)


def _crossed(spec: BenchSpec, inward_by: float) -> tuple[Bearer, ...]:
    """Both halves of both stretchers; fixings stand in the wider quarters between them."""
    b = base_numbers(spec)
    middle = crossing(b)
    assert middle is not None, "the constraints keep the stretchers crossed"
    half = b.thickness / 2.0
    found = []
    for first, second in b.pairs:
        part = stretcher_words(b, first, second)[0]
        for corner in (first, second):
            out = outward(b, corner)
            fore, side = corner.split("_")
            beside = outward(b, f"{fore}_{'right' if side == 'left' else 'left'}")
            behind = outward(b, f"{'front' if fore == 'back' else 'back'}_{side}")
            partner = min((beside, behind), key=lambda way: round(dot(out, way), 6))
            cosine = dot(out, partner)
            sine = math.sqrt(max(1e-9, 1.0 - cosine * cosine))
            inward = unit(add(partner, scale(out, -cosine)))
            # Along the stretcher until its side clears the other, and its fixings their partner's.
            near = max(
                (half + CLEAR + half * abs(cosine)) / sine,
                (half + inward_by + CLEAR) * (1.0 + cosine) / sine,
            )
            far = math.dist(middle, b.tip(corner)) - b.leg_top / b.cosine - CLEAR
            found.append(
                _on_stretcher(b, f"{part}_{corner}", part, middle, out, inward, (near, far))
            )
    return tuple(found)


def _on_stretcher(
    b: BaseNumbers,
    name: str,
    part: str,
    origin: Vec2,
    along: Vec3,
    inward: Vec3,
    span: tuple[float, float],
) -> Bearer:
    """From ``span[0]`` to ``span[1]`` mm along a stretcher from a point on its middle."""
    arris = add((*origin, b.height), scale(inward, b.thickness / 2.0))
    near, far = span[0], max(span)
    return Bearer(
        name=name,
        part=part,
        start=add(arris, scale(along, near)),
        end=add(arris, scale(along, far)),
        along=along,
        inward=inward,
        slope=0.0,
        thickness=b.thickness,
        height=b.stretcher_height,
        room=math.inf,
        solid=True,
    )


def _trestles(spec: BenchSpec, _inward_by: float) -> tuple[Bearer, ...]:
    """Both sides of the rail on both stretchers."""
    r = rail_numbers(spec)
    b = r.legs
    found = []
    for first, second in b.pairs:
        part = stretcher_words(b, first, second)[0]
        side = 1.0 if part.endswith("left") else -1.0
        for corner in (first, second):
            out = outward(b, corner)
            tip = b.tip(corner)
            to_rail = abs(tip[1] - r.middle) - r.width / 2.0 - CLEAR
            leg = b.leg_top / b.cosine + CLEAR
            half = _on_stretcher(
                b,
                f"{part}_{corner.split('_')[0]}",
                part,
                tip,
                scale(out, -1.0),
                (side, 0.0, 0.0),
                (leg, to_rail),
            )
            found.append(replace(half, room=r.between / 2.0))
    return tuple(found)


def _aprons(spec: BenchSpec, inward_by: float) -> tuple[Bearer, ...]:
    """Each apron between its legs, clear of the fixings of its neighbours."""
    a = apron_numbers(spec)
    n = a.legs
    leans = {side: math.radians(a.lean_deg(side)) for side in ENDS}
    blocks = corner_blocks(spec).reach if has_corner_blocks(spec) else (0.0, 0.0)
    within = {side: (a.reveal + a.thickness) / math.cos(leans[side]) for side in ENDS}
    found = []
    for side, out in _OUT.items():
        lengthways = side in ("front", "back")
        next_to = "left" if lengthways else "front"
        leg = n.size / math.cos(leans[next_to]) + CLEAR
        block = blocks[0 if lengthways else 1] + CLEAR
        ends = max(leg, within[next_to] + inward_by + CLEAR, block)
        frame = apron_frame(a, side)
        x, y, _ = frame.to_bench((0.0, 0.0, a.thickness))
        low, high = (n.left, n.right) if lengthways else (n.front, n.back)
        first, last = low + ends, max(low + ends, high - ends)
        along: Vec3 = (1.0, 0.0, 0.0) if lengthways else (0.0, 1.0, 0.0)
        room = (n.back - n.front if lengthways else n.right - n.left) / 2.0 - within[side]
        found.append(
            Bearer(
                name=f"apron_{side}",
                part=f"apron_{side}",
                start=(first, y, n.height) if lengthways else (x, first, n.height),
                end=(last, y, n.height) if lengthways else (x, last, n.height),
                along=along,
                inward=scale(out, -1.0),
                slope=math.tan(leans[side]),
                thickness=a.thickness / math.cos(leans[side]),
                height=a.height,
                room=room,
                solid=False,
            )
        )
    return tuple(found)


_OUT: Mapping[str, Vec3] = {
    "front": (0.0, -1.0, 0.0),
    "back": (0.0, 1.0, 0.0),
    "left": (-1.0, 0.0, 0.0),
    "right": (1.0, 0.0, 0.0),
}

_PLINTH: Mapping[str, tuple[Vec3, Vec3]] = {
    # board: the direction along it, the direction inward
    "left": ((0.0, -1.0, 0.0), (1.0, 0.0, 0.0)),
    "front": ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0)),
    "right": ((0.0, 1.0, 0.0), (-1.0, 0.0, 0.0)),
    "back": ((-1.0, 0.0, 0.0), (0.0, -1.0, 0.0)),
}


def _plinth(spec: BenchSpec, inward_by: float) -> tuple[Bearer, ...]:
    p = plinth_numbers(spec)
    t = p.thickness
    ends = max(p.block, inward_by) + CLEAR
    corners = {
        "left": ((p.left + t, p.back - t), (p.left + t, p.front + t)),
        "front": ((p.left + t, p.front + t), (p.right - t, p.front + t)),
        "right": ((p.right - t, p.front + t), (p.right - t, p.back - t)),
        "back": ((p.right - t, p.back - t), (p.left + t, p.back - t)),
    }
    found = []
    for name, (along, inward) in _PLINTH.items():
        (x0, y0), (x1, y1) = corners[name]
        run = math.dist((x0, y0), (x1, y1))
        first, last = ends, max(ends, run - ends)
        start: Vec3 = (x0, y0, p.height)
        across = (p.back - p.front if name in ("front", "back") else p.right - p.left) / 2.0 - t
        found.append(
            Bearer(
                name=f"plinth_{name}",
                part=f"plinth_{name}",
                start=add(start, scale(along, first)),
                end=add(start, scale(along, last)),
                along=along,
                inward=inward,
                slope=0.0,
                thickness=t,
                height=p.height - p.ground,
                room=across,
                solid=False,
            )
        )
    return tuple(found)


def _panels(spec: BenchSpec, _inward_by: float) -> tuple[Bearer, ...]:
    """The outer panels, on both sides of the rail."""
    p = panel_numbers(spec)
    half_rail = p.rail_thickness / 2.0 + CLEAR
    found = []
    for side, x, sign in (
        ("left", p.left + p.thickness, 1.0),
        ("right", p.right - p.thickness, -1.0),
    ):
        next_x = (p.left + p.right) / 2.0
        if p.middle is not None:
            next_x = p.middle - sign * p.thickness / 2.0
        for fore, y, other in (
            ("back", p.back - CLEAR, p.rail_middle + half_rail),
            ("front", p.front + CLEAR, p.rail_middle - half_rail),
        ):
            way = -1.0 if fore == "back" else 1.0
            run = max(0.0, (other - y) * way)
            found.append(
                Bearer(
                    name=f"panel_foot_{side}_{fore}",
                    part=f"panel_foot_{side}",
                    start=(x, y, p.height),
                    end=(x, y + way * run, p.height),
                    along=(0.0, way, 0.0),
                    inward=(sign, 0.0, 0.0),
                    slope=0.0,
                    thickness=p.thickness,
                    height=p.height - p.ground - p.relief,
                    room=abs(next_x - x) - CLEAR,
                    solid=False,
                )
            )
    return tuple(found)


_BEARERS: dict[str, Callable[[BenchSpec, float], tuple[Bearer, ...]]] = {
    CROSSED: _crossed,
    TRESTLES: _trestles,
    FOUR_LEGS: _aprons,
    PLINTH: _plinth,
    PANEL_FEET: _panels,
}
