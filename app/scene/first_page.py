"""The general arrangement as it will print, for a look before writing."""

from __future__ import annotations

from datetime import date

from app.scene.model import Model
from geometry.design.project import Project
from geometry.drawing.marks import Sheet
from geometry.sheets.drawings import ARRANGEMENT, general_arrangement
from geometry.sheets.layout import Layout
from geometry.sheets.title_block import title_block_of
from shared.paper import Paper
from shared.units import Shown
from shared.words import Words


def first_page(
    project: Project,
    model: Model,
    paper: Paper,
    shown: Shown,
    words: Words,
    *,
    third_angle: bool,
    on: date,
) -> Sheet:
    """The same sheet that the drawings begin with; how many there will be is not known yet."""
    title = title_block_of(project, on).about(ARRANGEMENT).on_sheet(1, 0)
    layout = Layout(
        paper,
        third_angle=third_angle,
        shown=shown,
        words=words,
        title=title,
    )
    return general_arrangement(model.bench, model.lineworks, model.dimensions, layout)
