"""The themes as Qt palettes, and back from a palette to its theme.

A widget finds its theme in its own palette, so that there is no global to keep in step and a
change of palette repaints everything.
"""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QGuiApplication, QPalette

from app.look.themes import DARK, LIGHT, NIGHT, PAPER, Theme, Tone


def chosen_theme(choice: str) -> Theme:
    """The theme of a preference; ``system`` asks the desktop, and is paper where it is silent."""
    if choice in (LIGHT, DARK):
        return NIGHT if choice == DARK else PAPER
    scheme = QGuiApplication.styleHints().colorScheme()
    return NIGHT if scheme == Qt.ColorScheme.Dark else PAPER


def palette_of(theme: Theme) -> QPalette:
    """Every role that the widgets use, set outright; nothing is left to the desktop."""
    ink, quiet, hand = (QColor(theme.tone(tone)) for tone in (Tone.INK, Tone.QUIET, Tone.HAND))
    paper, bench = QColor(theme.paper), QColor(theme.bench)
    hairline, wash = QColor(theme.hairline), QColor(theme.wash)
    role = QPalette.ColorRole
    palette = QPalette()
    for name, colour in (
        (role.Window, bench),
        (role.WindowText, ink),
        (role.Base, paper),
        (role.AlternateBase, wash),
        (role.Text, ink),
        (role.Button, bench),
        (role.ButtonText, ink),
        (role.BrightText, hand),
        (role.Highlight, hand),
        (role.HighlightedText, paper),
        (role.Accent, hand),
        (role.Link, QColor(theme.tone(Tone.GOOD_TO_KNOW))),
        (role.ToolTipBase, paper),
        (role.ToolTipText, ink),
        (role.PlaceholderText, quiet),
        (role.Light, paper),
        (role.Midlight, wash),
        (role.Mid, hairline),
        (role.Dark, quiet),
        (role.Shadow, hairline),
    ):
        palette.setColor(name, colour)
    for name in (role.WindowText, role.Text, role.ButtonText):
        palette.setColor(QPalette.ColorGroup.Disabled, name, quiet)
    return palette


def theme_of(palette: QPalette) -> Theme:
    """Which theme a palette was made from."""
    return NIGHT if palette.window().color().lightness() < 128 else PAPER
