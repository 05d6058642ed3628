"""Where things lie in the window: zoom, fit, hit and hold, without a window."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from app.scene.model import build_model
from app.scene.preferences import Preferences
from app.scene.sheet_place import SheetPlace
from app.scene.sheet_view import LEAST_DENSITY, SheetView
from app.window.samples import sample_files
from exporters.project_file import load
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.design.parameter import Value
from geometry.drawing.marks import Label
from shared.units import SHOWN_IN16
from shared.words import Words


@pytest.fixture
def view() -> SheetView:
    made = SheetView(build_model(default_spec()), Preferences())
    made.resize((1000.0, 700.0), 3.6)
    return made


@given(
    st.floats(0.5, 20.0),
    st.floats(-2000.0, 2000.0),
    st.floats(-2000.0, 2000.0),
    st.floats(-500.0, 500.0),
    st.floats(-500.0, 500.0),
)
def test_window_and_sheet_are_inverse(
    density: float, left: float, bottom: float, x: float, y: float
) -> None:
    place = SheetPlace(density, left, bottom)
    assert place.to_sheet(place.to_window((x, y))) == pytest.approx((x, y), abs=1e-6)


@settings(
    max_examples=15, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(
    st.lists(
        st.tuples(st.floats(50, 950), st.floats(50, 650), st.floats(-3, 3)), min_size=1, max_size=6
    )
)
def test_zooming_keeps_the_point_of_the_bench_under_the_pointer(
    view: SheetView, turns: list[tuple[float, float, float]]
) -> None:
    for x, y, notches in turns:
        name, point = view.laid_out.nearest_view(view.place.to_sheet((x, y)))
        view.zoom((x, y), notches)
        assert view.window_point(name, point) == pytest.approx((x, y), abs=1e-6)


@pytest.mark.parametrize("third_angle", [True, False])
@pytest.mark.parametrize("size", [(1000.0, 700.0), (700.0, 500.0), (1600.0, 900.0)])
@pytest.mark.parametrize(
    "changes",
    [
        {},
        {"length": 3400.0},
        {"length": 800.0, "flare": 0.0, "partition_count": 0.0},
    ],
)
def test_a_fitted_sheet_fits(
    changes: dict[str, float], size: tuple[float, float], third_angle: bool
) -> None:
    model = build_model(set_values(default_spec(), changes))
    view = SheetView(model, Preferences(third_angle=third_angle))
    view.resize(size, 3.6)
    assert not view.overflows()
    left, bottom, right, top = view.laid_out.extent
    used = max((right - left) * 3.6 / size[0], (top - bottom) * 3.6 / size[1])
    assert used > 0.85


REHEARSAL = next(path for path in sample_files() if path.stem == "rehearsal_room_bench")
INCHES = Preferences(shown=SHOWN_IN16, words=Words.AMERICAN)


@pytest.mark.parametrize("height", [400, 430])
@pytest.mark.parametrize(
    "changes", [{}, {"seat": "box with a lid"}, {"base": "trestles"}, {"partition_count": 3.0}]
)
def test_lettering_gives_way_before_the_bench_is_a_stamp_in_a_low_window(
    height: float, changes: dict[str, Value]
) -> None:
    """What is left of a window of 1280 by 720 with its findings open."""
    view = SheetView(build_model(set_values(default_spec(), changes)), INCHES)
    view.resize((966.0, height), 4.0)
    assert not view.overflows()
    wide, high = (side * view.pixels_per_mm for side in view.model.size)
    assert max(wide / 966.0, high / height) > 0.22
    assert view.density >= LEAST_DENSITY
    view.resize((966.0, 700.0), 4.0)
    assert view.density == 4.0, "room again: letters as large as the window's"


def test_rows_close_up_before_an_odd_bench_comes_out_small_in_a_low_window() -> None:
    """Many short sizes on a short bench: with rows far apart its views had 0.26 of the room."""
    view = SheetView(build_model(load(REHEARSAL).spec), Preferences())
    for height, rows in ((490.0, "close"), (1200.0, "apart")):
        view.resize((965.0, height), 3.6)
        tops = sorted(view.window_point("front", (0.0, 0.0))[1] - y for y in below(view))
        apart = {round((b - a) / view.density, 1) for a, b in pairwise(tops) if b - a > 0.1}
        assert min(apart) == (4.8 if rows == "close" else 6.0), rows
        wide, high = (side * view.pixels_per_mm for side in view.model.size)
        assert max(wide / 965.0, high / height) > 0.32
        assert view.density > LEAST_DENSITY


def below(view: SheetView) -> list[float]:
    """The pixels of the level dimension lines under the front elevation."""
    found = []
    for target in view.laid_out.targets:
        level = target.line[1] == target.line[3]
        if level and view.model.dimension_named[target.name].view == "front":
            found.append(view.place.to_window(target.line[:2])[1])
    floor = view.window_point("front", (0.0, 0.0))[1]
    return [y for y in found if y > floor + 1.0]


def test_what_fits_at_no_scale_is_cut_off_by_little() -> None:
    """The bench is not a stamp where that begins, and its dimensions are nearly all to be seen."""
    view = SheetView(build_model(default_spec()), INCHES)
    for height in range(340, 200, -10):
        view.resize((966.0, height), 4.0)
        if view.overflows():
            break
    assert view.overflows()
    _, bottom, _, top = view.laid_out.extent
    assert (top - bottom) * view.density < 1.05 * height
    wide, high = (side * view.pixels_per_mm for side in view.model.size)
    assert max(wide / 966.0, high / height) > 0.2
    assert view.density >= LEAST_DENSITY


def test_texts_have_one_size_at_all_scales(view: SheetView) -> None:
    heights = []
    for _ in range(5):
        view.zoom((500.0, 350.0), 3.0)
        heights.append({m.height for m in view.laid_out.marks if isinstance(m, Label)})
    assert all(each == heights[0] for each in heights)


def test_far_out_small_sizes_are_left_to_the_stick(view: SheetView) -> None:
    near = set(view.walk())
    view.zoom((500.0, 350.0), -14.0)
    far = set(view.walk())
    assert far < near
    assert "length" in far
    assert "board_thickness" not in far


def test_a_dimension_is_hit_on_its_text_and_on_its_line(view: SheetView) -> None:
    target = view.target("length")
    assert target is not None
    x0, y0, x1, y1 = target.line
    for share in (0.05, 0.3, 0.95):
        spot = view.place.to_window((x0 + share * (x1 - x0), y0 + share * (y1 - y0)))
        handle = view.handle_at(spot)
        assert handle is not None
        assert handle.dimension == "length"
    corners = view.text_corners("length")
    centre = (sum(x for x, _ in corners) / 4, sum(y for _, y in corners) / 4)
    handle = view.handle_at((centre[0], centre[1] + 10.0))
    assert handle is not None
    assert handle.dimension == "length"


def test_a_target_is_at_least_24_pixels_high(view: SheetView) -> None:
    """WCAG 2.2, 2.5.8."""
    corners = view.text_corners("length")
    x = sum(x for x, _ in corners) / 4
    y = sum(y for _, y in corners) / 4
    hits = [step for step in range(-30, 31) if (h := view.handle_at((x, y + step))) and h.dimension]
    assert max(hits) - min(hits) >= 24


def test_nothing_is_hit_between_the_views(view: SheetView) -> None:
    left, _, _, top = view.laid_out.extent
    spot = view.place.to_window((left + 5.0, top - 5.0))  # third angle: nothing at the upper left
    assert view.handle_at(spot) is None
    assert view.part_at(spot) == ""


def test_parts_are_found_in_every_view(view: SheetView) -> None:
    assert view.part_at(view.window_point("plan", (600.0, -100.0))) == "top"
    end = view.laid_out.view_names()[2]
    assert view.part_at(view.window_point(end, (180.0, 300.0)))
    assert view.part_at(view.window_point("front", (5.0, 250.0)))


def test_a_movement_in_pixels_is_a_movement_of_the_bench(view: SheetView) -> None:
    u, v = view.view_mm((36.0, -18.0))
    assert math.isclose(u * view.scale * 3.6, 36.0)
    assert math.isclose(v * view.scale * 3.6, 18.0)


def test_another_bench_leaves_the_held_point_where_it_is(view: SheetView) -> None:
    held = view.hold("plan", (0.0, 0.0))
    bigger = build_model(set_values(default_spec(), {"length": 1700.0, "depth": 500.0}))
    view.show(bigger, view.preferences, held)
    assert view.window_point("plan", (0.0, 0.0)) == pytest.approx(held.at, abs=1e-9)
