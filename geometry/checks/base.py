"""Checks of stretchers, legs and their joints."""

from __future__ import annotations

from collections.abc import Iterator

from geometry.bench.base_numbers import base_numbers
from geometry.bench.bench import Bench
from geometry.checks.check import Check
from geometry.checks.limits_of_joints import FLATTEST_LAP, LEAST_WALL
from geometry.checks.where import in_joint
from geometry.design.finding import Finding, Level, Mend
from shared.units import angle_mark, length_mark


def _thin_walls(bench: Bench) -> Iterator[Finding]:
    b = base_numbers(bench.spec)
    tip, least = b.tips[0][1], LEAST_WALL.of(bench)
    for check, what, size, parts in (
        ("mortise_wall", "The legs' walls beside the mortise", b.mortise_wall, "leg"),
        ("thin_tenon", "The stretchers' tenons", b.tenon, "stretcher"),
    ):
        if size >= least - 1e-9:
            continue
        yield Finding(
            check=check,
            level=Level.THINK_AGAIN,
            message=(f"{what} are only {length_mark(size)} thick, less than {length_mark(least)}."),
            parts=tuple(part.name for part in bench.parts if part.kind == parts),
            place=(*tip, b.height),
            amount=size,
            limit=least,
            mend=_thirds(bench),
        )


def _thirds(bench: Bench) -> Mend | None:
    """A third each is the best split there is; thicker stock where that is what lacks."""
    b = base_numbers(bench.spec)
    changes: list[tuple[str, float | str]] = []
    if bench.spec.word("tenon_rule") != "third":
        changes.append(("tenon_rule", "third"))
    needed = 3.0 * LEAST_WALL.of(bench) + 2.0
    if b.thickness < needed:
        changes.append(("base_thickness", needed))
    if not changes:
        return None
    third = f"the tenon a third of {length_mark(max(b.thickness, needed))}"
    if b.thickness < needed:
        third = f"legs and stretchers {length_mark(needed)} thick, and the tenon a third of that"
    return Mend(f"Make {third}.", tuple(changes))


def _flat_lap(bench: Bench) -> Iterator[Finding]:
    lap = next(joint for joint in bench.joints if joint.kind == "angled lap")
    angle = next(measure for measure in lap.measures if measure.name == "lap_angle").value
    if angle >= FLATTEST_LAP.of(bench) - 1e-9:
        return
    span = next(measure for measure in lap.measures if measure.name == "notch_span").value
    yield Finding(
        check="flat_lap",
        level=Level.THINK_AGAIN,
        message=(
            f"The stretchers cross at {angle_mark(angle)}: each notch is {length_mark(span)} long "
            "and leaves half the height over all of that."
        ),
        parts=lap.parts,
        place=in_joint(bench, "angled lap", *lap.parts),
        amount=angle,
        limit=FLATTEST_LAP.of(bench),
        unit="deg",
    )


CHECKS: tuple[Check, ...] = (
    Check(
        "thin_walls",
        "Thin tenons and mortise walls",
        "A bridle joint shares the thickness between the tenon and the walls beside it. Under "
        "{6 mm} either breaks easily, the more so in a leaning leg: common practice, no source.",
        _thin_walls,
        ("bridled legs",),
        limits=(LEAST_WALL,),
    ),
    Check(
        "flat_lap",
        "Stretchers crossing at a flat angle",
        "The flatter two stretchers cross, the longer is each notch of their lap and the longer "
        "the stretch of half height. Under 12 degrees it is longer than a router base can bridge: "
        "common practice, no source.",
        _flat_lap,
        ("crossed base",),
        limits=(FLATTEST_LAP,),
    ),
)
