"""The bench cut through along its length and across it, where most of it shows.

Frame: the (u, v) of each section's view, mm.

Method: a plane is put half way between neighbouring faces of parts, where it goes through most
kinds of parts, so that a row of slats alone is not taken for the bench; then where it goes through
most parts; of those that do, the one nearest the middle of the bench is taken.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from geometry.bench.bench import Bench
from geometry.design.part import Part
from geometry.primitives.frame import Vec3, dot
from geometry.sheets.label_spots import Spot, spots_of
from geometry.sheets.section_marks import visible_lines
from geometry.solids.cutting import placed
from geometry.views.bench_views import end_view
from geometry.views.sections import Section, section
from geometry.views.view import FRONT, View
from shared.units import length_mark

LETTERS = ("A", "B")
_LEAST_GAP = 5.0  # mm between two faces, for a plane between them


@dataclass(frozen=True, slots=True, eq=False)
class Cut:
    """One section, its letter, where it is in words, and where the other one shows in it.

    ``other`` is its letter, ``trace`` the u of its plane, ``sight`` +1 or -1 along u, the
    way that it is seen.
    """

    section: Section
    letter: str
    other: str
    place: str
    trace: float
    sight: float
    spots: tuple[Spot, ...]

    @property
    def bounds(self) -> tuple[float, float, float, float]:
        return visible_lines(self.section.linework).bounds()


def cross_sections(bench: Bench, letters: tuple[str, str] = LETTERS) -> tuple[Cut, Cut]:
    """The bench cut along its length and seen from the front, and cut across and seen from an
    end; ``letters`` are of the one across and the one along."""
    across = end_view(bench)
    at_end, at_front = best_plane(bench.parts, across), best_plane(bench.parts, FRONT)
    x, y = at_end * across.toward[0], -at_front
    low = min(float(placed(part).low[0]) for part in bench.parts)
    here = (x, y, 0.0)
    in_front = f"{length_mark(abs(y))} {'behind' if y > 0.0 else 'in front of'} the back edge"
    from_left = f"{length_mark(x - low)} from the left end"
    a, b = letters
    along = _cut(bench.parts, FRONT, at_front, (b, a, in_front, *_shown(here, FRONT, across)))
    end = _cut(bench.parts, across, at_end, (a, b, from_left, *_shown(here, across, FRONT)))
    return along, end


def best_plane(parts: Sequence[Part], view: View) -> float:
    """How far toward the viewer a plane goes through most kinds of parts."""
    heights = [placed(part).vertices @ np.array(view.toward) for part in parts]
    lows = np.array([one.min() for one in heights])
    highs = np.array([one.max() for one in heights])
    faces = np.unique(np.concatenate([lows, highs]))
    tries = [float(round((a + b) / 2.0)) for a, b in pairwise(faces) if b - a >= _LEAST_GAP]
    middle = float(lows.min() + highs.max()) / 2.0

    kinds = np.array([part.kind for part in parts])

    def worth(at: float) -> tuple[int, int, float]:
        through = (lows < at) & (highs > at)
        return len(set(kinds[through].tolist())), int(through.sum()), -abs(at - middle)

    return max(tries or [middle], key=worth)


def _shown(point: Vec3, view: View, other: View) -> tuple[float, float]:
    """Where the other section's plane shows in a view, and which way that one is seen."""
    return view.project(point)[0], -dot(other.toward, view.right)


def _cut(
    parts: Sequence[Part], view: View, at: float, told: tuple[str, str, str, float, float]
) -> Cut:
    found = section(parts, view, at)
    lines = visible_lines(found.linework).segments
    owners = [owner for owner, _ in found.left]
    return Cut(found, *told, spots_of([part for _, part in found.left], view, lines, owners))
