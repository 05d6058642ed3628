"""Checks of the case."""

from __future__ import annotations

from collections.abc import Iterator

from geometry.bench.bench import Bench
from geometry.bench.case_numbers import LEFT, RIGHT, case_numbers
from geometry.checks.check import Check
from geometry.checks.limits_of_handling import LEAST_STEP, MOST_PROUD
from geometry.design.finding import Finding, Level, Mend
from shared.units import angle_mark, length_mark


def _proud_bevel(bench: Bench) -> Iterator[Finding]:
    """The bottom's bevel runs its full length; at the far mitre the end panel stands upright."""
    c, most = case_numbers(bench.spec), MOST_PROUD.of(bench)
    for end in (c.left, c.right):
        x = 0.0 if end.side == LEFT else c.length
        bevel = c.bottom_bevel(x)
        if not end.mitred or c.flare_of(end.side).amount > 0.0 or bevel <= most:
            continue
        yield Finding(
            check="proud_bevel",
            level=Level.GOOD_TO_KNOW,
            message=(
                f"At the {end.side} end the bottom's bevelled front edge stands up to "
                f"{length_mark(bevel)} proud of the upright end panel: plane it back into line "
                "there."
            ),
            parts=("bottom", f"end_panel_{end.side}"),
            place=(x, -c.depth, c.inside_low),
            amount=bevel,
            limit=most,
        )


def _bevel_step(bench: Bench) -> Iterator[Finding]:
    """Both ends flare by unlike amounts: the bottom's two bevels meet in a step."""
    c = case_numbers(bench.spec)
    x = c.bevel_changes
    if x is None:
        return
    step = abs(c.bevel(LEFT) - c.bevel(RIGHT))
    if step < LEAST_STEP.of(bench):
        return
    flare = (c.flare_left.amount + c.flare_right.amount) / 2.0
    yield Finding(
        check="bevel_step",
        level=Level.GOOD_TO_KNOW,
        message=(
            f"The bottom's front edge leans by {angle_mark(c.lean_deg(LEFT))} at the left and "
            f"{angle_mark(c.lean_deg(RIGHT))} at the right: where the two bevels meet, "
            f"{length_mark(x)} from the left end, one stands {length_mark(step)} proud of the "
            "other. Plane them into each other."
        ),
        parts=("bottom",),
        place=(x, -c.depth, c.inside_low),
        amount=step,
        limit=LEAST_STEP.of(bench),
        mend=Mend(
            f"Give both ends a flare of {length_mark(flare)}.",
            (("flare", flare), ("flare_right", flare)),
        ),
    )


CHECKS: tuple[Check, ...] = (
    Check(
        "proud_bevel",
        "Bevelled edge meeting an upright one",
        "With a flare the bottom's front edge leans over its whole length. Where its far end is "
        "mitred to an upright panel, a wedge of it stands proud. It is planed off in a minute, if "
        "one knows. The limit is none at all.",
        _proud_bevel,
        ("case", "back"),
        limits=(MOST_PROUD,),
    ),
    Check(
        "bevel_step",
        "Two bevels along one edge",
        "Where both ends flare by unlike amounts the bottom's front edge leans by another angle "
        "at each, and a saw leaves a step where the two bevels meet. It lies half way between the "
        "run-outs and is planed off easily, if one knows. What is under {0.05 mm} is gone with the "
        "first stroke of a plane: common practice, no source.",
        _bevel_step,
        ("case",),
        limits=(LEAST_STEP,),
    ),
)
