"""Checks of moulded arrises: what they bare, and where they find no room."""

from __future__ import annotations

import math
from collections.abc import Container, Iterable, Iterator
from dataclasses import dataclass

from geometry.bench.arris_rows import LEAST_RUN, SHARP, formed
from geometry.bench.bench import Bench
from geometry.bench.carving_numbers import chosen_fronts
from geometry.bench.case import has_case
from geometry.bench.case_numbers import case_numbers
from geometry.bench.drawer_numbers import drawers
from geometry.bench.edges import ON_BOARDS, size_name
from geometry.bench.front_arrises import eased_by
from geometry.bench.lipped import strip_name
from geometry.bench.rail_runs import LEAST_STOP
from geometry.checks.check import Check
from geometry.checks.where import middle_of
from geometry.cuts.edge_moulding import EdgeMoulding
from geometry.design.finding import Finding, Level, Mend
from geometry.design.part import Part
from shared.units import length_mark

_STEP = 0.1  # mm, to which a mend rounds

# Of pieces that are housed, by kind: what they are called, and the name of their edge.
_HOUSED = (("partition", "partitions", "partition_edge"), ("shelf", "shelves", "shelf_edge"))


def _bared(bench: Bench) -> Iterator[Finding]:
    cover = case_numbers(bench.spec).cover
    for kind, words, name in _HOUSED:
        if not formed(name)(bench.spec) or bench.spec.number(f"{name}_stop") > 0.0:
            continue
        size = bench.spec.number(f"{name}_size")
        fronts = _fronts(bench, (kind,))
        moulded = [part for part in fronts if _mouldings(part.shape.cuts)]
        if not moulded or size <= cover + 1e-9:
            continue
        first = moulded[0]
        yield Finding(
            check="edge_bares_housing",
            level=Level.THINK_AGAIN,
            message=(
                f"The {words}' front arrises lose {length_mark(size)}, but their housings stop "
                f"only {length_mark(cover)} behind the fronts: the ends of the housings would show."
            ),
            parts=tuple(part.name for part in moulded),
            place=first.frame.to_bench((0.0, first.shape.blank.width, 0.0)),
            amount=size,
            limit=cover,
            mend=Mend(f"Stop the housings {length_mark(size)} behind.", (("housing_cover", size),)),
        )


def _fronts(bench: Bench, kinds: Container[str]) -> list[Part]:
    """The pieces of these kinds, of those of sheet the lippings on their fronts."""
    return [
        part if part.solid_timber else bench.part(_front_strip(part))
        for part in bench.parts
        if part.kind in kinds
    ]


def _front_strip(board: Part) -> str:
    if board.kind == "shelf":
        return f"lipping_{board.name.removeprefix('shelf_')}"
    return strip_name(board.name)


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
    _Eased("partition_edge", ("partition",), "partitions", 0.0),
    _Eased("shelf_edge", ("shelf",), "shelves", 0.0),
    _Eased("lid_edge", ("lid",), "fronts of lids", 0.0),
    _Eased("seat_edge", ("seat",), "fronts of seats", 0.0),
    _Eased("end_edge", ("end",), "ends", 0.0),
)


def _too_short(bench: Bench) -> Iterator[Finding]:
    """Pieces on which no stretch of their arrises is long enough."""
    spec = bench.spec
    for eased in _STOPPED:
        if formed(eased.name)(spec):
            yield from _sharp(bench, eased, _fronts(bench, eased.kinds))
    if has_case(spec) and spec.number("edge_stop") > 0.0 and spec.number(size_name(spec)) > 0.0:
        boards = _Eased("edge", ON_BOARDS[spec.word("edge_where")], "case's boards", 0.0)
        yield from _sharp(bench, boards, _fronts(bench, boards.kinds))


def _sharp(bench: Bench, eased: _Eased, pieces: Iterable[Part]) -> Iterator[Finding]:
    lacking = [part for part in pieces if not _mouldings(part.shape.cuts)]
    if not lacking:
        return
    spec, name = bench.spec, f"{eased.name}_stop"
    size = spec.number(size_name(spec) if eased.name == "edge" else f"{eased.name}_size")
    stop = spec.number(name)
    an_edge = f"an edge of {length_mark(size)} has no room on {len(lacking)} of the {eased.words}"
    stopped = f"Stopped {length_mark(stop)} before both ends, {an_edge}"
    yield Finding(
        check="arris_left_sharp",
        level=Level.THINK_AGAIN,
        message=f"{stopped if stop > 0.0 else an_edge.capitalize()}: it is left off there.",
        parts=tuple(part.name for part in lacking),
        place=middle_of(lacking[0]),
        amount=stop,
        limit=eased.least,
        mend=Mend("Let it run farther.", ((name, eased.least),)) if stop > eased.least else None,
    )


def _low_fronts(bench: Bench) -> Iterator[Finding]:
    """Drawer fronts that are too low or too narrow for their edges; carved ones have none."""
    spec = bench.spec
    if not formed("drawer_edge")(spec):
        return
    carved = chosen_fronts(spec)
    sharp = [one for one in drawers(spec) if one not in carved and eased_by(spec, one) <= 0.0]
    if not sharp:
        return
    size = spec.number("drawer_edge_size")
    least = min(min(one.front_height, one.front_width) for one in sharp)
    fitting = math.floor(least / LEAST_RUN / _STEP + 1e-9) * _STEP
    yield Finding(
        check="drawer_front_left_sharp",
        level=Level.THINK_AGAIN,
        message=(
            f"An edge of {length_mark(size)} has no room on {len(sharp)} of the drawer fronts, the "
            f"least {length_mark(least)} high or wide: it is left off there."
        ),
        parts=tuple(f"{one.name}_front" for one in sharp),
        place=middle_of(bench.part(f"{sharp[0].name}_front")),
        amount=least,
        limit=LEAST_RUN * size,
        mend=Mend(f"Make the edges {length_mark(fitting)}.", (("drawer_edge_size", fitting),)),
    )


CHECKS: tuple[Check, ...] = (
    Check(
        "edge_bares_housing",
        "Edge that bares a housing",
        "Compares what the front arrises of a partition or a shelf lose with how far its housings "
        "stop behind the front. A larger edge shows the end of the housing. The limit is the cover "
        "itself.",
        _bared,
        ("partitions",),
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
        "Looks for pieces that are to be eased but have no room for it between the stops: rails, "
        "slats, boards of a plinth, walls of a box, and the fronts of partitions, shelves, lids, "
        "seats, ends and a case's boards. An arris is moulded only where at least four times "
        "its size is left: common practice, no source. Elsewhere it stays sharp, beside eased "
        "ones of the same row.",
        _too_short,
    ),
    Check(
        "drawer_front_left_sharp",
        "Drawer front left sharp",
        "Looks for drawer fronts that are to be eased and are too low or too narrow for it. Their "
        "edges are moulded only where that is at least four times as much as is taken off: common "
        "practice, no source. Elsewhere a front stays sharp beside others that are not.",
        _low_fronts,
        ("drawer front edges",),
    ),
)
