"""Checks of drawers in motion, tried on the finished solids: out as far as they go, and askew.

Frame and units: bench frame, mm; a drawer opens toward the maker, along -Y.

Method: the pieces of a drawer are swept straight out against every part that is not its own (see
``solids.sweeping``: exact for flat faces).  Boxes round the solids tell first which parts come into
question at all; on a sound bench hardly any.  Askew: a box with play p at each side of its guides
turns until it touches both.  When it is out by e, the guides hold it over its last L - e, so it
turns by atan(2 p / (L - e)), and its front, e before the guides, moves p + e · 2 p / (L - e) aside.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from geometry.bench.bench import Bench
from geometry.bench.case_numbers import LEFT, RIGHT, case_numbers
from geometry.bench.drawer_numbers import Drawer, box_side_clearance, drawers, fronts_of, making_of
from geometry.bench.runner_numbers import runner_of
from geometry.checks.check import Check
from geometry.design.finding import Finding, Level, Mend
from geometry.design.part import Part
from geometry.primitives.frame import Vec3
from geometry.solids.cutting import placed
from geometry.solids.solid import Floats
from geometry.solids.sweeping import SLIDING, Touch, first_touch
from shared.runners import WOODEN, generic
from shared.units import length_mark

_OUT: Vec3 = (0.0, -1.0, 0.0)
_IN: Vec3 = (0.0, 1.0, 0.0)
_UP: Vec3 = (0.0, 0.0, 1.0)
_NEAR = 1e-6  # mm
_HAIR = 0.01  # mm: finer than any drawer is fitted


@dataclass(frozen=True, slots=True)
class _Met:
    """Where a drawer meets a part that is not its own, and by which piece."""

    touch: Touch
    piece: Part
    part: Part


def pieces_of(bench: Bench, drawer: Drawer) -> tuple[Part, ...]:
    """The parts that move with a drawer: its front, box and bottom, and no runner of wood."""
    start = f"{drawer.name}_"
    return tuple(
        part for part in bench.parts if part.name.startswith(start) and part.kind != "runner"
    )


def opens_by(bench: Bench, drawer: Drawer) -> float:
    """How far a drawer goes on its runners; wooden ones have the travel of their generic row."""
    row = runner_of(bench.spec)
    travel = generic(WOODEN).travel if row.kind == WOODEN else row.travel
    return drawer.box.length * travel / 100.0


@lru_cache(maxsize=256)
def _met(
    moving: tuple[Part, ...], others: tuple[Part, ...], way: Vec3, reach: float
) -> _Met | None:
    """What pieces that move together first meet."""
    touch = first_touch([placed(p) for p in moving], [placed(p) for p in others], way, reach)
    return _Met(touch, moving[touch.mover], others[touch.other]) if touch else None


def _swept(bench: Bench, drawer: Drawer, way: Vec3, reach: float) -> _Met | None:
    """What a drawer first meets along an axis of the bench, within ``reach``; but for the way out
    what its box meets, without its front."""
    pieces = pieces_of(bench, drawer)
    own = {piece.name for piece in pieces}
    swept = {piece.name for piece in pieces if way == _OUT or piece.kind != "drawer front"}
    names, low, high = boxes_of(bench.parts)
    mine, kin = (np.isin(names, list(some)) for some in (swept, own))
    ahead = np.array(way) * reach
    # The boxes of the pieces drawn out along the way, and narrower by what slides.
    least = low + np.minimum(ahead, 0.0) + np.where(ahead == 0.0, SLIDING, 0.0)
    most = high + np.maximum(ahead, 0.0) - np.where(ahead == 0.0, SLIDING, 0.0)
    near = (least[:, None] < high[None]) & (most[:, None] > low[None])
    pairs = near.all(axis=2) & mine[:, None] & ~kin[None, :]
    if not pairs.any():
        return None
    moving = tuple(bench.parts[k] for k in np.nonzero(pairs.any(axis=1))[0])
    standing = tuple(bench.parts[k] for k in np.nonzero(pairs.any(axis=0))[0])
    return _met(moving, standing, way, reach)


@lru_cache(maxsize=16)
def boxes_of(parts: tuple[Part, ...]) -> tuple[tuple[str, ...], Floats, Floats]:
    """Names, and least and greatest corners (n, 3)."""
    solids = [placed(part) for part in parts]
    low, high = np.array([one.low for one in solids]), np.array([one.high for one in solids])
    return tuple(part.name for part in parts), low, high


def _blocked(bench: Bench) -> Iterator[Finding]:
    """Each drawer out of its opening: first as far as its runners go, then as it is put in."""
    fronts = fronts_of(bench.spec)
    for drawer in drawers(bench.spec):
        whole = drawer.box.length + fronts.thickness
        met = _swept(bench, drawer, _OUT, whole)
        if met is None:
            continue
        travel = min(whole, opens_by(bench, drawer))
        far = met.touch.travel
        opens = far >= travel - _HAIR
        doing = (
            f"{drawer.title} opens, but cannot be put in or taken out: {length_mark(_whole(far))} "
            "from where it is shut"
            if opens
            else f"{drawer.title} comes out only {length_mark(_whole(far))} of its "
            f"{length_mark(_whole(travel))}: there"
        )
        yield Finding(
            check="drawer_shut_in" if opens else "drawer_blocked",
            level=Level.DO_NOT_CUT,
            message=f"{doing} its {_plain(met.piece, drawer)} runs into {_named(met.part)}.",
            parts=(met.piece.name, met.part.name),
            place=met.touch.place,
            amount=far,
            limit=whole if opens else travel,
        )


def _hits_behind(bench: Bench) -> Iterator[Finding]:
    """What is too near behind a shut drawer for its runners; the back is measured elsewhere."""
    behind = runner_of(bench.spec).behind
    for drawer in drawers(bench.spec):
        met = _swept(bench, drawer, _IN, behind)
        if met is None or met.part.kind == "back" or met.touch.travel >= behind - _HAIR:
            continue
        yield Finding(
            check="drawer_hits",
            level=Level.DO_NOT_CUT,
            message=(
                f"{drawer.title} cannot be shut: {_named(met.part)} stands "
                f"{length_mark(_whole(met.touch.travel))} behind its {_plain(met.piece, drawer)}, "
                f"and its runners need {length_mark(behind)}."
            ),
            parts=(met.piece.name, met.part.name),
            place=met.touch.place,
            amount=met.touch.travel,
            limit=behind,
        )


def _too_tall(bench: Bench) -> Iterator[Finding]:
    """Boxes with less room above them than their runners need to tilt or lift them."""
    above = runner_of(bench.spec).above
    for drawer in drawers(bench.spec):
        met = _swept(bench, drawer, _UP, above)
        if met is None or met.touch.travel >= above - _HAIR:
            continue
        yield Finding(
            check="drawer_too_tall",
            level=Level.DO_NOT_CUT,
            message=(
                f"{drawer.title} cannot go in: {_named(met.part)} lies "
                f"{length_mark(_whole(met.touch.travel))} above its {_plain(met.piece, drawer)}, "
                f"and its runners need {length_mark(above)}."
            ),
            parts=(met.piece.name, met.part.name),
            place=met.touch.place,
            amount=met.touch.travel,
            limit=above,
        )


def _whole(size: float) -> float:
    return round(size, 1)


def _plain(piece: Part, drawer: Drawer) -> str:
    """A piece of a drawer that has been named: its title without which one it is."""
    title = piece.title.removesuffix(f", {drawer.place}")
    return title.removeprefix("Drawer ").lower()


def _named(part: Part) -> str:
    return f"“{part.title}”"


def aside(play: float, length: float, out: float) -> float:
    """How far a front moves aside when its box, with ``play`` at each side of its guides, is turned
    in them as far as it goes; mm.

    >>> aside(1.0, 300.0, 0.0)
    1.0
    >>> aside(1.0, 300.0, 100.0)
    2.0
    """
    return play + out * 2.0 * play / (length - out)


def _askew(bench: Bench) -> Iterator[Finding]:
    """Fronts of drawers on wooden runners beside what stands farther forward than they do."""
    spec = bench.spec
    row = runner_of(spec)
    if row.kind != WOODEN:
        return
    play = box_side_clearance(row, making_of(spec).side)
    for drawer in drawers(spec):
        for side, upright in (("left", drawer.opening.left), ("right", drawer.opening.right)):
            if upright not in {part.name for part in bench.parts}:
                continue
            found = _rubs(bench, drawer, bench.part(upright), side, play)
            if found is not None:
                yield found


def _rubs(bench: Bench, drawer: Drawer, upright: Part, side: str, play: float) -> Finding | None:
    """A front that touches an upright beside it before it is past it."""
    front = placed(bench.part(f"{drawer.name}_front"))
    beside = placed(upright)
    gap = (
        float(front.low[0] - beside.high[0])
        if side == "left"
        else float(beside.low[0] - front.high[0])
    )
    # Past the upright when the front's hind face is; it cannot be turned farther than half out.
    stands = _forward(bench, upright, drawer.z_high)
    past = min(float(front.high[1]) + stands, drawer.box.length / 2.0)
    if gap < 0.0 or past <= 0.0:
        return None
    moves = aside(play, drawer.box.length, past)
    if moves <= gap + _NEAR:
        return None
    wanted = float(np.ceil(moves * 10.0 - _NEAR) / 10.0)
    z = (drawer.z_low + drawer.z_high) / 2.0
    return Finding(
        check="front_rubs",
        level=Level.THINK_AGAIN,
        message=(
            f"{drawer.title}, pulled askew, moves {length_mark(round(moves, 1))} to the {side} "
            f"before its front is past {_named(upright)}, and has {length_mark(round(gap, 2))}."
        ),
        parts=(f"{drawer.name}_front", upright.name),
        place=(float(front.low[0] if side == "left" else front.high[0]), -stands, z),
        amount=moves,
        limit=gap,
        mend=Mend(f"Leave gaps of {length_mark(wanted)}.", (("drawer_gap", wanted),)),
    )


def _forward(bench: Bench, upright: Part, height: float) -> float:
    """How far in front of y = 0 an upright reaches at a height, where a flared end leans."""
    c = case_numbers(bench.spec)
    if upright.kind != "end panel":
        return c.upright_front
    flare = c.flare_of(LEFT if upright.name.endswith(LEFT) else RIGHT).amount
    return c.depth + flare * (height - c.floor) / c.height


CHECKS: tuple[Check, ...] = (
    Check(
        "drawer_blocked",
        "Drawer that cannot be opened or put in",
        "Sweeps each drawer, front and box, straight out of its opening against all other parts of "
        "the bench as they are cut: uprights, wooden runners, legs, what leans over it, the fronts "
        "beside it. It must go as far as its runners do, and come out wholly, as it is put in by "
        "the same way. The limit is the runner's travel; a part is in the way or it is not.",
        _blocked,
        ("drawers",),
        quick=False,
    ),
    Check(
        "drawer_hits",
        "Something behind a shut drawer",
        "Sweeps each shut drawer backward. Posts of a back rest, blocks and rails need the same "
        "room from it as the back. The limit is the runner's clearance behind: check your runner's "
        "sheet.",
        _hits_behind,
        ("drawers",),
        quick=False,
    ),
    Check(
        "drawer_too_tall",
        "No room above a drawer",
        "Sweeps each box upward. A drawer is tilted, or lifted off its runners, as it goes in. The "
        "limit is the runner's clearance above: check your runner's sheet.",
        _too_tall,
        ("drawers",),
        quick=False,
    ),
    Check(
        "front_rubs",
        "Front that rubs when it is pulled askew",
        "On wooden runners a drawer that is pulled at one side turns in its guides as far as their "
        "play lets it. Beside an end that stands farther forward than the front, as a flared one "
        "does, the front's edge then scrapes on it. The limit is the gap that there is.",
        _askew,
        ("drawers",),
    ),
)
