"""A check of stopped housings where they stop: whether the wood in front of them is still there."""

from __future__ import annotations

from collections.abc import Iterator

from geometry.bench.bench import Bench
from geometry.checks.check import Check
from geometry.checks.limits_of_joints import LEAST_FRONT
from geometry.design.finding import Finding, Level, Mend
from geometry.design.joint import Joint
from shared.units import length_mark

_NEAR = 1e-6  # mm
_HALF = 0.5  # mm: covers that are offered are whole halves


def _open_front(bench: Bench) -> Iterator[Finding]:
    """One finding for each housed board, at the housing that stops nearest to its front."""
    least = LEAST_FRONT.of(bench)
    worst: dict[str, tuple[float, Joint]] = {}
    for joint in bench.joints:
        if joint.kind == "stopped housing":
            wood = left_in_front(bench, joint)
            board = joint.parts[0]
            if board not in worst or wood < worst[board][0]:
                worst[board] = wood, joint
    for board, (wood, joint) in worst.items():
        if wood >= least - _NEAR:
            continue
        through = wood <= _NEAR
        title = bench.part(board).title
        what = (
            f"{title}: a housing runs out through the front edge, where it shows and holds nothing."
            if through
            else f"{title}: a housing leaves only {length_mark(wood)} between its stop and "
            "the front edge, which breaks out under the router."
        )
        yield Finding(
            check="housing_front",
            level=Level.DO_NOT_CUT if through else Level.THINK_AGAIN,
            message=what,
            parts=(board,),
            place=joint.contacts[0].corners[-1],
            amount=wood,
            limit=least,
            mend=_farther_back(bench, least - wood),
        )


def left_in_front(bench: Bench, joint: Joint) -> float:
    """The least wood between a housing's stop and the front of its board, mm; 0 or less: none.

    The board's front leans in a straight line from its outside arris to that of the housed face,
    so the least is at the housed face or at the floor of the housing, and at one of its sides.
    """
    sizes = {one.name: one.value for one in joint.measures}
    inside, outside = sizes["stop_from_inside_arris"], sizes["stop_from_front"]
    thickness = bench.part(joint.parts[0]).shape.blank.thickness
    at_floor = inside + (outside - inside) * sizes["housing_depth"] / thickness
    sides = [size for name, size in sizes.items() if name.startswith("stop_from_front_")]
    return min(inside, at_floor) + min(0.0, *(side - outside for side in sides))


def _farther_back(bench: Bench, more: float) -> Mend:
    cover = bench.spec.number("housing_cover") + more
    cover = -(-cover // _HALF) * _HALF
    return Mend(f"Stop the housings {length_mark(cover)} behind.", (("housing_cover", cover),))


CHECKS: tuple[Check, ...] = (
    Check(
        "housing_front",
        "Housing that runs out at the front",
        "Looks at the wood that a stopped housing leaves between its stop and the front of its "
        "board, at both of its sides. With none left the housing shows as a notch in the front "
        "edge, and with little the short bit of wood breaks out under the router. The limit of "
        "{3 mm} is common practice, no source; with nothing left it must not be cut at all.",
        _open_front,
        ("case",),
        limits=(LEAST_FRONT,),
    ),
)
