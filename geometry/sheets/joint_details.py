"""A page for every joint: how it looks, how it goes together, and all that a maker marks out.

Joints that are made alike share a page that says where they are.  Frame: sheet mm.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from geometry.bench.bench import Bench
from geometry.design.joint import Joint
from geometry.design.part import Part
from geometry.drawing.marks import Label, Mark, Role
from geometry.primitives.frame import Vec2, Vec3
from geometry.sheets.joint_groups import joint_groups
from geometry.sheets.joint_pictures import joint_pictures
from geometry.sheets.joint_plan import joint_plan
from geometry.sheets.joint_words import (
    LISTED,
    joint_head,
    joint_title,
    measure_rows,
    measures_table,
)
from geometry.sheets.layout import Layout
from geometry.sheets.leaf import Leaf, turned_upright
from geometry.sheets.lettering_fit import fitted, wrapped
from geometry.sheets.picture_page import Composed, composed
from geometry.sheets.pictures import Easel
from geometry.sheets.text_block import PITCH, TextBlock
from shared.words import in_words

_TITLE_HEIGHT, _LEAST_TITLE = 5.0, 3.5
_AFTER_TITLE, _AFTER_HEAD = 3.0, 4.0


def joint_leaves(bench: Bench, layout: Layout) -> tuple[Leaf, ...]:
    """The details of all joints of a bench, alike ones together."""
    parts = {part.name: part for part in bench.parts}
    return tuple(joint_leaf(group, parts, layout) for group in joint_groups(bench.joints, parts))


def joint_leaf(joints: Sequence[Joint], parts: Mapping[str, Part], layout: Layout) -> Leaf:
    """The detail of joints that are made alike; the first of them is drawn.

    The sheet lies or stands, whichever shows it larger.  Raises CannotBuild as any solid.
    """
    detail = _Detail(joints, parts, layout)
    for listed in (LISTED, 0):  # where a table is too long, each size is told on its part's page
        tries = [
            (found, way)
            for way in (layout, turned_upright(layout))
            if (found := detail.on(way, listed)) is not None
        ]
        if tries:
            break
    assert tries, detail.title
    best, way = max(tries, key=lambda one: one[0].filled)
    return Leaf("Joint detail", detail.title, None, best.marks(), way)


def joint_marks(
    joints: Sequence[Joint],
    parts: Mapping[str, Part],
    layouts: Sequence[Layout],
    picked: Vec3 | None = None,
) -> tuple[tuple[Mark, ...], Layout] | None:
    """The same on a sheet that cannot be turned, such as a window: on the first of some that differ
    in their size alone and is not too small; None if all are.

    A ring goes round the point of the bench that is picked out.
    """
    detail = _Detail(joints, parts, layouts[0], picked)
    fitting = ((found, way) for way in layouts if (found := detail.on(way, LISTED)) is not None)
    best = next(fitting, None)
    return None if best is None else (best[0].marks(), best[1])


class _Detail:
    """What the page of some joints of the parts shows, worked out once for sheets of any size; the
    pictures are as the first layout has them."""

    def __init__(
        self,
        joints: Sequence[Joint],
        parts: Mapping[str, Part],
        layout: Layout,
        picked: Vec3 | None = None,
    ) -> None:
        self._joints, self._parts, self._layout = joints, parts, layout
        self.title = in_words(joint_title(joints, parts), layout.words)
        plan = joint_plan(joints, parts)
        self._unplaced = plan.unplaced
        self._easel = Easel(joint_pictures(plan, parts, layout, picked))

    def on(self, way: Layout, listed: int) -> Composed | None:
        """The page on a sheet, with sizes that differ told of no more than so many joints; None if
        the sheet is too small."""
        rows = measure_rows(self._joints, self._parts, self._unplaced, self._layout, listed)
        text = joint_head(self._joints, self._parts, way, way.room[2] - way.room[0])
        return _composed(self._easel, self.title, (text, rows), way)


def _composed(
    easel: Easel,
    title: str,
    told: tuple[TextBlock, Sequence[tuple[str, str]]],
    layout: Layout,
) -> Composed | None:
    """The page with what is told of the joints: a text, and the rows of a table."""
    text, rows = told
    left, _, right, _ = layout.room
    _, height = fitted(title, right - left, _TITLE_HEIGHT, bold=True)
    height = max(height, _LEAST_TITLE)
    lines = wrapped(title, right - left, height, bold=True)
    deep = height + (len(lines) - 1) * PITCH * height + _AFTER_TITLE

    def head(corner: Vec2) -> list[Mark]:
        x, y = corner
        marks: list[Mark] = [
            Label(Role.TITLE, words, (x, y - height - k * PITCH * height), height, bold=True)
            for k, words in enumerate(lines)
        ]
        return [*marks, *text.marks((x, y - deep))]

    def make_table(width: float) -> TextBlock:
        return measures_table(rows, layout, width)

    return composed(easel, make_table, (deep + text.height + _AFTER_HEAD, head), layout)
