"""What tests ask of a finished sheet."""

from __future__ import annotations

import math

import numpy as np
import shapely

from geometry.drawing.marks import Anchor, Arc, Fill, Label, Mark, Sheet, Strokes
from shared.lettering import text_width


def words(sheet: Sheet) -> list[str]:
    return [mark.text for mark in sheet.marks if isinstance(mark, Label)]


def ink(label: Label) -> shapely.Polygon:
    """The rectangle of a label's capitals, from its baseline up."""
    width = text_width(label.text, label.height, label.bold)
    back = {Anchor.START: 0.0, Anchor.MIDDLE: 0.5, Anchor.END: 1.0}[label.anchor] * width
    turn = math.radians(label.turn_deg)
    cos, sin = math.cos(turn), math.sin(turn)
    x, y = label.at[0] - back * cos, label.at[1] - back * sin
    along, up = (width * cos, width * sin), (-label.height * sin, label.height * cos)
    return shapely.Polygon(
        [
            (x, y),
            (x + along[0], y + along[1]),
            (x + along[0] + up[0], y + along[1] + up[1]),
            (x + up[0], y + up[1]),
        ]
    )


def overlapping_texts(sheet: Sheet) -> list[tuple[str, str]]:
    labels = [mark for mark in sheet.marks if isinstance(mark, Label) and mark.text.strip()]
    tree = shapely.STRtree([ink(label) for label in labels])
    pairs = tree.query([ink(label) for label in labels], predicate="intersects").T.tolist()
    return [(labels[i].text, labels[j].text) for i, j in pairs if i < j]


def struck_texts(sheet: Sheet) -> list[tuple[str, str]]:
    """Texts that a line or an arc runs through, each with the role of that line."""
    labels = [mark for mark in sheet.marks if isinstance(mark, Label) and mark.text.strip()]
    tree = shapely.STRtree([ink(label).buffer(-0.1) for label in labels])
    found: list[tuple[str, str]] = []
    for mark in sheet.marks:
        for line in _lines_of(mark):
            struck = tree.query(line, predicate="intersects").tolist()
            found += [(labels[k].text, mark.role.value) for k in struck]
    return found


def _lines_of(mark: Mark) -> list[shapely.LineString]:
    match mark:
        case Strokes():
            return list(shapely.linestrings(mark.segments.reshape(-1, 2, 2)))
        case Arc():
            turns = np.radians(np.linspace(mark.start_deg, mark.end_deg, 73))
            rim = np.column_stack([np.cos(turns), np.sin(turns)]) * mark.radius
            return [shapely.LineString(rim + np.array(mark.centre))]
        case Fill():
            return [shapely.Polygon(mark.points).exterior]
    return []


def bounds(mark: Mark) -> tuple[float, float, float, float]:
    match mark:
        case Strokes():
            if not len(mark.segments):
                return (0.0, 0.0, 0.0, 0.0)
            xs, ys = mark.segments[:, 0::2], mark.segments[:, 1::2]
            return (float(xs.min()), float(ys.min()), float(xs.max()), float(ys.max()))
        case Arc():
            return shapely.union_all(_lines_of(mark)).bounds
        case Fill():
            return shapely.Polygon(mark.points).bounds
        case Label():
            return ink(mark).bounds


def off_the_sheet(sheet: Sheet) -> list[Mark]:
    found = []
    for mark in sheet.marks:
        left, bottom, right, top = bounds(mark)
        if left < 0.0 or bottom < 0.0 or right > sheet.width or top > sheet.height:
            found.append(mark)
    return found
