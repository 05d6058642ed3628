"""Sizes on the drawings that make up another one which is written there too.

Millimetres.  Each sum is exact; what a maker adds up is the written sizes, and each of those has
been rounded.  ``as_read`` tells what they come to then.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import partial
from itertools import pairwise

from geometry.bench.bench import Bench
from geometry.bench.case_numbers import CaseNumbers, case_numbers
from geometry.bench.drawer_numbers import drawer_openings, front_heights, fronts_of
from geometry.bench.drawer_parameters import step_name
from geometry.bench.members import has
from geometry.bench.openings import SHELF, Opening, filled_with, openings
from geometry.bench.overall import CASE, LID_BOX, PANEL_BENCH, SLAB
from geometry.design.spec import BenchSpec
from geometry.primitives.frame import Vec3
from shared.units import Shown, printed_error

_RISE = {
    CASE: "case_height",
    SLAB: "seat_thickness",
    PANEL_BENCH: "seat_thickness",
    LID_BOX: "box_height",
}


Numbers = dict[str, float]


@dataclass(frozen=True, slots=True)
class Sum:
    """``terms`` (mm) make up ``total``, which is called ``title`` and written too.

    Of those with one ``name`` a maker is told of one.

    ``whole`` gives, for a step in mm, the numbers nearest to those of now with which all of them
    are whole steps.  ``parts`` are those that it is measured over, ``place`` where it is.
    """

    name: str
    title: str
    terms: tuple[float, ...]
    total: float
    parts: tuple[str, ...]
    place: Vec3
    whole: Callable[[float], Numbers]


def written(mm: float, shown: Shown) -> float:
    """A size as it is written, in mm."""
    return mm + printed_error(mm, shown)


def as_read(one: Sum, shown: Shown) -> tuple[float, float]:
    """What the written terms come to, and the total as it is written, in mm."""
    return sum(written(term, shown) for term in one.terms), written(one.total, shown)


def sums(bench: Bench) -> tuple[Sum, ...]:
    """All that the sheets of a bench allow a maker to add up, each once."""
    found = [*_heights(bench)]
    if has(bench.spec, "case"):
        found += _of_case(bench)
    if has(bench.spec, "plinth"):
        found.append(_plinth(bench))
    if has(bench.spec, "back rest"):
        found.append(_rest(bench))
    return tuple(found)


def _sized(bench: Bench, name: str) -> float:
    return next(size.value for size in bench.derived if size.name == name)


def _whole(spec: BenchSpec, *names: str) -> Callable[[float], Numbers]:
    return partial(_rounded, spec, names)


def _rounded(spec: BenchSpec, names: tuple[str, ...], step: float) -> Numbers:
    return {name: _nearest(spec.number(name), step) for name in names}


def _nearest(mm: float, step: float) -> float:
    return round(mm / step) * step


def _ends_of(bench: Bench) -> tuple[str, ...]:
    """What stands under the seat at its ends, or the first piece there is."""
    kinds = ("top", "seat", "lid", "box front")
    found = tuple(part.name for part in bench.parts if part.kind in kinds)
    return found or (bench.parts[0].name,)


def _heights(bench: Bench) -> Iterator[Sum]:
    spec = bench.spec
    rise = _RISE[spec.word("seat")]
    low, up = spec.number("base_height"), spec.number(rise)
    yield Sum(
        "seat_height",
        "the seat height",
        (low, up),
        low + up,
        _ends_of(bench),
        (spec.number("length"), -spec.number("depth"), low),
        _whole(spec, "base_height", rise),
    )


def _of_case(bench: Bench) -> Iterator[Sum]:
    c = case_numbers(bench.spec)
    yield _along(bench, c)
    yield from _from_one_end(bench, c)
    yield Sum(
        "case_height",
        "the case height",
        (c.thickness, c.inside_height, c.thickness),
        c.height,
        ("top", "bottom"),
        (0.0, -c.depth, c.floor),
        _whole(bench.spec, "case_height", "board_thickness"),
    )
    yield from _depths(bench.spec, c)
    yield from _upright_heights(bench, c)
    yield from _shelves(bench)
    yield from _drawers(bench, c)


def _along(bench: Bench, c: CaseNumbers) -> Sum:
    """End to end: what closes the ends, the openings, and what stands between them."""
    spec, t = bench.spec, c.partition_thickness
    left = (c.thickness,) if c.left.mitred else (c.left.inset, t)
    right = (c.thickness,) if c.right.mitred else (t, c.right.inset)
    between: list[float] = []
    for at in openings(spec):
        between += [*((t,) if between else ()), at.width]
    standing = tuple(p.name for p in bench.parts if p.kind in ("partition", "end panel"))
    return Sum(
        "length",
        "the length",
        (*left, *between, *right),
        c.length,
        ("top", "bottom", *standing),
        (0.0, -c.depth, c.floor),
        partial(_lengths, spec, ()),
    )


def _from_one_end(bench: Bench, c: CaseNumbers) -> Iterator[Sum]:
    """The places of two partitions, both from the left end, against what lies between them."""
    t, inner = c.partition_thickness, openings(bench.spec)[1:-1]
    for at, (here, there) in zip(inner, pairwise(c.partitions), strict=True):
        yield Sum(
            "partition_places",
            f"the place of partition {at.index}",
            (here, t, at.width),
            there,
            (at.left, at.right),
            (there, -c.upright_front, c.inside_low),
            partial(_lengths, bench.spec, ()),
        )


def _lengths(spec: BenchSpec, more: tuple[str, ...], step: float) -> Numbers:
    """All that lies along the length; partitions stand at their middles, and their faces count."""
    c = case_numbers(spec)
    names = ["length", "partition_thickness", *more]
    names += ["board_thickness"] if c.left.mitred or c.right.mitred else []
    names += [f"{end.side}_inset" for end in (c.left, c.right) if not end.mitred]
    found = _rounded(spec, tuple(names), step)
    half = found["partition_thickness"] / 2.0
    for k, x in enumerate(c.partitions, 1):
        found[f"partition_{k}"] = _nearest(x - half, step) + half
    return found


def _depths(spec: BenchSpec, c: CaseNumbers) -> Iterator[Sum]:
    for side in ("left", "right"):
        flare = c.flare_of(side).amount
        if flare <= 0.0:
            continue
        suffix = "_right" if c.both_flare and side == "right" else ""
        yield Sum(
            f"greatest_depth{suffix}",
            f"the greatest depth at the {side}" if c.both_flare else "the greatest depth",
            (c.depth, flare),
            c.depth + flare,
            ("top",),
            (c.x_at(side, 0.0), -c.depth - flare, c.top),
            _whole(spec, "depth", f"flare{suffix}"),
        )


def _upright_heights(bench: Bench, c: CaseNumbers) -> Iterator[Sum]:
    standing = tuple(part.name for part in bench.parts if part.kind == "partition")
    if standing:
        yield Sum(
            "partition_height",
            "the partitions' height",
            (c.housing_depth, c.inside_height, c.housing_depth),
            c.partition_height,
            standing,
            (c.inside_left, -c.upright_front, c.inside_low),
            _whole(bench.spec, "case_height", "board_thickness", "housing_depth"),
        )


def _shelves(bench: Bench) -> Iterator[Sum]:
    spec = bench.spec
    deep = spec.number("shelf_housing_depth")
    for at in _unlike(filled_with(spec, SHELF)):
        yield Sum(
            f"shelf_length_{at.index}",
            f"the length of the shelf in {at.title}",
            (deep, at.width, deep),
            _sized(bench, f"shelf_{at.index}_length"),
            (f"shelf_{at.index}",),
            (at.x_left, -at.front, at.z_low),
            partial(_lengths, spec, ("shelf_housing_depth",)),
        )


def _unlike(found: tuple[Opening, ...]) -> tuple[Opening, ...]:
    """One opening of each width."""
    return tuple({at.width: at for at in reversed(found)}.values())[::-1]


def _drawers(bench: Bench, c: CaseNumbers) -> Iterator[Sum]:
    """Inset fronts with the gaps round them, in their opening's height; equal stacks once."""
    spec, fronts = bench.spec, fronts_of(bench.spec)
    seen: set[tuple[float, ...]] = set()
    for at in drawer_openings(spec):
        heights = front_heights(spec, at)
        if heights in seen:
            continue
        seen.add(heights)
        gaps = len(heights) + 1
        yield Sum(
            f"front_heights_{at.index}",
            f"the inside height of {at.title}",
            (*(fronts.gap,) * gaps, *heights),
            c.inside_height,
            tuple(f"drawer_{at.index}_{k}_front" for k in range(1, gaps)),
            (at.x_left, -at.front, at.z_low),
            partial(_stack, spec, at),
        )


def _stack(spec: BenchSpec, at: Opening, step: float) -> Numbers:
    """The case as high as whole fronts and whole gaps make it."""
    heights = front_heights(spec, at)
    count = len(heights)
    found = _rounded(spec, ("board_thickness", "drawer_gap"), step)
    high = count * _nearest(heights[0], step)
    if count > 1:
        grows = step_name(at.index)
        found[grows] = _nearest(spec.number(grows), step)
        high += found[grows] * count * (count - 1) / 2.0
    clear = high + (count + 1) * found["drawer_gap"]
    return {**found, "case_height": clear + 2.0 * found["board_thickness"]}


def _plinth(bench: Bench) -> Sum:
    spec = bench.spec
    left, right = spec.number("inset_left"), spec.number("inset_right")
    return Sum(
        "plinth_length",
        "the length",
        (left, _sized(bench, "plinth_length"), right),
        spec.number("length"),
        ("plinth_front", "plinth_back"),
        (left, -spec.number("depth"), 0.0),
        _whole(spec, "length", "inset_left", "inset_right"),
    )


def _rest(bench: Bench) -> Sum:
    spec = bench.spec
    seat, rest = _sized(bench, "seat_height"), spec.number("rest_height")
    posts = tuple(part.name for part in bench.parts if part.kind == "post")
    return Sum(
        "rest_top",
        "the height of the back rest",
        (seat, rest),
        seat + rest,
        posts or _ends_of(bench),
        (0.0, 0.0, seat),
        _whole(spec, "base_height", _RISE[spec.word("seat")], "rest_height"),
    )
