"""A page for every joint: how it looks, how it goes together, and all that a maker marks out.

Joints that are made alike share a page that says where they are.  Frame: sheet mm.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

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
from geometry.sheets.leaf import Leaf, standing
from geometry.sheets.lettering_fit import fitted, wrapped
from geometry.sheets.picture_page import Composed, Picture, composed
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
    plan = joint_plan(joints, parts)
    title = in_words(joint_title(joints, parts), layout.words)
    pictures = joint_pictures(plan, parts, layout)
    tries: list[tuple[Composed, Layout]] = []
    for listed in (LISTED, 0):  # where a table is too long, each size is told on its part's page
        told = _Told(joints, parts, measure_rows(joints, parts, plan.unplaced, layout, listed))
        tries += [
            (found, way)
            for way in (layout, standing(layout))
            if (found := _composed(pictures, title, told, way)) is not None
        ]
        if tries:
            break
    assert tries, title
    best, way = max(tries, key=lambda one: one[0].filled)
    return Leaf("Joint detail", title, None, best.marks, way)


def joint_marks(
    joints: Sequence[Joint],
    parts: Mapping[str, Part],
    layout: Layout,
    picked: Vec3 | None = None,
) -> tuple[Mark, ...] | None:
    """The same on a sheet that cannot be turned, such as a window; None if it is too small.

    A ring goes round the point of the bench that is picked out.
    """
    title = in_words(joint_title(joints, parts), layout.words)
    plan = joint_plan(joints, parts)
    pictures = joint_pictures(plan, parts, layout, picked)
    told = _Told(joints, parts, measure_rows(joints, parts, plan.unplaced, layout))
    found = _composed(pictures, title, told, layout)
    return None if found is None else found.marks


@dataclass(frozen=True, slots=True)
class _Told:
    """What the page says of some joints of the parts, and the rows of its table."""

    joints: Sequence[Joint]
    parts: Mapping[str, Part]
    rows: Sequence[tuple[str, str]]


def _composed(
    pictures: Sequence[Picture],
    title: str,
    told: _Told,
    layout: Layout,
) -> Composed | None:
    left, _, right, _ = layout.room
    text = joint_head(told.joints, told.parts, layout, right - left)
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
        return measures_table(told.rows, layout, width)

    return composed(pictures, make_table, (deep + text.height + _AFTER_HEAD, head), layout)
