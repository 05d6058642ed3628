"""Rows of dimensions along one side of a view.

Frame: ``s`` along the side, ``d`` outward from the outline, sheet mm (see ``row_parts``).

Method: dimensions go outward in the order of rank and length; each takes the first row beyond
every shorter one that it spans.  A text slides along its line out of the way of the extension
lines that must still pass; where it cannot, the extension line is interrupted (done in
``placement``).  A span too short for its text carries it on a tail of the dimension line, and
many dimensions from one point share a line (see ``running``).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from geometry.dimensioning.placed import Arrow, DimensionStyle, PlacedDimension
from geometry.dimensioning.row_parts import Margin, RowDimension
from geometry.dimensioning.running import Running, drawn_running, gathered
from geometry.drawing.text_box import HALF_BOX, Line, TextBox
from geometry.primitives.frame import Vec2

Rectangle = tuple[float, float, float, float]  # least x, least y, greatest x, greatest y
_TOUCH = 0.01  # mm: two dimensions may share an extension line
_ROOM = 1.0  # mm between the text of one dimension and the next dimension
_CLEAN_TRIES = 2  # rows to look through for a place where nothing need be interrupted


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
    """A stretch of rows that is taken, and what stands in it."""

    low: float
    high: float
    row: int
    last_row: int
    wanted: RowDimension | Running
    form: _Form | None


def place_rows(
    wanted: Sequence[RowDimension],
    margin: Margin,
    style: DimensionStyle,
    keep_out: Sequence[Rectangle] = (),
) -> list[PlacedDimension]:
    """Every dimension of one side in its row; none touches a rectangle of ``keep_out``."""
    groups, rest = gathered(wanted, style)
    order: list[RowDimension | Running] = [*groups, *rest]
    order.sort(key=lambda one: (one.rank, one.high - one.low, one.low))
    setting = _Setting(margin, style, keep_out)
    stood: list[_Stood] = []
    rows: list[list[tuple[float, float]]] = []
    for index, one in enumerate(order):
        least = 0
        for other in stood:
            spanned = one.low < other.high - _TOUCH and other.low < one.high - _TOUCH
            if spanned and other.last_row >= least:
                least = other.last_row + 1
        if isinstance(one, Running):
            row, last, stretch = _find_running(one, least, rows, setting)
            form = None
        else:
            passing = sorted(
                {s for later in order[index + 1 :] for s in _ends(later)} - {one.low, one.high}
            )
            row, form = _find(one, least, passing, rows, setting)
            last, stretch = row, _taken(one, form)
        rows.extend([] for _ in range(last + 1 - len(rows)))
        for taken in range(row, last + 1):
            rows[taken].append(stretch)
        stood.append(_Stood(one.low, one.high, row, last, one, form))
    return [placed for one in stood for placed in _drawn(one, margin, style)]


def _ends(one: RowDimension | Running) -> list[float]:
    """Where the extension lines of a dimension, or of a group, go outward."""
    if isinstance(one, Running):
        return [s for member in one.members for s in (member.low, member.high)]
    return [one.low, one.high]


def _find_running(
    one: Running, least: int, rows: Sequence[Sequence[tuple[float, float]]], setting: _Setting
) -> tuple[int, int, tuple[float, float]]:
    """The first rows that are free for a group: first, last and the stretch taken of them."""
    margin, style = setting.margin, setting.style
    stretch = one.stretch
    count = one.rows_taken(style, margin)
    row = least
    while True:
        d = style.first_row + row * style.pitch
        corner = margin.line(stretch[0], d - style.overshoot, stretch[1], d + one.reach)
        free = all(not _overlaps(stretch, taken) for taken in rows[row : row + count])
        if free and not _meets(corner, setting.keep_out):
            return row, row + count - 1, stretch
        row += 1


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
    corner = margin.line(
        min(low, form.middle - one.width / 2.0),
        min(d, deep) - style.overshoot,
        max(high, form.middle + one.width / 2.0),
        max(d, deep) + style.overshoot,
    )
    return _meets(corner, setting.keep_out)


def _meets(corners: Line, keep_out: Sequence[Rectangle]) -> bool:
    """Whether the rectangle between two opposite corners touches one to be kept out of."""
    x0, x1 = min(corners[0], corners[2]), max(corners[0], corners[2])
    y0, y1 = min(corners[1], corners[3]), max(corners[1], corners[3])
    return any(x0 < r and left < x1 and y0 < t and b < y1 for left, b, r, t in keep_out)


def _drawn(one: _Stood, margin: Margin, style: DimensionStyle) -> list[PlacedDimension]:
    d = style.first_row + one.row * style.pitch
    wanted, form = one.wanted, one.form
    if isinstance(wanted, Running) or form is None:
        assert isinstance(wanted, Running)
        return drawn_running(wanted, d, margin, style)
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
    return [PlacedDimension(wanted.name, wanted.role, wanted.text, box, line, tuple(lines), arrows)]
