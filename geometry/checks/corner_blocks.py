"""Checks of the blocks in the corners between aprons."""

from __future__ import annotations

from collections.abc import Iterator

from geometry.bench.bench import Bench
from geometry.bench.corner_block_numbers import corner_blocks
from geometry.bench.corner_screws import lacking
from geometry.checks.check import Check
from geometry.checks.limits_of_wood import LEAST_THREAD
from geometry.checks.where import middle_of_named
from geometry.design.finding import Finding, Level, Mend
from shared.units import length_mark


def _block(corner: str) -> str:
    return f"corner_block_{corner}"


def _threads(bench: Bench) -> Iterator[Finding]:
    b, least = corner_blocks(bench.spec), LEAST_THREAD.of(bench)
    if not b.screws or b.bite >= least - 1e-9:
        return
    yield Finding(
        check="corner_block_thread",
        level=Level.THINK_AGAIN,
        message=f"The corner blocks' screws hold in only {length_mark(b.bite)} of the aprons.",
        parts=(_block("front_right"), "apron_front", "apron_right"),
        place=middle_of_named(bench, _block("front_right")),
        amount=b.bite,
        limit=least,
        mend=Mend(f"Let them go in {length_mark(least)}.", (("corner_block_bite", least),)),
    )


def _glue(bench: Bench) -> Iterator[Finding]:
    b = corner_blocks(bench.spec)
    if b.screws or not b.diagonal:
        return
    yield Finding(
        check="corner_block_glue",
        level=Level.THINK_AGAIN,
        message="The corner blocks are held by glue on their ends alone, across the fibres.",
        parts=(_block("front_right"), "apron_front", "apron_right"),
        place=middle_of_named(bench, _block("front_right")),
        amount=0.0,
        limit=1.0,
        unit="",
        mend=Mend("Put a screw into each apron.", (("corner_block_screws", 1.0),)),
    )


def _no_place(bench: Bench) -> Iterator[Finding]:
    found = lacking(bench.spec)
    if not found:
        return
    number, why = len(found), "; ".join(dict.fromkeys(why for _, why in found))
    held = "corner block does" if number == 1 else "corner blocks do"
    yield Finding(
        check="corner_block_seat",
        level=Level.GOOD_TO_KNOW,
        message=f"{number} {held} not hold the seat: {why}.",
        parts=tuple(_block(corner) for corner, _ in found),
        place=middle_of_named(bench, _block(found[0][0])),
        amount=float(4 - number),
        limit=4.0,
        unit="",
    )


CHECKS: tuple[Check, ...] = (
    Check(
        "corner_block_thread",
        "Corner blocks' screws in little wood",
        "The screws of a corner block hold by their thread in the apron, which they must not come "
        "through: the limit is that of screws in the seat. Common practice, no source.",
        _threads,
        ("corner blocks",),
        limits=(LEAST_THREAD,),
    ),
    Check(
        "corner_block_glue",
        "Corner blocks glued across the fibres",
        "A block across a corner meets the aprons with its ends, where glue finds little hold: it "
        "wants at least one screw into each. Common practice, no source.",
        _glue,
        ("corner blocks",),
    ),
    Check(
        "corner_block_seat",
        "Corner blocks that do not hold the seat",
        "Where the seat is held by screws in slots, a block across a corner holds it too, if it is "
        "thick and long enough for the slot beside its own screws. The limit is the four corners.",
        _no_place,
        ("corner blocks", "fixings"),
    ),
)
