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
from geometry.sheets.joint_words import LISTED, joint_head, joint_title, measures_table
from geometry.sheets.layout import Layout
from geometry.sheets.leaf import Leaf, standing
from geometry.sheets.lettering_fit import fitted, wrapped
from geometry.sheets.picture_page import Composed, Picture, composed
from geometry.sheets.text_block import PITCH, TextBlock
from geometry.views.joint_scene import joint_scene
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
    scene = joint_scene(joints[0], parts)
    title = in_words(joint_title(joints, parts), layout.words)
    pictures = joint_pictures(scene, parts, layout)
    tries: list[tuple[Composed, Layout]] = []
    for listed in (LISTED, 0):  # where a table is too long, each size is told on its part's page
        tries += [
            (found, way)
            for way in (layout, standing(layout))
            if (found := _composed(pictures, title, (joints, parts), way, listed)) is not None
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
    pictures = joint_pictures(joint_scene(joints[0], parts), parts, layout, picked)
    found = _composed(pictures, title, (joints, parts), layout, LISTED)
    return None if found is None else found.marks


def _composed(
    pictures: Sequence[Picture],
    title: str,
    told: tuple[Sequence[Joint], Mapping[str, Part]],
    layout: Layout,
    listed: int,
) -> Composed | None:
    joints, parts = told
    left, _, right, _ = layout.room
    text = joint_head(joints, parts, layout, right - left)
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
        return measures_table(joints, parts, layout, width, listed)

    return composed(pictures, make_table, (deep + text.height + _AFTER_HEAD, head), layout)
