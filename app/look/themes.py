"""Two themes, paper and night: one table of roles and colours, no Qt.

Colours carry roles only, and each text colour keeps 4.5:1 on every ground that it is written on
(WCAG 2.2, 1.4.3; a test computes it).  Never is a colour the only sign of anything.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum


class Tone(Enum):
    """What a colour is for."""

    INK = "ink"  # visible lines, text
    QUIET = "quiet"  # hidden, centre, derived
    HAND = "under the hand"  # hover, drag, selected
    PINNED = "pinned"  # really cut
    DO_NOT_CUT = "do not cut"
    THINK_AGAIN = "think again"
    GOOD_TO_KNOW = "good to know"


@dataclass(frozen=True, slots=True)
class Theme:
    """Colours as ``#RRGGBB``.

    ``paper`` is the ground of the drawing and of fields, ``bench`` the ground of the panels
    around it, ``hairline`` rules between things (3:1 is not asked of a rule that only
    decorates), ``wash`` the ground of a picked row, ``rod`` the wood of the story stick.
    """

    name: str
    tones: dict[Tone, str]
    paper: str
    bench: str
    hairline: str
    wash: str
    rod: str

    def tone(self, tone: Tone) -> str:
        return self.tones[tone]


PAPER = Theme(
    name="light",
    tones={
        Tone.INK: "#23282E",
        Tone.QUIET: "#6A6259",
        Tone.HAND: "#A63E12",
        Tone.PINNED: "#1F5F5B",
        Tone.DO_NOT_CUT: "#8E1B2E",
        Tone.THINK_AGAIN: "#7A5200",
        Tone.GOOD_TO_KNOW: "#2F5573",
    },
    paper="#FAF8F3",
    bench="#F1EDE4",
    hairline="#D3CBBD",
    wash="#F0E7DA",
    rod="#E2CFA9",
)

NIGHT = Theme(
    name="dark",
    tones={
        Tone.INK: "#E9E5DC",
        Tone.QUIET: "#A79F94",
        Tone.HAND: "#F0A36B",
        Tone.PINNED: "#7CC4BD",
        Tone.DO_NOT_CUT: "#F08A97",
        Tone.THINK_AGAIN: "#E2B75C",
        Tone.GOOD_TO_KNOW: "#93B9D6",
    },
    paper="#20262B",
    bench="#191E22",
    hairline="#3B434A",
    wash="#2B3035",
    rod="#5A4C36",
)


SYSTEM, LIGHT, DARK = "system", "light", "dark"
"""What the maker can choose; ``system`` follows the desktop."""
