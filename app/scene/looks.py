"""The bench otherwise than in elevations: pictorial, taken apart, cut through; and joint details.

Marks for a window of any size, in mm of a sheet without border and title block.  What draws them is
imported when it is first asked for, as the window starts with the elevations.
"""

from __future__ import annotations

from collections.abc import Sequence
from enum import Enum
from typing import TYPE_CHECKING

from app.scene.laying_out import TEXT_HEIGHT
from app.scene.preferences import Preferences
from geometry.bench.bench import Bench
from geometry.design.joint import Joint
from geometry.drawing.marks import Mark
from geometry.primitives.frame import Vec3
from geometry.sheets.layout import Layout
from shared.paper import Paper

if TYPE_CHECKING:
    from geometry.design.cutting_plane import Plane
    from geometry.sheets.figure_page import WholeSheet
    from geometry.sheets.section_sheet import SectionSheet

LARGER = (1.0, 1.25, 1.6, 2.0, 2.6, 3.4)
"""A detail that does not fit the window is drawn on a larger sheet and shown smaller."""


class Look(Enum):
    """What the drawing shows; the value is its word."""

    ELEVATIONS = "Elevations"
    PICTORIAL = "Pictorial"
    APART = "Taken apart"
    SECTION = "Section"


WAY_BACK = {
    Look.ELEVATIONS: "Back to the elevations",
    Look.PICTORIAL: "Back to the pictorial view",
    Look.APART: "Back to the bench taken apart",
    Look.SECTION: "Back to the section",
}
"""What takes a maker back who has opened a joint there."""


def screen_layout(wide: float, high: float, preferences: Preferences) -> Layout:
    """A sheet of so many mm that fills a window."""
    return Layout(
        Paper("screen", wide, high, 0.0, 0.0, "as large as the window"),
        third_angle=preferences.third_angle,
        text_height=TEXT_HEIGHT,
        shown=preferences.shown,
        words=preferences.words,
        frame=False,
    )


def whole_sheet(
    bench: Bench,
    look: Look,
    layout: Layout,
    picked: Vec3 | None = None,
    gathered: tuple[str, ...] = (),
) -> WholeSheet:
    """The whole bench together or taken apart, with a ring round what is picked out; taken apart,
    it is on those of the gathered parts that it lies on."""
    from geometry.sheets.whole_views import exploded_sheet, pictorial_sheet

    if look is Look.PICTORIAL:
        return pictorial_sheet(bench, layout, picked)
    return exploded_sheet(bench, layout, picked, gathered)


def cut_through(
    bench: Bench,
    plane: Plane,
    layout: Layout,
    picked: Vec3 | None = None,
    *,
    with_names: bool = True,
) -> SectionSheet:
    """The bench cut by a plane, beside a view in which the plane can be pulled and turned."""
    from geometry.sheets.section_sheet import section_sheet

    return section_sheet(bench, plane, layout, picked, with_names=with_names)


def detail_of(
    bench: Bench,
    joints: Sequence[Joint],
    size: tuple[float, float],
    preferences: Preferences,
    picked: Vec3 | None = None,
) -> tuple[tuple[Mark, ...], float]:
    """The detail of joints that are made alike, and how much larger than ``size`` its sheet is."""
    from geometry.sheets.joint_details import joint_marks

    wide, high = size
    sheets = {screen_layout(wide * k, high * k, preferences): k for k in LARGER}
    parts = {part.name: part for part in bench.parts}
    found = joint_marks(joints, parts, tuple(sheets), picked)
    return ((), 1.0) if found is None else (found[0], sheets[found[1]])
