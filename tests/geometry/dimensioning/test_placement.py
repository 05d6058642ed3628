"""Placed dimensions never touch each other's text or the drawing; judged by shapely."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from geometry.dimensioning.angle_places import chords
from geometry.dimensioning.dimension import Dimension
from geometry.dimensioning.placed import DimensionStyle, Placed
from geometry.dimensioning.placement import place
from geometry.dimensioning.running import ONE_PLACE
from geometry.drawing.marks import Role
from shared.units import SHOWN_IN32, SHOWN_MM

LEVEL, UPRIGHT = (1.0, 0.0), (0.0, 1.0)


def rectangle(x0: float, y0: float, x1: float, y1: float) -> list[tuple[float, ...]]:
    return [(x0, y0, x1, y0), (x1, y0, x1, y1), (x1, y1, x0, y1), (x0, y1, x0, y0)]


def length(
    name: str,
    start: tuple[float, float],
    end: tuple[float, float],
    along: tuple[float, float] = LEVEL,
    side: int = 1,
    rank: int = 0,
    parameter: str = "size",
) -> Dimension:
    value = abs((end[0] - start[0]) * along[0] + (end[1] - start[1]) * along[1])
    return Dimension(
        name, name, "front", value, "mm", start, end, along, side, rank, parameter, "other sizes"
    )


def angle(
    name: str,
    apex: tuple[float, float],
    start: tuple[float, float],
    end: tuple[float, float],
) -> Dimension:
    return Dimension(name, name, "front", 15.0, "deg", start, end, LEVEL, 1, 0, "splay", apex=apex)


def touching(placed: Placed, drawing: np.ndarray) -> list[str]:
    """Every pair of a text and another text or a line that meet, by shapely."""
    texts = [shapely.Polygon(one.box.corners()) for one in placed.dimensions]
    names = [one.name for one in placed.dimensions]
    found = [
        f"text {names[i]} on text {names[j]}"
        for i in range(len(texts))
        for j in range(i)
        if texts[i].intersects(texts[j])
    ]
    for one in placed.dimensions:
        for line in [*one.lines, *chords(one.sweeps)]:
            stroke = shapely.LineString([line[:2], line[2:]])
            found += [
                f"text {name} on a line of {one.name}"
                for name, text in zip(names, texts, strict=True)
                if text.intersects(stroke)
            ]
    outline = shapely.MultiLineString([[row[:2], row[2:]] for row in drawing.tolist()])
    found += [
        f"text {name} on the drawing"
        for name, text in zip(names, texts, strict=True)
        if text.intersects(outline)
    ]
    return found


coordinates = st.floats(0.0, 1.0).map(lambda x: round(x, 3))
points = st.tuples(coordinates, coordinates)


@st.composite
def views(draw: st.DrawFn) -> tuple[np.ndarray, list[Dimension], float]:
    """A box with pieces in it, 300 to 3000 mm long, and up to 24 dimensions of all sorts."""
    wide = draw(st.sampled_from([300.0, 900.0, 1800.0, 3000.0]))
    high = draw(st.sampled_from([250.0, 450.0, 800.0]))
    scale = draw(st.sampled_from([0.5, 0.2, 0.1, 0.05, 0.02]))

    def spot() -> tuple[float, float]:
        x, y = draw(points)
        return (x * wide, y * high)

    lines = rectangle(0.0, 0.0, wide, high)
    lines += [(*spot(), *spot()) for _ in range(draw(st.integers(0, 8)))]
    dimensions = []
    for i in range(draw(st.integers(1, 24))):
        start, end = spot(), spot()
        sort = draw(st.sampled_from(["row", "row", "row", "inside", "slanted", "angle"]))
        side = 0 if sort == "inside" else draw(st.sampled_from([-1, 1]))
        if math.dist(start, end) < 1.0:
            end = (start[0] + 40.0, start[1] + 5.0)
        along = draw(st.sampled_from([LEVEL, UPRIGHT]))
        if sort == "slanted":
            gap = math.dist(start, end)
            along = ((end[0] - start[0]) / gap, (end[1] - start[1]) / gap)
        if sort == "angle":
            apex = spot()
            if min(math.dist(apex, start), math.dist(apex, end)) > 1.0:
                dimensions.append(angle(f"d{i}", apex, start, end))
                continue
        parameter = draw(st.sampled_from(["size", ""]))
        dimensions.append(
            length(f"d{i}", start, end, along, side, draw(st.integers(0, 5)), parameter)
        )
    return np.array(lines), dimensions, scale


def alike(one: Dimension, other: Dimension, scale: float) -> bool:
    """Whether two lengths stretch over the same place on one side of the view."""
    ends = [
        sorted(dot(point, one.along) for point in (each.start, each.end)) for each in (one, other)
    ]
    apart = max(abs(a - b) for a, b in zip(*ends, strict=True)) * scale
    return (one.along, one.side) == (other.along, other.side) and apart < ONE_PLACE


def dot(point: tuple[float, float], way: tuple[float, float]) -> float:
    return point[0] * way[0] + point[1] * way[1]


@settings(max_examples=150, deadline=None)
@given(views(), st.sampled_from([SHOWN_MM, SHOWN_IN32]), st.sampled_from([2.5, 3.5]))
def test_no_text_touches_anything(view, shown, text_height):
    lines, dimensions, scale = view
    placed = place(dimensions, lines, scale, DimensionStyle(text_height, shown))
    names = [one.name for one in placed.dimensions]
    assert len(set(names)) == len(names)
    for one in dimensions:
        # Of those in a running row that end in one place on paper and read alike one is enough.
        assert one.name in names or any(
            other.name in names and alike(one, other, scale) for other in dimensions
        )
    assert touching(placed, lines * scale) == []


@settings(max_examples=60, deadline=None)
@given(views())
def test_the_extent_holds_everything(view):
    lines, dimensions, scale = view
    placed = place(dimensions, lines, scale, DimensionStyle())
    left, bottom, right, top = placed.extent
    for one in placed.dimensions:
        xs = [x for x, _ in one.box.corners()] + [x for line in one.lines for x in line[0::2]]
        ys = [y for _, y in one.box.corners()] + [y for line in one.lines for y in line[1::2]]
        assert left <= min(xs) + 1e-9
        assert max(xs) <= right + 1e-9
        assert bottom <= min(ys) + 1e-9
        assert max(ys) <= top + 1e-9


def test_rows_stand_where_the_standard_puts_them():
    """First row 10 mm from the outline, the next at least 6 mm on (ASME Y14.5, from memory)."""
    lines = np.array(rectangle(0.0, 0.0, 1000.0, 400.0))
    dimensions = [
        length("overall", (0.0, 400.0), (1000.0, 400.0), rank=2),
        length("partition", (0.0, 400.0), (600.0, 400.0), rank=1),
    ]
    placed = {one.name: one for one in place(dimensions, lines, 0.1, DimensionStyle()).dimensions}
    assert placed["partition"].line[1] == pytest.approx(40.0 + 10.0)
    assert 6.0 <= placed["overall"].line[1] - placed["partition"].line[1] <= 8.0


def test_neighbours_share_a_row_and_longer_ones_stand_outside():
    lines = np.array(rectangle(0.0, 0.0, 1000.0, 400.0))
    dimensions = [
        length("left", (0.0, 0.0), (600.0, 0.0), side=-1),
        length("right", (600.0, 0.0), (1000.0, 0.0), side=-1),
        length("overall", (0.0, 0.0), (1000.0, 0.0), side=-1, rank=1),
    ]
    placed = {one.name: one for one in place(dimensions, lines, 0.1, DimensionStyle()).dimensions}
    assert placed["left"].line[1] == placed["right"].line[1] == pytest.approx(-10.0)
    assert placed["overall"].line[1] < -10.0


def test_a_short_span_turns_its_arrows_and_carries_its_text_beside():
    lines = np.array(rectangle(0.0, 0.0, 1000.0, 400.0))
    board = length("board", (1000.0, 382.0), (1000.0, 400.0), UPRIGHT)
    (placed,) = place([board], lines, 0.1, DimensionStyle()).dimensions
    low, high = placed.arrows
    assert low.pointing == (0.0, 1.0)  # from outside, toward the span
    assert high.pointing == (0.0, -1.0)
    assert not 38.2 <= placed.box.y <= 40.0


def test_derived_dimensions_are_in_brackets_and_quiet():
    lines = np.array(rectangle(0.0, 0.0, 1000.0, 400.0))
    free = length("free", (0.0, 400.0), (1000.0, 400.0))
    derived = length("derived", (0.0, 0.0), (1000.0, 0.0), side=-1, parameter="")
    placed = {
        one.name: one for one in place([free, derived], lines, 0.1, DimensionStyle()).dimensions
    }
    assert (placed["free"].text, placed["free"].role) == ("1000", Role.DIMENSION)
    assert (placed["derived"].text, placed["derived"].role) == ("(1000)", Role.DERIVED)


def test_an_angle_has_an_arc_about_its_corner():
    lines = np.array([(0.0, 0.0, 100.0, 0.0), (0.0, 0.0, 100.0, 100.0)])
    placed = place(
        [angle("mitre", (0.0, 0.0), (100.0, 0.0), (100.0, 100.0))], lines, 1.0, DimensionStyle()
    )
    (sweep,) = placed.dimensions[0].sweeps
    assert sweep.centre == (0.0, 0.0)
    assert sweep.end_deg - sweep.start_deg == pytest.approx(45.0)


def test_a_view_without_dimensions_or_lines_is_empty():
    placed = place([], np.zeros((0, 4)), 0.1, DimensionStyle())
    assert placed.dimensions == ()
    assert placed.extent == (0.0, 0.0, 0.0, 0.0)


def test_an_angle_leaves_lines_that_are_yet_to_come_whole():
    """A leg at the right end of a bench, 15 degrees off upright: the first places for its text lie
    where the end's extension line goes down from (57.5, 9.5), or within the clearance of that along
    the floor; to the left of the leg there is room, so both lines stay in one piece."""
    leg = [(53.9, 9.5, 55.0, 0.0), (55.0, 0.0, 56.6, 0.0), (56.6, 0.0, 54.0, 9.5)]
    drawing = np.array([*rectangle(0.0, 9.5, 57.5, 22.5), *leg])
    sizes = [
        length("long", (0.0, 9.5), (57.5, 9.5), side=-1),
        length("high", (57.5, 0.0), (57.5, 9.5), UPRIGHT),
        replace(angle("splay", (54.0, 9.5), (54.0, 0.0), (56.55, 0.0)), note="true"),
    ]
    style = DimensionStyle(2.5)
    placed = {one.name: one for one in place(sizes, drawing, 1.0, style).dimensions}
    assert len(placed["long"].lines) == len(placed["high"].lines) == 3
    (end,) = (line for line in placed["long"].lines if line[0] == line[2] == 57.5)
    assert end[1] == pytest.approx(9.5 - style.gap)
    (floor,) = (line for line in placed["high"].lines if line[1] == line[3] == 0.0)
    assert floor[0] == pytest.approx(57.5 + style.gap)
