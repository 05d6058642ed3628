"""The order in which a bench's joints let it be made, and which sizes each step of it needs.

A plain value with no clock in it: steps that come after others, as a joint is cut before it is
tried, and tried dry before it is glued.  A size that is drawn is there from the beginning; one that
is left to a dry fit is there only from that step on, and a step that needs it sooner cannot be
done.  Pieces whose size is left are cut when it is known, so their own steps wait.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from geometry.bench.bench import Bench
from geometry.bench.case_numbers import case_numbers
from geometry.bench.left_to_fit import (
    APRON_LENGTH,
    BACK_SIZE,
    BOX_WIDTH,
    FRONT_SIZE,
    PARTITION_HEIGHT,
    RAIL_LENGTH,
    SHEET_THICKNESS,
    SHELF_LENGTH,
    STRETCHER_LENGTH,
    Size,
)
from geometry.bench.members import has
from geometry.design.part import Part


@dataclass(frozen=True, slots=True)
class Step:
    """One step.  ``words`` say it as what is done; ``parts`` are the pieces it is done to.

    ``after`` names steps that come before it, ``uses`` the sizes that it needs and ``gives`` those
    that can be measured once it is done.  ``spoils`` tells whether a wrong size spoils wood, or the
    step cannot be done at all without it.
    """

    name: str
    words: str
    parts: tuple[str, ...]
    after: tuple[str, ...] = ()
    uses: tuple[Size, ...] = ()
    gives: tuple[Size, ...] = ()
    spoils: bool = True


def steps(bench: Bench) -> tuple[Step, ...]:
    """What has to be done to the bench, each step after those that it comes after."""
    return tuple(
        step
        for found in (_case(bench), _drawers(bench), _base(bench), _ends(bench))
        for step in found
        if step.parts
    )


def in_order(found: Iterable[Step]) -> tuple[Step, ...]:
    """The steps one after another; AssertionError where they wait for each other."""
    waiting, done = list(found), list[Step]()
    names = {step.name for step in waiting}
    while waiting:
        ready = next(
            (s for s in waiting if not (set(s.after) & names) - {one.name for one in done}), None
        )
        assert ready is not None, [step.name for step in waiting]
        waiting.remove(ready)
        done.append(ready)
    return tuple(done)


def before(found: tuple[Step, ...], last: Step) -> tuple[Step, ...]:
    """The steps that must be done for ``last`` to be done, itself the last of them, in order."""
    by_name = {step.name: step for step in found}
    needed, open_names = {last.name}, [last.name]
    while open_names:
        for name in by_name[open_names.pop()].after:
            if name in by_name and name not in needed:
                needed.add(name)
                open_names.append(name)
    return tuple(step for step in in_order(found) if step.name in needed)


def too_early(found: tuple[Step, ...], size: Size) -> tuple[Step, Step] | None:
    """The first step that needs a size before it can be measured, and the one that measures it."""
    measured = next((step for step in found if size in step.gives), None)
    if measured is None:
        return None
    early = next((step for step in before(found, measured) if size in step.uses), None)
    return None if early is None else (early, measured)


def _of(bench: Bench, *kinds: str) -> tuple[str, ...]:
    return tuple(part.name for part in bench.parts if part.kind in kinds)


def _jointed(bench: Bench, kind: str, *boards: str) -> tuple[str, ...]:
    """The pieces of such kinds that have a joint of a kind with something."""
    wanted: set[str] = {
        name for joint in bench.joints if joint.kind == kind for name in joint.parts
    }
    return tuple(p.name for p in bench.parts if p.name in wanted and p.kind in boards)


def _case(bench: Bench) -> Iterator[Step]:
    if not has(bench.spec, "case"):
        return
    c = case_numbers(bench.spec)
    boards = _of(bench, "top", "bottom", "end panel")
    uprights = _of(bench, "partition")
    inner = tuple(name for name in uprights if name not in ("partition_left", "partition_right"))
    yield Step("saw_partitions", "sawing the partitions to width", inner, (), (SHEET_THICKNESS,))
    yield Step(
        "rebates",
        "routing the rebates for the back",
        _jointed(bench, "rebate", "top", "bottom", "end panel", "partition"),
        (),
        (SHEET_THICKNESS,),
    )
    yield Step(
        "mitres", "sawing the mitres", _jointed(bench, "mitre", "top", "bottom", "end panel")
    )
    yield Step(
        "housings",
        "routing the housings in top and bottom",
        _jointed(bench, "stopped housing", "top", "bottom"),
    )
    held = c.left.mitred and c.right.mitred
    yield Step(
        "fit_case",
        "the dry fit of the case",
        boards,
        ("rebates", "mitres", "housings"),
        # At an open end nothing but the set-in partition keeps top and bottom apart.
        () if held else (PARTITION_HEIGHT,),
        (PARTITION_HEIGHT, BACK_SIZE, SHEET_THICKNESS),
    )
    yield Step(
        "fit_partitions",
        "the dry fit of the case with its partitions",
        (*boards, *uprights),
        ("fit_case", "saw_partitions"),
        (),
        (SHELF_LENGTH, BOX_WIDTH),
    )
    yield Step("glue_case", "gluing up the case", boards, ("fit_partitions", "runners"))


def _drawers(bench: Bench) -> Iterator[Step]:
    """Runners go on the loose uprights, boxes in the glued case, fronts on the boxes."""
    if not has(bench.spec, "drawers"):
        return
    beside = {
        name
        for joint in bench.joints
        if joint.kind == "stopped housing"
        for name in joint.parts
        if name.startswith("partition")
    }
    uprights = tuple(p.name for p in bench.parts if p.kind == "end panel" or p.name in beside)
    runners = _of(bench, "runner")
    yield Step(
        "runners",
        "fixing the runners to the uprights, while these still lie flat",
        runners or uprights,
        (),
        # How high a runner lies follows from the fronts, and how long it is from the back.
        (FRONT_SIZE, SHEET_THICKNESS),
        spoils=False,
    )
    boxes = _of(bench, "drawer side", "drawer box front", "drawer back", "drawer bottom")
    yield Step(
        "boxes",
        "gluing up the drawer boxes, which are as high as their fronts let them be",
        boxes,
        ("fit_partitions",),
        (FRONT_SIZE, BOX_WIDTH),
        spoils=False,
    )
    yield Step(
        "hang",
        "the fit of the drawers in the glued case",
        boxes,
        ("glue_case", "boxes", "runners"),
        (),
        (FRONT_SIZE,),
    )


def _base(bench: Bench) -> Iterator[Step]:
    """A base stands dry by itself, or on what is left of it when some pieces are not there yet."""
    legs = _of(bench, "leg", "panel foot")
    stretchers, aprons = _of(bench, "stretcher"), _of(bench, "apron")
    crossed, with_rail = has(bench.spec, "crossed base"), bool(_of(bench, "rail"))
    yield Step(
        "laps",
        "sawing the laps where the stretchers cross",
        _jointed(bench, "angled lap", "stretcher"),
        (),
        (STRETCHER_LENGTH,),
    )
    needed: tuple[Size, ...] = (STRETCHER_LENGTH,) if crossed else ()
    if aprons and not _stand_alone(bench, legs, aprons):
        needed = (*needed, APRON_LENGTH)
    gives: tuple[Size, ...] = (STRETCHER_LENGTH, APRON_LENGTH)
    if with_rail and not has(bench.spec, "panel ends"):
        gives = (*gives, RAIL_LENGTH)
    yield Step(
        "fit_base", "the dry fit of the base", (*legs, *stretchers), ("laps",), needed, gives
    )


def _stand_alone(bench: Bench, legs: tuple[str, ...], without: tuple[str, ...]) -> bool:
    """Whether joints hold the legs to one another, or to one piece, without those pieces."""
    near: dict[str, set[str]] = {part.name: set() for part in bench.parts}
    for joint in bench.joints:
        first, second = joint.parts
        if first not in without and second not in without:
            near[first].add(second)
            near[second].add(first)
    reached, open_names = {legs[0]}, [legs[0]]
    while open_names:
        for name in near[open_names.pop()] - reached:
            reached.add(name)
            open_names.append(name)
    return set(legs) <= reached


def _ends(bench: Bench) -> Iterator[Step]:
    """The seat on its two ends, between which a rail is measured."""
    if has(bench.spec, "panel ends"):
        ends: tuple[str, ...] = _of(bench, "seat", "end")
        yield Step("fit_ends", "the dry fit of seat and ends", ends, (), (), (RAIL_LENGTH,))


def owners(bench: Bench, size: Size) -> tuple[Part, ...]:
    """The pieces that a size belongs to."""
    return tuple(part for part in bench.parts if part.kind in size.kinds)
