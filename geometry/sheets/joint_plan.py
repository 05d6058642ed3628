"""What a joint's detail shows: its views with their dimensions, and what words must tell besides.

Method: the views tell the joint's own measures (see ``joint_choice``); what they leave out of the
places that a maker has to mark on either part is dimensioned from the part's reference faces (see
``set_out``).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import partial

from geometry.design.joint import Joint
from geometry.design.part import Part
from geometry.dimensioning.dimension import Dimension
from geometry.sheets.joint_choice import PLAIN, Chosen, chosen, fronts
from geometry.sheets.joint_figures import PartFigure, SectionFigure, part_figures
from geometry.sheets.joint_lines import MarkedLines, marked_lines
from geometry.sheets.joint_outlines import has_cuts
from geometry.sheets.measure_lines import places
from geometry.sheets.set_out import Offered, set_out
from geometry.sheets.ties import tied
from geometry.views.joint_scene import JointScene, joint_scene
from geometry.views.view import View

_MOST = 6  # flat views on a page


@dataclass(frozen=True, slots=True)
class Unplaced:
    """Lines of the joint's first (0) or second part whose place along an axis (0 along, 1 across,
    2 through) no dimension shows."""

    index: int
    axis: int


@dataclass(frozen=True, slots=True, eq=False)
class JointPlan:
    """The first of some joints alike, its flat views, and what must be told in words."""

    scene: JointScene
    views: tuple[Chosen, ...]
    unplaced: tuple[Unplaced, ...]


def joint_plan(joints: Sequence[Joint], parts: Mapping[str, Part]) -> JointPlan:
    """The plan of a detail for joints that are made alike; ``parts`` are the bench's by name.

    Raises CannotBuild as any solid.
    """
    scene = joint_scene(joints[0], parts)
    views = list(chosen(scene))
    unplaced: list[Unplaced] = []
    for index, one in enumerate(scene.both):
        if not has_cuts(scene.joint):
            break
        lines = marked_lines(scene.joint, one.whole, index)
        if not lines.placed.any():
            continue
        ties = tied(scene.joint, one.whole, index, lines, _dimensions_of(scene, views, index))
        alike = partial(_lines_of, joints[1:], parts, index)
        added, in_words = set_out(one, ties, _offered(scene, views, index), alike)
        for new in added:
            views = _with(views, new.figure, new.dimension)
        views = _out_of_sections(scene.joint, views, [new.figure for new in added])
        unplaced += [Unplaced(index, axis) for axis in in_words]
    return JointPlan(scene, tuple(views), tuple(unplaced))


def _lines_of(
    joints: Sequence[Joint], parts: Mapping[str, Part], index: int
) -> tuple[MarkedLines, ...]:
    """What each of some joints makes a maker mark on one of its parts."""
    return tuple(marked_lines(joint, parts[joint.parts[index]], index) for joint in joints)


def _offered(scene: JointScene, views: Sequence[Chosen], index: int) -> Offered:
    """The views of one part that are there, and those that there is room for."""
    shown = tuple(
        one.figure
        for one in views
        if isinstance(one.figure, PartFigure) and one.figure.index == index
    )
    sides = {figure.side.name for figure in shown}
    more = fronts(part_figures(scene, index)) if len(views) < _MOST else []
    return Offered(shown, tuple(figure for figure in more if figure.side.name not in sides))


def _dimensions_of(
    scene: JointScene, views: Sequence[Chosen], index: int
) -> list[tuple[View, Dimension]]:
    """The dimensions that tell something of one part: in its own views, and in sections."""
    names = {measure.name for measure in scene.joint.measures if index in measure.found_on}
    return [
        (one.figure.view, dimension)
        for one in views
        for dimension in one.dimensions
        if (isinstance(one.figure, SectionFigure) and dimension.name in names)
        or (isinstance(one.figure, PartFigure) and one.figure.index == index)
    ]


def _with(views: Sequence[Chosen], figure: PartFigure, dimension: Dimension) -> list[Chosen]:
    """The views with one dimension more; a view that is not there yet comes after its fellows."""
    found = [
        replace(one, dimensions=(*one.dimensions, dimension)) if one.figure is figure else one
        for one in views
    ]
    if all(one.figure is not figure for one in views):
        found.append(Chosen(figure, (dimension,)))
    return found


def _out_of_sections(
    joint: Joint, views: Sequence[Chosen], figures: Sequence[PartFigure]
) -> list[Chosen]:
    """What stands in a section, and is plain on its own part now that a view of it has come."""
    found = list(views)
    for section in [one for one in views if isinstance(one.figure, SectionFigure)]:
        for dimension in section.dimensions:
            measure = next(one for one in joint.measures if one.name == dimension.name)
            tried = [
                (place.cost, number, place.dimension)
                for number, figure in enumerate(figures)
                if measure.found_on == (figure.index,)
                for place in places((measure,), figure.outlines)
                if place.cost < PLAIN
            ]
            if tried:
                _, number, moved = min(tried, key=lambda one: one[:2])
                found = _without(_with(found, figures[number], moved), section, dimension)
    return found


def _without(views: Sequence[Chosen], section: Chosen, dimension: Dimension) -> list[Chosen]:
    return [
        replace(one, dimensions=tuple(d for d in one.dimensions if d is not dimension))
        if one.figure is section.figure
        else one
        for one in views
    ]
