"""The pack's papers as PDF: the set of drawings, and the full-size templates."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import date

from exporters.pdf import pdf_bytes
from geometry.bench.bench import Bench
from geometry.design.finding import Finding
from geometry.design.project import Project
from geometry.sheets.drawings import drawings
from geometry.sheets.layout import Layout
from geometry.sheets.templates import templates
from geometry.sheets.title_block import title_block_of
from shared.words import in_words


def drawings_bytes(
    project: Project, bench: Bench, layout: Layout, on: date, found: Sequence[Finding] = ()
) -> bytes:
    """The set of drawings with its findings; ``on`` is the date they carry."""
    return pdf_bytes(
        drawings(bench, _titled(layout, project, on), found),
        title=_title(project, "drawings"),
        on=on,
        author=project.designer,
        subject=in_words("Drawings of a bench, with dimensions", layout.words),
    )


def templates_bytes(project: Project, bench: Bench, layout: Layout, on: date) -> bytes:
    """Templates at full size, with the request to print them so; ``on`` is their date."""
    return pdf_bytes(
        templates(bench, _titled(layout, project, on)),
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
