"""The pictures of a joint's detail: together, drawn apart, cut through, and each part alone.

Frame: sheet mm about each picture's own origin.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace

import numpy as np

from geometry.cuts.cut import Cut
from geometry.design.part import Part, Shape
from geometry.dimensioning.dimension import Dimension
from geometry.dimensioning.dimension_marks import dimension_marks
from geometry.dimensioning.placed import Placed
from geometry.dimensioning.placement import place
from geometry.drawing.marks import Anchor, Label, Mark, Role, Strokes
from geometry.primitives.frame import Vec2, Vec3
from geometry.sheets.arrangement import linework_marks
from geometry.sheets.centre_lines import centre_lines
from geometry.sheets.joint_choice import Chosen
from geometry.sheets.joint_figures import PartFigure, SectionFigure
from geometry.sheets.joint_outlines import marked_edges, shown_edges
from geometry.sheets.joint_pictorial import JointPictorial, joint_pictorial
from geometry.sheets.joint_plan import JointPlan
from geometry.sheets.joint_words import seen_from, short_titles, side_words
from geometry.sheets.label_spots import spots_of
from geometry.sheets.layout import Layout, Room, scale_text
from geometry.sheets.part_labels import Named, label_marks, named
from geometry.sheets.picked_place import ring
from geometry.sheets.pictures import Drawn, Picture
from geometry.sheets.section_marks import section_marks
from geometry.solids.solid import Flags, Floats
from geometry.views.breaks import Broken, broken
from geometry.views.joint_scene import JointPart, JointScene, beyond_breaks
from geometry.views.linework import Linework
from geometry.views.round_axes import round_axes
from geometry.views.sections import section
from geometry.views.view import View
from shared.lettering import text_width
from shared.words import in_words

_CAPTION_AIR = 3.0  # mm between a picture and its caption
_NAMES = 14.0  # mm round a picture in which names may stand
_POINT = 1e-6
_BESIDE = 6.0  # mm of the bench


def joint_pictures(
    plan: JointPlan, parts: Mapping[str, Part], layout: Layout, picked: Vec3 | None = None
) -> tuple[Picture, ...]:
    """All pictures of a joint in their order; ``parts`` are the bench's by name.

    Where the parts stand as they do in the bench, a ring goes round the point that is picked out.
    """
    scene = plan.scene
    pictorial = joint_pictorial(scene, parts)
    flat = [
        _section_picture(one, one.figure, scene, (layout, picked))
        if isinstance(one.figure, SectionFigure)
        else _part_picture(one, one.figure, scene, layout)
        for one in plan.views
    ]
    return (_together(pictorial, layout, picked), _apart(pictorial, layout), *flat)


def _together(pictorial: JointPictorial, layout: Layout, picked: Vec3 | None) -> Picture:
    lines = pictorial.together
    bounds = _bounds(_all(lines))

    def draw(scale: float) -> Drawn:
        def marks() -> list[Mark]:
            rings = _rings(picked, lines.linework.view, scale, bounds)
            return _line_marks(lines, scale, ("", "")) + rings

        return _captioned(marks, _scaled(bounds, scale), "Together", layout)

    # As large as its fellow.
    return Picture(_size(_everything(pictorial)), draw, to_scale=False)


def _apart(pictorial: JointPictorial, layout: Layout) -> Picture:
    lines = pictorial.apart
    every = _everything(pictorial)
    bounds = _bounds(every)
    spots = spots_of(pictorial.parts, lines.linework.view, every)
    texts = [in_words(name, layout.words) for name in short_titles(pictorial.parts)]

    def draw(scale: float) -> Drawn:
        extent = _scaled(bounds, scale)
        room = _widened(extent, (_NAMES + 20.0, _NAMES))
        here = [one.scaled(scale) for one in spots]
        labels = named(texts, here, every * scale, layout.lettering, room)
        for label in labels:
            extent = _around(extent, label)

        def marks() -> list[Mark]:
            found = _line_marks(lines, scale, tuple(f"part:{p.name}" for p in pictorial.parts))
            for role, segments in ((Role.CENTRE, pictorial.ties), (Role.SCRIBE, pictorial.marked)):
                if len(segments):
                    found.append(Strokes(role, segments * scale))
            return found + label_marks(labels, (0.0, 0.0), layout.lettering)

        return _captioned(marks, extent, "Drawn apart", layout)

    def at_least(scale: float) -> Vec2:
        """Without the names, whose places take long to find."""
        return _captioned(list, _scaled(bounds, scale), "Drawn apart", layout).size

    return Picture(_size(every), draw, to_scale=False, at_least=at_least)


def _section_picture(
    one: Chosen,
    figure: SectionFigure,
    scene: JointScene,
    way: tuple[Layout, Vec3 | None],
) -> Picture:
    layout, picked = way
    found = section(scene.parts, figure.view, figure.at)
    cut = dict(found.left)
    left = [replace(p, part=cut.get(k, p.part)) for k, p in enumerate(scene.both)]
    seen = found.linework.visible
    lines = broken(_chosen_lines(found.linework, seen), left)
    shown = replace(found, linework=lines.linework)

    def draw(scale: float) -> Drawn:
        placed = _placed(lines, one.dimensions, scale, layout)

        def marks() -> list[Mark]:
            boxes = [dimension.box for dimension in placed.dimensions]
            found = section_marks(shown, scene.parts, scale, (0.0, 0.0), boxes)
            found += centre_lines(_with_own_cuts(scene), figure.view, scale, boxes, figure.at)
            found += [*_break_marks(lines, scale), *dimension_marks(placed, (0.0, 0.0))]
            return found + _rings(picked, figure.view, scale, _bounds(_all(lines)))

        caption = f"Section {seen_from(figure.view)}, {scale_text(scale)}"
        return _captioned(marks, placed.extent, caption, layout)

    return Picture(_size(_all(lines)), draw)


def _part_picture(one: Chosen, figure: PartFigure, scene: JointScene, layout: Layout) -> Picture:
    lines = figure.lines
    part, title = scene.parts[figure.index], short_titles(scene.parts)[figure.index]

    def draw(scale: float) -> Drawn:
        placed = _placed(lines, one.dimensions, scale, layout)

        def marks() -> list[Mark]:
            found = _line_marks(lines, scale, (f"part:{part.name}",))
            marked = _touching_marks(figure, scene)
            if len(marked):
                found.append(Strokes(Role.SCRIBE, marked * scale))
            boxes = [dimension.box for dimension in placed.dimensions]
            own = _with_own_cuts(scene)[figure.index]
            found += centre_lines((own,), figure.view, scale, boxes)
            return [*found, *dimension_marks(placed, (0.0, 0.0))]

        caption = f"{title}: {side_words(figure.side.name, part)}, {scale_text(scale)}"
        return _captioned(marks, placed.extent, caption, layout)

    return Picture(_size(_all(lines)), draw)


def _with_own_cuts(scene: JointScene) -> tuple[Part, ...]:
    """Both blanks with nothing but what the joint cuts and the detail shows, for the centre lines
    of that."""
    cuts = (scene.joint.cuts_first, scene.joint.cuts_second)
    return tuple(
        replace(
            one.whole,
            shape=Shape(
                one.whole.shape.blank, tuple(cut for cut in own if not _cut_short(cut, one))
            ),
        )
        for one, own in zip(scene.both, cuts, strict=True)
    )


def _cut_short(cut: Cut, one: JointPart) -> bool:
    """Whether something round stands where the part is not shown."""
    axes = round_axes(Shape(one.whole.shape.blank, (cut,)))
    middles = [one.whole.frame.to_bench(axis.start) for axis in axes]
    return bool(beyond_breaks(np.array(middles).reshape(-1, 3), one).any())


def _rings(picked: Vec3 | None, view: View, scale: float, bounds: Room) -> list[Mark]:
    """Round a point that lies in a picture, or a little beside it; none round one farther away."""
    if picked is None:
        return []
    u, v = view.project(picked)
    left, bottom, right, top = _widened(bounds, (_BESIDE, _BESIDE))
    return [ring(picked, view, scale)] if left <= u <= right and bottom <= v <= top else []


def _placed(lines: Broken, dimensions: Sequence[Dimension], scale: float, layout: Layout) -> Placed:
    """The dimensions round and in a flat view."""
    return place(dimensions, _all(lines), scale, replace(layout.style, brackets=False))


def _captioned(
    marks: Callable[[], Sequence[Mark]], extent: Room, words: str, layout: Layout
) -> Drawn:
    """A picture with its caption under the middle of it."""
    left, bottom, right, top = extent
    height = layout.lettering
    text = in_words(words, layout.words)
    middle, half = (left + right) / 2.0, text_width(text, height) / 2.0
    foot = bottom - _CAPTION_AIR - height
    caption = Label(Role.TITLE, text, (middle, foot), height, Anchor.MIDDLE)
    under = foot - 0.4 * height
    return Drawn(
        (min(left, middle - half), under, max(right, middle + half), top),
        lambda: (*marks(), caption),
    )


def _line_marks(lines: Broken, scale: float, owners: tuple[str, ...]) -> list[Mark]:
    return linework_marks(lines.linework, scale, (0.0, 0.0), owners) + _break_marks(lines, scale)


def _break_marks(lines: Broken, scale: float) -> list[Mark]:
    return [Strokes(Role.BREAK, lines.ends * scale)] if len(lines.ends) else []


def _touching_marks(figure: PartFigure, scene: JointScene) -> Floats:
    """Where the other part lies on this one, when that is to be marked; (n, 4)."""
    marked = marked_edges(scene.joint, figure.index)
    flat = np.array((figure.view.right, figure.view.up)).T
    shown = shown_edges(marked, (scene.both[figure.index],))
    edges = (shown @ flat).reshape(-1, 4)
    long = np.hypot(edges[:, 2] - edges[:, 0], edges[:, 3] - edges[:, 1]) > _POINT
    return np.asarray(edges[long])


def _chosen_lines(linework: Linework, kept: Flags) -> Linework:
    return Linework(
        linework.view, linework.segments[kept], linework.visible[kept], linework.owner[kept]
    )


def _all(lines: Broken) -> Floats:
    return np.concatenate([lines.linework.segments, lines.ends])


def _everything(pictorial: JointPictorial) -> Floats:
    """All lines of the parts drawn apart, (n, 4)."""
    return np.concatenate([_all(pictorial.apart), pictorial.ties, pictorial.marked])


def _bounds(lines: Floats) -> Room:
    points = lines.reshape(-1, 2)
    (left, bottom), (right, top) = points.min(axis=0).tolist(), points.max(axis=0).tolist()
    return (left, bottom, right, top)


def _size(lines: Floats) -> tuple[float, float]:
    left, bottom, right, top = _bounds(lines)
    return (right - left, top - bottom)


def _scaled(bounds: Room, scale: float) -> Room:
    left, bottom, right, top = bounds
    return (left * scale, bottom * scale, right * scale, top * scale)


def _widened(extent: Room, by: tuple[float, float]) -> Room:
    left, bottom, right, top = extent
    return (left - by[0], bottom - by[1], right + by[0], top + by[1])


def _around(extent: Room, label: Named) -> Room:
    """An extent grown to hold a name."""
    left, bottom, right, top = extent
    x, y, w, h = label.box.x, label.box.y, label.box.half_width, label.box.half_height
    return (min(left, x - w), min(bottom, y - h), max(right, x + w), max(top, y + h))
