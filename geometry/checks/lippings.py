"""Checks of shelves of sheet: whether the sheet is sold so thick."""

from __future__ import annotations

from collections.abc import Iterator

from geometry.bench.bench import Bench
from geometry.checks.check import Check
from geometry.design.finding import Finding, Level, Mend
from shared.sheet_goods import thicknesses_of
from shared.units import length_mark


def _thickness(bench: Bench) -> Iterator[Finding]:
    sheet, thickness = bench.spec.word("sheet"), bench.spec.number("shelf_thickness")
    rows = thicknesses_of(sheet)
    if not rows or any(row.thinnest <= thickness <= row.thickest for row in rows):
        return
    nearest = min(rows, key=lambda row: abs(row.usual - thickness))
    yield Finding(
        check="sheet_thickness",
        level=Level.THINK_AGAIN,
        message=(
            f"The shelves are {length_mark(thickness)} of {sheet}; the nearest that is sold, "
            f"{nearest.called}, is {length_mark(nearest.usual)}."
        ),
        parts=tuple(part.name for part in bench.parts if part.kind == "shelf"),
        amount=thickness,
        limit=nearest.usual,
        mend=Mend(
            f"Make them {length_mark(nearest.usual)}.", (("shelf_thickness", nearest.usual),)
        ),
    )


CHECKS: tuple[Check, ...] = (
    Check(
        "sheet_thickness",
        "Shelf of a thickness that is not sold",
        "Compares shelves of sheet with the thicknesses in which the material comes (see the table "
        "of sheet goods and its sources). Sheet is not planed to size, and its housing has to fit "
        "what it measures.",
        _thickness,
        ("lippings",),
    ),
)
