"""Checks of boards of sheet: whether the sheet is sold so thick, and whether edges stay in the
lipping."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from geometry.bench.bench import Bench
from geometry.checks.check import Check
from geometry.checks.where import middle_of
from geometry.cuts.chamfer import Chamfer
from geometry.cuts.edge_moulding import CHAMFER, EdgeMoulding
from geometry.design.finding import Finding, Level, Mend
from geometry.design.part import Part
from shared.sheet_goods import thicknesses_of
from shared.units import length_mark


@dataclass(frozen=True, slots=True)
class _Boards:
    """Boards that may be of sheet: what they are called, of which kinds of parts they
    are, and the numbers of their thickness, their lipping and their edges."""

    words: str
    kinds: tuple[str, ...]
    thickness: str
    lip: str
    edges: tuple[str, ...]

    def of(self, bench: Bench) -> tuple[Part, ...]:
        """Those of them that are of sheet."""
        return tuple(
            part for part in bench.parts if part.kind in self.kinds and not part.solid_timber
        )


_ROWS = (
    _Boards("shelves", ("shelf",), "shelf_thickness", "shelf_lip", ("shelf_edge_size",)),
    _Boards(
        "partitions",
        ("partition",),
        "partition_thickness",
        "partition_lip",
        ("partition_edge_size",),
    ),
    _Boards(
        "case's boards",
        ("top", "bottom", "end panel"),
        "board_thickness",
        "board_lip",
        ("chamfer", "edge_size"),
    ),
    _Boards("lid", ("lid",), "lid_thickness", "lid_lip", ("lid_edge_size",)),
    _Boards("seat", ("seat",), "seat_thickness", "panel_lip", ("seat_edge_size",)),
    _Boards("ends", ("end",), "end_thickness", "panel_lip", ("end_edge_size",)),
)
_SINGLE = ("lid", "seat")
_LEAST_EDGE = 0.5  # mm, of any moulding


def _thickness(bench: Bench) -> Iterator[Finding]:
    sheet = bench.spec.word("sheet")
    rows = thicknesses_of(sheet)
    for boards in _ROWS:
        of_sheet, thickness = boards.of(bench), bench.spec.number(boards.thickness)
        if not of_sheet or not rows or any(r.thinnest <= thickness <= r.thickest for r in rows):
            continue
        one = boards.words in _SINGLE
        nearest = min(rows, key=lambda row: abs(row.usual - thickness))
        yield Finding(
            check="sheet_thickness",
            level=Level.THINK_AGAIN,
            message=(
                f"The {boards.words} {'is' if one else 'are'} {length_mark(thickness)} of {sheet}; "
                f"the nearest that is sold, {nearest.called}, is {length_mark(nearest.usual)}."
            ),
            parts=tuple(part.name for part in of_sheet),
            place=middle_of(of_sheet[0]),
            amount=thickness,
            limit=nearest.usual,
            mend=Mend(
                f"Make {'it' if one else 'them'} {length_mark(nearest.usual)}.",
                ((boards.thickness, nearest.usual),),
            ),
        )


def _through(bench: Bench) -> Iterator[Finding]:
    """Boards whose edges are cut through the lipping; the sheet gets those cuts only then."""
    for boards in _ROWS:
        cut_into = [
            part
            for part in boards.of(bench)
            if any(isinstance(cut, Chamfer | EdgeMoulding) for cut in part.shape.cuts)
        ]
        if not cut_into:
            continue
        lip, first = bench.spec.number(boards.lip), cut_into[0]
        chamfered = any(_is_chamfer(cut) for cut in first.shape.cuts)
        name = boards.edges[0 if chamfered else -1]
        size = bench.spec.number(name)
        yield Finding(
            check="edge_through_lipping",
            level=Level.THINK_AGAIN,
            message=(
                f"The front arrises of the {boards.words} lose {length_mark(size)}, and their "
                f"lippings are {length_mark(lip)} thick: the layers of the sheet would show."
            ),
            parts=tuple(part.name for part in cut_into),
            place=first.frame.to_bench((0.0, first.shape.blank.width, 0.0)),
            amount=size,
            limit=lip,
            mend=Mend(f"Take off {length_mark(lip)}.", ((name, lip),))
            if lip >= _LEAST_EDGE
            else None,
        )


def _is_chamfer(cut: object) -> bool:
    """Whether it is one, through or stopped."""
    return isinstance(cut, Chamfer) or (isinstance(cut, EdgeMoulding) and cut.form == CHAMFER)


CHECKS: tuple[Check, ...] = (
    Check(
        "sheet_thickness",
        "Board of a thickness that is not sold",
        "Compares boards of sheet with the thicknesses in which the material comes "
        "(see the table of sheet goods and its sources). Sheet is not planed to size, and its "
        "housing has to fit what it measures.",
        _thickness,
    ),
    Check(
        "edge_through_lipping",
        "Edge cut through a lipping",
        "Looks for chamfers, round-overs and coves that take off more than the lipping is thick. "
        "They bare the layers of the sheet that the lipping hides, and leave a feather edge of it "
        "that chips. The limit is the lipping's own thickness.",
        _through,
    ),
)
