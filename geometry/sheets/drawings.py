"""The set of drawings of a bench: the general arrangement, a page for each different part and each
different joint, those of the boards that panels are glued up from among them, and last the whole
bench in pictorial views and sections."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from geometry.bench.bench import Bench
from geometry.bench.glue_ups import boards_of
from geometry.design.cutting_plane import Plane
from geometry.design.finding import Finding
from geometry.dimensioning.bench_dimensions import dimensions
from geometry.dimensioning.dimension import Dimension
from geometry.drawing.doubles import without_doubles
from geometry.drawing.marks import Sheet
from geometry.sheets.arrangement import arrange
from geometry.sheets.findings_page import findings_leaves
from geometry.sheets.joint_details import joint_leaves
from geometry.sheets.layout import Layout, furniture
from geometry.sheets.leaf import Leaf, turned_upright
from geometry.sheets.part_sheets import called, part_groups, part_leaves
from geometry.sheets.section_page import cross_section_leaf
from geometry.sheets.section_sheet import section_leaf
from geometry.sheets.template_uses import template_names
from geometry.sheets.thinning import legible
from geometry.sheets.whole_views import exploded_leaf, pictorial_leaf
from geometry.views.bench_views import bench_views
from geometry.views.linework import Linework
from geometry.views.look import look_all

ARRANGEMENT = "General arrangement drawing"
_OWN, _OTHERS = "A", ("B", "C")  # letters of sections where the maker has one of their own


def drawings(
    bench: Bench, layout: Layout, found: Sequence[Finding] = (), section: Plane | None = None
) -> tuple[Sheet, ...]:
    """All sheets in order, numbered in their title blocks; ``found`` are the findings to print, and
    ``section`` the plane in which the maker has cut the bench through, if they have.

    ``layout.title`` is the block of the set; each sheet states its own document type, number and
    scale.
    """
    boards = boards_of(bench)
    whole = part_groups(bench)
    groups, names = (*whole, *part_groups(boards)), template_names(whole)
    leaves = [
        *(
            leaf
            for group, told in zip(groups, called(groups, names), strict=True)
            for leaf in part_leaves(group, layout, told)
        ),
        *joint_leaves(bench, layout),
        *joint_leaves(boards, layout),
        *_whole_leaves(bench, layout, section),
        *findings_leaves(found, layout),
    ]
    count = 1 + len(leaves)
    first = _titled(layout, ARRANGEMENT, 1, count)
    lineworks = look_all(bench.parts, bench_views(bench))
    sheets = [general_arrangement(bench, lineworks, dimensions(bench), first)]
    for number, leaf in enumerate(leaves, start=2):
        own = _titled(leaf.layout, leaf.kind, number, count, leaf.title)
        marks = (*furniture(own, leaf.scale), *without_doubles(leaf.marks))
        sheets.append(Sheet(leaf.title, own.paper.width, own.paper.height, marks))
    return tuple(sheets)


def _whole_leaves(bench: Bench, layout: Layout, section: Plane | None) -> list[Leaf]:
    """Pages of the whole bench, behind those of its parts and joints; a section of the maker's own
    comes before the others, and has the first letter."""
    leaves = [pictorial_leaf(bench, layout), exploded_leaf(bench, layout)]
    own = section_leaf(bench, section, layout, _OWN) if section is not None else None
    if own is None:
        return [*leaves, cross_section_leaf(bench, layout)]
    return [*leaves, own, cross_section_leaf(bench, layout, _OTHERS)]


def general_arrangement(
    bench: Bench, lineworks: Sequence[Linework], shown: Sequence[Dimension], layout: Layout
) -> Sheet:
    """The three views, on the paper upright where that draws them larger."""
    lying = arrange(bench, lineworks, shown, layout)
    upright = arrange(bench, lineworks, shown, turned_upright(layout))
    chosen = upright if upright.places[0].scale > lying.places[0].scale else lying
    return replace(chosen.sheet, marks=without_doubles(legible(chosen.sheet.marks)))


def _titled(layout: Layout, kind: str, number: int, count: int, part: str | None = None) -> Layout:
    if layout.title is None:
        return layout
    return replace(layout, title=layout.title.about(kind, part).on_sheet(number, count))
