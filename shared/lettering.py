"""How wide a text is in the drawing font, without a font library.

Heights are capital heights in mm, as drawing standards give them (ISO 3098), not em sizes.
Widths are sums of advances without kerning and ligatures: PDF writers place text just so, and a
screen must switch both off to agree.
"""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path

from shared.truetype import Advances, read_advances

CAP_HEIGHT_RATIO = 1493 / 2048
"""Capital height in ems, both weights; measured on the letter H."""

ASCENT_RATIO = 1.1
"""The highest ink of ASCII, fractions and drawing signs above the baseline, in capital heights;
accented capitals in a maker's own title rise to 1.3."""

DESCENT_RATIO = 0.33
"""The deepest ink of the same below the baseline, in capital heights."""

_FONTS = Path(__file__).parent / "fonts"
_FILES = {False: _FONTS / "DejaVuSans.ttf", True: _FONTS / "DejaVuSans-Bold.ttf"}
_FACES = {False: "DejaVuSans", True: "DejaVuSans-Bold"}


def font_path(bold: bool = False) -> Path:
    """The TrueType file of the drawing font."""
    return _FILES[bold]


def font_name(bold: bool = False) -> str:
    """The font's own PostScript name, for files that refer to it."""
    return _FACES[bold]


def em_size(cap_height: float) -> float:
    """The em size, which writers and screens call font size, in the unit of ``cap_height``."""
    return cap_height / CAP_HEIGHT_RATIO


def text_width(text: str, height: float, bold: bool = False) -> float:
    """The width in mm of one line of text whose capitals are ``height`` mm high."""
    return _ems(text, bold) * em_size(height)


@lru_cache(maxsize=4096)
def _ems(text: str, bold: bool) -> float:
    advances = _advances(bold)
    widths, missing = advances.widths, advances.missing
    return sum([widths.get(character, missing) for character in text])


@lru_cache(maxsize=2)
def _advances(bold: bool) -> Advances:
    return read_advances(_FILES[bold])
