"""A check of a seat that is one board: the boards it is glued up from."""

from __future__ import annotations

import math
from collections.abc import Iterator

from geometry.bench.bench import Bench
from geometry.bench.seat_board import board_width
from geometry.checks.check import Check
from geometry.checks.limits_of_handling import WIDEST_BOARD
from geometry.checks.where import middle_of_named
from geometry.design.finding import Finding, Level, Mend
from shared.units import length_mark


def _wide_board(bench: Bench) -> Iterator[Finding]:
    width, widest = board_width(bench.spec), WIDEST_BOARD.of(bench)
    if width <= widest + 1e-9:
        return
    boards = float(math.ceil(bench.spec.number("depth") / widest))
    mend = Mend(f"Glue it up of {boards:.0f} boards.", (("seat_boards", boards),))
    yield Finding(
        check="wide_seat_board",
        level=Level.THINK_AGAIN,
        message=(
            f"The seat is glued up of boards {length_mark(width)} wide: over "
            f"{length_mark(widest)} each of them cups by itself as it dries."
        ),
        parts=("seat",),
        place=middle_of_named(bench, "seat"),
        amount=width,
        limit=widest,
        mend=mend,
    )


CHECKS: tuple[Check, ...] = (
    Check(
        "wide_seat_board",
        "Wide boards in the seat",
        "A seat that is glued up of wide boards turns hollow as each of them dries. Narrower ones, "
        "laid in turn heart up and heart down, keep it flat. The limit of {200 mm} is common "
        "practice, no source.",
        _wide_board,
        ("seat board",),
        limits=(WIDEST_BOARD,),
    ),
)
