"""A page with the bench cut through: along its length, and across it.

Frame: sheet mm; figures about their view's own origin until they are placed.

Method: a plane is put half way between neighbouring faces of parts, where it goes through most
parts; of those that do, the one nearest the middle of the bench is taken.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

import numpy as np

from geometry.bench.bench import Bench
from geometry.design.part import Part
from geometry.dimensioning.dimension_marks import ARROW_LENGTH, arrowhead
from geometry.drawing.marks import Anchor, Fill, Label, Mark, Role, Strokes
from geometry.drawing.text_box import TextBox
from geometry.primitives.frame import Vec2, Vec3, dot
from geometry.sheets.layout import Layout, Room, scale_text
from geometry.sheets.leaf import Leaf, standing
from geometry.sheets.part_labels import Named, Spot, label_marks, named, spots_of
from geometry.sheets.section_marks import section_marks, visible_lines
from geometry.solids.cutting import placed
from geometry.solids.solid import Floats
from geometry.views.bench_views import end_view
from geometry.views.sections import Section, section
from geometry.views.view import FRONT, View
from shared.lettering import text_width
from shared.paper import SCALES
from shared.units import in_units, length_mark
from shared.words import in_words

_BESIDE, _ABOVE = 24.0, 8.0  # mm of the sheet round a section, for names
_CAPTION = 7.0  # mm below it
_BEYOND = 5.0  # mm that the trace of a plane runs past the drawing
_HEAVY = 3.0  # mm of either end of a trace that are drawn wide
_LEAST_GAP = 5.0  # mm between two faces, for a plane between them
_LETTER = 3.5
_SHAFT = 2.5  # mm of an arrow before its head
_BEHIND = 1.2
LETTERS = ("A", "B")
_TURNS = 4  # that names are placed in, as many parts are cut through side by side


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
    """How far toward the viewer a plane goes through most parts."""
    heights = [placed(part).vertices @ np.array(view.toward) for part in parts]
    lows = np.array([one.min() for one in heights])
    highs = np.array([one.max() for one in heights])
    faces = np.unique(np.concatenate([lows, highs]))
    tries = [float(round((a + b) / 2.0)) for a, b in pairwise(faces) if b - a >= _LEAST_GAP]
    middle = float(lows.min() + highs.max()) / 2.0

    def worth(at: float) -> tuple[int, float]:
        return int(((lows < at) & (highs > at)).sum()), -abs(at - middle)

    return max(tries or [middle], key=worth)


def cross_section_leaf(bench: Bench, layout: Layout, letters: tuple[str, str] = LETTERS) -> Leaf:
    """The page, its sheet lying or upright, whichever shows them larger."""
    cuts = cross_sections(bench, letters)
    tries = [(_scales(cuts, way), way) for way in (layout, standing(layout))]
    scales, way = max(tries, key=lambda one: (min(one[0]), max(one[0])))
    left, bottom, right, top = way.room
    air = max(0.0, (top - bottom - _heights(cuts, scales)) / (len(cuts) + 1))
    marks: list[Mark] = []
    for cut, scale in zip(cuts, scales, strict=True):
        top -= air
        room = (left, top - _height(cut, scale), right, top)
        marks += _marks(cut, bench.parts, scale, (room, way))
        top = room[1]
    return Leaf("Section drawing", in_words("Sections", way.words), None, tuple(marks), way)


def _shown(point: Vec3, view: View, other: View) -> tuple[float, float]:
    """Where the other section's plane shows in a view, and which way that one is seen."""
    return view.project(point)[0], -dot(other.toward, view.right)


def _cut(
    parts: Sequence[Part], view: View, at: float, told: tuple[str, str, str, float, float]
) -> Cut:
    found = section(parts, view, at)
    lines = visible_lines(found.linework).segments
    owners = [owner for owner, _ in found.left]
    spots = spots_of([part for _, part in found.left], view, lines)
    return Cut(found, *told, tuple(replace(one, index=owners[one.index]) for one in spots))


def _height(cut: Cut, scale: float) -> float:
    _, low, _, high = cut.bounds
    return (high - low) * scale + 2.0 * _ABOVE + _CAPTION


def _heights(cuts: Sequence[Cut], scales: Sequence[float]) -> float:
    return sum(_height(cut, scale) for cut, scale in zip(cuts, scales, strict=True))


def _scales(cuts: Sequence[Cut], layout: Layout) -> list[float]:
    """The largest standard scales at which the sections fit, one above the other."""
    left, bottom, right, top = layout.room
    steps = []
    for cut in cuts:
        u0, _, u1, _ = cut.bounds
        most = (right - left - 2.0 * _BESIDE) / max(u1 - u0, 1.0)
        fitting = [k for k, step in enumerate(SCALES) if step.factor <= most]
        steps.append(fitting[0] if fitting else len(SCALES) - 1)
    while (
        sum(_height(c, SCALES[k].factor) for c, k in zip(cuts, steps, strict=True)) > top - bottom
    ):
        largest = min(range(len(cuts)), key=lambda i: (steps[i], -_height(cuts[i], 1.0)))
        if steps[largest] == len(SCALES) - 1:
            break
        steps[largest] += 1
    return [SCALES[k].factor for k in steps]


def _marks(cut: Cut, parts: Sequence[Part], scale: float, where: tuple[Room, Layout]) -> list[Mark]:
    """A section in its band of the page, with its names, its caption and the other's trace."""
    (left, bottom, right, top), layout = where
    u0, _, u1, v1 = (c * scale for c in cut.bounds)
    origin = ((left + right - u0 - u1) / 2.0, top - _ABOVE - v1)
    trace = _trace(cut, scale)
    height = layout.lettering
    letters = _letter_boxes(trace, cut.other, cut.sight, origin)
    marks: list[Mark] = [
        Strokes(Role.CENTRE, trace[1:2] + np.array(origin * 2)),
        Strokes(Role.VISIBLE, trace[(0, 2), :] + np.array(origin * 2)),
        *_arrows(_shafts(trace, cut.sight), cut.sight, origin),
        *letters,
    ]
    caption = _caption(cut, scale, layout)
    at = (origin[0] + (u0 + u1) / 2.0, bottom + _CAPTION / 2.0)
    marks.append(Label(Role.TITLE, caption, at, height, Anchor.MIDDLE))
    room = (left - origin[0], bottom + _CAPTION - origin[1], right - origin[0], top - origin[1])
    lines = np.concatenate(
        [
            visible_lines(cut.section.linework).segments * scale,
            trace,
            _shafts(trace, cut.sight),
        ]
    )
    spots = [replace(s, point=(s.point[0] * scale, s.point[1] * scale)) for s in cut.spots]
    names = [in_words(part.title, layout.words) for part in parts]
    labels: tuple[Named, ...] = named(
        names, spots, lines, height, room, _boxes(letters, origin), _TURNS
    )
    cuts = section_marks(cut.section, parts, scale, origin, [one.box for one in labels])
    return [*cuts, *marks, *label_marks(labels, origin, height)]


def _trace(cut: Cut, scale: float) -> Floats:
    """Where the other section's plane shows: its lower end, its run and its upper end, (3, 4)."""
    _, v0, _, v1 = (c * scale for c in cut.bounds)
    u = cut.trace * scale
    low, high = v0 - _BEYOND, v1 + _BEYOND
    return np.array(
        [
            (u, low, u, low + _HEAVY),
            (u, low + _HEAVY, u, high - _HEAVY),
            (u, high - _HEAVY, u, high),
        ]
    )


def _shafts(trace: Floats, sight: float) -> Floats:
    """The arrows of a trace as lines, (2, 4)."""
    u, reach = float(trace[0, 0]), sight * (_SHAFT + ARROW_LENGTH)
    return np.array([(u, v, u + reach, v) for v in (trace[0, 1], trace[2, 3])])


def _arrows(shafts: Floats, sight: float, origin: Vec2) -> list[Mark]:
    """At both ends of a trace, which way the other section is seen."""
    lines = shafts + np.array(origin * 2)
    heads = [arrowhead((float(x), float(y)), (sight, 0.0)) for _, _, x, y in lines]
    return [
        Strokes(Role.DIMENSION, lines),
        *(Fill(Role.DIMENSION, head) for head in heads),
    ]


def _letter_boxes(trace: Floats, letter: str, sight: float, origin: Vec2) -> list[Label]:
    """The letters at both ends of a trace, behind the arrows."""
    low, high = float(trace[0, 1]) + origin[1], float(trace[2, 3]) + origin[1]
    x = float(trace[0, 0]) + origin[0] - sight * _BEHIND
    anchor = Anchor.END if sight > 0.0 else Anchor.START
    return [
        Label(Role.TITLE, letter, (x, y), _LETTER, anchor, bold=True) for y in (low, high - _LETTER)
    ]


def _boxes(labels: Sequence[Label], origin: Vec2) -> list[TextBox]:
    """The room of each letter about the origin."""
    found = []
    for one in labels:
        half = text_width(one.text, one.height, one.bold) / 2.0
        x, y = one.at[0] - origin[0], one.at[1] - origin[1]
        x += -half if one.anchor is Anchor.END else half
        found.append(TextBox(x, y + one.height / 2.0, half, one.height / 2.0))
    return found


def _caption(cut: Cut, scale: float, layout: Layout) -> str:
    place = in_units(cut.place, layout.shown)
    return in_words(
        f"Section {cut.letter}–{cut.letter}, {scale_text(scale)}, {place}", layout.words
    )
