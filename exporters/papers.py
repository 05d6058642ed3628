"""The pack's papers: the set of drawings, and the full-size templates, as sheets and as PDF."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import date

from exporters.pdf import pdf_bytes
from geometry.bench.bench import Bench
from geometry.design.finding import Finding
from geometry.design.project import Project
from geometry.drawing.marks import Sheet
from geometry.sheets.drawings import drawings
from geometry.sheets.layout import Layout
from geometry.sheets.printer import Edges
from geometry.sheets.templates import templates
from geometry.sheets.title_block import title_block_of
from shared.words import in_words


def drawing_sheets(
    project: Project, bench: Bench, layout: Layout, on: date, found: Sequence[Finding] = ()
) -> tuple[Sheet, ...]:
    """The set of drawings with its findings; ``on`` is the date they carry."""
    return drawings(bench, _titled(layout, project, on), found, project.section)


def template_sheets(
    project: Project, bench: Bench, layout: Layout, on: date, correction: Edges = (1.0, 1.0)
) -> tuple[Sheet, ...]:
    """Templates at full size once a printer has run them through; ``on`` is their date.

    ``correction`` as ``templates`` takes it.
    """
    return templates(bench, _titled(layout, project, on), correction)


def drawings_bytes(project: Project, layout: Layout, on: date, sheets: Sequence[Sheet]) -> bytes:
    return pdf_bytes(
        sheets,
        title=_title(project, "drawings"),
        on=on,
        author=project.designer,
        subject=in_words("Drawings of a bench, with dimensions", layout.words),
    )


def templates_bytes(project: Project, on: date, sheets: Sequence[Sheet]) -> bytes:
    """With the request to print them at full size."""
    return pdf_bytes(
        sheets,
        title=_title(project, "full-size templates"),
        on=on,
        author=project.designer,
        subject="Print at 100 %, without fitting to the page",
        full_size=True,
    )


def _titled(layout: Layout, project: Project, on: date) -> Layout:
    return replace(layout, title=title_block_of(project, on))


def _title(project: Project, what: str) -> str:
    return f"{project.title or 'Bench'}: {what}"
