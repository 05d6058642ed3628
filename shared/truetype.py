"""The advance widths of a TrueType font: just enough of a reader to place text.

Method: the table directory leads to ``head`` (units in an em), ``hhea`` and ``hmtx`` (widths by
glyph) and ``cmap`` (glyph by character; the full Unicode subtable, format 12).  Nothing else of
the font is looked at.  Source: the OpenType specification, chapters of those names.
"""

from __future__ import annotations

import struct
from dataclasses import dataclass
from pathlib import Path

_FULL_UNICODE = 12  # the format of a cmap subtable of 32-bit character ranges


@dataclass(frozen=True, slots=True, eq=False)
class Advances:
    """``widths``: character to advance in ems; ``missing``: the advance of the empty box."""

    widths: dict[str, float]
    missing: float


def read_advances(path: Path) -> Advances:
    """The advances of every character the font has; AssertionError for a font without format 12."""
    data = path.read_bytes()
    tables = _directory(data)
    (em,) = struct.unpack_from(">H", data, tables["head"] + 18)
    (measured,) = struct.unpack_from(">H", data, tables["hhea"] + 34)
    # Each entry of hmtx is an advance and a bearing; glyphs after the last repeat its advance.
    pairs = struct.unpack_from(f">{2 * measured}H", data, tables["hmtx"])
    by_glyph = [advance / em for advance in pairs[::2]]
    last = measured - 1
    widths = {
        chr(character): by_glyph[min(glyph, last)]
        for start, end, first_glyph in _ranges(data, tables["cmap"])
        for character, glyph in _counted(start, end, first_glyph)
    }
    return Advances(widths, by_glyph[0])


def _counted(start: int, end: int, first: int) -> zip[tuple[int, int]]:
    """Characters from start to end, both included, with glyphs counted up from first."""
    return zip(range(start, end + 1), range(first, first + end - start + 1), strict=True)


def _directory(data: bytes) -> dict[str, int]:
    """Table name to its place in the file."""
    (count,) = struct.unpack_from(">H", data, 4)
    entries = (struct.unpack_from(">4sIII", data, 12 + 16 * i) for i in range(count))
    return {name.decode("ascii"): place for name, _checksum, place, _length in entries}


def _ranges(data: bytes, cmap: int) -> list[tuple[int, int, int]]:
    """First character, last character, first glyph of each range."""
    (count,) = struct.unpack_from(">H", data, cmap + 2)
    for i in range(count):
        _platform, _encoding, offset = struct.unpack_from(">HHI", data, cmap + 4 + 8 * i)
        (table_format,) = struct.unpack_from(">H", data, cmap + offset)
        if table_format == _FULL_UNICODE:
            (groups,) = struct.unpack_from(">I", data, cmap + offset + 12)
            numbers = struct.unpack_from(f">{3 * groups}I", data, cmap + offset + 16)
            return list(zip(numbers[::3], numbers[1::3], numbers[2::3], strict=True))
    raise AssertionError("the font has no full Unicode character table")
