"""Type: the interface's family at a few sizes, and the drawing font from the bundled file."""

from __future__ import annotations

from functools import lru_cache

from PySide6.QtGui import QFont, QFontDatabase, QFontMetricsF

from shared.lettering import em_size, font_path


def with_tabular_figures(font: QFont) -> QFont:
    """Figures of one width, so that sizes stand under each other and do not dance."""
    font = QFont(font)
    font.setFeature(QFont.Tag("tnum"), 1)
    return font


def scaled(font: QFont, factor: float) -> QFont:
    """The same font larger or smaller."""
    font = QFont(font)
    if font.pointSizeF() > 0:
        font.setPointSizeF(font.pointSizeF() * factor)
    else:
        font.setPixelSize(max(1, round(font.pixelSize() * factor)))
    return font


def bold(font: QFont) -> QFont:
    font = QFont(font)
    font.setWeight(QFont.Weight.DemiBold)
    return font


@lru_cache(maxsize=2)
def _drawing_family(weighty: bool) -> str:
    """Loads the bundled font once; its family name."""
    number = QFontDatabase.addApplicationFont(str(font_path(weighty)))
    assert number >= 0, "the bundled font cannot be loaded"
    return QFontDatabase.applicationFontFamilies(number)[0]


@lru_cache(maxsize=32)
def drawing_font(cap_height_px: float, weighty: bool = False) -> QFont:
    """The drawing font with capitals so many pixels high."""
    font = QFont(_drawing_family(weighty))
    font.setPixelSize(max(1, round(em_size(cap_height_px))))
    font.setBold(weighty)
    font.setKerning(False)  # as the widths in shared.lettering have none
    font.setHintingPreference(QFont.HintingPreference.PreferNoHinting)
    return font


def cap_height(font: QFont) -> float:
    """Height of the capitals in pixels."""
    return QFontMetricsF(font).capHeight()
