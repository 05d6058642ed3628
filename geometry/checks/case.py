"""Checks of the case and its back."""

from __future__ import annotations

from collections.abc import Iterator

from geometry.bench.back import back_size
from geometry.bench.bench import Bench
from geometry.bench.case_numbers import case_numbers
from geometry.checks.check import Check
from geometry.design.finding import Finding, Level
from shared.sheet_goods import SHEET_SIZES
from shared.units import length_mark


def _proud_bevel(bench: Bench) -> Iterator[Finding]:
    """The bottom's bevel runs its full length; at the far mitre the end panel stands upright."""
    c = case_numbers(bench.spec)
    far = c.right if c.deep_left else c.left
    if c.flare <= 0.0 or not far.mitred:
        return
    yield Finding(
        check="proud_bevel",
        level=Level.GOOD_TO_KNOW,
        message=(
            f"At the {far.side} end the bottom's bevelled front edge stands up to "
            f"{length_mark(c.bevel)} proud of the upright end panel: plane it back into line there."
        ),
        parts=("bottom", f"end_panel_{far.side}"),
        place=(0.0 if far.side == "left" else c.length, -c.depth, c.inside_low),
        amount=c.bevel,
        limit=0.0,
    )


def _large_back(bench: Bench) -> Iterator[Finding]:
    length, height = back_size(case_numbers(bench.spec))
    if any(_fits(length, height, sheet.length, sheet.width) for sheet in SHEET_SIZES):
        return
    longest = max(sheet.length for sheet in SHEET_SIZES)
    yield Finding(
        check="large_back",
        level=Level.THINK_AGAIN,
        message=(
            f"The back is {length_mark(length)} by {length_mark(height)}, larger than any usual "
            "sheet: order a long one, or plan a seam behind a partition."
        ),
        parts=("back",),
        amount=length,
        limit=longest,
    )


def _fits(length: float, height: float, sheet_length: float, sheet_width: float) -> bool:
    small, large = sorted((length, height))
    narrow, long = sorted((sheet_length, sheet_width))
    return small <= narrow and large <= long


CHECKS: tuple[Check, ...] = (
    Check(
        "proud_bevel",
        "Bevelled edge meeting an upright one",
        "With a flare the bottom's front edge leans over its whole length. Where its far end is "
        "mitred to an upright panel, a wedge of it stands proud. It is planed off in a minute, if "
        "one knows. The limit is none at all.",
        _proud_bevel,
        ("case", "back"),
    ),
    Check(
        "large_back",
        "Back larger than a sheet",
        "Compares the back with the sheets that are usually sold (see the table of sheet sizes and "
        "its sources). A larger one has to be ordered, or made in two.",
        _large_back,
        ("case", "back"),
    ),
)
