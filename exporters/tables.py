"""The cut list as a table: one row for each shape, with how many of it and all sizes.

CSV after RFC 4180 (commas, CRLF, doubled quotes), UTF-8.  Sizes stand twice: as the maker reads
them, and as plain millimetres to a ten-thousandth.  A size that the shown unit only comes near to
has ``≈`` in front.
"""

from __future__ import annotations

import csv
import io
from collections.abc import Sequence

from exporters.pieces import cut_alike, finished_size
from geometry.design.part import Part
from shared.units import Shown, format_length, in_units, length_mark, prints_exactly
from shared.words import Words, in_words

_SIZES = (
    "Finished length",
    "Finished width",
    "Finished thickness",
    "Blank length",
    "Blank width",
    "Blank thickness",
)
COLUMNS = (
    "Piece",
    "Quantity",
    "Names",
    "Material",
    "Grain",
    *_SIZES,
    *(f"{name} mm" for name in _SIZES),
    "Notes",
)

# A spreadsheet takes a cell that begins like this for a formula.
_FORMULA_STARTS = ("=", "+", "-", "@", "\t", "\r")


def cut_list_bytes(parts: Sequence[Part], shown: Shown, words: Words) -> bytes:
    """The cut list of these parts; equal parts give equal bytes."""
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\r\n")
    writer.writerow([in_words(name, words) for name in COLUMNS])
    for group in cut_alike(parts):
        writer.writerow([_harmless(cell) for cell in _row(group, shown, words)])
    return text.getvalue().encode("utf-8")


def _row(group: tuple[Part, ...], shown: Shown, words: Words) -> list[str]:
    first = group[0]
    blank = first.shape.blank
    sizes = (*finished_size(first), blank.length, blank.width, blank.thickness)
    notes = [*first.notes, *_left_on(first)]
    return [
        in_words("; ".join(part.title for part in group), words),
        str(len(group)),
        "; ".join(part.name for part in group),
        in_words(first.material, words),
        _grain(first),
        *(_shown(size, shown) for size in sizes),
        *(_plain(size) for size in sizes),
        in_words(in_units("; ".join(notes), shown), words),
    ]


def _grain(part: Part) -> str:
    if not part.solid_timber:
        return "either way"
    return "along the width" if part.grain_across else "along the length"


def _left_on(part: Part) -> list[str]:
    """What the blank is larger than the finished part, and when that comes off."""
    along, across = part.allowance, part.allowance_across
    if across:
        return [
            f"{length_mark(along)} left on the length and {length_mark(across)} on the width, "
            "trimmed when it is fitted"
        ]
    return [f"{length_mark(along)} left proud, trimmed flush after the glue-up"] if along else []


def _shown(mm: float, shown: Shown) -> str:
    text = format_length(mm, shown, with_unit=True)
    return text if prints_exactly(mm, shown) else f"≈ {text}"


def _plain(mm: float) -> str:
    text = f"{mm:.4f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def _harmless(cell: str) -> str:
    return f"'{cell}" if cell.startswith(_FORMULA_STARTS) else cell
