"""Checks of moulded arrises: what they bare, and where they find no room."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from geometry.bench.arris_rows import SHARP, formed
from geometry.bench.bench import Bench
from geometry.bench.case_numbers import case_numbers
from geometry.bench.partitions import PARTITION_LIPPING
from geometry.bench.rail_runs import LEAST_STOP
from geometry.checks.check import Check
from geometry.checks.where import middle_of
from geometry.cuts.edge_moulding import EdgeMoulding
from geometry.design.finding import Finding, Level, Mend
from shared.units import length_mark


def _bared(bench: Bench) -> Iterator[Finding]:
    c = case_numbers(bench.spec)
    size = bench.spec.number("partition_edge_size")
    fronts = [part for part in bench.parts if part.kind in ("partition", PARTITION_LIPPING)]
    moulded = [part for part in fronts if _mouldings(part.shape.cuts)]
    through = bench.spec.number("partition_edge_stop") <= 0.0
    if not moulded or not through or size <= c.cover + 1e-9:
        return
    first = moulded[0]
    yield Finding(
        check="edge_bares_housing",
        level=Level.THINK_AGAIN,
        message=(
            f"The partitions' front arrises lose {length_mark(size)}, but their housings stop only "
            f"{length_mark(c.cover)} behind the fronts: the ends of the housings would show."
        ),
        parts=tuple(part.name for part in moulded),
        place=first.frame.to_bench((0.0, first.shape.blank.width, 0.0)),
        amount=size,
        limit=c.cover,
        mend=Mend(f"Stop the housings {length_mark(size)} behind.", (("housing_cover", size),)),
    )


def _mouldings(cuts: tuple[object, ...]) -> int:
    return sum(isinstance(cut, EdgeMoulding) for cut in cuts)


def _left_sharp(bench: Bench) -> Iterator[Finding]:
    """Legs on which the run of their long arrises is too short."""
    spec = bench.spec
    if spec.word("leg_edge") == SHARP:
        return
    around_the_end = 0 if spec.word("foot_edge") == SHARP else 4
    size = spec.number("leg_edge_size")
    lacking = [
        part
        for part in bench.parts
        if part.kind == "leg" and _mouldings(part.shape.cuts) < 4 + around_the_end
    ]
    if not lacking:
        return
    down = spec.number("leg_edge_down")
    yield Finding(
        check="leg_left_sharp",
        level=Level.THINK_AGAIN,
        message=(
            f"From {length_mark(down)} below the joint down to the foot there is no room for "
            f"an edge of {length_mark(size)}: arrises of {len(lacking)} legs stay sharp."
        ),
        parts=tuple(part.name for part in lacking),
        place=middle_of(lacking[0]),
        amount=down,
        limit=0.0,
        mend=Mend("Begin right below the joint.", (("leg_edge_down", 0.0),)) if down else None,
    )


@dataclass(frozen=True, slots=True)
class _Eased:
    """Pieces that an edge of this ``name`` runs along, and the least that it stops before its ends
    for the mend to try."""

    name: str
    kinds: tuple[str, ...]
    words: str
    least: float = LEAST_STOP


_STOPPED = (
    _Eased("rail_edge", ("stretcher", "rail", "apron"), "rails"),
    _Eased("rest_edge", ("rest rail", "slat"), "rails and slats of the rest"),
    _Eased("plinth_edge", ("plinth",), "plinth's boards", 0.0),
    _Eased("box_edge", ("box front", "box end"), "box's walls"),
)


def _too_short(bench: Bench) -> Iterator[Finding]:
    """Pieces on which no stretch of their arrises is long enough."""
    for eased in _STOPPED:
        if not formed(eased.name)(bench.spec):
            continue
        size, stop = (bench.spec.number(f"{eased.name}_{what}") for what in ("size", "stop"))
        lacking = [
            part
            for part in bench.parts
            if part.kind in eased.kinds and not _mouldings(part.shape.cuts)
        ]
        if not lacking:
            continue
        yield Finding(
            check="arris_left_sharp",
            level=Level.THINK_AGAIN,
            message=(
                f"Stopped {length_mark(stop)} before both ends, an edge of {length_mark(size)} has "
                f"no room on {len(lacking)} of the {eased.words}: they stay sharp."
            ),
            parts=tuple(part.name for part in lacking),
            place=middle_of(lacking[0]),
            amount=stop,
            limit=eased.least,
            mend=Mend("Let it run farther.", ((f"{eased.name}_stop", eased.least),))
            if stop > eased.least
            else None,
        )


CHECKS: tuple[Check, ...] = (
    Check(
        "edge_bares_housing",
        "Edge that bares a housing",
        "Compares what a partition's front arrises lose with how far its housings stop behind the "
        "front. A larger edge shows the end of the housing. The limit is the cover itself.",
        _bared,
        ("partition edges", "partitions"),
    ),
    Check(
        "leg_left_sharp",
        "Leg arris left sharp",
        "Looks for legs whose moulded arrises have no room. An arris is moulded only where at "
        "least four times its size is left between where it begins and the foot: common practice, "
        "no source. Elsewhere it stays sharp, and is felt.",
        _left_sharp,
        ("leg arrises",),
    ),
    Check(
        "arris_left_sharp",
        "Stopped arris left sharp",
        "Looks for rails, slats, boards of a plinth and walls of a box that are to be eased but "
        "have no room for it between the stops. An arris is moulded only where at least four times "
        "its size is left: common practice, no source. Elsewhere it stays sharp, beside eased "
        "ones of the same row.",
        _too_short,
    ),
)
