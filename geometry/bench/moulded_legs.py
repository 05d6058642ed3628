"""The four long arrises of legs, eased from below the joint down to the foot, and their ends.

A run that is too short for its size is left sharp.
"""

from __future__ import annotations

from collections.abc import Callable

from geometry.bench.arris_rows import SHARE, form_row, formed, run_row, size_row, snug_at
from geometry.bench.base_numbers import base_numbers
from geometry.bench.bridled_legs import has_bridled_legs
from geometry.bench.constraint import Constraint, rule
from geometry.bench.four_leg_numbers import four_legs, stand, taper_stations
from geometry.bench.four_legs import has_four_legs
from geometry.bench.leg_arrises import end_mouldings, long_mouldings
from geometry.bench.member import Member
from geometry.cuts.edge_moulding import EdgeMoulding
from geometry.cuts.saw import SawCut
from geometry.design.parameter import Parameter
from geometry.design.part import Part
from geometry.design.spec import BenchSpec

PARAMETERS: tuple[Parameter, ...] = (
    form_row("leg_edge", "Leg arrises", "The four long arrises of every leg, below its joint."),
    size_row("leg_edge_size", "Leg arris size", 3.0, 30, "On both faces of the arris."),
    run_row(
        "leg_edge_down",
        "Leg arris begins",
        12,
        "Down from where the taper begins; there it is stopped, at the foot it runs out.",
        "leg_edge",
    ),
    form_row("foot_edge", "Leg ends", "Round the lower end of every leg, against splitting."),
    size_row("foot_edge_size", "Leg end size", 2.0, 20, "On the end and up the sides."),
)


def _has_legs(spec: BenchSpec) -> bool:
    return has_bridled_legs(spec) or has_four_legs(spec)


def _cuts(spec: BenchSpec, part: Part) -> tuple[EdgeMoulding, ...]:
    if part.kind != "leg":
        return ()
    found: list[EdgeMoulding] = []
    if formed("leg_edge")(spec):
        start = _taper_begins(spec, part) + spec.number("leg_edge_down")
        size = spec.number("leg_edge_size")
        found += long_mouldings(part, spec.word("leg_edge"), size, start)
    if formed("foot_edge")(spec):
        found += end_mouldings(part, spec.word("foot_edge"), spec.number("foot_edge_size"))
    return tuple(found)


def _taper_begins(spec: BenchSpec, part: Part) -> float:
    """x on a leg below which nothing is jointed."""
    if has_four_legs(spec):
        n = four_legs(spec)
        at = stand(n, part.name.removeprefix("leg_"))
        begins = at.frame(taper_stations(n, at)[0]).to_bench((0.0, 0.0, 0.0))
        return part.frame.to_local(begins)[0]
    b = base_numbers(spec)
    top = next(
        cut for cut in part.shape.cuts if isinstance(cut, SawCut) and cut.title == "level top"
    )
    return top.point[0] + max(b.drop, b.stretcher_height / b.cosine)


def _narrowest(spec: BenchSpec) -> float:
    if has_four_legs(spec):
        return min(spec.number("leg_foot"), spec.number("leg_size"))
    return min(spec.number("base_thickness"), spec.number("leg_foot_width"))


def _room(name: str) -> Callable[[BenchSpec], float]:
    """How much larger a moulding may be, 1 where there is none."""

    def room(spec: BenchSpec) -> float:
        if not formed(name)(spec):
            return 1.0
        return _narrowest(spec) / SHARE - spec.number(f"{name}_size")

    return room


def _rules(reads: str) -> tuple[Constraint, ...]:
    return tuple(
        rule(
            f"{name}_within",
            f"{name} {name}_size {reads}",
            _room(name),
            "the edges would take more than two thirds of the leg where it is narrowest",
        )
        for name in ("leg_edge", "foot_edge")
    )


def _moulded(spec: BenchSpec) -> bool:
    return formed("leg_edge")(spec) or formed("foot_edge")(spec)


CHOICE_MEMBER = Member("leg arrises", PARAMETERS, cuts=_cuts, present=_has_legs)

BRIDLED_MEMBER = Member(
    "bridled leg arrises",
    (),
    _rules("base_thickness leg_foot_width"),
    present=lambda spec: has_bridled_legs(spec) and _moulded(spec),
    snug=snug_at(leg_edge_size=3.0, foot_edge_size=3.0),
)

FOUR_MEMBER = Member(
    "four leg arrises",
    (),
    _rules("leg_foot leg_size"),
    present=lambda spec: has_four_legs(spec) and _moulded(spec),
    snug=snug_at(leg_edge_size=3.0, foot_edge_size=3.0),
)
