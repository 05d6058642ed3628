"""A check of mitres as they are sawn: whether they close, and where they gape."""

from __future__ import annotations

from collections.abc import Iterator
from typing import cast

from geometry.bench.as_cut import (
    BACK_EDGE,
    BOARD,
    END,
    FRONT_EDGE,
    MITRES,
    SQUARE,
    as_drawn,
    fence_name,
    has_record,
    tilt_name,
)
from geometry.bench.bench import Bench
from geometry.bench.case_numbers import case_numbers
from geometry.checks.check import Check
from geometry.checks.limits_of_marking import WIDEST_MITRE
from geometry.cuts.saw import SawCut
from geometry.design.finding import Finding, Level, Mend
from geometry.design.joint import Joint
from geometry.design.part import Part
from geometry.joints.mitre_gap import gaps, sawn_outward
from geometry.primitives.frame import Vec3
from shared.units import angle_mark, length_mark

_SMALL = 0.005  # mm that are written as nothing


def _mitres(bench: Bench) -> Iterator[Finding]:
    most = WIDEST_MITRE.of(bench)
    names = {place.joint for place in MITRES if place.there(bench.spec)}
    for joint in bench.joints:
        if joint.name not in names:
            continue
        corners = joint.contacts[0].corners
        apart = _apart(bench, joint)
        widest = max(apart)
        if widest <= most:
            continue
        board, end = (bench.part(name) for name in joint.parts)
        named = dict(zip(_called(bench, corners), apart, strict=True))
        yield Finding(
            check="mitre_gapes",
            level=Level.DO_NOT_CUT,
            message=(
                f"{board.title} and {end.title.lower()}: {_cause(bench, joint)}, their mitre gapes "
                f"{_mm(widest)} at the {_where(named)}: {_all(named)}."
            ),
            parts=joint.parts,
            place=corners[apart.index(widest)],
            amount=widest,
            limit=most,
            mend=_mend(bench, joint),
        )


def _apart(bench: Bench, joint: Joint) -> tuple[float, ...]:
    """The gap at each corner of the joint, mm."""
    contact = joint.contacts[0]
    outward: list[Vec3] = []
    for name, cuts, piece in zip(
        joint.parts, (joint.cuts_first, joint.cuts_second), (BOARD, END), strict=True
    ):
        part, cut = bench.part(name), cast(SawCut, cuts[0])
        tilt, off = _set(bench, joint, part, cut, piece)
        outward.append(part.frame.turn_to_bench(sawn_outward(cut, tilt, off)))
    return gaps(contact.corners, contact.normal, outward[0], outward[1])


def _set(bench: Bench, joint: Joint, part: Part, cut: SawCut, piece: str) -> tuple[float, float]:
    """The tilt that a piece is sawn at, and how far off square to its back edge, in degrees."""
    spec = bench.spec
    tilt, off = cut.tilt_deg, 0.0
    if spec.word("mitre_fence") == FRONT_EDGE:
        off = _front_off_square(bench, part, cut)
    if has_record(spec):
        tilt = spec.number(tilt_name(joint.name, piece)) or tilt
        fence = spec.number(fence_name(joint.name, piece))
        off = fence - SQUARE if fence else off
    return tilt, off


def _front_off_square(bench: Bench, part: Part, cut: SawCut) -> float:
    """How far a cut square to the front edge is off square to the back edge.

    Only an end panel tapers: the front edges of top and bottom run along their backs at the ends.
    """
    if not part.name.startswith("end_panel_"):
        return 0.0
    c = case_numbers(bench.spec)
    lean = c.lean_deg(part.name.removeprefix("end_panel_"))
    up = part.frame.turn_to_bench((cut.outward[0], 0.0, 0.0))[2] > 0.0
    # The front goes forward as it goes up, so a line square to it goes down as it goes forward.
    return -lean if up else lean


def _called(bench: Bench, corners: tuple[Vec3, ...]) -> list[tuple[str, str]]:
    """The corners of a mitre in words: outside or inside, back or front."""
    middle = bench.spec.number("length") / 2.0
    away = [abs(corner[0] - middle) for corner in corners]
    return [
        (
            "outside" if far > max(away) - _SMALL else "inside",
            "back" if abs(corner[1]) < _SMALL else "front",
        )
        for corner, far in zip(corners, away, strict=True)
    ]


def _where(named: dict[tuple[str, str], float]) -> str:
    """Where it gapes the most: at one corner, or all along a side or an end."""
    widest = max(named.values())
    there = [name for name, gap in named.items() if gap > widest - _SMALL]
    words = [{name[k] for name in there} for k in (0, 1)]
    told = [next(iter(some)) for some in words if len(some) == 1]
    return ", ".join(told) or "joint"


def _cause(bench: Bench, joint: Joint) -> str:
    """How the two are sawn, the board's numbers before the end's."""
    spec = bench.spec
    tilts, fences = (
        [spec.number(name(joint.name, piece)) for piece in (BOARD, END)]
        for name in (tilt_name, fence_name)
    )
    told = []
    if has_record(spec) and all(tilts):
        told.append(f"tilts of {_both(tilts)}")
    if has_record(spec) and all(fences) and fences != [SQUARE, SQUARE]:
        told.append(f"fences at {_both(fences)}")
    return f"sawn with {' and '.join(told) or 'the front edges on the fence'}"


def _both(degrees: list[float]) -> str:
    return " and ".join(angle_mark(one) for one in degrees)


def _all(named: dict[tuple[str, str], float]) -> str:
    return "; ".join(
        f"{', '.join(name)} {_mm(gap) if gap > _SMALL else 'closed'}" for name, gap in named.items()
    )


def _mm(value: float) -> str:
    return length_mark(round(value, 2))


def _mend(bench: Bench, joint: Joint) -> Mend | None:
    if not has_record(bench.spec):
        return Mend("Lay the back edges on the fence.", (("mitre_fence", BACK_EDGE),))
    names = {name(joint.name, piece) for name in (tilt_name, fence_name) for piece in (BOARD, END)}
    asked = {name: value for name, value in as_drawn(bench.spec).items() if name in names}
    changes = [(name, v) for name, v in asked.items() if v != bench.spec.value(name)]
    return Mend("Saw both again as drawn, and record that.", tuple(changes)) if changes else None


CHECKS: tuple[Check, ...] = (
    Check(
        "mitres_close",
        "Mitres that do not close",
        "Takes the two faces of a mitre as the saw is set for them, or was: the tilt, and a third "
        "angle where the edge on the fence is not the one that the cut is square to, such as the "
        "leaning front of an end panel. Moved together until they touch, they gape by what is left "
        "between them, told at the four corners of the joint. The limit of {0.2 mm} is a thick "
        "shaving: common practice, no source.",
        _mitres,
        limits=(WIDEST_MITRE,),
    ),
)
