"""A pictorial view of each sample bench, for the page that lists them.

    python -m app.window.sample_pictures [FILE ...]

Writes ``NAME.png`` beside each project file, by default of all samples; run it after a sample has
changed.
"""

from __future__ import annotations

import os
import sys
from collections.abc import Sequence
from pathlib import Path

from PySide6.QtGui import QColor, QImage, QPainter, QPixmap

from app.canvas.picture import Picture
from app.look.themes import PAPER
from app.main import application
from app.window.portrait import png_of
from app.window.samples import sample_files
from exporters.project_file import load
from exporters.writing import write_file
from geometry.bench.build import build
from geometry.design.part import Part
from geometry.drawing.marks import Mark
from geometry.sheets.arrangement import linework_marks
from geometry.sheets.section_marks import visible_lines
from geometry.views.look import look_all
from geometry.views.pictorial import FROM_LEFT, FROM_RIGHT
from shared.errors import MakerError

_WIDE, _HIGH = 720, 460  # pixels
_DENSITY = 4.0  # pixels to the mm of the sheet
_MARGIN = 6.0  # mm


def main(arguments: Sequence[str]) -> int:
    """Write the pictures; 0 when done, 2 when a project or a picture is refused."""
    os.environ["QT_QPA_PLATFORM"] = "offscreen"  # drawn where nobody sees it
    for file in [Path(argument) for argument in arguments] or sample_files():
        try:
            write_file(file.with_suffix(".png"), sample_picture(file))
        except MakerError as error:
            sys.stderr.write(f"{error}\n")
            return 2
    return 0


def sample_picture(project: Path) -> bytes:
    """The visible lines of the bench in a pictorial view, as a PNG.  Raises MakerError."""
    application()
    marks = _drawn(build(load(project).spec).parts)
    image = QImage(_WIDE, _HIGH, QImage.Format.Format_RGB32)
    image.fill(QColor(PAPER.paper))
    painter = QPainter(image)
    painter.translate(0, _HIGH)  # the sheet's y runs up
    Picture(marks, _DENSITY, 1.0).paint(painter, PAPER)
    painter.end()
    return png_of(QPixmap.fromImage(image.convertToFormat(QImage.Format.Format_Grayscale8)))


def _drawn(parts: Sequence[Part]) -> list[Mark]:
    """The view from the side that shows more, as large as the picture takes it."""
    seen = [visible_lines(one) for one in look_all(parts, (FROM_LEFT, FROM_RIGHT))]
    linework = max(seen, key=lambda one: len(one.segments))
    left, bottom, right, top = linework.bounds()
    wide, high = _WIDE / _DENSITY - 2 * _MARGIN, _HIGH / _DENSITY - 2 * _MARGIN
    scale = min(wide / (right - left), high / (top - bottom))
    origin = (
        _MARGIN + (wide - scale * (left + right)) / 2.0,
        _MARGIN + (high - scale * (bottom + top)) / 2.0,
    )
    return linework_marks(linework, scale, origin, tuple(part.name for part in parts))


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
