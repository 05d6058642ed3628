"""Arrises that are eased on legs, feet, partitions and the edge of a seat board.

Legs are moulded on their four long arrises from below the joint down to the foot, and round their
lower ends; partitions on both front arrises between top and bottom; a seat board on the upper arris
of its front, and of its ends if asked.  A run that is too short for its size is left sharp.
"""

from __future__ import annotations

from collections.abc import Callable

from geometry.bench.base_numbers import base_numbers
from geometry.bench.bridled_legs import has_bridled_legs
from geometry.bench.case import has_case
from geometry.bench.constraint import Constraint, rule
from geometry.bench.four_leg_numbers import four_legs, stand, taper_stations
from geometry.bench.four_legs import has_four_legs
from geometry.bench.leg_arrises import end_mouldings, long_mouldings
from geometry.bench.member import Member
from geometry.bench.seat_board import has_seat_board
from geometry.cuts.edge_moulding import FORMS, EdgeMoulding, along_arris
from geometry.cuts.removal import HalfSpace
from geometry.cuts.saw import SawCut
from geometry.design.parameter import Parameter, choice, length
from geometry.design.part import Part
from geometry.design.spec import BenchSpec
from geometry.primitives.frame import Vec3

SHARP = "sharp"
FRONT, ROUND = "front", "front and ends"
_SHARE = 3.0  # a moulding takes at most one part in so many; common practice, no source
_LAP = 1e-5  # mm: two cuts run into one another by no more, so that no skin stays between

_FACE_SIDE: Vec3 = (0.0, 0.0, -1.0)
_REVERSE: Vec3 = (0.0, 0.0, 1.0)
_FAR_EDGE: Vec3 = (0.0, 1.0, 0.0)


def _formed(name: str) -> Callable[[BenchSpec], bool]:
    return lambda spec: spec.word(name) != SHARP


def _form(name: str, title: str, description: str) -> Parameter:
    return choice(name, title, "Edges", SHARP, (SHARP, *FORMS), description)


def _size(name: str, title: str, default: float, most: float, description: str) -> Parameter:
    return length(
        name,
        title,
        "Edges",
        default,
        0.5,
        most,
        description,
        step=0.5,
        applies=_formed(name.removesuffix("_size")),
    )


def _run(name: str, title: str, default: float, description: str, of: str) -> Parameter:
    return length(name, title, "Edges", default, 0, 400, description, applies=_formed(of))


# Partitions

PARTITION_PARAMETERS: tuple[Parameter, ...] = (
    _form("partition_edge", "Partition fronts", "The two front arrises of every partition."),
    _size("partition_edge_size", "Partition front size", 2.0, 15, "On both faces of the arris."),
    _run(
        "partition_edge_stop",
        "Partition front stopped",
        0,
        "From top and bottom to where it begins; 0 runs through.",
        "partition_edge",
    ),
)

PARTITION_CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "partition_edge_within",
        "partition_edge partition_edge_size partition_thickness",
        lambda s: s.number("partition_thickness") / _SHARE - s.number("partition_edge_size"),
        "the edges would take more than two thirds of the partition's thickness",
    ),
)


def _has_partition_edges(spec: BenchSpec) -> bool:
    return has_case(spec) and _formed("partition_edge")(spec)


def _partition_cuts(spec: BenchSpec, part: Part) -> tuple[EdgeMoulding, ...]:
    if part.kind != "partition":
        return ()
    blank = part.shape.blank
    size, stop = spec.number("partition_edge_size"), spec.number("partition_edge_stop")
    low = spec.number("housing_depth") + stop
    high = blank.length - low
    if high - low < 4.0 * size:
        return ()
    planes = (
        HalfSpace((low - _LAP, 0.0, 0.0), (-1.0, 0.0, 0.0)),
        HalfSpace((high + _LAP, 0.0, 0.0), (1.0, 0.0, 0.0)),
    )
    return tuple(
        along_arris(
            spec.word("partition_edge"),
            size,
            ((low, blank.width, z), (high, blank.width, z)),
            (face, _FAR_EDGE),
            stopped=(stop > 0.0, stop > 0.0),
            planes=() if stop > 0.0 else planes,
        )
        for z, face in ((0.0, _FACE_SIDE), (blank.thickness, _REVERSE))
    )


# Legs

LEG_PARAMETERS: tuple[Parameter, ...] = (
    _form("leg_edge", "Leg arrises", "The four long arrises of every leg, below its joint."),
    _size("leg_edge_size", "Leg arris size", 3.0, 30, "On both faces of the arris."),
    _run(
        "leg_edge_down",
        "Leg arris begins",
        12,
        "Down from where the taper begins; there it is stopped, at the foot it runs out.",
        "leg_edge",
    ),
    _form("foot_edge", "Leg ends", "Round the lower end of every leg, against splitting."),
    _size("foot_edge_size", "Leg end size", 2.0, 20, "On the end and up the sides."),
)


def _has_legs(spec: BenchSpec) -> bool:
    return has_bridled_legs(spec) or has_four_legs(spec)


def _leg_cuts(spec: BenchSpec, part: Part) -> tuple[EdgeMoulding, ...]:
    if part.kind != "leg":
        return ()
    found: list[EdgeMoulding] = []
    if _formed("leg_edge")(spec):
        start = _taper_begins(spec, part) + spec.number("leg_edge_down")
        size = spec.number("leg_edge_size")
        found += long_mouldings(part, spec.word("leg_edge"), size, start)
    if _formed("foot_edge")(spec):
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


def _legs_narrowest(spec: BenchSpec) -> float:
    if has_four_legs(spec):
        return min(spec.number("leg_foot"), spec.number("leg_size"))
    return min(spec.number("base_thickness"), spec.number("leg_foot_width"))


def _leg_room(name: str) -> Callable[[BenchSpec], float]:
    """How much larger a moulding may be, 1 where there is none."""

    def room(spec: BenchSpec) -> float:
        if not _formed(name)(spec):
            return 1.0
        return _legs_narrowest(spec) / _SHARE - spec.number(f"{name}_size")

    return room


def _leg_rules(reads: str) -> tuple[Constraint, ...]:
    return tuple(
        rule(
            f"{name}_within",
            f"{name} {name}_size {reads}",
            _leg_room(name),
            "the edges would take more than two thirds of the leg where it is narrowest",
        )
        for name in ("leg_edge", "foot_edge")
    )


# Seat board

SEAT_PARAMETERS: tuple[Parameter, ...] = (
    _form("seat_edge", "Seat edge", "The upper arris of the seat's board."),
    _size("seat_edge_size", "Seat edge size", 6.0, 40, "On the upper face and down the edge."),
    choice(
        "seat_edge_where",
        "Seat edge along",
        "Edges",
        FRONT,
        (FRONT, ROUND),
        "The front, or the front and both ends.",
        applies=_formed("seat_edge"),
    ),
    _run(
        "seat_edge_stop",
        "Seat edge stopped",
        0,
        "From the ends of the front to where it begins; 0 runs through.",
        "seat_edge",
    ),
)

SEAT_CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "seat_edge_within",
        "seat_edge seat_edge_size seat_thickness",
        lambda s: s.number("seat_thickness") * 0.75 - s.number("seat_edge_size"),
        "the edge would take more than three quarters of the seat's thickness",
    ),
)


def _has_seat_edge(spec: BenchSpec) -> bool:
    return has_seat_board(spec) and _formed("seat_edge")(spec)


def _seat_cuts(spec: BenchSpec, part: Part) -> tuple[EdgeMoulding, ...]:
    if part.kind != "seat":
        return ()
    form, size, stop = (
        spec.word("seat_edge"),
        spec.number("seat_edge_size"),
        spec.number("seat_edge_stop"),
    )
    long, deep = part.shape.blank.length, part.shape.blank.width
    if spec.word("seat_edge_where") == ROUND:
        stop = 0.0
    if long - 2.0 * stop < 4.0 * size:
        return ()
    ends = ((stop, deep, 0.0), (long - stop, deep, 0.0))
    stops = (stop > 0.0, stop > 0.0)
    found = [along_arris(form, size, ends, (_FACE_SIDE, _FAR_EDGE), stopped=stops)]
    if spec.word("seat_edge_where") == ROUND:
        found += [
            along_arris(form, size, ((x, 0.0, 0.0), (x, deep, 0.0)), (_FACE_SIDE, (way, 0.0, 0.0)))
            for x, way in ((0.0, -1.0), (long, 1.0))
        ]
    return tuple(found)


def _snug(**values: float) -> Callable[[BenchSpec], tuple[dict[str, float], ...]]:
    return lambda _spec: (dict(values),)


PARTITION_CHOICE = Member("partition fronts", PARTITION_PARAMETERS, present=has_case)

PARTITION_MEMBER = Member(
    "partition edges",
    (),
    PARTITION_CONSTRAINTS,
    cuts=_partition_cuts,
    present=_has_partition_edges,
    snug=_snug(partition_edge_size=2.0),
)

LEG_CHOICE = Member("leg arrises", LEG_PARAMETERS, cuts=_leg_cuts, present=_has_legs)

BRIDLED_LEG_MEMBER = Member(
    "bridled leg arrises",
    (),
    _leg_rules("base_thickness leg_foot_width"),
    present=lambda spec: has_bridled_legs(spec) and _moulded_legs(spec),
    snug=_snug(leg_edge_size=3.0, foot_edge_size=3.0),
)

FOUR_LEG_MEMBER = Member(
    "four leg arrises",
    (),
    _leg_rules("leg_foot leg_size"),
    present=lambda spec: has_four_legs(spec) and _moulded_legs(spec),
    snug=_snug(leg_edge_size=3.0, foot_edge_size=3.0),
)

SEAT_CHOICE = Member("seat edge", SEAT_PARAMETERS, present=has_seat_board)

SEAT_MEMBER = Member(
    "seat edges",
    (),
    SEAT_CONSTRAINTS,
    cuts=_seat_cuts,
    present=_has_seat_edge,
    snug=_snug(seat_edge_size=6.0),
)


def _moulded_legs(spec: BenchSpec) -> bool:
    return _formed("leg_edge")(spec) or _formed("foot_edge")(spec)


MEMBERS = (
    PARTITION_CHOICE,
    PARTITION_MEMBER,
    LEG_CHOICE,
    BRIDLED_LEG_MEMBER,
    FOUR_LEG_MEMBER,
    SEAT_CHOICE,
    SEAT_MEMBER,
)
