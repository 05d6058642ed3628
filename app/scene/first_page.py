"""The general arrangement as it will print, for a look before writing."""

from __future__ import annotations

from app.paper_order import PaperOrder
from app.scene.model import Model
from geometry.drawing.marks import Sheet
from geometry.sheets.drawings import ARRANGEMENT, general_arrangement
from geometry.sheets.layout import Layout
from geometry.sheets.title_block import title_block_of


def first_page(order: PaperOrder, model: Model) -> Sheet:
    """The same sheet that the drawings begin with; how many there will be is not known yet."""
    title = title_block_of(order.project, order.on).about(ARRANGEMENT).on_sheet(1, 0)
    layout = Layout(
        order.paper,
        third_angle=order.third_angle,
        shown=order.shown,
        words=order.words,
        title=title,
    )
    return general_arrangement(model.bench, model.lineworks, model.dimensions, layout)
