"""Which screw a face takes, and where along it screws stand.  Millimetres.

All numbers are common practice, no source.
"""

from __future__ import annotations

from shared.fixings import WOOD_SCREWS, WoodScrew

USUAL = WOOD_SCREWS["no. 8"]  # that is taken where there is room
LEAST_BITE = 4.0  # of thread; less holds nothing
LEAST_OVER = 3.0  # of wood over a screw's point
LONGEST_LAND = 30.0  # of wood under a head; beyond it the head goes in
USUAL_BITE = 12.0  # into a board's face
EDGE_BITE = 20.0  # into an edge
_BESIDE_HEAD = 2.0  # of wood beside a head
_IN = 40.0  # from an end to the screw nearest to it
APART = 250.0  # between two screws, at most
_SHORT = 60.0  # a row of less has one screw, in its middle


def screw_for(room: float, wanted: WoodScrew = USUAL) -> WoodScrew:
    """The screw that is wanted, or a thinner one whose head has wood beside it in a strip so wide;
    the wanted one too where none has, for ``has_room`` to refuse."""
    fitting = [one for one in WOOD_SCREWS.values() if one.gauge <= wanted.gauge]
    fitting = [one for one in fitting if has_room(one, room)]
    return max(fitting, key=lambda one: one.gauge, default=wanted)


def has_room(screw: WoodScrew, room: float) -> bool:
    """Whether its head has wood beside it in a strip so wide."""
    return screw.head + 2.0 * _BESIDE_HEAD <= room


def largest_head(room: float) -> float:
    """No screw taken in a strip so wide has a wider head; steady in ``room``."""
    return min(USUAL.head, max(0.0, room - 2.0 * _BESIDE_HEAD))


def bite_in(depth: float, wanted: float = USUAL_BITE) -> float:
    """How deep a screw goes into so much wood; 0 where that would hold nothing."""
    bite = min(wanted, depth - LEAST_OVER)
    return bite if bite >= LEAST_BITE else 0.0


def stations(length: float, apart: float = APART, inward: float = _IN) -> tuple[float, ...]:
    """How far along a face its screws stand: so far in from its ends, no farther ``apart``."""
    if length < _SHORT:
        return (length / 2.0,)
    near = min(inward, length / 3.0)
    run = length - 2.0 * near
    gaps = max(1, -int(-run // apart))
    return tuple(near + run * k / gaps for k in range(gaps + 1))
