"""Where one section's plane shows in another section: its line, its arrows and its letters.

Frame: sheet mm about the view's own origin.  The line runs past the drawing, wide at its ends,
with arrows that point the way the other section is seen (ISO 128-40, from memory).
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from geometry.dimensioning.dimension_marks import ARROW_LENGTH, arrowhead
from geometry.drawing.marks import Anchor, Fill, Label, Mark, Role, Strokes
from geometry.drawing.text_box import TextBox
from geometry.primitives.frame import Vec2
from geometry.solids.solid import Floats
from shared.lettering import text_width

_BEYOND = 5.0  # mm that the trace of a plane runs past the drawing
_HEAVY = 3.0  # mm of either end of a trace that are drawn wide
_LETTER = 3.5
_SHAFT = 2.5  # mm of an arrow before its head
_BEHIND = 1.2


@dataclass(frozen=True, slots=True, eq=False)
class Trace:
    """An upright line at ``u`` between two heights ``v``; ``sight`` is +1 or -1 along u, the way in
    which the other section, of that ``letter``, is seen."""

    u: float
    v: tuple[float, float]
    sight: float
    letter: str

    @property
    def _ends(self) -> tuple[float, float]:
        return self.v[0] - _BEYOND, self.v[1] + _BEYOND

    def _runs(self) -> Floats:
        """Its lower end, its run and its upper end, (3, 4)."""
        u, (low, high) = self.u, self._ends
        return np.array(
            [
                (u, low, u, low + _HEAVY),
                (u, low + _HEAVY, u, high - _HEAVY),
                (u, high - _HEAVY, u, high),
            ]
        )

    def _shafts(self) -> Floats:
        """The arrows as lines, (2, 4)."""
        reach = self.sight * (_SHAFT + ARROW_LENGTH)
        return np.array([(self.u, v, self.u + reach, v) for v in self._ends])

    def _letters(self) -> list[Label]:
        """The letters at both ends, behind the arrows."""
        low, high = self._ends
        x = self.u - self.sight * _BEHIND
        anchor = Anchor.END if self.sight > 0.0 else Anchor.START
        return [
            Label(Role.TITLE, self.letter, (x, y), _LETTER, anchor, bold=True)
            for y in (low, high - _LETTER)
        ]

    def lines(self) -> Floats:
        """All its lines, (5, 4)."""
        return np.concatenate([self._runs(), self._shafts()])

    def boxes(self) -> list[TextBox]:
        """The room of each letter."""
        found = []
        for one in self._letters():
            half = text_width(one.text, one.height, one.bold) / 2.0
            x = one.at[0] + (-half if one.anchor is Anchor.END else half)
            found.append(TextBox(x, one.at[1] + one.height / 2.0, half, one.height / 2.0))
        return found

    def marks(self, origin: Vec2) -> list[Mark]:
        """The trace with the view's (0, 0) at ``origin``."""
        by = np.array(origin * 2)
        runs, shafts = self._runs() + by, self._shafts() + by
        heads = [arrowhead((float(x), float(y)), (self.sight, 0.0)) for _, _, x, y in shafts]
        return [
            Strokes(Role.CENTRE, runs[1:2]),
            Strokes(Role.VISIBLE, runs[(0, 2), :]),
            Strokes(Role.DIMENSION, shafts),
            *(Fill(Role.DIMENSION, head) for head in heads),
            *(
                replace(one, at=(one.at[0] + origin[0], one.at[1] + origin[1]))
                for one in self._letters()
            ),
        ]
