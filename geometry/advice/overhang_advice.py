"""Advice on how far the seat may stand out over its feet, at the ends, in front and at the back.

mm.  The load near the edge is that of ISO 7174-1, or the heaviest sitter or the given load where
that is more; how far out it may act follows from the bench's own weight (see ``standing``).
"""

from __future__ import annotations

from geometry.advice.advised import CLOSE, Advice
from geometry.advice.sitters import sitters
from geometry.advice.standing import (
    BACK,
    FRONT,
    LEFT,
    RIGHT,
    Tipping,
    footing_of,
    seat_corners,
    tippings,
)
from geometry.advice.taking import Changes, for_insets
from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.limits import set_values
from geometry.bench.overall import PLINTH, base_is
from geometry.design.brief import Brief
from shared.seating import (
    GRAVITY,
    HEEL_ROOM,
    PRACTICE,
    TIPPING_IN,
    TIPPING_LOAD,
    TIPPING_SOURCE,
)
from shared.units import length_mark, quantity_mark

_TITLES = {
    LEFT: "Overhang, left end",
    RIGHT: "Overhang, right end",
    FRONT: "Overhang in front",
    BACK: "Overhang at the back",
}
_INSETS = {
    LEFT: ("inset_left",),
    RIGHT: ("inset_right",),
    FRONT: ("inset_front", "inset_front_left", "inset_front_right"),
    BACK: ("inset_back", "inset_back_left", "inset_back_right"),
}
_TRIES = 3
_SPARE = 1.0  # mm: insets are taken back a little farther than they must


def edge_load(brief: Brief) -> tuple[float, str]:
    """The load near an edge in N, and what it is."""
    found = [(TIPPING_LOAD, f"the {quantity_mark(TIPPING_LOAD, 'N')} of {TIPPING_SOURCE}")]
    people = sitters(brief)
    if people is not None and people.weight.large:
        kg = people.weight.large
        found.append((kg * GRAVITY, f"a sitter of {quantity_mark(kg, 'kg')}"))
    if brief.load:
        found.append((brief.load * GRAVITY, f"the given load of {quantity_mark(brief.load, 'kg')}"))
    return max(found)


def overhang_advice(bench: Bench, brief: Brief) -> tuple[Advice, ...]:
    """One for each side over which the bench could tip; none for a bench without a footing."""
    found = []
    for side, worst in _worst(bench, brief).items():
        _, what = edge_load(brief)
        now, high = round(TIPPING_IN - worst.load_in, 3), TIPPING_IN + worst.reach
        low = _least(bench, side, worst)
        why = (
            f"{what[0].upper()}{what[1:]} at {length_mark(TIPPING_IN)} from the edge tips this "
            f"bench where its edge stands out more than {length_mark(round(high, 1))} beyond its "
            "feet"
        )
        source = f"{TIPPING_SOURCE}; moments of the bench's own weight"
        if low is not None:
            room = length_mark(HEEL_ROOM)
            why += f", and heels need {room} of room in front of a plinth to stand up"
            source += f"; {PRACTICE}"
        wanted = min(now, high - _SPARE)
        if low is not None:
            wanted = max(wanted, low)
        changes: Changes = ()
        hindrance = ""
        if abs(wanted - now) > 1e-9:
            changes, hindrance = _moved(bench, brief, side, now - wanted)
        found.append(
            Advice(
                f"overhang_{side}",
                _TITLES[side],
                "mm",
                f"{why}.",
                source,
                now,
                low,
                high,
                wanted,
                changes,
                hindrance,
            )
        )
    return tuple(found)


def _moved(bench: Bench, brief: Brief, side: str, less: float) -> tuple[Changes, str]:
    """Insets less by so much, and by what still lacks, as feet need not follow them one to one."""
    for _ in range(_TRIES):
        changes, hindrance = for_insets(bench.spec, _INSETS[side], less)
        if not changes:
            return (), hindrance
        worst = _worst(build(set_values(bench.spec, dict(changes))), brief).get(side)
        if worst is None:
            return changes, ""
        low, now = _least(bench, side, worst), TIPPING_IN - worst.load_in
        if worst.short > 0.0:
            less += worst.short + _SPARE
        elif low is not None and low - now > CLOSE:
            # As the feet went back, there came to be room for heels.
            less -= low - now
        else:
            return changes, ""
    return (), "its feet do not come out far enough, however its base is moved"


def _least(bench: Bench, side: str, worst: Tipping) -> float | None:
    """What heels need in front of a plinth, as far as the bench then stands; None elsewhere."""
    if side != FRONT or not base_is(PLINTH, bench.spec):
        return None
    return min(HEEL_ROOM, TIPPING_IN + worst.reach - _SPARE)


def _worst(bench: Bench, brief: Brief) -> dict[str, Tipping]:
    """By side, what comes nearest to tipping over it."""
    footing = footing_of(bench)
    if footing is None:
        return {}
    load, _ = edge_load(brief)
    found: dict[str, Tipping] = {}
    for corner in seat_corners(bench, TIPPING_IN):
        for one in tippings(footing, load, corner):
            known = found.get(one.side)
            if known is None or one.short > known.short:
                found[one.side] = one
    return {side: found[side] for side in (LEFT, RIGHT, FRONT, BACK) if side in found}
