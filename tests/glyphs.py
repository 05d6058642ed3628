"""Which characters the drawing font has, by another library (fontTools)."""

from __future__ import annotations

from functools import cache

from fontTools.ttLib import TTFont

from shared.lettering import font_path


def missing_glyphs(text: str, bold: bool = False) -> str:
    """The characters of the text that would print as an empty box, each once."""
    return "".join(dict.fromkeys(one for one in text if ord(one) not in _known(bold)))


@cache
def _known(bold: bool) -> frozenset[int]:
    with TTFont(font_path(bold)) as font:
        return frozenset(font.getBestCmap())
