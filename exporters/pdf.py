"""Sheets to PDF: vector lines, embedded fonts, bookmarks, and the same bytes for the same sheets.

Sheet millimetres become points here (1 mm = 72/25.4 pt) and nowhere else.  The ink is black and
grey, so that a laser printer lays down clean narrow lines.  The date is passed in.  For full-size
sheets the reader is asked not to scale the page (ISO 32000-2 table 147: PrintScaling None, held
to by Enforce); not all obey, so such sheets carry squares to measure.

Method: reportlab writes the pages; pikepdf then sets what reportlab cannot: the dates of the
document's information and the viewer's preferences that it does not know.
"""

from __future__ import annotations

import io
import math
from collections.abc import Sequence
from datetime import date

import pikepdf
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen.canvas import Canvas
from reportlab.pdfgen.pathobject import PDFPathObject

from geometry.drawing.chains import chains
from geometry.drawing.marks import Anchor, Arc, Fill, Label, Mark, Role, Sheet, Strokes
from shared.lettering import em_size, font_name, font_path, text_width
from shared.line_styles import LINE_STYLES

POINTS_PER_MM = 72.0 / 25.4
_BLACK = 0.0
_QUIET = 0.38  # grey that still reads at 5:1 on white
_QUIET_ROLES = frozenset(
    {Role.HIDDEN, Role.CENTRE, Role.DERIVED, Role.GRID, Role.HATCH, Role.BREAK}
)
_ROUND, _BUTT = 1, 0
_PROGRAM = "Settlewright"


def pdf_bytes(
    sheets: Sequence[Sheet],
    *,
    title: str,
    on: date,
    author: str = "",
    subject: str = "",
    full_size: bool = False,
) -> bytes:
    """The sheets as one PDF, a page and a bookmark each; ``on`` is the date it carries."""
    buffer = io.BytesIO()
    for bold in (False, True):
        pdfmetrics.registerFont(TTFont(font_name(bold), font_path(bold)))
    # Uncompressed here: pikepdf compresses the pages when it saves them.
    canvas = Canvas(
        buffer, initialFontName=font_name(), invariant=1, lang="en-GB", pageCompression=0
    )
    canvas.setTitle(title)
    canvas.setAuthor(author or _PROGRAM)
    canvas.setSubject(subject)
    canvas.setCreator(_PROGRAM)
    canvas.setViewerPreference("DisplayDocTitle", "true")
    if full_size:
        canvas.setViewerPreference("PrintScaling", "None")
    for number, sheet in enumerate(sheets, start=1):
        _page(canvas, sheet, f"sheet{number}")
    canvas.save()
    return _finished(buffer.getvalue(), on, full_size=full_size)


def _finished(raw: bytes, on: date, *, full_size: bool) -> bytes:
    out = io.BytesIO()
    with pikepdf.open(io.BytesIO(raw)) as pdf:
        stamp = f"D:{on:%Y%m%d}000000Z"
        pdf.docinfo["/CreationDate"] = stamp
        pdf.docinfo["/ModDate"] = stamp
        # reportlab's identifier depends on the environment (SOURCE_DATE_EPOCH); a new one is made.
        del pdf.trailer["/ID"]
        if full_size:
            preferences = pdf.Root.ViewerPreferences
            preferences.PickTrayByPDFSize = True
            preferences.Enforce = pikepdf.Array([pikepdf.Name.PrintScaling])
        pdf.save(out, deterministic_id=True, min_version="1.7")
    return out.getvalue()


def _page(canvas: Canvas, sheet: Sheet, key: str) -> None:
    canvas.setPageSize((sheet.width * POINTS_PER_MM, sheet.height * POINTS_PER_MM))
    canvas.bookmarkPage(key)
    canvas.addOutlineEntry(sheet.title, key)
    canvas.scale(POINTS_PER_MM, POINTS_PER_MM)
    canvas.setLineJoin(_ROUND)
    for mark in sheet.marks:
        _draw(canvas, mark)
    canvas.showPage()


def _draw(canvas: Canvas, mark: Mark) -> None:
    match mark:
        case Strokes():
            _set_line(canvas, mark.role)
            canvas.drawPath(_strokes_path(canvas, mark))
        case Arc():
            _set_line(canvas, mark.role)
            path = canvas.beginPath()
            (x, y), r = mark.centre, mark.radius
            path.arc(x - r, y - r, x + r, y + r, mark.start_deg, mark.end_deg - mark.start_deg)
            canvas.drawPath(path)
        case Fill():
            canvas.setFillGray(_grey(mark.role))
            path = canvas.beginPath()
            path.moveTo(*mark.points[0])
            for point in mark.points[1:]:
                path.lineTo(*point)
            path.close()
            canvas.drawPath(path, stroke=0, fill=1)
        case Label():
            _label(canvas, mark)


def _strokes_path(canvas: Canvas, strokes: Strokes) -> PDFPathObject:
    """One path; a segment that starts where the last one ended goes on with it.

    Dashes run on round a curve, in whatever order its segments come.
    """
    path = canvas.beginPath()
    if LINE_STYLES[strokes.role.value].dashes:
        for first, *others in chains(strokes.segments):
            path.moveTo(*first)
            for point in others:
                path.lineTo(*point)
        return path
    pen: tuple[float, float] | None = None
    for x0, y0, x1, y1 in strokes.segments.tolist():
        if pen != (x0, y0):
            path.moveTo(x0, y0)
        path.lineTo(x1, y1)
        pen = (x1, y1)
    return path


def _set_line(canvas: Canvas, role: Role) -> None:
    style = LINE_STYLES[role.value]
    canvas.setLineWidth(style.width)
    canvas.setStrokeGray(_grey(role))
    canvas.setLineCap(_BUTT if style.dashes else _ROUND)
    canvas.setDash(list(style.dashes), 0)


def _label(canvas: Canvas, label: Label) -> None:
    name = font_name(label.bold)
    canvas.setFillGray(_grey(label.role))
    turn = math.radians(label.turn_deg)
    cos, sin = math.cos(turn), math.sin(turn)
    shift = {Anchor.START: 0.0, Anchor.MIDDLE: 0.5, Anchor.END: 1.0}[label.anchor]
    back = shift * text_width(label.text, label.height, label.bold)
    text = canvas.beginText()
    text.setTextTransform(cos, sin, -sin, cos, label.at[0] - back * cos, label.at[1] - back * sin)
    text.setFont(name, em_size(label.height))
    text.textOut(label.text)
    canvas.drawText(text)


def _grey(role: Role) -> float:
    return _QUIET if role in _QUIET_ROLES else _BLACK
