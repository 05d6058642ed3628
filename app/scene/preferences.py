"""How the maker likes to see things; none of it changes the bench."""

from __future__ import annotations

from dataclasses import dataclass, replace

from app.look.themes import DARK, LIGHT, SYSTEM
from geometry.sheets.printer import TRUE, Edges
from shared.units import SHOWN_IN16, SHOWN_IN32, SHOWN_IN64, SHOWN_MM, Shown
from shared.words import Words

UNIT_CHOICES: tuple[Shown, ...] = (SHOWN_MM, SHOWN_IN16, SHOWN_IN32, SHOWN_IN64)

THEME_CHOICES = (SYSTEM, LIGHT, DARK)

TEXT_PERCENTS = (100, 125, 150, 200)


@dataclass(frozen=True, slots=True)
class Preferences:
    """``inch`` is the fraction to go back to when inches are switched on; ``paper`` the name of
    what the maker prints on; ``square`` what their printer makes of a check square, mm."""

    shown: Shown = SHOWN_MM
    inch: Shown = SHOWN_IN16
    words: Words = Words.BRITISH
    third_angle: bool = True
    theme: str = SYSTEM
    text_percent: int = 100
    paper: str = "A4"
    square: Edges = TRUE

    def with_shown(self, shown: Shown) -> Preferences:
        inch = shown if shown.unit == "in" else self.inch
        return replace(self, shown=shown, inch=inch)

    def other_unit(self) -> Preferences:
        """Millimetres for inches and the other way round."""
        return self.with_shown(self.inch if self.shown.unit == "mm" else SHOWN_MM)


def unit_name(shown: Shown) -> str:
    """A unit in words, for menus: ``Millimetres``, ``Inches, to 1/16``."""
    return "Millimetres" if shown.unit == "mm" else f"Inches, to 1/{shown.denominator}"


def short_unit_name(shown: Shown) -> str:
    return "mm" if shown.unit == "mm" else f"in, 1/{shown.denominator}"
