"""A page before its border and title block, with the way its sheet lies."""

from __future__ import annotations

from dataclasses import dataclass, replace

from geometry.drawing.marks import Mark
from geometry.sheets.layout import Layout


@dataclass(frozen=True, slots=True, eq=False)
class Leaf:
    """A title, the scale that the page states (None for 'as shown'), its marks and its layout.

    ``kind`` is the document type of its title block.
    """

    kind: str
    title: str
    scale: float | None
    marks: tuple[Mark, ...]
    layout: Layout


def turned_upright(layout: Layout) -> Layout:
    """The same with its paper standing upright."""
    paper = layout.paper
    return replace(layout, paper=replace(paper, width=paper.height, height=paper.width))
