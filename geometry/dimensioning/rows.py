"""Rows of dimensions along one side of a view.

Frame: ``s`` runs along the side (to the right, or upward), ``d`` outward from the outline, both in
sheet mm.  One set of rules serves all four sides.

Method: dimensions go outward in the order of rank and length; each takes the first row beyond
every shorter one that it spans.  A text slides along its line out of the way of the extension
lines that must still pass; where it cannot, the extension line is interrupted (done in
``placement``).  A span too short for its text carries it on a tail of the dimension line.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from geometry.dimensioning.placed import Arrow, DimensionStyle, PlacedDimension
from geometry.drawing.marks import Role
from geometry.drawing.text_box import HALF_BOX, Line, TextBox
from geometry.primitives.frame import Vec2

Rectangle = tuple[float, float, float, float]  # least x, least y, greatest x, greatest y
_TOUCH = 0.01  # mm: two dimensions may share an extension line
_ROOM = 1.0  # mm between the text of one dimension and the next dimension
_CLEAN_TRIES = 2  # rows to look through for a place where nothing need be interrupted


@dataclass(frozen=True, slots=True)
class RowDimension:
    """A dimension to be put in a row: its ends on ``s``, and how deep its points lie (d <= 0)."""

    name: str
    role: Role
    text: str
    width: float
    low: float
    high: float
    low_depth: float
    high_depth: float
    rank: int


@dataclass(frozen=True, slots=True)
class Margin:
    """A side of the outline: ``base`` is its x or y, ``outward`` +1 or -1 along that axis."""

    horizontal: bool
    base: float
    outward: int
    low: float
    high: float

    def point(self, s: float, d: float) -> Vec2:
        away = self.base + self.outward * d
        return (s, away) if self.horizontal else (away, s)

    def line(self, s0: float, d0: float, s1: float, d1: float) -> Line:
        return (*self.point(s0, d0), *self.point(s1, d1))

    @property
    def text_side(self) -> int:
        """+1 where text, above its line as it is read, stands farther out than the line."""
        return self.outward if self.horizontal else -self.outward


@dataclass(frozen=True, slots=True)
class _Setting:
    """What is the same for all dimensions of one side."""

    margin: Margin
    style: DimensionStyle
    keep_out: Sequence[Rectangle]


@dataclass(frozen=True, slots=True)
class _Form:
    """One way to draw a dimension: the line from ``low`` to ``high``, the text about ``middle``."""

    low: float
    high: float
    middle: float
    arrows_inside: bool


@dataclass(frozen=True, slots=True)
class _Stood:
    wanted: RowDimension
    form: _Form
    row: int


def place_rows(
    wanted: Sequence[RowDimension],
    margin: Margin,
    style: DimensionStyle,
    keep_out: Sequence[Rectangle] = (),
) -> list[PlacedDimension]:
    """Every dimension of one side in its row; none touches a rectangle of ``keep_out``."""
    order = sorted(wanted, key=lambda w: (w.rank, w.high - w.low, w.low))
    ends = [(w.low, w.high) for w in order]
    setting = _Setting(margin, style, keep_out)
    stood: list[_Stood] = []
    rows: list[list[tuple[float, float]]] = []
    for index, one in enumerate(order):
        least = 0
        for other in stood:
            spanned = one.low < other.wanted.high - _TOUCH and other.wanted.low < one.high - _TOUCH
            if spanned and other.row >= least:
                least = other.row + 1
        passing = sorted(
            {s for pair in ends[index + 1 :] for s in pair if s not in (one.low, one.high)}
        )
        row, form = _find(one, least, passing, rows, setting)
        while len(rows) <= row:
            rows.append([])
        rows[row].append(_taken(one, form))
        stood.append(_Stood(one, form, row))
    return [_drawn(one, margin, style) for one in stood]


def _find(
    one: RowDimension,
    least: int,
    passing: Sequence[float],
    rows: Sequence[Sequence[tuple[float, float]]],
    setting: _Setting,
) -> tuple[int, _Form]:
    forms = _forms(one, passing, setting)
    second_best: tuple[int, _Form] | None = None
    row = least
    while True:
        for form in forms:
            if row < len(rows) and _overlaps(_taken(one, form), rows[row]):
                continue
            if setting.keep_out and _blocked(one, form, row, setting):
                continue
            if not _interrupts(one, form, passing):
                return row, form
            second_best = second_best or (row, form)
        row += 1
        if second_best is not None and row >= least + _CLEAN_TRIES:
            return second_best


def _forms(one: RowDimension, passing: Sequence[float], setting: _Setting) -> list[_Form]:
    margin, style = setting.margin, setting.style
    span = one.high - one.low
    inside = span >= 2.0 * style.arrow_length + 2.0
    tail = 0.0 if inside else style.tail
    low, high = one.low - tail, one.high + tail
    if span >= one.width + _ROOM:
        return [_Form(low, high, _slid(one, passing), inside)]
    step = style.gap + one.width / 2.0
    end = style.gap + one.width + style.clearance
    up = _Form(low, max(high, one.high + end), one.high + step, inside)
    down = _Form(min(low, one.low - end), high, one.low - step, inside)
    nearer_low = one.low + one.high < margin.low + margin.high
    at_the_low_end = nearer_low and one.low - margin.low < end
    return [down, up] if at_the_low_end else [up, down]


def _slid(one: RowDimension, passing: Sequence[float]) -> float:
    """The middle of the text: as near the middle of the span as passing lines leave room."""
    middle = (one.low + one.high) / 2.0
    half = (one.width + _ROOM) / 2.0
    stops = [one.low, *(s for s in passing if one.low < s < one.high), one.high]
    best: float | None = None
    for left, right in pairwise(stops):
        if right - left >= 2.0 * half:
            spot = min(max(middle, left + half), right - half)
            if best is None or abs(spot - middle) < abs(best - middle):
                best = spot
    return middle if best is None else best


def _taken(one: RowDimension, form: _Form) -> tuple[float, float]:
    """The stretch of its row that a dimension needs, with room to read a text on a tail."""
    low = form.low if form.low >= one.low else form.low - _ROOM
    high = form.high if form.high <= one.high else form.high + _ROOM
    return low, high


def _overlaps(stretch: tuple[float, float], row: Sequence[tuple[float, float]]) -> bool:
    low, high = stretch
    return any(low < b - _TOUCH and a < high - _TOUCH for a, b in row)


def _interrupts(one: RowDimension, form: _Form, passing: Sequence[float]) -> bool:
    half = (one.width + _ROOM) / 2.0 - _TOUCH
    return any(abs(s - form.middle) < half for s in passing)


def _blocked(one: RowDimension, form: _Form, row: int, setting: _Setting) -> bool:
    margin, style = setting.margin, setting.style
    d = style.first_row + row * style.pitch
    low, high = _taken(one, form)
    deep = d + margin.text_side * (style.clearance + 2.0 * HALF_BOX * style.text_height)
    x0, y0, x1, y1 = margin.line(
        min(low, form.middle - one.width / 2.0),
        min(d, deep) - style.overshoot,
        max(high, form.middle + one.width / 2.0),
        max(d, deep) + style.overshoot,
    )
    x0, x1, y0, y1 = min(x0, x1), max(x0, x1), min(y0, y1), max(y0, y1)
    return any(x0 < r and left < x1 and y0 < t and b < y1 for left, b, r, t in setting.keep_out)


def _drawn(one: _Stood, margin: Margin, style: DimensionStyle) -> PlacedDimension:
    wanted, form = one.wanted, one.form
    d = style.first_row + one.row * style.pitch
    raised = style.clearance + HALF_BOX * style.text_height
    middle = margin.point(form.middle, d + margin.text_side * raised)
    box = TextBox.about(middle, wanted.width, style.text_height, 0.0 if margin.horizontal else 90.0)
    line = margin.line(form.low, d, form.high, d)
    lines = [line]
    for s, depth in ((wanted.low, wanted.low_depth), (wanted.high, wanted.high_depth)):
        lines.append(margin.line(s, depth + style.gap, s, d + style.overshoot))
    low_way = 1.0 if not form.arrows_inside else -1.0
    toward: Vec2 = (1.0, 0.0) if margin.horizontal else (0.0, 1.0)
    arrows = tuple(
        Arrow(margin.point(s, d), (toward[0] * way, toward[1] * way))
        for s, way in ((wanted.low, low_way), (wanted.high, -low_way))
    )
    return PlacedDimension(wanted.name, wanted.role, wanted.text, box, line, tuple(lines), arrows)
