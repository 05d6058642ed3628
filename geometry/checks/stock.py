"""Checks of parts against the boards and sheets that there are."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from geometry.bench.bench import Bench
from geometry.bench.glue_ups import boards_in, pieces_to_cut
from geometry.bench.lipped import BAND, LIP_OF
from geometry.checks.check import Check
from geometry.checks.limit import Limit
from geometry.checks.limits_of_timber import (
    LONGEST_BOARD,
    NARROWEST_STRIP,
    SHEET_LENGTH,
    SHEET_WIDTH,
    THICKEST_BOARD,
    WIDEST_STOCK,
)
from geometry.checks.where import middle_of
from geometry.design.finding import Finding, Level, Mend
from geometry.design.part import Part
from shared.sheet_goods import SHEET_MATERIALS, SHEET_SIZES
from shared.timber import TIMBERS
from shared.units import length_mark

_HAIR = 1e-6
# Cut from the ends of other pieces, or planed to fit: no strips.
_SMALL = frozenset({"wedge", "loose tenon", "button", "pad", "levelling foot"})

_Sized = tuple[float, Part]


def _timber(parts: Sequence[Part]) -> Iterator[Part]:
    yield from (part for part in parts if part.solid_timber and part.material in TIMBERS)


def _long(bench: Bench) -> Iterator[Finding]:
    limit = LONGEST_BOARD.of(bench)
    rows = [(part.along_grain, part) for part in _timber(bench.parts)]
    found = _over(rows, limit)
    if not found:
        return
    size, part = found[0]
    shorter = bench.spec.number("length") - (size - limit)
    yield _finding(
        "long_board",
        Level.THINK_AGAIN,
        f"{part.title} is {length_mark(round(size, 1))} long, and no board longer than "
        f"{length_mark(limit)} is to be had.",
        found,
        limit,
        Mend(f"Make the bench {length_mark(round(shorter, 2))} long.", (("length", shorter),)),
    )


def _wide(bench: Bench) -> Iterator[Finding]:
    """Boards as they are glued up; no thicker way up is wider than it is thick."""
    limit = WIDEST_STOCK.of(bench)
    rows = [
        (max(part.across_grain / boards_in(bench.spec, part), part.shape.blank.thickness), part)
        for part in _timber(bench.parts)
    ]
    found = _over(rows, limit)
    if not found:
        return
    size, part = found[0]
    yield _finding(
        "wide_board",
        Level.GOOD_TO_KNOW,
        f"{part.title} takes a board {length_mark(round(size, 1))} wide, and the widest that there "
        f"is is {length_mark(limit)}: glue it up.",
        found,
        limit,
        Mend(f"Glue up of boards {length_mark(limit)} wide at most.", (("glue_up_width", limit),)),
    )


def _thick(bench: Bench) -> Iterator[Finding]:
    limit = THICKEST_BOARD.of(bench)
    rows = [
        (min(part.across_grain, part.shape.blank.thickness), part) for part in _timber(bench.parts)
    ]
    found = _over(rows, limit)
    if not found:
        return
    size, part = found[0]
    yield _finding(
        "thick_board",
        Level.THINK_AGAIN,
        f"{part.title} is {length_mark(round(size, 1))} thick, and no board thicker than "
        f"{length_mark(round(limit, 2))} is to be had: glue it up in its thickness, "
        "or make it thinner.",
        found,
        limit,
        None,
    )


def _narrow(bench: Bench) -> Iterator[Finding]:
    limit = NARROWEST_STRIP.of(bench)
    found = sorted(
        (
            (size, part)
            for part in _timber(pieces_to_cut(bench))
            for size in (min(part.across_grain, part.shape.blank.thickness),)
            if BAND < size < limit - _HAIR and part.kind not in _SMALL
        ),
        key=lambda row: row[0],
    )
    if not found:
        return
    size, part = found[0]
    mend = None
    kinds = {part.kind for _, part in found}
    if kinds <= LIP_OF.keys():
        thicker = tuple((name, limit) for name in dict.fromkeys(LIP_OF[k] for k in sorted(kinds)))
        mend = Mend(f"Make them {length_mark(limit)} thick.", thicker)
    yield _finding(
        "narrow_strip",
        Level.THINK_AGAIN,
        f"{part.title} is a strip of {length_mark(round(size, 2))}: less than "
        f"{length_mark(limit)} cannot be sawn safely.",
        found,
        limit,
        mend,
    )


def _large_sheet(bench: Bench) -> Iterator[Finding]:
    """Sheets larger than those that there are, each whichever way it lies."""
    fits = _sheets(bench)
    limit = SHEET_LENGTH.of(bench)
    for part in bench.parts:
        if part.material not in SHEET_MATERIALS:
            continue
        blank = part.shape.blank
        if fits(blank.length, blank.width):
            continue
        long, wide = max(blank.length, blank.width), min(blank.length, blank.width)
        narrow = long <= limit
        yield Finding(
            check="large_sheet",
            level=Level.THINK_AGAIN,
            message=(
                f"{part.title} is {length_mark(round(long, 1))} by {length_mark(round(wide, 1))}, "
                "larger than the sheets that there are: order a larger one, or make it in two with "
                "the seam behind an upright."
            ),
            parts=(part.name,),
            place=middle_of(part),
            amount=wide if narrow else long,
            limit=SHEET_WIDTH.of(bench) if narrow else limit,
        )


def _sheets(bench: Bench) -> Callable[[float, float], bool]:
    """Whether a piece comes out of a sheet: the maker's own, or any that is usually sold."""
    own = (SHEET_LENGTH.of(bench), SHEET_WIDTH.of(bench))
    usual = own == (SHEET_LENGTH.default, SHEET_WIDTH.default)
    sizes = [(row.length, row.width) for row in SHEET_SIZES] if usual else [own]

    def fits(length: float, width: float) -> bool:
        small, large = sorted((length, width))
        return any(small <= min(size) + _HAIR and large <= max(size) + _HAIR for size in sizes)

    return fits


def _over(rows: Sequence[_Sized], limit: float) -> list[_Sized]:
    """Those larger than the limit, the largest first."""
    return sorted((row for row in rows if row[0] > limit + _HAIR), key=lambda row: -row[0])


def _finding(
    check: str, level: Level, message: str, found: list[_Sized], limit: float, mend: Mend | None
) -> Finding:
    size, part = found[0]
    more = len(found) - 1
    others = f" So {'is one other' if more == 1 else f'are {more} others'}." if more else ""
    return Finding(
        check=check,
        level=level,
        message=message + others,
        parts=tuple(dict.fromkeys(_of_bench(part) for _, part in found)),
        place=middle_of(part),
        amount=size,
        limit=limit,
        mend=mend,
    )


def _of_bench(part: Part) -> str:
    """The piece itself, or the panel that a board is glued up into."""
    return part.name.rpartition("_board_")[0] if part.kind == "board" else part.name


def _check(
    name: str, title: str, about: str, run: Callable[[Bench], Iterator[Finding]], *rows: Limit
) -> Check:
    return Check(
        name, title, f"{about} Say what your yard has, and it is judged by that.", run, limits=rows
    )


CHECKS: tuple[Check, ...] = (
    _check(
        "long_board",
        "Longer than the boards there are",
        "Compares every piece of timber, with what is left on it, with the longest board that is "
        "commonly bought.",
        _long,
        LONGEST_BOARD,
    ),
    _check(
        "wide_board",
        "Wider than the boards there are",
        "Compares every piece of timber, or each board that it is glued up of, with the widest "
        "board that is to be had. A wider panel is glued up edge to edge.",
        _wide,
        WIDEST_STOCK,
    ),
    _check(
        "thick_board",
        "Thicker than the boards there are",
        "Compares every piece of timber with the thickest board that is to be had, planed. Drying "
        "checks open thicker timber, and it is glued up instead.",
        _thick,
        THICKEST_BOARD,
    ),
    _check(
        "narrow_strip",
        "Strip too narrow to saw",
        "A narrow strip can hardly be held down and pushed past a saw. Looks at every piece and "
        "board but wedges, tenons and other small things; a band under {1 mm} is bought.",
        _narrow,
        NARROWEST_STRIP,
    ),
    _check(
        "large_sheet",
        "Larger than the sheets there are",
        "Compares backs, bottoms and shelves of sheet, either way round, with the sheets that are "
        "usually sold (see the table of sheet sizes and its sources).",
        _large_sheet,
        SHEET_LENGTH,
        SHEET_WIDTH,
    ),
)
