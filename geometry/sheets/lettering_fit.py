"""Words that must fit a given width: smaller lettering first, then a cut with an ellipsis."""

from __future__ import annotations

import re

from shared.lettering import text_width
from shared.line_styles import LETTERING_HEIGHTS

_CUT = "…"
_EXACT = 1e-6  # mm: a column made to measure holds what it was measured by
# A whole number stays with its fraction, a number with its unit, a part with its number: 2 at the
# end of a line and ¹⁵⁄₁₆ in the next would be read as two sizes.
_BREAK = re.compile(r"\s+(?![⁰¹²³⁴⁵⁶⁷⁸⁹½¼¾⅛⅜⅝⅞]|[0-9]+:|(?<=[0-9₀₁₂₃₄₅₆₇₈₉½¼¾⅛⅜⅝⅞] )(?:mm|in)\b)")


def fitted(text: str, width: float, height: float, bold: bool = False) -> tuple[str, float]:
    """The text and its capital height in mm, at most ``height``, so that it is no wider than
    ``width``.

    Heights step down the ISO 3098 series; a text too long for the smallest is cut short.
    """
    steps = [h for h in reversed(LETTERING_HEIGHTS) if h < height]
    for step in (height, *steps):
        if text_width(text, step, bold) <= width:
            return text, step
    smallest = steps[-1] if steps else height
    kept = text
    while kept and text_width(kept.rstrip() + _CUT, smallest, bold) > width:
        kept = kept[:-1]
    return kept.rstrip() + _CUT, smallest


def fitted_lines(
    text: str, width: float, height: float, bold: bool = False, most: int = 2
) -> tuple[tuple[str, ...], float]:
    """The text and its capital height as ``fitted``, in up to ``most`` lines rather than cut short.

    One line as long as some lettering lets it stand in one.
    """
    line, size = fitted(text, width, height, bold)
    if line == text:
        return (line,), size
    lines = wrapped(text, width, size, bold)
    kept = [*lines[: most - 1], " ".join(lines[most - 1 :])]
    return tuple(fitted(one, width, size, bold)[0] for one in kept if one), size


def wrapped(text: str, width: float, height: float, bold: bool = False) -> list[str]:
    """The text in lines no wider than ``width``; a single longer word stands alone."""
    lines: list[str] = []
    words = " ".join(text.split())
    for word in _BREAK.split(words) if words else ():
        if lines and text_width(f"{lines[-1]} {word}", height, bold) <= width + _EXACT:
            lines[-1] = f"{lines[-1]} {word}"
        else:
            lines.append(word)
    return lines
